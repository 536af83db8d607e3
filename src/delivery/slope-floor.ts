import type { Hold } from './carried.js';

/** z = base + gx x + gy y over the rectangle x0 <= x <= x1, y0 <= y <= y1 in plan (infinite sides allowed), mm. */
export interface SlopeCell {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  readonly base: number;
  readonly gx: number;
  readonly gy: number;
}

/** Floors and ceilings that are level or slope, cell by cell. Where two of them meet in a step the higher floor and the lower ceiling count. */
export interface SlopeSpace {
  readonly floors: readonly SlopeCell[];
  readonly ceilings: readonly SlopeCell[];
}

/** One face of the box, seen in plan: a strip from t0 to t1 along the heading over which z runs from z0 to z1. */
interface Strip {
  readonly t0: number;
  readonly t1: number;
  readonly z0: number;
  readonly z1: number;
}

/**
 * Where the centre of a box, held at one tilt, may be in height among sloping floors and ceilings, at one place and heading in plan:
 * [max over the plan rectangle of floor - lower side, min of ceiling - upper side]. Exact: a box has two lower and two upper faces (one each when
 * level), each cell is linear, and a difference of two linear functions is greatest at a corner of what strip and cell have in common.
 *
 * With a floor that is continuous and nowhere steeper than g, moving by d mm moves the interval's length by at most 2 g d, and turning by a radian by at
 * most 2 g times half the diagonal of the plan rectangle: one and the same point of the box lies over a floor that is so much higher or lower.
 */
export class SlopeFloor {
  /** Ends of the interval last asked for; empty where lo > hi. */
  lo = 0;
  hi = 0;
  private readonly lower: readonly Strip[];
  private readonly upper: readonly Strip[];
  private readonly halfAlong: number;
  private readonly halfAcross: number;
  /** Scratch of this object: corners of a strip cut by a cell. */
  private from = new Float64Array(32);
  private to = new Float64Array(32);
  private count = 0;

  constructor(
    private readonly space: SlopeSpace,
    { along, across, up, tilt }: Hold,
  ) {
    const c = Math.cos(tilt);
    const s = Math.sin(tilt);
    const [a, b] = [along / 2, up / 2];
    const half = a * c + b * s;
    // Corners of the upright section: rear top, rear bottom (lowest), front top (highest), front bottom.
    const low = { t: -a * c + b * s, z: -a * s - b * c };
    const high = { t: a * c - b * s, z: a * s + b * c };
    const rear = -a * s + b * c;
    this.lower = strips([
      { t0: -half, t1: low.t, z0: rear, z1: low.z },
      { t0: low.t, t1: half, z0: low.z, z1: -rear },
    ]);
    this.upper = strips([
      { t0: -half, t1: high.t, z0: rear, z1: high.z },
      { t0: high.t, t1: half, z0: high.z, z1: -rear },
    ]);
    this.halfAlong = half;
    this.halfAcross = across / 2;
  }

  /** Length of the free interval, mm; negative: so much is missing. */
  height(x: number, y: number, heading: number): number {
    const c = Math.cos(heading);
    const s = Math.sin(heading);
    let lo = Number.NEGATIVE_INFINITY;
    let hi = Number.POSITIVE_INFINITY;
    const wide = Math.abs(c) * this.halfAlong + Math.abs(s) * this.halfAcross;
    const deep = Math.abs(s) * this.halfAlong + Math.abs(c) * this.halfAcross;
    const meets = (cell: SlopeCell): boolean =>
      cell.x0 <= x + wide && cell.x1 >= x - wide && cell.y0 <= y + deep && cell.y1 >= y - deep;
    for (const cell of this.space.floors) {
      if (!meets(cell)) continue;
      for (const strip of this.lower) {
        this.cut(strip, cell, x, y, c, s);
        for (let i = 0; i < this.count; i++) lo = Math.max(lo, this.over(i, strip, cell, x, y, c, s));
      }
    }
    for (const cell of this.space.ceilings) {
      if (!meets(cell)) continue;
      for (const strip of this.upper) {
        this.cut(strip, cell, x, y, c, s);
        for (let i = 0; i < this.count; i++) hi = Math.min(hi, this.over(i, strip, cell, x, y, c, s));
      }
    }
    this.lo = lo;
    this.hi = hi;
    return hi - lo;
  }

  /** The cell's z less the strip's at corner i of their common part. */
  private over(i: number, strip: Strip, cell: SlopeCell, x: number, y: number, c: number, s: number): number {
    const px = this.from[2 * i];
    const py = this.from[2 * i + 1];
    const t = (px - x) * c + (py - y) * s;
    const share = (t - strip.t0) / (strip.t1 - strip.t0);
    return cell.base + cell.gx * px + cell.gy * py - (strip.z0 + share * (strip.z1 - strip.z0));
  }

  /** Leaves in `from` the corners of what the strip, placed in plan, and the cell have in common. */
  private cut(strip: Strip, cell: SlopeCell, x: number, y: number, c: number, s: number): void {
    const w = this.halfAcross;
    const f = this.from;
    const { t0, t1 } = strip;
    f[0] = x + t0 * c + w * s;
    f[1] = y + t0 * s - w * c;
    f[2] = x + t1 * c + w * s;
    f[3] = y + t1 * s - w * c;
    f[4] = x + t1 * c - w * s;
    f[5] = y + t1 * s + w * c;
    f[6] = x + t0 * c - w * s;
    f[7] = y + t0 * s + w * c;
    this.count = 4;
    this.keep(0, 1, cell.x0);
    this.keep(0, -1, -cell.x1);
    this.keep(1, 1, cell.y0);
    this.keep(1, -1, -cell.y1);
  }

  /** Keeps what has sign * coordinate >= limit. */
  private keep(axis: 0 | 1, sign: number, limit: number): void {
    if (limit === Number.NEGATIVE_INFINITY || this.count === 0) return;
    const { from, to } = this;
    let all = true;
    for (let i = 0; i < this.count; i++) all = all && sign * from[2 * i + axis] >= limit;
    if (all) return;
    let kept = 0;
    let previous = this.count - 1;
    let before = sign * from[2 * previous + axis] - limit;
    for (let i = 0; i < this.count; i++) {
      const here = sign * from[2 * i + axis] - limit;
      if (here >= 0 !== before >= 0) {
        const share = before / (before - here);
        to[2 * kept] = from[2 * previous] + share * (from[2 * i] - from[2 * previous]);
        to[2 * kept + 1] = from[2 * previous + 1] + share * (from[2 * i + 1] - from[2 * previous + 1]);
        kept++;
      }
      if (here >= 0) {
        to[2 * kept] = from[2 * i];
        to[2 * kept + 1] = from[2 * i + 1];
        kept++;
      }
      previous = i;
      before = here;
    }
    this.from = to;
    this.to = from;
    this.count = kept;
  }
}

/** A face that is seen edge on has no strip. */
function strips(all: readonly Strip[]): Strip[] {
  return all.filter(({ t0, t1 }) => t1 - t0 > 1e-9);
}
