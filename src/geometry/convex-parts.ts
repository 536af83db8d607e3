import { orientation, pointInRing } from './predicates.js';
import { boundingBox } from './ring.js';
import type { Point, Ring } from './types.js';

/** Rings with more corners than this are split once only; the smaller ones may be split from several starts. */
const MOST_CORNERS_TO_RETRY = 64;

/** Most starts that are tried for a better split. */
const MOST_STARTS = 16;

/**
 * Splits a simple anticlockwise ring into convex anticlockwise parts that cover it without overlapping, all sides decided
 * exactly. A convex ring comes back as it is. Parts have corners of the ring only, and none that lies on a straight side of
 * the part; one part's corner may lie on another's side. There are at most four times as many parts as the fewest possible
 * (Hertel and Mehlhorn 1983).
 *
 * Ears are cut off until a triangle is left; then every cut that is not needed for convexity is taken back, the first one
 * first. Small rings are split from several starts and the split with the fewest parts is kept. Takes time in the square of
 * the number of corners at worst.
 *
 * @throws Error when the ring is not simple and anticlockwise; check it first.
 */
export function convexParts(ring: Ring): Ring[] {
  const n = ring.length;
  if (n < 3) throw new Error(`A ring has at least 3 corners, this one has ${n}.`);
  let reflex = 0;
  for (let i = 0; i < n; i++) if (orientation(ring[i], ring[(i + 1) % n], ring[(i + 2) % n]) < 0) reflex++;
  if (reflex === 0) return [ring];

  let best = splitOnce(ring);
  // Each cut ends at two corners, so it cannot do away with more than two reflex ones.
  const fewest = Math.ceil(reflex / 2) + 1;
  const starts = n > MOST_CORNERS_TO_RETRY ? 1 : Math.min(n, MOST_STARTS);
  for (let start = 1; start < starts && best.length > fewest; start++) {
    const parts = splitOnce([...ring.slice(start), ...ring.slice(0, start)]);
    if (parts.length < best.length) best = parts;
  }
  return best;
}

function splitOnce(ring: Ring): Ring[] {
  const mesh = cutEars(ring);
  mergeParts(ring, mesh);
  return loops(ring, mesh);
}

/**
 * Triangles as half edges: half edge h starts at corner `origin[h]`, the next one of its part is `next[h]`, the one before it
 * `previous[h]`, and the same edge seen from the neighbouring part is `twin[h]` (-1 on the ring itself; -2: taken away).
 */
interface Mesh {
  readonly origin: number[];
  readonly next: number[];
  readonly previous: number[];
  readonly twin: number[];
}

const OUTSIDE = -1;
const GONE = -2;

function cutEars(ring: Ring): Mesh {
  const n = ring.length;
  const mesh: Mesh = { origin: [], next: [], previous: [], twin: [] };
  // What is left of the ring, as a list of corners; `inner[i]` is the half edge that lies beyond the side leaving i.
  const after = ring.map((_, i) => (i + 1) % n);
  const before = ring.map((_, i) => (i + n - 1) % n);
  const inner = ring.map(() => OUTSIDE);
  const reflex = new ReflexCorners(ring);

  // Cutting an ear can make or unmake an ear of its two neighbours only, so each cut costs two looks.
  const isEar = ring.map((_, i) => sticksOut(ring, before[i], i, after[i], reflex));
  const queue = ring.map((_, i) => i).filter((i) => isEar[i]);
  let left = n;
  for (let k = 0; left > 3; k++) {
    // A simple ring always has an ear (Meisters 1975).
    if (k >= queue.length) throw new Error('The ring is not simple and anticlockwise.');
    const corner = queue[k];
    if (!isEar[corner]) continue;
    isEar[corner] = false;
    left--;
    const a = before[corner];
    const c = after[corner];
    inner[a] = addTriangle(mesh, [a, corner, c], [inner[a], inner[corner], OUTSIDE]);
    after[a] = c;
    before[c] = a;
    for (const i of [a, c]) if (orientation(ring[before[i]], ring[i], ring[after[i]]) > 0) reflex.remove(i);
    for (const i of [a, c]) {
      const was = isEar[i];
      isEar[i] = sticksOut(ring, before[i], i, after[i], reflex);
      if (isEar[i] && !was) queue.push(i);
    }
    if (left === 3) addTriangle(mesh, [a, c, after[c]], [inner[a], inner[c], inner[after[c]]]);
  }
  return mesh;
}

/** The corners that are not convex (in what is left of the ring), in flat arrays for quick looks. */
class ReflexCorners {
  count = 0;
  readonly corner: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  private readonly place: Int32Array;

  constructor(ring: Ring) {
    const n = ring.length;
    this.corner = new Int32Array(n);
    this.x = new Float64Array(n);
    this.y = new Float64Array(n);
    this.place = new Int32Array(n).fill(-1);
    for (let i = 0; i < n; i++) {
      if (orientation(ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]) > 0) continue;
      this.place[i] = this.count;
      this.corner[this.count] = i;
      this.x[this.count] = ring[i][0];
      this.y[this.count] = ring[i][1];
      this.count++;
    }
  }

  /** Takes a corner out, if it is in. */
  remove(i: number): void {
    const k = this.place[i];
    if (k < 0) return;
    const last = --this.count;
    this.corner[k] = this.corner[last];
    this.x[k] = this.x[last];
    this.y[k] = this.y[last];
    this.place[this.corner[k]] = k;
    this.place[i] = -1;
  }
}

/** Adds a triangle whose sides lie against the given half edges; returns its last side (from the third corner to the first). */
function addTriangle(mesh: Mesh, corners: readonly number[], beyond: readonly number[]): number {
  const first = mesh.origin.length;
  for (let k = 0; k < 3; k++) {
    mesh.origin.push(corners[k]);
    mesh.next.push(first + ((k + 1) % 3));
    mesh.previous.push(first + ((k + 2) % 3));
    mesh.twin.push(beyond[k]);
    if (beyond[k] >= 0) mesh.twin[beyond[k]] = first + k;
  }
  return first + 2;
}

/** Whether b is an ear: convex, and no other corner that is left in or on the triangle a, b, c. Only reflex corners can be. */
function sticksOut(ring: Ring, a: number, b: number, c: number, reflex: ReflexCorners): boolean {
  const p = ring[a];
  const q = ring[b];
  const r = ring[c];
  if (orientation(p, q, r) <= 0) return false;
  const triangle = [p, q, r];
  const { minX, minY, maxX, maxY } = boundingBox(triangle);
  const { corner, x, y, count } = reflex;
  for (let k = 0; k < count; k++) {
    if (x[k] < minX || x[k] > maxX || y[k] < minY || y[k] > maxY) continue;
    if (corner[k] !== a && corner[k] !== c && pointInRing(triangle, x[k], y[k]) >= 0) return false;
  }
  return true;
}

/** Takes away each edge between two parts whose union is convex at both its ends. */
function mergeParts(ring: Ring, { origin, next, previous, twin }: Mesh): void {
  for (let h = 0; h < twin.length; h++) {
    const t = twin[h];
    if (t < h) continue;
    const beforeH = previous[h];
    const afterH = next[h];
    const beforeT = previous[t];
    const afterT = next[t];
    // Corners of the union where the edge starts and where it ends.
    if (orientation(ring[origin[beforeH]], ring[origin[h]], ring[origin[next[afterT]]]) < 0) continue;
    if (orientation(ring[origin[beforeT]], ring[origin[t]], ring[origin[next[afterH]]]) < 0) continue;
    next[beforeH] = afterT;
    previous[afterT] = beforeH;
    next[beforeT] = afterH;
    previous[afterH] = beforeT;
    twin[h] = GONE;
    twin[t] = GONE;
  }
}

function loops(ring: Ring, { origin, next, twin }: Mesh): Ring[] {
  const parts: Ring[] = [];
  const seen = new Uint8Array(origin.length);
  for (let h = 0; h < origin.length; h++) {
    if (seen[h] === 1 || twin[h] === GONE) continue;
    const part: Point[] = [];
    for (let e = h; seen[e] === 0; e = next[e]) {
      seen[e] = 1;
      part.push(ring[origin[e]]);
    }
    parts.push(
      part.filter(
        (p, i) =>
          orientation(part[(i + part.length - 1) % part.length], p, part[(i + 1) % part.length]) !== 0,
      ),
    );
  }
  return parts;
}
