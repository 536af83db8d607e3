import { beforeAll, describe, expect, it } from 'vitest';
import type { Motion, MotionPose } from '../../src/delivery/motion.js';
import { narrowPassage } from '../../src/delivery/narrow-passage.js';
import type { Corner, Corridor, Gate, Landing, Lift, Stair } from '../../src/delivery/passages.js';
import { replayMotion, replayPassage } from '../../src/delivery/replay.js';
import { passageSolids } from '../../src/delivery/solids.js';
import { convexSolid } from '../../src/delivery/solids-convex.js';
import { ManifoldOracle } from '../helpers/manifold-oracle.js';
import { KINDS, randomPassage } from '../helpers/manifold-oracle-passages.js';
import { randomFrom } from '../helpers/rings.js';

const COMMON = { name: 'passage', tolerance: 0 };
const OPEN = { depth: Infinity, left: Infinity, right: Infinity, height: Infinity };
const DOORWAY: Gate = {
  ...COMMON,
  kind: 'doorway',
  width: 900,
  height: 2000,
  depth: 100,
  sill: 0,
  leaf: 0,
  before: OPEN,
  after: OPEN,
};
const CORRIDOR: Corridor = { ...COMMON, kind: 'corridor', width: 1000, height: 2400 };
const CORNER: Corner = {
  ...COMMON,
  kind: 'corner',
  width: 1000,
  height: 2400,
  widthAfter: 1000,
  heightAfter: 2400,
  angle: Math.PI / 2,
};
const STAIR: Stair = {
  ...COMMON,
  kind: 'stair',
  width: 900,
  pitch: Math.atan(0.75),
  rise: 180,
  headroom: 2000,
  run: 3000,
  bottom: { depth: Infinity, height: 2400 },
  top: { depth: Infinity, height: 2400 },
};
const LANDING: Landing = {
  ...COMMON,
  kind: 'quarter-landing',
  width: 900,
  widthAfter: 900,
  pitch: Math.atan(0.75),
  rise: 180,
  headroom: 2000,
  depth: 900,
  breadth: 900,
  well: 0,
};
const LIFT: Lift = {
  ...COMMON,
  kind: 'lift',
  width: 1100,
  depth: 1400,
  height: 2200,
  door: { width: 800, height: 2000, depth: 150 },
  before: OPEN,
};

function pose(x: number, y: number, z: number, heading = 0, tilt = 0, roll = 0): MotionPose {
  return { x, y, z, heading, tilt, roll };
}

function mix(a: MotionPose, b: MotionPose, t: number): MotionPose {
  const at = (u: number, v: number): number => u + t * (v - u);
  return pose(
    at(a.x, b.x),
    at(a.y, b.y),
    at(a.z, b.z),
    at(a.heading, b.heading),
    at(a.tilt, b.tilt),
    at(a.roll, b.roll),
  );
}

/** Round the corner with both ends `off` the outer walls, in `parts` even turns. */
function roundCorner(along: number, across: number, off: number, parts: number): Motion {
  const turned = Array.from({ length: parts + 1 }, (_, i) => {
    const t = (i * Math.PI) / 2 / parts;
    const [sin, cos] = [Math.sin(t), Math.cos(t)];
    const x = (along * cos + across * sin) / 2 + off;
    const y = (along * sin + across * cos) / 2 + off;
    return pose(x, y, 1000, -t);
  });
  const [first, last] = [turned[0], turned[parts]];
  return {
    along,
    across,
    up: 700,
    poses: [{ ...first, x: first.x + 3000 }, ...turned, { ...last, y: last.y + 3000 }],
  };
}

describe('a replay', () => {
  it('finds the least distance of a slide', () => {
    const motion: Motion = {
      along: 2000,
      across: 600,
      up: 300,
      poses: [pose(0, 420, 1000), pose(5000, 500, 1300), pose(9000, 450, 2230)],
    };
    const { clearance, at, pose: nearest, nearest: name } = replayPassage(CORRIDOR, motion);
    expect(clearance).toBeCloseTo(20, 9);
    expect([at, name]).toEqual([{ step: 2, share: 0 }, 'ceiling']);
    expect(nearest).toEqual(motion.poses[2]);
  });

  // From both ends on the outer walls at t the inner corner is a sin t + a cos t - l sin t cos t - w off the near side, least at 45 degrees: a sqrt 2 - l / 2 - w.
  it('keeps the closed form of the corner', () => {
    const spare = 1000 * Math.SQRT2 - 1900 / 2;
    const off = (spare - 440) / (1 + Math.SQRT2);
    const { clearance, startsNear, endsFar, nearest } = replayPassage(
      CORNER,
      roundCorner(1900, 440, off, 400),
    );
    // Between two poses the centre runs on a chord, no more than l (t / 400)^2 / 8 = 0.004 mm off.
    expect(clearance).toBeGreaterThan(off - 0.11);
    expect(clearance).toBeLessThan(off + 1e-9);
    expect([startsNear, endsFar]).toEqual([true, true]);
    expect(['inner corner', 'outer wall']).toContain(nearest);
    expect(replayPassage(CORNER, roundCorner(1900, spare + 1, 0, 401)).clearance).toBeLessThan(-0.9);
  });

  it('sees a box cut its corners between two poses', () => {
    const off = (1000 * Math.SQRT2 - 950 - 440) / (1 + Math.SQRT2);
    expect(replayPassage(CORNER, roundCorner(1900, 440, off, 4)).clearance).toBeLessThan(0);
    const solids = passageSolids(CORNER);
    for (const each of roundCorner(1900, 440, off, 4).poses) {
      expect(
        replayMotion({ along: 1900, across: 440, up: 700, poses: [each] }, solids).clearance,
      ).toBeGreaterThan(0);
    }
  });

  it.each([0, 0.01, 20])('is not fooled by a leap through a wall %s mm thick', (depth) => {
    const motion: Motion = {
      along: 300,
      across: 300,
      up: 300,
      poses: [pose(2000, -800, 1000), pose(2000, 900, 1000)],
    };
    const replay = replayPassage({ ...DOORWAY, depth }, motion);
    expect([replay.startsNear, replay.endsFar]).toEqual([true, true]);
    expect(replay.clearance).toBeLessThanOrEqual(0);
    expect(replay.nearest).toBe('right jamb');
  });

  it('lets nothing over from flight to flight where the well has no width', () => {
    const half: Landing = { ...LANDING, kind: 'half-landing' };
    const poses = [pose(450, -300, 800), pose(1350, -300, 800)];
    const replay = replayPassage(half, { along: 200, across: 200, up: 200, poses });
    expect(replay.nearest).toBe('well');
    expect(replay.clearance).toBeLessThanOrEqual(0);
    const ends = poses.map(
      (each) => replayPassage(half, { along: 200, across: 200, up: 200, poses: [each] }).clearance,
    );
    expect(Math.min(...ends)).toBeGreaterThan(300);
  });

  it('is not fooled by half a turn, or a whole one', () => {
    const turned = (heading: number, tilt: number, roll: number): Motion => ({
      along: 1800,
      across: 100,
      up: 50,
      poses: [pose(0, 500, 1200), pose(0, 500, 1200, heading, tilt, roll)],
    });
    expect(replayPassage(CORRIDOR, turned(Math.PI, 0, 0)).clearance).toBeLessThan(0);
    expect(replayPassage(CORRIDOR, turned(-2 * Math.PI, 0, 0)).clearance).toBeLessThan(0);
    const wide: Motion = {
      along: 300,
      across: 900,
      up: 50,
      poses: [pose(0, 500, 300), pose(0, 500, 300, 0, 0, Math.PI)],
    };
    expect(replayPassage(CORRIDOR, wide).clearance).toBeLessThan(0);
    // Upright it reaches hypot(1800, 50) / 2 from its centre, rolled no farther than hypot(100, 50) / 2.
    const { clearance } = replayPassage(CORRIDOR, turned(0, Math.PI, 0));
    expect(clearance).toBeGreaterThan(1200 - Math.hypot(1800, 50) / 2 - 0.1);
    expect(clearance).toBeLessThan(1200 - Math.hypot(1800, 50) / 2 + 1e-3);
    expect(replayPassage(CORRIDOR, turned(0, 0, 9)).clearance).toBeGreaterThan(
      500 - Math.hypot(100, 50) / 2 - 0.1,
    );
  });

  it('sees a corner sweep past a corner between two poses', () => {
    // A square of half diagonal 1000 that turns about a centre 1010 short of the inner corner: 10 at the middle, more at both ends.
    const centre = 1000 - 1010 * Math.SQRT1_2;
    const side = 1000 * Math.SQRT2;
    const poses = [-0.008, 0.008].map((heading) => pose(centre, centre, 1000, heading));
    const wedge = convexSolid('wedge', [
      [-1, 0, 0, -1000],
      [0, -1, 0, -1000],
    ]);
    const box = { along: side, across: side, up: 0.001 };
    const least = wedge === null ? null : replayMotion({ ...box, poses }, [wedge]).clearance;
    const ends = wedge === null ? null : replayMotion({ ...box, poses: [poses[0]] }, [wedge]).clearance;
    expect(ends).toBeCloseTo(Math.hypot(10, 1010 * 0.008), 1);
    expect(least).toBeGreaterThan(10 - 0.1);
    expect(least).toBeLessThan(10 + 1e-6);
  });

  it('calls a slide along a wall touching', () => {
    const motion: Motion = {
      along: 2000,
      across: 600,
      up: 300,
      poses: [pose(0, 300, 1000), pose(5000, 300, 1000)],
    };
    expect(replayPassage(CORRIDOR, motion).clearance).toBe(0);
  });

  it('narrows the clearance down as far as it is asked to', () => {
    const motion = roundCorner(1500, 300, 30, 6);
    const coarse = replayPassage(CORNER, motion, { finest: 5 });
    const fine = replayPassage(CORNER, motion, { finest: 0.001 });
    expect(coarse.clearance).toBeLessThanOrEqual(fine.clearance + 0.001);
    expect(coarse.clearance).toBeGreaterThan(fine.clearance - 5);
    expect(coarse.steps).toBeLessThan(fine.steps);
  });

  it('takes a motion without solids, and refuses one without poses', () => {
    const box = { along: 3, across: 2, up: 1 };
    expect(replayMotion({ ...box, poses: [pose(0, 0, 0), pose(1, 1, 1)] }, []).clearance).toBe(Infinity);
    expect(() => replayMotion({ ...box, poses: [] }, [])).toThrow(RangeError);
  });

  it('counts poses that are far off or no numbers as touching', () => {
    const box = { along: 3, across: 2, up: 1 };
    for (const x of [60_000, Number.NaN, -Infinity]) {
      const replay = replayPassage(CORRIDOR, { ...box, poses: [pose(0, 500, 500), pose(x, 500, 500)] });
      expect(replay.clearance).toBe(-Infinity);
      expect(replay.at.step).toBe(1);
    }
  });

  it('bears solids that are the whole world, or none', () => {
    const all = convexSolid('everything', []);
    expect(
      all === null
        ? null
        : replayMotion({ along: 3, across: 2, up: 1, poses: [pose(0, 0, 0)] }, [all]).clearance,
    ).toBeLessThan(0);
    expect(
      convexSolid('nothing', [
        [1, 0, 0, -1],
        [-1, 0, 0, 0],
      ]),
    ).toBeNull();
    expect(convexSolid('nothing', [[0, 0, -1, -Infinity]])).toBeNull();
  });
});

describe('a passage narrower than nothing', () => {
  it.each(KINDS)('is only touched: %s', (kind) => {
    const next = randomFrom(515 + KINDS.indexOf(kind));
    for (let i = 0; i < 20; i++) {
      const passage = narrowPassage(randomPassage(kind, next), 2700 + 500 * next());
      const poses = [0, 1, 2].map(() =>
        pose(2000 * next() - 500, 2000 * next() - 500, 2000 * next(), 6 * next(), 6 * next(), 6 * next()),
      );
      // Where there is no headroom left every point is inside something.
      const { clearance } = replayPassage(passage, { along: 900, across: 300, up: 60, poses });
      expect(clearance).not.toBeNaN();
      if (kind !== 'doorway' && kind !== 'opening' && kind !== 'lift')
        expect(clearance).toBeLessThanOrEqual(0);
    }
  });
});

describe('the two sides of a passage', () => {
  const box = { along: 1000, across: 300, up: 200 };
  const ends = (passage: Parameters<typeof replayPassage>[0], first: MotionPose, last: MotionPose) => {
    const { startsNear, endsFar } = replayPassage(passage, { ...box, poses: [first, last] });
    return [startsNear, endsFar];
  };
  const ahead = Math.PI / 2;

  it('of a doorway and a lift', () => {
    expect(ends(DOORWAY, pose(0, -500, 500, ahead), pose(0, 600, 500, ahead))).toEqual([true, true]);
    expect(ends(DOORWAY, pose(0, -499, 500, ahead), pose(0, 599, 500, ahead))).toEqual([false, false]);
    expect(ends(LIFT, pose(0, -500, 500, ahead), pose(0, 650, 500, ahead))).toEqual([true, true]);
    expect(ends(LIFT, pose(0, -499, 500, ahead), pose(0, 649, 500, ahead))).toEqual([false, false]);
  });

  it('of a corner', () => {
    expect(ends(CORNER, pose(900, 850, 500), pose(850, 900, 500, ahead))).toEqual([true, true]);
    expect(ends(CORNER, pose(900, 851, 500), pose(851, 900, 500, ahead))).toEqual([false, false]);
    const acute = { ...CORNER, angle: Math.PI / 3 };
    // The second corridor is 1000 to the right of its outer wall: x sin 60 - y cos 60 <= 1000.
    const reach = 500 * Math.sin(Math.PI / 3) + 150 * Math.cos(Math.PI / 3);
    const x = (1000 - reach) / Math.sin(Math.PI / 3);
    expect(ends(acute, pose(x, 850, 500), pose(x - 1, 0, 500))).toEqual([true, true]);
    expect(ends(acute, pose(x, 851, 500), pose(x + 1, 0, 500))).toEqual([false, false]);
  });

  it('of a stair', () => {
    expect(ends(STAIR, pose(-500, 450, 500), pose(3500, 450, 3000))).toEqual([true, true]);
    expect(ends(STAIR, pose(-499, 450, 500), pose(3499, 450, 3000))).toEqual([false, false]);
    const shallow = { depth: 600, height: 2400 };
    const short = { ...STAIR, bottom: shallow, top: shallow };
    expect(ends(short, pose(0, 450, 500), pose(3000, 450, 3000))).toEqual([true, true]);
    expect(ends(short, pose(1, 450, 500), pose(2999, 450, 3000))).toEqual([false, false]);
  });

  it('of landings', () => {
    expect(ends(LANDING, pose(450, -500, 0, ahead), pose(1400, 450, 900))).toEqual([true, true]);
    expect(ends(LANDING, pose(450, -499, 0, ahead), pose(1399, 450, 900))).toEqual([false, false]);
    const half: Landing = { ...LANDING, kind: 'half-landing', well: 100 };
    expect(ends(half, pose(450, -500, 0, ahead), pose(1150, -500, 900, ahead))).toEqual([true, true]);
    expect(ends(half, pose(1450, -500, 0, ahead), pose(1149, -500, 900, ahead))).toEqual([false, false]);
  });
});

/** Against manifold-3d (development only), looked at many times along the way; solids made the other way round, see the helper. */
describe('replays and samples by another library', () => {
  let oracle: ManifoldOracle;
  beforeAll(async () => {
    oracle = await ManifoldOracle.load();
  });

  it.each(KINDS)('agree: %s', (kind) => {
    const next = randomFrom(7301 + KINDS.indexOf(kind));
    const tally = { clear: 0, touching: 0 };
    while (tally.clear < 12 || tally.touching < 12) {
      const passage = randomPassage(kind, next);
      const other = oracle.passage(passage);
      const solids = passageSolids(passage);
      for (let j = 0; j < 8; j++) {
        const box = { along: 60 + 900 * next(), across: 30 + 400 * next(), up: 10 + 100 * next() };
        const spread = next() < 0.5 ? 100 : 1000;
        const turn = 2 * next();
        const about = [
          1500 * next() - 500,
          2500 * next() - 500,
          1500 * next() + 100,
          7 * next(),
          7 * next(),
          7 * next(),
        ];
        const poses = Array.from({ length: 3 }, () => {
          const [x, y, z, heading, tilt, roll] = about.map(
            (v, k) => v + (k < 3 ? spread : turn) * (next() - 0.5),
          );
          return pose(x, y, z, heading, tilt, roll);
        });
        const { clearance, pose: nearest } = replayMotion({ ...box, poses }, solids);
        const samples = Array.from({ length: 21 }, (_, k) =>
          oracle.distance(other, box, mix(poses[k < 10 ? 0 : 1], poses[k < 10 ? 1 : 2], (k % 10) / 10), 4000),
        );
        const seen = oracle.distance(other, box, nearest, 4000);
        if (clearance > 0) {
          tally.clear++;
          expect(clearance).toBeLessThan(Math.min(...samples, seen) + 1e-6);
          expect(clearance).toBeGreaterThan(seen - 0.1 - 1e-6);
        } else {
          tally.touching++;
          expect(seen).toBeLessThan(1e-3);
        }
      }
      other.delete();
    }
    expect(tally.clear).toBeGreaterThanOrEqual(12);
  });
});
