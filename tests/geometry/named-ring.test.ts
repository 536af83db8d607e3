import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FLAT_TOLERANCE, inStandardOrder, withoutFlatCorners } from '../../src/geometry/named-ring.js';
import { distanceToSegment, ringDirection, rotated, signedArea } from '../../src/geometry/ring.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import { crookedRings, skylineRings, starRings } from '../helpers/rings.js';

const SEED = 71_003;
const square: Ring = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];

describe('withoutFlatCorners', () => {
  it('leaves a plain ring alone and names its sides by their first corners', () => {
    const named = withoutFlatCorners(square);
    expect(new Set(named.ring)).toEqual(new Set(square));
    for (const [k, at] of named.starts.entries()) expect(named.ring[k]).toBe(square[at]);
  });

  it('drops a closing corner, repeated corners and corners on a straight side', () => {
    const given: Ring = [
      [4, 0], // 0: on the side from 9 to 3
      [6, 0], // 1
      [6, 0], // 2: repeated
      [10, 0], // 3
      [10, 0.0005], // 4: repeated, within the tolerance
      [10, 10], // 5
      [5, 10.0004], // 6: as good as straight
      [0, 10], // 7
      [0, 0], // 8
      [0, 0], // 9: repeated; the side starts here
      [4, 0], // 10: closes the ring
    ];
    const { ring, starts } = inStandardOrder(withoutFlatCorners(given));
    expect(ring).toEqual(square);
    expect(starts).toEqual([9, 4, 5, 7]);
  });

  it('keeps a corner where the ring turns back on itself', () => {
    const spike: Ring = [...square.slice(0, 3), [5, 10], [5, 15], [5, 10], [0, 10]];
    expect(withoutFlatCorners(spike).ring).toHaveLength(7);
    const inLine: Ring = [...square.slice(0, 2), [10, 14], [10, 10], [0, 10]];
    expect(withoutFlatCorners(inLine).ring).toHaveLength(5);
  });

  it('leaves fewer than three corners of points in a line', () => {
    const line: Ring = [
      [0, 0],
      [3, 3],
      [9, 9],
      [6, 6],
    ];
    expect(withoutFlatCorners(line).ring.length).toBeLessThan(3);
    expect(withoutFlatCorners([[1, 1]]).ring).toHaveLength(1);
    expect(withoutFlatCorners([]).ring).toHaveLength(0);
    const all: Point = [5, 5];
    expect(withoutFlatCorners([all, all, all, all]).ring).toHaveLength(1);
  });

  it('does not wear a circle of thousands of corners down: the boundary stays within the tolerance', () => {
    const n = 10_000;
    const circle = Array.from({ length: n }, (_, i): Point => {
      const t = (2 * Math.PI * i) / n;
      return [3000 * Math.cos(t), 3000 * Math.sin(t)];
    });
    const { ring } = withoutFlatCorners(circle);
    expect(ring.length).toBeLessThanOrEqual(n / 2);
    for (const [i, [ax, ay]] of ring.entries()) {
      const [bx, by] = ring[(i + 1) % ring.length];
      const sagitta = 3000 - Math.hypot(ax + bx, ay + by) / 2;
      expect(sagitta).toBeLessThanOrEqual(FLAT_TOLERANCE + 1e-9);
    }
  });

  it('moves no boundary by more than twice the tolerance, whatever the corners do about it', () => {
    const wobble = fc.double({ min: -2, max: 2, noNaN: true });
    const extra = fc.array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), wobble, wobble), {
      minLength: 20,
      maxLength: 60,
    });
    fc.assert(
      fc.property(starRings(8), extra, (ring, points) => {
        const given: Point[] = [];
        for (const [i, a] of ring.entries()) {
          const b = ring[(i + 1) % ring.length];
          given.push(a);
          const onSide = points.filter((_, k) => k % ring.length === i).sort((p, q) => p[0] - q[0]);
          for (const [t, x, y] of onSide) {
            given.push([
              a[0] + t * (b[0] - a[0]) + x * FLAT_TOLERANCE,
              a[1] + t * (b[1] - a[1]) + y * FLAT_TOLERANCE,
            ]);
          }
        }
        const { ring: cleaned } = withoutFlatCorners(given);
        for (const p of given) {
          const off = Math.min(
            ...cleaned.map((a, i) => distanceToSegment(p, a, cleaned[(i + 1) % cleaned.length])),
          );
          expect(off).toBeLessThanOrEqual(2 * FLAT_TOLERANCE + 1e-9);
        }
        for (const corner of cleaned) expect(given).toContain(corner);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it('undoes any number of points put on the sides, after any turn', () => {
    const extra = fc.array(fc.tuple(fc.nat(), fc.double({ min: 0.1, max: 0.9, noNaN: true })), {
      maxLength: 8,
    });
    fc.assert(
      fc.property(
        fc.oneof(starRings(), skylineRings()),
        extra,
        fc.double({ min: 0, max: 7, noNaN: true }),
        (ring, points, angle) => {
          const plain = inStandardOrder(withoutFlatCorners(rotated(ring, angle)));
          const crowded: Point[] = [...ring];
          for (const [where, t] of points) {
            const i = where % crowded.length;
            const [ax, ay] = crowded[i];
            const [bx, by] = crowded[(i + 1) % crowded.length];
            crowded.splice(i + 1, 0, [ax + t * (bx - ax), ay + t * (by - ay)]);
          }
          const cleaned = inStandardOrder(withoutFlatCorners(rotated(crowded, angle)));
          expect(cleaned.ring).toEqual(plain.ring);
        },
      ),
      { seed: SEED, numRuns: 300 },
    );
  });
});

describe('inStandardOrder', () => {
  it('gives the same ring for every start and both directions, and each side its own given name', () => {
    fc.assert(
      fc.property(
        fc.oneof(starRings(), skylineRings(), crookedRings()),
        fc.nat(),
        fc.boolean(),
        (ring, turn, backwards) => {
          const n = ring.length;
          const order = ring.map((_, i) => (i + turn) % n);
          if (backwards) order.reverse();
          const given = order.map((i) => ring[i]);
          const standard = inStandardOrder(withoutFlatCorners(ring));
          const same = inStandardOrder(withoutFlatCorners(given));
          expect(same.ring).toEqual(standard.ring);
          expect(ringDirection(same.ring)).toBe(1);
          expect(Math.abs(signedArea(same.ring))).toBeCloseTo(Math.abs(signedArea(ring)), 5);
          for (const [k, start] of same.starts.entries()) {
            // The side starts at the given corner: forwards at its own start, backwards at its end.
            const forward = same.ring[k] === given[start];
            expect(forward || same.ring[(k + 1) % same.ring.length] === given[start]).toBe(true);
          }
        },
      ),
      { seed: SEED, numRuns: 300 },
    );
  });
});
