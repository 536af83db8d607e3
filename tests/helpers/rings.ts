import fc from 'fast-check';
import type { Point, Ring } from '../../src/geometry/types.js';

/** A number in [0, 1) from a seed and a count, always the same (splitmix64's 32-bit cousin). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Simple anticlockwise rings seen whole from the origin: corners in order of angle, as a rough stone's. */
export function starRings(maxCorners = 24, reach = 6000): fc.Arbitrary<Ring> {
  return fc
    .array(fc.tuple(fc.integer({ min: 0, max: 359 }), fc.integer({ min: 800, max: reach })), {
      minLength: 5,
      maxLength: maxCorners,
    })
    .map((polar) => {
      const byAngle = new Map(polar);
      const angles = [...byAngle.keys()].sort((a, b) => a - b);
      return { byAngle, angles };
    })
    .filter(({ angles }) => {
      // No gap of half a turn or more, or the origin would lie outside.
      if (angles.length < 3) return false;
      return angles.every((angle, i) => ((angles[(i + 1) % angles.length] - angle + 360) % 360 || 360) < 180);
    })
    .map(({ byAngle, angles }) =>
      angles.map((angle): Point => {
        const r = byAngle.get(angle) ?? 0;
        const t = (angle * Math.PI) / 180;
        return [Math.round(r * Math.cos(t)), Math.round(r * Math.sin(t))];
      }),
    );
}

/** Right-angled rings as rooms have them: a skyline over a floor line, anticlockwise, whole millimetres. */
export function skylineRings(maxBays = 8): fc.Arbitrary<Ring> {
  return fc
    .array(fc.tuple(fc.integer({ min: 200, max: 2500 }), fc.integer({ min: 300, max: 6000 })), {
      minLength: 1,
      maxLength: maxBays,
    })
    .filter((bays) => bays.every(([, height], i) => i === 0 || height !== bays[i - 1][1]))
    .map((bays) => {
      const ring: Point[] = [];
      let x = 0;
      for (const [width, height] of bays) {
        ring.push([x, height], [x + width, height]);
        x += width;
      }
      ring.push([x, 0], [0, 0]);
      return ring.reverse();
    });
}

/**
 * Crooked simple rings: random points joined by a tour whose crossings are undone until none is left. Sizes 4 to
 * `maxCorners`; in general position only (no three points in line).
 */
export function crookedRings(maxCorners = 30): fc.Arbitrary<Ring> {
  return fc
    .record({ seed: fc.integer(), corners: fc.integer({ min: 4, max: maxCorners }) })
    .map(({ seed, corners }) => crookedRing(seed, corners))
    .filter((ring) => ring.length >= 3);
}

/** See {@link crookedRings}. Either direction; empty where untangling did not end. */
export function crookedRing(seed: number, corners: number): Ring {
  const random = randomFrom(seed);
  const ring: Point[] = [];
  for (let i = 0; i < corners; i++) ring.push([random() * 8000, random() * 6000]);
  // Undoing a crossing shortens the tour, so this ends.
  for (let round = 0; round < 10_000; round++) {
    if (!uncrossOnce(ring)) return ring;
  }
  return [];
}

function uncrossOnce(ring: Point[]): boolean {
  const n = ring.length;
  for (let i = 0; i < n - 1; i++) {
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      if (!crossing(ring[i], ring[i + 1], ring[j], ring[(j + 1) % n])) continue;
      const stretch = ring.slice(i + 1, j + 1).reverse();
      ring.splice(i + 1, stretch.length, ...stretch);
      return true;
    }
  }
  return false;
}

/** By plain signed areas: good enough for random points. */
function crossing(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = (p: Point, q: Point, r: Point): boolean =>
    (q[0] - p[0]) * (r[1] - p[1]) > (q[1] - p[1]) * (r[0] - p[0]);
  return side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b);
}
