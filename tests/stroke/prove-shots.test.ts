import { describe, expect, it } from 'vitest';
import type { Ring } from '../../src/geometry/types.js';
import type { Scene, SceneObstacle } from '../../src/room/scene.js';
import { boundShares } from '../../src/stroke/box-shares.js';
import { StrokeClassifier } from '../../src/stroke/classify-traced.js';
import { prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import { proveShots, type ShotProof } from '../../src/stroke/prove-shots.js';
import { shotShares } from '../../src/stroke/shot-shares.js';
import { standingRoom } from '../../src/stroke/standing.js';
import type { ShotCode, StrokeCue, StrokeScene } from '../../src/stroke/stroke-scene.js';
import { ShotTrace } from '../../src/stroke/trace-shot.js';
import { between, CUE, obstacle, random, randomScene, rectangle, room, STROKE, TABLE } from './scenes.js';

const POSE = { x: 0, y: 0, angle: 0 };
const OPTIONS = { maxBoxes: 20_000, resolution: 5 };

const R = TABLE.ballDiameter / 2;
const QX = TABLE.field.length / 2 - R;
const QY = TABLE.field.width / 2 - R;
/** From a frozen ball's centre to the outside of the rail. */
const TO_RIM = TABLE.outer.length / 2 - QX;
const ELL = R + STROKE.backswing + CUE.length;
const ELL_SHORT = R + STROKE.shortBackswing + CUE.length;

/** An empty room whose walls are all d from Q. */
function around(d: number, obstacles: readonly SceneObstacle[] = []): Scene {
  return room(rectangle(-QX - d, -QY - d, QX + d, QY + d), obstacles);
}

function prove(
  scene: Scene,
  target: 'open' | 'playable',
  change: { stroke?: Partial<typeof STROKE>; cue?: StrokeCue; maxBoxes?: number } = {},
): ShotProof {
  const strokes = prepareStrokes(scene, TABLE, POSE, { ...STROKE, ...change.stroke });
  const options = { ...OPTIONS, maxBoxes: change.maxBoxes ?? OPTIONS.maxBoxes };
  return proveShots(strokes, standingRoom(strokes), change.cue ?? CUE, target, options);
}

function classOf(strokes: StrokeScene, cue: StrokeCue, u: number, v: number, phi: number): ShotCode {
  const classifier = new StrokeClassifier(strokes, cue);
  const trace = new ShotTrace(strokes, classifier.ell);
  trace.follow(u, v, Math.cos(phi), Math.sin(phi));
  return classifier.classify(trace, standingRoom(strokes));
}

/** theta_rail of a ball frozen square to the cushion, by the model's formula: nose at R, crest 50 mm on, rim at TO_RIM. */
function frozenRail(cue = CUE): number {
  const over = (t: number, height: number): number => {
    const rise = height - R;
    const radius = cue.tipRadius + ((cue.buttRadius - cue.tipRadius) * (t - R)) / cue.length;
    return Math.atan2(rise, t) + Math.asin((radius - STROKE.tipOffset) / Math.hypot(t, rise));
  };
  return Math.max(over(R, TABLE.noseHeight), over(R + 50, TABLE.railHeight), over(TO_RIM, TABLE.railHeight));
}

describe('proveShots', () => {
  // Closed form: with walls at the distance d from Q all round, the shots nearest to not being open are frozen balls played
  // square to a wall, whose cue reaches ell cos(theta_rail).
  it('proves all open from ell cos(theta_rail) + a on, where the level proof still fails', () => {
    const enough = ELL * Math.cos(frozenRail()) + STROKE.margin;
    const level = ELL + STROKE.margin;
    expect(level - enough).toBeGreaterThan(9);
    expect(prove(around(level), 'open').outcome).toBe('proved');
    expect(prove(around(level - 1), 'open').outcome).toBe('proved');
    expect(prove(around(enough + 1), 'open').outcome).toBe('proved');
    expect(prove(around(enough - 0.01), 'open').outcome).toBe('refuted');
  });

  // algorithms.md 4.1: walls alone ask for ell cos(theta_max), here with the short backswing and the margin.
  it("proves all playable from ell' cos(theta_max) + a on, to the hundredth of a millimetre", () => {
    for (const degrees of [14, 20, 25]) {
      const maxElevation = (degrees * Math.PI) / 180;
      const enough = ELL_SHORT * Math.cos(maxElevation) + STROKE.margin;
      expect(prove(around(enough + 0.01), 'playable', { stroke: { maxElevation } }).outcome).toBe('proved');
      expect(prove(around(enough - 0.01), 'playable', { stroke: { maxElevation } }).outcome).toBe('refuted');
    }
  });

  it('names a shot that fails', () => {
    const scene = around(1300);
    const { shot, outcome } = prove(scene, 'playable');
    expect(outcome).toBe('refuted');
    const strokes = prepareStrokes(scene, TABLE, POSE, STROKE);
    expect(shot).toBeDefined();
    if (shot !== undefined) expect(classOf(strokes, CUE, shot.u, shot.v, shot.phi)).toBe(2);
  });

  // algorithms.md 4.2: boxes on the prolongation of the side of a chimney breast are what bounds find hard.
  it('closes the boxes beside a chimney breast', () => {
    const breast = (d: number): Ring => [
      [-QX - 1800, -QY - 1800],
      [QX + d + 350, -QY - 1800],
      [QX + d + 350, -400],
      [QX + d, -400],
      [QX + d, 500],
      [QX + d + 350, 500],
      [QX + d + 350, QY + 1800],
      [-QX - 1800, QY + 1800],
    ];
    const open = ELL * Math.cos(frozenRail()) + STROKE.margin;
    const playable = ELL_SHORT * Math.cos(STROKE.maxElevation) + STROKE.margin;
    expect(prove(room(breast(open + 2)), 'open').outcome).toBe('proved');
    expect(prove(room(breast(open - 0.01)), 'open').outcome).toBe('refuted');
    expect(prove(room(breast(playable + 2)), 'playable').outcome).toBe('proved');
    expect(prove(room(breast(playable - 0.01)), 'playable').outcome).toBe('refuted');
  });

  // A post is cued over at theta_max where t0 sin - H cos >= a - b. It is slim enough to stand beside it.
  it('finds how near a post of a given height may stand', () => {
    const sin = Math.sin(STROKE.maxElevation);
    const cos = Math.cos(STROKE.maxElevation);
    for (const top of [880, 930, 1000]) {
      const rise = top - TABLE.bedHeight - R;
      const over = (STROKE.margin - STROKE.tipOffset + rise * cos) / sin;
      const enough = Math.min(over, ELL_SHORT * cos) + STROKE.margin;
      const post = (d: number): SceneObstacle =>
        obstacle('post', rectangle(QX + d, -30, QX + d + 60, 30), 0, top);
      expect(enough).toBeGreaterThan(TO_RIM);
      expect(prove(around(2500, [post(enough + 2)]), 'playable').outcome).toBe('proved');
      expect(prove(around(2500, [post(enough - 0.01)]), 'playable').outcome).toBe('refuted');
    }
  });

  // A lamp is cued under at theta_rail where (a + b) / cos + t1 tan <= from - bedHeight - R. A cue without taper asks for most
  // when the ball is frozen and played square to the cushion (at a slant a taper would ask for more).
  it('finds how low a lamp beside the table may hang', () => {
    const cue = { ...CUE, tipRadius: 8, buttRadius: 8 };
    const theta = frozenRail(cue);
    const t1 = TO_RIM + 100 + STROKE.margin;
    const rise = (STROKE.margin + STROKE.tipOffset) / Math.cos(theta) + t1 * Math.tan(theta);
    const enough = TABLE.bedHeight + R + rise;
    const lamp = (from: number): SceneObstacle =>
      obstacle('lamp', rectangle(QX + TO_RIM, -50, QX + TO_RIM + 100, 50), from, 2000);
    expect(prove(around(2500, [lamp(enough + 3)]), 'open', { cue }).outcome).toBe('proved');
    expect(prove(around(2500, [lamp(enough - 0.1)]), 'open', { cue }).outcome).toBe('refuted');
    // With a short backswing and the same least elevation nothing changes.
    expect(prove(around(2500, [lamp(enough - 0.1)]), 'playable', { cue }).outcome).toBe('refuted');
  });

  // Model: what lies below the rail's top, margin included, lies under every cue.
  it('never minds a low shelf that all cues pass over', () => {
    const shelf = (top: number): SceneObstacle =>
      obstacle('shelf', rectangle(QX + TO_RIM + 25, -900, QX + TO_RIM + 60, 900), 0, top);
    const railTop = TABLE.bedHeight + TABLE.railHeight;
    const d = ELL + 100;
    expect(prove(around(d, [shelf(railTop - STROKE.margin)]), 'open').outcome).toBe('proved');
    expect(prove(around(d, [shelf(railTop + STROKE.margin)]), 'open').outcome).toBe('refuted');
    // It takes no more boxes than no shelf at all, once it takes no floor.
    const withShelf = prepareStrokes(around(d, [shelf(railTop - STROKE.margin)]), TABLE, POSE, STROKE);
    const noFloor: StrokeScene = { ...withShelf, stance: { ...withShelf.stance, parts: [] } };
    expect(proveShots(noFloor, standingRoom(noFloor), CUE, 'open', OPTIONS)).toEqual(
      prove(around(d), 'open'),
    );
  });

  // A player beside the rail needs a strip twice the disc's radius wide.
  it('asks for a strip of 460 mm to stand in', () => {
    const cue = { ...CUE, length: 600 };
    const stroke = { maxElevation: Math.PI / 6 };
    expect(prove(around(TO_RIM + 460.01), 'playable', { cue, stroke }).outcome).toBe('proved');
    expect(prove(around(TO_RIM + 459.99), 'playable', { cue, stroke }).outcome).toBe('refuted');
  });

  it('stops at the number of boxes that it is allowed', () => {
    const tight = around(ELL * Math.cos(frozenRail()) + STROKE.margin + 1);
    const proof = prove(tight, 'open', { maxBoxes: 50 });
    expect(proof.outcome).toBe('undecided');
    expect(proof.boxes).toBeLessThanOrEqual(51);
    expect(proof.shot).toBeUndefined();
  });

  it('stays undecided below the resolution, never claims', () => {
    const hardly = around(ELL * Math.cos(frozenRail()) + STROKE.margin + 0.001);
    expect(prove(hardly, 'open').outcome).not.toBe('refuted');
    const strokes = prepareStrokes(hardly, TABLE, POSE, STROKE);
    const coarse = { maxBoxes: 20_000, resolution: 100 };
    expect(proveShots(strokes, standingRoom(strokes), CUE, 'open', coarse).outcome).toBe('undecided');
  });

  // Seed 41: rooms with bays, furniture, slopes, and cues from short to long.
  it('agrees with exact classes of shots in random rooms, and proves or refutes nearly always', () => {
    const next = random(41);
    const outcomes = { proved: 0, refuted: 0, undecided: 0 };
    for (let n = 0; n < 60; n++) {
      const { scene, pose } = randomScene(next, between(next, 0.8, 3));
      const cue = { ...CUE, length: between(next, 700, 1300) };
      const strokes = prepareStrokes(scene, TABLE, pose, STROKE);
      const standing = standingRoom(strokes);
      const classifier = new StrokeClassifier(strokes, cue);
      const trace = new ShotTrace(strokes, classifier.ell);
      for (const target of ['open', 'playable'] as const) {
        const { outcome, shot } = proveShots(strokes, standing, cue, target, OPTIONS);
        outcomes[outcome]++;
        const worst = target === 'open' ? 0 : 1;
        if (shot !== undefined) {
          expect(classOf(strokes, cue, shot.u, shot.v, shot.phi)).toBeGreaterThan(worst);
        }
        for (let k = 0; outcome === 'proved' && k < 1000; k++) {
          const edge = next() < 0.5 ? 1 : 1 - next();
          const u = edge * QX * Math.sign(next() - 0.5);
          const v = QY * between(next, -1, 1);
          const phi = 2 * Math.PI * next();
          trace.follow(u, v, Math.cos(phi), Math.sin(phi));
          expect(classifier.classify(trace, standing)).toBeLessThanOrEqual(worst);
        }
      }
    }
    expect(outcomes.proved).toBeGreaterThan(15);
    expect(outcomes.refuted).toBeGreaterThan(30);
    expect(outcomes.undecided).toBeLessThan(4);
  });

  // A stricter room (greater e) can only lose proofs, a kinder one only gain them. Seed 43.
  it('keeps its proofs when the room grows kinder', () => {
    const next = random(43);
    const rank = { refuted: 0, undecided: 1, proved: 2 };
    for (let n = 0; n < 25; n++) {
      const { scene, pose } = randomScene(next, between(next, 1.5, 3));
      const cue = { ...CUE, length: between(next, 700, 1000) };
      const at = (grow: number): number => {
        const strokes = prepareStrokes(scene, TABLE, pose, STROKE, grow);
        return rank[proveShots(strokes, standingRoom(strokes), cue, 'playable', OPTIONS).outcome];
      };
      const strict = at(10);
      const plain = at(0);
      const kind = at(-10);
      // Proved in the stricter room: never refuted in the kinder one, and the other way round.
      if (strict === 2) expect(plain).toBeGreaterThan(0);
      if (plain === 2) expect(kind).toBeGreaterThan(0);
      if (kind === 0) expect(plain).toBeLessThan(2);
      if (plain === 0) expect(strict).toBeLessThan(2);
    }
  });
});

describe('boundShares', () => {
  // Seed 47. The sample's own error is its estimate; the bounds are certified.
  it('holds the sampled shares of random rooms', () => {
    const next = random(47);
    for (let n = 0; n < 8; n++) {
      const { scene, pose } = randomScene(next, 1.6);
      const strokes = prepareStrokes(scene, TABLE, pose, STROKE);
      const standing = standingRoom(strokes);
      const bounds = boundShares(strokes, standing, CUE, { maxBoxes: 3000, eps: 0.02 });
      const [tally] = shotShares(strokes, standing, [CUE], { shots: 20_000 }).cues;
      for (const code of ['open', 'cramped', 'blocked'] as const) {
        expect(tally[code]).toBeGreaterThanOrEqual(bounds[code].lo - tally.error);
        expect(tally[code]).toBeLessThanOrEqual(bounds[code].hi + tally.error);
        expect(bounds[code].hi - bounds[code].lo).toBeLessThan(0.5);
      }
    }
  });

  // algorithms.md 3: in a rectangle with no corner in reach, the share of level strokes kept free of walls is
  // 1 - (1 / pi) sum over walls of the mean of acos(y / X), y the distance to the wall less a, with X the reach.
  it('brackets the closed form of a rectangular room', () => {
    const d = 1200;
    // A rail so low that every stroke is level, and a theta_max that allows no more than that.
    const table = { ...TABLE, noseHeight: 20, railHeight: 20 };
    const stroke = { ...STROKE, maxElevation: 1e-9, shortBackswing: STROKE.backswing, tipOffset: 20 };
    const cue = { ...CUE, length: 1300 };
    const x = R + stroke.backswing + cue.length;
    const strokes = prepareStrokes(around(d), table, POSE, stroke);
    const everywhere: StrokeScene = { ...strokes, stance: { ...strokes.stance, radius: 0, parts: [] } };
    const antiderivative = (y: number): number =>
      y >= x ? 0 : y * Math.acos(y / x) - Math.sqrt(x * x - y * y);
    const mean = (size: number): number => (antiderivative(d - 20 + size) - antiderivative(d - 20)) / size;
    const share = 1 - (2 * (mean(2 * QX) + mean(2 * QY))) / Math.PI;
    const bounds = boundShares(everywhere, standingRoom(everywhere), cue, { maxBoxes: 6000, eps: 0.02 });
    expect(bounds.open.lo).toBeLessThanOrEqual(share);
    expect(bounds.open.hi).toBeGreaterThanOrEqual(share);
    expect(bounds.open.hi - bounds.open.lo).toBeLessThan(0.1);
    expect(bounds.cramped.lo).toBe(0);
  });
});
