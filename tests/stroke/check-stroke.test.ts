import { describe, expect, it } from 'vitest';
import { TABLES } from '../../src/equipment/tables.js';
import { InputError } from '../../src/input-error.js';
import { answerShot } from '../../src/stroke/answer-shot.js';
import { checkCue, checkStroke } from '../../src/stroke/check-stroke.js';
import { classifyShot } from '../../src/stroke/classify-shot.js';
import { prepareStrokes, withStroke } from '../../src/stroke/prepare-strokes.js';
import { shotShares } from '../../src/stroke/shot-shares.js';
import { standingRoom } from '../../src/stroke/standing.js';
import { box, CUE, obstacle, rectangle, room, STROKE, TABLE } from './scenes.js';

const table = TABLES['pool-9ft'];

function codes(run: () => unknown): readonly string[] {
  try {
    run();
  } catch (error) {
    if (error instanceof InputError) return error.problems.map(({ path, code }) => `${path} ${code}`);
    throw error;
  }
  return [];
}

describe('checkStroke', () => {
  it('fills in the defaults for the ball', () => {
    const settings = checkStroke(undefined, 57.15);
    expect(settings).toEqual(checkStroke({}, 57.15));
    expect(settings.tipOffset).toBeCloseTo(0.35 * (57.15 / 2), 12);
    expect(settings.maxElevation).toBeCloseTo((20 * Math.PI) / 180, 12);
  });

  it('reads lengths with their units', () => {
    expect(checkStroke({ backswing: '6 in', margin: '1 cm' }, 57.15)).toMatchObject({
      backswing: 152.4,
      margin: 10,
    });
  });

  it('refuses with every problem', () => {
    expect(codes(() => checkStroke({ backswing: 30, shortBackswing: 40, maxElevation: 0 }, 57.15))).toEqual([
      'stroke.shortBackswing short-backswing-too-long',
      'stroke.maxElevation too-small',
    ]);
  });
});

describe('checkCue', () => {
  it('takes a length, measurements, or the usual cue of the table', () => {
    expect(checkCue('57 in', table)).toMatchObject({ length: 1447.8 });
    expect(checkCue({ length: 1400, tipDiameter: 12, buttDiameter: 28 }, table)).toMatchObject({
      length: 1400,
      tipRadius: 6,
      buttRadius: 14,
    });
    expect(checkCue(undefined, table).length).toBe(table.usualCue);
  });

  it('refuses a cue that is a slip of the unit', () => {
    expect(codes(() => checkCue(57, table))).not.toEqual([]);
  });

  it('answers as classifyShot does from the same unchecked input', () => {
    const corners = rectangle(-2300, -1700, 2300, 1700);
    const stroke = { backswing: '20 cm', margin: 15 };
    const input = {
      room: { outline: corners },
      table: 'pool-9ft',
      stroke,
      pose: { x: 0, y: 0 },
      cue: '57 in',
    };
    const scene = prepareStrokes(
      room(corners, [], []),
      table,
      { x: 0, y: 0, angle: 0 },
      checkStroke(stroke, table.ballDiameter),
    );
    const standing = standingRoom(scene);
    for (const [x, y, degrees] of [
      [0, 0, 90],
      [900, -400, 350],
      [-1000, 450, 100],
    ] as const) {
      const phi = (degrees * Math.PI) / 180;
      const answer = answerShot(scene, standing, checkCue('57 in', table), x, y, phi);
      const whole = classifyShot({ ...input, ball: { x, y }, direction: degrees });
      expect(answer.class).toBe(whole.class);
      expect(answer.meets).toEqual(whole.meets);
      expect(answer.elevation === null ? null : (answer.elevation * 180) / Math.PI).toBe(whole.elevation);
    }
  });
});

describe('withStroke', () => {
  const things = [
    obstacle('shelf', box(-1500, 1300, 600, 300, 0), 0, 1900),
    obstacle('sofa', box(1200, -1450, 1500, 500, 0), 0, 850),
  ];
  const walls = room(rectangle(-2400, -1800, 2300, 1700), things, [
    { name: 'ceiling', height: 2300, slopeX: 0, slopeY: 0.1 },
  ]);
  const pose = { x: 40, y: -30, angle: 0.3 };

  it('is the scene that is prepared for that stroke, whatever the room is grown by', () => {
    for (const grow of [0, 10, -10]) {
      const before = prepareStrokes(walls, TABLE, pose, STROKE, grow);
      const other = { ...STROKE, backswing: 90, margin: 55 };
      expect(withStroke(before, other)).toEqual(prepareStrokes(walls, TABLE, pose, other, grow));
    }
  });

  it('is served by the standing room of the scene it came from', () => {
    const before = prepareStrokes(walls, TABLE, pose, STROKE);
    const standing = standingRoom(before);
    for (const margin of [0, 20, 80]) {
      const scene = withStroke(before, { ...STROKE, margin });
      const options = { shots: 2304, grid: { columns: 12, rows: 6 } };
      expect(shotShares(scene, standing, [CUE], options)).toEqual(
        shotShares(scene, standingRoom(scene), [CUE], options),
      );
    }
  });
});
