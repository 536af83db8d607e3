import type { HeadingTable } from './plan-feature-flat.js';
import type { PlanPose, PlanShape } from './plan-shape.js';

/**
 * A set of poses under judgement, without its middle: how far centres and headings run. Centres are the hull of the middle +- (hx, hy) and
 * +- (gx, gy): for a box these are its two diagonals, for a straight way (gx, gy) is 0. Headings run over at most an eighth of a turn.
 */
export class PoseSpan {
  hx = 0;
  hy = 0;
  gx = 0;
  gy = 0;
  /** Of the first heading, the last one, and the one in the middle. */
  cos1 = 1;
  sin1 = 0;
  cos2 = 1;
  sin2 = 0;
  cos = 1;
  sin = 0;
  /** Cosine and sine of half the angle between first and last. */
  halfCos = 1;
  halfSin = 0;
  /** What `support` found last: least and most of H over the headings, and the least |n.u| and |n.v|. */
  least = 0;
  most = 0;
  leastU = 0;
  leastV = 0;
  private readonly diagonal: number;

  constructor(private readonly shape: PlanShape) {
    this.diagonal = Math.hypot(shape.halfLength, shape.halfWidth);
  }

  /** A box with these half sides, its headings from entry i to entry k of the table. */
  setBox(hx: number, hy: number, { cos, sin }: HeadingTable, i: number, k: number): void {
    this.hx = hx;
    this.hy = hy;
    this.gx = hx;
    this.gy = -hy;
    this.cos1 = cos[i];
    this.sin1 = sin[i];
    this.cos2 = cos[k];
    this.sin2 = sin[k];
    this.cos = cos[(i + k) / 2];
    this.sin = sin[(i + k) / 2];
    this.halfCos = Math.sqrt((1 + cos[k - i]) / 2);
    this.halfSin = Math.sqrt(Math.max(0, 1 - cos[k - i]) / 2);
  }

  /** The straight way from one pose to another. */
  setWay(a: PlanPose, b: PlanPose): void {
    this.hx = (b.x - a.x) / 2;
    this.hy = (b.y - a.y) / 2;
    this.gx = 0;
    this.gy = 0;
    const [first, last] = [Math.min(a.heading, b.heading), Math.max(a.heading, b.heading)];
    this.cos1 = Math.cos(first);
    this.sin1 = Math.sin(first);
    this.cos2 = Math.cos(last);
    this.sin2 = Math.sin(last);
    this.cos = Math.cos((first + last) / 2);
    this.sin = Math.sin((first + last) / 2);
    this.halfCos = Math.cos((last - first) / 2);
    this.halfSin = Math.sin((last - first) / 2);
  }

  /** How far n.c can be from its value at the middle. */
  reach(nx: number, ny: number): number {
    const along = nx * this.hx + ny * this.hy;
    const askew = nx * this.gx + ny * this.gy;
    return Math.max(along, -along, askew, -askew);
  }

  /** How far a centre can be from the middle. */
  radius(): number {
    return Math.max(Math.hypot(this.hx, this.hy), Math.hypot(this.gx, this.gy));
  }

  /**
   * The rectangle's support H(alpha) = halfLength |n.u| + halfWidth |n.v| over the headings, exactly. Between its kinks, a right angle apart, H is a
   * sinusoid and concave, with the half diagonal for its top; at the kinks n is square to a side.
   */
  support(nx: number, ny: number): void {
    const { cos1, sin1, cos2, sin2 } = this;
    const { halfLength, halfWidth } = this.shape;
    const c1 = nx * cos1 + ny * sin1;
    const s1 = ny * cos1 - nx * sin1;
    const c2 = nx * cos2 + ny * sin2;
    const s2 = ny * cos2 - nx * sin2;
    const h1 = halfLength * Math.abs(c1) + halfWidth * Math.abs(s1);
    const h2 = halfLength * Math.abs(c2) + halfWidth * Math.abs(s2);
    // d(n.u) / d alpha = n.v and d(n.v) / d alpha = -n.u.
    const rise1 = (c1 < 0 ? -halfLength : halfLength) * s1 - (s1 < 0 ? -halfWidth : halfWidth) * c1;
    const rise2 = (c2 < 0 ? -halfLength : halfLength) * s2 - (s2 < 0 ? -halfWidth : halfWidth) * c2;
    const turnsC = c1 < 0 !== c2 < 0;
    const turnsS = s1 < 0 !== s2 < 0;
    this.least = Math.min(h1, h2);
    this.most = Math.max(h1, h2);
    if (turnsC || turnsS) {
      this.least = Math.min(this.least, turnsC ? halfWidth : halfLength);
      if (rise1 > 0 || rise2 < 0) this.most = this.diagonal;
    } else if (rise1 > 0 && rise2 < 0) this.most = this.diagonal;
    this.leastU = turnsC ? 0 : Math.min(Math.abs(c1), Math.abs(c2));
    this.leastV = turnsS ? 0 : Math.min(Math.abs(s1), Math.abs(s2));
  }
}
