import { describe, expect, it } from 'vitest';
import { answerShot } from '../../src/stroke/answer-shot.js';
import { StrokeClassifier } from '../../src/stroke/classify-traced.js';
import { prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import { shotShares } from '../../src/stroke/shot-shares.js';
import { standingRoom } from '../../src/stroke/standing.js';
import type { StandingRoom } from '../../src/stroke/standing-room.js';
import type { StrokeCue, StrokeScene } from '../../src/stroke/stroke-scene.js';
import { ShotTrace } from '../../src/stroke/trace-shot.js';
import {
  CUE,
  mirrored,
  obstacle,
  type Random,
  random,
  randomScene,
  rectangle,
  room,
  STROKE,
  TABLE,
} from './scenes.js';

const POSE = { x: 0, y: 0, angle: 0 };

/** Shares by random shots, one in each cell of a grid of n^3: an estimate that shares nothing with the even sequence. */
function jitteredShares(
  scene: StrokeScene,
  standing: StandingRoom,
  cue: StrokeCue,
  n: number,
  next: Random,
): readonly [number, number, number] {
  const classifier = new StrokeClassifier(scene, cue);
  const trace = new ShotTrace(scene, classifier.ell);
  const counts: [number, number, number] = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      for (let k = 0; k < n; k++) {
        const phi = (2 * Math.PI * (k + next())) / n;
        const x = ((2 * (i + next())) / n - 1) * scene.qx;
        const y = ((2 * (j + next())) / n - 1) * scene.qy;
        trace.follow(x, y, Math.cos(phi), Math.sin(phi));
        counts[classifier.classify(trace, standing)]++;
      }
    }
  }
  return [counts[0] / n ** 3, counts[1] / n ** 3, counts[2] / n ** 3];
}

describe('the shares of all shots', () => {
  it('are those of the closed form for a rectangular room', () => {
    // Design notes, algorithms.md, section 3: Q of 2482.8 x 1212.8, walls of 4.8 x 3.6 m, reach 1626.6, no elevation: 0.826296611203,
    // from share = 1 - (1 / pi) sum over walls of the mean of acos(y / X). A thin cue on a flat rail, and a player of no width.
    const table = {
      ...TABLE,
      field: { length: 2540, width: 1270 },
      outer: { length: 2540, width: 1270 },
      ballDiameter: 57.2,
      noseHeight: 28.6,
      railHeight: 28.6,
    };
    const stroke = { ...STROKE, margin: 0, tipOffset: 5, maxElevation: 1e-9 };
    const flat = prepareStrokes(room(rectangle(-2400, -1800, 2400, 1800)), table, POSE, stroke);
    const scene = { ...flat, stance: { ...flat.stance, radius: 1e-3 } };
    const cue = { length: 1448, tipRadius: 5, buttRadius: 5 };
    for (const shots of [500, 5000, 50_000]) {
      const [tally] = shotShares(scene, standingRoom(scene), [cue], { shots }).cues;
      expect(Math.abs(tally.open - 0.826296611203)).toBeLessThan(tally.error);
      expect(tally.error).toBeLessThan(2 / Math.sqrt(shots));
    }
  });

  it('are within the stated error of 200 times as many shots in at least 99 of 100 scenes', () => {
    const next = random(301);
    let within = 0;
    let cases = 0;
    for (let k = 0; k < 40; k++) {
      const { scene, pose } = randomScene(next, [0.4, 0.7, 1][k % 3]);
      const prepared = prepareStrokes(scene, TABLE, pose, STROKE);
      const standing = standingRoom(prepared);
      const grid = k % 2 === 0 ? { grid: { columns: 8, rows: 4 } } : {};
      const tally = shotShares(prepared, standing, [CUE], { shots: 700, ...grid });
      const truth = jitteredShares(prepared, standing, CUE, Math.ceil((200 * tally.shots) ** (1 / 3)), next);
      const [cue] = tally.cues;
      [cue.open, cue.cramped, cue.blocked].forEach((share, i) => {
        cases++;
        if (Math.abs(share - truth[i]) <= cue.error) within++;
      });
    }
    expect(cases).toBe(120);
    expect(within / cases).toBeGreaterThanOrEqual(0.99);
  });

  it('add up to one, also in every cell of the grid, and the cells to the whole', () => {
    const { scene, pose } = randomScene(random(302), 0.5);
    const prepared = prepareStrokes(scene, TABLE, pose, STROKE);
    const tally = shotShares(prepared, standingRoom(prepared), [CUE, { ...CUE, length: 1200 }], {
      shots: 5000,
      grid: { columns: 12, rows: 6 },
    });
    expect(tally.shots).toBe(72 * 72);
    for (const cue of tally.cues) expect(cue.open + cue.cramped + cue.blocked).toBeCloseTo(1, 12);
    const grid = tally.grid;
    if (grid === null) throw new Error('no grid');
    expect([grid.open.length, grid.cramped.length, grid.blocked.length]).toEqual([72, 72, 72]);
    grid.open.forEach((open, i) => {
      expect(open + grid.cramped[i] + grid.blocked[i]).toBeCloseTo(1, 12);
    });
    const mean = grid.open.reduce((sum, share) => sum + share, 0) / 72;
    expect(mean).toBeCloseTo(tally.cues[0].open, 12);
  });

  it('put a thing beside the cells that it matters to', () => {
    // A tall cupboard behind the end at +x, with room to stand before it: shots near that end suffer, those near the other do not.
    const cupboard = obstacle('cupboard', rectangle(1800, -500, 2200, 500));
    const scene = prepareStrokes(room(rectangle(-9000, -9000, 9000, 9000), [cupboard]), TABLE, POSE, STROKE);
    const tally = shotShares(scene, standingRoom(scene), [CUE], {
      shots: 20_000,
      grid: { columns: 4, rows: 2 },
    });
    expect(tally.grid?.open[0]).toBe(1);
    expect(tally.grid?.open[3]).toBeLessThan(0.95);
    expect(tally.holdBack[0].name).toBe('cupboard');
  });

  it('give examples that are what they are said to be, and the steepest elevation of the sample', () => {
    const next = random(303);
    let examples = 0;
    for (let k = 0; k < 20; k++) {
      const { scene, pose } = randomScene(next, 0.5);
      const prepared = prepareStrokes(scene, TABLE, pose, STROKE);
      const standing = standingRoom(prepared);
      const [cue] = shotShares(prepared, standing, [CUE], { shots: 1000 }).cues;
      for (const { x, y, phi } of cue.crampedShots) {
        const answer = answerShot(prepared, standing, CUE, x, y, phi);
        expect(answer.class).toBe('cramped');
        expect(answer.elevation).toBeLessThanOrEqual((cue.steepest ?? 0) + 1e-9);
        examples++;
      }
      for (const { x, y, phi } of cue.blockedShots) {
        expect(answerShot(prepared, standing, CUE, x, y, phi).class).toBe('blocked');
        examples++;
      }
      if (cue.blocked === 1) expect(cue.steepest).toBeNull();
      else expect(cue.steepest).toBeLessThanOrEqual(STROKE.maxElevation);
    }
    expect(examples).toBeGreaterThan(50);
  });

  it('count what holds shots back as single shots are told', () => {
    const next = random(304);
    for (let k = 0; k < 6; k++) {
      const { scene, pose } = randomScene(next, 0.5);
      const prepared = prepareStrokes(scene, TABLE, pose, STROKE);
      const standing = standingRoom(prepared);
      const tally = shotShares(prepared, standing, [CUE], { shots: 8000 });
      const counts = new Map<string, number>();
      const shots = 1500;
      for (let i = 0; i < shots; i++) {
        const [x, y] = [(2 * next() - 1) * prepared.qx, (2 * next() - 1) * prepared.qy];
        for (const name of answerShot(prepared, standing, CUE, x, y, next() * 2 * Math.PI).meets)
          counts.set(name, (counts.get(name) ?? 0) + 1);
      }
      for (const { name, share } of tally.holdBack) {
        const other = (counts.get(name) ?? 0) / shots;
        // Five standard deviations of 1,500 random shots, and the even sample's own error.
        expect(Math.abs(share - other)).toBeLessThan(5 * Math.sqrt((share * (1 - share)) / shots) + 0.01);
      }
    }
  });

  it('are the same on every run, and for a cue whoever is counted beside it', () => {
    const { scene, pose } = randomScene(random(305), 0.5);
    const prepared = prepareStrokes(scene, TABLE, pose, STROKE);
    const short = { ...CUE, length: 1100 };
    const both = shotShares(prepared, standingRoom(prepared), [CUE, short], { shots: 3000 });
    const again = shotShares(prepared, standingRoom(prepared), [CUE, short], { shots: 3000 });
    const alone = shotShares(prepared, standingRoom(prepared), [short], { shots: 3000 });
    expect(again).toEqual(both);
    expect(both.cues[1]).toEqual(alone.cues[0]);
  });

  it('are alike in a mirror, within the stated errors', () => {
    const next = random(306);
    for (let k = 0; k < 10; k++) {
      const { scene, pose } = randomScene(next, 0.5);
      const there = { x: pose.x, y: -pose.y, angle: -pose.angle };
      const here = prepareStrokes(scene, TABLE, pose, STROKE);
      const mirror = prepareStrokes(mirrored(scene), TABLE, there, STROKE);
      const [a] = shotShares(here, standingRoom(here), [CUE], { shots: 4000 }).cues;
      const [b] = shotShares(mirror, standingRoom(mirror), [CUE], { shots: 4000 }).cues;
      expect(Math.abs(a.open - b.open)).toBeLessThan(a.error + b.error);
      expect(Math.abs(a.blocked - b.blocked)).toBeLessThan(a.error + b.error);
    }
  });
});

describe('rooms out of the ordinary', () => {
  it('block everything where the table stands outside, and what starts within the margin of a wall', () => {
    const cue = [CUE];
    const outside = prepareStrokes(room(rectangle(5000, 5000, 9000, 9000)), TABLE, POSE, STROKE);
    expect(shotShares(outside, standingRoom(outside), cue, { shots: 200 }).cues[0].blocked).toBe(1);
    // A wall through the middle of the table.
    const across = prepareStrokes(room(rectangle(-4000, -4000, 0, 4000)), TABLE, POSE, STROKE);
    const tally = shotShares(across, standingRoom(across), cue, {
      shots: 4000,
      grid: { columns: 2, rows: 1 },
    });
    expect(tally.grid?.blocked[1]).toBe(1);
    expect(tally.grid?.open[0]).toBeGreaterThan(0.3);
  });

  it('cope with rooms of many corners', () => {
    const outline = Array.from({ length: 2000 }, (_, i): [number, number] => {
      const r = 3200 + 60 * Math.sin(i * 0.7) + (i % 2) * 15;
      return [r * Math.cos((i * Math.PI) / 1000), r * Math.sin((i * Math.PI) / 1000)];
    });
    const scene = prepareStrokes(room(outline), TABLE, POSE, STROKE);
    const circle = prepareStrokes(
      room(
        Array.from({ length: 64 }, (_, i) => [
          3200 * Math.cos((i * Math.PI) / 32),
          3200 * Math.sin((i * Math.PI) / 32),
        ]),
      ),
      TABLE,
      POSE,
      STROKE,
    );
    const rough = shotShares(scene, standingRoom(scene), [CUE], { shots: 1000 }).cues[0];
    const smooth = shotShares(circle, standingRoom(circle), [CUE], { shots: 1000 }).cues[0];
    expect(Math.abs(rough.open - smooth.open)).toBeLessThan(0.05);
  });
});
