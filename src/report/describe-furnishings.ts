import type { ArrangementReport, PieceReport } from '../arrangement/arrangement-report.js';
import { describePieceAdvice, describeRoomForPieces } from './describe-furnishings-advice.js';
import { describePieces } from './describe-furnishings-places.js';
import { describeMisfits } from './describe-furnishings-problems.js';
import { describeSharing, describeWays, WAY_WORDS } from './describe-furnishings-ways.js';
import type { Verdict } from './fit-report.js';
import { count, joinWords, plainName, type SentenceUnits } from './sentences.js';

/** A titled list of sentences. */
export interface FurnishingsBlock {
  readonly title: string;
  /** A sentence between the title and the list; may be empty. */
  readonly explanation: string;
  readonly items: readonly string[];
}

/** More names than these in one sentence and nobody hears the end of it. */
const MOST_NAMES = 6;

/**
 * The other pieces in sentences, block by block: where they stand, what does not fit, what is used by turns, the ways between them, what would
 * help, and what the room holds. Blocks without anything to say are left out.
 *
 * @param verdict Of the wanted cue, which advice is set beside.
 */
export function describeFurnishings(
  report: ArrangementReport,
  verdict: Verdict,
  units: SentenceUnits,
): readonly FurnishingsBlock[] {
  const { pieces, sharing, ways } = report;
  const blocks: readonly FurnishingsBlock[] = [
    {
      title: 'The other pieces: where they stand',
      explanation: 'Lengths are from the origin of the plan, x to the right and y up.',
      items: describePieces(pieces, units),
    },
    {
      title: 'The other pieces: what does not fit',
      explanation: '',
      items: describeMisfits(pieces, units),
    },
    {
      title: 'The other pieces: floor that is used by turns',
      explanation: '',
      items: describeSharing(sharing),
    },
    { title: 'The other pieces: clear ways', explanation: WAY_WORDS, items: describeWays(ways, units) },
    {
      title: 'The other pieces: what would help',
      explanation: '',
      items: describePieceAdvice(report, verdict, units),
    },
    {
      title: 'The other pieces: what the room holds',
      explanation: '',
      items: describeRoomForPieces(report, units),
    },
  ];
  return blocks.filter(({ items }) => items.length > 0);
}

/** What the table's answer counts with. */
const COUNTED = 'All that is said of the table is for the room with the pieces in it that have a place.';

/** Whether the other pieces have a place, for the opening: one sentence a string. */
export function describePiecesAnswer({ pieces, ways }: ArrangementReport): readonly string[] {
  const homeless = pieces.filter(({ pose }) => pose === null);
  const misfits = pieces.filter(({ pose, fits }) => pose !== null && !fits);
  const said: string[] = [];
  if (homeless.length > 0) said.push(homelessWords(pieces, homeless));
  if (misfits.length > 0) {
    said.push(`Something is wrong at the place of ${names(misfits)}: see the other pieces.`);
  }
  if (said.length === 0) {
    const all = pieces.length === 1 ? 'The other piece has' : `All ${pieces.length} other pieces have`;
    const lacking = ways.every(({ found }) => found) ? '' : ', but not every clear way was found';
    said.push(`${all} a place${lacking}.`);
  }
  return homeless.length < pieces.length ? [...said, COUNTED] : said;
}

function homelessWords(pieces: readonly PieceReport[], homeless: readonly PieceReport[]): string {
  if (pieces.length === 1) return `No place was found for the other piece, ${names(homeless)}.`;
  return homeless.length === pieces.length
    ? `No place was found for any of the ${pieces.length} other pieces.`
    : `No place was found for ${homeless.length} of the ${pieces.length} other pieces: ${names(homeless)}.`;
}

function names(pieces: readonly PieceReport[]): string {
  const shown = pieces.slice(0, MOST_NAMES).map(({ name }) => plainName(name));
  const more = pieces.length - shown.length;
  return joinWords(more > 0 ? [...shown, count(more, 'more piece')] : shown);
}
