import * as flatten from '@flatten-js/core';
import fc from 'fast-check';
import polygonClipping, { type Polygon as ClipPolygon } from 'polygon-clipping';
import { describe, expect, it } from 'vitest';
import { closestPoints, pointToRing, ringToSegment } from '../../src/geometry/measure.js';
import { RegionError, type RegionErrorCode, regionArea } from '../../src/geometry/region.js';
import { intersect, subtract, unite } from '../../src/geometry/regions.js';
import { rectangleRing, reversed, translated } from '../../src/geometry/ring.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import { segmentDistance, sides } from '../placement/plain-distance.js';

/**
 * What the two geometry packages are known to do wrong, as it can be seen here and now, and that what stands between them and us keeps it
 * out. polygon-clipping's errors, wrong areas and the union that never returns: tests/geometry/regions-fixtures.test.ts; wrong results of
 * every kind given on purpose: tests/geometry/regions-ladder.test.ts. A test of a failure that fails has good news: see whether its guard is
 * still needed.
 */
function codeOf(run: () => unknown): RegionErrorCode | null {
  try {
    run();
  } catch (error) {
    if (error instanceof RegionError) return error.code;
    throw error;
  }
  return null;
}

function box(minX: number, minY: number, maxX: number, maxY: number): Ring {
  return [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
}

const clip = (ring: Ring): ClipPolygon => [ring.map(([x, y]): [number, number] => [x, y])];
const flat = (ring: Ring): flatten.Polygon =>
  new flatten.Polygon(ring.map(([x, y]) => new flatten.Point(x, y)));
const inMillimetres = (ring: Ring): Ring => ring.map(([x, y]): Point => [1000 * x, 1000 * y]);

describe('polygon-clipping alone', () => {
  const square = box(0, 0, 10, 10);

  it('gives rings of NaN for infinite corners without a word; here they are refused', () => {
    const endless: Ring = [...square.slice(0, 3), [Number.POSITIVE_INFINITY, 10]];
    const raw = polygonClipping.union(clip(square), clip(endless));
    expect(raw.flat(3).some((value) => !Number.isFinite(value))).toBe(true);
    expect(codeOf(() => unite([square, endless]))).toBe('not-finite');
    expect(codeOf(() => intersect(square, [...square.slice(0, 3), [Number.NaN, 10]]))).toBe('not-finite');
  });

  it('gives nothing for a ring of two corners; here it is refused', () => {
    expect(polygonClipping.union(clip(square.slice(0, 2)))).toEqual([]);
    expect(codeOf(() => unite([square.slice(0, 2)]))).toBe('too-few-corners');
  });

  it('is not asked anything that could keep it for minutes', () => {
    const many = Array.from({ length: 10_001 }, (_, i): Point => {
      const angle = (2 * Math.PI * i) / 10_001;
      return [5000 * Math.cos(angle), 5000 * Math.sin(angle)];
    });
    expect(codeOf(() => unite([many]))).toBe('too-many-corners');
    expect(codeOf(() => unite([box(0, 0, 1e8, 1e8)]))).toBe('too-far');
  });

  it('answers the next call after one that threw', () => {
    const before = regionArea(unite([square, translated(square, 5, 5)]));
    expect(() => polygonClipping.union(clip([...square.slice(0, 3), [Number.NaN, 10]]))).toThrow();
    expect(regionArea(unite([square, translated(square, 5, 5)]))).toBe(before);
    expect(before).toBe(175);
  });
});

describe('@flatten-js/core alone', () => {
  it('is wrong about shapes that share an edge, without a word: the intersection of neighbours is one of them', () => {
    const one = box(0.4, 0.4, 0.9, 1.9);
    const other = box(0.6000000000000001, 1.9000000000000001, 0.8, 3.3);
    expect(flatten.BooleanOperations.intersect(flat(one), flat(other)).area()).toBeGreaterThan(0.2);
    // It is not used for that here.
    const [a, b] = [one, other].map(inMillimetres);
    expect(regionArea(intersect(a, b))).toBe(0);
    expect(regionArea(unite([a, b]))).toBeCloseTo(500 * 1500 + 200 * 1400, -3);
    expect(closestPoints(a, b).distance).toBeLessThanOrEqual(1e-3);
  });

  it('wants rings to run the same way in booleans; here the direction is free', () => {
    const [one, other] = [box(0, 0, 2, 2), box(1, 1, 3, 3)];
    const raw = flatten.BooleanOperations.intersect(flat(one), flat(reversed(other))).area();
    expect(Math.abs(raw - 1)).toBeGreaterThan(0.5);
    const [a, b] = [one, other].map(inMillimetres);
    for (const [p, q] of [
      [a, b],
      [reversed(a), b],
      [a, reversed(b)],
    ]) {
      expect(regionArea(intersect(p, q))).toBe(1e6);
      expect(regionArea(subtract(p, [q]))).toBe(3e6);
      expect(regionArea(unite([p, q]))).toBe(7e6);
    }
  });

  it('measures to the boundary, so that a ring deep in another is far from it; here it is not', () => {
    const [outer, inner] = [box(0, 0, 10, 10), box(4, 4, 5, 5)];
    expect(flat(outer).distanceTo(flat(inner))[0]).toBe(4);
    const [a, b] = [outer, inner].map(inMillimetres);
    expect(closestPoints(a, b).distance).toBe(0);
    expect(closestPoints(b, a).distance).toBe(0);
    expect(pointToRing([4500, 4500], a).distance).toBe(0);
    expect(ringToSegment(a, [4000, 4000], [5000, 4500]).distance).toBe(0);
  });

  it('takes a small gap for none, and a point beside a polygon for one in it', () => {
    const one = box(0, 0, 1, 1);
    expect(flat(one).distanceTo(flat(translated(one, 1 + 9e-7, 0)))[0]).toBe(0);
    expect(flat(one).contains(new flatten.Point(1 + 9e-7, 0.5))).toBe(true);
    // In the metres that are used here, that is the 0.001 mm that is stated; inside and outside are decided exactly.
    const a = inMillimetres(one);
    expect(closestPoints(a, translated(a, 1000 + 9e-4, 0)).distance).toBeLessThanOrEqual(1e-3);
    expect(closestPoints(a, translated(a, 1000 + 2e-3, 0)).distance).toBeGreaterThan(1e-3);
    expect(pointToRing([1000 + 2e-3, 500], a).distance).toBeGreaterThan(1e-3);
  });

  it('may say more than the distance by what it says at most, and so no certificate rests on it', () => {
    const star = fc
      .tuple(
        fc.array(fc.double({ min: 0.2, max: 3, noNaN: true }), { minLength: 3, maxLength: 8 }),
        fc.integer({ min: -4, max: 4 }),
        fc.integer({ min: -4, max: 4 }),
      )
      .map(([radii, x, y]) =>
        radii.map(
          (r, i): Point => [
            x + r * Math.cos((2 * Math.PI * i) / radii.length),
            y + r * Math.sin((2 * Math.PI * i) / radii.length),
          ],
        ),
      );
    fc.assert(
      fc.property(star, star, (one, other) => {
        const exact = Math.min(
          ...sides(one).flatMap(([a, b]) => sides(other).map(([p, q]) => segmentDistance(a, b, p, q))),
        );
        const raw = flat(one).distanceTo(flat(other))[0];
        expect(raw - exact).toBeLessThanOrEqual(1e-6);
        const ours = closestPoints(inMillimetres(one), inMillimetres(other)).distance;
        expect(ours).toBeLessThanOrEqual(1000 * exact + 1e-3);
      }),
      { seed: 20251212, numRuns: 600 },
    );
  });

  it('gives an area of NaN for corners that are no numbers; here they are refused', () => {
    expect(flat([...box(0, 0, 1, 1).slice(0, 3), [0, Number.POSITIVE_INFINITY]]).area()).toBeNaN();
    const bad: Ring = [...box(0, 0, 1000, 1000).slice(0, 3), [0, Number.POSITIVE_INFINITY]];
    expect(codeOf(() => closestPoints(bad, box(0, 0, 1, 1)))).toBe('not-finite');
  });

  it('has a tolerance that anybody in the program may change; distances here keep to theirs', () => {
    const usual = flatten.Utils.getTolerance();
    const a = box(0, 0, 1000, 1000);
    const others = [
      translated(a, 1250, 300),
      translated(a, 1300, 1400),
      rectangleRing([2000, 500], 600, 600, 0.5),
    ];
    const measured = (): number[] => others.map((b) => closestPoints(a, b).distance);
    const before = measured();
    try {
      for (const tolerance of [0, 1e-12, 1e-9, 1e-3, 0.5]) {
        // From 1 on it takes unit vectors for none, and nothing helps.
        flatten.Utils.setTolerance(tolerance);
        for (const [i, distance] of measured().entries())
          expect(Math.abs(distance - before[i])).toBeLessThanOrEqual(1e-3);
      }
    } finally {
      flatten.Utils.setTolerance(usual);
    }
  });
});
