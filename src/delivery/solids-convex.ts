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
  return points.length === 0 ? null : { name, faces: flat, points: Float64Array.from(points) };
}

const CUT: readonly HalfSpace[] = [
  [1, 0, 0, REACH],
  [-1, 0, 0, REACH],
  [0, 1, 0, REACH],
  [0, -1, 0, REACH],
  [0, 0, 1, REACH],
  [0, 0, -1, REACH],
];

/** Where three faces meet and no other is left behind, three numbers each. */
function corners(faces: readonly HalfSpace[]): number[] {
  const found: number[] = [];
  for (let i = 2; i < faces.length; i++) {
    const [ax, ay, az, ad] = faces[i];
    for (let j = 1; j < i; j++) {
      const [bx, by, bz, bd] = faces[j];
      const nx = ay * bz - az * by;
      const ny = az * bx - ax * bz;
      const nz = ax * by - ay * bx;
      for (let k = 0; k < j; k++) {
        const [cx, cy, cz, cd] = faces[k];
        const det = cx * nx + cy * ny + cz * nz;
        if (Math.abs(det) < 1e-12) continue;
        // Cramer: p = (c.d (a x b) + a.d (b x c) + b.d (c x a)) / det.
        const x = (cd * nx + ad * (by * cz - bz * cy) + bd * (cy * az - cz * ay)) / det;
        const y = (cd * ny + ad * (bz * cx - bx * cz) + bd * (cz * ax - cx * az)) / det;
        const z = (cd * nz + ad * (bx * cy - by * cx) + bd * (cx * ay - cy * ax)) / det;
        if (behindAll(faces, x, y, z) && !known(found, x, y, z)) found.push(x, y, z);
      }
    }
  }
  return found;
}

function behindAll(faces: readonly HalfSpace[], x: number, y: number, z: number): boolean {
  for (const [nx, ny, nz, d] of faces) {
    if (nx * x + ny * y + nz * z > d + EASE) return false;
  }
  return true;
}

function known(points: readonly number[], x: number, y: number, z: number): boolean {
  for (let i = 0; i < points.length; i += 3) {
    const far = Math.max(Math.abs(points[i] - x), Math.abs(points[i + 1] - y), Math.abs(points[i + 2] - z));
    if (far < EASE) return true;
  }
  return false;
}
