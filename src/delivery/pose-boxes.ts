import { BLOCKED } from './plan-feature.js';

/** Halvings of a side of the window, and of a turn of headings; whole numbers of this size tell exactly which boxes touch. */
const FINEST = 24;

/**
 * A tree of boxes of poses. Each side is a dyadic interval in whole units, low and size (a power of two), so that two boxes touch or
 * not without rounding. Headings run round: the last unit touches the first.
 *
 * Links: every box that is not blocked lists the leaves of the tree it shares a face with, blocked ones left out. When a box is split
 * only its children's lists are made; others find the children when they next look (see `neighbours`).
 */
export class PoseBoxes {
  count = 0;
  /** Low ends, three a box: x, y, heading. */
  low: Int32Array;
  /** Sizes, three a box. */
  size: Int32Array;
  state: Int8Array;
  mask: Int32Array;
  /** Along which side it would be split. */
  along: Uint8Array;
  /** Two bits for each end: may lie in it, its middle does. */
  ends: Uint8Array;
  /** First of the two children; 0: a leaf. */
  child: Int32Array;
  private readonly links: number[][] = [];
  private readonly turn: number;

  /** Units along x, y and the headings: the sides of the whole. */
  readonly units: readonly [number, number, number];

  constructor(headingUnits: number) {
    this.units = [2 ** FINEST, 2 ** FINEST, headingUnits];
    this.turn = headingUnits;
    const room = 1024;
    this.low = new Int32Array(3 * room);
    this.size = new Int32Array(3 * room);
    this.state = new Int8Array(room);
    this.mask = new Int32Array(room);
    this.along = new Uint8Array(room);
    this.ends = new Uint8Array(room);
    this.child = new Int32Array(room);
  }

  /** Room for a new box whose three sides are copied from nothing or from its parent; returns its number. */
  add(): number {
    if (this.count === this.state.length) this.grow();
    this.links.push([]);
    return this.count++;
  }

  isLeaf(box: number): boolean {
    return this.child[box] === 0;
  }

  /** Makes two halves along one side (0, 1, 2), as yet unjudged and without links; returns the first, the second follows it. */
  halve(box: number, side: number): number {
    const first = this.add();
    this.add();
    for (let half = 0; half < 2; half++) {
      const to = 3 * (first + half);
      for (let s = 0; s < 3; s++) {
        this.low[to + s] = this.low[3 * box + s];
        this.size[to + s] = this.size[3 * box + s];
      }
      const size = this.size[3 * box + side] / 2;
      this.size[to + side] = size;
      this.low[to + side] += half * size;
    }
    this.child[box] = first;
    return first;
  }

  /** Hands the links of a box that was halved on to its halves, once these are judged. */
  handOn(box: number): void {
    const first = this.child[box];
    const neighbours = this.neighbours(box);
    for (const half of [first, first + 1]) {
      if (this.state[half] === BLOCKED) continue;
      const links = this.links[half];
      for (const other of neighbours) if (this.touch(half, other)) links.push(other);
      const twin = half === first ? first + 1 : first;
      if (this.state[twin] !== BLOCKED) links.push(twin);
    }
    this.links[box] = [];
  }

  /** Links two boxes that touch. */
  link(a: number, b: number): void {
    this.links[a].push(b);
    this.links[b].push(a);
  }

  /** The leaves not blocked that share a face with a box (itself a leaf, or one just halved). */
  neighbours(box: number): readonly number[] {
    const links = this.links[box];
    const found = links.length;
    let kept = 0;
    for (let i = 0; i < found; i++) {
      const other = links[i];
      if (this.child[other] === 0) links[kept++] = other;
      else this.gather(other, box, links);
    }
    // What was gathered lies behind the old entries: close the gap.
    if (kept < found) {
      links.copyWithin(kept, found);
      links.length -= found - kept;
    }
    return links;
  }

  /** Appends the leaves under `tree` that touch the box and are not blocked. */
  private gather(tree: number, box: number, out: number[]): void {
    const first = this.child[tree];
    for (let k = first; k < first + 2; k++) {
      if (this.state[k] === BLOCKED || !this.touch(box, k)) continue;
      if (this.child[k] === 0) out.push(k);
      else this.gather(k, box, out);
    }
  }

  /** Whether two boxes, neither within the other, share a face. */
  touch(a: number, b: number): boolean {
    const { low, size } = this;
    const i = 3 * a;
    const k = 3 * b;
    let faces = 0;
    for (let s = 0; s < 2; s++) {
      const from = low[i + s] - low[k + s];
      if (from > size[k + s] || -from > size[i + s]) return false;
      if (from === size[k + s] || -from === size[i + s]) faces++;
    }
    const ahead = (low[k + 2] - low[i + 2]) & (this.turn - 1);
    const behind = this.turn - ahead;
    if (ahead >= size[i + 2] && behind >= size[k + 2]) {
      if (ahead !== size[i + 2] && behind !== size[k + 2]) return false;
      faces++;
    }
    return faces === 1;
  }

  private grow(): void {
    const doubled = <T extends Int32Array | Int8Array | Uint8Array>(old: T, fresh: T): T => {
      fresh.set(old);
      return fresh;
    };
    const room = 2 * this.state.length;
    this.low = doubled(this.low, new Int32Array(3 * room));
    this.size = doubled(this.size, new Int32Array(3 * room));
    this.state = doubled(this.state, new Int8Array(room));
    this.mask = doubled(this.mask, new Int32Array(room));
    this.along = doubled(this.along, new Uint8Array(room));
    this.ends = doubled(this.ends, new Uint8Array(room));
    this.child = doubled(this.child, new Int32Array(room));
  }
}
