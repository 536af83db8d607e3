import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { capsuleInPlan, capsuleOnSlope } from '../../src/delivery/capsule.js';
import { boxCorners, width } from './box-corners.js';
import { box, boxes, mm } from './hold-samples.js';

const SEED = 20260805;
const turns = fc.record({
  heading: mm(0, 2 * Math.PI),
  tilt: mm(-Math.PI / 2, Math.PI / 2),
  roll: mm(0, 2 * Math.PI),
});

describe('capsuleInPlan', () => {
  it('is covered in plan by the box, turned anyhow, under the height that it then takes', () => {
    fc.assert(
      fc.property(boxes, turns, (carried, turn) => {
        const motion = { along: carried.l, across: carried.w, up: carried.h };
        const corners = boxCorners(motion, { x: 0, y: 0, z: 0, ...turn });
        const { halfLength, halfWidth, radius } = capsuleInPlan(carried, width(corners, 2));
        expect(halfWidth).toBe(0);
        for (let i = 0; i < 24; i++) {
          const angle = (i * Math.PI) / 12;
          const reach = Math.max(...corners.map((p) => p[0] * Math.cos(angle) + p[1] * Math.sin(angle)));
          const stadium = halfLength * Math.abs(Math.cos(angle - turn.heading)) + radius;
          expect(stadium).toBeLessThanOrEqual(reach + 1e-6);
        }
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it('shrinks to a disc once the box may stand', () => {
    expect(capsuleInPlan(box(2000, 900, 50), 2000)).toEqual({ halfLength: 0, halfWidth: 0, radius: 25 });
    expect(capsuleInPlan(box(2000, 900, 50), 50)).toEqual({ halfLength: 975, halfWidth: 0, radius: 25 });
    // 3-4-5: axis 1000 with ends 600 apart in height.
    expect(capsuleInPlan(box(1100, 900, 100), 700).halfLength).toBeCloseTo(400, 9);
    expect(capsuleInPlan(box(1100, 900, 100), Number.POSITIVE_INFINITY).halfLength).toBe(0);
  });
});

describe('capsuleOnSlope', () => {
  it('is the level one on the level', () => {
    fc.assert(
      fc.property(boxes, mm(10, 3000), (carried, height) => {
        expect(capsuleOnSlope(carried, height, 0, 0)).toEqual(capsuleInPlan(carried, height));
      }),
      { seed: SEED, numRuns: 100 },
    );
  });

  it('is no longer than the axis of any box that stays over the steps and under the ceiling', () => {
    let stayed = 0;
    fc.assert(
      fc.property(
        boxes,
        turns,
        mm(0, 1),
        mm(100, 2500),
        mm(0, 250),
        (carried, turn, pitch, headroom, rise) => {
          // Lifted as far as its corners need over the line of the lowest treads; then how much headroom they take.
          const motion = { along: carried.l, across: carried.w, up: carried.h };
          const corners = boxCorners(motion, { x: 0, y: 0, z: 0, ...turn });
          const over = corners.map((p) => p[2] - p[0] * Math.tan(pitch));
          if (Math.max(...over) - Math.min(...over) > headroom + rise) return;
          stayed++;
          const { halfLength } = capsuleOnSlope(carried, headroom, pitch, rise);
          const axis = ((carried.l - carried.h) / 2) * Math.cos(turn.tilt);
          expect(halfLength).toBeLessThanOrEqual(axis + 1e-6);
        },
      ),
      { seed: SEED, numRuns: 1500 },
    );
    expect(stayed).toBeGreaterThan(300);
  });

  it('solves the equation it is told by', () => {
    const { halfLength } = capsuleOnSlope(box(2500, 900, 100), 1000, 0.7, 200);
    const x = 2 * halfLength;
    expect(x ** 2 + (x * Math.tan(0.7) + 1000 + 200 - 100) ** 2).toBeCloseTo(2400 ** 2, 3);
  });
});
