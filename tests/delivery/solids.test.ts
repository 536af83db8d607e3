import { beforeAll, describe, expect, it } from 'vitest';
import { BoxDistance } from '../../src/delivery/box-distance.js';
import { FRAME, placeBox } from '../../src/delivery/box-distance-frame.js';
import type { MotionPose } from '../../src/delivery/motion.js';
import { passageSolids } from '../../src/delivery/solids.js';
import type { ConvexSolid } from '../../src/delivery/solids-convex.js';
import { ManifoldOracle } from '../helpers/manifold-oracle.js';
import { KINDS, randomPassage } from '../helpers/manifold-oracle-passages.js';
import { randomFrom } from '../helpers/rings.js';

/** Against manifold-3d (development only): solids made the other way round, see the helper. */
let oracle: ManifoldOracle;
beforeAll(async () => {
  oracle = await ManifoldOracle.load();
});

/** As far as is looked, mm: less than the block of the other library. */
const FAR = 15_000;

interface Size {
  readonly along: number;
  readonly across: number;
  readonly up: number;
}

function distance(solids: readonly ConvexSolid[], { along, across, up }: Size, pose: MotionPose): number {
  const frame = new Float64Array(FRAME);
  placeBox(frame, 0, along, across, up, pose);
  const measure = new BoxDistance();
  return Math.min(...solids.map((solid) => measure.between(frame, 0, solid, Infinity)));
}

describe('the solids of a passage', () => {
  it.each(KINDS)('are those of another library, %s, and so are the distances from them', (kind) => {
    const next = randomFrom(9001 + KINDS.indexOf(kind));
    const tally = { clear: 0, touching: 0 };
    for (let i = 0; i < 25; i++) {
      const passage = randomPassage(kind, next);
      const solids = passageSolids(passage);
      const other = oracle.passage(passage);
      for (let j = 0; j < 30; j++) {
        const size = { along: 60 + 900 * next(), across: 30 + 400 * next(), up: 10 + 300 * next() };
        const level = next() < 0.4;
        const pose = {
          x: -1500 + 4000 * next(),
          y: -1500 + 3500 * next(),
          z: -300 + 2600 * next(),
          heading: 7 * next(),
          tilt: level ? 0 : 7 * next(),
          roll: level ? 0 : 7 * next(),
        };
        const ours = distance(solids, size, pose);
        const theirs = oracle.distance(other, size, pose, FAR);
        if (theirs > 0) {
          tally.clear++;
          expect(ours).toBeLessThan(theirs + 1e-6);
          expect(Math.min(ours, FAR)).toBeGreaterThan(theirs - 1e-6);
        } else {
          tally.touching++;
          expect(ours).toBeLessThan(1e-6);
        }
      }
      other.delete();
    }
    expect(tally.clear).toBeGreaterThan(40);
    expect(tally.touching).toBeGreaterThan(40);
  });
});
