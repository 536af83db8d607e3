/** Half-space n.p <= d as [nx, ny, nz, d]; n need not be a unit vector. */
export type HalfSpace = readonly [nx: number, ny: number, nz: number, d: number];

/**
 * A convex solid: where n.p <= d for every face, mm. It is cut off `REACH` from the origin on every side, which makes endless ones
 * polytopes.
 */
export interface ConvexSolid {
  readonly name: string;
  /** Four numbers a face: its outward unit normal and d. */
  readonly faces: Float64Array;
  /** Three numbers a corner, those of the cut included. Left empty for a half-space, where the one face says it all. */
  readonly points: Float64Array;
}

/** How far out solids go, mm. */
export const REACH = 1e5;

/** Corners that lie no farther than this outside a face count: they can only make a solid larger. */
const EASE = 1e-7;

/**
 * The solid of the given half-spaces, or null where they have no point in common. Those with an infinite d say nothing and are
 * passed over; d = -Infinity leaves nothing.
 */
export function convexSolid(name: string, halfSpaces: readonly HalfSpace[]): ConvexSolid | null {
  const faces: HalfSpace[] = [];
  for (const [nx, ny, nz, d] of halfSpaces) {
    if (d === -Infinity) return null;
    if (d === Infinity) continue;
    const length = Math.hypot(nx, ny, nz);
    faces.push([nx / length, ny / length, nz / length, d / length]);
  }
  const flat = Float64Array.from(faces.flat());
  const [only] = faces;
  if (faces.length === 1 && only !== undefined && Math.abs(only[3]) < REACH) {
    return { name, faces: flat, points: new Float64Array(0) };
  }
  const points = corners([...faces, ...CUT]);
  return points.length === 0 ? null : { name, faces: flat, points: Float64Array.from(points.flat()) };
}

const CUT: readonly HalfSpace[] = [
  [1, 0, 0, REACH],
  [-1, 0, 0, REACH],
  [0, 1, 0, REACH],
  [0, -1, 0, REACH],
  [0, 0, 1, REACH],
  [0, 0, -1, REACH],
];

type Point = readonly [number, number, number];

/** Where three faces meet and no other is left behind. */
function corners(faces: readonly HalfSpace[]): Point[] {
  const found: Point[] = [];
  faces.forEach((a, i) => {
    faces.slice(0, i).forEach((b, j) => {
      const cx = a[1] * b[2] - a[2] * b[1];
      const cy = a[2] * b[0] - a[0] * b[2];
      const cz = a[0] * b[1] - a[1] * b[0];
      for (const c of faces.slice(0, j)) {
        const det = c[0] * cx + c[1] * cy + c[2] * cz;
        if (Math.abs(det) < 1e-12) continue;
        // Cramer: p = (c.d (a x b) + a.d (b x c) + b.d (c x a)) / det.
        const p: Point = [
          (c[3] * cx + a[3] * (b[1] * c[2] - b[2] * c[1]) + b[3] * (c[1] * a[2] - c[2] * a[1])) / det,
          (c[3] * cy + a[3] * (b[2] * c[0] - b[0] * c[2]) + b[3] * (c[2] * a[0] - c[0] * a[2])) / det,
          (c[3] * cz + a[3] * (b[0] * c[1] - b[1] * c[0]) + b[3] * (c[0] * a[1] - c[1] * a[0])) / det,
        ];
        if (faces.every((f) => f[0] * p[0] + f[1] * p[1] + f[2] * p[2] <= f[3] + EASE) && !known(found, p)) {
          found.push(p);
        }
      }
    });
  });
  return found;
}

function known(points: readonly Point[], [x, y, z]: Point): boolean {
  return points.some(
    (p) => Math.abs(p[0] - x) < EASE && Math.abs(p[1] - y) < EASE && Math.abs(p[2] - z) < EASE,
  );
}
