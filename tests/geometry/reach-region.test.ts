import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convexParts } from '../../src/geometry/convex-parts.js';
import { grownArea, grownPerimeter, growRing } from '../../src/geometry/grow-ring.js';
import { pointInRing, turnsOnlyLeft } from '../../src/geometry/predicates.js';
import { growParts, reachInRoom } from '../../src/geometry/reach-region.js';
import { RegionError, type RegionErrorCode, regionArea } from '../../src/geometry/region.js';
import { REGION_GRID } from '../../src/geometry/regions.js';
import {
  circleRing,
  perimeter,
  rectangleRing,
  reversed,
  rotated,
  signedArea,
} from '../../src/geometry/ring.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import * as clipper from '../helpers/clipper2.js';
import * as jts from '../helpers/jsts.js';
import { latticeRing } from '../helpers/lattice.js';

const options = { seed: 20251127, numRuns: 100 };

/** Convex: corners on an ellipse, in order. */
const convexRing: fc.Arbitrary<Ring> = fc
  .tuple(
    fc.uniqueArray(fc.integer({ min: 0, max: 359 }), { minLength: 3, maxLength: 12 }),
    fc.integer({ min: 50, max: 3000 }),
    fc.integer({ min: 50, max: 3000 }),
    fc.double({ min: 0, max: 6.28, noNaN: true }),
  )
  .map(([degrees, a, b, turn]) =>
    rotated(
      [...degrees]
        .sort((p, q) => p - q)
        .map((d): Point => [a * Math.cos((d * Math.PI) / 180), b * Math.sin((d * Math.PI) / 180)]),
      turn,
    ),
  )
  // On a flat ellipse, neighbours by one degree can round to a turn the other way.
  .filter((ring) => turnsOnlyLeft(ring) && signedArea(ring) > 1);

const radius = fc.double({ min: 0, max: 2500, noNaN: true });

function codeOf(run: () => unknown): RegionErrorCode | null {
  try {
    run();
  } catch (error) {
    if (error instanceof RegionError) return error.code;
    throw error;
  }
  return null;
}

describe('Steiner', () => {
  // Minkowski-Steiner formula: area A + P r + pi r^2 and perimeter P + 2 pi r, evaluated by hand.
  it.each([
    ['the unit square by 1', 1, 1, 1, 8.141593, 10.283185],
    ['3 x 2 by 0.5', 3, 2, 0.5, 11.785398, 13.141593],
    // The 9 ft playing surface of the WPA equipment specifications and a 58 in cue, m.
    ['2.54 x 1.27 by 1.4732', 2.54, 1.27, 1.4732, 21.26984, 16.876389],
  ])('area and perimeter of %s', (_, length, width, r, area, length2) => {
    const ring = rectangleRing([0, 0], length, width);
    expect(grownArea(ring, r)).toBeCloseTo(area, 6);
    expect(grownPerimeter(ring, r)).toBeCloseTo(length2, 6);
  });

  it('is the bounding box less (4 - pi) r^2 for a rectangle', () => {
    // 5.4864 x 4.2164 m and an excess of 1.863017 m2, by hand.
    expect(
      (2.54 + 2 * 1.4732) * (1.27 + 2 * 1.4732) - grownArea(rectangleRing([0, 0], 2.54, 1.27), 1.4732),
    ).toBeCloseTo(1.863017, 6);
  });

  it('is the limit of finer and finer polygons', () => {
    const ring = rectangleRing([0, 0], 2540, 1270, 0.4);
    for (const sagitta of [10, 1, 0.1, 0.01]) {
      const inner = growRing(ring, 1473, { arcs: 'inscribed', sagitta });
      const outer = growRing(ring, 1473, { arcs: 'circumscribed', sagitta });
      const truth = grownArea(ring, 1473);
      const arcs = 2 * Math.PI * 1473;
      expect(signedArea(inner)).toBeLessThanOrEqual(truth);
      expect(signedArea(outer)).toBeGreaterThanOrEqual(truth);
      expect(signedArea(outer) - signedArea(inner)).toBeLessThanOrEqual(2 * arcs * sagitta);
      expect(perimeter(inner)).toBeLessThanOrEqual(grownPerimeter(ring, 1473));
      expect(perimeter(outer)).toBeGreaterThanOrEqual(grownPerimeter(ring, 1473));
    }
  });
});

describe('a grown convex ring', () => {
  /** Rounding of corners a few metres out, mm. */
  const ROUNDING = 1e-9;

  it('is convex and lies on the side that was asked for, within the sagitta', () => {
    fc.assert(
      fc.property(convexRing, radius, fc.double({ min: 0.01, max: 50, noNaN: true }), (ring, r, sagitta) => {
        const shape = jts.polygon(ring);
        const inner = growRing(ring, r, { arcs: 'inscribed', sagitta });
        const outer = growRing(ring, r, { arcs: 'circumscribed', sagitta });
        for (const p of inner) expect(jts.distance(shape, jts.point(p))).toBeLessThanOrEqual(r + ROUNDING);
        for (const p of outer)
          expect(jts.distance(shape, jts.point(p))).toBeLessThanOrEqual(r + sagitta + ROUNDING);
        // Middles of edges are the deepest points of the inscribed arcs and the tangent points of the others.
        inner.forEach((p, i) => {
          const q = inner[(i + 1) % inner.length];
          const middle = jts.point([(p[0] + q[0]) / 2, (p[1] + q[1]) / 2]);
          expect(jts.distance(shape, middle)).toBeGreaterThanOrEqual(r - sagitta - ROUNDING);
        });
        outer.forEach((p, i) => {
          const q = outer[(i + 1) % outer.length];
          expect(jts.distance(shape, jts.segment(p, q))).toBeGreaterThanOrEqual(r - ROUNDING);
        });
        expect(signedArea(inner)).toBeLessThanOrEqual(grownArea(ring, r) * (1 + 1e-12));
        expect(signedArea(outer)).toBeGreaterThanOrEqual(grownArea(ring, r) * (1 - 1e-12));
      }),
      options,
    );
  });

  it('agrees with the offset of clipper2 and the buffer of JTS', () => {
    fc.assert(
      fc.property(convexRing, fc.double({ min: 10, max: 2500, noNaN: true }), (ring, r) => {
        const truth = grownArea(ring, r);
        const byClipper = clipper.areaOf(clipper.grownOf(ring, r, 0.05));
        expect(Math.abs(byClipper - truth)).toBeLessThanOrEqual(
          2 * Math.PI * r * 0.05 + 1e-4 * grownPerimeter(ring, r),
        );
        // 64 chords to a quarter: sagitta r (1 - cos(pi / 256)) = 7.6e-5 r.
        const byJts = jts.area(jts.buffer(jts.polygon(ring), r, 64));
        expect(Math.abs(byJts - truth)).toBeLessThanOrEqual(2 * Math.PI * r * r * 7.6e-5);
      }),
      options,
    );
  });

  it('is the ring itself for r = 0, without repeated corners', () => {
    const ring = rectangleRing([0, 0], 2000, 1000);
    expect(growRing(ring, 0, { arcs: 'inscribed' })).toEqual(ring);
    const repeated: Ring = [ring[0], ring[0], ring[1], ring[2], ring[3], ring[0]];
    expect(growRing(repeated, 0, { arcs: 'circumscribed' })).toEqual(ring);
    expect(growRing(repeated, 100, { arcs: 'circumscribed' })).toEqual(
      growRing(ring, 100, { arcs: 'circumscribed' }),
    );
  });

  it('keeps straight sides straight across corners that are none', () => {
    const flat: Ring = [
      [0, 0],
      [500, 0],
      [1000, 0],
      [1000, 1000],
      [0, 1000],
    ];
    expect(signedArea(growRing(flat, 100, { arcs: 'inscribed' }))).toBeCloseTo(
      signedArea(growRing(latticeRing([0, 0, 1000, 1000]), 100, { arcs: 'inscribed' })),
      6,
    );
  });

  it('takes a radius and a sagitta of any proportion', () => {
    const ring = latticeRing([0, 0, 100, 100]);
    expect(growRing(ring, 1, { arcs: 'inscribed', sagitta: 1000 })).toHaveLength(8);
    expect(growRing(ring, 1, { arcs: 'circumscribed', sagitta: 1000 })).toHaveLength(4);
    expect(codeOf(() => growRing(ring, 1e6, { arcs: 'inscribed', sagitta: 1e-12 }))).toBe('too-many-corners');
  });

  it('refuses other rings and radii', () => {
    const square = latticeRing([0, 0, 100, 100]);
    const dart: Ring = [
      [0, 0],
      [100, 0],
      [30, 30],
      [0, 100],
    ];
    const inscribed = { arcs: 'inscribed' } as const;
    for (const ring of [
      dart,
      reversed(square),
      [
        [0, 0],
        [1, 1],
        [2, 2],
      ] satisfies Ring,
    ]) {
      expect(codeOf(() => growRing(ring, 10, inscribed))).toBe('not-convex');
      expect(codeOf(() => grownArea(ring, 10))).toBe('not-convex');
      expect(codeOf(() => grownPerimeter(ring, 10))).toBe('not-convex');
    }
    for (const r of [-1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(codeOf(() => growRing(square, r, inscribed))).toBe('bad-distance');
      expect(codeOf(() => grownArea(square, r))).toBe('bad-distance');
      expect(codeOf(() => grownPerimeter(square, r))).toBe('bad-distance');
    }
    for (const sagitta of [0, -1, Number.NaN]) {
      expect(codeOf(() => growRing(square, 10, { arcs: 'inscribed', sagitta }))).toBe('bad-distance');
    }
  });
});

describe('grown parts', () => {
  it('make up the grown footprint, by clipper2', () => {
    const ell: Ring = rotated(
      [
        [0, 0],
        [3000, 0],
        [3000, 900],
        [800, 900],
        [800, 2500],
        [0, 2500],
      ],
      0.7,
    );
    const grown = growParts(convexParts(ell), 300, { arcs: 'circumscribed', sagitta: 0.1 });
    expect(grown).toHaveLength(1);
    const truth = clipper.areaOf(clipper.grownOf(ell, 300, 0.01));
    const bound = 2 * Math.PI * 300 * 0.11 + 4 * REGION_GRID * perimeter(ell);
    expect(Math.abs(regionArea(grown) - truth)).toBeLessThanOrEqual(bound);
  });
});

describe('the reach in a room', () => {
  const room = latticeRing([0, 0, 5000, 4000]);
  const table = rectangleRing([2500, 2000], 2540, 1270);
  const reach = 1473;

  it('is cut by the walls, and what is cut off is given too', () => {
    const { inside, outside } = reachInRoom(room, table, reach, { arcs: 'circumscribed', sagitta: 0.01 });
    const [piece] = inside;
    for (const [x, y] of piece.outer) expect(pointInRing(room, x, y)).toBeGreaterThanOrEqual(0);
    const whole = grownArea(table, reach);
    expect(Math.abs(regionArea(inside) + regionArea(outside) - whole)).toBeLessThanOrEqual(
      2 * Math.PI * reach * 0.011,
    );
    // The reach sticks out by 243 mm at both ends and by 108 mm at both sides, and is cut there.
    expect(outside).toHaveLength(4);
  });

  it('is all inside a large room', () => {
    const { inside, outside } = reachInRoom(latticeRing([-5000, -5000, 15_000, 14_000]), table, reach, {
      arcs: 'inscribed',
    });
    expect(outside).toEqual([]);
    expect(Math.abs(regionArea(inside) - grownArea(table, reach))).toBeLessThanOrEqual(2 * Math.PI * reach);
  });

  it('agrees with clipper2 in a round room', () => {
    const round = circleRing([2500, 2000], 5000);
    const { inside } = reachInRoom(round, table, reach, { arcs: 'inscribed', sagitta: 0.01 });
    const truth = clipper.areaOf(
      clipper.intersectionOf(clipper.unionOf([round]), clipper.grownOf(table, reach, 0.01)),
    );
    expect(Math.abs(regionArea(inside) - truth)).toBeLessThanOrEqual(2 * Math.PI * reach * 0.02);
  });
});
