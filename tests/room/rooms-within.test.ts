import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointInRing } from '../../src/geometry/predicates.js';
import { distanceToSegment } from '../../src/geometry/ring.js';
import { findSelfContacts } from '../../src/geometry/simple-ring.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import { hardestRoom, kindestRoom } from '../../src/room/rooms-within.js';
import type { Scene } from '../../src/room/scene.js';

function sceneWith(outline: Ring, wallTolerances: readonly number[] | null, tolerance: number): Scene {
  const wallNames = outline.map((_, i) => `wall ${i + 1}`);
  return {
    outline,
    wallNames,
    obstacles: [],
    ceiling: [],
    doors: [],
    reserved: [],
    tolerance,
    wallTolerances,
  };
}

const RECTANGLE: Ring = [
  [0, 0],
  [5000, 0],
  [5000, 4000],
  [0, 4000],
];
const L: Ring = [
  [0, 0],
  [6000, 0],
  [6000, 3000],
  [3500, 3000],
  [3500, 5000],
  [0, 5000],
];

describe('rooms within the tolerances', () => {
  it('are the given one grown and shrunk by the tolerance where walls have none of their own', () => {
    const scene = sceneWith(L, null, 7);
    expect(hardestRoom(scene)).toEqual({ scene, grow: 7 });
    expect(kindestRoom(scene)).toEqual({ scene, grow: -7 });
  });

  it('have each wall of a rectangle moved by its own tolerance', () => {
    const scene = sceneWith(RECTANGLE, [3, 20, 10, 1], 10);
    expect(hardestRoom(scene)).toMatchObject({
      grow: 10,
      scene: {
        outline: [
          [-9, -7],
          [4990, -7],
          [4990, 4000],
          [-9, 4000],
        ],
      },
    });
    expect(kindestRoom(scene)).toMatchObject({
      grow: -10,
      scene: {
        outline: [
          [9, 7],
          [5010, 7],
          [5010, 4000],
          [9, 4000],
        ],
      },
    });
  });

  it('name every side that they add after a wall that makes the corner', () => {
    const names = hardestRoom(sceneWith(L, [5, 5, 5, 5, 5, 5], 10)).scene.wallNames;
    expect(names).toEqual(['wall 1', 'wall 2', 'wall 3', 'wall 3', 'wall 4', 'wall 4', 'wall 5', 'wall 6']);
  });

  it('count everything as farther off where walls are nearer to one another than their bands', () => {
    const notched: Ring = [
      [0, 0],
      [2990, 0],
      [2990, 15],
      [5000, 15],
      [5000, 4000],
      [0, 4000],
    ];
    const scene = sceneWith(notched, [8, 8, 8, 8, 8, 8], 10);
    // A square corner that juts in moves by the diagonal of its walls' tolerances.
    expect(hardestRoom(scene)).toEqual({ scene, grow: 8 * Math.SQRT2 });
    expect(kindestRoom(scene)).toEqual({ scene, grow: -8 * Math.SQRT2 });
    expect(kindestRoom(scene, 11)).toBeNull();
    expect(kindestRoom(scene, 12)?.grow).toBe(-8 * Math.SQRT2);
  });

  it('give strokes no more than their margin: what is left, the walls give', () => {
    const scene = sceneWith(RECTANGLE, [5, 5, 5, 5], 30);
    expect(kindestRoom(scene, 20)).toMatchObject({
      grow: -30,
      scene: {
        outline: [
          [15, 15],
          [4985, 15],
          [4985, 3985],
          [15, 3985],
        ],
      },
    });
  });
});

/** A ring of many kinds: square steps, splayed bays, round walls, any star. */
const rings: fc.Arbitrary<Ring> = fc.oneof(
  fc.constant(L),
  fc.constant(RECTANGLE),
  // A breast and a splayed bay.
  fc.record({ breast: fc.integer({ min: 150, max: 700 }), splay: fc.integer({ min: 0, max: 900 }) }).map(
    ({ breast, splay }): Ring => [
      [0, 0],
      [2000, 0],
      [2000, breast],
      [3200, breast],
      [3200, 0],
      [6000, 0],
      [6000, 4500],
      [4500, 4500],
      [4500 - splay, 5200],
      [1500 + splay, 5200],
      [1500, 4500],
      [0, 4500],
    ],
  ),
  // A star: radii at even steps of the angle, so turns of every size and both signs.
  fc.array(fc.integer({ min: 2200, max: 4200 }), { minLength: 3, maxLength: 14 }).map((radii) =>
    radii.map((r, i): Point => {
      const angle = (2 * Math.PI * i) / radii.length;
      return [r * Math.cos(angle), r * Math.sin(angle)];
    }),
  ),
  // Nearly round, and a rectangle with a long wall that is hardly bent.
  fc.integer({ min: 8, max: 40 }).map((n) =>
    Array.from({ length: n }, (_, i): Point => {
      const angle = (2 * Math.PI * i) / n;
      return [3000 * Math.cos(angle), 3000 * Math.sin(angle)];
    }),
  ),
  fc.integer({ min: -300, max: 300 }).map(
    (bend): Ring => [
      [0, 0],
      [3000, bend === 0 ? 1 : bend],
      [6000, 0],
      [6000, 5000],
      [0, 5000],
    ],
  ),
);

/** Normals into the room. */
function normals(ring: Ring): readonly Point[] {
  return ring.map(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length];
    const length = Math.hypot(bx - ax, by - ay);
    return [-(by - ay) / length, (bx - ax) / length];
  });
}

/**
 * A room whose walls lie in their bands: each corner somewhere where the bands of its two walls cross (`pick` gives -1..1 for
 * either), found by Cramer's rule; between walls that hardly turn, no farther off than 4 tolerances.
 */
function roomInBands(ring: Ring, tolerances: readonly number[], pick: () => number): Ring | null {
  const normal = normals(ring);
  const n = ring.length;
  const out: Point[] = [];
  for (let i = 0; i < n; i++) {
    const before = (i + n - 1) % n;
    const [ax, ay] = normal[before];
    const [bx, by] = normal[i];
    const det = ax * by - ay * bx;
    let put: Point | null = null;
    for (let tries = 0; tries < 60 && put === null; tries++) {
      const u = pick() * tolerances[before];
      const v = pick() * tolerances[i];
      const dx = (u * by - v * ay) / det;
      const dy = (v * ax - u * bx) / det;
      const flat = ax * bx + ay * by > Math.cos(Math.PI / 6);
      if (flat && Math.hypot(dx, dy) > 4 * Math.max(tolerances[before], tolerances[i])) continue;
      put = [ring[i][0] + dx, ring[i][1] + dy];
    }
    if (put === null) return null;
    out.push(put);
  }
  return out;
}

function distanceToRing(point: Point, ring: Ring): number {
  return Math.min(...ring.map((a, i) => distanceToSegment(point, a, ring[(i + 1) % ring.length])));
}

/** Points along a ring: its corners, and some between. */
function pointsOf(ring: Ring): Point[] {
  return ring.flatMap(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length];
    return [0, 0.001, 0.004, 0.3, 0.62, 0.996, 0.999].map(
      (s): Point => [ax + s * (bx - ax), ay + s * (by - ay)],
    );
  });
}

describe('every room whose walls lie in their bands', () => {
  const cases = fc.record({
    ring: rings,
    spread: fc.array(fc.constantFrom(0, 0.5, 2, 5, 8, 12, 25), { minLength: 40, maxLength: 40 }),
    tolerance: fc.constantFrom(0, 3, 10, 18, 30),
    picks: fc.array(fc.oneof(fc.constantFrom(-1, 1), fc.double({ min: -1, max: 1, noNaN: true })), {
      minLength: 97,
      maxLength: 97,
    }),
  });
  const told = { singly: 0, rooms: 0 };

  it('lies between the hardest and the kindest of them', () => {
    fc.assert(
      fc.property(cases, ({ ring, spread, tolerance, picks }) => {
        const tolerances = ring.map((_, i) => spread[i % spread.length]);
        const scene = sceneWith(ring, tolerances, tolerance);
        const hard = hardestRoom(scene);
        const kind = kindestRoom(scene);
        let k = 0;
        const room = roomInBands(ring, tolerances, () => picks[k++ % picks.length]);
        if (room === null || findSelfContacts(room, 1e-6, 1).length > 0) return;
        told.rooms++;
        if (hard.scene !== scene) told.singly++;
        expect(findSelfContacts(hard.scene.outline, 1e-6, 1)).toEqual([]);
        // What keeps `grow` off the hardest room's walls lies inside: no point of a wall keeps off so far.
        for (const point of pointsOf(room)) {
          const inside = pointInRing(hard.scene.outline, point[0], point[1]) > 0;
          if (inside) expect(distanceToRing(point, hard.scene.outline)).toBeLessThanOrEqual(hard.grow + 1e-6);
        }
        if (kind === null) throw new Error('without a margin there is always one');
        expect(findSelfContacts(kind.scene.outline, 1e-6, 1)).toEqual([]);
        // What lies behind the kindest room's walls lies behind the room's, or within -grow of them.
        for (const point of pointsOf(kind.scene.outline)) {
          const free = pointInRing(room, point[0], point[1]) > 0;
          if (free) expect(distanceToRing(point, room)).toBeLessThanOrEqual(-kind.grow + 1e-6);
        }
      }),
      { seed: 20251125, numRuns: 3000 },
    );
    expect(told.rooms).toBeGreaterThan(1500);
    expect(told.singly).toBeGreaterThan(0.7 * told.rooms);
  });

  it('comes near to both at some corner that juts into the room: little is given away', () => {
    const e = 10;
    const scene = sceneWith(L, [6, 6, 6, 6, 6, 6], e);
    const hard = hardestRoom(scene).scene.outline;
    // The corner (3500, 3000) moved by 6 mm either way, then less than 0.3 e farther into the room, along the diagonal.
    const at = (off: number): Point => [3500 - off, 3000 - off];
    expect(distanceToRing(at(6), hard)).toBeLessThanOrEqual(e + 1e-9);
    expect(distanceToRing(at(6 + 0.3 * e), hard)).toBeGreaterThan(e);
    // Away from it, along the wall, exactly the tolerance.
    expect(distanceToRing([5000, 2994], hard)).toBeCloseTo(e, 9);
    const kind = kindestRoom(scene)?.scene.outline ?? [];
    expect(distanceToRing([3506, 3006], kind)).toBeLessThanOrEqual(e + 1e-9);
    expect(distanceToRing([5000, 3006], kind)).toBeCloseTo(e, 9);
  });
});
