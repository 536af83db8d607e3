import { type Bits, emptyBits } from './bits.js';

/** Room for the runs of one grid, used again for each flood: cells `from` up to, not including, `to`, all free and in one row. */
export interface FloodRuns {
  readonly columns: number;
  readonly rows: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** A run of the same connected floor, an earlier one or the run itself. */
  readonly parent: Int32Array;
  readonly reached: Uint8Array;
}

export function floodRuns(columns: number, rows: number): FloodRuns {
  const most = rows * Math.ceil(columns / 2);
  return {
    columns,
    rows,
    from: new Int32Array(most),
    to: new Int32Array(most),
    parent: new Int32Array(most),
    reached: new Uint8Array(most),
  };
}

/**
 * The free cells that are connected with one of `start`, by their sides. Row by row: runs of free cells are joined with those of the row before
 * that they lie beside.
 */
export function floodCells(
  { columns, rows, from, to, parent, reached }: FloodRuns,
  free: Bits,
  start: Bits,
): Bits {
  let count = 0;
  let before = 0;
  for (let row = 0; row < rows; row++) {
    const first = count;
    const end = (row + 1) * columns;
    for (let i = nextIn(free, 0, row * columns, end); i < end; ) {
      const gap = nextIn(free, -1, i, end);
      from[count] = i;
      to[count] = gap;
      parent[count] = count;
      reached[count] = nextIn(start, 0, i, gap) < gap ? 1 : 0;
      count++;
      i = nextIn(free, 0, gap, end);
    }
    let k = before;
    for (let run = first; run < count; run++) {
      const lo = from[run] - columns;
      const hi = to[run] - columns;
      while (k < first && to[k] <= lo) k++;
      for (let other = k; other < first && from[other] < hi; other++) {
        const a = rootOf(parent, other);
        const b = rootOf(parent, run);
        if (a === b) continue;
        parent[Math.max(a, b)] = Math.min(a, b);
        reached[Math.min(a, b)] |= reached[Math.max(a, b)];
      }
    }
    before = first;
  }
  const seen = emptyBits(columns * rows);
  for (let run = 0; run < count; run++) {
    if (reached[rootOf(parent, run)] === 1) setRange(seen, from[run], to[run]);
  }
  return seen;
}

function rootOf(parent: Int32Array, run: number): number {
  let root = run;
  while (parent[root] !== root) {
    parent[root] = parent[parent[root]];
    root = parent[root];
  }
  return root;
}

/** The first number from `i` on that is in a set, or with `flip` -1 is not, but at most `end`. */
function nextIn(bits: Bits, flip: 0 | -1, i: number, end: number): number {
  if (i >= end) return end;
  let w = i >> 5;
  let word = (bits[w] ^ flip) & (-1 << (i & 31));
  while (word === 0) {
    w++;
    if (32 * w >= end) return end;
    word = bits[w] ^ flip;
  }
  return Math.min(end, 32 * w + 31 - Math.clz32(word & -word));
}

function setRange(bits: Bits, from: number, to: number): void {
  const first = from >> 5;
  const last = (to - 1) >> 5;
  const head = -1 << (from & 31);
  const tail = -1 >>> (31 - ((to - 1) & 31));
  if (first === last) bits[first] |= head & tail;
  else {
    bits[first] |= head;
    for (let w = first + 1; w < last; w++) bits[w] = -1;
    bits[last] |= tail;
  }
}
