import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ClosestPoints, closestPoints, pointToRing, ringToSegment } from '../../src/geometry/measure.js';
import { pointInRing } from '../../src/geometry/predicates.js';
import { RegionError } from '../../src/geometry/region.js';
import { distanceToSegment, rectangleRing, reversed, translated } from '../../src/geometry/ring.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import * as jts from '../helpers/jsts.js';
import { latticeRing } from '../helpers/lattice.js';

const options = { seed: 20251126, numRuns: 400 };

/** What measure.ts says it may be off by, mm. */
const TOLERANCE = 1e-3;

const coordinate = fc.double({ min: -6000, max: 6000, noNaN: true });
const anyPoint: fc.Arbitrary<Point> = fc.tuple(coordinate, coordinate);
const ring: fc.Arbitrary<Ring> = fc
  .tuple(fc.array(fc.double({ min: 100, max: 2500, noNaN: true }), { minLength: 3, maxLength: 10 }), anyPoint)
  .map(([radii, [x, y]]) =>
    radii.map((r, i): Point => {
      const a = (2 * Math.PI * i) / radii.length;
      return [x + r * Math.cos(a), y + r * Math.sin(a)];
    }),
  );

/** How far a point is from the filled ring. */
function off(shape: Ring, p: Point): number {
  if (pointInRing(shape, p[0], p[1]) >= 0) return 0;
  return Math.min(...shape.map((a, i) => distanceToSegment(p, a, shape[(i + 1) % shape.length])));
}

function expectWitness({ distance, onA, onB }: ClosestPoints): void {
  expect(distance).toBe(Math.hypot(onB[0] - onA[0], onB[1] - onA[1]));
}

describe('closest points by hand', () => {
  const square = latticeRing([0, 0, 1000, 1000]);

  it('of squares side by side: the gap, with the ends on each', () => {
    const found = closestPoints(square, latticeRing([1250, 300, 100, 100]));
    expect(found.distance).toBeCloseTo(250, 9);
    expect(found.onA[0]).toBeCloseTo(1000, 9);
    expect(found.onB[0]).toBeCloseTo(1250, 9);
    expect(found.onA[1]).toBeCloseTo(found.onB[1], 9);
  });

  it('of squares across a corner: 3, 4, 5', () => {
    const found = closestPoints(latticeRing([1300, 1400, 100, 100]), square);
    expect(found.distance).toBeCloseTo(500, 9);
    expect(found.onB[0]).toBeCloseTo(1000, 9);
    expect(found.onB[1]).toBeCloseTo(1000, 9);
  });

  it('is 0 for one inside the other, which the dependency alone does not say', () => {
    const inside = latticeRing([400, 400, 100, 100]);
    for (const found of [closestPoints(square, inside), closestPoints(inside, square)]) {
      expect(found.distance).toBe(0);
      expect(found.onA).toEqual(found.onB);
      expect(off(inside, found.onA)).toBe(0);
    }
  });

  it('is 0 where sides cross without a corner inside, and where shapes touch', () => {
    const cross = closestPoints(latticeRing([-500, 400, 2000, 100]), latticeRing([400, -500, 100, 2000]));
    expect(cross.distance).toBe(0);
    expect(off(latticeRing([400, 400, 100, 100]), cross.onA)).toBeLessThanOrEqual(TOLERANCE);
    expect(closestPoints(square, latticeRing([1000, 200, 100, 100])).distance).toBe(0);
    expect(closestPoints(square, latticeRing([1000, 1000, 100, 100])).distance).toBe(0);
  });

  it('from a wall: the rectangle inside the room, the segment, the point', () => {
    const table = rectangleRing([2000, 1500], 2000, 1000);
    const wall = ringToSegment(table, [0, 0], [0, 4000]);
    expect(wall.distance).toBeCloseTo(1000, 9);
    expect(wall.onA[0]).toBeCloseTo(1000, 9);
    expect(wall.onB[0]).toBeCloseTo(0, 9);
    expect(ringToSegment(table, [1900, 1500], [2100, 1500]).distance).toBe(0);
    expect(ringToSegment(table, [0, 1500], [5000, 1500]).distance).toBe(0);
    expect(ringToSegment(table, [0, 1500], [0, 1500]).distance).toBeCloseTo(1000, 9);
    expect(pointToRing([0, 1500], table).distance).toBeCloseTo(1000, 9);
    expect(pointToRing([0, 1500], table).onB[0]).toBeCloseTo(1000, 9);
    expect(pointToRing([2000, 1500], table)).toEqual({ distance: 0, onA: [2000, 1500], onB: [2000, 1500] });
    expect(pointToRing([1000, 1500], table).distance).toBe(0);
  });

  it('sees a small gap for what it is, down to its tolerance', () => {
    for (const gap of [1, 0.01, 0.002]) {
      expect(closestPoints(square, translated(square, 1000 + gap, 0)).distance).toBeCloseTo(gap, 6);
    }
    expect(closestPoints(square, translated(square, 1000.0005, 0)).distance).toBeLessThanOrEqual(TOLERANCE);
  });

  it('refuses what is no ring or not finite', () => {
    const bad: Ring = [
      [0, 0],
      [1, 0],
      [0, Number.NaN],
    ];
    const far: Ring = [
      [0, 0],
      [1, 0],
      [0, Number.POSITIVE_INFINITY],
    ];
    for (const wrong of [bad, far, square.slice(0, 2), []]) {
      expect(() => closestPoints(square, wrong)).toThrow(RegionError);
      expect(() => closestPoints(wrong, square)).toThrow(RegionError);
      expect(() => pointToRing([0, 0], wrong)).toThrow(RegionError);
      expect(() => ringToSegment(wrong, [0, 0], [1, 1])).toThrow(RegionError);
    }
    expect(() => pointToRing([Number.NaN, 0], square)).toThrow(RegionError);
    expect(() => ringToSegment(square, [5000, 0], [Number.NaN, 1])).toThrow(RegionError);
  });
});

describe('closest points against JTS and plain loops', () => {
  it('of two rings: same distance, each end on its own ring', () => {
    fc.assert(
      fc.property(ring, ring, (a, b) => {
        const found = closestPoints(a, b);
        expectWitness(found);
        expect(Math.abs(found.distance - jts.distance(jts.polygon(a), jts.polygon(b)))).toBeLessThanOrEqual(
          TOLERANCE,
        );
        expect(off(a, found.onA)).toBeLessThanOrEqual(TOLERANCE);
        expect(off(b, found.onB)).toBeLessThanOrEqual(TOLERANCE);
      }),
      options,
    );
  });

  it('of a ring and a segment', () => {
    fc.assert(
      fc.property(ring, anyPoint, anyPoint, (a, p, q) => {
        const found = ringToSegment(a, p, q);
        expectWitness(found);
        expect(
          Math.abs(found.distance - jts.distance(jts.polygon(a), jts.segment(p, q))),
        ).toBeLessThanOrEqual(TOLERANCE);
        expect(off(a, found.onA)).toBeLessThanOrEqual(TOLERANCE);
        expect(distanceToSegment(found.onB, p, q)).toBeLessThanOrEqual(TOLERANCE);
      }),
      options,
    );
  });

  it('of a point and a ring', () => {
    fc.assert(
      fc.property(ring, anyPoint, (a, p) => {
        const found = pointToRing(p, a);
        expect(Math.abs(found.distance - off(a, p))).toBeLessThanOrEqual(TOLERANCE);
        expect(found.onA).toBe(p);
        expect(off(a, found.onB)).toBeLessThanOrEqual(TOLERANCE);
      }),
      options,
    );
  });

  it('does not depend on direction, order or a far origin', () => {
    fc.assert(
      fc.property(ring, ring, (a, b) => {
        const { distance } = closestPoints(a, b);
        const same = (other: ClosestPoints) =>
          expect(Math.abs(other.distance - distance)).toBeLessThanOrEqual(2 * TOLERANCE);
        same(closestPoints(b, a));
        same(closestPoints(reversed(a), b));
        same(
          closestPoints(translated(a, 5_000_000.5, -4_000_000.25), translated(b, 5_000_000.5, -4_000_000.25)),
        );
      }),
      options,
    );
  });
});
