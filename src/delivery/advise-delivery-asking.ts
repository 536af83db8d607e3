import { type Carried, carriedWith, type Piece } from './carried.js';
import type { Crossing } from './crossing.js';
import type { Passage } from './passages.js';

/** What `adviseDelivery` needs to know of an answer. */
export interface DeliveryQuestion {
  readonly route: readonly Passage[];
  /** Each piece with its crossings, one a passage of the route. */
  readonly pieces: readonly { readonly piece: Piece; readonly crossings: readonly Crossing[] }[];
  /** Other sets of pieces in which the same table comes, the one to be preferred first. */
  readonly otherSets: readonly { readonly name: string; readonly pieces: readonly Piece[] }[];
  /** On every side of every piece, mm. */
  readonly handRoom: number;
  /** The answer for one box in one passage. */
  readonly cross: (passage: Passage, box: Carried) => Crossing;
}

/** A piece that is not shown to pass one passage. */
export interface Miss {
  /** Of the passage in the route. */
  readonly index: number;
  readonly passage: Passage;
  readonly piece: Piece;
  readonly crossing: Crossing;
  /** Whether a formula decides it: then an answer costs little. */
  readonly quick: boolean;
}

/** What all questions together may cost: a formula's answer counts 1, any other 20. */
const BUDGET = 120;
const SLOW_COST = 20;

/** Asks for one box in the passage of that index, changed or as it is; null when the questions have cost as much as they may. */
export type Ask = (index: number, passage: Passage, box: Carried) => Crossing | null;

/** `cross` with its questions counted: at most 120 calls, and at most 6 that no formula decides. */
export function countedAsking({ route, pieces, handRoom, cross }: DeliveryQuestion): Ask {
  const known = new Map<string, Crossing>();
  const keyOf = (index: number, { l, w, h, held, tilt }: Carried): string =>
    [index, l, w, h, tilt, ...held].join(' ');
  for (const { piece, crossings } of pieces) {
    crossings.forEach((crossing, index) => {
      known.set(keyOf(index, carriedWith(piece, handRoom)), crossing);
    });
  }
  let spent = 0;
  return (index, passage, box) => {
    // Answers are kept for passages as they are: other sets share many of their pieces.
    const key = passage === route[index] ? keyOf(index, box) : null;
    const found = key === null ? undefined : known.get(key);
    if (found !== undefined) return found;
    if (spent >= BUDGET) return null;
    const crossing = cross(passage, box);
    spent += crossing.method === 'closed-form' ? 1 : SLOW_COST;
    if (key !== null) known.set(key, crossing);
    return crossing;
  };
}

/** What does not pass, the worst first. */
export function missesOf({ route, pieces }: DeliveryQuestion): readonly Miss[] {
  const misses = pieces.flatMap(({ piece, crossings }) =>
    route.flatMap((passage, index): Miss[] => {
      const crossing = crossings[index];
      if (crossing === undefined || crossing.atLeast >= 0) return [];
      return [{ index, passage, piece, crossing, quick: crossing.method === 'closed-form' }];
    }),
  );
  // The comparison comes first since two bounds that are not known are both infinite.
  return misses.sort((p, q) => {
    const a = p.crossing.atMost;
    const b = q.crossing.atMost;
    return a === b ? p.index - q.index : a - b;
  });
}

export function passes(crossing: Crossing | null): boolean {
  return crossing !== null && crossing.atLeast >= 0;
}

/** The least whole number above `fails` that was seen to do, after so many halvings; `does` is one that does. */
export function leastWhole(
  fails: number,
  does: number,
  halvings: number,
  test: (n: number) => boolean,
): number {
  let low = fails;
  let high = does;
  for (let k = 0; k < halvings && high - low > 1; k++) {
    const middle = Math.floor((low + high) / 2);
    if (test(middle)) high = middle;
    else low = middle;
  }
  return high;
}
