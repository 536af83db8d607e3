import { describe, expect, it } from 'vitest';
import { readCue, readCues } from '../../src/equipment/check-cue.js';
import { CUES } from '../../src/equipment/cues.js';
import { DEFAULTS } from '../../src/equipment/defaults.js';
import type { CueSpec } from '../../src/equipment/equipment-types.js';
import { TABLES } from '../../src/equipment/tables.js';
import type { InputProblem } from '../../src/input-error.js';
import { ProblemList } from '../../src/length/read-input.js';

const BALL = 57.15;
const TAPER = 'Cues 10 mm thick at the tip and 30 mm at the butt (default).';

function read(value: unknown): {
  cue: CueSpec | null;
  problems: readonly InputProblem[];
  assumptions: string[];
} {
  const list = new ProblemList();
  const assumptions: string[] = [];
  const cue = readCue(value, 'cue', list, BALL, assumptions);
  expect(cue === null).toBe(list.problems.length > 0);
  return { cue, problems: list.problems, assumptions };
}

function readAll(value: unknown, table = TABLES['pool-9ft']) {
  const list = new ProblemList();
  const assumptions: string[] = [];
  const cues = readCues(value, 'cues', table, list, assumptions);
  expect(cues === null).toBe(list.problems.length > 0);
  return { cues, problems: list.problems, assumptions };
}

describe('one cue', () => {
  it.each<[unknown, string, number]>([
    ['57 in', '57 in', 1447.8],
    ['  145   cm ', '145 cm', 1450],
    [1448, '1448 mm', 1448],
    [{ length: '57 in' }, '57 in', 1447.8],
    [{ length: 1448 }, '1448 mm', 1448],
    ['cue-57in', '57 in', 1447.8],
    [CUES['cue-48in'], '48 in', 1219.2],
  ])('%j is called %s', (value, name, length) => {
    const { cue, assumptions } = read(value);
    expect(cue).toEqual({ name, length, ...DEFAULTS.cue });
    expect(assumptions).toEqual([TAPER]);
  });

  it('takes diameters as they are given, and says those that are not', () => {
    const both = read({ length: 1448, tipDiameter: '13 mm', buttDiameter: 32 });
    expect(both.cue).toMatchObject({ tipRadius: 6.5, buttRadius: 16 });
    expect(both.assumptions).toEqual([]);
    const tip = read({ length: 1448, tipDiameter: 13 });
    expect(tip.cue).toMatchObject({ tipRadius: 6.5, buttRadius: DEFAULTS.cue.buttRadius });
    expect(tip.assumptions).toEqual(['Butt of the cue 1448 mm 30 mm thick (default).']);
    const butt = read({ length: '57 in', buttDiameter: 8 });
    expect(butt.cue).toMatchObject({ tipRadius: 4, buttRadius: 4 });
    expect(butt.assumptions).toEqual(['Tip of the cue 57 in 8 mm thick (default).']);
  });

  it.each<[string, unknown, string, string, RegExp]>([
    [
      'a number of inches',
      57,
      'cue',
      'cue-too-short',
      /shorter than its ball is wide \(57\.15 mm\).*"57 cm" or "57 in"/,
    ],
    ['a number of cm', 145, 'cue', 'implausible-length', /"145 cm" if/],
    ['a number of m', 1.45, 'cue', 'cue-too-short', /"1\.45 m" or "1\.45 ft"/],
    ['a length below the ball', '5 cm', 'cue', 'cue-too-short', /Check the number and its unit/],
    ['a negative length', -1448, 'cue', 'cue-too-short', /millimetres/],
    ['29 cm', '29 cm', 'cue', 'implausible-length', /300 mm to 3000 mm/],
    ['more than 3 m', '3.1 m', 'cue', 'implausible-length', /unit/],
    ['a cue without a unit', '57', 'cue', 'no-unit', /57 in/],
    ['nothing', null, 'cue', 'not-a-length', /cue length/],
    ['a flag', true, 'cue', 'not-a-length', /cue length/],
    ['a list', ['57 in'], 'cue', 'not-an-object', /"length"/],
    ['no length', { tipDiameter: 10 }, 'cue.length', 'missing', /length of the cue/],
    ['a short length', { length: 57 }, 'cue.length', 'cue-too-short', /57 in/],
    ['a weight', { length: 1448, weight: 500 }, 'cue.weight', 'unknown-property', /"weight"/],
    ['a tip in cm', { length: 1448, tipDiameter: 1.3 }, 'cue.tipDiameter', 'implausible-length', /"1\.3 cm"/],
    ['a butt of 1 m', { length: 1448, buttDiameter: 1000 }, 'cue.buttDiameter', 'implausible-length', /butt/],
    [
      'a cue held the wrong way round',
      { length: 1448, tipDiameter: 29, buttDiameter: 12 },
      'cue.tipDiameter',
      'tip-thicker-than-butt',
      /swap/,
    ],
  ])('%s is refused', (_, value, path, code, words) => {
    const { problems } = read(value);
    expect(problems).toEqual([{ path, code, message: expect.stringMatching(words) }]);
  });
});

describe('the list of cues', () => {
  it('keeps its order, and notes the taper once', () => {
    const { cues, assumptions } = readAll(['57 in', { length: '48 in' }, 914]);
    expect(cues?.map((cue) => cue.name)).toEqual(['57 in', '48 in', '914 mm']);
    expect(assumptions).toEqual([TAPER]);
  });

  it('is the usual cue of the table by default, and says so', () => {
    const { cues, assumptions } = readAll(undefined);
    expect(cues).toEqual([{ name: '58 in', length: 1473.2, ...DEFAULTS.cue }]);
    expect(assumptions).toEqual(['Cue 58 in, the usual one for pool (default).', TAPER]);
    const measured = readAll(undefined, {
      ...TABLES['pool-9ft'],
      id: null,
      game: 'any',
      usualCue: DEFAULTS.table.usualCue,
    });
    expect(measured.cues).toMatchObject([{ name: '57 in', length: DEFAULTS.table.usualCue }]);
    expect(measured.assumptions[0]).toBe('Cue 57 in, the usual one (default).');
  });

  it('measures a short cue against the ball of the table', () => {
    const { problems } = readAll([65], TABLES['pyramid-12ft']);
    expect(problems).toMatchObject([{ path: 'cues[0]', code: 'cue-too-short' }]);
    expect(readAll([65], TABLES['pool-9ft']).problems).toMatchObject([{ code: 'implausible-length' }]);
  });

  it.each<[string, unknown, string, string]>([
    ['one cue outside a list', '57 in', 'cues', 'not-a-list'],
    ['an empty list', [], 'cues', 'no-cues'],
    ['more than 20', new Array(21).fill('57 in'), 'cues', 'too-many-cues'],
    ['a cue that is wrong', ['57 in', '48'], 'cues[1]', 'no-unit'],
  ])('%s is refused', (_, value, path, code) => {
    expect(readAll(value).problems).toMatchObject([{ path, code }]);
  });

  it('takes 20', () => {
    expect(readAll(new Array(20).fill('57 in')).cues?.length).toBe(20);
  });
});
