import { describe, expect, it } from 'vitest';
import type { Placement, Point, Ring } from '../../src/geometry/types.js';
import { clearanceAt, distancesAt, STANDS_SLACK } from '../../src/placement/clearance-at.js';
import { cushionGaps } from '../../src/placement/cushion-gaps.js';
import { fuzzProblem } from '../placement/bound-fuzz.js';
import { corners, plainFrameDistance, pointInside, sides } from '../placement/plain-distance.js';
import { randomNumbers } from '../placement/rooms.js';

/** Points along the sides of a ring, corners among them, at most `step` mm apart. */
function samples(ring: Ring, step: number): Point[] {
  return sides(ring).flatMap(([[ax, ay], [bx, by]]) => {
    const count = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / step));
    return Array.from(
      { length: count },
      (_, k): Point => [ax + ((bx - ax) * k) / count, ay + ((by - ay) * k) / count],
    );
  });
}

const STEP = 60;

/** The least distance between samples of two rings, which exceeds that of the rings by at most a step. */
function sampledDistance(a: readonly Point[], b: readonly Point[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [ax, ay] of a) {
    for (const [bx, by] of b) {
      const square = (ax - bx) ** 2 + (ay - by) ** 2;
      if (square < least) least = square;
    }
  }
  return Math.sqrt(least);
}

function poseIn(outline: Ring, random: () => number): Placement {
  const [x, y] = outline[Math.floor(random() * outline.length)];
  // Nearer to the middle, which is the origin, than to a corner.
  const share = 0.7 * random();
  return { x: share * x, y: share * y, angle: random() * Math.PI };
}

describe('clearance against samples', () => {
  it('is the least sampled distance, to within the step, in 3,000 random scenes; and the table stands where nothing lies in its frame', () => {
    const random = randomNumbers(31_415);
    const tally = { free: 0, overlapping: 0, stands: 0, not: 0 };
    for (let k = 0; k < 3000; k++) {
      const problem = fuzzProblem(random, k);
      const pose = poseIn(problem.outline, random);
      const q = corners(problem.play, pose);
      const found = clearanceAt(problem, pose);
      const rings = [problem.outline, ...problem.tall];
      const middle: Point = [pose.x, pose.y];
      // Free: no corner, no side and no middle of one in the other. Sampled, so a sliver of overlap may be missed.
      const sampledQ = samples(q, STEP);
      const entered =
        !pointInside(problem.outline, middle) ||
        problem.tall.some((ring) => pointInside(ring, middle)) ||
        sampledQ.some(
          (p) => !pointInside(problem.outline, p) || problem.tall.some((ring) => pointInside(ring, p)),
        ) ||
        rings.some((ring) => samples(ring, STEP).some((p) => pointInside(q, p)));
      if (entered) {
        expect(found.clearance).toBeLessThanOrEqual(1e-9);
        tally.overlapping++;
      } else {
        const sampled = Math.min(...rings.map((ring) => sampledDistance(sampledQ, samples(ring, STEP))));
        expect(found.clearance).toBeLessThanOrEqual(sampled + 1e-6);
        // Half a step to a sample on either side.
        expect(found.clearance).toBeGreaterThanOrEqual(sampled - STEP);
        if (found.clearance > 0) {
          const things = distancesAt(problem, pose);
          expect(Math.min(...things.map(({ distance }) => distance))).toBeCloseTo(found.clearance, 6);
          tally.free++;
        }
      }
      // Touching and a slack count as standing; a hair within either is left open.
      const { length, width } = problem.frame;
      const grownBy = (mm: number) => ({
        ...problem,
        frame: { length: length + 2 * mm, width: width + 2 * mm },
      });
      const slack = STANDS_SLACK + 1e-9;
      if (plainFrameDistance(grownBy(slack), pose) >= 0) expect(found.stands).toBe(true);
      if (plainFrameDistance(grownBy(-slack), pose) < 0) expect(found.stands).toBe(false);
      tally[found.stands ? 'stands' : 'not']++;
    }
    expect(Math.min(...Object.values(tally))).toBeGreaterThan(150);
  });

  it('of the cushions is the first sample behind each, to within the step', () => {
    const random = randomNumbers(27_182);
    let checked = 0;
    for (let k = 0; k < 600; k++) {
      const problem = fuzzProblem(random, k);
      const pose = poseIn(problem.outline, random);
      if (!(clearanceAt(problem, pose).clearance > 0)) continue;
      const gaps = cushionGaps(problem, pose);
      const points = [problem.outline, ...problem.tall].flatMap((ring) => samples(ring, 5));
      const sides4 = [
        [gaps.endA, 0],
        [gaps.sideA, 1],
        [gaps.endB, 2],
        [gaps.sideB, 3],
      ] as const;
      for (const [{ distance }, quarter] of sides4) {
        const angle = pose.angle + (quarter * Math.PI) / 2;
        const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
        const along = quarter % 2 === 0;
        const half = (along ? problem.play.length : problem.play.width) / 2;
        const halfSide = (along ? problem.play.width : problem.play.length) / 2;
        let least = Number.POSITIVE_INFINITY;
        for (const [x, y] of points) {
          const out = (x - pose.x) * ux + (y - pose.y) * uy - half;
          const across = (y - pose.y) * ux - (x - pose.x) * uy;
          if (out > 0 && Math.abs(across) < halfSide) least = Math.min(least, out);
        }
        expect(distance).toBeLessThanOrEqual(least + 1e-6);
        // Something is there: the sample beside it may lie just outside the strip, so the strip is taken wider by the step.
        let wider = Number.POSITIVE_INFINITY;
        for (const [x, y] of points) {
          const out = (x - pose.x) * ux + (y - pose.y) * uy - half;
          const across = (y - pose.y) * ux - (x - pose.x) * uy;
          if (out > -5 && Math.abs(across) < halfSide + 5) wider = Math.min(wider, out);
        }
        expect(distance).toBeGreaterThanOrEqual(wider - 5 - 1e-6);
        checked++;
      }
    }
    expect(checked).toBeGreaterThan(400);
  });
});
