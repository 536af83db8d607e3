import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointInRing, turnsOnlyLeft } from '../../src/geometry/predicates.js';
import { signedArea } from '../../src/geometry/ring.js';
import type { Point } from '../../src/geometry/types.js';
import { doorSwing, SWING_EXCESS } from '../../src/room/door-swing.js';
import { OUTLINE, sceneOf } from './read.js';

const SEED = 71_008;

describe('doorSwing', () => {
  it('is a convex ring around the quarter disc, at most 5 mm larger', () => {
    const c = fc.integer({ min: -9000, max: 9000 });
    const doors = fc.tuple(
      c,
      c,
      fc.integer({ min: 300, max: 3000 }),
      fc.double({ min: 0, max: 7, noNaN: true }),
      fc.boolean(),
    );
    fc.assert(
      fc.property(doors, ([x, y, width, angle, left]) => {
        const latch: Point = [x + width * Math.cos(angle), y + width * Math.sin(angle)];
        const ring = doorSwing([x, y], latch, left);
        expect(turnsOnlyLeft(ring)).toBe(true);
        const quarter = (Math.PI * width * width) / 4;
        expect(signedArea(ring)).toBeGreaterThan(quarter);
        expect(signedArea(ring)).toBeLessThan(quarter * (1 + SWING_EXCESS / width) ** 2);
        for (const corner of ring) {
          expect(Math.hypot(corner[0] - x, corner[1] - y)).toBeLessThan(width + SWING_EXCESS + 1e-6);
        }
        // The leaf at every degree but the ends, a micron short of its full length.
        for (let degree = 1; degree < 90; degree++) {
          const t = angle + ((left ? 1 : -1) * degree * Math.PI) / 180;
          const reach = width - 0.001;
          expect(pointInRing(ring, x + reach * Math.cos(t), y + reach * Math.sin(t))).toBe(1);
        }
      }),
      { seed: SEED, numRuns: 100 },
    );
  });

  it('lies on the room side, whichever end the leaf is hung at and whichever way the outline runs', () => {
    for (const outline of [OUTLINE, [...OUTLINE].reverse()]) {
      for (const [hinge, latch] of [
        [
          [1000, 0],
          [1900, 0],
        ],
        [
          [1900, 0],
          [1000, 0],
        ],
        [
          [5000, 3000],
          [5000, 2100],
        ],
        [
          [0, 1000],
          [0, 1900],
        ],
        [
          [3000, 4020],
          [2100, 3990],
        ],
      ] as const) {
        const scene = sceneOf({ outline, doors: [{ hinge, latch, opens: 'in' }] });
        const swing = scene.doors[0].swing ?? [];
        // Open by 45 degrees, half way along the leaf, into the room.
        const inward: Point =
          hinge[1] < 100 ? [0, 1] : hinge[1] > 3900 ? [0, -1] : hinge[0] > 4000 ? [-1, 0] : [1, 0];
        const half = 450 * Math.SQRT1_2;
        const along: Point = [(latch[0] - hinge[0]) / 900, (latch[1] - hinge[1]) / 900];
        const x = hinge[0] + half * (along[0] + inward[0]);
        const y = hinge[1] + half * (along[1] + inward[1]);
        expect(pointInRing(swing, x, y)).toBe(1);
        expect(pointInRing(scene.outline, x, y)).toBe(1);
      }
    }
  });

  it('is none for a leaf that opens out or slides', () => {
    for (const opens of ['out', 'slides']) {
      const [door] = sceneOf({
        outline: OUTLINE,
        doors: [{ hinge: [1000, 0], latch: [1900, 0], opens }],
      }).doors;
      expect(door).toEqual({ name: 'door 1', hinge: [1000, 0], latch: [1900, 0], opens, swing: null });
    }
  });
});
