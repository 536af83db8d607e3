import { describe, expect, it } from 'vitest';
import { arrange } from '../../src/arrangement/arrange.js';
import type { Arranged } from '../../src/arrangement/arrange-question.js';
import type { FurnishingInput } from '../../src/arrangement/furnishing-input.js';
import { layoutValue } from '../../src/arrangement/layout-value.js';
import type { Point } from '../../src/geometry/types.js';
import type { RoomInput } from '../../src/room/room-input.js';
import { seeded } from '../helpers/external-random.js';
import {
  type ArrangeCase,
  mirroredRoom,
  movedRoom,
  questionOf,
  somePieces,
  someRoom,
} from './arrange-cases.js';

const EFFORT = 12;
/**
 * Coordinates are rounded to 0.00001 mm on their way into the search's frame and out of it. That changes the shared part of a zone of 100 mm
 * or more by two in ten million, and its weight is 5.
 */
const ROUNDING = 1e-6;

function caseOf(seed: number): ArrangeCase {
  const random = seeded(seed * 7919);
  const room = someRoom(random, [3600, 3200], [7500, 5600]);
  return { room, furnishings: somePieces(random, 1 + Math.floor(random() * 5)) };
}

const cases = Array.from({ length: 4 }, (_, i) => ({ name: `case ${i + 1}`, ...caseOf(i + 1) }));
const found = new Map<ArrangeCase, Arranged>();

/** Of a case as it stands; looked for once. */
function arranged(asked: ArrangeCase): Arranged {
  const known = found.get(asked) ?? arrange(questionOf(asked, { effort: EFFORT }));
  found.set(asked, known);
  return known;
}

describe('the same room seen otherwise', () => {
  /** Rooms of tenths of a millimetre and whole right angles: a frame brings them back to the same numbers, to 0.00001 mm. */
  const views: readonly (readonly [string, (room: RoomInput) => RoomInput])[] = [
    ['in a mirror', mirroredRoom],
    ['moved', (room) => movedRoom(room, 0, [1234.5, -777])],
    ['turned a quarter', (room) => movedRoom(room, 1, [0, 0])],
    ['turned three quarters in a mirror', (room) => movedRoom(mirroredRoom(room), 3, [40.3, 7])],
  ];

  const seen = cases.flatMap((asked, i) =>
    views
      .filter((_, k) => (i + k) % 2 === 0)
      .map(([how, view]) => ({ name: `${asked.name} ${how}`, asked, view })),
  );

  it.each(seen)('has layouts of the same value: $name', ({ asked, view }) => {
    const { value } = arranged(asked);
    const other = arrange(questionOf({ ...asked, room: view(asked.room) }, { effort: EFFORT }));
    expect(Math.abs(other.value.value - value.value)).toBeLessThanOrEqual(ROUNDING);
    expect(other.value.placed).toBe(value.placed);
  });
});

describe('the search', () => {
  it.each(cases)('answers the same for the same question: $name', (asked) => {
    expect(arrange(questionOf(asked, { effort: EFFORT }))).toEqual(arranged(asked));
  });

  it.each(cases)('is worth no less than one layout, and weighs no more than it may: $name', (asked) => {
    const one = arrange(questionOf(asked, { effort: 1 }));
    expect(one.layouts).toBe(1);
    expect(one.value.value).toBeLessThanOrEqual(arranged(asked).value.value + ROUNDING);
    expect(arranged(asked).layouts).toBeLessThanOrEqual(EFFORT);
  });

  it.each(cases)('is never worth less than the layout it starts from: $name', (asked) => {
    const start = arranged(asked);
    const again = arrange({ ...questionOf(asked, { effort: 1 }), start });
    expect(again.value.value).toBeGreaterThanOrEqual(start.value.value - ROUNDING);
    // A poor one, with nothing in the room but the table, is a start as well.
    const poor = { tablePose: start.tablePose, poses: start.poses.map(() => null) };
    const question = questionOf(asked, { effort: 2 });
    const better = arrange({ ...question, start: poor });
    expect(better.value.value).toBeGreaterThanOrEqual(layoutValue(question, poor).value - ROUNDING);
  });

  it('stops where it is told to, with the best layout so far, and tells of ever better ones', () => {
    const [asked] = cases;
    for (const calls of [1, 3]) {
      const values: number[] = [];
      const layouts: number[] = [];
      const stopped = arrange(
        questionOf(asked, {
          effort: EFFORT,
          onProgress: (progress) => {
            values.push(progress.value);
            layouts.push(progress.layouts);
            return values.length < calls;
          },
        }),
      );
      expect(values).toHaveLength(calls);
      expect(stopped.stopped).toBe(true);
      expect(stopped.layouts).toBe(calls);
      expect(layouts).toEqual(Array.from({ length: calls }, (_, i) => i + 1));
      expect(values).toEqual([...values].sort((a, b) => a - b));
      expect(Math.abs(stopped.value.value - values[calls - 1])).toBeLessThanOrEqual(ROUNDING);
    }
    expect(arranged(asked).stopped).toBe(false);
  });

  it('tells of each layout that it weighs', () => {
    const [asked] = cases;
    let told = 0;
    const { layouts } = arrange(
      questionOf(asked, {
        effort: EFFORT,
        onProgress: () => {
          told++;
          return undefined;
        },
      }),
    );
    expect(told).toBe(layouts);
  });
});

function roomOf(length: number, width: number): RoomInput {
  const outline: readonly Point[] = [
    [0, 0],
    [length, 0],
    [length, width],
    [0, width],
  ];
  return { outline, doors: [{ hinge: [0, 300], latch: [0, 1200], opens: 'out' }], ceiling: 2600 };
}

describe('poses that are given', () => {
  it.each(cases)('stay to the last bit, the table and pieces: $name', (asked) => {
    const sofa: FurnishingInput = {
      kind: 'sofa',
      name: 'given sofa',
      pose: { x: 1700.3, y: 600.7, turn: 33 },
    };
    const given = questionOf(
      { ...asked, furnishings: [sofa, ...asked.furnishings], pose: { x: 2000.25, y: 1600.1, turn: 12 } },
      { effort: 3 },
    );
    const { tablePose, poses } = arrange(given);
    expect(tablePose).toEqual(given.pose);
    expect(poses[0]).toEqual(given.arrangement.pieces[0].pose);
  });

  it('stay where something is wrong there, and count as not placed', () => {
    const sofa: FurnishingInput = { kind: 'sofa', pose: { x: 100, y: 2000, turn: 0 } };
    const given = questionOf(
      { room: roomOf(6000, 4800), furnishings: [sofa, { kind: 'stool' }] },
      { effort: 5 },
    );
    const { poses, value } = arrange(given);
    expect(poses[0]).toEqual(given.arrangement.pieces[0].pose);
    expect(value.placed).toBe(0.5);
  });
});

describe('heights', () => {
  /** Where it is given: in the reach of cues behind the table's head rail. */
  function playBeside(height: number): number {
    const thing: FurnishingInput = {
      name: 'thing',
      footprint: { length: 1500, width: 400 },
      height,
      zones: [],
      pose: { x: 5400, y: 2600, turn: 90 },
    };
    const room = roomOf(7400, 5200);
    return arrange(
      questionOf({ room, furnishings: [thing], pose: { x: 3200, y: 2600, turn: 0 } }, { effort: 1 }),
    ).value.play;
  }

  it('make a bench of 450 mm cost less play than a cupboard of 2 m, and a higher thing never less', () => {
    const plays = [450, 700, 900, 1200, 2000].map(playBeside);
    expect(plays).toEqual([...plays].sort((a, b) => b - a));
    expect(plays[0]).toBeGreaterThan(plays[4]);
  });

  it('hang a lamp over the middle of the table, turned with it', () => {
    const { tablePose, poses } = arrange(
      questionOf(
        { room: roomOf(6000, 4800), furnishings: [{ kind: 'lamp' }, { kind: 'sofa' }] },
        { effort: 5 },
      ),
    );
    expect(tablePose).not.toBeNull();
    expect([poses[0]?.x, poses[0]?.y]).toEqual([tablePose?.x, tablePose?.y]);
    expect(Math.abs(Math.sin((poses[0]?.angle ?? 1) - (tablePose?.angle ?? 0)))).toBeLessThan(1e-9);
  });
});
