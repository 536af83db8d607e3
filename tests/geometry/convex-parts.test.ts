import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convexParts } from '../../src/geometry/convex-parts.js';
import { orientation, pointInRing, turnsOnlyLeft } from '../../src/geometry/predicates.js';
import { boundingBox, circleRing, reversed, ringDirection, signedArea } from '../../src/geometry/ring.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import { openRooms } from '../helpers/open-rooms.js';
import { crookedRings, randomFrom, skylineRings, starRings } from '../helpers/rings.js';

const SEED = 71_005;

function reflexCorners(ring: Ring): number {
  const n = ring.length;
  return ring.filter((p, i) => orientation(ring[(i + n - 1) % n], p, ring[(i + 1) % n]) < 0).length;
}

/** The contract, checked without any of the code that fulfils it but the predicates. */
function expectParts(ring: Ring, parts: readonly Ring[], seed: number): void {
  let area = 0;
  for (const part of parts) {
    expect(part.length).toBeGreaterThanOrEqual(3);
    expect(turnsOnlyLeft(part)).toBe(true);
    expect(signedArea(part)).toBeGreaterThan(0);
    for (const corner of part) expect(ring).toContain(corner);
    area += signedArea(part);
  }
  expect(Math.abs(area / signedArea(ring) - 1)).toBeLessThan(1e-12);
  // Convex parts that share no more than edges, r reflex corners: at least ceil(r / 2) + 1, here at most 2 r + 1.
  const reflex = reflexCorners(ring);
  expect(parts.length).toBeGreaterThanOrEqual(Math.ceil(reflex / 2) + 1);
  expect(parts.length).toBeLessThanOrEqual(2 * reflex + 1);

  const random = randomFrom(seed);
  const box = boundingBox(ring);
  for (let k = 0; k < 60; k++) {
    const x = box.minX + random() * (box.maxX - box.minX);
    const y = box.minY + random() * (box.maxY - box.minY);
    const inside = parts.filter((part) => pointInRing(part, x, y) === 1).length;
    expect(inside).toBe(pointInRing(ring, x, y) === 1 ? 1 : 0);
  }
}

describe('convexParts', () => {
  it('gives a convex ring back as it is', () => {
    const circle = circleRing([0, 0], 500);
    expect(convexParts(circle)).toEqual([circle]);
    expect(convexParts(circle)[0]).toBe(circle);
  });

  it('splits an L into two', () => {
    const ell: Ring = [
      [0, 0],
      [6, 0],
      [6, 2],
      [2, 2],
      [2, 5],
      [0, 5],
    ];
    const parts = convexParts(ell);
    expect(parts).toHaveLength(2);
    expectParts(ell, parts, SEED);
  });

  it('keeps its contract on stones, skylines and crooked rings', () => {
    const anticlockwise = crookedRings(40).map((ring) => (ringDirection(ring) > 0 ? ring : reversed(ring)));
    fc.assert(
      fc.property(fc.oneof(starRings(40), skylineRings(12), anticlockwise), fc.integer(), (ring, seed) => {
        expectParts(ring, convexParts(ring), seed);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it('copes with corners on straight sides and corners in line across the ring', () => {
    const spool: Point[] = [];
    for (let x = 0; x <= 10; x++) spool.push([x, x % 2 === 0 ? 0 : 1]);
    for (let x = 10; x >= 0; x--) spool.push([x, x % 2 === 0 ? 3 : 2]);
    expectParts(spool, convexParts(spool), SEED);
    const straight: Ring = [
      [0, 0],
      [2, 0],
      [4, 0],
      [6, 0],
      [6, 2],
      [6, 4],
      [4, 4],
      [4, 2],
      [2, 2],
      [0, 2],
      [0, 1],
    ];
    expectParts(straight, convexParts(straight), SEED);
  });

  it('splits all open rooms', () => {
    for (const [i, room] of openRooms.entries()) expectParts(room.pts, convexParts(room.pts), i);
  });

  it('takes a spiral of 2,000 corners, the worst for cutting ears', () => {
    const outer: Point[] = [];
    const inner: Point[] = [];
    for (let i = 0; i < 1000; i++) {
      const t = i * 0.05;
      const r = 100 + 2 * i;
      outer.push([r * Math.cos(t), r * Math.sin(t)]);
      inner.push([(r - 0.8) * Math.cos(t), (r - 0.8) * Math.sin(t)]);
    }
    const spiral = [...outer, ...inner.reverse()];
    expectParts(spiral, convexParts(spiral), SEED);
  });

  it('refuses rings that run clockwise, cross themselves, or are none', () => {
    const square = circleRing([0, 0], 100);
    expect(() => convexParts(reversed(square))).toThrow('not simple and anticlockwise');
    expect(() => convexParts(square.slice(0, 2))).toThrow('at least 3 corners');
  });
});
