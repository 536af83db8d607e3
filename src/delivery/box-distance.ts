import { farthestAlong, reachAlong } from './box-distance-frame.js';
import { Simplex } from './box-distance-simplex.js';
import type { ConvexSolid } from './solids-convex.js';

/** Distance and its bound nearer than this, mm: done. */
const SETTLED = 1e-9;
const MOST_ROUNDS = 48;

/**
 * The distance between a placed box and a convex solid. What it returns is always the gap seen along one unit direction n, from the box to
 * the solid: least n.p in the solid less greatest n.p in the box. No gap is larger than the distance, so rounding and an early end can
 * only make the answer smaller. The direction is looked for with the method of Gilbert, Johnson & Keerthi, which ends at
 * the exact one. A class for its scratch space alone: measuring allocates nothing.
 */
export class BoxDistance {
  /** The direction of the last answer, and the least n.p in the solid. */
  nx = 0;
  ny = 0;
  nz = 0;
  level = 0;
  private gap = 0;
  private readonly simplex = new Simplex();

  /**
   * The distance, mm (rounded down, by under 1e-6 as a rule); it may stop early at any bound that is `enough`. Where they touch or
   * overlap: 0 or less, the largest gap along a face of either, so that moving by -gap along n would part them.
   */
  between(frames: Float64Array, at: number, solid: ConvexSolid, enough: number): number {
    this.gap = -Infinity;
    this.nx = 1;
    this.ny = 0;
    this.nz = 0;
    this.level = -Infinity;
    const { faces, points } = solid;
    for (let i = 0; i < faces.length; i += 4) {
      const nx = -faces[i];
      const ny = -faces[i + 1];
      const nz = -faces[i + 2];
      this.offer(nx, ny, nz, -faces[i + 3], farthestAlong(frames, at, nx, ny, nz));
    }
    if (points.length === 0 || this.gap >= enough) return this.gap;
    if (!this.approach(frames, at, points, enough)) this.alongBox(frames, at, points);
    return this.gap;
  }

  private offer(nx: number, ny: number, nz: number, level: number, farthest: number): void {
    const gap = level - farthest;
    if (gap <= this.gap) return;
    this.gap = gap;
    this.level = level;
    this.nx = nx;
    this.ny = ny;
    this.nz = nz;
  }

  /** Walks to the direction of the nearest points. False when there is none: they touch. */
  private approach(f: Float64Array, at: number, points: Float64Array, enough: number): boolean {
    const { simplex } = this;
    simplex.count = 0;
    let { nx, ny, nz } = this;
    let nearest = Infinity;
    for (let round = 0; round < MOST_ROUNDS; round++) {
      let least = Infinity;
      let i = 0;
      for (let k = 0; k < points.length; k += 3) {
        const value = nx * points[k] + ny * points[k + 1] + nz * points[k + 2];
        if (value < least) {
          least = value;
          i = k;
        }
      }
      this.offer(nx, ny, nz, least, farthestAlong(f, at, nx, ny, nz));
      if (this.gap >= enough || nearest - this.gap <= SETTLED) return true;
      const a = nx * f[at + 3] + ny * f[at + 4] + nz * f[at + 5] < 0 ? -1 : 1;
      const b = nx * f[at + 6] + ny * f[at + 7] + nz * f[at + 8] < 0 ? -1 : 1;
      const c = nx * f[at + 9] + ny * f[at + 10] + nz * f[at + 11] < 0 ? -1 : 1;
      const x = points[i] - f[at] - a * f[at + 3] - b * f[at + 6] - c * f[at + 9];
      const y = points[i + 1] - f[at + 1] - a * f[at + 4] - b * f[at + 7] - c * f[at + 10];
      const z = points[i + 2] - f[at + 2] - a * f[at + 5] - b * f[at + 8] - c * f[at + 11];
      if (simplex.has(x, y, z)) break;
      if (!simplex.add(x, y, z)) return false;
      const length = Math.hypot(simplex.vx, simplex.vy, simplex.vz);
      if (!(length < nearest)) break;
      nearest = length;
      nx = simplex.vx / length;
      ny = simplex.vy / length;
      nz = simplex.vz / length;
    }
    return this.gap > 0;
  }

  /** The gaps along the box's own faces. */
  private alongBox(f: Float64Array, at: number, points: Float64Array): void {
    for (let e = at + 3; e < at + 12; e += 3) {
      const length = Math.hypot(f[e], f[e + 1], f[e + 2]);
      const nx = f[e] / length;
      const ny = f[e + 1] / length;
      const nz = f[e + 2] / length;
      let least = Infinity;
      let most = -Infinity;
      for (let k = 0; k < points.length; k += 3) {
        const value = nx * points[k] + ny * points[k + 1] + nz * points[k + 2];
        least = Math.min(least, value);
        most = Math.max(most, value);
      }
      const centre = nx * f[at] + ny * f[at + 1] + nz * f[at + 2];
      const reach = reachAlong(f, at, nx, ny, nz);
      this.offer(nx, ny, nz, least, centre + reach);
      this.offer(-nx, -ny, -nz, -most, -centre + reach);
    }
  }
}
