import { describe, expect, it } from 'vitest';
import { readTable } from '../../src/equipment/check-table.js';
import { DEFAULTS } from '../../src/equipment/defaults.js';
import { editDistance } from '../../src/equipment/edit-distance.js';
import type { TableSpec } from '../../src/equipment/equipment-types.js';
import { TABLES } from '../../src/equipment/tables.js';
import type { InputProblem } from '../../src/input-error.js';
import { ProblemList } from '../../src/length/read-input.js';

interface Answer {
  readonly table: TableSpec | null;
  readonly problems: readonly InputProblem[];
  readonly assumptions: readonly string[];
}

function read(value: unknown): Answer {
  const list = new ProblemList();
  const assumptions: string[] = [];
  const table = readTable(value, 'table', list, assumptions);
  // The two go together: nothing is repaired in silence, nothing is refused without a reason.
  expect(table === null).toBe(list.problems.length > 0);
  return { table, problems: list.problems, assumptions };
}

const MEASURED = {
  field: { length: '8 ft', width: '4 ft' },
  outer: { length: 2700, width: 1480 },
} as const;

describe('a table of the catalogue', () => {
  it('is found by its id and assumes nothing', () => {
    for (const [id, table] of Object.entries(TABLES)) {
      expect(read(id)).toEqual({ table, problems: [], assumptions: [] });
    }
  });

  it('may be given as the entry itself', () => {
    expect(read(TABLES['snooker-12ft']).table).toBe(TABLES['snooker-12ft']);
  });

  it('has an id that is not spelt otherwise: the nearest ones are named', () => {
    const { problems } = read('pool-9tf');
    expect(problems).toMatchObject([{ path: 'table', code: 'unknown-table' }]);
    expect(problems[0]?.message).toMatch(/^There is no table "pool-9tf"; the nearest are "pool-9ft", /);
    expect(read('Snooker-12FT').problems[0]?.message).toContain('nearest are "snooker-12ft"');
    expect(read('').problems).toMatchObject([{ code: 'unknown-table' }]);
    expect(read('constructor').problems).toMatchObject([{ code: 'unknown-table' }]);
    expect(read('__proto__').problems).toMatchObject([{ code: 'unknown-table' }]);
  });

  it('answers huge text in a line', () => {
    const [problem] = read('x'.repeat(1_000_000)).problems;
    expect(problem?.code).toBe('unknown-table');
    expect(problem?.message.length).toBeLessThan(300);
  });
});

describe('a table by its measurements', () => {
  it('takes lengths as text or mm, and says every default', () => {
    const { table, assumptions } = read(MEASURED);
    expect(table).toMatchObject({
      id: null,
      name: 'Table with a field of 2438.4 mm x 1219.2 mm',
      game: 'any',
      field: { length: 2438.4, width: 1219.2 },
      outer: { length: 2700, width: 1480 },
      bedHeight: DEFAULTS.table.bedHeight,
      railHeight: DEFAULTS.table.railHeight,
      ballDiameter: DEFAULTS.table.ballDiameter,
      usualCue: DEFAULTS.table.usualCue,
      mass: null,
      legs: null,
    });
    // WPA Recommended Equipment Specifications, s. 7: 35.7 to 36.9 mm for a ball of 57.15 mm.
    expect(table?.noseHeight).toBeGreaterThanOrEqual(35.7);
    expect(table?.noseHeight).toBeLessThanOrEqual(36.9);
    expect(assumptions).toEqual([
      'Bed height 790 mm (default).',
      'Ball diameter 57.15 mm (default).',
      'Cushion nose 36.29 mm above the cloth (default).',
      'Rail top 42 mm above the cloth (default).',
    ]);
  });

  it('assumes nothing where all is given', () => {
    const all = {
      ...MEASURED,
      name: ' Old table ',
      game: 'pool',
      bedHeight: '80 cm',
      noseHeight: 36,
      railHeight: 45,
      ballDiameter: '2 1/4 in',
      mass: 320,
    };
    const { table, assumptions } = read(all);
    expect(assumptions).toEqual([]);
    expect(table).toMatchObject({
      name: 'Old table',
      game: 'pool',
      bedHeight: 800,
      noseHeight: 36,
      railHeight: 45,
      ballDiameter: 57.15,
      mass: 320,
    });
  });

  it('never puts the nose above the rail by default', () => {
    expect(read({ ...MEASURED, ballDiameter: 68 }).table).toMatchObject({
      noseHeight: 0.635 * 68,
      railHeight: 0.635 * 68,
    });
    expect(read({ ...MEASURED, railHeight: 30 }).table).toMatchObject({ noseHeight: 30, railHeight: 30 });
    expect(read({ ...MEASURED, noseHeight: 50 }).table).toMatchObject({ noseHeight: 50, railHeight: 50 });
    expect(read({ ...MEASURED, ballDiameter: 52.5 }).table).toMatchObject({
      noseHeight: 0.635 * 52.5,
      railHeight: 42,
    });
  });

  it.each<[string, unknown, string, string, RegExp]>([
    ['a number', 9, 'table', 'not-a-table', /"pool-9ft"/],
    ['null', null, 'table', 'not-a-table', /null/],
    ['a list', ['pool-9ft'], 'table', 'not-a-table', /a list of 1/],
    ['an instance', new Date(0), 'table', 'not-plain-data', /plain data/],
    [
      'a misspelt property',
      { ...MEASURED, bedheight: 790 },
      'table.bedheight',
      'unknown-property',
      /"bedHeight"/,
    ],
    [
      'a misspelt side',
      { ...MEASURED, field: { length: 2540, width: 1270, hight: 1 } },
      'table.field.hight',
      'unknown-property',
      /"width"/,
    ],
    ['no field', { outer: MEASURED.outer }, 'table.field', 'missing', /play field/],
    ['no outer size', { field: MEASURED.field }, 'table.outer', 'missing', /outer size/],
    [
      'no width',
      { ...MEASURED, outer: { length: 2700 } },
      'table.outer.width',
      'missing',
      /width of the outer size/,
    ],
    [
      'a field of text',
      { ...MEASURED, field: '9 ft' },
      'table.field',
      'not-an-object',
      /"length" and "width"/,
    ],
    [
      'a field in m',
      { ...MEASURED, field: { length: 2.5, width: 1219 } },
      'table.field.length',
      'implausible-length',
      /write "2\.5 m" or "2\.5 ft" if/,
    ],
    [
      'a field in in',
      { ...MEASURED, field: { length: 96, width: 1219 } },
      'table.field.length',
      'implausible-length',
      /"96 cm" or "96 in"/,
    ],
    [
      'a field of 1.9 mm',
      { ...MEASURED, field: { length: '1.9 mm', width: 1219 } },
      'table.field.length',
      'implausible-length',
      /Check the number and its unit/,
    ],
    [
      'a field of 12 m',
      { ...MEASURED, field: { length: '12 m', width: 1219 } },
      'table.field.length',
      'implausible-length',
      /300 mm to 10000 mm/,
    ],
    [
      'a field too wide to mean',
      { ...MEASURED, field: { length: 2540, width: 1e300 } },
      'table.field.width',
      'implausible-length',
      /1e\+300 mm/,
    ],
    [
      'a field without a unit',
      { ...MEASURED, field: { length: '254', width: 1219 } },
      'table.field.length',
      'no-unit',
      /254 cm/,
    ],
    [
      'a field turned',
      { ...MEASURED, field: { length: 1219, width: 2438 } },
      'table.field',
      'width-exceeds-length',
      /swap/,
    ],
    [
      'an outer size turned',
      { ...MEASURED, outer: { length: 1480, width: 2700 } },
      'table.outer',
      'width-exceeds-length',
      /swap/,
    ],
    [
      'no rails',
      { ...MEASURED, outer: { length: 2438.4, width: 1480 } },
      'table.outer.length',
      'outer-not-larger',
      /nose to nose/,
    ],
    [
      'rails of half a metre',
      { ...MEASURED, outer: { length: 3500, width: 1480 } },
      'table.outer.length',
      'rail-too-wide',
      /530\.8 mm/,
    ],
    [
      'a bed on the floor',
      { ...MEASURED, bedHeight: 79 },
      'table.bedHeight',
      'implausible-length',
      /"79 cm"/,
    ],
    [
      'a bed at the chin',
      { ...MEASURED, bedHeight: '1.6 m' },
      'table.bedHeight',
      'implausible-length',
      /1600 mm/,
    ],
    [
      'a nose at 1 mm',
      { ...MEASURED, noseHeight: 1 },
      'table.noseHeight',
      'implausible-length',
      /nose height/,
    ],
    [
      'a rail of 1 m',
      { ...MEASURED, railHeight: 1000 },
      'table.railHeight',
      'implausible-length',
      /rail height/,
    ],
    [
      'a ball in cm',
      { ...MEASURED, ballDiameter: 5.7 },
      'table.ballDiameter',
      'implausible-length',
      /"5\.7 cm"/,
    ],
    [
      'a nose above its rail',
      { ...MEASURED, noseHeight: 50, railHeight: 40 },
      'table.noseHeight',
      'nose-above-rail',
      /from the cloth/,
    ],
    ['a mass of nothing', { ...MEASURED, mass: 0 }, 'table.mass', 'too-small', /kg/],
    ['a mass of text', { ...MEASURED, mass: '300 kg' }, 'table.mass', 'not-a-number', /mass/],
    ['an empty name', { ...MEASURED, name: ' ' }, 'table.name', 'empty-name', /name/],
    ['a game that is no text', { ...MEASURED, game: 8 }, 'table.game', 'not-text', /game/],
  ])('%s is refused', (_, value, path, code, words) => {
    const { problems } = read(value);
    expect(problems).toEqual([{ path, code, message: expect.stringMatching(words) }]);
  });

  it('refuses a ball as wide as its field', () => {
    const toy = { field: { length: 320, width: 160 }, outer: { length: 400, width: 240 }, ballDiameter: 160 };
    const { problems } = read({ ...toy, noseHeight: 40, railHeight: 40 });
    expect(problems).toMatchObject([{ path: 'table.ballDiameter', code: 'ball-too-large' }]);
    expect(read({ ...toy, ballDiameter: 20 }).table).not.toBeNull();
  });

  it('lists all problems at once, and then says no defaults', () => {
    const { problems, assumptions } = read({
      field: { length: 1, width: 1 },
      outer: {},
      mass: -1,
      colour: 'green',
    });
    expect(problems.map((p) => `${p.path} ${p.code}`).sort()).toEqual([
      'table.colour unknown-property',
      'table.field.length implausible-length',
      'table.field.width implausible-length',
      'table.mass too-small',
      'table.outer.length missing',
      'table.outer.width missing',
    ]);
    expect(assumptions).toEqual([]);
  });
});

describe('editDistance', () => {
  it.each<[string, string, number]>([
    ['', '', 0],
    ['', 'abc', 3],
    // The customary example of an edit distance.
    ['kitten', 'sitting', 3],
    ['pool-9ft', 'pool-9tf', 1],
    ['abcd', 'badc', 2],
    ['snooker', 'snoker', 1],
  ])('from "%s" to "%s" is %d', (a, b, distance) => {
    expect(editDistance(a, b)).toBe(distance);
    expect(editDistance(b, a)).toBe(distance);
  });
});
