import { describe, expect, it } from 'vitest';
import type { Placement } from '../../src/geometry/types.js';
import type { Scene } from '../../src/room/scene.js';
import { type AnsweredShot, answerShot } from '../../src/stroke/answer-shot.js';
import { prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import { standingRoom } from '../../src/stroke/standing.js';
import type { StrokeCue } from '../../src/stroke/stroke-scene.js';
import type { StrokeSettings } from '../../src/stroke/stroke-settings.js';
import {
  between,
  CUE,
  mirrored,
  moved,
  obstacle,
  type Random,
  random,
  randomConvex,
  randomScene,
  STROKE,
  TABLE,
} from './scenes.js';

/** Laws that every shot must keep, whatever the room: the same ones that hold for the cue and the room themselves. */

interface Shot {
  readonly x: number;
  readonly y: number;
  readonly phi: number;
}

const RANK = { open: 0, cramped: 1, blocked: 2 };

function judge(
  scene: Scene,
  pose: Placement,
  shots: readonly Shot[],
  cue: StrokeCue = CUE,
  stroke: StrokeSettings = STROKE,
  grow = 0,
): AnsweredShot[] {
  const prepared = prepareStrokes(scene, TABLE, pose, stroke, grow);
  const room = standingRoom(prepared);
  return shots.map(({ x, y, phi }) => answerShot(prepared, room, cue, x, y, phi));
}

function randomShots(next: Random, count: number): Shot[] {
  const qx = TABLE.field.length / 2 - TABLE.ballDiameter / 2;
  const qy = TABLE.field.width / 2 - TABLE.ballDiameter / 2;
  return Array.from({ length: count }, () => ({
    x: between(next, -qx, qx),
    y: (next() < 0.3 ? Math.sign(next() - 0.5) : between(next, -1, 1)) * qy,
    phi: next() * 2 * Math.PI,
  }));
}

/** Answers agree, but for shots that rounding alone may tip; there are hardly any. */
function expectSame(some: readonly AnsweredShot[], others: readonly AnsweredShot[]): void {
  some.forEach((a, i) => {
    const b = others[i];
    expect(b.class).toBe(a.class);
    expect(b.canStand).toBe(a.canStand);
    expect(new Set(b.meets)).toEqual(new Set(a.meets));
    expect(b.elevation === null).toBe(a.elevation === null);
    if (a.elevation !== null && b.elevation !== null) expect(b.elevation).toBeCloseTo(a.elevation, 9);
    if (a.railElevation !== null && b.railElevation !== null)
      expect(b.railElevation).toBeCloseTo(a.railElevation, 9);
  });
}

describe('a shot is judged alike', () => {
  it('wherever room and table are carried and however they are turned', () => {
    const next = random(101);
    for (let k = 0; k < 60; k++) {
      const { scene, pose } = randomScene(next, 0.6);
      const shots = randomShots(next, 60);
      const by = {
        x: between(next, -9000, 9000),
        y: between(next, -9000, 9000),
        angle: next() * 2 * Math.PI,
      };
      const cos = Math.cos(by.angle);
      const sin = Math.sin(by.angle);
      const there = {
        x: by.x + cos * pose.x - sin * pose.y,
        y: by.y + sin * pose.x + cos * pose.y,
        angle: pose.angle + by.angle,
      };
      expectSame(judge(scene, pose, shots), judge(moved(scene, by), there, shots));
    }
  });

  it('in a mirror', () => {
    const next = random(102);
    for (let k = 0; k < 60; k++) {
      const { scene, pose } = randomScene(next, 0.6);
      const shots = randomShots(next, 60);
      const there = { x: pose.x, y: -pose.y, angle: -pose.angle };
      expectSame(
        judge(scene, pose, shots),
        judge(
          mirrored(scene),
          there,
          shots.map(({ x, y, phi }) => ({ x, y: -y, phi: -phi })),
        ),
      );
    }
  });

  it('after half a turn of the table', () => {
    const next = random(103);
    for (let k = 0; k < 60; k++) {
      const { scene, pose } = randomScene(next, 0.6);
      const shots = randomShots(next, 60);
      const there = { ...pose, angle: pose.angle + Math.PI };
      expectSame(
        judge(scene, pose, shots),
        judge(
          scene,
          there,
          shots.map(({ x, y, phi }) => ({ x: -x, y: -y, phi: phi + Math.PI })),
        ),
      );
    }
  });
});

describe('a shot never gets better', () => {
  const worse = (before: readonly AnsweredShot[], after: readonly AnsweredShot[]): void =>
    before.forEach((a, i) => {
      expect(RANK[after[i].class]).toBeGreaterThanOrEqual(RANK[a.class]);
      if (!a.canStand) expect(after[i].canStand).toBe(false);
      const [from, to] = [a.elevation ?? 9, after[i].elevation ?? 9];
      expect(to).toBeGreaterThanOrEqual(from - 1e-12);
    });

  it('when something is put into the room', () => {
    const next = random(111);
    for (let k = 0; k < 80; k++) {
      const { scene, pose } = randomScene(next, 0.8);
      const shots = randomShots(next, 40);
      const phi = next() * 2 * Math.PI;
      const away = between(next, 800, 1900);
      const ring = randomConvex(next, away * Math.cos(phi), away * Math.sin(phi), between(next, 50, 400));
      const from = next() < 0.5 ? 0 : between(next, 800, 1800);
      const more = obstacle('more', ring, from, from + between(next, 50, 1500));
      worse(
        judge(scene, pose, shots),
        judge({ ...scene, obstacles: [...scene.obstacles, more] }, pose, shots),
      );
    }
  });

  it('when every boundary moves in', () => {
    const next = random(112);
    for (let k = 0; k < 80; k++) {
      const { scene, pose } = randomScene(next, 0.7);
      const shots = randomShots(next, 40);
      const e = between(next, -30, 20);
      worse(
        judge(scene, pose, shots, CUE, STROKE, e),
        judge(scene, pose, shots, CUE, STROKE, e + between(next, 0, 30)),
      );
    }
  });

  // With a longer swing or cue, a far rail may come within reach, and raise theta_rail: over a low thing behind it the full stroke
  // may then pass where it did not. So `open` is compared where theta_rail stays what it was; playable at all, always.
  const neverMorePlayable = (before: readonly AnsweredShot[], after: readonly AnsweredShot[]): number => {
    let better = 0;
    before.forEach((a, i) => {
      const b = after[i];
      if (a.class === 'blocked') expect(b.class).toBe('blocked');
      if (a.railElevation === b.railElevation) expect(RANK[b.class]).toBeGreaterThanOrEqual(RANK[a.class]);
      else expect(b.railElevation ?? 9).toBeGreaterThan(a.railElevation ?? 9);
      if (RANK[b.class] < RANK[a.class]) better++;
    });
    return better;
  };

  it('with a longer backswing', () => {
    const next = random(113);
    for (let k = 0; k < 80; k++) {
      const { scene, pose } = randomScene(next, 0.7);
      const shots = randomShots(next, 40);
      const longer = { ...STROKE, backswing: between(next, 150, 300) };
      neverMorePlayable(judge(scene, pose, shots), judge(scene, pose, shots, CUE, longer));
      const longerShort = { ...STROKE, shortBackswing: between(next, 45, 150) };
      worse(judge(scene, pose, shots), judge(scene, pose, shots, CUE, longerShort));
    }
  });

  it('with a longer cue of one thickness, as far as the cue alone goes', () => {
    const next = random(114);
    for (let k = 0; k < 80; k++) {
      const { scene, pose } = randomScene(next, 0.7);
      const shots = randomShots(next, 40);
      const cueAlone = (length: number): AnsweredShot[] =>
        judge(scene, pose, shots, { length, tipRadius: 12, buttRadius: 12 }).map((a) => {
          const open = a.meets.every((name) => name === 'standing room');
          return { ...a, class: a.elevation === null ? 'blocked' : open ? 'open' : 'cramped' };
        });
      const length = between(next, 700, 1500);
      neverMorePlayable(cueAlone(length), cueAlone(length + between(next, 0, 200)));
    }
  });
});

describe('the answer', () => {
  it('names what is in the way, and nothing for an open shot', () => {
    const next = random(121);
    const seen = new Set<string>();
    for (let k = 0; k < 60; k++) {
      const { scene, pose } = randomScene(next, 0.5);
      for (const answer of judge(scene, pose, randomShots(next, 40))) {
        expect(answer.meets.length === 0).toBe(answer.class === 'open');
        expect(answer.meets.includes('standing room')).toBe(!answer.canStand);
        if (answer.class !== 'blocked') expect(answer.elevation).not.toBeNull();
        for (const name of answer.meets) seen.add(name.replace(/ \d+$/, ''));
      }
    }
    expect([...seen].sort()).toEqual(['ceiling', 'lamp', 'slope', 'standing room', 'thing', 'wall']);
  });

  it('names the rail where it is steeper than an ordinary stroke may be', () => {
    const { scene, pose } = randomScene(random(122), 1);
    const qy = TABLE.field.width / 2 - TABLE.ballDiameter / 2;
    const flat = { ...STROKE, maxElevation: (3 * Math.PI) / 180 };
    const [answer] = judge(scene, pose, [{ x: 0, y: qy, phi: Math.PI / 2 }], CUE, flat);
    expect(answer.class).toBe('blocked');
    expect(answer.elevation).toBeNull();
    expect(answer.meets).toContain('the rail');
    expect(answer.railElevation).toBeGreaterThan(flat.maxElevation);
  });
});
