/** A part of the plane of tilts and places: |tilt - centre| <= halfTilt, |x - centre| <= halfX. */
export interface TiltCell {
  readonly tilt: number;
  readonly x: number;
  readonly halfTilt: number;
  readonly halfX: number;
}

/** What is asked on the plane: the widest way from the cells that hold a start to those that hold an end. */
export interface WidestWay {
  readonly roots: readonly TiltCell[];
  /** No value in the cell is above this. */
  readonly upper: (cell: TiltCell) => number;
  /** No value in the cell is below this. */
  readonly lower: (cell: TiltCell) => number;
  readonly isStart: (cell: TiltCell) => boolean;
  readonly isEnd: (cell: TiltCell) => boolean;
  /** What one radian of tilt counts against one mm of x when a cell is split. */
  readonly reach: number;
}

export interface WidestOptions {
  readonly maxCells: number;
  /** Done once the two bounds are this near, mm. */
  readonly within: number;
  /** Done once the lower bound is at least this, or the upper one less than `below`. */
  readonly above: number;
  readonly below: number;
}

export interface WidestAnswer {
  /** The best way is at least this wide; -Infinity where none was found. */
  readonly atLeast: number;
  /** No way is wider. */
  readonly atMost: number;
  /** The cells of the way that proves `atLeast`: neighbours share a part of a side. */
  readonly way: readonly TiltCell[];
}

/**
 * The widest way through a plane of tilts (which come round after half a turn) and places: the greatest value such that some way from a start
 * to an end nowhere falls below it. Cells along the most promising way are split until the bounds of its values meet.
 */
export function widestWay(problem: WidestWay, options: WidestOptions): WidestAnswer {
  return new WidestSearch(problem, options).run();
}

class WidestSearch {
  private readonly cells: TiltCell[] = [];
  private readonly upper: number[] = [];
  private readonly lower: number[] = [];
  private readonly near: number[][] = [];
  private readonly alive: boolean[] = [];
  private starts = new Set<number>();
  private ends = new Set<number>();

  constructor(
    private readonly problem: WidestWay,
    private readonly options: WidestOptions,
  ) {}

  run(): WidestAnswer {
    const { maxCells, within, above, below } = this.options;
    const roots = this.problem.roots.map((cell) => this.add(cell));
    for (const i of roots) for (const k of roots) if (k > i) this.link(i, k);
    let best: WidestAnswer = {
      atLeast: Number.NEGATIVE_INFINITY,
      atMost: Number.POSITIVE_INFINITY,
      way: [],
    };
    for (;;) {
      const atMost = this.widest();
      if (atMost === Number.NEGATIVE_INFINITY) return { ...best, atMost };
      // A way whose cells are known to be as good as can be wants no splitting; the fewer others the better.
      const wanted = Math.min(atMost - within, above);
      const way = this.cheapest(atMost, wanted);
      const atLeast = way.reduce((least, i) => Math.min(least, this.lower[i]), Number.POSITIVE_INFINITY);
      if (atLeast > best.atLeast) best = { ...best, atLeast, way: way.map((i) => this.cells[i]) };
      best = { ...best, atMost };
      if (atMost - best.atLeast <= within || best.atLeast >= above || atMost < below) return best;
      if (this.cells.length >= maxCells) return best;
      for (const i of way) if (this.lower[i] < wanted) this.split(i);
    }
  }

  private add(cell: TiltCell): number {
    const i = this.cells.length;
    this.cells.push(cell);
    this.upper.push(this.problem.upper(cell));
    this.lower.push(this.problem.lower(cell));
    this.near.push([]);
    this.alive.push(true);
    if (this.problem.isStart(cell)) this.starts.add(i);
    if (this.problem.isEnd(cell)) this.ends.add(i);
    return i;
  }

  private split(i: number): void {
    const { tilt, x, halfTilt, halfX } = this.cells[i];
    const turn = halfTilt * this.problem.reach;
    const parts: TiltCell[] = [];
    const tilts = turn > 0.7 * halfX ? [-0.5, 0.5] : [0];
    const places = halfX > 0.7 * turn ? [-0.5, 0.5] : [0];
    for (const t of tilts) {
      for (const p of places) {
        parts.push({
          tilt: tilt + t * halfTilt,
          x: x + p * halfX,
          halfTilt: tilts.length === 2 ? halfTilt / 2 : halfTilt,
          halfX: places.length === 2 ? halfX / 2 : halfX,
        });
      }
    }
    const around = this.near[i];
    this.alive[i] = false;
    this.starts.delete(i);
    this.ends.delete(i);
    const added = parts.map((part) => this.add(part));
    for (const k of around) {
      this.near[k] = this.near[k].filter((other) => other !== i);
      for (const part of added) this.link(part, k);
    }
    for (const a of added) for (const b of added) if (a < b) this.link(a, b);
  }

  /** Neighbours: they share a part of a side, not only a corner. */
  private link(i: number, k: number): void {
    const a = this.cells[i];
    const b = this.cells[k];
    const byX = a.halfX + b.halfX - Math.abs(a.x - b.x);
    if (byX < -1e-6) return;
    const apart = a.tilt - b.tilt;
    const turned = Math.abs(apart - Math.PI * Math.round(apart / Math.PI));
    const byTilt = a.halfTilt + b.halfTilt - turned;
    if (byTilt < -1e-9 || (byX < 1e-6 && byTilt < 1e-9)) return;
    this.near[i].push(k);
    this.near[k].push(i);
  }

  /** The greatest value such that cells with upper bounds of no less join a start to an end. */
  private widest(): number {
    const heap = new CellHeap();
    const seen = new Set<number>();
    for (const i of this.starts) heap.push(i, -this.upper[i]);
    for (;;) {
      const top = heap.pop();
      if (top === null) return Number.NEGATIVE_INFINITY;
      if (seen.has(top.cell)) continue;
      seen.add(top.cell);
      if (this.ends.has(top.cell)) return -top.cost;
      for (const k of this.near[top.cell]) {
        if (!seen.has(k)) heap.push(k, Math.max(top.cost, -this.upper[k]));
      }
    }
  }

  /** Of the ways through cells with upper bounds of at least `atMost`, one with the fewest cells that may fall below `wanted`. */
  private cheapest(atMost: number, wanted: number): number[] {
    const heap = new CellHeap();
    const before = new Map<number, number>();
    const done = new Set<number>();
    const cost = new Map<number, number>();
    const price = (i: number): number => (this.lower[i] >= wanted ? 0.01 : 1);
    for (const i of this.starts) {
      if (this.upper[i] < atMost) continue;
      cost.set(i, price(i));
      heap.push(i, price(i));
    }
    for (;;) {
      const top = heap.pop();
      if (top === null) return [];
      if (done.has(top.cell)) continue;
      done.add(top.cell);
      if (this.ends.has(top.cell)) {
        const way = [top.cell];
        for (let i = before.get(top.cell); i !== undefined; i = before.get(i)) way.push(i);
        return way.reverse();
      }
      for (const k of this.near[top.cell]) {
        if (done.has(k) || this.upper[k] < atMost) continue;
        const total = top.cost + price(k);
        const known = cost.get(k);
        if (known !== undefined && known <= total) continue;
        cost.set(k, total);
        before.set(k, top.cell);
        heap.push(k, total);
      }
    }
  }
}

/** A binary heap, the least cost first. */
class CellHeap {
  private readonly cell: number[] = [];
  private readonly cost: number[] = [];

  push(cell: number, cost: number): void {
    let i = this.cell.length;
    this.cell.push(cell);
    this.cost.push(cost);
    while (i > 0) {
      const parent = (i - 1) >> 1;
      if (this.cost[parent] <= cost) break;
      this.cell[i] = this.cell[parent];
      this.cost[i] = this.cost[parent];
      i = parent;
    }
    this.cell[i] = cell;
    this.cost[i] = cost;
  }

  pop(): { cell: number; cost: number } | null {
    const cell = this.cell[0];
    const cost = this.cost[0];
    const lastCell = this.cell.pop();
    const lastCost = this.cost.pop();
    if (lastCell === undefined || lastCost === undefined) return null;
    const size = this.cell.length;
    if (size > 0) {
      let i = 0;
      for (;;) {
        let child = 2 * i + 1;
        if (child >= size) break;
        if (child + 1 < size && this.cost[child + 1] < this.cost[child]) child++;
        if (this.cost[child] >= lastCost) break;
        this.cell[i] = this.cell[child];
        this.cost[i] = this.cost[child];
        i = child;
      }
      this.cell[i] = lastCell;
      this.cost[i] = lastCost;
    }
    return { cell, cost };
  }
}
