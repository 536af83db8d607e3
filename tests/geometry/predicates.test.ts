import fc from 'fast-check';
import { orient2d } from 'robust-predicates';
import { describe, expect, it } from 'vitest';
import {
  onSegment,
  orientation,
  pointInRing,
  segmentContact,
  segmentMeetsConvexInside,
  segmentsCross,
  segmentsMeet,
  turnsOnlyLeft,
} from '../../src/geometry/predicates.js';
import { circleRing } from '../../src/geometry/ring.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import { exactOrientation, nextUp } from '../helpers/exact.js';
import * as jts from '../helpers/jsts.js';
import { crookedRings, randomFrom, starRings } from '../helpers/rings.js';

const SEED = 71_001;
const square: Ring = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];

describe('orientation', () => {
  it('is positive for an anticlockwise turn with y up', () => {
    expect(orientation([0, 0], [1, 0], [1, 1])).toBe(1);
    expect(orientation([0, 0], [1, 0], [1, -1])).toBe(-1);
    expect(orientation([0, 0], [1, 1], [3, 3])).toBe(0);
  });

  it('has the opposite sign of the dependency, which is meant for y down', () => {
    expect(orient2d(0, 0, 1, 0, 1, 1)).toBeLessThan(0);
  });

  it('is exact on a grid of neighbouring doubles about a line (after Kettner et al. 2008, Classroom examples)', () => {
    let x = 0.5;
    for (let i = 0; i < 64; i++) {
      let y = 0.5;
      for (let j = 0; j < 64; j++) {
        expect(orientation([x, y], [12, 12], [24, 24])).toBe(exactOrientation([x, y], [12, 12], [24, 24]));
        y = nextUp(y);
      }
      x = nextUp(x);
    }
  });

  it('agrees with whole-number arithmetic near a line at room scale', () => {
    // Differences under 1e-140 mm are outside what is promised: their products underflow.
    const plain = (v: number): number => (Math.abs(v) < 1e-100 ? 0 : v);
    const coordinate = fc.double({ min: -1e7, max: 1e7, noNaN: true }).map(plain);
    fc.assert(
      fc.property(
        coordinate,
        coordinate,
        coordinate,
        coordinate,
        fc.double({ min: -2, max: 3, noNaN: true }),
        (ax, ay, bx, by, t) => {
          const c: Point = [plain(ax + t * (bx - ax)), plain(ay + t * (by - ay))];
          const sign = orientation([ax, ay], [bx, by], c);
          expect(sign).toBe(exactOrientation([ax, ay], [bx, by], c));
          expect(orientation([bx, by], [ax, ay], c)).toBe(sign === 0 ? 0 : -sign);
          expect(orientation([bx, by], c, [ax, ay])).toBe(sign);
        },
      ),
      { seed: SEED, numRuns: 2000 },
    );
  });
});

describe('segmentContact', () => {
  const cases: readonly (readonly [string, Point, Point, Point, Point, string])[] = [
    ['a plain cross', [0, 0], [10, 10], [0, 10], [10, 0], 'cross'],
    ['a T', [0, 0], [10, 0], [5, 0], [5, 5], 'touch'],
    ['an L', [0, 0], [10, 0], [10, 0], [10, 5], 'touch'],
    ['in line, end to end', [0, 0], [10, 0], [10, 0], [20, 0], 'touch'],
    ['in line, one upon the other', [0, 0], [10, 0], [5, 0], [20, 0], 'overlap'],
    ['in line and upright', [3, 0], [3, 10], [3, 4], [3, 6], 'overlap'],
    ['the same', [0, 0], [7, 3], [7, 3], [0, 0], 'overlap'],
    ['in line, apart', [0, 0], [10, 0], [11, 0], [20, 0], 'apart'],
    ['parallel', [0, 0], [10, 0], [0, 1], [10, 1], 'apart'],
    ['one beyond the end of the other', [0, 0], [10, 0], [11, -5], [11, 5], 'apart'],
    ['boxes overlap, segments do not', [0, 0], [10, 10], [6, 0], [10, 5], 'apart'],
    ['a point on a segment', [5, 5], [5, 5], [0, 0], [10, 10], 'touch'],
    ['a point off a segment', [5, 6], [5, 6], [0, 0], [10, 10], 'apart'],
    ['a point on itself', [5, 5], [5, 5], [5, 5], [5, 5], 'touch'],
    ['two points', [5, 5], [5, 5], [5, 6], [5, 6], 'apart'],
  ];
  it.each(cases)('%s', (_, a, b, c, d, contact) => {
    for (const [p, q] of [
      [a, b],
      [b, a],
    ]) {
      for (const [r, s] of [
        [c, d],
        [d, c],
      ]) {
        expect(segmentContact(p, q, r, s)).toBe(contact);
        expect(segmentContact(r, s, p, q)).toBe(contact);
      }
    }
    expect(segmentsCross(a, b, c, d)).toBe(contact === 'cross');
    expect(segmentsMeet(a, b, c, d)).toBe(contact !== 'apart');
  });

  it('agrees with JTS on small grids, where touching is common', () => {
    const grid = fc.tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 0, max: 5 }));
    fc.assert(
      fc.property(grid, grid, grid, grid, (a, b, c, d) => {
        fc.pre(a.join() !== b.join() && c.join() !== d.join());
        const s = jts.segment(a, b);
        const t = jts.segment(c, d);
        const shared = jts.intersection(s, t);
        const contact = segmentContact(a, b, c, d);
        expect(contact !== 'apart').toBe(jts.intersects(s, t));
        expect(contact === 'overlap').toBe(jts.perimeter(shared) > 0);
        expect(onSegment(a, b, c)).toBe(jts.intersects(s, jts.point(c)));
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });
});

describe('pointInRing', () => {
  it('tells inside, boundary and outside', () => {
    expect(pointInRing(square, 5, 5)).toBe(1);
    expect(pointInRing(square, 10, 5)).toBe(0);
    expect(pointInRing(square, 5, 10)).toBe(0);
    expect(pointInRing(square, 0, 0)).toBe(0);
    expect(pointInRing(square, 10.000001, 5)).toBe(-1);
    expect(pointInRing(square, 5, nextUp(10))).toBe(-1);
    expect(pointInRing(square, nextUp(0), 5)).toBe(1);
    expect(pointInRing([], 0, 0)).toBe(-1);
  });

  it('is not misled by corners at the height of the point', () => {
    const crown: Ring = [
      [0, 0],
      [8, 0],
      [8, 4],
      [6, 2],
      [4, 4],
      [2, 2],
      [0, 4],
    ];
    for (const x of [1, 3, 5, 7]) expect(pointInRing(crown, x, 2)).toBe(1);
    for (const x of [2, 6]) expect(pointInRing(crown, x, 2)).toBe(0);
    for (const x of [-1, 9]) expect(pointInRing(crown, x, 2)).toBe(-1);
    for (const x of [-1, 9, 4]) expect(pointInRing(crown, x, 4)).toBe(x === 4 ? 0 : -1);
    expect(pointInRing(crown, 2, 3)).toBe(-1);
  });

  it('agrees with JTS, in both directions of the ring', () => {
    fc.assert(
      fc.property(fc.oneof(starRings(), crookedRings()), fc.integer(), (ring, seed) => {
        const random = randomFrom(seed);
        const polygon = jts.polygon(ring);
        const backwards = [...ring].reverse();
        for (let k = 0; k < 20; k++) {
          // Heights of corners are the hard ones.
          const y = k % 2 === 0 ? ring[k % ring.length][1] : random() * 12_000 - 6000;
          const x = random() * 14_000 - 6000;
          const where = pointInRing(ring, x, y);
          expect(where >= 0).toBe(jts.covers(polygon, jts.point([x, y])));
          expect(pointInRing(backwards, x, y)).toBe(where);
        }
        for (const [x, y] of ring) expect(pointInRing(ring, x, y)).toBe(0);
      }),
      { seed: SEED, numRuns: 150 },
    );
  });
});

describe('turnsOnlyLeft', () => {
  it('is true of convex anticlockwise rings, straight corners included', () => {
    expect(turnsOnlyLeft(square)).toBe(true);
    expect(turnsOnlyLeft([[0, 0], [5, 0], ...square.slice(1)])).toBe(true);
    expect(turnsOnlyLeft([...square].reverse())).toBe(false);
    expect(turnsOnlyLeft([[0, 0], [5, 1], ...square.slice(1)])).toBe(false);
  });
});

describe('segmentMeetsConvexInside', () => {
  it('does not count touching', () => {
    expect(segmentMeetsConvexInside(square, [-5, 5], [15, 5])).toBe(true);
    expect(segmentMeetsConvexInside(square, [2, 2], [3, 3])).toBe(true);
    expect(segmentMeetsConvexInside(square, [10, 5], [5, 5])).toBe(true);
    expect(segmentMeetsConvexInside(square, [5, 5], [5, 5])).toBe(true);
    expect(segmentMeetsConvexInside(square, [10, -5], [10, 15])).toBe(false);
    expect(segmentMeetsConvexInside(square, [10, 5], [15, 5])).toBe(false);
    expect(segmentMeetsConvexInside(square, [5, 15], [15, 5])).toBe(false);
    expect(segmentMeetsConvexInside(square, [9, 13], [13, 9])).toBe(false);
    expect(segmentMeetsConvexInside(square, [10, 5], [10, 5])).toBe(false);
  });

  it('agrees with the length that JTS finds inside', () => {
    const random = randomFrom(SEED);
    const ring = circleRing([0, 0], 1000);
    const polygon = jts.polygon(ring);
    for (let k = 0; k < 500; k++) {
      const a: Point = [random() * 2000 - 1000, random() * 2000 - 1000];
      const b: Point = [random() * 2000 - 1000, random() * 2000 - 1000];
      const inside = jts.perimeter(jts.intersection(polygon, jts.segment(a, b)));
      expect(segmentMeetsConvexInside(ring, a, b)).toBe(inside > 0);
    }
  });
});
