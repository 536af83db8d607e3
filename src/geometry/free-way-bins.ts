import { keepsFromEdge, squareToSegment, type WayPlan } from './free-way-plan.js';

/** Side of a bin, mm. */
const BIN = 400;

/** The edges near each square of the room, so that a look at one place need not go through all of them. */
export class EdgeBins {
  private readonly minX: number;
  private readonly minY: number;
  private readonly across: number;
  private readonly up: number;
  private readonly lists: (Int32Array | null)[];

  /** `reach`: clearances are told up to here, mm. */
  constructor(
    private readonly plan: WayPlan,
    readonly reach: number,
  ) {
    const [minX, maxX, minY, maxY] = plan.boxes;
    this.minX = minX;
    this.minY = minY;
    this.across = Math.max(1, Math.ceil((maxX - minX) / BIN));
    this.up = Math.max(1, Math.ceil((maxY - minY) / BIN));
    this.lists = new Array<Int32Array | null>(this.across * this.up).fill(null);
  }

  /** Distance from a point to the nearest edge, or `reach` where that is less. For a point within the outline's box. */
  clearance(x: number, y: number): number {
    const { ax, ay, bx, by } = this.plan;
    const list = this.near(x, y);
    let square = this.reach * this.reach;
    for (let k = 0; k < list.length; k++) {
      const i = list[k];
      const d = squareToSegment(x, y, ax[i], ay[i], bx[i], by[i]);
      if (d < square) square = d;
    }
    return Math.sqrt(square);
  }

  /** The nearest edge within `reach`; -1 where there is none. */
  nearest(x: number, y: number): number {
    const { ax, ay, bx, by } = this.plan;
    const list = this.near(x, y);
    let square = this.reach * this.reach;
    let nearest = -1;
    for (let k = 0; k < list.length; k++) {
      const i = list[k];
      const d = squareToSegment(x, y, ax[i], ay[i], bx[i], by[i]);
      if (d < square) {
        square = d;
        nearest = i;
      }
    }
    return nearest;
  }

  /** Whether the segment from p to q keeps `distance` from every edge. */
  keeps(px: number, py: number, qx: number, qy: number, distance: number): boolean {
    const { plan } = this;
    if (Math.hypot(qx - px, qy - py) + distance > this.reach) {
      for (let i = 0; i < plan.count; i++)
        if (!keepsFromEdge(plan, i, px, py, qx, qy, distance)) return false;
      return true;
    }
    const list = this.near(px, py);
    for (let k = 0; k < list.length; k++)
      if (!keepsFromEdge(plan, list[k], px, py, qx, qy, distance)) return false;
    return true;
  }

  /** Every edge within `reach` of the point is in the list. */
  private near(x: number, y: number): Int32Array {
    const column = Math.min(this.across - 1, Math.max(0, Math.floor((x - this.minX) / BIN)));
    const row = Math.min(this.up - 1, Math.max(0, Math.floor((y - this.minY) / BIN)));
    const known = this.lists[row * this.across + column];
    if (known !== null) return known;
    // Within half a bin's diagonal of its middle.
    const middleX = this.minX + (column + 0.5) * BIN;
    const middleY = this.minY + (row + 0.5) * BIN;
    const far = (this.reach + BIN * Math.SQRT1_2) ** 2;
    const { ax, ay, bx, by, count } = this.plan;
    const list: number[] = [];
    for (let i = 0; i < count; i++) {
      if (squareToSegment(middleX, middleY, ax[i], ay[i], bx[i], by[i]) <= far) list.push(i);
    }
    const near = Int32Array.from(list);
    this.lists[row * this.across + column] = near;
    return near;
  }
}
