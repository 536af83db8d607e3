/** Up to this many turns each start with a box of their own. */
const MOST_GROUPS = 16;

/**
 * Parts ascending turns into neighbouring groups, given as [middle, half width]: a turn each where there are few, else
 * groups between the widest gaps, which a search splits further where it has to.
 */
export function turnGroups(turns: readonly number[]): [middle: number, half: number][] {
  const gaps = turns.slice(1).map((turn, i) => ({ before: i + 1, width: turn - turns[i] }));
  gaps.sort((a, b) => b.width - a.width || a.before - b.before);
  const cuts = gaps.slice(0, MOST_GROUPS - 1).map(({ before }) => before);
  const starts = [0, ...cuts.sort((a, b) => a - b)];
  return starts.map((start, i) => between(turns[start], turns[(starts[i + 1] ?? turns.length) - 1]));
}

/**
 * The lower or upper half of a group [middle, half width] of a search, shrunk to the turns in it; null: there are none. A turn in
 * the very middle belongs to the lower half.
 */
export function halfGroup(
  turns: readonly number[],
  middle: number,
  half: number,
  upper: boolean,
): [middle: number, half: number] | null {
  let first = -1;
  let last = -1;
  for (let i = 0; i < turns.length; i++) {
    const turn = turns[i];
    if (Math.abs(turn - middle) > half + ROUNDING || turn > middle !== upper) continue;
    if (first < 0) first = i;
    last = i;
  }
  return first < 0 ? null : between(turns[first], turns[last]);
}

/** The one of the ascending turns that is nearest to an angle; not across the half turn, which no box spans. */
export function nearestTurn(turns: readonly number[], angle: number): number {
  let from = 0;
  let to = turns.length - 1;
  while (to - from > 1) {
    const middle = (from + to) >> 1;
    if (turns[middle] <= angle) from = middle;
    else to = middle;
  }
  return angle - turns[from] <= turns[to] - angle ? turns[from] : turns[to];
}

/** A group's ends are turns themselves, up to rounding; turns lie further apart than this (radians). */
const ROUNDING = 1e-12;

/** A single turn comes out exactly, so that a box of it has no width. */
function between(first: number, last: number): [middle: number, half: number] {
  return first === last ? [first, 0] : [(first + last) / 2, (last - first) / 2];
}
