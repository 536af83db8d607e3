import type { ArrangementAdvice, ArrangementReport } from '../arrangement/arrangement-report.js';
import { outcomeWords } from './describe-limits.js';
import type { Verdict } from './fit-report.js';
import {
  count,
  joinWords,
  plainName,
  roundTo,
  type SentenceUnits,
  sayAccount,
  sayDegrees,
  sayLength,
} from './sentences.js';
import { NO_BREAK } from './wrap.js';

/** What would help the table or the other pieces, each with the gain it was computed to bring, one advice a string. */
export function describePieceAdvice(
  { advice }: ArrangementReport,
  verdict: Verdict,
  units: SentenceUnits,
): readonly string[] {
  return advice.map((one) => `${deed(one, units)}. ${outcomeWords(one, verdict)}${placesWords(one)}`);
}

function deed({ kind, piece, pose, amount }: ArrangementAdvice, units: SentenceUnits): string {
  const what = plainName(piece);
  switch (kind) {
    case 'leave-out':
      return `Leave out ${what}`;
    case 'shift': {
      const far = amount === undefined ? '' : ` by about ${sayLength(amount, units)}`;
      const to =
        pose === undefined
          ? ''
          : `, its middle to x = ${sayLength(pose.x, units)}, y = ${sayLength(pose.y, units)}, its length turned ${sayDegrees(pose.turn)} from the x direction`;
      return `Shift ${what}${far}${to}`;
    }
  }
}

function placesWords({ places }: ArrangementAdvice): string {
  if (places.length === 0) return '';
  const names = joinWords(places.map(plainName));
  return ` Then ${names} ${places.length === 1 ? 'finds' : 'find'} a place too.`;
}

/**
 * What floor and wall there is for the pieces: necessary conditions, so that a lack is a proof and what is to spare is none. Needs are
 * rounded up, so that the numbers add up.
 */
export function describeRoomForPieces(report: ArrangementReport, units: SentenceUnits): readonly string[] {
  const { floor, wall } = report.bounds;
  const said: string[] = [];
  if (floor.needed > 0) {
    const { needed, available, spare } = areaAccount(floor, units);
    said.push(
      `What stands on the floor, the table among it, takes ${needed}; the room has about ${available} for it, ${spare}.`,
    );
  }
  if (wall.needed > 0) {
    const { needed, available, spare } = sayAccount({ ...wall, spare: wall.available - wall.needed }, units);
    said.push(
      `What stands at walls needs at least ${needed} of wall; about ${available} are clear of doorways, ${spare}.`,
    );
  }
  const lacks = floor.needed > floor.available || wall.needed > wall.available;
  if (lacks) said.push('So it is proved that not everything goes in.');
  said.push(searchWords(report, lacks));
  return said;
}

/** Not finding a place proves nothing. */
function searchWords({ layouts, stopped, pieces }: ArrangementReport, lacks: boolean): string {
  const weighed = `${count(layouts, 'layout')} of the whole room ${layouts === 1 ? 'was' : 'were'} weighed${stopped ? ' before the search was stopped' : ''}.`;
  const missing = pieces.some(({ pose }) => pose === null);
  return missing && !lacks
    ? `${weighed} That a piece found no place in ${layouts === 1 ? 'it' : 'them'} does not prove that there is none.`
    : weighed;
}

const SQUARE_FOOT = 0.09290304;

/** Areas in m2 as {@link sayAccount} has lengths: in tenths of a square metre, or in square feet. */
function areaAccount(
  bound: { readonly needed: number; readonly available: number },
  units: SentenceUnits,
): { readonly needed: string; readonly available: string; readonly spare: string } {
  const [unit, step, digits, name] = units === 'ftin' ? [SQUARE_FOOT, 1, 0, 'sq ft'] : [1, 0.1, 1, 'm2'];
  const write = (value: number): string => `${value.toFixed(digits)}${NO_BREAK}${name}`;
  const spare = (bound.available - bound.needed) / unit;
  const needed = roundTo(bound.needed / unit, step, 'up');
  const missing = spare < 0 ? Math.max(step, roundTo(-spare, step, 'up')) : 0;
  const left = missing > 0 ? -missing : roundTo(spare, step, 'down');
  const least = `less than ${write(step)} to spare`;
  return {
    needed: write(needed),
    available: write(Math.max(0, needed + left)),
    spare: missing > 0 ? `${write(missing)} missing` : left === 0 ? least : `${write(left)} to spare`,
  };
}
