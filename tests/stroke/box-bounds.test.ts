import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { edgeArrays } from '../../src/geometry/edge-arrays.js';
import { distanceToConvex } from '../../src/geometry/shape-distance.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import { boxFrame, exitRange, type ShotBox, seePoint, setBox } from '../../src/stroke/box-bounds.js';
import { addInterval, firstFree, intervals } from '../../src/stroke/box-elevations.js';
import { boundPart, partSpan } from '../../src/stroke/box-parts.js';
import { prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import { obstacle, rectangle, room, STROKE, TABLE } from './scenes.js';

// Bounds over a box against single balls and rays in it. Seed 20261 for all properties, so that runs repeat.
const SEEDED = { seed: 20261 };

const coordinate = fc.double({ min: -3000, max: 3000, noNaN: true });
const unit = fc.double({ min: -1, max: 1, noNaN: true });
const boxes = fc.record({
  u: fc.double({ min: -1000, max: 1000, noNaN: true }),
  v: fc.double({ min: -500, max: 500, noNaN: true }),
  phi: fc.double({ min: -7, max: 7, noNaN: true }),
  halfU: fc.double({ min: 0, max: 80, noNaN: true }),
  halfV: fc.double({ min: 0, max: 80, noNaN: true }),
  halfPhi: fc.oneof(fc.constant(0), fc.double({ min: 0, max: Math.PI, noNaN: true })),
});
/** A shot of the box by its place in it, each from -1 to 1. */
const places = fc.array(fc.tuple(unit, unit, unit), { minLength: 1, maxLength: 12 });

function frameOf(b: ShotBox) {
  const frame = boxFrame();
  setBox(frame, b);
  return frame;
}

describe('bounds over a box of shots', () => {
  it('holds where a point lies, along and across the ray, for every shot', () => {
    fc.assert(
      fc.property(boxes, coordinate, coordinate, places, (b, x, y, shots) => {
        const frame = frameOf(b);
        seePoint(frame, x, y);
        for (const [i, j, k] of shots) {
          const phi = b.phi + k * b.halfPhi;
          const dx = x - b.u - i * b.halfU;
          const dy = y - b.v - j * b.halfV;
          const along = dx * Math.cos(phi) + dy * Math.sin(phi);
          const across = dy * Math.cos(phi) - dx * Math.sin(phi);
          expect(along).toBeGreaterThanOrEqual(frame.along.lo);
          expect(along).toBeLessThanOrEqual(frame.along.hi);
          expect(across).toBeGreaterThanOrEqual(frame.across.lo);
          expect(across).toBeLessThanOrEqual(frame.across.hi);
        }
      }),
      SEEDED,
    );
  });

  it('is sharp: without extent it is the one shot, up to the slack for rounding', () => {
    fc.assert(
      fc.property(boxes, coordinate, coordinate, (b, x, y) => {
        const frame = frameOf({ ...b, halfU: 0, halfV: 0, halfPhi: 0 });
        seePoint(frame, x, y);
        expect(frame.along.hi - frame.along.lo).toBeLessThan(1e-6);
        expect(frame.across.hi - frame.across.lo).toBeLessThan(1e-6);
      }),
      SEEDED,
    );
  });

  it('holds where every ray leaves the table', () => {
    fc.assert(
      fc.property(boxes, places, (b, shots) => {
        const range = { lo: 0, hi: 0 };
        exitRange(frameOf(b), 1257, 699, range);
        for (const [i, j, k] of shots) {
          const phi = b.phi + k * b.halfPhi;
          const u = b.u + i * b.halfU;
          const v = b.v + j * b.halfV;
          const byX = (1257 - Math.sign(Math.cos(phi)) * u) / Math.abs(Math.cos(phi));
          const byY = (699 - Math.sign(Math.sin(phi)) * v) / Math.abs(Math.sin(phi));
          const t = Math.min(byX, byY);
          expect(t).toBeGreaterThanOrEqual(range.lo);
          expect(t).toBeLessThanOrEqual(range.hi);
        }
      }),
      SEEDED,
    );
  });

  it('holds where rays enter and leave a grown part, and is sharp without extent, corners included', () => {
    const ring: Ring = [
      [1500, -200],
      [2100, -350],
      [2000, 260],
      [1620, 330],
    ];
    const scene = prepareStrokes(
      room(rectangle(-4000, -4000, 4000, 4000), [obstacle('thing', ring)]),
      TABLE,
      { x: 0, y: 0, angle: 0 },
      STROKE,
    );
    const edges = edgeArrays([ring]);
    const aimed = fc.record({
      u: fc.double({ min: -1000, max: 1000, noNaN: true }),
      v: fc.double({ min: -500, max: 500, noNaN: true }),
      phi: fc.double({ min: -0.6, max: 0.6, noNaN: true }),
      halfU: fc.double({ min: 0, max: 40, noNaN: true }),
      halfV: fc.double({ min: 0, max: 40, noNaN: true }),
      halfPhi: fc.double({ min: 0, max: 0.3, noNaN: true }),
    });
    const growth = 60;
    const crossing = (px: number, py: number, phi: number): [t0: number, t1: number] | null => {
      // The distance to a convex body is a convex function along a ray: least by thirds, then its crossings by halves.
      const away = (t: number): number =>
        distanceToConvex(edges, 0, 4, px + t * Math.cos(phi), py + t * Math.sin(phi)) - growth;
      let lo = 0;
      let hi = 6000;
      for (let n = 0; n < 120; n++) {
        const a = lo + (hi - lo) / 3;
        const b = hi - (hi - lo) / 3;
        if (away(a) < away(b)) hi = b;
        else lo = a;
      }
      const inside = (lo + hi) / 2;
      if (away(inside) >= 0) return null;
      const root = (from: number, to: number): number => {
        let [out, inn] = [from, to];
        for (let n = 0; n < 60; n++) {
          const middle = (out + inn) / 2;
          if (away(middle) > 0) out = middle;
          else inn = middle;
        }
        return (out + inn) / 2;
      };
      return [away(0) <= 0 ? 0 : root(0, inside), root(6000, inside)];
    };
    let met = 0;
    fc.assert(
      fc.property(aimed, places, fc.boolean(), (b, shots, point) => {
        const tried = point ? { ...b, halfU: 0, halfV: 0, halfPhi: 0 } : b;
        const span = partSpan();
        const possible = boundPart(frameOf(tried), scene.parts, 0, growth, 5000, span);
        for (const [i, j, k] of shots) {
          const phi = tried.phi + k * tried.halfPhi;
          const px = tried.u + i * tried.halfU;
          const py = tried.v + j * tried.halfV;
          const hit = crossing(px, py, phi);
          if (possible && span.sure) expect(hit).not.toBeNull();
          if (hit === null) continue;
          met++;
          const [t0, t1] = hit;
          expect(possible).toBe(true);
          expect(t0).toBeGreaterThanOrEqual(span.entryLo);
          expect(t1).toBeLessThanOrEqual(span.exitHi);
          if (span.sure) {
            expect(t0).toBeLessThanOrEqual(span.entryHi);
            expect(t1).toBeGreaterThanOrEqual(span.exitLo);
          }
          // Deep enough to be no graze, where a hair's breadth decides.
          if (point && t1 - t0 > 5) {
            expect(span.entryLo).toBeCloseTo(t0, 4);
            expect(span.exitHi).toBeCloseTo(t1, 4);
            expect(span.sure).toBe(true);
          }
        }
      }),
      { ...SEEDED, numRuns: 800 },
    );
    expect(met).toBeGreaterThan(500);
  });
});

describe('the first free elevation', () => {
  const make = (pairs: readonly Point[]) => {
    const set = intervals(pairs.length);
    for (const [lo, hi] of pairs) addInterval(set, lo, hi);
    return set;
  };

  it('is where a chain of intervals ends, whatever their order', () => {
    expect(firstFree(make([]), 0.1)).toBe(0.1);
    expect(
      firstFree(
        make([
          [0.2, 0.4],
          [-1, 0.25],
        ]),
        0.1,
      ),
    ).toBe(0.4);
    expect(firstFree(make([[0.1, 0.2]]), 0.1)).toBe(0.1);
    expect(
      firstFree(
        make([
          [0, 0.2],
          [0.2, 0.3],
        ]),
        0.1,
      ),
    ).toBe(0.2);
    expect(firstFree(make([[0, Infinity]]), 0.1)).toBe(Infinity);
  });

  // The lesson of the first prototype: an interval beyond the limit leaves a gap before it that is no gap.
  it('is not made up from an interval that lies beyond the covered ones', () => {
    expect(
      firstFree(
        make([
          [-1, 0.5],
          [0.6, 0.7],
        ]),
        0.1,
      ),
    ).toBe(0.5);
  });
});
