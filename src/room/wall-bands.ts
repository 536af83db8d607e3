import { distanceToSegment } from '../geometry/ring.js';
import type { Point, Ring } from '../geometry/types.js';
import type { Scene } from './scene.js';

/**
 * The bands in which the walls of a room lie: wall i, whole, within t_i of its line. So corner i lies where the bands of wall
 * i - 1 and wall i cross, and the boundary of any such room in the hulls of these crossings. Where two walls turn by less than
 * {@link NEARLY_FLAT} their crossing is so long that the bands alone hardly hold the corner: both get the greater of their
 * tolerances, and the corner is taken to lie within {@link SLIDE} times that of its place.
 */
export interface WallBands {
  readonly outline: Ring;
  /** Unit vectors along the walls; the room lies to their left. */
  readonly along: readonly Point[];
  /** t_i, mm, evened out where walls are nearly in line. */
  readonly tolerances: readonly number[];
  /** cos and sin of the turn at each corner, from wall i - 1 to wall i; sin < 0: the corner is reflex. */
  readonly cos: readonly number[];
  readonly sin: readonly number[];
}

/** Walls that turn by less than this are nearly in line, radians: 30 degrees. */
const NEARLY_FLAT: number = Math.PI / 6;
/** How far a corner between such walls slides along them at most, in tolerances: as far as at 30 degrees. */
const SLIDE = 4;
/** With more corners than this, checking every pair of walls would take long. */
const MOST_CORNERS = 400;

/** The bands of a scene's walls; null where the walls have no tolerances of their own. */
export function wallBands({ outline, wallTolerances }: Scene): WallBands | null {
  if (wallTolerances === null) return null;
  const n = outline.length;
  const along = outline.map(([ax, ay], i): Point => {
    const [bx, by] = outline[(i + 1) % n];
    const length = Math.hypot(bx - ax, by - ay);
    return [(bx - ax) / length, (by - ay) / length];
  });
  const before = (i: number): Point => along[(i + n - 1) % n];
  const cos = along.map(([x, y], i) => before(i)[0] * x + before(i)[1] * y);
  const sin = along.map(([x, y], i) => before(i)[0] * y - before(i)[1] * x);
  const tolerances = [...wallTolerances];
  // Twice round, so that what is evened out at the end of the list reaches its start.
  for (const step of [1, -1]) {
    for (let k = 0; k < 2 * n; k++) {
      const i = step > 0 ? k % n : n - 1 - (k % n);
      const last = (i + n - 1) % n;
      if (!isNearlyFlat(cos[i])) continue;
      const greater = Math.max(tolerances[last], tolerances[i]);
      tolerances[last] = greater;
      tolerances[i] = greater;
    }
  }
  return { outline, along, tolerances, cos, sin };
}

/** Corner i where wall i - 1 is moved into the room by `first` and wall i by `second`, mm (negative: out of it). */
export function movedCorner(bands: WallBands, i: number, first: number, second: number): Point {
  const { outline, along, cos, sin } = bands;
  const [x, y] = outline[i];
  const [px, py] = along[(i + along.length - 1) % along.length];
  const [qx, qy] = along[i];
  if (isNearlyFlat(cos[i])) {
    // Both by the same: along the sum of the normals, which stays well defined however flat the corner is.
    const share = (first + second) / 2 / (1 + cos[i]);
    return [x - share * (py + qy), y + share * (px + qx)];
  }
  const a = second / sin[i];
  const b = first / sin[i];
  return [x - a * px + b * qx, y - a * py + b * qy];
}

/**
 * How far the solid behind the walls may reach beyond the solid of the given outline, and fall short of it, mm, whatever the
 * walls do in their bands: a corner that juts into the room moves farther than its walls.
 */
export function greatestReach({ tolerances, cos, sin }: WallBands): number {
  return tolerances.reduce((most, t, i) => {
    const greater = Math.max(t, tolerances[(i + tolerances.length - 1) % tolerances.length]);
    // 1 / cos(half the turn)
    const share = sin[i] < 0 || isNearlyFlat(cos[i]) ? Math.sqrt(2 / (1 + cos[i])) : 1;
    return Math.max(most, share * greater);
  }, 0);
}

/**
 * Whether the walls may be moved one by one, by up to `extra` mm more or less than their tolerances: no wall then meets any but
 * its two neighbours, and none vanishes.
 */
export function mayMoveSingly(bands: WallBands, extra: number): boolean {
  const { outline, tolerances, cos, sin } = bands;
  const n = outline.length;
  if (n > MOST_CORNERS) return false;
  const reach = outline.map((_, i) => {
    const t = Math.max(tolerances[i], tolerances[(i + n - 1) % n]) + extra;
    return t * (isNearlyFlat(cos[i]) ? SLIDE : Math.sqrt(2 + 2 * Math.abs(cos[i])) / Math.abs(sin[i]));
  });
  const end = (i: number): number => (i + 1) % n;
  const far = outline.map((_, i) => Math.max(reach[i], reach[end(i)]));
  for (let i = 0; i < n; i++) {
    const [a, b] = [outline[i], outline[end(i)]];
    if (Math.hypot(b[0] - a[0], b[1] - a[1]) <= reach[i] + reach[end(i)] + 2 * extra) return false;
    for (let j = i + 2; j < n; j++) {
      if (end(j) === i) continue;
      if (betweenWalls(a, b, outline[j], outline[end(j)]) <= far[i] + far[j]) return false;
    }
  }
  return true;
}

/** Distance between two segments that do not cross. */
function betweenWalls(a: Point, b: Point, c: Point, d: Point): number {
  return Math.min(
    distanceToSegment(a, c, d),
    distanceToSegment(b, c, d),
    distanceToSegment(c, a, b),
    distanceToSegment(d, a, b),
  );
}

function isNearlyFlat(cos: number): boolean {
  return cos > Math.cos(NEARLY_FLAT);
}
