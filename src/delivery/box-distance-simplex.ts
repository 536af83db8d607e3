/**
 * Up to four points, and the point nearest to the origin in their hull: the inner step of the method of Gilbert, Johnson & Keerthi (1988).
 * Allocates only when it is made.
 */
export class Simplex {
  count = 0;
  /** The nearest point; exactly across a triangle where three points bear it. */
  vx = 0;
  vy = 0;
  vz = 0;
  private readonly p = new Float64Array(12);
  private best = 0;
  private keepI = 0;
  private keepJ = 0;

  has(x: number, y: number, z: number): boolean {
    const { p } = this;
    for (let i = 0; i < 3 * this.count; i += 3) {
      if (p[i] === x && p[i + 1] === y && p[i + 2] === z) return true;
    }
    return false;
  }

  /**
   * Takes in a point that lies beyond the nearest one seen from the origin, so that it bears the next one. Keeps only the points that bear it.
   * False when the origin lies inside.
   */
  add(x: number, y: number, z: number): boolean {
    const { p } = this;
    const last = 3 * this.count;
    p[last] = x;
    p[last + 1] = y;
    p[last + 2] = z;
    if (last === 9 && this.holdsOrigin()) return false;
    this.vx = x;
    this.vy = y;
    this.vz = z;
    this.best = x * x + y * y + z * z;
    this.keepI = -1;
    this.keepJ = -1;
    for (let i = 0; i < last; i += 3) this.tryEdge(last, i);
    for (let i = 3; i < last; i += 3) {
      for (let j = 0; j < i; j += 3) this.tryTriangle(last, i, j);
    }
    this.keep(last);
    return this.best > 1e-20;
  }

  private tryEdge(w: number, i: number): void {
    const { p } = this;
    const ex = p[i] - p[w];
    const ey = p[i + 1] - p[w + 1];
    const ez = p[i + 2] - p[w + 2];
    const t = -(p[w] * ex + p[w + 1] * ey + p[w + 2] * ez) / (ex * ex + ey * ey + ez * ez);
    if (t > 0 && t < 1) this.offer(p[w] + t * ex, p[w + 1] + t * ey, p[w + 2] + t * ez, i, -1);
  }

  private tryTriangle(w: number, i: number, j: number): void {
    const { p } = this;
    const ex = p[i] - p[w];
    const ey = p[i + 1] - p[w + 1];
    const ez = p[i + 2] - p[w + 2];
    const fx = p[j] - p[w];
    const fy = p[j + 1] - p[w + 1];
    const fz = p[j + 2] - p[w + 2];
    const nx = ey * fz - ez * fy;
    const ny = ez * fx - ex * fz;
    const nz = ex * fy - ey * fx;
    const nn = nx * nx + ny * ny + nz * nz;
    const ee = ex * ex + ey * ey + ez * ez;
    const ff = fx * fx + fy * fy + fz * fz;
    if (!(nn > 1e-24 * ee * ff)) return;
    // Shares of the other two points in the foot of the perpendicular from the origin: the areas opposite.
    const wx = p[w];
    const wy = p[w + 1];
    const wz = p[w + 2];
    const s = -(nx * (wy * fz - wz * fy) + ny * (wz * fx - wx * fz) + nz * (wx * fy - wy * fx));
    const t = nx * (wy * ez - wz * ey) + ny * (wz * ex - wx * ez) + nz * (wx * ey - wy * ex);
    if (!(s > 0 && t > 0 && s + t < nn)) return;
    const k = (wx * nx + wy * ny + wz * nz) / nn;
    this.offer(k * nx, k * ny, k * nz, i, j);
  }

  private offer(x: number, y: number, z: number, i: number, j: number): void {
    const square = x * x + y * y + z * z;
    if (square >= this.best) return;
    this.best = square;
    this.vx = x;
    this.vy = y;
    this.vz = z;
    this.keepI = i;
    this.keepJ = j;
  }

  private keep(last: number): void {
    const { p, keepI, keepJ } = this;
    let to = 0;
    for (let i = 0; i <= last; i += 3) {
      if (i !== last && i !== keepI && i !== keepJ) continue;
      p[to] = p[i];
      p[to + 1] = p[i + 1];
      p[to + 2] = p[i + 2];
      to += 3;
    }
    this.count = to / 3;
  }

  /** All four faces see the origin on the side of the point opposite. */
  private holdsOrigin(): boolean {
    return (
      this.facing(0, 3, 6, 9) && this.facing(0, 3, 9, 6) && this.facing(0, 6, 9, 3) && this.facing(3, 6, 9, 0)
    );
  }

  private facing(a: number, b: number, c: number, opposite: number): boolean {
    const { p } = this;
    const ex = p[b] - p[a];
    const ey = p[b + 1] - p[a + 1];
    const ez = p[b + 2] - p[a + 2];
    const fx = p[c] - p[a];
    const fy = p[c + 1] - p[a + 1];
    const fz = p[c + 2] - p[a + 2];
    const nx = ey * fz - ez * fy;
    const ny = ez * fx - ex * fz;
    const nz = ex * fy - ey * fx;
    const origin = -(nx * p[a] + ny * p[a + 1] + nz * p[a + 2]);
    const other =
      nx * (p[opposite] - p[a]) + ny * (p[opposite + 1] - p[a + 1]) + nz * (p[opposite + 2] - p[a + 2]);
    return origin * other > 0;
  }
}
