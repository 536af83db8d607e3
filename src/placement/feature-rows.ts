/**
 * Linear over-estimators ("features") over a box of poses, one a row: for every pose s of the box where the table stands
 * free, tau * clearance <= a + b0 s0 + b1 s1 + b2 s2. Rows of Q have tau = 1; rows of the frame have tau = 0 and say only that
 * its own distance, which the right side over-estimates, is not negative.
 */
export interface FeatureRows {
  count: number;
  readonly a: Float64Array;
  readonly b0: Float64Array;
  readonly b1: Float64Array;
  readonly b2: Float64Array;
  readonly tau: Uint8Array;
  /** tau of the rows being added. */
  kind: 0 | 1;
  /** What is taken off the frame's rows, mm: how far they are moved in. */
  reserve: number;
  /** Rows of Q that stay above this over the whole box cannot bind below it and are left out. */
  ceiling: number;
  /** The same for the rows being added, of whichever kind: a distance that stays above this needs no row. */
  enough: number;
  /** The lowest of the greatest values that a single row of Q allows; -Infinity once a row of the frame cannot be met. */
  lowest: number;
}

/** Most rows that one constraint gives: two chords, a corner, a disc. */
const ROWS_EACH = 4;
/** Room for the row of the ceiling, and some to spare. */
const ROWS_EXTRA = 16;

export function createFeatureRows(constraints: number): FeatureRows {
  const room = ROWS_EACH * constraints + ROWS_EXTRA;
  const block = new Float64Array(4 * room);
  return {
    count: 0,
    a: block.subarray(0, room),
    b0: block.subarray(room, 2 * room),
    b1: block.subarray(2 * room, 3 * room),
    b2: block.subarray(3 * room),
    tau: new Uint8Array(room),
    kind: 1,
    reserve: 0.5,
    ceiling: 0.5,
    enough: 0.5,
    lowest: 0.5,
  };
}

export function clearRows(rows: FeatureRows, ceiling: number, reserve: number): void {
  rows.count = 0;
  rows.ceiling = ceiling;
  rows.reserve = reserve;
  rows.lowest = ceiling;
}

/** Sets the kind of the rows to come. */
export function startRows(rows: FeatureRows, kind: 0 | 1): void {
  rows.kind = kind;
  rows.enough = kind === 1 ? rows.ceiling : rows.reserve;
}

/** Adds a row unless nothing in the box can make it bind. */
export function addRow(rows: FeatureRows, a: number, b0: number, b1: number, b2: number): void {
  const spread = Math.abs(b0) + Math.abs(b1) + Math.abs(b2);
  let level = a;
  if (rows.kind === 1) {
    if (level - spread >= rows.ceiling) return;
    if (level + spread < rows.lowest) rows.lowest = level + spread;
  } else {
    level -= rows.reserve;
    if (level - spread >= 0) return;
    if (level + spread < 0) rows.lowest = Number.NEGATIVE_INFINITY;
  }
  const k = rows.count++;
  rows.a[k] = level;
  rows.b0[k] = b0;
  rows.b1[k] = b1;
  rows.b2[k] = b2;
  rows.tau[k] = rows.kind;
}
