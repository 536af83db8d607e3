import { FREE, MIXED } from './plan-feature.js';
import type { PoseBoxes } from './pose-boxes.js';

/** Bits of PoseBoxes.ends: a pose of the box may lie in the start; the box's middle does; likewise for the goal. */
export const MAY_START = 1;
export const STARTS = 2;
export const MAY_GOAL = 4;
export const GOALS = 8;

/** Cost of a mixed box; of a free one it is 0. Kept small so that waiting boxes go into a few lists instead of a heap. */
const MIXED_COST = 1;

/**
 * Looks for the way from start to goal, over boxes that share faces, on which the fewest boxes are mixed. None over free and mixed boxes
 * together: there is no way at all, for every motion keeps to boxes that are not blocked.
 */
export class BoxSearch {
  private seen = new Int32Array(1024);
  private cost = new Int32Array(1024);
  private from = new Int32Array(1024);
  private round = 0;
  /** Leaves that may hold a start, and some that were split since. */
  private readonly starts: number[] = [];

  constructor(private readonly boxes: PoseBoxes) {}

  addStart(box: number): void {
    this.starts.push(box);
  }

  /**
   * From start to goal, by box; null: there is no way. `passable` leaves out mixed boxes that cannot be split any further.
   */
  find(passable: (box: number) => boolean): number[] | null {
    const { boxes } = this;
    this.begin();
    let now: number[] = [];
    let next: number[] = [];
    let kept = 0;
    for (const box of this.starts) {
      if (!boxes.isLeaf(box)) continue;
      this.starts[kept++] = box;
      if (!passable(box)) continue;
      const sure = boxes.state[box] === FREE && (boxes.ends[box] & STARTS) !== 0;
      this.reach(box, -1, sure ? 0 : MIXED_COST);
      (sure ? now : next).push(box);
    }
    this.starts.length = kept;
    for (let cost = 0; now.length > 0 || next.length > 0; cost++) {
      let end = -1;
      for (let i = 0; i < now.length; i++) {
        const box = now[i];
        if (this.cost[box] !== cost) continue;
        const ends = boxes.ends[box];
        if ((ends & MAY_GOAL) !== 0) {
          // A goal that is not sure yet costs as much as a mixed box: a sure one at the same cost goes first.
          if ((ends & GOALS) !== 0 || boxes.state[box] === MIXED) return this.trace(box);
          if (end < 0) end = box;
        }
        for (const other of boxes.neighbours(box)) {
          const mixed = boxes.state[other] === MIXED;
          const through = mixed ? cost + MIXED_COST : cost;
          if (this.seen[other] === this.round && this.cost[other] <= through) continue;
          if (mixed && !passable(other)) continue;
          this.reach(other, box, through);
          (mixed ? next : now).push(other);
        }
      }
      if (end >= 0) return this.trace(end);
      now = next;
      next = [];
    }
    return null;
  }

  private begin(): void {
    this.round++;
    const room = this.boxes.state.length;
    if (this.seen.length >= room) return;
    this.seen = new Int32Array(room);
    this.cost = new Int32Array(room);
    this.from = new Int32Array(room);
  }

  private reach(box: number, from: number, cost: number): void {
    this.seen[box] = this.round;
    this.cost[box] = cost;
    this.from[box] = from;
  }

  private trace(end: number): number[] {
    const path: number[] = [];
    for (let box = end; box >= 0; box = this.from[box]) path.push(box);
    return path.reverse();
  }
}
