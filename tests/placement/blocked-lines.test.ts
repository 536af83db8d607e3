import { describe, expect, it } from 'vitest';
import { blockedLines, findBlockedLine } from '../../src/geometry/blocked-lines.js';
import { obstacleEdges } from '../../src/geometry/obstacle-edges.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import { fuzzProblem } from './bound-fuzz.js';
import { pointDistance, pointInside, sides } from './plain-distance.js';
import { randomNumbers, rectangle } from './rooms.js';

function rangeOf(
  outline: Ring,
  footprints: readonly Ring[],
  edge: number,
): [lo: number, hi: number, whole: boolean] {
  const lines = blockedLines(obstacleEdges(outline, footprints), 1 + footprints.length);
  findBlockedLine(lines, edge);
  return [lines.lo[edge], lines.hi[edge], lines.whole[edge] === 1];
}

const { NEGATIVE_INFINITY: BEFORE, POSITIVE_INFINITY: BEYOND } = Number;

describe('how far the line of an edge stays out of free space', () => {
  const room = rectangle(0, 0, 6000, 4000);

  it('is without end for a wall on the convex hull', () => {
    expect(rangeOf(room, [], 0)).toEqual([BEFORE, BEYOND, true]);
  });

  it('ends where the line enters the room', () => {
    const elbow: Ring = [
      [0, 0],
      [6000, 0],
      [6000, 2000],
      [4000, 2000],
      [4000, 4000],
      [0, 4000],
    ];
    expect(rangeOf(elbow, [], 2)).toEqual([BEFORE, 2000, false]);
    expect(rangeOf(elbow, [], 3)).toEqual([0, BEYOND, false]);
  });

  it('goes on through footprints that overlap or touch, and to the end through a screen that parts the room', () => {
    const footprints = [rectangle(1000, 1000, 2000, 2000), rectangle(1500, 500, 3000, 1500)];
    // The lower side of the first footprint, which runs from (2000, 1000) ... the rings run clockwise: its last side.
    const edges = obstacleEdges(room, footprints).edges;
    const lower = [4, 5, 6, 7].find((e) => edges.ay[e] === 1000 && edges.by[e] === 1000) ?? -1;
    const [lo, hi] = rangeOf(room, footprints, lower);
    expect([lo, hi].map((at) => edges.ax[lower] + edges.tx[lower] * at).sort((a, b) => a - b)).toEqual([
      1000, 3000,
    ]);
    const screen = rectangle(-100, 1900, 6100, 2000);
    for (const e of [4, 5, 6, 7]) {
      // Without end or not, there is free space on both sides of it.
      expect(rangeOf(room, [screen], e)[2]).toBe(false);
    }
    const side = [4, 5, 6, 7].find((e) => obstacleEdges(room, [screen]).edges.ny[e] === 1) ?? -1;
    expect(rangeOf(room, [screen], side)).toEqual([BEFORE, BEYOND, false]);
  });

  it('has no free point, and free space begins where it ends (seed 81)', () => {
    const random = randomNumbers(81);
    let ends = 0;
    const freePoints: Point[] = [];
    for (let k = 0; k < 30; k++) {
      const { outline, tall } = fuzzProblem(random, k);
      const isFree = (point: Point): boolean =>
        pointInside(outline, point) && !tall.some((ring) => pointInside(ring, point));
      // The plain test of a point on an edge may go either way.
      const nearEdge = (point: Point): boolean =>
        [outline, ...tall].some((ring) => sides(ring).some(([a, b]) => pointDistance(a, b, point) < 1e-3));
      const obstacles = obstacleEdges(outline, tall);
      const lines = blockedLines(obstacles, 1 + tall.length);
      const { edges } = obstacles;
      for (let e = 0; e < edges.count; e++) {
        findBlockedLine(lines, e);
        const at = (t: number): Point => [edges.ax[e] + t * edges.tx[e], edges.ay[e] + t * edges.ty[e]];
        const lo = Math.max(lines.lo[e], -20_000);
        const hi = Math.min(lines.hi[e], 20_000);
        expect(lo).toBeLessThanOrEqual(0);
        expect(hi).toBeGreaterThanOrEqual(edges.length[e]);
        for (let s = 0; s < 15; s++) {
          const point = at(lo + (hi - lo) * random());
          if (isFree(point) && !nearEdge(point)) freePoints.push(point);
        }
        for (const [end, out] of [
          [lines.lo[e], -0.01],
          [lines.hi[e], 0.01],
        ]) {
          if (!Number.isFinite(end)) continue;
          ends++;
          expect(isFree(at(end + out)) || nearEdge(at(end + out))).toBe(true);
        }
        if (lines.whole[e] === 0) continue;
        for (const [x, y] of outline) {
          expect((x - edges.ax[e]) * edges.nx[e] + (y - edges.ay[e]) * edges.ny[e]).toBeGreaterThan(-1e-6);
        }
      }
    }
    expect(freePoints).toEqual([]);
    expect(ends).toBeGreaterThan(250);
  });
});
