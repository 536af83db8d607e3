import { describe, expect, it } from 'vitest';
import { edgeArrays } from '../../src/geometry/edge-arrays.js';
import { rayInGrownConvex } from '../../src/geometry/ray-convex.js';
import { type GrownOutline, grownOutline, rayToGrownOutline } from '../../src/geometry/ray-outline.js';
import { distanceEdgeToBox, reflexStarts } from '../../src/geometry/shape-distance.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import { between, random, randomConvex, rectangle } from '../stroke/scenes.js';
import { outsideBy, toBoundary } from '../stroke/shot-oracle.js';

const span = new Float64Array(2);
const rayOf = (...numbers: number[]): Float64Array => Float64Array.from(numbers);

describe('a ray through a convex polygon grown by a disc', () => {
  it('is inside exactly where its points are no farther from the polygon than the disc', () => {
    const next = random(7);
    let hits = 0;
    for (let k = 0; k < 4000; k++) {
      const ring = randomConvex(
        next,
        between(next, -500, 500),
        between(next, -500, 500),
        between(next, 20, 400),
      );
      const edges = edgeArrays([ring]);
      const margin = next() < 0.15 ? 0 : between(next, 0, 120);
      const phi = next() < 0.1 ? 0 : next() * 2 * Math.PI;
      const [px, py] = [between(next, -700, 700), between(next, -700, 700)];
      const [ux, uy] = [Math.cos(phi), Math.sin(phi)];
      const hit = rayInGrownConvex(edges, 0, edges.count, margin, rayOf(px, py, ux, uy), span);
      const [t0, t1] = hit ? span : [Infinity, -Infinity];
      if (hit) hits++;
      const away = (t: number): number => outsideBy(ring, px + t * ux, py + t * uy) - margin;
      if (hit && t0 > 0) expect(Math.abs(away(t0))).toBeLessThan(1e-6);
      if (hit) expect(Math.abs(away(t1))).toBeLessThan(1e-6);
      for (let i = 0; i < 12; i++) {
        const t = between(next, 0, 1500);
        if (Math.min(Math.abs(t - t0), Math.abs(t - t1)) < 1e-4) continue;
        const inside = away(t) < 0;
        if (Math.abs(away(t)) > 1e-7) expect(t0 < t && t < t1).toBe(inside);
      }
    }
    expect(hits).toBeGreaterThan(700);
  });

  it('does not count touching, and starts at 0 inside', () => {
    const square = edgeArrays([rectangle(100, -50, 200, 50)]);
    expect(rayInGrownConvex(square, 0, 4, 10, rayOf(0, 60, 1, 0), span)).toBe(false);
    expect(rayInGrownConvex(square, 0, 4, 10, rayOf(0, 59.999, 1, 0), span)).toBe(true);
    expect(rayInGrownConvex(square, 0, 4, 10, rayOf(150, 0, 1, 0), span)).toBe(true);
    expect([...span]).toEqual([0, 60]);
    expect(rayInGrownConvex(square, 0, 4, 10, rayOf(210, 0, 1, 0), span)).toBe(false);
    // Past the rounded corner of a square grown by 10, where a mitred one would be met.
    expect(rayInGrownConvex(square, 0, 4, 10, rayOf(91, 200, 0, -1), span)).toBe(true);
    expect(
      rayInGrownConvex(square, 0, 4, 10, rayOf(200 + 8, 50 + 8, Math.SQRT1_2, -Math.SQRT1_2), span),
    ).toBe(false);
  });
});

describe('a ray inside an outline', () => {
  const corners: Ring = [
    [-900, -700],
    [-200, -700],
    [-200, -450],
    [150, -400],
    [200, -700],
    [900, -700],
    [1000, 100],
    [500, 130],
    [480, 170],
    [900, 200],
    [850, 700],
    [-850, 650],
  ];
  it.each([1, 7])('runs to the first point within the margin of a wall, each wall in %i pieces', (pieces) => {
    const outline = corners.flatMap(([ax, ay], i): Point[] => {
      const [bx, by] = corners[(i + 1) % corners.length];
      // Pieces bent a little, so that there are as many corners, jutting in and out.
      return Array.from({ length: pieces }, (_, k) => {
        const s = k / pieces;
        const bend = k === 0 ? 0 : 6 * (-1) ** k;
        const size = Math.hypot(bx - ax, by - ay);
        return [
          ax + s * (bx - ax) - (bend * (by - ay)) / size,
          ay + s * (by - ay) + (bend * (bx - ax)) / size,
        ];
      });
    });
    const edges = edgeArrays([outline]);
    const grown = (margin: number): GrownOutline =>
      grownOutline(edges, reflexStarts(edges), [...outline.keys()], margin);
    const next = random(8);
    const edge = new Int32Array(1);
    let checked = 0;
    while (checked < 1500) {
      const margin = next() < 0.2 ? 0 : between(next, 0, 90);
      const [px, py] = [between(next, -1000, 1000), between(next, -700, 700)];
      if (-outsideBy(outline, px, py) < margin + 1e-6) continue;
      checked++;
      const phi = next() * 2 * Math.PI;
      const [ux, uy] = [Math.cos(phi), Math.sin(phi)];
      const t = rayToGrownOutline(grown(margin), rayOf(px, py, ux, uy), 5000, edge);
      const at = (s: number): number => -outsideBy(outline, px + s * ux, py + s * uy) - margin;
      expect(Math.abs(at(t))).toBeLessThan(1e-6);
      // Walk there in steps no longer than the room there is.
      let s = 0;
      while (s < t - 1e-3) {
        const room = at(s);
        expect(room).toBeGreaterThan(0);
        s += Math.max(room, 1e-4);
      }
      const [ax, ay, bx, by] = [edges.ax, edges.ay, edges.bx, edges.by].map((v) => v[edge[0]]);
      const hit: Ring = [
        [ax, ay],
        [bx, by],
      ];
      expect(toBoundary(hit, px + t * ux, py + t * uy)).toBeCloseTo(margin, 6);
      expect(rayToGrownOutline(grown(margin), rayOf(px, py, ux, uy), t / 2, edge)).toBe(t / 2);
      expect(edge[0]).toBe(-1);
    }
  });

  it('does not slip past a wall that it starts at, nor between two edges', () => {
    const edge = new Int32Array(1);
    const walls = edgeArrays([rectangle(0, 0, 1000, 1000)]);
    const squareBy = (margin: number): GrownOutline =>
      grownOutline(walls, reflexStarts(walls), [0, 1, 2, 3], margin);
    const square = squareBy(20);
    expect(rayToGrownOutline(square, rayOf(500, 980, 0, 1), 5000, edge)).toBe(0);
    expect(edge[0]).toBe(2);
    // Along the margin's edge: touching all the way is free.
    expect(rayToGrownOutline(square, rayOf(500, 980, 1, 0), 5000, edge)).toBe(480);
    for (const margin of [0, 20]) {
      const t = rayToGrownOutline(
        { ...square, margin },
        rayOf(300, 300, Math.SQRT1_2, Math.SQRT1_2),
        5000,
        edge,
      );
      expect(t).toBeCloseTo((700 - margin) * Math.SQRT2, 9);
    }
  });
});

describe('the distance between an edge and a rectangle', () => {
  it('is the least distance of points on both', () => {
    const next = random(9);
    for (let k = 0; k < 200; k++) {
      const edges = edgeArrays([
        [
          [between(next, -400, 400), between(next, -400, 400)],
          [between(next, -400, 400), between(next, -400, 400)],
        ],
      ]);
      const [hx, hy] = [between(next, 20, 200), between(next, 20, 200)];
      const box = rectangle(-hx, -hy, hx, hy);
      let least = Infinity;
      for (let i = 0; i <= 2000; i++) {
        const s = i / 2000;
        const x = edges.ax[0] + s * (edges.bx[0] - edges.ax[0]);
        const y = edges.ay[0] + s * (edges.by[0] - edges.ay[0]);
        least = Math.min(least, Math.max(0, outsideBy(box, x, y)));
      }
      const distance = distanceEdgeToBox(edges, 0, hx, hy);
      expect(distance).toBeLessThanOrEqual(least + 1e-9);
      expect(distance).toBeGreaterThanOrEqual(least - 0.6);
    }
  });
});
