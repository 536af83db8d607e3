import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BLOCKED, FREE, PoseJudge } from '../../src/delivery/plan-feature.js';
import { headingTable } from '../../src/delivery/plan-feature-flat.js';
import type { PlanPose, PlanShape } from '../../src/delivery/plan-shape.js';
import { block, convexSolid, halfPlane, type PlanSolid, spaceInRing } from '../../src/delivery/plan-space.js';
import { planClearance } from '../../src/delivery/plan-space-clearance.js';
import type { Ring } from '../../src/geometry/types.js';
import { cornersOf, distanceInside, ringGap } from './plan-collision.js';

const SEED = 20261130;
const STEPS = 1024;
const TABLE = headingTable(STEPS, Math.PI);

/** Convex: corners on an ellipse, by ascending angles. */
const rings = fc
  .record({
    x: fc.integer({ min: -1500, max: 1500 }),
    y: fc.integer({ min: -1500, max: 1500 }),
    wide: fc.integer({ min: 60, max: 1200 }),
    high: fc.integer({ min: 60, max: 1200 }),
    from: fc.integer({ min: 0, max: 359 }),
    corners: fc.integer({ min: 3, max: 6 }),
  })
  .map(
    ({ x, y, wide, high, from, corners }): Ring =>
      Array.from({ length: corners }, (_, i) => {
        const turn = ((from + (360 * i) / corners) * Math.PI) / 180;
        return [x + wide * Math.cos(turn), y + high * Math.sin(turn)];
      }),
  );

const shapes = fc.record({
  halfLength: fc.integer({ min: 50, max: 1000 }),
  halfWidth: fc.constantFrom(0, 30, 150, 400),
  radius: fc.constantFrom(0, 0, 20, 200),
});

/** Small boxes as well as large ones: level k has headings over an eighth of a turn / 2 ** k. */
const boxes = fc.record({
  x: fc.integer({ min: -2000, max: 2000 }),
  y: fc.integer({ min: -2000, max: 2000 }),
  hx: fc.constantFrom(0, 1, 10, 100, 500),
  hy: fc.constantFrom(0, 1, 10, 100, 500),
  level: fc.integer({ min: 0, max: 6 }),
  place: fc.double({ min: 0, max: 0.999, noNaN: true }),
});

/** Poses of a box: corners, middles of edges and faces, the middle, with headings between as well. */
function* posesOf(
  box: { x: number; y: number; hx: number; hy: number },
  from: number,
  to: number,
): Generator<PlanPose> {
  for (const i of [-1, 0, 1]) {
    for (const k of [-1, 0, 1]) {
      for (let t = 0; t <= 8; t++) {
        const heading = ((from + (t / 8) * (to - from)) * Math.PI) / STEPS;
        yield { x: box.x + i * box.hx, y: box.y + k * box.hy, heading };
      }
    }
  }
}

/** The disc's worth of the gap: 0 or less where the shape meets the solid. */
function gap(ring: Ring, shape: PlanShape, pose: PlanPose): number {
  const sliver = { ...shape, halfWidth: Math.max(shape.halfWidth, 1e-9) };
  return ringGap(cornersOf(sliver, pose), ring) - shape.radius;
}

describe('the judge of boxes', () => {
  it('calls a box free or blocked only where every pose looked at is', () => {
    const count = { free: 0, blocked: 0, mixed: 0 };
    fc.assert(
      fc.property(rings, shapes, boxes, (ring, shape, box) => {
        fc.pre(shape.halfWidth + shape.radius > 0);
        const size = STEPS / 4 / 2 ** box.level;
        const from = size * Math.floor((box.place * STEPS) / size);
        const judge = new PoseJudge(
          { solids: [convexSolid(ring)], x0: 0, y0: 0, x1: 0, y1: 0 },
          shape,
          TABLE,
          null,
        );
        const state = judge.judge(box.x, box.y, box.hx, box.hy, from, from + size, judge.all);
        count[state === FREE ? 'free' : state === BLOCKED ? 'blocked' : 'mixed']++;
        for (const pose of posesOf(box, from, from + size)) {
          if (state === FREE) expect(gap(ring, shape, pose)).toBeGreaterThan(0);
          // A disc deep in the solid and a ring within the other both count as gap 0 less the radius.
          if (state === BLOCKED) expect(gap(ring, shape, pose)).toBeLessThanOrEqual(0);
        }
      }),
      { seed: SEED, numRuns: 2000 },
    );
    // It does decide things: of these boxes, many of them large, well over half.
    expect(count.free).toBeGreaterThan(400);
    expect(count.blocked).toBeGreaterThan(130);
  });

  it('decides every small box that is a little way off the boundary', () => {
    fc.assert(
      fc.property(rings, shapes, boxes, (ring, shape, box) => {
        fc.pre(shape.halfWidth + shape.radius > 0);
        const from = 2 * Math.floor(box.place * (STEPS / 2));
        const heading = ((from + 1) * Math.PI) / STEPS;
        // No point of the shape moves more than this within the box.
        const shift = 2 + (1200 * Math.PI) / STEPS;
        const apart = gap(ring, shape, { x: box.x, y: box.y, heading });
        fc.pre(apart > 3 * shift);
        const judge = new PoseJudge(
          { solids: [convexSolid(ring)], x0: 0, y0: 0, x1: 0, y1: 0 },
          shape,
          TABLE,
          null,
        );
        expect(judge.judge(box.x, box.y, 1, 1, from, from + 2, judge.all)).toBe(FREE);
      }),
      { seed: SEED, numRuns: 1500 },
    );
  });

  it('proves a straight way free only where every pose on it is', () => {
    let free = 0;
    const poses = fc.record({
      x: fc.integer({ min: -2500, max: 2500 }),
      y: fc.integer({ min: -2500, max: 2500 }),
      heading: fc.double({ min: -4, max: 4, noNaN: true }),
    });
    fc.assert(
      fc.property(rings, shapes, poses, poses, (ring, shape, a, b) => {
        fc.pre(shape.halfWidth + shape.radius > 0);
        const judge = new PoseJudge(
          { solids: [convexSolid(ring)], x0: 0, y0: 0, x1: 0, y1: 0 },
          shape,
          TABLE,
          null,
        );
        if (!judge.isFreeBetween(a, b, 5)) return;
        free++;
        for (let k = 0; k <= 60; k++) {
          const t = k / 60;
          const pose = {
            x: a.x + t * (b.x - a.x),
            y: a.y + t * (b.y - a.y),
            heading: a.heading + t * (b.heading - a.heading),
          };
          expect(gap(ring, shape, pose)).toBeGreaterThan(0);
        }
      }),
      { seed: SEED, numRuns: 600 },
    );
    expect(free).toBeGreaterThan(100);
  });

  it('takes at most 30 solids', () => {
    const solids: PlanSolid[] = Array.from({ length: 31 }, (_, i) => block(i, 0, i + 0.5, 1));
    const space = { solids, x0: 0, y0: 0, x1: 1, y1: 1 };
    const shape = { halfLength: 1, halfWidth: 1, radius: 0 };
    expect(() => new PoseJudge(space, shape, TABLE, null)).toThrow(RangeError);
  });
});

describe('spaces', () => {
  it('cover what lies outside a ring, and nothing inside', () => {
    // A room with a nook, a nib and a slanted wall; two corners lie on a straight side.
    const ring: Ring = [
      [0, 0],
      [2000, 0],
      [5000, 0],
      [5000, 1500],
      [4200, 1500],
      [4200, 1900],
      [5000, 1900],
      [5000, 4000],
      [3000, 4600],
      [2600, 3000],
      [2200, 3000],
      [2200, 4000],
      [0, 4000],
      [0, 1000],
    ];
    const space = spaceInRing(ring);
    expect([space.x0, space.y0, space.x1, space.y1]).toEqual([0, 0, 5000, 4600]);
    const shape = { halfLength: 200, halfWidth: 90, radius: 10 };
    fc.assert(
      fc.property(
        fc.double({ min: -500, max: 5500, noNaN: true }),
        fc.double({ min: -500, max: 5000, noNaN: true }),
        fc.double({ min: 0, max: Math.PI, noNaN: true }),
        (x, y, heading) => {
          const inside = distanceInside(ring, shape, { x, y, heading });
          const clearance = planClearance(space, shape, { x, y, heading });
          // The slow check measures corner to corner as well, so it may see more room, never less.
          if (inside > 0) expect(clearance).toBeLessThanOrEqual(inside + 1e-9);
          if (inside > 10) expect(clearance).toBeGreaterThan(-10);
          if (clearance > 0) expect(inside).toBeGreaterThan(0);
        },
      ),
      { seed: SEED, numRuns: 2000 },
    );
  });

  it('make a half-plane of a block with one side', () => {
    const { NEGATIVE_INFINITY: least, POSITIVE_INFINITY: most } = Number;
    expect(block(least, least, most, 3)).toEqual(halfPlane(0, 1, 3));
  });
});
