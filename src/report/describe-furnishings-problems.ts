import type { PieceProblem, PieceReport } from '../arrangement/arrangement-report.js';
import { plainName, type SentenceUnits, sayAtLeastOne } from './sentences.js';

/** Parts of what is said of a problem. */
interface Said {
  /** What is in the way; null where nothing else is concerned. */
  readonly other: string | null;
  /** `its use zone (throw lane)` */
  readonly zone: string;
  /** ` by 5 cm`, or nothing. */
  readonly by: string;
  /** `5 cm`, or nothing. */
  readonly amount: string;
}

/** What is wrong, as a clause about the piece. */
const PROBLEM_WORDS: Readonly<Record<PieceProblem['code'], (said: Said) => string>> = {
  outside: ({ other, by }) =>
    other === null ? 'it is not within the walls' : `it reaches beyond ${other}${by}`,
  overlap: ({ other, by }) => `it overlaps ${other ?? 'something else'}${by}`,
  table: ({ by }) => `it overlaps the table${by}`,
  door: ({ other, by }) => `it stands in the swing of ${other ?? 'a door'} or across its doorway${by}`,
  ceiling: ({ other, by }) => `it is too high for ${other ?? 'the ceiling'} there${by}`,
  'no-wall': ({ amount }) =>
    amount === ''
      ? 'it is not at a wall or in a corner, where it has to be'
      : `it is ${amount} off the wall or the corner where it has to be`,
  turn: () => 'it is turned as it may not be',
  'zone-outside': ({ other, zone, by }) =>
    other === null ? `${zone} is not within the walls` : `${zone} reaches beyond ${other}${by}`,
  'zone-overlap': ({ other, zone, by }) => `${other ?? 'something else'} stands in ${zone}${by}`,
  'zone-table': ({ zone, by }) => `the table stands in ${zone}${by}`,
  'zone-door': ({ other, zone, by }) =>
    `${zone} lies in the swing of ${other ?? 'a door'} or across its doorway${by}`,
  'zone-ceiling': ({ other, zone, by }) =>
    `${zone} has too little height under ${other ?? 'the ceiling'}${by}`,
  'zone-shared': ({ other, zone, by }) =>
    `${zone} lies on floor that ${other ?? 'another piece'} needs in use, and the two may not share it${by}`,
  'no-way': ({ other }) => `no clear way leads to it${other === null ? ' from a door' : ` from ${other}`}`,
  'no-place': () => 'it went nowhere that was tried beside the pieces that have a place',
};

/** A problem as a clause about the piece, amounts rounded up: `it overlaps sofa by 5 cm`. */
export function problemWords(problem: PieceProblem, units: SentenceUnits): string {
  const amount = problem.amount === null || problem.amount <= 0 ? '' : sayAtLeastOne(problem.amount, units);
  return PROBLEM_WORDS[problem.code]({
    other: problem.with === null ? null : plainName(problem.with),
    zone: problem.zone === null ? 'its use zone' : `its use zone (${plainName(problem.zone)})`,
    by: amount === '' ? '' : ` by ${amount}`,
    amount,
  });
}

/** What is wrong where the given pieces stand, and what holds back those without a place: one piece a string, and none for those that fit. */
export function describeMisfits(pieces: readonly PieceReport[], units: SentenceUnits): readonly string[] {
  return pieces
    .filter(({ fits }) => !fits)
    .map(({ name, pose, problems }) => {
      const clauses = [...new Set(problems.map((problem) => problemWords(problem, units)))];
      const why = clauses.join('; ');
      if (pose !== null) {
        return clauses.length === 0
          ? `${plainName(name)} does not fit where it stands.`
          : `${plainName(name)}, where it stands: ${why}.`;
      }
      return clauses.length === 0
        ? `${plainName(name)} has no place.`
        : `${plainName(name)} has no place. What held back the places that were tried, most often first: ${why}.`;
    });
}
