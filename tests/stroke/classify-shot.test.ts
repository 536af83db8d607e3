import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/input-error.js';
import { type ClassifyInput, classifyShot } from '../../src/stroke/classify-shot.js';

const input = {
  room: {
    outline: [
      [0, 0],
      ['6 m', 0],
      [6000, 5000],
      [0, 5000],
    ],
    obstacles: [
      { name: 'sofa', footprint: { center: [3000, 4600], length: 2000, width: 800 }, to: 850 },
      { name: 'shelf', footprint: { center: [3000, 150], length: 2000, width: 300 }, from: 1300, to: 1500 },
      { name: 'pillar', footprint: { center: [4900, 2500], diameter: 300 } },
    ],
    ceiling: 2400,
  },
  table: {
    field: { length: 2235, width: 1118 },
    outer: { length: 2515, width: 1398 },
    ballDiameter: 57.15,
  },
  pose: { x: 3000, y: 2500 },
  cue: '57 in',
  ball: { x: 0, y: 0 },
  direction: 90,
} satisfies ClassifyInput;

function problemsOf(wrong: unknown): string[] {
  try {
    // What a stranger's program without types may hand over.
    Reflect.apply(classifyShot, undefined, [wrong]);
  } catch (error) {
    if (error instanceof InputError) return error.problems.map((p) => `${p.path} ${p.code}`);
    throw error;
  }
  throw new Error('no problem was found');
}

describe('classifyShot', () => {
  it('answers in degrees, by the words of the model', () => {
    // From the middle of the field the cue's butt comes to 28.6 + 150 + 1448 = 1626 mm; the sofa begins 1,700 mm away.
    const answer = classifyShot(input);
    expect(answer).toMatchObject({ class: 'open', canStand: true, meets: [] });
    expect(answer.elevation).toBe(answer.railElevation);
    expect(answer.railElevation).toBeGreaterThan(0.3);
    expect(answer.railElevation).toBeLessThan(2);
  });

  it('names what is in the way and raises the cue over it', () => {
    // Frozen on the cushion, the cue reaches over the sofa: at theta_rail it clears its top of 850 mm by far.
    const over = classifyShot({ ...input, ball: { x: 0, y: 530 } });
    expect(over).toMatchObject({ class: 'open', meets: [] });
    const pillar = classifyShot({ ...input, ball: { x: 1000, y: 0 }, direction: 0 });
    expect(pillar).toMatchObject({ class: 'blocked', elevation: null, meets: ['pillar'] });
    // 1,626 - 105 = 1,521 mm with the short swing; the pillar, grown by 20 mm, begins at 1,730 - x: raised to stop short.
    const raised = classifyShot({ ...input, ball: { x: 260, y: 0 }, direction: 0 });
    expect(raised).toMatchObject({ class: 'cramped', meets: ['pillar'] });
    const reach = 57.15 / 2 + 45 + 1447.8;
    expect(raised.elevation).toBeCloseTo((Math.acos((1900 - 150 - 20 - 260) / reach) * 180) / Math.PI, 0);
    const bare = { outline: input.room.outline };
    const toWall = classifyShot({ ...input, room: bare, ball: { x: 0, y: 530 } });
    expect(toWall.class).toBe('open');
    const short = classifyShot({ ...input, room: bare, pose: { x: 3000, y: 3000 }, ball: { x: 0, y: 530 } });
    expect(short).toMatchObject({ class: 'cramped', meets: ['wall 3'] });
  });

  it('turns with the table, takes its usual cue, and goes round with directions', () => {
    const turned = classifyShot({ ...input, pose: { x: 3000, y: 2500, turn: 90 }, direction: 0 });
    const same = classifyShot({ ...input, pose: { x: 3000, y: 2500, turn: -90 }, direction: 180 });
    expect(turned.class).toBe(same.class);
    expect(turned.elevation).toBeCloseTo(same.elevation ?? 99, 9);
    const { cue: _, ...without } = input;
    expect(classifyShot(without).class).toBe('open');
  });

  it('takes a ball against the nose, in any unit, and none beyond', () => {
    const mm = (1118 - 57.15) / 2;
    expect(classifyShot({ ...input, ball: { x: 0, y: `${mm / 25.4} in` } }).class).toBe('open');
    expect(problemsOf({ ...input, ball: { x: 0, y: mm + 0.01 } })).toEqual(['ball.y ball-off-table']);
    expect(problemsOf({ ...input, ball: { x: -2000, y: 2000 } })).toEqual([
      'ball.x ball-off-table',
      'ball.y ball-off-table',
    ]);
  });

  it('lists every problem at once', () => {
    const wrong = {
      room: { outline: [[0, 0]] },
      table: 'no such table',
      pose: { x: 'here', turn: 400, z: 1 },
      cue: -5,
      stroke: { margin: -1 },
      ball: { x: 0 },
      spin: 3,
    };
    const problems = problemsOf(wrong);
    for (const path of [
      'room.outline',
      'table',
      'pose.x',
      'pose.y',
      'pose.turn',
      'pose.z',
      'cue',
      'stroke.margin',
      'ball.y',
      'direction',
      'spin',
    ]) {
      expect(problems.filter((p) => p.startsWith(`${path} `))).toHaveLength(1);
    }
    expect(problemsOf(null)).toEqual([' not-an-object']);
    expect(problemsOf({ ...input, direction: Number.NaN })).toEqual(['direction not-a-number']);
  });
});
