import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cornerSpare } from '../../src/delivery/corner-spare.js';
import type { Corner } from '../../src/delivery/passages.js';
import type { PlanShape } from '../../src/delivery/plan-shape.js';
import { face, halfPlane, type PlanSpace, type PlanZone, wedge } from '../../src/delivery/plan-space.js';
import { findPath } from '../../src/delivery/subdivide.js';

const SEED = 20261129;

/** Two methods that share no code: poses in boxes here, the one-dimensional bottleneck of the closed form there. */
describe('the search of poses and the closed form of the corner', () => {
  it('never contradict each other, at any angle, for rectangles and capsules', () => {
    const shapes = fc.record({
      l: fc.integer({ min: 800, max: 2800 }),
      w: fc.integer({ min: 0, max: 800 }),
      radius: fc.constantFrom(0, 0, 40, 120),
    });
    const corners = fc.record({
      degrees: fc.integer({ min: 25, max: 155 }),
      width: fc.integer({ min: 700, max: 1500 }),
      widthAfter: fc.integer({ min: 700, max: 1500 }),
    });
    let decided = 0;
    fc.assert(
      fc.property(
        corners,
        shapes,
        fc.constantFrom(-40, -25, -12, -6, -3, 3, 6, 12, 25, 40),
        (sides, { l, w, radius }, off) => {
          const shape: PlanShape = { halfLength: l / 2, halfWidth: Math.min(l, w) / 2, radius };
          fc.pre(shape.halfWidth + radius > 20);
          const corner = cornerOf(sides);
          const spare = cornerSpare(corner, shape);
          const delta = Math.max(-400, Math.min(400, spare.atLeast)) + off;
          const [a, b] = [sides.width - delta, sides.widthAfter - delta];
          const { space, near, far } = inPlan({ ...corner, width: a, widthAfter: b }, shape);
          const { answer } = findPath(space, shape, near, far, { maxBoxes: 20_000, resolution: 2 });
          if (answer !== 'undecided') decided++;
          if (answer === 'path') expect(delta).toBeLessThanOrEqual(spare.atMost);
          if (answer === 'no') expect(delta).toBeGreaterThanOrEqual(spare.atLeast);
        },
      ),
      { seed: SEED, numRuns: 80 },
    );
    expect(decided).toBeGreaterThan(65);
  });
});

function cornerOf({
  degrees,
  width,
  widthAfter,
}: {
  degrees: number;
  width: number;
  widthAfter: number;
}): Corner {
  const angle = (degrees * Math.PI) / 180;
  return {
    kind: 'corner',
    name: '',
    tolerance: 10,
    width,
    widthAfter,
    height: 2400,
    heightAfter: 2400,
    angle,
  };
}

/** The corner of endless corridors: far out along them the shape may as well stand nearer, so a window round the corner will do. */
function inPlan(
  { angle, width, widthAfter }: Corner,
  shape: PlanShape,
): { space: PlanSpace; near: readonly PlanZone[]; far: readonly PlanZone[] } {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const inner: [number, number] = [(widthAfter + width * c) / s, width];
  const reach = Math.hypot(shape.halfLength, shape.halfWidth) + shape.radius;
  const end = 1.2 * (Math.hypot(inner[0], inner[1]) + 2.5 * reach);
  return {
    space: {
      solids: [halfPlane(0, 1, 0), halfPlane(s, -c, 0), wedge(inner, [1, 0], [c, s])],
      x0: Math.min(0, end * c),
      x1: end,
      y0: 0,
      y1: end,
    },
    near: [[face(s, -c, widthAfter)]],
    far: [[face(0, 1, width)]],
  };
}
