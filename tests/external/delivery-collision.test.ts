import { beforeAll, describe, expect, it } from 'vitest';
import type { Carried } from '../../src/delivery/carried.js';
import { crossPassage } from '../../src/delivery/cross-passage.js';
import type { Motion, MotionPose } from '../../src/delivery/motion.js';
import { narrowPassage } from '../../src/delivery/narrow-passage.js';
import type { Passage } from '../../src/delivery/passages.js';
import { replayMotion, replayPassage } from '../../src/delivery/replay.js';
import { passageSolids } from '../../src/delivery/solids.js';
import { ManifoldOracle } from '../helpers/manifold-oracle.js';
import { KINDS, randomPassage } from '../helpers/manifold-oracle-passages.js';
import { randomFrom } from '../helpers/rings.js';

/**
 * Whole motions against manifold-3d, a library of solids (development only), with solids made from the frames the other way round (see the helper).
 * Between two poses a box that is only shifted passes through the hull of both, so there the library's distance is the true least one.
 * Where it turns by A in all, no point leaves the chords by more than A^2 / 8 of half the diagonal, so the hull's distance less that is
 * a bound as well.
 */
let oracle: ManifoldOracle;
beforeAll(async () => {
  oracle = await ManifoldOracle.load();
});

/** As far as is looked, mm. */
const SEARCH = 3000;
const FINEST = 0.1;

function mix(a: MotionPose, b: MotionPose, t: number): MotionPose {
  const at = (u: number, v: number): number => u + t * (v - u);
  return {
    x: at(a.x, b.x),
    y: at(a.y, b.y),
    z: at(a.z, b.z),
    heading: at(a.heading, b.heading),
    tilt: at(a.tilt, b.tilt),
    roll: at(a.roll, b.roll),
  };
}

interface Seen {
  /** Least distance at a pose, and of a hull less what the turn may leave it by. */
  readonly atPoses: number;
  readonly between: number;
}

/** The motion as the library sees it, each step cut so that no part turns by more than `turn`. */
function look(passage: Passage, motion: Motion, turn: number): Seen {
  const solid = oracle.passage(passage);
  const half = Math.hypot(motion.along, motion.across, motion.up) / 2;
  let atPoses = oracle.distance(solid, motion, motion.poses[0], SEARCH);
  let between = SEARCH;
  motion.poses.slice(1).forEach((to, i) => {
    const from = motion.poses[i];
    const turned =
      Math.abs(to.heading - from.heading) + Math.abs(to.tilt - from.tilt) + Math.abs(to.roll - from.roll);
    const parts = Math.max(1, Math.ceil(turned / turn));
    const leave = ((turned / parts) ** 2 / 8) * half;
    for (let k = 0; k < parts; k++) {
      const [a, b] = [mix(from, to, k / parts), mix(from, to, (k + 1) / parts)];
      atPoses = Math.min(atPoses, oracle.distance(solid, motion, b, SEARCH));
      const swept = oracle.sweptDistance(solid, motion, a, b, SEARCH);
      between = Math.min(between, swept - leave);
    }
  });
  solid.delete();
  return { atPoses, between };
}

describe('shifts', () => {
  it.each(KINDS)('come as near as the solids they pass through: %s', (kind) => {
    const next = randomFrom(8807 + KINDS.indexOf(kind));
    const tally = { clear: 0, touching: 0 };
    while (tally.clear < 6 || tally.touching < 6) {
      const passage = randomPassage(kind, next);
      const solids = passageSolids(passage);
      for (let j = 0; j < 6; j++) {
        const along = 60 + 500 * next();
        const [heading, tilt, roll] = [7 * next(), 7 * next(), 7 * next()];
        const poses = Array.from({ length: 4 }, () => ({
          x: 1500 * next() - 400,
          y: 1800 * next() - 400,
          z: 1300 * next() + 200,
          heading,
          tilt,
          roll,
        }));
        const motion: Motion = { along, across: 0.5 * along, up: 20, poses };
        const { clearance } = replayMotion(motion, solids);
        const { between } = look(passage, motion, 1);
        if (between > 0) {
          tally.clear++;
          expect(clearance).toBeLessThan(between + 1e-6);
          expect(clearance).toBeGreaterThan(between - FINEST - 1e-6);
        } else {
          tally.touching++;
          expect(clearance).toBeLessThan(1e-6);
        }
      }
    }
    expect(tally.clear + tally.touching).toBeGreaterThan(11);
  });
});

describe('turns', () => {
  it.each(KINDS)('come no nearer than the library sees, and no farther: %s', (kind) => {
    const next = randomFrom(4409 + KINDS.indexOf(kind));
    let clear = 0;
    while (clear < 8) {
      const passage = randomPassage(kind, next);
      const solids = passageSolids(passage);
      const poses = Array.from({ length: 2 }, () => ({
        x: 300 + 400 * next(),
        y: 300 + 600 * next(),
        z: 700 + 500 * next(),
        heading: 3 * next(),
        tilt: 2 * next(),
        roll: 3 * next(),
      }));
      const motion: Motion = { along: 100 + 500 * next(), across: 90, up: 20, poses };
      const { clearance } = replayMotion(motion, solids);
      if (clearance <= 0) continue;
      clear++;
      const { atPoses, between } = look(passage, motion, 0.05);
      expect(clearance).toBeLessThan(atPoses + 1e-6);
      expect(clearance).toBeGreaterThan(between - FINEST - 1e-6);
    }
    expect(clear).toBe(8);
  });
});

/** Few boxes: what is asked is whether what was found is true, not whether all is found. */
const OPTIONS = { maxBoxes: 4000 };

describe('motions that are found', () => {
  it.each(KINDS)('go through the solids of the other library: %s', (kind) => {
    const next = randomFrom(6011 + KINDS.indexOf(kind));
    let found = 0;
    for (let i = 0; i < 12; i++) {
      const [h, w, l] = [30 + 250 * next(), 200 + 1200 * next(), 300 + 2500 * next()].sort((a, b) => a - b);
      const tilt = [0, Math.PI / 4, Math.PI / 2][Math.floor(3 * next())];
      const box: Carried = { l, w, h, held: ['flat', 'on-edge', 'on-end'], tilt };
      const roomy = withCeilings(randomPassage(kind, next));
      const first = crossPassage(roomy, box, OPTIONS);
      if (!Number.isFinite(first.atLeast)) continue;
      // Also where next to nothing is left.
      for (const passage of [roomy, narrowPassage(roomy, first.atLeast - (i % 2 === 0 ? 10 : 0.5))]) {
        const { motion, atLeast } = crossPassage(passage, box, OPTIONS);
        if (motion === null) continue;
        expect([motion.along, motion.across, motion.up].sort((a, b) => a - b)).toEqual([h, w, l]);
        const { clearance, startsNear, endsFar } = replayPassage(passage, motion);
        expect([startsNear, endsFar]).toEqual([true, true]);
        if (atLeast < 0.05) continue;
        found++;
        expect(clearance).toBeGreaterThan(1e-6);
        const solid = oracle.passage(passage);
        for (const pose of motion.poses) {
          expect(oracle.distance(solid, motion, pose, SEARCH)).toBeGreaterThan(
            Math.min(clearance, SEARCH) - 1e-6,
          );
        }
        motion.poses.slice(1).forEach((to, k) => {
          const middle = mix(motion.poses[k], to, 0.5);
          expect(oracle.distance(solid, motion, middle, SEARCH)).toBeGreaterThan(
            Math.min(clearance, SEARCH) - 1e-6,
          );
        });
        solid.delete();
      }
    }
    expect(found).toBeGreaterThan(9);
  });
});

/** Corridors are asked for their height: it is never endless. */
function withCeilings(passage: Passage): Passage {
  switch (passage.kind) {
    case 'corridor':
      return { ...passage, height: Math.min(passage.height, 2400) };
    case 'corner':
      return {
        ...passage,
        height: Math.min(passage.height, 2400),
        heightAfter: Math.min(passage.heightAfter, 2500),
      };
    default:
      return passage;
  }
}
