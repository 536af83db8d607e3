import { describe, expect, it } from 'vitest';
import {
  at,
  describeValue,
  listWords,
  ProblemList,
  readArray,
  readLength,
  readName,
  readNumber,
  readObject,
  readWord,
} from '../../src/length/read-input.js';

/** What a reader answers and the codes that it leaves. */
function run<T>(read: (problems: ProblemList) => T): {
  value: T;
  codes: string[];
  problems: ProblemList['problems'];
} {
  const list = new ProblemList();
  const value = read(list);
  return { value, codes: list.problems.map((p) => p.code), problems: list.problems };
}

describe('paths and words', () => {
  it('goes one step deeper', () => {
    expect(at('', 'room')).toBe('room');
    expect(at('room', 'doors')).toBe('room.doors');
    expect(at('room.doors', 2)).toBe('room.doors[2]');
    expect(at('', 0)).toBe('[0]');
  });

  it('lists words as a sentence does', () => {
    expect(listWords([])).toBe('nothing');
    expect(listWords(['a'])).toBe('"a"');
    expect(listWords(['a', 'b', 'c'])).toBe('"a", "b" and "c"');
  });

  it('describes any value in less than a line', () => {
    const values: unknown[] = [
      null,
      undefined,
      5,
      Number.NaN,
      true,
      12n,
      'x'.repeat(5000),
      [],
      [1, 2],
      {},
      () => 1,
      Symbol('s'),
    ];
    for (const value of values) expect(describeValue(value).length).toBeLessThan(60);
    expect(describeValue([1, 2])).toBe('a list of 2');
    expect(describeValue('57 in')).toBe('"57 in"');
  });
});

describe('readObject', () => {
  it('takes plain data and leaves out what is undefined', () => {
    const { value, codes } = run((p) => readObject({ a: 1, b: undefined }, 'x', ['a', 'b'], p));
    expect([...(value ?? [])]).toEqual([['a', 1]]);
    expect(codes).toEqual([]);
    expect(run((p) => readObject(Object.create(null), 'x', [], p)).value?.size).toBe(0);
  });

  it('names a property that nobody reads', () => {
    const { value, problems } = run((p) => readObject({ lenght: 1 }, 'cue', ['length'], p));
    expect(value?.size).toBe(0);
    expect(problems).toEqual([
      {
        path: 'cue.lenght',
        code: 'unknown-property',
        message: 'There is no property "lenght" here; the known ones are "length".',
      },
    ]);
  });

  it.each([null, undefined, 5, 'text', [1], () => 1])('refuses %s', (value) => {
    expect(run((p) => readObject(value, 'x', ['a'], p))).toMatchObject({
      value: null,
      codes: ['not-an-object'],
    });
  });

  it('refuses what could answer differently the second time', () => {
    const getter = {
      get a() {
        return 1;
      },
    };
    expect(run((p) => readObject(getter, 'x', ['a'], p)).codes).toEqual(['not-plain-data']);
    expect(run((p) => readObject(new Date(0), 'x', ['a'], p))).toMatchObject({
      value: null,
      codes: ['not-plain-data'],
    });
  });
});

describe('readArray', () => {
  it('takes a list and refuses what is none, or has holes', () => {
    expect(run((p) => readArray([1, 2], 'x', 'cues', p)).value).toEqual([1, 2]);
    expect(run((p) => readArray('57 in', 'x', 'cues', p))).toMatchObject({
      value: null,
      codes: ['not-a-list'],
    });
    const holed = [1, 2, 3];
    delete holed[1];
    const { problems } = run((p) => readArray(holed, 'cues', 'cues', p));
    expect(problems).toMatchObject([{ path: 'cues[1]', code: 'missing-item' }]);
  });
});

describe('readLength', () => {
  const limits = { what: 'height', min: 0, max: 100 };

  it('takes numbers as mm and text with its unit, limits included', () => {
    expect(run((p) => readLength(0, 'x', limits, p)).value).toBe(0);
    expect(run((p) => readLength('10 cm', 'x', limits, p)).value).toBe(100);
    expect(run((p) => readLength(-5, 'x', { what: 'x' }, p)).value).toBe(-5);
  });

  it.each<[unknown, string]>([
    [Number.NaN, 'not-a-number'],
    [Number.POSITIVE_INFINITY, 'not-a-number'],
    [null, 'not-a-length'],
    [true, 'not-a-length'],
    [12n, 'not-a-length'],
    [['5 m'], 'not-a-length'],
    ['183', 'no-unit'],
    [-1, 'too-small'],
    ['-1 mm', 'too-small'],
    [101, 'too-large'],
  ])('%s: %s', (value, code) => {
    const { value: read, problems } = run((p) => readLength(value, 'room.ceiling', limits, p));
    expect(read).toBeNull();
    expect(problems).toMatchObject([
      { path: 'room.ceiling', code, message: expect.stringContaining('height') },
    ]);
  });

  it('passes the words of the parser on', () => {
    const { problems } = run((p) => readLength('183', 'x', { what: 'cue length' }, p));
    expect(problems[0]?.message).toBe(
      'The cue length cannot be read: "183" has no unit; write "183 cm" or "183 mm".',
    );
  });
});

describe('readNumber, readWord and readName', () => {
  it('takes finite numbers within the limits', () => {
    const limits = { what: 'turn', min: 0, max: 180 };
    expect(run((p) => readNumber(180, 'x', limits, ' degrees', p)).value).toBe(180);
    expect(run((p) => readNumber('180', 'x', limits, ' degrees', p)).codes).toEqual(['not-a-number']);
    expect(run((p) => readNumber(Number.NaN, 'x', limits, ' degrees', p)).codes).toEqual(['not-a-number']);
    const { problems } = run((p) => readNumber(181, 'x', limits, ' degrees', p));
    expect(problems).toEqual([
      { path: 'x', code: 'too-large', message: 'The turn is 181 degrees; it must be at most 180 degrees.' },
    ]);
  });

  it('takes one of the words', () => {
    expect(run((p) => readWord('in', 'x', ['in', 'out'], p)).value).toBe('in');
    expect(run((p) => readWord('inward', 'x', ['in', 'out'], p))).toMatchObject({
      value: null,
      codes: ['unknown-word'],
    });
  });

  it('takes a name without the space around it', () => {
    expect(run((p) => readName('  sofa ', 'x', 'name', p)).value).toBe('sofa');
    expect(run((p) => readName('  ', 'x', 'name', p)).codes).toEqual(['empty-name']);
    expect(run((p) => readName(5, 'x', 'name', p)).codes).toEqual(['not-text']);
    expect(run((p) => readName('x'.repeat(201), 'x', 'name', p)).codes).toEqual(['name-too-long']);
  });
});
