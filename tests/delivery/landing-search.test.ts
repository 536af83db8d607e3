import { describe, expect, it } from 'vitest';
import type { Carried } from '../../src/delivery/carried.js';
import { crossLanding } from '../../src/delivery/landing.js';
import { heldTurnBoundNear, turnBound } from '../../src/delivery/landing-bounds.js';
import { searchTurn } from '../../src/delivery/landing-search.js';
import { turnOfLanding, turnOfWinder } from '../../src/delivery/landing-space.js';
import { bestTurnWay } from '../../src/delivery/landing-way.js';
import { narrowPassage } from '../../src/delivery/narrow-passage.js';
import type { Landing, Passage, Winder } from '../../src/delivery/passages.js';
import { replayPassage } from '../../src/delivery/replay.js';
import { crossWinder } from '../../src/delivery/winder.js';
import { leastRoom } from './stair-replay.js';
import { randomBox, randomLanding, randomSource, randomWinder } from './stair-samples.js';

const SEED = 20261128;
const budget = { maxBoxes: 60_000 };
const pitch = Math.atan2(190, 230);
const common = { name: '', tolerance: 10, rise: 190, pitch };
const every: Pick<Carried, 'held' | 'tilt'> = { held: ['flat', 'on-edge', 'on-end'], tilt: Math.PI / 4 };

type Turning = Landing | Winder;

const quarter: Landing = {
  ...common,
  kind: 'quarter-landing',
  width: 800,
  widthAfter: 800,
  headroom: 2000,
  depth: 1000,
  breadth: 800,
  well: 0,
};
const wideQuarter: Landing = {
  ...common,
  kind: 'quarter-landing',
  pitch: Math.PI / 4,
  width: 1032,
  widthAfter: 1246,
  headroom: 1844,
  depth: 1246,
  breadth: 1032,
  well: 0,
};
const half: Landing = {
  ...common,
  kind: 'half-landing',
  pitch: 0.77,
  width: 700,
  widthAfter: 1120,
  headroom: 2150,
  depth: 700,
  breadth: 2030,
  well: 210,
};
const winder: Winder = { ...common, kind: 'winder', width: 700, headroom: 2000, climb: 570 };

/** Boxes that the ways by the outer walls have no height for. */
const SCENES: readonly (readonly [name: string, passage: Turning, box: Carried])[] = [
  ['a crate on a quarter landing', quarter, { l: 2200, w: 700, h: 150, ...every }],
  [
    'a square board on a wide quarter landing',
    wideQuarter,
    { l: 1033, w: 1033, h: 108, ...every, tilt: 0.05 },
  ],
  ['a board on a half landing', half, { l: 1179, w: 1156, h: 75, ...every, tilt: 0.3 }],
  ['a long board on winders', winder, { l: 2768, w: 300, h: 90, ...every }],
  ['a slate on winders', winder, { l: 1498, w: 956, h: 95, held: ['on-edge', 'on-end'], tilt: Math.PI / 4 }],
];

function turnOf(passage: Turning) {
  return passage.kind === 'winder' ? turnOfWinder(passage) : turnOfLanding(passage);
}

function cross(passage: Passage, box: Carried) {
  if (passage.kind === 'winder') return crossWinder(passage, box, budget);
  if (passage.kind === 'quarter-landing' || passage.kind === 'half-landing') {
    return crossLanding(passage, box, budget);
  }
  throw new Error('stays a turn of a stair');
}

describe('a way round a turn that leaves the outer walls', () => {
  it.each(SCENES)('takes %s through, by two replays', (_, passage, box) => {
    expect(bestTurnWay(turnOf(passage), box)?.spare).toBeLessThan(0);
    const crossing = cross(passage, box);
    expect(crossing.method).toBe('subdivision');
    expect(crossing.atLeast).toBeGreaterThan(0);
    expect(crossing.atLeast).toBeLessThanOrEqual(crossing.atMost);
    expect(crossing.atMost).toBeLessThanOrEqual(crossing.atMostAnyMotion);
    if (crossing.motion === null) throw new Error('passes without a motion');
    const replay = replayPassage(passage, crossing.motion);
    expect(replay.clearance).toBeGreaterThan(0);
    expect(replay.startsNear && replay.endsFar).toBe(true);
    expect(leastRoom(passage, crossing.motion)).toBeGreaterThan(0);
  });

  it.each(SCENES)('takes %s through what is wider as well', (_, passage, box) => {
    for (const wider of [3, 15, 60]) {
      expect(cross(narrowPassage(passage, -wider), box).atLeast).toBeGreaterThan(0);
    }
  });

  it.each(SCENES)('does not take %s through with so few boxes of poses', (_, passage, box) => {
    const first = bestTurnWay(turnOf(passage), box)?.hold;
    if (first === undefined) throw new Error('is held somehow');
    const found = searchTurn(turnOf(passage), box, { maxBoxes: 20, tolerance: 10, first, atMost: 100 });
    expect(found).toBeNull();
  });

  it('is one that replays wherever one is found', () => {
    const random = randomSource(SEED);
    let found = 0;
    for (let i = 0; i < 60; i++) {
      const passage = i % 3 === 0 ? randomWinder(random) : randomLanding(random);
      const box = randomBox(random);
      const turn = turnOf(passage);
      const way = bestTurnWay(turn, box);
      if (way === null) continue;
      // Also where it would not be asked for, since the way by the outer walls passes.
      const options = { maxBoxes: 20_000, tolerance: 10, first: way.hold, atMost: 10 };
      const searched = searchTurn(turn, box, options);
      if (searched === null) continue;
      found++;
      const replay = replayPassage(passage, searched.motion);
      expect(replay.clearance).toBeGreaterThan(0);
      expect(replay.startsNear && replay.endsFar).toBe(true);
      expect(leastRoom(passage, searched.motion, 3)).toBeGreaterThan(0);
      expect(turnBound(turn, box)).toBeGreaterThanOrEqual(searched.spare);
    }
    expect(found).toBeGreaterThan(20);
  });

  it('is not found where the bounds say that there is none', () => {
    const random = randomSource(SEED + 1);
    let blocked = 0;
    for (let i = 0; i < 60; i++) {
      const passage = i % 3 === 0 ? randomWinder(random) : randomLanding(random);
      const box = randomBox(random);
      const turn = turnOf(passage);
      const way = bestTurnWay(turn, box);
      if (way === null || heldTurnBoundNear(turn, box, -1) >= 0) continue;
      blocked++;
      const options = { maxBoxes: 20_000, tolerance: 10, first: way.hold, atMost: 100 };
      expect(searchTurn(turn, box, options)).toBeNull();
      const crossing = cross(passage, box);
      expect(crossing.motion).toBeNull();
      expect(crossing.method).toBe('closed-form');
    }
    expect(blocked).toBeGreaterThan(15);
  });
});
