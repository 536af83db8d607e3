import { describe, expect, it } from 'vitest';
import { crossLanding } from '../../src/delivery/landing.js';
import { narrowPassage } from '../../src/delivery/narrow-passage.js';
import type { Winder } from '../../src/delivery/passages.js';
import { replayPassage } from '../../src/delivery/replay.js';
import { crossWinder } from '../../src/delivery/winder.js';
import { leastRoom } from './stair-replay.js';
import { randomBox, randomSource, randomWinder } from './stair-samples.js';

const SEED = 20261127;
const budget = { maxBoxes: 60_000 };

describe('crossWinder', () => {
  it('is a quarter landing where the turn climbs nothing', () => {
    const random = randomSource(SEED);
    for (let i = 0; i < 20; i++) {
      const winder: Winder = { ...randomWinder(random), climb: 0 };
      const { name, tolerance, width, pitch, rise, headroom } = winder;
      const box = randomBox(random);
      const landing = crossLanding(
        {
          kind: 'quarter-landing',
          ...{ name, tolerance, width, pitch, rise, headroom },
          widthAfter: width,
          depth: width,
          breadth: width,
          well: 0,
        },
        box,
        budget,
      );
      expect(crossWinder(winder, box, budget)).toEqual(landing);
    }
  });

  it('proves what it says passes, by two replays', () => {
    const random = randomSource(SEED + 1);
    let passed = 0;
    for (let i = 0; i < 50; i++) {
      const winder = randomWinder(random);
      const crossing = crossWinder(winder, randomBox(random), budget);
      expect(crossing.atLeast).toBeLessThanOrEqual(crossing.atMost);
      expect(crossing.atMost).toBeLessThanOrEqual(crossing.atMostAnyMotion);
      if (crossing.motion === null || crossing.atLeast < 0.1) continue;
      passed++;
      expect(leastRoom(winder, crossing.motion)).toBeGreaterThan(0);
      const replay = replayPassage(winder, crossing.motion);
      expect(replay.clearance).toBeGreaterThan(0);
      expect(replay.startsNear && replay.endsFar).toBe(true);
    }
    expect(passed).toBeGreaterThan(15);
  });

  it('keeps off a step that it would meet if it shared out its spare otherwise', () => {
    // Found by random routes: shared evenly between the walls, the box swung over a step that it passes nearer to the inner corner.
    const winder: Winder = {
      kind: 'winder',
      name: '',
      tolerance: 10,
      width: 643.9519346691668,
      pitch: Math.atan2(193.460717019625, 261.7392564751208),
      rise: 193.460717019625,
      headroom: 2285.6029800139368,
      climb: 580.382151058875,
    };
    const box = {
      l: 2285.4011990129948,
      w: 315.91492619365454,
      h: 151.3437952781965,
      held: ['on-edge', 'on-end'],
      tilt: Math.PI / 4,
    } as const;
    const crossing = crossWinder(winder, box, budget);
    expect(crossing.atLeast).toBeGreaterThan(0);
    expect(crossing.motion).not.toBeNull();
    if (crossing.motion === null) return;
    expect(replayPassage(winder, crossing.motion).clearance).toBeGreaterThan(0);
    expect(leastRoom(winder, crossing.motion)).toBeGreaterThan(0);
  });

  it('keeps its height where the free heights bend between two poses', () => {
    // Found by fuzz-stairs.ts, seed 31: the box dipped 0.3 mm into the steps between two looks at it.
    const winder: Winder = {
      kind: 'winder',
      name: '',
      tolerance: 10,
      width: 736.971255694516,
      pitch: 0.8559773912039975,
      rise: 210.14852236490697,
      headroom: 2302.952187554911,
      climb: 417.46427435427904,
    };
    const crossing = crossWinder(
      winder,
      {
        l: 2944.140024902299,
        w: 291.81163026951253,
        h: 165.7168705291138,
        held: ['flat', 'on-edge', 'on-end'],
        tilt: 1.4801808004316441,
      },
      budget,
    );
    expect(crossing.atLeast).toBeGreaterThan(0);
    expect(crossing.motion && replayPassage(winder, crossing.motion).clearance).toBeGreaterThan(0);
  });

  it('leaves more open the more it climbs, on both sides', () => {
    const random = randomSource(SEED + 2);
    for (let i = 0; i < 20; i++) {
      const winder = { ...randomWinder(random), climb: 0 };
      const box = randomBox(random);
      const flat = crossWinder(winder, box, budget);
      const steep = crossWinder({ ...winder, climb: 600 }, box, budget);
      // What the steps take away may be theirs or not: the proof of a way has less, the bound no less.
      expect(steep.atLeast).toBeLessThanOrEqual(flat.atMost);
      expect(steep.atMostAnyMotion).toBeGreaterThanOrEqual(flat.atMostAnyMotion - 1);
    }
  });

  it('never contradicts itself when readings shrink', () => {
    const random = randomSource(SEED + 3);
    for (let i = 0; i < 20; i++) {
      const winder = randomWinder(random);
      const box = randomBox(random);
      const given = crossWinder(winder, box, budget);
      const cut = narrowPassage(winder, 25);
      if (cut.kind !== 'winder') throw new Error('stays a winder');
      const narrower = crossWinder(cut, box, budget);
      expect(narrower.atLeast).toBeLessThanOrEqual(given.atMost - 25 + 0.01);
      expect(given.atLeast - 25).toBeLessThanOrEqual(narrower.atMost + 0.01);
    }
  });
});
