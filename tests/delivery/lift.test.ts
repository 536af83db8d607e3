import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Carried } from '../../src/delivery/carried.js';
import { crossLift } from '../../src/delivery/cross-lift.js';
import type { Crossing } from '../../src/delivery/crossing.js';
import { narrowPassage } from '../../src/delivery/narrow-passage.js';
import type { Lift, Space } from '../../src/delivery/passages.js';
import { replayPassage } from '../../src/delivery/replay.js';

const SEED = 20261127;
const OPTIONS = { maxBoxes: 60_000 };
const { POSITIVE_INFINITY: ENDLESS } = Number;
const OPEN: Space = { depth: ENDLESS, left: ENDLESS, right: ENDLESS, height: ENDLESS };
const EVERY_WAY = ['flat', 'on-edge', 'on-end'] as const;

/** A common passenger car: 1100 x 1400, door 800 (EN 81-70, from memory). */
const CAR: Lift = {
  kind: 'lift',
  name: 'lift',
  tolerance: 10,
  width: 1100,
  depth: 1400,
  height: 2200,
  door: { width: 800, height: 2000, depth: 100 },
  before: OPEN,
};

function expectSound(lift: Lift, crossing: Crossing): void {
  expect(crossing.atLeast).toBeLessThanOrEqual(crossing.atMost);
  expect(crossing.atMost).toBeLessThanOrEqual(crossing.atMostAnyMotion);
  expect(crossing.motion !== null).toBe(crossing.atLeast >= 0);
  if (crossing.motion === null) return;
  const replay = replayPassage(lift, crossing.motion);
  expect([replay.startsNear, replay.endsFar]).toEqual([true, true]);
  if (crossing.atLeast > 0.5) expect(replay.clearance).toBeGreaterThan(crossing.atLeast / 2 - 0.2);
}

describe('crossLift', () => {
  it('goes straight in where the car is as deep as the piece is long', () => {
    const box: Carried = { l: 1390, w: 700, h: 60, held: ['on-edge'], tilt: 0 };
    const crossing = crossLift(CAR, box, OPTIONS);
    // 10 mm of the depth are left, and much more of all else.
    expect(crossing.atLeast).toBeGreaterThanOrEqual(10 - 1e-9);
    expectSound(CAR, crossing);
  });

  it('stands a longer one across the diagonal, as far as Carver lets it', () => {
    // A rod (60 mm square) held level: the diagonal of 1100 x 1400 is 1780 mm; by Carver one of 1720 x 60 fits.
    const rod = (l: number): Carried => ({ l, w: 60, h: 60, held: ['flat'], tilt: 0 });
    const fits = crossLift(CAR, rod(1650), OPTIONS);
    expect(fits.atLeast).toBeGreaterThan(0);
    expect(fits.method).toBe('subdivision');
    expectSound(CAR, fits);
    const not = crossLift(CAR, rod(1780), OPTIONS);
    expect(not.atMost).toBeLessThan(0);
    expect(not.motion).toBeNull();
    // Carver's criterion for 1720 x 60 in 1100 x 1400 by its own inequality, b (p^2 + q^2) >= 2 p q a + (p^2 - q^2) sqrt(p^2 + q^2 - a^2).
    const carver = (p: number, q: number, a: number, b: number): boolean =>
      b * (p * p + q * q) >= 2 * p * q * a + (p * p - q * q) * Math.sqrt(p * p + q * q - a * a);
    for (let l = 1500; l <= 1780; l += 20) {
      const { atLeast } = crossLift(CAR, rod(l), OPTIONS);
      if (atLeast >= 0) expect(carver(l, 60, 1400, 1100)).toBe(true);
    }
  });

  it('rules out any motion for what is longer than the car from corner to corner', () => {
    // The axis of the capsule, 2990 - 40, against the diagonal of 1060 x 1360 x 2160: 2763.
    const pole: Carried = { l: 2990, w: 40, h: 40, held: EVERY_WAY, tilt: Math.PI / 2 };
    const crossing = crossLift(CAR, pole, OPTIONS);
    expect(crossing.atMostAnyMotion).toBeLessThan(0);
    expectSound(CAR, crossing);
    // d with (1060 - d)^2 + (1360 - d)^2 + (2160 - d)^2 = 2950^2
    const d = crossing.atMostAnyMotion;
    expect(Math.hypot(1060 - d, 1360 - d, 2160 - d)).toBeLessThanOrEqual(2950 + 1e-6);
  });

  it('takes a car narrower than its door for what it is', () => {
    const narrow: Lift = { ...CAR, width: 700 };
    const box: Carried = { l: 1200, w: 690, h: 60, held: ['flat'], tilt: 0 };
    const crossing = crossLift(narrow, box, OPTIONS);
    expect(crossing.atLeast).toBeCloseTo(10, 6);
    expectSound(narrow, crossing);
    expect(crossLift(narrow, { ...box, w: 720 }, OPTIONS).atMost).toBeLessThan(0);
  });

  it('needs floor before the door as well', () => {
    const box: Carried = { l: 1390, w: 600, h: 60, held: ['flat'], tilt: 0 };
    const lobby = (depth: number): Lift => ({
      ...CAR,
      before: { depth, left: ENDLESS, right: ENDLESS, height: 2400 },
    });
    const [deep, shallow] = [1500, 1000].map((depth) => crossLift(lobby(depth), box, OPTIONS));
    expect(deep.atLeast).toBeGreaterThanOrEqual(0);
    expectSound(lobby(1500), deep);
    expect(shallow.atMost).toBeLessThan(0);
    expectSound(lobby(1000), shallow);
  });

  it('is sound, and passes no more when narrowed', () => {
    const lifts = fc.record({
      width: fc.integer({ min: 900, max: 1500 }),
      depth: fc.integer({ min: 1100, max: 2100 }),
      door: fc.integer({ min: 700, max: 1000 }),
      before: fc.constantFrom(ENDLESS, 1200, 1600),
    });
    const boxes = fc.record({
      l: fc.integer({ min: 1200, max: 2400 }),
      w: fc.integer({ min: 150, max: 900 }),
      tilt: fc.constantFrom(0, Math.PI / 6, Math.PI / 2),
    });
    const quick = { maxBoxes: 12_000 };
    fc.assert(
      fc.property(lifts, boxes, fc.integer({ min: 1, max: 100 }), (size, { l, w, tilt }, delta) => {
        fc.pre(w < l);
        const before = { depth: size.before, left: ENDLESS, right: ENDLESS, height: 2400 };
        const door = { ...CAR.door, width: size.door };
        const lift: Lift = { ...CAR, width: size.width, depth: size.depth, door, before };
        const box: Carried = { l, w, h: 60, held: ['flat', 'on-edge'], tilt };
        const here = crossLift(lift, box, quick);
        expectSound(lift, here);
        const narrow = narrowPassage(lift, delta);
        if (narrow.kind !== 'lift') throw new Error('A lift stays one.');
        const less = crossLift(narrow, box, quick);
        expect(less.atLeast).toBeLessThanOrEqual(here.atMost - delta + 1e-6);
        expect(less.atMost).toBeGreaterThanOrEqual(here.atLeast - delta - 1e-6);
      }),
      { seed: SEED, numRuns: 25 },
    );
  });
});
