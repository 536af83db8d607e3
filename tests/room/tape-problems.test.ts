import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/input-error.js';
import { ProblemList } from '../../src/length/read-input.js';
import { readTapeSurvey, roomFromTape } from '../../src/room/room-from-tape.js';

const WALLS = [{ length: 5000 }, { length: 4000 }, { length: 5000 }, { length: 4000 }] as const;
const walls = (...lengths: readonly unknown[]): object => ({ walls: lengths.map((length) => ({ length })) });
const also = (more: object): object => ({ walls: WALLS, ...more });
const diagonal = (more: object): object =>
  also({ diagonals: [{ from: 'A', to: 'C', length: 6403, ...more }] });
const angle = (more: object): object =>
  also({ angles: [{ corner: 'B', before: 1200, after: 1600, across: 2000, ...more }] });
const offset = (...more: readonly object[]): object =>
  also({
    offsets: more.map((one) => ({ kind: 'breast', wall: 'A', start: 1000, width: 1500, depth: 350, ...one })),
  });
const wall = (more: object): object => ({ walls: [{ length: 5000, ...more }, ...WALLS.slice(1)] });

function read(value: unknown, path = 'tape') {
  const problems = new ProblemList();
  const assumptions: string[] = [];
  const room = readTapeSurvey(value, path, problems, assumptions);
  return { room, problems: problems.problems, assumptions };
}

/** What is wrong, the survey, and the problems in order. */
const DEFECTS: readonly (readonly [string, unknown, ...string[]])[] = [
  ['nothing', undefined, 'not-an-object @ tape'],
  ['a list', [], 'not-an-object @ tape'],
  ['no walls', {}, 'missing @ tape.walls'],
  ['an unknown property', also({ corners: [] }), 'unknown-property @ tape.corners'],
  ['walls that are no list', { walls: 4 }, 'not-a-list @ tape.walls'],
  ['no wall', { walls: [] }, 'too-few-walls @ tape.walls'],
  ['two walls', walls(4000, 4000), 'too-few-walls @ tape.walls'],
  ['too many walls', walls(...Array.from({ length: 121 }, () => 1000)), 'too-many @ tape.walls'],
  ['a wall without a length', wall({ length: undefined }), 'missing @ tape.walls[0].length'],
  [
    'lengths that cannot be read',
    walls('4 furlongs', Number.NaN, null, 4000),
    'unknown-unit @ tape.walls[0].length',
    'not-a-number @ tape.walls[1].length',
    'not-an-object @ tape.walls[2].length',
  ],
  [
    'metres for millimetres',
    walls(5, 4, 5, 4),
    ...[0, 1, 2, 3].map((i) => `implausible-length @ tape.walls[${i}].length`),
  ],
  ['no readings at all', wall({ length: { length: [] } }), 'missing @ tape.walls[0].length.length'],
  [
    'a reading without its length',
    wall({ length: { by: 'laser' } }),
    'missing @ tape.walls[0].length.length',
  ],
  [
    'an unknown means',
    wall({ length: { length: 5000, by: 'eye' } }),
    'unknown-word @ tape.walls[0].length.by',
  ],
  [
    'a deviation of nothing',
    wall({ length: { length: 5000, deviation: 0 } }),
    'implausible-length @ tape.walls[0].length.deviation',
  ],
  [
    'readings of one wall 103 mm apart',
    wall({ length: { length: [5000, 5001, 5103] } }),
    'readings-disagree @ tape.walls[0].length.length',
  ],
  [
    'a bad one of several',
    wall({ length: { length: [5000, '5 stone'] } }),
    'unknown-unit @ tape.walls[0].length.length[1]',
  ],
  ['an unknown corner kind', wall({ corner: 'square' }), 'unknown-word @ tape.walls[0].corner'],
  ['a corner of 0 degrees', wall({ corner: 0 }), 'too-small @ tape.walls[0].corner'],
  ['a corner of 360 degrees', wall({ corner: 360 }), 'too-large @ tape.walls[0].corner'],
  [
    'a deviation of a whole turn',
    wall({ cornerDeviation: 360 }),
    'too-large @ tape.walls[0].cornerDeviation',
  ],
  ['an unknown walk', also({ walk: 'left' }), 'unknown-word @ tape.walk'],
  ['an unknown class', also({ tapeClass: 2 }), 'unknown-word @ tape.tapeClass'],
  ['an unknown means of all', also({ by: 'eye' }), 'unknown-word @ tape.by'],
  ['two corners of one name', wall({ from: 'b' }), 'name-taken @ tape.walls[1].from'],
  ['an empty name', wall({ from: ' ' }), 'empty-name @ tape.walls[0].from'],
  ['corners that cannot close', walls(4000, 4000, 4000), 'corners-cannot-close @ tape.walls'],
  [
    'an L without its external corner',
    walls(5000, 4000, 2000, 2000, 3000, 2000),
    'corners-cannot-close @ tape.walls',
  ],
  ['a wall longer than all others', walls(5000, 4000, 50_000, 4000), 'wall-too-long @ tape.walls[2].length'],
  ['a wall ten times too short', walls(5000, 400, 5000, 4000), 'survey-does-not-close @ tape.walls'],
  ['a diagonal to nowhere', diagonal({ to: 'E' }), 'unknown-corner @ tape.diagonals[0].to'],
  [
    'a diagonal without ends',
    diagonal({ from: undefined, to: 7 }),
    'not-text @ tape.diagonals[0].from',
    'not-text @ tape.diagonals[0].to',
  ],
  ['a diagonal to its own start', diagonal({ to: 'A' }), 'same-corner @ tape.diagonals[0].to'],
  [
    'a diagonal longer than the way round',
    diagonal({ length: 9100 }),
    'distance-too-long @ tape.diagonals[0].length',
  ],
  [
    'a diagonal too short for its walls',
    diagonal({ length: 640 }),
    'distance-too-short @ tape.diagonals[0].length',
  ],
  [
    'a diagonal between neighbours that is another length',
    diagonal({ to: 'B', length: 5100 }),
    'readings-disagree @ tape.diagonals[0].length',
  ],
  ['an angle of an unknown corner', angle({ corner: 'Z' }), 'unknown-corner @ tape.angles[0].corner'],
  ['three distances that make no triangle', angle({ across: 3000 }), 'no-triangle @ tape.angles[0]'],
  ['three distances along one line', angle({ across: 2797 }), 'flat-triangle @ tape.angles[0]'],
  [
    'a mark beyond its wall',
    angle({ before: 5200, across: 5440 }),
    'mark-beyond-wall @ tape.angles[0].before',
  ],
  ['an angle without across', angle({ across: undefined }), 'missing @ tape.angles[0].across'],
  ['an unknown offset', offset({ kind: 'niche' }), 'unknown-word @ tape.offsets[0].kind'],
  ['an offset on an unknown wall', offset({ wall: 'Q' }), 'unknown-corner @ tape.offsets[0].wall'],
  ['an offset wider than its wall', offset({ width: 4500 }), 'offset-too-wide @ tape.offsets[0].width'],
  ['offsets that overlap', offset({}, { start: 2400 }), 'offsets-overlap @ tape.offsets[1].start'],
  ['a breast with a front', offset({ front: 1400 }), 'front-without-bay @ tape.offsets[0].front'],
  ['a bay that widens', offset({ kind: 'bay', front: 1600 }), 'front-too-wide @ tape.offsets[0].front'],
  [
    'a breast through the other wall',
    offset({ depth: 4100 }),
    'outline-crosses-itself @ tape.walls',
    'outline-crosses-itself @ tape.walls',
  ],
  ['a ceiling for mice', also({ heights: [240] }), 'implausible-length @ tape.heights[0]'],
  [
    'many at once',
    {
      walls: [{ length: 5 }, { length: 4000, corner: 'sharp' }],
      diagonals: [{ from: 'A', to: 'C' }],
      by: 'eye',
    },
    'unknown-word @ tape.by',
    'implausible-length @ tape.walls[0].length',
    'unknown-word @ tape.walls[1].corner',
    'missing @ tape.diagonals[0].length',
  ],
];

describe('what is wrong with a survey', () => {
  it.each(DEFECTS)('%s', (_, survey, ...expected) => {
    const { room, problems } = read(survey);
    expect(problems.map(({ code, path }) => `${code} @ ${path}`)).toEqual(expected);
    expect(room).toBeNull();
    for (const { message } of problems) expect(message).toMatch(/^[A-Z"].*[.?]$/s);
  });

  it('is thrown with every problem, from the survey itself', () => {
    const survey = { walls: [{ length: 5000, from: 'A' }, { length: 4 }] };
    expect(() => roomFromTape(survey)).toThrow(InputError);
    expect(() => roomFromTape(survey)).toThrow('walls[1].length');
  });

  it('names the corners that there are', () => {
    expect(read(diagonal({ to: 'E' })).problems[0].message).toContain('"A", "B", "C" and "D"');
  });

  it('says what was probably meant by a number without its unit', () => {
    expect(read(walls(5, 4, 5, 4)).problems[0].message).toContain('"5 m"');
  });

  it('says which wall would close the room, and in which unit', () => {
    const [{ message }] = read(walls(5000, 400, 5000, 4000)).problems;
    expect(message).toContain('wall B-C were about 4000 mm');
    expect(message).toContain('"400 cm"');
    expect(message).toContain('wall D-A were about 400 mm');
  });

  it('counts the external corners that are missing', () => {
    const [{ message }] = read(walls(5000, 4000, 2000, 2000, 3000, 2000)).problems;
    expect(message).toContain('540 degrees');
    expect(message).toContain('720');
    expect(message).toContain('1 more corner should be "external"');
  });

  it('takes names in any case for one another only where they are the same corner twice', () => {
    expect(read(diagonal({ to: 'c' })).problems.map(({ code }) => code)).toEqual(['unknown-corner']);
  });

  it('does not read getters and instances', () => {
    const survey = {
      get walls() {
        return WALLS;
      },
    };
    expect(read(survey).problems.map(({ code }) => code)).toContain('not-plain-data');
    expect(read(new Map()).problems.map(({ code }) => code)).toEqual(['not-plain-data']);
  });
});

describe('what a survey may say', () => {
  it('text with units, repeats, and means of its own', () => {
    const { room, problems } = read({
      walls: [
        { from: 'door', length: '5.00 m' },
        { from: 'window', length: { length: ['13\' 1 1/2"', '13ft 1 1/2in'], by: 'laser' } },
        { from: 'stove', length: { length: '500 cm', deviation: '4 mm' } },
        { from: 'shelf', length: { length: 4000, by: 'estimate' } },
      ],
      diagonals: [{ from: 'stove', to: 'door', length: 6403 }],
      heights: ['2.40 m', '239.5 cm'],
    });
    expect(problems).toEqual([]);
    expect(room?.readings.map(({ by }) => by).slice(0, 5)).toEqual([
      'tape',
      'laser',
      'tape',
      'estimate',
      'tape',
    ]);
    expect(room?.readings[1].read).toBeCloseTo(4000.5, 9);
    expect(room?.readings[2].deviation).toBeCloseTo(4, 12);
    expect(room?.readings[4].name).toBe('diagonal door-stove');
    expect(room?.ceiling?.height).toBeCloseTo(2395, 9);
  });

  it('a diagonal between neighbours: the wall read again', () => {
    const { room } = read(also({ diagonals: [{ from: 'B', to: 'A', length: 5004 }] }));
    const again = room?.readings[4];
    expect(again?.name).toBe('wall A-B (2)');
    // Two readings of one wall, equally good, and hardly anything else that checks it.
    expect(room?.readings[0].adjusted).toBeCloseTo(5002, 1);
  });

  it('lists what it assumed, once, in the caller`s list and in the room', () => {
    const { room, assumptions } = read(offset({}));
    expect(assumptions).toEqual(room?.assumptions);
    expect(assumptions.some((text) => text.includes('square'))).toBe(true);
    expect(assumptions.some((text) => text.includes('2014/32/EU'))).toBe(true);
    expect(assumptions.some((text) => text.includes('straight wall'))).toBe(true);
  });
});

describe('whatever is read', () => {
  const length = fc.oneof(
    { weight: 6, arbitrary: fc.integer({ min: 300, max: 9000 }) },
    {
      weight: 1,
      arbitrary: fc.constantFrom(
        12,
        150_000,
        '4.2 m',
        '420 cm',
        { length: [4000, 4003], by: 'laser' },
        4.2,
        'x',
      ),
    },
  );
  const corner = fc.constantFrom('internal', 'internal', 'internal', 'external', 60, 135, 200);
  const name = fc.constantFrom('A', 'B', 'C', 'D', 'E', 'A1', 'B2', 'Z');
  const reading = fc.oneof(length, fc.record({ length, deviation: fc.constantFrom(0.05, 1, 30, 2000) }));
  const survey = fc.record(
    {
      walls: fc.array(
        fc.record(
          { length: reading, corner, cornerDeviation: fc.constantFrom(0.01, 0.5, 20, 90) },
          { requiredKeys: ['length'] },
        ),
        { minLength: 2, maxLength: 8 },
      ),
      walk: fc.constantFrom('clockwise', 'anticlockwise'),
      diagonals: fc.array(fc.record({ from: name, to: name, length: reading }), { maxLength: 4 }),
      angles: fc.array(fc.record({ corner: name, before: length, after: length, across: length }), {
        maxLength: 2,
      }),
      offsets: fc.array(
        fc.record(
          {
            kind: fc.constantFrom('alcove', 'breast', 'bay'),
            wall: name,
            start: length,
            width: length,
            depth: length,
            front: length,
          },
          { requiredKeys: ['kind', 'wall', 'start', 'width', 'depth'] },
        ),
        { maxLength: 2 },
      ),
      heights: fc.array(length, { maxLength: 2 }),
    },
    { requiredKeys: ['walls'] },
  );

  it('is a room in finite numbers, or a list of problems', () => {
    let rooms = 0;
    fc.assert(
      fc.property(survey, (value) => {
        const { room, problems } = read(value);
        expect(room === null).toBe(problems.length > 0);
        if (room === null) return;
        rooms++;
        // JSON turns what is not finite into null; of the rest, the contract says where null stands.
        const text = JSON.stringify({
          ...room,
          ceiling: 0,
          suspect: 0,
          readings: room.readings.map(({ residual }) => residual),
        });
        expect(text).not.toContain('null');
      }),
      { seed: 404, numRuns: 4000 },
    );
    expect(rooms).toBeGreaterThan(20);
  });

  it('of a rectangle with one wild slip is refused or called contradictory', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 5 }),
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        (which, by) => {
          fc.pre(Math.abs(by - 1) > 0.1);
          const exact = [5000, 4000, 5000, 4000, Math.hypot(5000, 4000), Math.hypot(5000, 4000)];
          const [a, b, c, d, ac, bd] = exact.map((mm, i) => (i === which ? mm * by : mm));
          const { room } = read({
            walls: [a, b, c, d].map((mm) => ({ length: mm })),
            diagonals: [
              { from: 'A', to: 'C', length: ac },
              { from: 'B', to: 'D', length: bd },
            ],
          });
          if (room !== null) {
            expect(room.contradictory).toBe(true);
            expect(room.suspect).not.toBeNull();
          }
        },
      ),
      { seed: 405, numRuns: 500 },
    );
  });
});
