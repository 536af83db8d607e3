import { type FlatSolid, flatten, type HeadingTable } from './plan-feature-flat.js';
import { type NearestPoints, nearestPoints } from './plan-feature-round.js';
import type { PlanPose, PlanShape, PoseSlack } from './plan-shape.js';
import type { Face, PlanSpace, PlanZone } from './plan-space.js';

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

  private readonly solids: readonly FlatSolid[];
  private readonly ends: readonly (readonly FlatSolid[])[];
  /** The directions of all faces, up to sign, and the support of K along each: least and most over the headings, and least |cos| to the long axis. */
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
  /** Centres under judgement: the hull of (x, y) +- (hx, hy) and (x, y) +- (gx, gy); a box has (hx, -hy) there, a segment (0, 0). */
  private hx = 0;
  private hy = 0;
  private gx = 0;
  private gy = 0;
  /** Cosines and sines of the first and the last heading under judgement, and the least cosine of half the angle between. */
  private cos1 = 1;
  private sin1 = 0;
  private cos2 = 1;
  private sin2 = 0;
  private shrink = 1;
  /** Of the heading in the middle. */
  private cos = 1;
  private sin = 0;
  /** Of the direction that `support` was asked for last. */
  private supportLeast = 0;
  private supportMost = 0;
  private supportU = 0;
  private supportV = 0;

  constructor(
    space: PlanSpace,
    private readonly shape: PlanShape,
    private readonly table: HeadingTable,
    ends: readonly (readonly PlanZone[])[],
    private readonly slack: PoseSlack | null,
  ) {
    const count = space.solids.length;
    if (count > MOST_SOLIDS) throw new RangeError(`At most ${MOST_SOLIDS} solids, not ${count}.`);
    const directions: Face[] = [];
    this.solids = space.solids.map((solid) => flatten(solid.faces, solid.corners, directions));
    this.ends = ends.map((zones) => zones.map((zone) => flatten(zone, [], directions)));
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
  }

  /** A box with its middle at (x, y). `mask`: what may be met in its parent. The headings run from entry i to entry k of the table. */
  judge(x: number, y: number, hx: number, hy: number, i: number, k: number, mask: number): number {
    const { cos, sin, turn, steps } = this.table;
    this.cos1 = cos[i];
    this.sin1 = sin[i];
    this.cos2 = cos[k];
    this.sin2 = sin[k];
    this.shrink = Math.sqrt((1 + cos[k - i]) / 2);
    this.cos = cos[(i + k) / 2];
    this.sin = sin[(i + k) / 2];
    this.hx = hx;
    this.hy = hy;
    this.gx = hx;
    this.gy = -hy;
    return this.judgeAll(x, y, ((i + k) * turn) / steps / 2, ((k - i) * turn) / steps / 2, mask);
  }

  /** Whether every pose on the straight way between two, x, y and heading changing evenly, is free: halved up to `halvings` times. */
  isFreeBetween(a: PlanPose, b: PlanPose, halvings: number): boolean {
    const half = Math.abs(b.heading - a.heading) / 2;
    if (half <= Math.PI / 8) {
      this.setHeadings(Math.min(a.heading, b.heading), Math.max(a.heading, b.heading));
      this.hx = (b.x - a.x) / 2;
      this.hy = (b.y - a.y) / 2;
      this.gx = 0;
      this.gy = 0;
      const state = this.judgeAll(
        (a.x + b.x) / 2,
        (a.y + b.y) / 2,
        (a.heading + b.heading) / 2,
        half,
        this.all,
      );
      if (state !== MIXED) return state === FREE;
    }
    if (halvings === 0) return false;
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, heading: (a.heading + b.heading) / 2 };
    return this.isFreeBetween(a, middle, halvings - 1) && this.isFreeBetween(middle, b, halvings - 1);
  }

  private setHeadings(from: number, to: number): void {
    this.cos1 = Math.cos(from);
    this.sin1 = Math.sin(from);
    this.cos2 = Math.cos(to);
    this.sin2 = Math.sin(to);
    this.shrink = Math.cos((to - from) / 2);
    this.cos = Math.cos((from + to) / 2);
    this.sin = Math.sin((from + to) / 2);
  }

  private judgeAll(x: number, y: number, heading: number, half: number, mask: number): number {
    this.supports();
    const { slack, weight } = this;
    weight.fill(0);
    this.mask = 0;
    for (let rest = mask & ~this.slackBit; rest !== 0; rest &= rest - 1) {
      const bit = rest & -rest;
      const state = this.meets(this.solids[31 - Math.clz32(bit)], x, y);
      if (state === BLOCKED) return BLOCKED;
      if (state === MIXED) this.mask |= bit;
    }
    if (slack !== null && (mask & this.slackBit) !== 0) {
      const turn = slack.perRadian * half;
      const change =
        slack.perMm * Math.max(Math.hypot(this.hx, this.hy), Math.hypot(this.gx, this.gy)) + turn;
      const value = slack.slack(x, y, heading);
      if (value < -change - EPS) return BLOCKED;
      if (!(value >= change + EPS)) {
        this.mask |= this.slackBit;
        weight[0] = Math.max(weight[0], slack.perMm * Math.abs(this.hx));
        weight[1] = Math.max(weight[1], slack.perMm * Math.abs(this.hy));
        weight[2] = Math.max(weight[2], turn);
      }
    }
    if (this.mask === 0 || Math.max(weight[0], weight[1], weight[2]) === 0) {
      // Nothing says how to split the box (a free one may have to be, for the sake of an end): its longest side then.
      weight[0] = Math.abs(this.hx);
      weight[1] = Math.abs(this.hy);
      weight[2] = half * this.diagonal;
    }
    this.along = weight[0] >= weight[1] ? (weight[0] >= weight[2] ? 0 : 2) : weight[1] >= weight[2] ? 1 : 2;
    return this.mask === 0 ? FREE : MIXED;
  }

  /** How far n.c can be from its value at the middle. */
  private reach(nx: number, ny: number): number {
    const along = nx * this.hx + ny * this.hy;
    const askew = nx * this.gx + ny * this.gy;
    return Math.max(along, -along, askew, -askew);
  }

  /** Whether some pose of the box judged last may lie in the end: its whole shape in one of its zones. */
  mayLieIn(end: number, x: number, y: number): boolean {
    return this.ends[end].some((zone) => {
      for (let f = 0; f < zone.offset.length; f++) {
        const d = zone.direction[f];
        const at = zone.sign[f] * (this.dx[d] * x + this.dy[d] * y);
        if (
          at + this.reach(this.dx[d], this.dy[d]) - this.least[d] - this.shape.radius <
          zone.offset[f] - EPS
        )
          return false;
      }
      return true;
    });
  }

  /**
   * A pose of the box judged last (middle at (x, y), headings from entry i to entry k) that lies in the end; null: none of those that were
   * tried. In a zone with one bound the best of them is the best of the box.
   */
  poseIn(end: number, x: number, y: number, i: number, k: number): PlanPose | null {
    const { cos, sin, turn, steps } = this.table;
    for (const zone of this.ends[end]) {
      let towardsX = 0;
      let towardsY = 0;
      for (let f = 0; f < zone.offset.length; f++) {
        towardsX += zone.sign[f] * this.dx[zone.direction[f]];
        towardsY += zone.sign[f] * this.dy[zone.direction[f]];
      }
      for (const part of [0, 1]) {
        const px = x + part * Math.sign(towardsX) * this.hx;
        const py = y + part * Math.sign(towardsY) * this.hy;
        for (const entry of [(i + k) / 2, i, k]) {
          if (this.liesIn(zone, px, py, cos[entry], sin[entry]))
            return { x: px, y: py, heading: (entry * turn) / steps };
        }
      }
    }
    return null;
  }

  private liesIn(zone: FlatSolid, x: number, y: number, cos: number, sin: number): boolean {
    const { halfLength, halfWidth, radius } = this.shape;
    for (let f = 0; f < zone.offset.length; f++) {
      const d = zone.direction[f];
      const [nx, ny] = [this.dx[d], this.dy[d]];
      const support =
        halfLength * Math.abs(nx * cos + ny * sin) + halfWidth * Math.abs(ny * cos - nx * sin) + radius;
      if (zone.sign[f] * (nx * x + ny * y) - support < zone.offset[f] - EPS / 10) return false;
    }
    return true;
  }

  /** Least and most of the rectangle's support over the headings, along every direction. */
  private supports(): void {
    for (let d = 0; d < this.dx.length; d++) {
      this.support(this.dx[d], this.dy[d]);
      this.least[d] = this.supportLeast;
      this.most[d] = this.supportMost;
      this.leastU[d] = this.supportU;
      this.leastV[d] = this.supportV;
    }
  }

  /** Least and most over the headings of H = halfLength |n.u| + halfWidth |n.v|, and the least |n.u| and |n.v|. */
  private support(nx: number, ny: number): void {
    const { cos1, sin1, cos2, sin2 } = this;
    const { halfLength, halfWidth } = this.shape;
    const c1 = nx * cos1 + ny * sin1;
    const s1 = ny * cos1 - nx * sin1;
    const c2 = nx * cos2 + ny * sin2;
    const s2 = ny * cos2 - nx * sin2;
    const h1 = halfLength * Math.abs(c1) + halfWidth * Math.abs(s1);
    const h2 = halfLength * Math.abs(c2) + halfWidth * Math.abs(s2);
    // How fast H grows with the heading: d(n.u)/d alpha = n.v, d(n.v)/d alpha = -n.u.
    const rise1 = (c1 < 0 ? -halfLength : halfLength) * s1 - (s1 < 0 ? -halfWidth : halfWidth) * c1;
    const rise2 = (c2 < 0 ? -halfLength : halfLength) * s2 - (s2 < 0 ? -halfWidth : halfWidth) * c2;
    const turnsC = c1 < 0 !== c2 < 0;
    const turnsS = s1 < 0 !== s2 < 0;
    this.supportLeast = Math.min(h1, h2);
    this.supportMost = Math.max(h1, h2);
    if (turnsC || turnsS) {
      // The long axis passes the normal's square (or its line): a kink of H, low between two humps.
      this.supportLeast = Math.min(this.supportLeast, turnsC ? halfWidth : halfLength);
      if (rise1 > 0 || rise2 < 0) this.supportMost = this.diagonal;
    } else if (rise1 > 0 && rise2 < 0) this.supportMost = this.diagonal;
    this.supportU = turnsC ? 0 : Math.min(Math.abs(c1), Math.abs(c2));
    this.supportV = turnsS ? 0 : Math.min(Math.abs(s1), Math.abs(s2));
  }

  private meets(solid: FlatSolid, x: number, y: number): number {
    const { halfLength, halfWidth, radius } = this.shape;
    const { dx, dy, least, most } = this;
    const corners = solid.cornerX.length;
    // K holds the rectangles grown by the disc along (L) and across (W); a half-plane that K meets is met by K's round corner as well.
    let blockedL = true;
    let blockedW = true;
    for (let f = 0; f < solid.offset.length; f++) {
      const d = solid.direction[f];
      const span = this.reach(dx[d], dy[d]);
      const at = solid.sign[f] * (dx[d] * x + dy[d] * y) - solid.offset[f];
      const apart = at - span - most[d] - radius;
      if (apart > EPS) return FREE;
      const reach = at + span - least[d] + EPS;
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
      const { cos1, sin1, cos2, sin2 } = this;
      const ru1 = this.reach(cos1, sin1);
      const rv1 = this.reach(-sin1, cos1);
      const ru2 = this.reach(cos2, sin2);
      const rv2 = this.reach(-sin2, cos2);
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
      const { shrink } = this;
      const alongMost = (Math.max(frontMost, backMost) + EPS) / shrink - halfLength;
      const acrossMost = (Math.max(leftMost, rightMost) + EPS) / shrink - halfWidth;
      if (blockedL && alongMost <= radius && acrossMost <= 0) return BLOCKED;
      if (blockedW && alongMost <= 0 && acrossMost <= radius) return BLOCKED;
      const turn = Math.sqrt(1 - shrink * shrink);
      if (alongMost > radius) this.weigh(this.cos, this.sin, turn * this.diagonal);
      if (acrossMost > radius) this.weigh(this.sin, this.cos, turn * halfLength);
    }
    if (radius > 0 && corners > 0) {
      const round = this.meetsRound(solid, x, y);
      if (round !== MIXED) return round;
    }
    return MIXED;
  }

  /** Notes what each side of the box adds to the doubt along a direction. */
  private weigh(nx: number, ny: number, turn: number): void {
    const { weight } = this;
    weight[0] = Math.max(weight[0], Math.abs(nx * this.hx));
    weight[1] = Math.max(weight[1], Math.abs(ny * this.hy));
    weight[2] = Math.max(weight[2], turn);
  }

  /**
   * For a shape with a disc: the nearest points of R and the solid in the middle pose. FREE where the direction from one to the other
   * separates them over the whole box; BLOCKED where the point of R, carried along, stays within the radius of the solid's.
   */
  private meetsRound(solid: FlatSolid, x: number, y: number): number {
    const near = this.nearest;
    if (!nearestPoints(solid, this.dx, this.dy, this.shape, x, y, this.cos, this.sin, near)) return MIXED;
    const { mx, my, qx, qy, distance } = near;
    const { radius } = this.shape;
    this.support(mx, my);
    let solidAt = Number.POSITIVE_INFINITY;
    for (let p = 0; p < solid.cornerX.length; p++)
      solidAt = Math.min(solidAt, mx * (solid.cornerX[p] - x) + my * (solid.cornerY[p] - y));
    if (solidAt - this.reach(mx, my) - this.supportMost - radius > EPS) return FREE;
    // q turns by up to half the headings: q -> q cos + (J q) sin.
    const sine = Math.sqrt(1 - this.shrink * this.shrink);
    const ahead = Math.abs(my * qx - mx * qy) * sine + Math.abs(mx * qx + my * qy) * (1 - this.shrink);
    const aside = Math.abs(mx * qx + my * qy) * sine + Math.abs(my * qx - mx * qy) * (1 - this.shrink);
    const apart = Math.hypot(distance + this.reach(mx, my) + ahead, this.reach(-my, mx) + aside);
    if (apart < radius - EPS) return BLOCKED;
    this.weigh(mx, my, ahead);
    return MIXED;
  }
}
