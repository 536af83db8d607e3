import { TOUCH } from '../geometry/curve-crossings.js';

/** Side of a cell of the plan, mm, */
export const CELL = 48;
/** and half its diagonal. */
export const CELL_RADIUS: number = (CELL / 2) * Math.SQRT2;

/** Stands for a component of a direction that is 0, so that no infinity meets another. */
const TINY = 1e-200;

/** What the cells ask of the floor S they are cut from; see `StandingRoom`. */
export interface Floor {
  slack(x: number, y: number): number;
  hasCornerWithin(
    cell: number,
    x: number,
    y: number,
    ux: number,
    uy: number,
    along: number,
    aside: number,
  ): boolean;
  meetsEdgeOf(x: number, y: number, ux: number, uy: number, along: number, half: number): boolean;
}

/**
 * The floor S cut into cells, row by row, as bits: `sure` where a cell's centre is in S, `maybe` where the cell may hold any point of
 * S. A bit of `maybe` that a question depends on is checked exactly and cleared where the cell holds nothing, so that most
 * questions end with the bits.
 */
export class StandingCells {
  readonly left: number;
  readonly bottom: number;
  /** The window that is asked for: x, y, ux, uy, along, half: `along` and `half` around (x, y), along and across the unit vector (ux, uy). */
  readonly window: Float64Array = new Float64Array(6);
  readonly #words: number;
  readonly #sure: Int32Array;
  readonly #maybe: Int32Array;
  readonly #checked: Int32Array;
  readonly #built: Uint8Array;
  /** First and last column of each row that the window at hand may meet. */
  readonly #span: Int32Array;

  constructor(
    readonly columns: number,
    readonly rows: number,
    readonly floor: Floor,
  ) {
    this.left = (-columns * CELL) / 2;
    this.bottom = (-rows * CELL) / 2;
    this.#words = Math.ceil(columns / 32);
    this.#sure = new Int32Array(rows * this.#words);
    this.#maybe = new Int32Array(rows * this.#words);
    this.#checked = new Int32Array(rows * this.#words);
    this.#built = new Uint8Array(rows);
    this.#span = new Int32Array(2 * rows);
  }

  centerX(column: number): number {
    return this.left + (column + 0.5) * CELL;
  }

  centerY(row: number): number {
    return this.bottom + (row + 0.5) * CELL;
  }

  /** Is the centre of the cell around (x, y), which is at most {@link CELL_RADIUS} away, in S? */
  isSureAround(x: number, y: number): boolean {
    const column = Math.floor((x - this.left) / CELL);
    const row = Math.floor((y - this.bottom) / CELL);
    if (!(column >= 0 && column < this.columns && row >= 0 && row < this.rows)) return false;
    if (this.#built[row] === 0) this.#build(row);
    return (this.#sure[row * this.#words + (column >> 5)] & (1 << (column & 31))) !== 0;
  }

  /** Does the window meet S? */
  meetsWindow(): boolean {
    const { columns } = this;
    const x = this.window[0];
    const y = this.window[1];
    const ux = this.window[2];
    const uy = this.window[3];
    const along = this.window[4];
    const half = this.window[5];
    // All in cells from here on. In the row that lies dy above the middle, centres with |dx ux + dy uy| <= along and
    // |dy ux - dx uy| <= half form an interval of dx; a cell that meets the window has its centre at most `support` beyond.
    const perX = 1 / (ux === 0 ? TINY : ux);
    const perY = 1 / (uy === 0 ? TINY : uy);
    const support = (Math.abs(ux) + Math.abs(uy)) / 2 + TOUCH;
    const alongSlope = -uy * perX;
    const asideSlope = ux * perY;
    const alongReach = Math.abs((along / CELL) * perX);
    const asideReach = Math.abs((half / CELL) * perY);
    const alongMore = alongReach + Math.abs(support * perX);
    const asideMore = asideReach + Math.abs(support * perY);
    const extentX = (along * Math.abs(ux) + half * Math.abs(uy)) / CELL + 0.5 + TOUCH;
    const extentY = (along * Math.abs(uy) + half * Math.abs(ux)) / CELL + 0.5 + TOUCH;
    const middleX = (x - this.left) / CELL - 0.5;
    const middleY = (y - this.bottom) / CELL - 0.5;
    const first = Math.max(0, Math.ceil(middleY - extentY));
    const last = Math.min(this.rows - 1, Math.floor(middleY + extentY));
    const leftmost = Math.max(0, middleX - extentX);
    const rightmost = Math.min(columns - 1, middleX + extentX);
    const span = this.#span;
    let anyMaybe = false;
    for (let row = first; row <= last; row++) {
      if (this.#built[row] === 0) this.#build(row);
      const dy = row - middleY;
      const byAlong = middleX + dy * alongSlope;
      const byAside = middleX + dy * asideSlope;
      const start = Math.ceil(Math.max(leftmost, Math.max(byAlong - alongMore, byAside - asideMore)));
      const end = Math.floor(Math.min(rightmost, Math.min(byAlong + alongMore, byAside + asideMore)));
      span[2 * row] = start;
      span[2 * row + 1] = end;
      if (start > end || !this.#any(this.#maybe, row, start, end)) continue;
      anyMaybe = true;
      const from = Math.ceil(Math.max(leftmost, Math.max(byAlong - alongReach, byAside - asideReach)));
      const to = Math.floor(Math.min(rightmost, Math.min(byAlong + alongReach, byAside + asideReach)));
      if (from <= to && this.#any(this.#sure, row, from, to)) return true;
    }
    if (!anyMaybe) return false;
    let undecided = false;
    for (let row = first; row <= last; row++) {
      const start = span[2 * row];
      const end = span[2 * row + 1];
      if (start > end) continue;
      for (let word = start >> 5; word <= end >> 5; word++) {
        let bits = this.#maybe[row * this.#words + word];
        if (word === start >> 5) bits &= -1 << (start & 31);
        if (word === end >> 5) bits &= -1 >>> (31 - (end & 31));
        for (; bits !== 0; bits &= bits - 1) {
          const column = 32 * word + 31 - Math.clz32(bits & -bits);
          if (!this.#mayHold(row, column)) continue;
          if (this.floor.hasCornerWithin(row * columns + column, x, y, ux, uy, along, half)) return true;
          undecided = true;
        }
      }
    }
    return undecided && this.floor.meetsEdgeOf(x, y, ux, uy, along, half);
  }

  #any(bits: Int32Array, row: number, from: number, to: number): boolean {
    const base = row * this.#words;
    const firstWord = from >> 5;
    const lastWord = to >> 5;
    const head = -1 << (from & 31);
    const tail = -1 >>> (31 - (to & 31));
    if (firstWord === lastWord) return (bits[base + firstWord] & head & tail) !== 0;
    if ((bits[base + firstWord] & head) !== 0 || (bits[base + lastWord] & tail) !== 0) return true;
    for (let word = firstWord + 1; word < lastWord; word++) if (bits[base + word] !== 0) return true;
    return false;
  }

  /** A set bit of `maybe`, checked: a cell in whose centre is no room is tried exactly, as if it were a window. */
  #mayHold(row: number, column: number): boolean {
    const word = row * this.#words + (column >> 5);
    const bit = 1 << (column & 31);
    if (((this.#sure[word] | this.#checked[word]) & bit) !== 0) return true;
    this.#checked[word] |= bit;
    const x = this.centerX(column);
    const y = this.centerY(row);
    const half = CELL / 2;
    const holds =
      this.floor.hasCornerWithin(row * this.columns + column, x, y, 1, 0, half, half) ||
      this.floor.meetsEdgeOf(x, y, 1, 0, half, half);
    if (!holds) this.#maybe[word] &= ~bit;
    return holds;
  }

  /** Sets a row's bits. The slack changes by at most the way gone, so one value settles a run of cells. */
  #build(row: number): void {
    this.#built[row] = 1;
    const y = this.centerY(row);
    let column = 0;
    while (column < this.columns) {
      const slack = this.floor.slack(this.centerX(column), y);
      const missing = -slack - CELL_RADIUS - 2 * TOUCH;
      if (missing > 0) {
        column += 1 + Math.floor(missing / CELL);
        continue;
      }
      const end = Math.min(this.columns - 1, column + Math.max(0, Math.floor(slack / CELL)));
      for (; column <= end; column++) {
        const word = row * this.#words + (column >> 5);
        const bit = 1 << (column & 31);
        this.#maybe[word] |= bit;
        if (slack >= -TOUCH) this.#sure[word] |= bit;
      }
    }
  }
}
