import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointInRing, turnsOnlyLeft } from '../../src/geometry/predicates.js';
import { signedArea } from '../../src/geometry/ring.js';
import { ceilingAt, lowCeilingRings, lowestFaceAt } from '../../src/room/ceiling.js';
import { pointInRoom } from '../../src/room/point-in-room.js';
import { randomFrom } from '../helpers/rings.js';
import { OUTLINE, sceneOf } from './read.js';

const SEED = 71_007;

/** A ridge along y over the middle of the room: 1.2 m at the side walls, 3.2 m at the ridge. */
const gable = {
  outline: OUTLINE,
  ceiling: [
    [
      [0, 0, 1200],
      [0, 4000, 1200],
      [2500, 0, 3200],
    ],
    [
      [5000, 0, 1200],
      [5000, 4000, 1200],
      [2500, 0, 3200],
    ],
  ],
};

describe('ceilingAt', () => {
  it('is the lowest of the faces', () => {
    const scene = sceneOf(gable);
    expect(ceilingAt(scene, 0, 1000)).toBeCloseTo(1200, 9);
    expect(ceilingAt(scene, 2500, 1000)).toBeCloseTo(3200, 9);
    expect(ceilingAt(scene, 3750, 3000)).toBeCloseTo(2200, 9);
    expect(lowestFaceAt(scene.ceiling, 1000, 0)?.name).toBe('ceiling 1');
    expect(lowestFaceAt(scene.ceiling, 4000, 0)?.name).toBe('ceiling 2');
  });

  it('is the flat one everywhere, and Infinity without a ceiling', () => {
    expect(ceilingAt(sceneOf({ outline: OUTLINE, ceiling: '2.5 m' }), 9, -9)).toBe(2500);
    const open = sceneOf({ outline: OUTLINE });
    expect(ceilingAt(open, 0, 0)).toBe(Number.POSITIVE_INFINITY);
    expect(lowestFaceAt(open.ceiling, 0, 0)).toBeNull();
  });

  it('passes through the three points of a face', () => {
    const x = fc.integer({ min: 0, max: 5000 });
    const y = fc.integer({ min: 0, max: 4000 });
    const z = fc.integer({ min: 2000, max: 4000 });
    const point = fc.tuple(x, y, z);
    fc.assert(
      fc.property(point, point, point, fc.integer({ min: -1e9, max: 1e9 }), (p, q, r, far) => {
        const plan = Math.abs((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
        fc.pre(plan > 4e6);
        // A second, flat face keeps slopes that dive under the floor from mattering: only this face is looked at.
        const shifted = [p, q, r].map(([a, b, c]) => [a + far, b - far, c]);
        const outline = [p, q, r].map(([a, b]) => [a + far, b - far]);
        const scene = sceneOf({ outline, ceiling: [shifted] });
        for (const [a, b, c] of shifted) expect(ceilingAt(scene, a, b)).toBeCloseTo(c, far === 0 ? 9 : 4);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });
});

describe('lowCeilingRings', () => {
  it('covers what is lower than the height, face by face', () => {
    const scene = sceneOf(gable);
    const rings = lowCeilingRings(scene, 1600);
    expect(rings).toHaveLength(2);
    // 500 mm of room and 1 m beyond, over 4 m of room and 1 m beyond at both ends.
    for (const ring of rings) expect(signedArea(ring)).toBeCloseTo(1500 * 6000, 3);
    expect(lowCeilingRings(scene, 100)).toEqual([]);
    // From the far wall and beyond to where each face reaches 3.2 m: they overlap at the ridge and past it.
    expect(lowCeilingRings(scene, 3200)).toHaveLength(2);
  });

  it('is the room grown by 1 m under a flat ceiling that is too low, and nothing at exactly the height', () => {
    const scene = sceneOf({ outline: OUTLINE, ceiling: 1400 });
    expect(lowCeilingRings(scene, 1400)).toEqual([]);
    expect(lowCeilingRings(scene, 1400.5)).toEqual([
      [
        [-1000, -1000],
        [6000, -1000],
        [6000, 5000],
        [-1000, 5000],
      ],
    ]);
    expect(lowCeilingRings(sceneOf({ outline: OUTLINE }), 1e9)).toEqual([]);
  });

  it('agrees with the ceiling at random points of the room', () => {
    const z = fc.integer({ min: 300, max: 3500 });
    fc.assert(
      fc.property(
        z,
        z,
        z,
        z,
        fc.integer({ min: 1000, max: 2500 }),
        fc.integer(),
        (z1, z2, z3, z4, height, seed) => {
          const ceiling = [
            [
              [0, 0, z1],
              [5000, 0, z2],
              [2000, 4000, 3500],
            ],
            [
              [0, 4000, z3],
              [5000, 4000, z4],
              [2500, 0, 3500],
            ],
          ];
          const outline = [
            [1500, 1500],
            [3500, 1500],
            [3500, 2500],
            [1500, 2500],
          ];
          const scene = sceneOf({ outline, ceiling });
          const rings = lowCeilingRings(scene, height);
          for (const ring of rings) {
            expect(turnsOnlyLeft(ring)).toBe(true);
            expect(signedArea(ring)).toBeGreaterThan(0);
          }
          const random = randomFrom(seed);
          for (let k = 0; k < 30; k++) {
            const x = 600 + random() * 3800;
            const y = 600 + random() * 2800;
            const over = ceilingAt(scene, x, y) - height;
            // Rounding decides on the boundary itself.
            if (Math.abs(over) < 1e-6) continue;
            expect(rings.some((ring) => pointInRing(ring, x, y) > 0)).toBe(over < 0);
          }
        },
      ),
      { seed: SEED, numRuns: 200 },
    );
  });
});

describe('pointInRoom', () => {
  it('tells inside, wall and outside, and does not look at obstacles', () => {
    const scene = sceneOf({
      outline: OUTLINE,
      obstacles: [{ name: 'post', footprint: { center: [2500, 2000], diameter: 300 } }],
    });
    expect(pointInRoom(scene, 2500, 2000)).toBe(1);
    expect(pointInRoom(scene, 5000, 2000)).toBe(0);
    expect(pointInRoom(scene, 5001, 2000)).toBe(-1);
  });
});
