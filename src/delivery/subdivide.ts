import { BLOCKED, FREE, MIXED, PoseJudge } from './plan-feature.js';
import { mayLieIn, poseInZones } from './plan-feature-ends.js';
import { type HeadingTable, headingTable } from './plan-feature-flat.js';
import type { PlanPose, PlanShape, PoseSlack } from './plan-shape.js';
import type { PlanEnd, PlanSpace } from './plan-space.js';
import { PoseBoxes } from './pose-boxes.js';
import { type PoseBounds, posesThrough, shorten } from './subdivide-route.js';
import { BoxSearch, GOALS, MAY_GOAL, MAY_START, STARTS } from './subdivide-search.js';

export interface FindPathOptions {
  /** Most boxes of poses to judge. */
  readonly maxBoxes: number;
  /** Boxes are split until no point of the shape moves farther than this from one end of a box to its other, mm. */
  readonly resolution: number;
  readonly slack?: PoseSlack;
}

export interface PathAnswer {
  /** `path` and `no` are proofs up to rounding. */
  readonly answer: 'path' | 'no' | 'undecided';
  /**
   * For `path`: poses from the start to the goal; between two of them x, y and heading run evenly and the shape touches nothing. Headings
   * run on without a jump.
   */
  readonly poses: readonly PlanPose[];
  /** How many boxes were judged. */
  readonly boxes: number;
  /** What ended an undecided search: no boxes left to judge, or all that matter are as small as the resolution. */
  readonly reason: 'proved' | 'budget' | 'resolution';
}

/** How often in a row a box on the way is halved before the next look for a way. */
const LEVELS = 3;

const START = 0;
const GOAL = 1;

/** Units of a side (2 ** -24 of the window) within which a pose counts as in a box. */
const ROUNDING = 1e-3;

/** Root boxes cover an eighth of a turn each, so that headings square to the axes lie on their bounds. */
const EIGHTH = Math.PI / 4;

/**
 * Is there a way for `shape` from `start` to `goal` outside the solids of `space`? By subdivision of the poses (x, y, heading) into boxes that
 * are free, blocked or mixed (soft subdivision search: Wang, Chiang and Yap 2013), with bounds that are exact along each axis
 * (see PoseJudge). Boxes along the most promising way are split until a way runs through free boxes only (`path`) or every way is cut
 * by blocked ones (`no`).
 *
 * An end given as zones means: from (to) anywhere in them. `path` then starts at some pose of a zone; `no` rules out every pose of
 * every zone. With a slack the heading counts over a full turn, since the slack need not be the same after half a turn.
 */
export function findPath(
  space: PlanSpace,
  shape: PlanShape,
  start: PlanEnd,
  goal: PlanEnd,
  options: FindPathOptions,
): PathAnswer {
  return new Subdivision(space, shape, start, goal, options).run();
}

class Subdivision {
  private readonly boxes: PoseBoxes;
  private readonly judge: PoseJudge;
  private readonly search: BoxSearch;
  private readonly scaleX: number;
  private readonly scaleY: number;
  private readonly turn: number;
  private readonly headingStep: number;
  private readonly reach: number;
  private readonly table: HeadingTable;
  private readonly ends: readonly [PlanEnd, PlanEnd];
  private judged = 0;

  constructor(
    private readonly space: PlanSpace,
    private readonly shape: PlanShape,
    start: PlanEnd,
    goal: PlanEnd,
    private readonly options: FindPathOptions,
  ) {
    this.ends = [start, goal];
    const slack = options.slack ?? null;
    this.turn = slack === null ? Math.PI : 2 * Math.PI;
    this.reach = Math.hypot(shape.halfLength, shape.halfWidth);
    const steps = 2 ** Math.ceil(Math.log2(Math.max(16, (2 * this.reach * this.turn) / options.resolution)));
    this.table = headingTable(Math.min(steps, 2 ** 16), this.turn);
    this.headingStep = this.turn / this.table.steps;
    this.boxes = new PoseBoxes(this.table.steps);
    this.judge = new PoseJudge(space, shape, this.table, slack);
    this.search = new BoxSearch(this.boxes);
    this.scaleX = (space.x1 - space.x0) / this.boxes.units[0];
    this.scaleY = (space.y1 - space.y0) / this.boxes.units[1];
  }

  run(): PathAnswer {
    this.plantRoots();
    const passable = (box: number): boolean => this.boxes.state[box] === FREE || this.canSplit(box);
    const any = (): boolean => true;
    for (;;) {
      const path = this.search.find(passable) ?? this.search.find(any);
      if (path === null) return this.answer('no', 'proved');
      const open = path.filter((box, i) => !this.isProved(box, i === 0, i === path.length - 1));
      if (open.length === 0) return this.prove(path);
      if (this.judged >= this.options.maxBoxes) return this.answer('undecided', 'budget');
      let split = 0;
      for (const box of open) if (this.canSplit(box)) split += this.split(box, LEVELS);
      if (split === 0) return this.answer('undecided', 'resolution');
    }
  }
  private answer(answer: PathAnswer['answer'], reason: PathAnswer['reason']): PathAnswer {
    return { answer, poses: [], boxes: this.judged, reason };
  }

  private prove(path: readonly number[]): PathAnswer {
    const row = path.map((box) => this.bounds(box));
    const [start, goal] = [START, GOAL].map((end) => {
      const box = end === START ? path[0] : path[path.length - 1];
      this.judgeBox(box, 0);
      return this.poseAtEnd(box, end) ?? middleOf(this.bounds(box));
    });
    const poses = shorten(posesThrough(row, start, goal, this.turn), this.judge);
    return { answer: 'path', poses, boxes: this.judged, reason: 'proved' };
  }

  private bounds(box: number): PoseBounds {
    const { low, size } = this.boxes;
    const { space, scaleX, scaleY, headingStep } = this;
    const at = 3 * box;
    return {
      x0: space.x0 + low[at] * scaleX,
      x1: space.x0 + (low[at] + size[at]) * scaleX,
      y0: space.y0 + low[at + 1] * scaleY,
      y1: space.y0 + (low[at + 1] + size[at + 1]) * scaleY,
      from: low[at + 2] * headingStep,
      to: (low[at + 2] + size[at + 2]) * headingStep,
    };
  }

  private plantRoots(): void {
    const { boxes, table } = this;
    const count = Math.round(this.turn / EIGHTH);
    for (let i = 0; i < count; i++) {
      const root = boxes.add();
      boxes.size.set([boxes.units[0], boxes.units[1], table.steps / count], 3 * root);
      boxes.low[3 * root + 2] = (i * table.steps) / count;
      this.evaluate(root, this.judge.all, MAY_START | MAY_GOAL);
    }
    for (let i = 0; i < count; i++) {
      const next = (i + 1) % count;
      if (boxes.state[i] !== BLOCKED && boxes.state[next] !== BLOCKED) boxes.link(i, next);
    }
  }

  /** Judges a box of whose parent `mask` and `ends` are known. */
  private evaluate(box: number, mask: number, ends: number): void {
    const { boxes, judge } = this;
    const state = this.judgeBox(box, mask);
    this.judged++;
    boxes.state[box] = state;
    boxes.mask[box] = judge.mask;
    boxes.along[box] = judge.along;
    if (state === BLOCKED) return;
    let found = 0;
    for (const end of [START, GOAL]) {
      const may = end === START ? MAY_START : MAY_GOAL;
      if ((ends & may) === 0 || !this.mayEnd(box, end)) continue;
      found |= may;
      if (state === FREE && this.poseAtEnd(box, end) !== null) found |= end === START ? STARTS : GOALS;
    }
    boxes.ends[box] = found;
    if ((found & MAY_START) !== 0) this.search.addStart(box);
  }

  private judgeBox(box: number, mask: number): number {
    const { low, size } = this.boxes;
    const at = 3 * box;
    const hx = (size[at] * this.scaleX) / 2;
    const hy = (size[at + 1] * this.scaleY) / 2;
    return this.judge.judge(
      this.space.x0 + low[at] * this.scaleX + hx,
      this.space.y0 + low[at + 1] * this.scaleY + hy,
      hx,
      hy,
      low[at + 2],
      low[at + 2] + size[at + 2],
      mask,
    );
  }

  /** Whether the box judged last may hold a pose of an end. */
  private mayEnd(box: number, end: number): boolean {
    const where = this.ends[end];
    if ('heading' in where) return this.holds(box, where);
    const { x, y } = middleOf(this.bounds(box));
    return mayLieIn(where, this.shape, this.judge.span, x, y);
  }

  /** A pose of an end in the box judged last, one that may hold one. */
  private poseAtEnd(box: number, end: number): PlanPose | null {
    const where = this.ends[end];
    if ('heading' in where) return where;
    const first = this.boxes.low[3 * box + 2];
    const last = first + this.boxes.size[3 * box + 2];
    const middle = middleOf(this.bounds(box));
    return poseInZones(where, this.shape, this.judge.span, this.table, middle, first, last);
  }

  private holds(box: number, pose: PlanPose): boolean {
    const { low, size } = this.boxes;
    const at = 3 * box;
    const x = (pose.x - this.space.x0) / this.scaleX - low[at];
    const y = (pose.y - this.space.y0) / this.scaleY - low[at + 1];
    const turned = pose.heading / this.headingStep - low[at + 2];
    const { steps } = this.table;
    const heading = turned - Math.floor(turned / steps) * steps;
    return (
      x >= -ROUNDING &&
      x <= size[at] + ROUNDING &&
      y >= -ROUNDING &&
      y <= size[at + 1] + ROUNDING &&
      (heading <= size[at + 2] + ROUNDING || heading >= steps - ROUNDING)
    );
  }

  private isProved(box: number, first: boolean, last: boolean): boolean {
    if (this.boxes.state[box] !== FREE) return false;
    const ends = this.boxes.ends[box];
    return (!first || (ends & STARTS) !== 0) && (!last || (ends & GOALS) !== 0);
  }

  /** How far a point of the shape may move along a side of a box, mm. */
  private extent(box: number, side: number): number {
    const size = this.boxes.size[3 * box + side];
    if (side === 2) return size < 4 ? 0 : size * this.headingStep * this.reach;
    return size * (side === 0 ? this.scaleX : this.scaleY);
  }

  private canSplit(box: number): boolean {
    const { resolution } = this.options;
    for (let side = 0; side < 3; side++) if (this.extent(box, side) > resolution) return true;
    return false;
  }

  /** Splits a box in two, and what is mixed of it again, `levels` deep; returns how many splits were made. */
  private split(box: number, levels: number): number {
    const { boxes } = this;
    let side = boxes.along[box];
    if (this.extent(box, side) <= this.options.resolution) {
      for (let other = 0; other < 3; other++)
        if (this.extent(box, other) > this.extent(box, side)) side = other;
    }
    const first = boxes.halve(box, side);
    for (let half = first; half < first + 2; half++) {
      this.evaluate(half, boxes.state[box] === FREE ? 0 : boxes.mask[box], boxes.ends[box]);
    }
    boxes.handOn(box);
    let splits = 1;
    if (levels > 1) {
      for (let half = first; half < first + 2; half++) {
        if (boxes.state[half] === MIXED && this.canSplit(half)) splits += this.split(half, levels - 1);
      }
    }
    return splits;
  }
}

function middleOf(box: PoseBounds): PlanPose {
  return { x: (box.x0 + box.x1) / 2, y: (box.y0 + box.y1) / 2, heading: (box.from + box.to) / 2 };
}
