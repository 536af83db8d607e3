import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointInRing, turnsOnlyLeft } from '../../src/geometry/predicates.js';
import {
  boundingBox,
  CIRCLE_EXCESS,
  CIRCLE_SIDES,
  centroid,
  circleExcess,
  circleRing,
  clipToHalfPlane,
  distanceToSegment,
  mirrored,
  perimeter,
  rectangleRing,
  reversed,
  ringDirection,
  rotated,
  signedArea,
  translated,
} from '../../src/geometry/ring.js';
import type { Ring } from '../../src/geometry/types.js';
import * as jts from '../helpers/jsts.js';
import { crookedRings, skylineRings, starRings } from '../helpers/rings.js';

const SEED = 71_002;
const triangle: Ring = [
  [0, 0],
  [4, 0],
  [0, 3],
];
const anyRing = fc.oneof(starRings(), skylineRings(), crookedRings());

describe('measures of a ring', () => {
  it('gives the pencil-and-paper values of a 3-4-5 triangle', () => {
    expect(signedArea(triangle)).toBe(6);
    expect(perimeter(triangle)).toBe(12);
    expect(centroid(triangle)).toEqual([4 / 3, 1]);
    expect(boundingBox(triangle)).toEqual({ minX: 0, minY: 0, maxX: 4, maxY: 3 });
    expect(ringDirection(triangle)).toBe(1);
    expect(signedArea(reversed(triangle))).toBe(-6);
    expect(ringDirection(reversed(triangle))).toBe(-1);
    expect(reversed(triangle)[0]).toEqual([0, 0]);
  });

  it('agrees with JTS on area, perimeter and direction', () => {
    fc.assert(
      fc.property(anyRing, (ring) => {
        const polygon = jts.polygon(ring);
        expect(Math.abs(signedArea(ring))).toBeCloseTo(jts.area(polygon), 5);
        expect(perimeter(ring)).toBeCloseTo(jts.perimeter(polygon), 7);
        expect(ringDirection(ring)).toBe(Math.sign(signedArea(ring)));
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it('takes areas together: of a ring and of its two halves', () => {
    fc.assert(
      fc.property(starRings(), (ring) => {
        const cut = Math.floor(ring.length / 2);
        const halves = [ring.slice(0, cut + 1), [...ring.slice(cut), ring[0]]];
        expect(signedArea(halves[0]) + signedArea(halves[1])).toBeCloseTo(signedArea(ring), 5);
      }),
      { seed: SEED, numRuns: 100 },
    );
  });

  it('keeps its digits 430 km from the origin', () => {
    const near = rectangleRing([0, 0], 5000, 4000);
    const far = translated(near, 430_088_200, -430_061_200);
    expect(signedArea(far)).toBe(20e6);
    expect(centroid(far)).toEqual([430_088_200, -430_061_200]);
  });

  it('finds the direction of a ring with repeated corners, and none of a ring without area', () => {
    expect(ringDirection([...triangle, [0, 0]])).toBe(1);
    expect(ringDirection([[0, 0], [0, 0], ...triangle])).toBe(1);
    expect(
      ringDirection([
        [0, 0],
        [1, 1],
        [2, 2],
      ]),
    ).toBe(0);
    expect(
      ringDirection([
        [1, 1],
        [1, 1],
        [1, 1],
      ]),
    ).toBe(0);
    expect(
      centroid([
        [0, 0],
        [4, 2],
        [2, 1],
      ]),
    ).toEqual([2, 1]);
  });
});

describe('moves of a ring', () => {
  it('leave area and perimeter alone, and only the mirror turns the direction', () => {
    const angle = fc.double({ min: -7, max: 7, noNaN: true });
    const shift = fc.integer({ min: -20_000, max: 20_000 });
    fc.assert(
      fc.property(anyRing, angle, shift, shift, (ring, a, dx, dy) => {
        const moved = translated(rotated(ring, a, [300, -200]), dx, dy);
        expect(signedArea(moved)).toBeCloseTo(signedArea(ring), 3);
        expect(perimeter(moved)).toBeCloseTo(perimeter(ring), 7);
        expect(signedArea(mirrored(ring))).toBe(-signedArea(ring));
        const back = rotated(translated(moved, -dx, -dy), -a, [300, -200]);
        for (const [i, [x, y]] of back.entries()) {
          expect(Math.hypot(x - ring[i][0], y - ring[i][1])).toBeLessThan(1e-9);
        }
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it('turns anticlockwise', () => {
    const [[x, y]] = rotated([[2, 1]], Math.PI / 2, [1, 1]);
    expect(x).toBeCloseTo(1, 12);
    expect(y).toBeCloseTo(2, 12);
  });
});

describe('made rings', () => {
  it('makes rectangles about a centre', () => {
    expect(rectangleRing([10, 20], 6, 4)).toEqual([
      [7, 18],
      [13, 18],
      [13, 22],
      [7, 22],
    ]);
    const turned = rectangleRing([10, 20], 6, 4, Math.PI / 2);
    expect(boundingBox(turned).maxY).toBeCloseTo(23, 12);
    expect(boundingBox(turned).maxX).toBeCloseTo(12, 12);
  });

  it('draws polygons around circles: never inside, at most 1 mm outside up to 1.6 m across', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 8000, noNaN: true }), (diameter) => {
        const ring = circleRing([100, -50], diameter);
        const r = diameter / 2;
        expect(ring.length % 4).toBe(0);
        expect(ring.length).toBeGreaterThanOrEqual(CIRCLE_SIDES.min);
        expect(ring.length).toBeLessThanOrEqual(CIRCLE_SIDES.max);
        expect(turnsOnlyLeft(ring)).toBe(true);
        for (const [i, a] of ring.entries()) {
          const b = ring[(i + 1) % ring.length];
          expect(distanceToSegment([100, -50], a, b)).toBeGreaterThan(r - 1e-9);
          expect(Math.hypot(a[0] - 100, a[1] + 50)).toBeCloseTo(r + circleExcess(diameter), 8);
        }
        if (diameter <= 1600) expect(circleExcess(diameter)).toBeLessThanOrEqual(CIRCLE_EXCESS + 1e-9);
        // Exact extents: it touches the circle on both axes.
        expect(boundingBox(ring).maxX).toBeCloseTo(100 + r, 8);
        expect(boundingBox(ring).minY).toBeCloseTo(-50 - r, 8);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });
});

describe('clipToHalfPlane', () => {
  const square = rectangleRing([0, 0], 10, 10);

  it('keeps the part on the near side', () => {
    expect(signedArea(clipToHalfPlane(square, 1, 0, 2))).toBe(70);
    expect(clipToHalfPlane(square, 1, 0, 5)).toEqual(square);
    expect(clipToHalfPlane(square, 1, 0, -5)).toEqual([]);
    expect(clipToHalfPlane(square, 1, 0, -6)).toEqual([]);
    expect(signedArea(clipToHalfPlane(square, 1, 1, 0))).toBe(50);
  });

  it('shares the area out between a half plane and its opposite', () => {
    const number = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0, max: 7, noNaN: true }), number, (angle, share) => {
        const ring = circleRing([3, 4], 500);
        const nx = Math.cos(angle);
        const ny = Math.sin(angle);
        const d = 3 * nx + 4 * ny + share * 250;
        const near = clipToHalfPlane(ring, nx, ny, d);
        const far = clipToHalfPlane(ring, -nx, -ny, -d);
        expect(signedArea(near) + signedArea(far)).toBeCloseTo(signedArea(ring), 6);
        for (const [x, y] of near) expect(x * nx + y * ny).toBeLessThan(d + 1e-9);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });
});

describe('distanceToSegment', () => {
  it('is measured to the nearest point, ends included', () => {
    expect(distanceToSegment([5, 3], [0, 0], [10, 0])).toBe(3);
    expect(distanceToSegment([13, 4], [0, 0], [10, 0])).toBe(5);
    expect(distanceToSegment([3, 4], [0, 0], [0, 0])).toBe(5);
  });

  it('agrees with JTS', () => {
    const c = fc.integer({ min: -5000, max: 5000 });
    fc.assert(
      fc.property(fc.tuple(c, c), fc.tuple(c, c), fc.tuple(c, c), (p, a, b) => {
        fc.pre(a[0] !== b[0] || a[1] !== b[1]);
        expect(distanceToSegment(p, a, b)).toBeCloseTo(jts.distance(jts.point(p), jts.segment(a, b)), 9);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it('never says that a point inside lies outside a ring made around it', () => {
    expect(pointInRing(circleRing([0, 0], 100), 49.999, 0)).toBe(1);
  });
});
