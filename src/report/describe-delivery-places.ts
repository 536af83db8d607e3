import type {
  DeliveryOutcome,
  DeliveryReport,
  PassageAnswer,
  PieceAnswer,
} from '../delivery/delivery-report.js';
import { leastLength, plainName, type SentenceUnits, sayAtLeastOne, sayLength } from './sentences.js';

/** One piece in one passage. */
export interface Place {
  readonly piece: PieceAnswer;
  readonly answer: PassageAnswer;
}

const OUTCOMES: readonly DeliveryOutcome[] = ['blocked', 'undecided', 'passes'];

/** Every piece in every passage: what is blocked first, then what is undecided, each the tightest first. */
export function placesOf(report: DeliveryReport): readonly Place[] {
  const places = report.pieces.flatMap((piece) => piece.passages.map((answer) => ({ piece, answer })));
  return places.sort(
    (p, q) =>
      OUTCOMES.indexOf(p.answer.outcome) - OUTCOMES.indexOf(q.answer.outcome) ||
      tightness(p.answer) - tightness(q.answer),
  );
}

/** mm: the less, the tighter. Where nothing is known it counts as tightest. */
function tightness({ outcome, spare }: PassageAnswer): number {
  const [first, second] =
    outcome === 'blocked' ? [spare.atMost, spare.atLeast] : [spare.atLeast, spare.atMost];
  return first ?? second ?? -Number.MAX_VALUE;
}

/** `slate (front door)`: names are the user's own and take no article. */
export function placeName({ piece, answer }: Place): string {
  return `${plainName(piece.name)} (${plainName(answer.passage)})`;
}

/** `4 cm to spare`, rounded down; what is less than a step is said so. Empty where it is not known. */
export function spareWords({ spare }: PassageAnswer, units: SentenceUnits): string {
  if (spare.atLeast === null || spare.atLeast < 0) return '';
  return `${sayWholeSteps(spare.atLeast, units) ?? `less than ${leastLength(units)}`} to spare`;
}

/** A bracket this narrow, mm, is one figure. */
const ONE_FIGURE = 1;

/** A widening of more than this, mm, is no help to anybody: walls are moved for less. */
const HELPFUL = 300;

/** What a blocked piece lacks: `4 cm missing`, rounded up and never to nothing, or the two ends of what is known. */
export function missingWords({ spare }: PassageAnswer, units: SentenceUnits): string {
  const least = Math.max(0, -(spare.atMost ?? 0));
  const floor = sayWholeSteps(least, units);
  if (spare.atLeast === null || -spare.atLeast > Math.max(HELPFUL, least + ONE_FIGURE)) {
    return floor === null ? 'something missing, how much is not known' : `at least ${floor} missing`;
  }
  const most = Math.max(least, -spare.atLeast);
  const ceiling = sayAtLeastOne(most, units);
  if (most - least <= ONE_FIGURE || floor === ceiling) return `${ceiling} missing`;
  return floor === null ? `up to ${ceiling} missing` : `between ${floor} and ${ceiling} missing`;
}

/** Rounded down; null for less than a step. */
function sayWholeSteps(mm: number, units: SentenceUnits): string | null {
  const said = sayLength(mm, units, 'down');
  return said === sayLength(0, units) ? null : said;
}

/** Whom the bound of a blocked piece holds for. */
export function blockedWords({ anyMotion }: PassageAnswer): string {
  return anyMotion ? 'however it is held or turned' : 'in any of the ways in which it may be held';
}

/** What an undecided piece would pass with, as a clause; empty where that is not known. */
export function enoughWords({ spare }: PassageAnswer, units: SentenceUnits): string {
  return spare.atLeast === null || spare.atLeast >= 0 || -spare.atLeast > HELPFUL
    ? ''
    : `; with ${sayAtLeastOne(-spare.atLeast, units)} more in every clear measure it would go through`;
}
