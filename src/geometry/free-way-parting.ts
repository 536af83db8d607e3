import type { Gap } from './free-way-gaps.js';
import type { WayPlan } from './free-way-plan.js';
import { orientationXY } from './predicates.js';

/**
 * Which of some places a disc can go between, from the gaps that are too narrow for it.
 *
 * Let p and q be places where a disc of radius h is free. It cannot go from p to q exactly if some closed curve made of edges and of
 * gaps shorter than 2h has one of them inside and the other outside.
 * - Such a curve parts them: a free centre keeps h from every edge, and every point of a gap shorter than 2h is nearer than h to one of its ends.
 * - Where the disc cannot go, the points nearer than h to an edge hold a closed curve that parts p from q. Moving each of its points towards
 *   a nearest edge point, which brings it no nearer than h to p or q, leaves stretches of edges and jumps between edges a and b of less
 *   than 2h. A jump slides to the shortest line between the two edges: its length is convex as both ends move along straight edges, so it stays
 *   below 2h, and neither p nor q is ever on it. How often the curve winds round p and round q stays the same all the while.
 *
 * Closed curves of edges and gaps are sums, crossing by crossing, of one loop for each gap that closes one; a place is inside a sum if it is inside
 * an odd number of the parts. So two places go together exactly if every such loop has both inside or both outside. Insides are decided exactly;
 * all that is rounded is the length of a gap.
 */
export class Parting {
  /** By place: places with the same number go together. */
  readonly labels: Int32Array;
  private count = 1;
  private readonly words: number;
  /** Places by x, and their coordinates in that order. */
  private readonly order: Int32Array;
  private readonly sortedX: Float64Array;
  private readonly sortedY: Float64Array;
  /** By edge: bits of the places that have the curve along its ring up to the edge above an odd number of times below them. */
  private readonly alongRing: Uint32Array;
  private readonly parent: Int32Array;
  /** By ring: the same bits for the curve to its parent in the tree of rings. */
  private readonly toParent: Uint32Array;
  private readonly mask: Uint32Array;

  /** All places together, before any gap; no place on an edge. */
  constructor(
    private readonly plan: WayPlan,
    xs: ArrayLike<number>,
    ys: ArrayLike<number>,
  ) {
    const places = xs.length;
    this.labels = new Int32Array(places);
    this.words = Math.max(1, (places + 31) >> 5);
    this.order = Int32Array.from({ length: places }, (_, k) => k).sort((a, b) => xs[a] - xs[b] || a - b);
    this.sortedX = Float64Array.from(this.order, (k) => xs[k]);
    this.sortedY = Float64Array.from(this.order, (k) => ys[k]);
    this.parent = Int32Array.from(plan.rings, (_, r) => r);
    this.toParent = new Uint32Array(plan.rings.length * this.words);
    this.mask = new Uint32Array(this.words);
    this.alongRing = new Uint32Array(plan.count * this.words);
    const { first, ax, ay, bx, by } = plan;
    for (let r = 0; r < plan.rings.length; r++) {
      this.mask.fill(0);
      for (let i = first[r]; i < first[r + 1]; i++) {
        this.alongRing.set(this.mask, i * this.words);
        this.passBelow(ax[i], ay[i], bx[i], by[i]);
      }
    }
  }

  /** Takes in one more gap; true where places that went together no longer do. */
  add(gap: Gap): boolean {
    const { plan, mask, words, alongRing } = this;
    const { edgeA, edgeB } = gap;
    for (let w = 0; w < words; w++) mask[w] = alongRing[edgeA * words + w] ^ alongRing[edgeB * words + w];
    this.passBelow(plan.ax[edgeA], plan.ay[edgeA], gap.ax, gap.ay);
    if (gap.length > 0) this.passBelow(gap.ax, gap.ay, gap.bx, gap.by);
    this.passBelow(gap.bx, gap.by, plan.ax[edgeB], plan.ay[edgeB]);
    const rootA = this.toRoot(plan.ringOf[edgeA]);
    const rootB = this.toRoot(plan.ringOf[edgeB]);
    if (rootA !== rootB) {
      this.parent[rootB] = rootA;
      this.toParent.set(mask, rootB * words);
      return false;
    }
    return this.split();
  }

  /** The ring's root; the curve that leads there is added to the mask. */
  private toRoot(ring: number): number {
    let r = ring;
    while (this.parent[r] !== r) {
      for (let w = 0; w < this.words; w++) this.mask[w] ^= this.toParent[r * this.words + w];
      r = this.parent[r];
    }
    return r;
  }

  /**
   * Adds the stretch from u to v to the mask: a place has it below when a ray straight down from the place crosses it. Of a place's x each end
   * counts as right of it unless it is left of it, so a closed curve is crossed an odd number of times exactly by places inside it.
   */
  private passBelow(ux: number, uy: number, vx: number, vy: number): void {
    if (ux === vx) return;
    const rightwards = vx > ux;
    const from = rightwards ? ux : vx;
    const to = rightwards ? vx : ux;
    const low = Math.min(uy, vy);
    const high = Math.max(uy, vy);
    const { sortedX, sortedY, order, mask } = this;
    for (let k = firstAtLeast(sortedX, from); k < sortedX.length; k++) {
      const x = sortedX[k];
      if (x >= to) break;
      const y = sortedY[k];
      if (y < low) continue;
      if (y <= high && orientationXY(ux, uy, vx, vy, x, y) > 0 !== rightwards) continue;
      const place = order[k];
      mask[place >> 5] ^= 1 << (place & 31);
    }
  }

  /** Parts the places inside the mask's loop from those outside. */
  private split(): boolean {
    const { labels, mask } = this;
    let any = 0;
    for (let w = 0; w < this.words; w++) any |= mask[w];
    if (any === 0) return false;
    // By label: whether some place with it is outside, and the label of those inside.
    const outside = new Uint8Array(this.count);
    const inside = new Int32Array(this.count).fill(-1);
    for (let k = 0; k < labels.length; k++) {
      if (((mask[k >> 5] >>> (k & 31)) & 1) === 0) outside[labels[k]] = 1;
    }
    let parted = false;
    for (let k = 0; k < labels.length; k++) {
      const label = labels[k];
      if (((mask[k >> 5] >>> (k & 31)) & 1) === 0 || outside[label] === 0) continue;
      if (inside[label] < 0) {
        inside[label] = this.count++;
        parted = true;
      }
      labels[k] = inside[label];
    }
    return parted;
  }
}

function firstAtLeast(sorted: Float64Array, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle] < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
