import { describe, expect, it } from 'vitest';
import {
  assessFit,
  checkRoom,
  classifyShot,
  compareTables,
  InputError,
  roomFromTape,
} from '../../src/index.js';
import type { TapeSurvey } from '../../src/room/tape-input.js';
import type { TapedRoomInput } from '../../src/room/tape-room.js';
import { codesOf, read, sceneOf } from './read.js';

/** 6 m along the first wall, 5 m along the second, both diagonals exact. */
const tape: TapeSurvey = {
  walls: [{ length: 6000 }, { length: 5000 }, { length: 6000 }, { length: 5000 }],
  diagonals: [
    { from: 'A', to: 'C', length: Math.hypot(6000, 5000) },
    { from: 'B', to: 'D', length: Math.hypot(6000, 5000) },
  ],
};

describe('a room by tape readings', () => {
  it('has the adjusted walls, named by their corners, each with its band as its tolerance', () => {
    const scene = sceneOf({ tape });
    const { walls } = roomFromTape(tape);
    // The walk is clockwise from A at the origin: up the left side first.
    expect(scene.outline.map((p) => p.map((v) => Math.round(v) + 0))).toEqual([
      [0, 0],
      [5000, 0],
      [5000, 6000],
      [0, 6000],
    ]);
    expect(scene.wallNames).toEqual(['wall D-A', 'wall C-D', 'wall B-C', 'wall A-B']);
    const band = (name: string) => walls.find((wall) => wall.name === name)?.band;
    expect(scene.wallTolerances).toEqual(scene.wallNames.map(band));
    expect(scene.tolerance).toBe(10);
  });

  it('says what was assumed, that of the readings too', () => {
    const { assumptions } = read({ tape });
    expect(assumptions.join('\n')).toContain('Directive 2014/32/EU');
    expect(assumptions).toContain('Measurements other than walls are taken to be within 10 mm (default).');
    expect(assumptions).toContain('No ceiling was given: none is considered.');
  });

  it('has the least height that was read as its ceiling, unless one is given', () => {
    const heights = ['2.52 m', { length: 2500, deviation: 3 }];
    const withHeights = { tape: { ...tape, heights } };
    expect(sceneOf(withHeights).ceiling).toEqual([{ name: 'ceiling', height: 2500, slopeX: 0, slopeY: 0 }]);
    expect(read(withHeights).assumptions.join('\n')).not.toContain('ceiling');
    expect(sceneOf({ ...withHeights, ceiling: 2300 }).ceiling[0].height).toBe(2300);
  });

  it('takes heights and furniture to be no surer than a ceiling that was read badly', () => {
    const room = { tape: { ...tape, heights: [{ length: 2500, deviation: 20 }] }, tolerance: 5 };
    // 1.96 standard deviations: the two-sided 95 % point of the normal distribution.
    expect(sceneOf(room).tolerance).toBeCloseTo(39.2, 1);
    expect(read(room).assumptions.join('\n')).toContain('within 40 mm');
    expect(sceneOf({ ...room, ceiling: 2500 }).tolerance).toBe(5);
  });

  it('takes doors along a wall, from its first corner in the order of the walk', () => {
    const door = { wall: 'B', start: 500, width: 900, opens: 'in' } as const;
    const [first, second] = sceneOf({
      tape,
      doors: [
        { ...door, hinge: 'start' },
        { ...door, wall: 'C', name: 'back door', hinge: 'end' },
      ],
    }).doors;
    const rounded = (points: readonly (readonly number[])[]) => points.map((p) => p.map(Math.round));
    // Wall B-C runs along the top to the right, wall C-D down the right side.
    expect(rounded([first.hinge, first.latch])).toEqual([
      [500, 6000],
      [1400, 6000],
    ]);
    expect(first.name).toBe('door 1');
    expect(rounded([second.hinge, second.latch])).toEqual([
      [5000, 4600],
      [5000, 5500],
    ]);
    // Both leaves open into the room.
    expect(first.swing?.every(([, y]) => y < 6001)).toBe(true);
    expect(second.swing?.every(([x]) => x < 5001)).toBe(true);
  });

  it('measures doors along the whole of a wall that is broken, or along a part by its own corner', () => {
    const broken: TapeSurvey = {
      ...tape,
      offsets: [{ kind: 'breast', wall: 'A', start: 1500, width: 1200, depth: 350 }],
    };
    const door = { width: 800, hinge: 'start', opens: 'out' } as const;
    const doors = [
      { ...door, wall: 'A', start: 4000 },
      { ...door, wall: 'A2', start: 200 },
    ];
    const [behind, onBreast] = sceneOf({ tape: broken, doors }).doors;
    expect(behind.hinge.map(Math.round)).toEqual([0, 4000]);
    expect(onBreast.hinge.map(Math.round)).toEqual([350, 1700]);
  });

  it('is refused with paths into the readings', () => {
    const walls = [{ length: 6000 }, { length: 5000 }, { length: 'x' }, { length: 5000 }];
    expect(codesOf({ tape: { ...tape, walls } })).toEqual([
      expect.stringMatching(/ @ room\.tape\.walls\[2\]\.length$/),
    ]);
    expect(codesOf({ tape, outline: [] })).toEqual(['unknown-property @ room.outline']);
    expect(codesOf({ tape, wallTolerances: [1, 1, 1, 1] })).toEqual([
      'unknown-property @ room.wallTolerances',
    ]);
    expect(codesOf({ tape: null })).toEqual(['not-an-object @ room.tape']);
    const door = { wall: 'B', start: 500, width: 900, hinge: 'start', opens: 'in' };
    const doorCodes = (changes: object) => codesOf({ tape, doors: [{ ...door, ...changes }] });
    expect(doorCodes({})).toEqual([]);
    expect(doorCodes({ wall: 'X' })).toEqual(['unknown-corner @ room.doors[0].wall']);
    expect(doorCodes({ start: 4500 })).toEqual(['door-beyond-wall @ room.doors[0]']);
    expect(doorCodes({ start: -1 })).toEqual(['implausible-length @ room.doors[0].start']);
    expect(doorCodes({ width: 90 })).toEqual(['door-width @ room.doors[0]']);
    expect(doorCodes({ hinge: [0, 0] })).toEqual(['unknown-word @ room.doors[0].hinge']);
    expect(doorCodes({ latch: [0, 0] })).toEqual(['unknown-property @ room.doors[0].latch']);
    const { wall, start, width, hinge, ...rest } = door;
    expect(codesOf({ tape, doors: [{ wall, ...rest }] })).toEqual([
      'missing @ room.doors[0].start',
      'missing @ room.doors[0].width',
      'missing @ room.doors[0].hinge',
    ]);
    // Only walls of a survey have corners with names.
    const outline = [
      [0, 0],
      [5000, 0],
      [5000, 6000],
    ];
    expect(codesOf({ outline, doors: [door] })).toContain('unknown-property @ room.doors[0].wall');
  });

  it('keeps the names of its walls for them', () => {
    const bench = { footprint: { center: [3000, 400], length: 900, width: 300 }, to: 450 };
    expect(codesOf({ tape, obstacles: [{ ...bench, name: 'Wall A-B' }] })).toEqual([
      'name-taken @ room.obstacles[0].name',
    ]);
    expect(codesOf({ tape, obstacles: [{ ...bench, name: 'wall E-F' }] })).toEqual([]);
  });
});

describe('questions about a room by tape readings', () => {
  const room: TapedRoomInput = { tape, ceiling: '2.5 m' };

  it('are answered with the confidence of the bands, the readings and what to repeat', () => {
    const report = assessFit({ room, table: 'pool-9ft', cues: ['1.62 m'] });
    expect(report.confidence).toBe(0.95);
    expect(report.survey).toMatchObject({ contradictory: false, suspect: null });
    expect(report.survey?.next.length).toBeGreaterThan(0);
    const { walls } = roomFromTape(tape);
    const ofWalls = report.limits.filter(({ kind }) => kind === 'wall');
    expect(ofWalls.length).toBeGreaterThan(0);
    for (const { name, repeat } of ofWalls) {
      expect(repeat).toEqual(walls.find((wall) => wall.name === name)?.repeat);
    }
    expect(JSON.parse(JSON.stringify(report))).toEqual(report);
    const { outline } = checkRoom(room);
    const plain = assessFit({ room: { outline }, table: 'pool-9ft', cues: ['1.62 m'] });
    expect(plain).not.toHaveProperty('confidence');
    expect(plain).not.toHaveProperty('survey');
    expect(plain.verdict).toBe(report.verdict);
  });

  it('name the reading that is probably wrong, with its kind', () => {
    const slip: TapeSurvey = { ...tape, walls: [{ length: 6400 }, ...tape.walls.slice(1)] };
    const report = assessFit({ room: { tape: slip }, table: 'pool-7ft-bar' });
    expect(report.survey).toMatchObject({
      contradictory: true,
      suspect: { reading: 'wall A-B', kind: 'wall', read: 6400 },
    });
    expect(Math.abs((report.survey?.suspect?.expected ?? 0) - 6000)).toBeLessThan(20);
  });

  it('go through the comparison of tables and single shots as well', () => {
    const comparison = compareTables({ room, tables: ['pool-7ft-bar'] });
    expect(comparison.confidence).toBe(0.95);
    expect(comparison.survey).toMatchObject({ contradictory: false });
    const ball = { x: 0, y: 0 };
    const pose = { x: 2500, y: 3000, turn: 90 };
    const shot = classifyShot({ room, table: 'pool-9ft', pose, ball, direction: 0 });
    expect(shot).toEqual(
      classifyShot({
        room: { outline: checkRoom(room).outline },
        table: 'pool-9ft',
        pose,
        ball,
        direction: 0,
      }),
    );
    const bad: TapedRoomInput = { tape: { walls: [] } };
    expect(() => compareTables({ room: bad, tables: ['pool-7ft-bar'] })).toThrow(InputError);
  });

  it('are surer where the readings are', () => {
    // A table that is 12 mm short of the clearance of a clear one: nearer than a tape reaches here, not a laser read five times.
    const certainBy = (deviation: number): boolean => {
      const reading = (length: number) => ({ length, deviation });
      const walls = [4500, 5000, 4500, 5000].map((length) => ({ length: reading(length) }));
      const across = reading(Math.hypot(4500, 5000));
      const diagonals = [
        { from: 'A', to: 'C', length: across },
        { from: 'B', to: 'D', length: across },
      ];
      const question = { table: 'pool-7ft-bar', cues: [1540], pose: { x: 2500, y: 2250 } } as const;
      return assessFit({ room: { tape: { walls, diagonals } }, ...question }).certain;
    };
    expect(certainBy(0.5)).toBe(true);
    expect(certainBy(40)).toBe(false);
  });
});
