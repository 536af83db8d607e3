import { BoxDistance } from './box-distance.js';
import { FRAME, farthestAlong, placeBox } from './box-distance-frame.js';
import type { Motion, MotionPose } from './motion.js';
import { type ConvexSolid, REACH } from './solids-convex.js';

/** Never narrowed down beyond this, mm. */
const FLOOR = 1e-4;
const MOST_HALVINGS = 40;
/** Stretches looked at before the rest is taken as it stands: still a bound, but a loose one. */
const MOST_STEPS = 200_000;
/** Distances above twice the least so far and this much need not be exact, mm. */
const FAR = 50;

/** A measured pair of box and solid: direction n, least n.p in the solid, gap along n. */
const ROW = 5;

/**
 * Branch and bound over the stretches of a motion, solid by solid.
 *
 * **The bound.** On a stretch let tau run from 0 to 1, n0 and n1 be any unit directions from the box to the solid, n = (1 - tau) n0 + tau n1 and g0, g1 the
 * gaps along n0 and n1 at the two ends. For a point q of the box at X = c + R q: c and n are linear in tau, and R is a product of three
 * rotations whose angles are linear in tau and change by A together, so |R' q| <= A D and |R'' q| <= A^2 D with D half the diagonal. Hence
 * (n.X)'' = 2 n'.c' + 2 n'.R'q + n.R''q >= -8 E with 8 E = max(0, -2 dn.dc + 2 |dn| A D + A^2 D), and n.X exceeds the chord between its ends by E at most.
 * Over the solid, least n.p is concave in tau: at least its chord. So the gap along n is at least min(g0, g1) - E, and as |n| <= 1 so is
 * the distance where that is positive. With n0 = n1 only the A^2 D is left; with the nearest directions of the two ends, E falls with the
 * square of the stretch as long as the box is clear, for the nearest direction is then continuous.
 */
export class Sweep {
  clearance: number = Infinity;
  step: number = 0;
  share: number = 0;
  nearest: number = 0;
  steps: number = 0;

  private readonly poses: readonly MotionPose[];
  private readonly distance = new BoxDistance();
  /** Half the diagonal. */
  private readonly half: number;
  private readonly frames: Float64Array;
  /** Where the frames of the middles start, one for each halving. */
  private readonly middles: number;
  private readonly rows: Float64Array;
  /** Least distance at any moment looked at. */
  private least = Infinity;
  /** Least bound of any stretch that is done with. */
  private proved = Infinity;
  private current = 0;
  private readonly scratch = { x: 0, y: 0, z: 0, heading: 0, tilt: 0, roll: 0 };

  constructor(
    private readonly motion: Motion,
    private readonly solids: readonly ConvexSolid[],
    private readonly finest: number,
  ) {
    this.poses = motion.poses;
    this.half = Math.hypot(motion.along, motion.across, motion.up) / 2;
    this.middles = this.poses.length;
    const places = this.middles + MOST_HALVINGS;
    this.frames = new Float64Array(FRAME * places);
    this.rows = new Float64Array(ROW * places);
  }

  run(): void {
    const { poses, solids } = this;
    for (let i = 0; i < poses.length; i++) {
      if (!this.withinReach(poses[i])) {
        this.clearance = -Infinity;
        this.step = i;
        return;
      }
      this.place(poses[i], i);
    }
    for (let k = 0; k < solids.length; k++) {
      this.current = k;
      for (let i = 0; i < poses.length; i++) this.measure(i, i, 0);
    }
    for (let k = 0; k < solids.length && this.least > 0; k++) {
      this.current = k;
      for (let i = 0; i < poses.length; i++) this.measure(i, i, 0);
      for (let i = 0; i + 1 < poses.length; i++) this.follow(i, 0, 1, i, i + 1, 0);
    }
    // Adding 0 makes 0 of -0.
    this.clearance = (this.least > 0 ? Math.min(this.least, this.proved) : this.least) + 0;
  }

  private withinReach({ x, y, z, heading, tilt, roll }: MotionPose): boolean {
    const turned = Number.isFinite(heading) && Number.isFinite(tilt) && Number.isFinite(roll);
    return turned && Math.max(Math.abs(x), Math.abs(y), Math.abs(z)) + this.half < REACH / 2;
  }

  private place(pose: MotionPose, place: number): void {
    const { along, across, up } = this.motion;
    placeBox(this.frames, FRAME * place, along, across, up, pose);
  }

  /** Measures the current solid from a placed box, and keeps the direction. */
  private measure(place: number, step: number, share: number): void {
    const { distance, rows } = this;
    const solid = this.solids[this.current];
    const gap = distance.between(this.frames, FRAME * place, solid, 2 * this.least + FAR);
    const row = ROW * place;
    rows[row] = distance.nx;
    rows[row + 1] = distance.ny;
    rows[row + 2] = distance.nz;
    rows[row + 3] = distance.level;
    rows[row + 4] = gap;
    // A gap that is no number counts as touching.
    if (gap >= this.least) return;
    this.least = Number.isNaN(gap) ? -Infinity : gap;
    this.step = step;
    this.share = share;
    this.nearest = this.current;
  }

  /** What every stretch has to be proved to keep. */
  private goal(): number {
    return this.least - Math.max(FLOOR, Math.min(this.finest, this.least / 10));
  }

  /** Proves the stretch [from, to] of a step, whose ends are placed at a and b, or halves it. */
  private follow(step: number, from: number, to: number, a: number, b: number, depth: number): void {
    this.steps++;
    const goal = this.goal();
    const bound = this.bound(step, to - from, a, b, goal);
    if (bound >= goal || this.least <= 0) {
      this.proved = Math.min(this.proved, bound);
      return;
    }
    if (depth >= MOST_HALVINGS || this.steps >= MOST_STEPS) {
      this.proved = Math.min(this.proved, bound);
      return;
    }
    const middle = (from + to) / 2;
    const place = this.middles + depth;
    this.mix(step, middle);
    this.place(this.scratch, place);
    this.measure(place, step, middle);
    this.follow(step, from, middle, a, place, depth + 1);
    this.follow(step, middle, to, place, b, depth + 1);
  }

  private mix(step: number, share: number): void {
    const { scratch } = this;
    const from = this.poses[step];
    const to = this.poses[step + 1];
    scratch.x = from.x + share * (to.x - from.x);
    scratch.y = from.y + share * (to.y - from.y);
    scratch.z = from.z + share * (to.z - from.z);
    scratch.heading = from.heading + share * (to.heading - from.heading);
    scratch.tilt = from.tilt + share * (to.tilt - from.tilt);
    scratch.roll = from.roll + share * (to.roll - from.roll);
  }

  /** A lower bound of the distance on a stretch that is `part` of a step; the first that reaches the goal, or the best. */
  private bound(step: number, part: number, a: number, b: number, goal: number): number {
    const { rows, poses, half } = this;
    const from = poses[step];
    const to = poses[step + 1];
    const turn =
      part *
      (Math.abs(to.heading - from.heading) + Math.abs(to.tilt - from.tilt) + Math.abs(to.roll - from.roll));
    const bend = (turn * turn * half) / 8;
    const i = ROW * a;
    const j = ROW * b;

    let best = Math.min(rows[i + 4], this.gapAlong(i, b)) - bend;
    if (best >= goal) return best;
    best = Math.max(best, Math.min(rows[j + 4], this.gapAlong(j, a)) - bend);
    if (best >= goal) return best;

    const dx = rows[j] - rows[i];
    const dy = rows[j + 1] - rows[i + 1];
    const dz = rows[j + 2] - rows[i + 2];
    const shift = part * (dx * (to.x - from.x) + dy * (to.y - from.y) + dz * (to.z - from.z));
    const swing = 2 * Math.hypot(dx, dy, dz) * turn * half;
    const excess = Math.max(0, (swing - 2 * shift) / 8 + bend);
    const blended = Math.min(rows[i + 4], rows[j + 4]) - excess;
    if (blended >= 0) return Math.max(best, blended);
    // A gap below 0 grows by 1 / |n|, which is least where n0 and n1 share alike.
    const middle = Math.hypot(rows[i] + rows[j], rows[i + 1] + rows[j + 1], rows[i + 2] + rows[j + 2]) / 2;
    return middle > 0 ? Math.max(best, blended / middle) : best;
  }

  /** The gap at a place along the direction of a row. */
  private gapAlong(row: number, place: number): number {
    const { rows } = this;
    const farthest = farthestAlong(this.frames, FRAME * place, rows[row], rows[row + 1], rows[row + 2]);
    return rows[row + 3] - farthest;
  }
}
