import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangleRing } from '../../src/geometry/ring.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import { mayStandWithin } from '../../src/placement/find-place.js';
import { type CueJudgement, judgePose } from '../../src/placement/judge-pose.js';
import { openReach } from '../../src/placement/open-reach.js';
import type { Scene } from '../../src/room/scene.js';
import { STROKE, TABLE } from '../stroke/scenes.js';

const cue = { name: '57 in', length: 1448, tipRadius: 5, buttRadius: 15 };
const reach = openReach(TABLE, STROKE, cue);
const Q = { length: TABLE.field.length - TABLE.ballDiameter, width: TABLE.field.width - TABLE.ballDiameter };

function room(outline: Ring, wallTolerances: readonly number[] | null, tolerance = 10): Scene {
  const wallNames = outline.map((_, i) => `wall ${i + 1}`);
  return {
    outline,
    wallNames,
    obstacles: [],
    ceiling: [],
    doors: [],
    reserved: [],
    tolerance,
    wallTolerances,
  };
}

const RUNS = 100;

/** Walls at these distances from Q: bottom, right, top, left. */
function around([bottom, right, top, left]: readonly [number, number, number, number]): Ring {
  const [x, y] = [Q.length / 2, Q.width / 2];
  return [
    [-x - left, -y - bottom],
    [x + right, -y - bottom],
    [x + right, y + top],
    [-x - left, y + top],
  ];
}

function judge(scene: Scene): CueJudgement {
  const question = {
    scene,
    table: TABLE,
    stroke: STROKE,
    cues: [cue],
    pose: { x: 0, y: 0, angle: 0 },
    shots: 256,
    withTolerance: true,
  };
  return judgePose(question).cues[0];
}

describe('a verdict in a room whose walls have tolerances of their own', () => {
  test('is certain when each wall has its own to spare, no matter what the others have', () => {
    const ring = around([reach.rho + 3, reach.rho + 40, reach.rho + 25, reach.rho + 8]);
    const certain = (...t: readonly number[]) => judge(room(ring, t)).certain;
    expect(judge(room(ring, null, 25))).toMatchObject({ verdict: 'clear', certain: false });
    expect(judge(room(ring, [3, 40, 25, 8]))).toMatchObject({ verdict: 'clear', certain: true });
    // Raised cues of frozen balls save some millimetres more, so that the next is off by more than those.
    expect(certain(40, 40, 25, 8)).toBe(false);
    expect(certain(3, 80, 25, 8)).toBe(false);
    expect(certain(3, 40, 25, 8.1)).toBe(true);
  });

  test('holds what does not fit as well, by the kindest room', () => {
    const short = TABLE.ballDiameter / 2 + STROKE.shortBackswing + cue.length;
    const raised = short * Math.cos(STROKE.maxElevation) + STROKE.margin;
    const ring = around([raised - 6, raised + 400, raised + 400, raised + 400]);
    expect(judge(room(ring, [5, 30, 30, 30]))).toMatchObject({ verdict: 'partial', certain: true });
    expect(judge(room(ring, [8, 1, 1, 1]))).toMatchObject({ verdict: 'partial', certain: false });
    // Nor is it where the tolerance of the rest is more than the margin of strokes.
    expect(judge(room(ring, [8, 1, 1, 1], 60)).certain).toBe(false);
  });

  test('tells whether the frame stands', () => {
    const { length, width } = TABLE.outer;
    const tight = (spare: number, t: readonly number[]) =>
      judge(room(rectangleRing([0, 0], length + spare, width + 500), t));
    expect(tight(-8, [1, 3, 1, 3])).toMatchObject({ verdict: 'none', certain: true });
    expect(tight(-8, [1, 5, 1, 5])).toMatchObject({ verdict: 'none', certain: false });
    expect(tight(8, [1, 3, 1, 3])).toMatchObject({ verdict: 'partial', certain: true });
    expect(tight(8, [1, 5, 1, 3])).toMatchObject({ verdict: 'partial', certain: false });
  });

  test('tells whether it stands anywhere', () => {
    const { length, width } = TABLE.outer;
    // The diagonal of such a room is too short to turn the table in.
    const may = (missing: number, t: readonly number[]) =>
      mayStandWithin(room(rectangleRing([0, 0], length - missing, width + 200), t), TABLE, 20_000);
    expect(may(8, [1, 4.1, 1, 4.1])).toBe(true);
    expect(may(8, [1, 3.5, 1, 3.5])).toBe(false);
    expect(may(8, [30, 7, 30, 0.5])).toBe(false);
    expect(may(8, [30, 7, 30, 1.5])).toBe(true);
  });

  test('is the same as with one tolerance where all walls have that and no corner juts in', () => {
    const gap = fc.integer({ min: -30, max: 30 });
    fc.assert(
      fc.property(fc.tuple(gap, gap, gap, gap), fc.constantFrom(1380, reach.rho), ([a, b, c, d], from) => {
        const ring = around([from + a, from + b, from + c, from + d]);
        expect(judge(room(ring, [10, 10, 10, 10]))).toEqual(judge(room(ring, null)));
      }),
      { seed: 4, numRuns: 40 },
    );
  });

  test('holds in rooms whose walls lie in their bands and whose things are off by the tolerance, where it is certain', () => {
    const t = fc.constantFrom(2, 6, 15);
    const share = fc.oneof(fc.double({ min: -1, max: 1, noNaN: true }), fc.constantFrom(-1, 1));
    const told = { certain: 0, all: 0, verdicts: new Set<string>() };
    const cases = fc.record({
      jut: fc.integer({ min: -60, max: 60 }),
      from: fc.constantFrom(reach.least, 1380),
      t: fc.array(t, { minLength: 6, maxLength: 6 }),
      at: fc.array(share, { minLength: 6, maxLength: 6 }),
      tolerance: fc.constantFrom(0, 4, 12),
      // A post beside a long side, in reach of a raised cue, or none.
      post: fc.option(fc.record({ off: fc.integer({ min: 1330, max: 1720 }), dx: share, dy: share })),
    });
    fc.assert(
      fc.property(cases, ({ jut, from, t, at, tolerance, post }) => {
        // The far corner juts in towards a corner of Q, so far off along the diagonal.
        const off = (from + jut) / Math.SQRT2;
        const [x, y] = [Q.length / 2, Q.width / 2];
        const shape = (by: (wall: number) => number): Ring => {
          const xs = { left: -x - 2000 - by(5), step: x + off + by(3), right: x + 2600 + by(1) };
          const ys = { bottom: -y - 2000 - by(0), step: y + off + by(2), top: y + 2500 + by(4) };
          const ring: Point[] = [
            [xs.left, ys.bottom],
            [xs.right, ys.bottom],
            [xs.right, ys.step],
            [xs.step, ys.step],
            [xs.step, ys.top],
            [xs.left, ys.top],
          ];
          return ring;
        };
        const things = (by: number): Scene['obstacles'] => {
          if (post === null) return [];
          const ring = rectangleRing([300 + by * post.dx, -y - post.off - 100 + by * post.dy], 200, 200);
          return [{ name: 'post', ring, parts: [ring], from: 0, to: 2000, movable: false }];
        };
        const found = judge({
          ...room(
            shape(() => 0),
            t,
            tolerance,
          ),
          obstacles: things(0),
        });
        told.all++;
        if (!found.certain) return;
        told.certain++;
        told.verdicts.add(found.verdict);
        const moved = room(
          shape((wall) => at[wall] * t[wall]),
          null,
          0,
        );
        // Off by no more than the tolerance along the diagonal.
        const truly = judge({ ...moved, obstacles: things(tolerance / Math.SQRT2) });
        expect(truly.verdict).toBe(found.verdict);
      }),
      { seed: 44, numRuns: RUNS },
    );
    expect(told.certain).toBeGreaterThan(RUNS / 4);
    expect(told.certain).toBeLessThan(told.all);
    expect([...told.verdicts].sort()).toEqual(['clear', 'partial', 'tight']);
  });
});
