import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roadmapPlan } from '../../bench/delivery-peer.js';
import type { Carried } from '../../src/delivery/carried.js';
import { crossGate } from '../../src/delivery/cross-gate.js';
import type { Crossing } from '../../src/delivery/crossing.js';
import { narrowPassage } from '../../src/delivery/narrow-passage.js';
import type { Gate, Space } from '../../src/delivery/passages.js';
import type { PlanPose } from '../../src/delivery/plan-shape.js';
import { gateInPlan } from '../../src/delivery/plan-space-gate.js';
import { replayPassage } from '../../src/delivery/replay.js';
import type { Ring } from '../../src/geometry/types.js';
import { distanceAlong } from './plan-collision.js';
import { cornerWidth } from './plan-rooms.js';

const SEED = 20261126;
const OPTIONS = { maxBoxes: 60_000 };
const { POSITIVE_INFINITY: ENDLESS } = Number;
const OPEN: Space = { depth: ENDLESS, left: ENDLESS, right: ENDLESS, height: ENDLESS };

function corridor(depth: number, height = 2400): Space {
  return { depth, left: ENDLESS, right: ENDLESS, height };
}

function doorway(width: number, depth: number, before: Space, after: Space, height = 2000): Gate {
  const common = { name: 'door', tolerance: 10, sill: 0, leaf: 0 };
  return { ...common, kind: 'doorway', width, height, depth, before, after };
}

/** Carried level on its largest face and no other way, so that its plan is l x w. */
function flat(l: number, w: number, h = 100): Carried {
  return { l, w, h, held: ['flat'], tilt: 0 };
}

/** The plan of a gate as one ring, endless floor cut at 12 m: for the slow check. */
function ringOf({ width, depth, before, after }: Gate): Ring {
  const far = (side: number): number => Math.min(side, 12_000);
  const half = width / 2;
  return [
    [-half - far(before.left), -far(before.depth)],
    [half + far(before.right), -far(before.depth)],
    [half + far(before.right), 0],
    [half, 0],
    [half, depth],
    [half + far(after.right), depth],
    [half + far(after.right), depth + far(after.depth)],
    [-half - far(after.left), depth + far(after.depth)],
    [-half - far(after.left), depth],
    [-half, depth],
    [-half, 0],
    [-half - far(before.left), 0],
  ];
}

/** What must hold of every crossing: its bounds in order, and its motion clear of the walls by two independent checks. */
function expectSound(gate: Gate, crossing: Crossing): void {
  expect(crossing.atLeast).toBeLessThanOrEqual(crossing.atMost);
  expect(crossing.atMost).toBeLessThanOrEqual(crossing.atMostAnyMotion);
  expect(crossing.motion !== null).toBe(crossing.atLeast >= 0);
  const { motion, hold } = crossing;
  if (motion === null || hold === null) return;
  const replay = replayPassage(gate, motion);
  expect([replay.startsNear, replay.endsFar]).toEqual([true, true]);
  if (crossing.atLeast > 0.5) {
    expect(replay.clearance).toBeGreaterThan(crossing.atLeast / 2 - 0.2);
    const plan = {
      halfLength: (hold.along * Math.cos(hold.tilt) + hold.up * Math.sin(hold.tilt)) / 2,
      halfWidth: hold.across / 2,
      radius: 0,
    };
    expect(distanceAlong(ringOf(gate), plan, motion.poses, 10)).toBeGreaterThan(0);
  }
}

describe('a door in the side of a corridor', () => {
  it('is not an L corner: a crate swings out beside the door beyond the wall', () => {
    // algorithms.md 5.4: the L corner of the corridor and the door would let nothing wider than 119 mm turn.
    const [depth, width, wall, l, w] = [1200, 820, 120, 2600, 250];
    expect(cornerWidth(l, depth, width)).toBeCloseTo(119, 0);
    const gate = doorway(width, wall, corridor(depth), OPEN);
    const crossing = crossGate(gate, flat(l, w), OPTIONS);
    expect(crossing.atLeast).toBeGreaterThanOrEqual(0);
    expect(crossing.method).toBe('subdivision');
    expectSound(gate, crossing);
    // What the formula forbids: an end that comes, beyond the wall, to lie beside the hole, where the L has its outer wall.
    const poses = crossing.motion?.poses ?? [];
    const ends = poses.slice(1).flatMap((b, i) =>
      [0, 0.25, 0.5, 0.75, 1].flatMap((t) => {
        const a = poses[i];
        const heading = a.heading + t * (b.heading - a.heading);
        return [-1, 1].map((side) => ({
          x: a.x + t * (b.x - a.x) + (side * l * Math.cos(heading)) / 2,
          y: a.y + t * (b.y - a.y) + (side * l * Math.sin(heading)) / 2,
        }));
      }),
    );
    expect(ends.some(({ x, y }) => y > wall && Math.abs(x) > width / 2)).toBe(true);
  });

  // The neighbours in the prototype (deltest2.mjs), with what it found.
  const neighbours = [
    [1000, 1900, 300, true],
    [1000, 1900, 420, false],
    [1000, 2200, 300, true],
    [1000, 2600, 250, false],
  ] as const;
  for (const [depth, l, w, passes] of neighbours) {
    it(`${passes ? 'takes' : 'does not take'} ${l} x ${w} from a corridor of ${depth} through 820`, () => {
      const gate = doorway(820, 120, corridor(depth), OPEN);
      const crossing = crossGate(gate, flat(l, w), OPTIONS);
      expect(crossing.atLeast >= 0).toBe(passes);
      expect(crossing.atMost < 0).toBe(!passes);
      expectSound(gate, crossing);
      if (passes) return;
      // The roadmap must not find what is ruled out.
      const shape = { halfLength: l / 2, halfWidth: w / 2, radius: 0 };
      const { space } = gateInPlan(gate, shape);
      const start: PlanPose = { x: 0, y: -depth / 2, heading: 0 };
      const goal: PlanPose = { x: 0, y: 120 + l / 2 + 50, heading: Math.PI / 2 };
      expect(roadmapPlan(space, shape, start, goal, 600).found).toBe(false);
    });
  }

  it('brackets the spare within 10 mm, and the ends of the bracket are true of narrowed passages', () => {
    const gate = doorway(820, 120, corridor(1200), OPEN);
    const box = flat(2600, 250);
    const { atLeast, atMost } = crossGate(gate, box, OPTIONS);
    expect(atMost - atLeast).toBeLessThanOrEqual(10);
    const at = (delta: number) => crossGate(narrowed(gate, delta), box, OPTIONS);
    expect(at(atLeast - 5).atMost).toBeGreaterThanOrEqual(0);
    expect(at(atMost + 5).atLeast).toBeLessThan(0);
  });

  it('goes from one corridor through a door into another', () => {
    const gate = doorway(760, 150, corridor(900), corridor(1000));
    const crossing = crossGate(gate, flat(2000, 200), OPTIONS);
    expect(crossing.atLeast).toBeGreaterThan(0);
    expectSound(gate, crossing);
    // It starts and ends along the wall, clear of the hole.
    const poses = crossing.motion?.poses ?? [];
    for (const pose of [poses[0], poses[poses.length - 1]]) expect(Math.abs(pose.x)).toBeGreaterThan(380);
  });
});

describe('a gate with room enough', () => {
  it('is settled by the closed form', () => {
    const gate = doorway(820, 120, OPEN, OPEN);
    const crossing = crossGate(gate, flat(2600, 780), OPTIONS);
    expect(crossing).toMatchObject({ method: 'closed-form', atLeast: 40 });
    expectSound(gate, crossing);
  });

  it('is settled for any motion where the thickness is too much', () => {
    const crossing = crossGate(doorway(820, 120, corridor(900), OPEN), flat(2000, 900, 850), OPTIONS);
    expect(crossing.atMostAnyMotion).toBeLessThan(0);
    expect(crossing.motion).toBeNull();
  });
});

describe('rooms that end', () => {
  const small = (depth: number, left: number, right: number): Space => ({ depth, left, right, height: 2400 });

  it('lets a piece turn within a lobby as far as there is floor for it', () => {
    const roomy = doorway(800, 100, small(1600, 1000, 1000), OPEN);
    const cramped = doorway(800, 100, small(1600, 50, 50), OPEN);
    const box = flat(1900, 400);
    const [wide, narrow] = [crossGate(roomy, box, OPTIONS), crossGate(cramped, box, OPTIONS)];
    expectSound(roomy, wide);
    expectSound(cramped, narrow);
    expect(wide.atLeast).toBeGreaterThanOrEqual(0);
    expect(narrow.atMost).toBeLessThan(wide.atLeast);
  });

  it('rules out a capsule, and so any motion, where a tube has nowhere to go', () => {
    // 4.5 m of pipe, 250 mm thick, in a lobby 1.2 m deep and 2.4 m high: it can neither stand nor turn in.
    const gate = doorway(700, 150, small(1200, 2200, 2200), small(1200, 2200, 2200));
    const pipe: Carried = { l: 4500, w: 250, h: 250, held: ['flat', 'on-edge', 'on-end'], tilt: Math.PI / 2 };
    const crossing = crossGate(gate, pipe, OPTIONS);
    expect(crossing.atMost).toBeLessThan(0);
    expect(crossing.atMostAnyMotion).toBeLessThan(0);
    expectSound(gate, crossing);
  });
});

describe('gates in general', () => {
  const gates = fc.record({
    width: fc.integer({ min: 650, max: 950 }),
    before: fc.integer({ min: 800, max: 1600 }),
    after: fc.integer({ min: 800, max: 1600 }),
    left: fc.constantFrom(ENDLESS, 300, 1500),
    right: fc.constantFrom(ENDLESS, 200, 1200),
    wall: fc.constantFrom(0, 120, 300),
  });
  const boxes = fc.record({ l: fc.integer({ min: 1200, max: 2600 }), w: fc.integer({ min: 150, max: 700 }) });
  const gateOf = ({ width, before, after, left, right, wall }: Record<string, number>): Gate =>
    doorway(
      width,
      wall,
      { depth: before, left, right, height: 2400 },
      { depth: after, left: right, right: left, height: 2400 },
    );
  const quick = { maxBoxes: 12_000 };

  it('are sound: bounds in order, motions clear', () => {
    fc.assert(
      fc.property(gates, boxes, (numbers, { l, w }) => {
        fc.pre(w < l);
        const gate = gateOf(numbers);
        const box: Carried = { l, w, h: 60, held: ['flat', 'on-edge'], tilt: Math.PI / 6 };
        expectSound(gate, crossGate(gate, box, quick));
      }),
      { seed: SEED, numRuns: 25 },
    );
  });

  it('never pass more when narrowed, nor otherwise when mirrored', () => {
    fc.assert(
      fc.property(gates, boxes, fc.integer({ min: 1, max: 150 }), (numbers, { l, w }, delta) => {
        fc.pre(w < l);
        const gate = gateOf(numbers);
        const here = crossGate(gate, flat(l, w), quick);
        const less = crossGate(narrowed(gate, delta), flat(l, w), quick);
        expect(less.atLeast).toBeLessThanOrEqual(here.atMost - delta + 1e-6);
        expect(less.atMost).toBeGreaterThanOrEqual(here.atLeast - delta - 1e-6);
        const { before, after } = gate;
        const turned = {
          ...gate,
          before: { ...before, left: before.right, right: before.left },
          after: { ...after, left: after.right, right: after.left },
        };
        const mirrored = crossGate(turned, flat(l, w), quick);
        expect(mirrored.atLeast).toBeLessThanOrEqual(here.atMost);
        expect(mirrored.atMost).toBeGreaterThanOrEqual(here.atLeast);
      }),
      { seed: SEED, numRuns: 15 },
    );
  });
});

function narrowed(gate: Gate, delta: number): Gate {
  const narrow = narrowPassage(gate, delta);
  if (narrow.kind !== 'doorway') throw new Error('A doorway stays one.');
  return narrow;
}
