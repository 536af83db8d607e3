import { type FlatSolid, flatten, type HeadingTable } from './plan-feature-flat.js';
import { type NearestPoints, nearestPoints } from './plan-feature-round.js';
import { PoseSpan } from './plan-feature-span.js';
import type { PlanPose, PlanShape, PoseSlack } from './plan-shape.js';
import type { Face, PlanSpace } from './plan-space.js';

/** What is known of all poses of a box. */
export const BLOCKED = -1;
export const MIXED = 0;
export const FREE = 1;

/** Distances within this of nothing, mm, decide nothing: it covers the rounding, which is a thousand times smaller. */
const EPS = 1e-6;

/** Bits of a mask that stand for solids; one more stands for the slack. */
const MOST_SOLIDS = 30;

/**
 * Judges boxes of poses |x - cx| <= hx, |y - cy| <= hy, headings between two entries of a table at most an eighth of a turn apart. FREE
 * and BLOCKED are proofs: every pose of the box is clear of every solid, or none is.
 *
 * The shape is K = R + disc(r), R a rectangle. A direction m separates K from a solid over the whole box when it does so at the worst
 * pose. For a face's normal n that is n.c - |nx| hx - |ny| hy against the largest support H(alpha) of R over the headings:
 * both exact, since H is concave between its kinks. For the sides of R, u(alpha).(p - c) > halfLength + r at both ends of the headings
 * settles all between, because a sinusoid is concave where it is positive. These directions are all there are for a
 * rectangle and a convex solid; with a disc there are those from corner to corner besides (see plan-feature-round.ts).
 *
 * Blocked by one solid: for every such direction no pose of the box is separated by it: the same bounds from the other side, where a sinusoid
 * rises over its values at the ends by a factor of at most 1 / cos(half the headings).
 */
export class PoseJudge {
  /** Bit i: solid i may meet the shape in some pose of the box judged last; the slack's bit likewise. */
  mask = 0;
  /** Along which of x (0), y (1) and heading (2) that box had best be split. */
  along = 0;
  /** Mask for a box of which nothing is known. */
  readonly all: number;

  /** The set of poses judged last. */
  readonly span: PoseSpan;
  private readonly solids: readonly FlatSolid[];
  /** The directions of all faces, up to sign, and what the span found along each. */
  private readonly dx: Float64Array;
  private readonly dy: Float64Array;
  private readonly least: Float64Array;
  private readonly most: Float64Array;
  private readonly leastU: Float64Array;
  private readonly leastV: Float64Array;
  private readonly slackBit: number;
  private readonly diagonal: number;
  private readonly weight = new Float64Array(3);
  private readonly nearest: NearestPoints = { mx: 0, my: 0, qx: 0, qy: 0, distance: 0 };

  constructor(
    space: PlanSpace,
    private readonly shape: PlanShape,
    private readonly table: HeadingTable,
    private readonly slack: PoseSlack | null,
  ) {
    const count = space.solids.length;
    if (count > MOST_SOLIDS) throw new RangeError(`At most ${MOST_SOLIDS} solids, not ${count}.`);
    const directions: Pick<Face, 'nx' | 'ny'>[] = [];
    this.solids = space.solids.map((solid) => flatten(solid.faces, solid.corners, directions));
    const n = directions.length;
    this.dx = Float64Array.from(directions, (d) => d.nx);
    this.dy = Float64Array.from(directions, (d) => d.ny);
    this.least = new Float64Array(n);
    this.most = new Float64Array(n);
    this.leastU = new Float64Array(n);
    this.leastV = new Float64Array(n);
    this.slackBit = slack === null ? 0 : 1 << MOST_SOLIDS;
    this.all = (2 ** count - 1) | this.slackBit;
    this.diagonal = Math.hypot(shape.halfLength, shape.halfWidth);
    this.span = new PoseSpan(shape);
  }

  /** A box with its middle at (x, y). `mask`: what may be met in its parent. The headings run from entry i to entry k of the table. */
  judge(x: number, y: number, hx: number, hy: number, i: number, k: number, mask: number): number {
    const step = this.table.turn / this.table.steps;
    this.span.setBox(hx, hy, this.table, i, k);
    return this.judgeSpan(x, y, ((i + k) / 2) * step, ((k - i) / 2) * step, mask);
  }

  /** Whether every pose on the straight way between two, x, y and heading changing evenly, is free: halved up to `halvings` times. */
  isFreeBetween(a: PlanPose, b: PlanPose, halvings: number): boolean {
    const half = Math.abs(b.heading - a.heading) / 2;
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, heading: (a.heading + b.heading) / 2 };
    if (half <= Math.PI / 8) {
      this.span.setWay(a, b);
      const state = this.judgeSpan(middle.x, middle.y, middle.heading, half, this.all);
      if (state !== MIXED) return state === FREE;
    }
    if (halvings === 0) return false;
    return this.isFreeBetween(a, middle, halvings - 1) && this.isFreeBetween(middle, b, halvings - 1);
  }

  private judgeSpan(x: number, y: number, heading: number, half: number, mask: number): number {
    const { span, weight } = this;
    for (let d = 0; d < this.dx.length; d++) {
      span.support(this.dx[d], this.dy[d]);
      this.least[d] = span.least;
      this.most[d] = span.most;
      this.leastU[d] = span.leastU;
      this.leastV[d] = span.leastV;
    }
    weight.fill(0);
    this.mask = 0;
    for (let rest = mask & ~this.slackBit; rest !== 0; rest &= rest - 1) {
      const bit = rest & -rest;
      const state = this.meets(this.solids[31 - Math.clz32(bit)], x, y);
      if (state === BLOCKED) return BLOCKED;
      if (state === MIXED) this.mask |= bit;
    }
    if ((mask & this.slackBit) !== 0) {
      const state = this.slackens(x, y, heading, half);
      if (state === BLOCKED) return BLOCKED;
      if (state === MIXED) this.mask |= this.slackBit;
    }
    if (this.mask === 0 || Math.max(weight[0], weight[1], weight[2]) === 0) {
      // Nothing says how to split the box (a free one may have to be, for the sake of an end): its longest side then.
      weight[0] = Math.abs(span.hx);
      weight[1] = Math.abs(span.hy);
      weight[2] = half * this.diagonal;
    }
    this.along = weight[0] >= weight[1] ? (weight[0] >= weight[2] ? 0 : 2) : weight[1] >= weight[2] ? 1 : 2;
    return this.mask === 0 ? FREE : MIXED;
  }

  /** The further condition: FREE where it is met all over the span, BLOCKED where nowhere. */
  private slackens(x: number, y: number, heading: number, half: number): number {
    const { slack, span, weight } = this;
    if (slack === null) return FREE;
    const turn = slack.perRadian * half;
    const change = slack.perMm * span.radius() + turn + EPS;
    const value = slack.slack(x, y, heading);
    if (value >= change) return FREE;
    if (value < -change) return BLOCKED;
    weight[0] = Math.max(weight[0], slack.perMm * Math.abs(span.hx));
    weight[1] = Math.max(weight[1], slack.perMm * Math.abs(span.hy));
    weight[2] = Math.max(weight[2], turn);
    return MIXED;
  }

  private meets(solid: FlatSolid, x: number, y: number): number {
    const { halfLength, halfWidth, radius } = this.shape;
    const { dx, dy, least, most, span } = this;
    const corners = solid.cornerX.length;
    // K holds the rectangles grown by the disc along (L) and across (W); a half-plane that K meets is met by K's round corner as well.
    let blockedL = true;
    let blockedW = true;
    for (let f = 0; f < solid.offset.length; f++) {
      const d = solid.direction[f];
      const off = span.reach(dx[d], dy[d]);
      const at = solid.sign[f] * (dx[d] * x + dy[d] * y) - solid.offset[f];
      const apart = at - off - most[d] - radius;
      if (apart > EPS) return FREE;
      const reach = at + off - least[d] + EPS;
      if (corners === 0) {
        if (reach <= radius) return BLOCKED;
        blockedL = false;
        blockedW = false;
      } else {
        if (reach > radius * this.leastU[d]) blockedL = false;
        if (reach > radius * this.leastV[d]) blockedW = false;
      }
      // A direction that separates in some pose of the box may do so in all of them once the box is smaller.
      if (reach > radius) this.weigh(dx[d], dy[d], (most[d] - least[d]) / 2);
    }
    if (corners > 0) {
      const { cos1, sin1, cos2, sin2, halfCos, halfSin } = span;
      const ru1 = span.reach(cos1, sin1);
      const rv1 = span.reach(-sin1, cos1);
      const ru2 = span.reach(cos2, sin2);
      const rv2 = span.reach(-sin2, cos2);
      // Least distance of the solid in front, behind, left and right of the centre, at the worst and at the best pose of the box.
      let front = Number.POSITIVE_INFINITY;
      let back = front;
      let left = front;
      let right = front;
      let frontMost = front;
      let backMost = front;
      let leftMost = front;
      let rightMost = front;
      for (let p = 0; p < corners; p++) {
        const wx = solid.cornerX[p] - x;
        const wy = solid.cornerY[p] - y;
        const u1 = cos1 * wx + sin1 * wy;
        const u2 = cos2 * wx + sin2 * wy;
        const v1 = cos1 * wy - sin1 * wx;
        const v2 = cos2 * wy - sin2 * wx;
        front = Math.min(front, u1 - ru1, u2 - ru2);
        back = Math.min(back, -u1 - ru1, -u2 - ru2);
        left = Math.min(left, v1 - rv1, v2 - rv2);
        right = Math.min(right, -v1 - rv1, -v2 - rv2);
        frontMost = Math.min(frontMost, Math.max(u1 + ru1, u2 + ru2));
        backMost = Math.min(backMost, Math.max(ru1 - u1, ru2 - u2));
        leftMost = Math.min(leftMost, Math.max(v1 + rv1, v2 + rv2));
        rightMost = Math.min(rightMost, Math.max(rv1 - v1, rv2 - v2));
      }
      const along = Math.max(front, back) - halfLength - radius;
      const across = Math.max(left, right) - halfWidth - radius;
      if (along > EPS || across > EPS) return FREE;
      const alongMost = (Math.max(frontMost, backMost) + EPS) / halfCos - halfLength;
      const acrossMost = (Math.max(leftMost, rightMost) + EPS) / halfCos - halfWidth;
      if (blockedL && alongMost <= radius && acrossMost <= 0) return BLOCKED;
      if (blockedW && alongMost <= 0 && acrossMost <= radius) return BLOCKED;
      if (alongMost > radius) this.weigh(span.cos, span.sin, halfSin * this.diagonal);
      if (acrossMost > radius) this.weigh(span.sin, span.cos, halfSin * halfLength);
    }
    return radius > 0 && corners > 0 ? this.meetsRound(solid, x, y) : MIXED;
  }

  /** Notes what each side of the box adds to the doubt along a direction. */
  private weigh(nx: number, ny: number, turn: number): void {
    const { span, weight } = this;
    weight[0] = Math.max(weight[0], Math.abs(nx * span.hx));
    weight[1] = Math.max(weight[1], Math.abs(ny * span.hy));
    weight[2] = Math.max(weight[2], turn);
  }

  /**
   * For a shape with a disc: the nearest points of R and the solid in the middle pose. FREE where the direction from one to the other
   * separates them over the whole box; BLOCKED where the point of R, carried along, stays within the radius of the solid's.
   */
  private meetsRound(solid: FlatSolid, x: number, y: number): number {
    const { span, nearest } = this;
    if (!nearestPoints(solid, this.dx, this.dy, this.shape, x, y, span.cos, span.sin, nearest)) return MIXED;
    const { mx, my, qx, qy, distance } = nearest;
    const { radius } = this.shape;
    span.support(mx, my);
    let solidAt = Number.POSITIVE_INFINITY;
    for (let p = 0; p < solid.cornerX.length; p++)
      solidAt = Math.min(solidAt, mx * (solid.cornerX[p] - x) + my * (solid.cornerY[p] - y));
    if (solidAt - span.reach(mx, my) - span.most - radius > EPS) return FREE;
    // q turns by up to half the headings: q -> q cos + (J q) sin.
    const lag = 1 - span.halfCos;
    const ahead = Math.abs(my * qx - mx * qy) * span.halfSin + Math.abs(mx * qx + my * qy) * lag;
    const aside = Math.abs(mx * qx + my * qy) * span.halfSin + Math.abs(my * qx - mx * qy) * lag;
    if (Math.hypot(distance + span.reach(mx, my) + ahead, span.reach(-my, mx) + aside) < radius - EPS)
      return BLOCKED;
    this.weigh(mx, my, ahead);
    return MIXED;
  }
}
