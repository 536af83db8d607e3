import { EdgeBins } from './free-way-bins.js';
import { compareGaps, type Gap } from './free-way-gaps.js';
import { WAY_SLACK, type WayPlan } from './free-way-plan.js';
import { moveToMiddle } from './free-way-retract.js';
import type { Line } from './free-way-target.js';

/** mm; see the constructor. */
const SEARCH_SLACK = 0.9 * WAY_SLACK;

/**
 * Places for the middle of a way, and straight steps between them that keep half its width from everything: a grid whose points are moved
 * to the middle of passages, the middles of gaps that the way gets through, and the stretches on which it can arrive. Points and steps are
 * looked at when a search comes to them.
 */
export class WayMap {
  readonly bins: EdgeBins;
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  private readonly least: number;
  private readonly across: number;
  private readonly up: number;
  private readonly minX: number;
  private readonly minY: number;
  private readonly grid: number;
  /** Clearance up to the bins' reach; NaN: not looked at yet; -1: not free. */
  private readonly clearances: Float64Array;
  /** Other places than those of the grid, by the cell that they are in. */
  private readonly others = new Map<number, number[]>();
  /** First of the places on each stretch, and how many places there are before the gaps. */
  private readonly firstOfStretch: number[] = [];
  private readonly otherX: number[] = [];
  private readonly otherY: number[] = [];

  constructor(
    private readonly plan: WayPlan,
    gaps: readonly Gap[],
    stretches: readonly Line[],
    width: number,
    private readonly spacing: number,
  ) {
    // A little less slack than the check of the whole path has, which rounds in its own way.
    this.least = width / 2 - SEARCH_SLACK;
    this.bins = new EdgeBins(plan, this.least + 4 * spacing);
    const [minX, maxX, minY, maxY] = plan.boxes;
    this.minX = minX;
    this.minY = minY;
    this.across = Math.max(1, Math.ceil((maxX - minX) / spacing));
    this.up = Math.max(1, Math.ceil((maxY - minY) / spacing));
    this.grid = this.across * this.up;
    for (const stretch of stretches) this.placeStretch(stretch);
    this.firstOfStretch.push(this.otherX.length);
    this.placeGaps(gaps, width);
    this.count = this.grid + this.otherX.length;
    this.x = new Float64Array(this.count);
    this.y = new Float64Array(this.count);
    this.x.set(this.otherX, this.grid);
    this.y.set(this.otherY, this.grid);
    this.clearances = new Float64Array(this.count).fill(Number.NaN);
    this.otherX.forEach((x, k) => {
      const place = this.grid + k;
      const cell = this.cellOf(x, this.otherY[k]);
      const list = this.others.get(cell);
      if (list === undefined) this.others.set(cell, [place]);
      else list.push(place);
    });
  }

  /** Calls with each place on a stretch. */
  onStretch(k: number, visit: (place: number) => void): void {
    for (let i = this.firstOfStretch[k]; i < this.firstOfStretch[k + 1]; i++) visit(this.grid + i);
  }

  /** Calls with each place that can be reached from one in a straight step, and with the step's length. */
  steps(place: number, visit: (to: number, length: number) => void): void {
    const cell = place < this.grid ? place : this.cellOf(this.x[place], this.y[place]);
    const column = cell % this.across;
    const row = (cell - column) / this.across;
    for (let r = Math.max(0, row - 1); r <= Math.min(this.up - 1, row + 1); r++) {
      for (let c = Math.max(0, column - 1); c <= Math.min(this.across - 1, column + 1); c++) {
        const there = r * this.across + c;
        if (there !== place) this.step(place, there, visit);
        for (const other of this.others.get(there) ?? []) if (other !== place) this.step(place, other, visit);
      }
    }
  }

  /** Clearance at a place, up to the bins' reach; -1 where the way is not free there. */
  clearance(place: number): number {
    const known = this.clearances[place];
    if (!Number.isNaN(known)) return known;
    if (place < this.grid) {
      const column = place % this.across;
      const row = (place - column) / this.across;
      const { spacing } = this;
      const x = this.minX + (column + 0.5) * spacing;
      const y = this.minY + (row + 0.5) * spacing;
      [this.x[place], this.y[place]] = moveToMiddle(
        this.plan,
        this.bins,
        x,
        y,
        this.least + spacing / 2,
        1.5 * spacing,
      );
    }
    const clearance = this.bins.clearance(this.x[place], this.y[place]);
    this.clearances[place] = clearance < this.least ? -1 : clearance;
    return this.clearances[place];
  }

  private step(from: number, to: number, visit: (to: number, length: number) => void): void {
    const there = this.clearance(to);
    if (there < 0) return;
    const length = Math.hypot(this.x[to] - this.x[from], this.y[to] - this.y[from]);
    // No point of the step is nearer to anything than the mean of both clearances less half its length.
    const sure = (this.clearance(from) + there - length) / 2 >= this.least;
    if (sure || this.bins.keeps(this.x[from], this.y[from], this.x[to], this.y[to], this.least))
      visit(to, length);
  }

  private cellOf(x: number, y: number): number {
    const column = Math.min(this.across - 1, Math.max(0, Math.floor((x - this.minX) / this.spacing)));
    const row = Math.min(this.up - 1, Math.max(0, Math.floor((y - this.minY) / this.spacing)));
    return row * this.across + column;
  }

  private placeStretch([ax, ay, bx, by]: Line): void {
    this.firstOfStretch.push(this.otherX.length);
    // An odd number, so that the middle is one of them; the very ends are free by rounding at best.
    const places = 1 + 2 * Math.ceil(Math.hypot(bx - ax, by - ay) / (2 * this.spacing));
    for (let k = 0; k < places; k++) {
      this.otherX.push(ax + ((bx - ax) * (k + 0.5)) / places);
      this.otherY.push(ay + ((by - ay) * (k + 0.5)) / places);
    }
  }

  /**
   * The middles of gaps little wider than the way, the narrowest first, and a little way to both sides of each square to the gap: there the
   * gap's own ends are no nearer than in its middle. Where middles lie close together the narrowest stands for all.
   */
  private placeGaps(gaps: readonly Gap[], width: number): void {
    const { spacing, bins, least } = this;
    const useful = gaps.filter(
      ({ length }) => length >= width - 2 * WAY_SLACK && length < width + 2 * spacing && length > 0,
    );
    useful.sort(compareGaps);
    const apart = spacing / 4;
    const taken = new Set<string>();
    for (const { ax, ay, bx, by, length } of useful) {
      const x = (ax + bx) / 2;
      const y = (ay + by) / 2;
      const key = `${Math.round(x / apart)} ${Math.round(y / apart)}`;
      if (taken.has(key) || bins.clearance(x, y) < least) continue;
      taken.add(key);
      for (const t of [-1, -0.5, 0, 0.5, 1]) {
        this.otherX.push(x - (t * spacing * (by - ay)) / length);
        this.otherY.push(y + (t * spacing * (bx - ax)) / length);
      }
    }
  }
}
