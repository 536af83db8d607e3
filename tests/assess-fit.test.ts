import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assessFit } from '../src/assess-fit.js';
import { checkRoom } from '../src/check-fit-input.js';
import { compareTables } from '../src/compare-tables.js';
import type { FitInput } from '../src/fit-input.js';
import { InputError } from '../src/input-error.js';
import type { FitReport } from '../src/report/fit-report.js';
import type { ObstacleInput, PointInput, RoomInput } from '../src/room/room-input.js';

/** An L-shaped room with a pillar, a sideboard, a wall cupboard, a sloping ceiling and a door; sizes vary. */
const rooms: fc.Arbitrary<RoomInput> = fc
  .record({
    length: fc.integer({ min: 3600, max: 7200 }),
    width: fc.integer({ min: 3000, max: 5600 }),
    nook: fc.integer({ min: 600, max: 2000 }),
    pillar: fc.tuple(fc.integer({ min: 400, max: 3000 }), fc.integer({ min: 400, max: 2600 })),
    sideboard: fc.integer({ min: 400, max: 1100 }),
    eaves: fc.integer({ min: 1100, max: 2400 }),
  })
  .map(({ length, width, nook, pillar, sideboard, eaves }) => ({
    outline: [
      [0, 0],
      [length, 0],
      [length, width],
      [nook, width],
      [nook, width + 1200],
      [0, width + 1200],
    ],
    ceiling: [
      [
        [0, 0, eaves],
        [1000, 0, eaves],
        [0, 1000, eaves + 700],
      ],
      [
        [0, 0, 2600],
        [1000, 0, 2600],
        [0, 1000, 2600],
      ],
    ],
    obstacles: [
      { name: 'pillar', footprint: { center: pillar, diameter: 250 } },
      {
        name: 'sideboard',
        footprint: { center: [length - 225, width / 2], length: 450, width: 1400 },
        to: sideboard,
        movable: true,
      },
      {
        name: 'cupboard',
        footprint: { center: [length / 2, width - 150], length: 900, width: 300 },
        from: 1300,
        to: 2100,
      },
    ],
    doors: [{ name: 'door', hinge: [0, width + 300], latch: [0, width + 1100], opens: 'in' as const }],
  }));

const ask = (room: RoomInput, more: Partial<FitInput> = {}): FitReport =>
  assessFit({ room, table: 'pool-8ft-home', cues: [1448, 1219], ...more });

const RANK = { clear: 0, tight: 1, partial: 2, none: 3 } as const;

/** What must hold of every report, whatever was asked. */
function expectSound(report: FitReport): void {
  // Plain JSON: nothing is lost on the way, so no NaN, Infinity or undefined is in it.
  expect(JSON.parse(JSON.stringify(report))).toEqual(report);
  const { clearance, cues, verdict, certain } = report;
  expect(clearance.value).toBeLessThanOrEqual(clearance.upperBound);
  expect(clearance.longestCue).toBeLessThanOrEqual(clearance.longestCueUpperBound);
  expect([verdict, certain]).toEqual([cues[0].verdict, cues[0].certain]);
  for (const cue of cues) {
    const { open, cramped, blocked } = cue.shares;
    expect(open + cramped + blocked).toBeCloseTo(1, 9);
    if (cue.verdict === 'clear') expect([open, cue.shareError]).toEqual([1, 0]);
    if (cue.verdict === 'tight') expect(blocked).toBe(0);
    if (cue.proof === 'shot') expect(cue.verdict).toBe('partial');
    if (cue.verdict === 'partial' && cue.proof === 'shot') expect(blocked).toBeGreaterThan(0);
    if (cue.verdict === 'none') expect(cue.proof).toBe('standing');
  }
  if (!certain && verdict !== 'none')
    expect(report.limits.some((l) => l.measureAgain) || cues[0].proof === 'resolution').toBe(true);
  if (verdict === 'clear') expect(report.advice).toEqual([]);
  for (const advice of report.advice) expect(Math.abs(advice.gain)).toBeLessThanOrEqual(1);
}

describe('every report', () => {
  test('is sound, and the same for the same question', () => {
    fc.assert(
      fc.property(rooms, (room) => {
        const report = ask(room);
        expectSound(report);
        expect(ask(room)).toEqual(report);
      }),
      { seed: 21, numRuns: 12 },
    );
  });

  test('does not hang on the order of the obstacles, the direction of the outline or its first corner', () => {
    fc.assert(
      fc.property(rooms, fc.integer({ min: 1, max: 5 }), (room, shift) => {
        const report = ask(room);
        const turned = [...room.outline.slice(shift), ...room.outline.slice(0, shift)].reverse();
        const shuffled = ask({ ...room, outline: turned, obstacles: [...(room.obstacles ?? [])].reverse() });
        expect(shuffled.verdict).toBe(report.verdict);
        expect(shuffled.pose).toEqual(report.pose);
        expect(shuffled.clearance.value).toBeCloseTo(report.clearance.value, 6);
      }),
      { seed: 22, numRuns: 8 },
    );
  });

  test('moves with the room', () => {
    fc.assert(
      fc.property(
        rooms,
        fc.integer({ min: -90000, max: 90000 }),
        fc.integer({ min: -90000, max: 90000 }),
        (room, dx, dy) => {
          const report = ask(room);
          const moved = ask(translatedRoom(room, dx, dy));
          expect(moved.verdict).toBe(report.verdict);
          expect(Math.abs(moved.clearance.value - report.clearance.value)).toBeLessThanOrEqual(1);
          expect(moved.clearance.upperBound).toBeGreaterThanOrEqual(report.clearance.value - 1e-5);
          expect(moved.cues[0].shares.open).toBeCloseTo(report.cues[0].shares.open, 2);
        },
      ),
      { seed: 23, numRuns: 8 },
    );
  });

  test('never gets better by a longer cue or by one more thing at a given pose', () => {
    fc.assert(
      fc.property(rooms, fc.integer({ min: 1000, max: 1500 }), (room, length) => {
        const { pose } = ask(room);
        if (pose === null) return;
        const [long, short] = ask(room, { pose, cues: [length + 60, length] }).cues;
        expect(RANK[long.verdict]).toBeGreaterThanOrEqual(RANK[short.verdict]);
        const bare = ask({ ...room, obstacles: [] }, { pose }).cues[0];
        const full = ask(room, { pose }).cues[0];
        expect(RANK[full.verdict]).toBeGreaterThanOrEqual(RANK[bare.verdict]);
      }),
      { seed: 24, numRuns: 12 },
    );
  });
});

describe('a given pose', () => {
  test('is judged as it is', () => {
    const room: RoomInput = { outline: rectangle(6000, 5000) };
    const report = ask(room, { pose: { x: 2600, y: '250 cm', turn: 190 } });
    expect(report.pose?.x).toBe(2600);
    expect(report.pose?.turn).toBeCloseTo(10, 9);
    expect(report.clearance.upperBound).toBe(report.clearance.value);
    expectSound(report);
  });

  test('in the wall, over furniture or in a door swing is no place, and the report names what is there', () => {
    const room: RoomInput = {
      outline: rectangle(6000, 5000),
      obstacles: [{ name: 'stool', footprint: { center: [3000, 2500], diameter: 300 }, to: 450 }],
      doors: [{ name: 'door', hinge: [0, 1000], latch: [0, 1900], opens: 'in' }],
    };
    const named = (x: number, y: number, turn = 0): readonly string[] => {
      const report = ask(room, { pose: { x, y, turn } });
      expect(report.verdict).toBe('none');
      expectSound(report);
      return report.limits.map((l) => l.name);
    };
    expect(named(3000, 2500)).toEqual(['stool']);
    expect(named(1300, 1500, 90)).toEqual(['door']);
    expect(named(5500, 1500)).toContain('wall 2');
    expect(named(9000, 9000)).not.toEqual([]);
  });
});

describe('a table that does not go in', () => {
  test('is none, with the room or what takes its floor as the limit', () => {
    const small = ask({ outline: rectangle(2300, 2000) });
    expect([small.verdict, small.certain, small.pose]).toEqual(['none', true, null]);
    expect(small.limits.map((l) => l.kind)).toEqual(['room']);
    expectSound(small);
    const full = ask({
      outline: rectangle(3000, 2400),
      obstacles: [{ name: 'organ', footprint: { center: [1500, 1200], length: 600, width: 600 } }],
    });
    expect(full.verdict).toBe('none');
    expect(full.limits.map((l) => l.name)).toEqual(['organ']);
    expectSound(full);
  });

  test('hangs on the tolerance when it is a few millimetres', () => {
    // The outer rectangle of this table in a room of its own size, less and more than the tolerance of 10 mm.
    const table = { field: { length: 2000, width: 1000 }, outer: { length: 2250, width: 1250 } };
    const asked = (length: number) => assessFit({ room: { outline: rectangle(length, 1400) }, table });
    expect([asked(2240).verdict, asked(2240).certain]).toEqual(['none', false]);
    expect([asked(2220).verdict, asked(2220).certain]).toEqual(['none', true]);
  });
});

describe('the search', () => {
  const room: RoomInput = { outline: rectangle(6200, 5000) };

  test('reports bounds as it goes, stops when told to, and leaves valid bounds', () => {
    const free = ask(room);
    const seen: { value: number; upperBound: number }[] = [];
    const stopped = ask(room, {
      search: {
        onProgress: (p) => {
          seen.push(p);
          return false;
        },
      },
    });
    expect(seen.length).toBeGreaterThan(0);
    for (const { value, upperBound } of seen) expect(value).toBeLessThanOrEqual(upperBound);
    expect(stopped.clearance.upperBound).toBeGreaterThanOrEqual(free.clearance.value - 1e-6);
    expectSound(stopped);
  });

  test('keeps within its boxes and says so', () => {
    const odd: RoomInput = {
      outline: [
        [0, 0],
        [6300, 250],
        [5900, 4900],
        [300, 5200],
      ],
    };
    const short = ask(odd, { search: { maxBoxes: 1 } });
    const full = ask(odd);
    expect(short.clearance.upperBound).toBeGreaterThanOrEqual(full.clearance.value - 1e-6);
    expect(short.assumptions.some((a) => a.includes('stopped'))).toBe(true);
    expect(full.clearance.upperBound - full.clearance.value).toBeLessThanOrEqual(1 + 1e-6);
  });

  test('over square turns alone does not speak for the others', () => {
    // Largest clearance of a slender rectangle w x h in a square room A: (2 A - (w + h) sqrt 2) / 4 at 45 degrees, (A - w) / 2 square.
    const table = { field: { length: 2057.15, width: 457.15 }, outer: { length: 2300, width: 700 } };
    const asked = (turns: 'any' | 'square') =>
      assessFit({ room: { outline: rectangle(5000, 5000) }, table, cues: [1380], search: { turns } });
    const any = asked('any');
    expect(any.verdict).toBe('clear');
    expect(any.pose?.turn).toBeCloseTo(45, 6);
    expect(any.clearance.value).toBeCloseTo((10000 - 2400 * Math.SQRT2) / 4, 0);
    const square = asked('square');
    expect(square.verdict).not.toBe('clear');
    expect(square.clearance.value).toBeCloseTo(1500, 3);
    expect(square.clearance.clearNowhere).toBe(false);
  });

  test('centres the table in a room that is long enough', () => {
    const { pose } = ask({ outline: rectangle(9000, 5000) });
    expect(pose?.x).toBeCloseTo(4500, 3);
    expect(pose?.y).toBeCloseTo(2500, 3);
    expect(pose?.turn).toBe(0);
  });
});

describe('advice keeps its word', () => {
  const room: RoomInput = {
    outline: rectangle(5350, 4400),
    obstacles: [
      {
        name: 'the cabinet',
        footprint: { center: [5050, 250], length: 600, width: 500 },
        to: 1800,
        movable: true,
      },
    ],
  };
  const pose = { x: 2675, y: 2200 };
  const report = ask(room, { pose, cues: [1448] });

  test('is given for a room that is not clear', () => {
    expect(report.verdict).not.toBe('clear');
    expect(report.advice.map((a) => a.kind)).toEqual(
      expect.arrayContaining(['shorter-cue', 'smaller-table']),
    );
  });

  test('the shorter cue brings its verdict', () => {
    const advice = report.advice.find((a) => a.kind === 'shorter-cue');
    expect(ask(room, { pose, cues: [advice?.amount ?? 0] }).verdict).toBe(advice?.verdict);
  });

  test('the smaller table is clear', () => {
    const advice = report.advice.find((a) => a.kind === 'smaller-table');
    expect(assessFit({ room, table: advice?.table ?? '', cues: [1448] }).verdict).toBe('clear');
  });

  test('the longer room brings its verdict', () => {
    const short = ask({ outline: rectangle(5100, 4000) }, { cues: [1448] });
    const { along = 0, across = 0, verdict } = short.advice.find((a) => a.kind === 'longer-room') ?? {};
    // What is missing by the tape-measure arithmetic, rounded up to the millimetre.
    expect([along, across]).toEqual([
      Math.ceil(-short.spans.along.spare),
      Math.ceil(-short.spans.across.spare),
    ]);
    const larger: RoomInput = { outline: rectangle(5100 + along, 4000 + across) };
    const there = { x: 2550 + along / 2, y: 2000 + across / 2 };
    expect(ask(larger, { pose: there, cues: [1448] }).verdict).toBe(verdict);
    expect(verdict).toBe('clear');
  });

  test('the movable thing is named with what moving it brings', () => {
    const near: ObstacleInput = {
      name: 'the armchair',
      footprint: { center: [3000, 4300], length: 700, width: 700 },
      to: 1100,
      movable: true,
    };
    const wide: RoomInput = { outline: rectangle(6500, 6000), obstacles: [near] };
    const found = ask(wide, { pose: { x: 3000, y: 2400 }, cues: [1448] });
    const move = found.advice.find((a) => a.kind === 'move-obstacle');
    expect(move?.obstacle).toBe('the armchair');
    const to = {
      ...near,
      footprint: { center: [3000, 4300 + (move?.amount ?? 0)] as const, length: 700, width: 700 },
    };
    const after = ask(
      { ...wide, obstacles: move?.amount === undefined ? [] : [to] },
      { pose: { x: 3000, y: 2400 }, cues: [1448] },
    );
    expect(after.verdict).toBe(move?.verdict);
    expect(after.cues[0].shares.open - found.cues[0].shares.open).toBeCloseTo(move?.gain ?? 0, 1);
  });
});

describe('bad input', () => {
  test('comes back as one error with every problem and its path', () => {
    const bad = {
      room: {
        outline: [
          [0, 0],
          [4.5, 0],
          [4.5, 3.6],
          [0, 3.6],
        ],
      },
      table: 'pool-9feet',
      cues: ['wide'],
      detail: 'all',
    };
    const error = caught(() => ask(JSON.parse(JSON.stringify(bad.room)), JSON.parse(JSON.stringify(bad))));
    expect(error.problems.map((p) => p.path.split(/[.[]/)[0]).sort()).toEqual(
      expect.arrayContaining(['cues', 'detail', 'room', 'table']),
    );
    for (const problem of error.problems) expect(error.message).toContain(problem.message);
  });
});

describe('the map of shots', () => {
  const mean = (cells: readonly number[]): number => cells.reduce((a, b) => a + b, 0) / cells.length;

  test('adds up to the shares of the wanted cue', () => {
    const report = ask({ outline: rectangle(4600, 3600) }, { detail: 'shots' });
    const { shots, cues } = report;
    if (shots === undefined) throw new Error('no map');
    expect(shots.open).toHaveLength(shots.columns * shots.rows);
    expect(mean(shots.open)).toBeCloseTo(cues[0].shares.open, 9);
    expect(mean(shots.cramped)).toBeCloseTo(cues[0].shares.cramped, 9);
    expect(mean(shots.blocked)).toBeCloseTo(cues[0].shares.blocked, 9);
    expect(cues[0].shareError).toBeLessThan(0.01);
    expectSound(report);
  });

  test('is all open, without a sample, where distances prove it', () => {
    const { verdict, shots } = ask({ outline: rectangle(8000, 7000) }, { detail: 'shots' });
    expect([verdict, shots?.shots, mean(shots?.open ?? [])]).toEqual(['clear', 0, 1]);
    expect(ask({ outline: rectangle(8000, 7000) }).shots).toBeUndefined();
  });
});

describe('a checked room', () => {
  test('is what the parts take, or comes back with every problem', () => {
    const scene = checkRoom({ outline: rectangle(5000, 4000).reverse(), tolerance: '5 mm' });
    expect(scene.outline).toEqual(rectangle(5000, 4000));
    expect(scene.tolerance).toBe(5);
    const error = caught(() =>
      checkRoom({
        outline: [
          [0, 0],
          [5, 0],
        ],
        tolerance: -1,
      }),
    );
    expect(error.problems.map((p) => p.path)).toEqual(
      expect.arrayContaining(['room.outline', 'room.tolerance']),
    );
  });
});

describe('comparing tables', () => {
  test('gives one row a table, the same as asking for each alone', () => {
    const room: RoomInput = { outline: rectangle(5600, 4400) };
    const tables = ['pool-9ft', 'pool-8ft-home', 'snooker-12ft'];
    const { rows } = compareTables({ room, tables, cues: [1448, 1219] });
    rows.forEach((row, i) => {
      const alone = assessFit({ room, table: tables[i], cues: [1448, 1219] });
      expect(row.table.id).toBe(tables[i]);
      expect(row.pose).toEqual(alone.pose);
      expect(row.clearance).toEqual(alone.clearance);
      expect(row.cues.map((c) => c.verdict)).toEqual(alone.cues.map((c) => c.verdict));
    });
  });

  test('says which of several tables is wrong, and what is wrong with the room once', () => {
    const error = caught(() =>
      compareTables({
        room: {
          outline: [
            [0, 0],
            [5000, 0],
          ],
        },
        tables: ['pool-9ft', 'nonesuch'],
      }),
    );
    const paths = error.problems.map((p) => p.path);
    expect(paths).toContain('tables[1]');
    expect(paths.filter((p) => p.startsWith('room')).length).toBe(
      new Set(paths.filter((p) => p.startsWith('room'))).size,
    );
    expect(
      caught(() => compareTables({ room: { outline: rectangle(5000, 4000) }, tables: [] })).problems,
    ).toHaveLength(1);
  });
});

function caught(run: () => unknown): InputError {
  try {
    run();
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('nothing was thrown');
}

function rectangle(length: number, width: number): PointInput[] {
  return [
    [0, 0],
    [length, 0],
    [length, width],
    [0, width],
  ];
}

/** The same room somewhere else in the plan; all lengths are numbers. */
function translatedRoom(room: RoomInput, dx: number, dy: number): RoomInput {
  const move = ([x, y]: PointInput): PointInput => [Number(x) + dx, Number(y) + dy];
  return {
    ...room,
    outline: room.outline.map(move),
    ceiling: Array.isArray(room.ceiling)
      ? room.ceiling.map((face) => face.map(([x, y, z]: [number, number, number]) => [x + dx, y + dy, z]))
      : (room.ceiling ?? 3000),
    obstacles: (room.obstacles ?? []).map((o) =>
      'center' in o.footprint ? { ...o, footprint: { ...o.footprint, center: move(o.footprint.center) } } : o,
    ),
    doors: (room.doors ?? []).map((d) => ({ ...d, hinge: move(d.hinge), latch: move(d.latch) })),
  };
}
