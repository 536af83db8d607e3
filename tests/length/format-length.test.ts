import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/input-error.js';
import { type FormatLengthOptions, formatLength } from '../../src/length/format-length.js';
import type { LengthUnit } from '../../src/length/length.js';
import { parseLength } from '../../src/length/parse-length.js';

const SEED = 20252;

describe('formatLength', () => {
  it.each<[number, LengthUnit, string]>([
    [1830, 'mm', '1830 mm'],
    [1829.5, 'mm', '1830 mm'],
    [1829.4, 'mm', '1829 mm'],
    [1830, 'cm', '183 cm'],
    [1829, 'cm', '182.9 cm'],
    [1830, 'm', '1.83 m'],
    [1829, 'm', '1.829 m'],
    [4500, 'm', '4.50 m'],
    [60, 'm', '0.06 m'],
    [5, 'm', '0.005 m'],
    [1447.8, 'in', '57 in'],
    [1451, 'in', '57 1/8 in'],
    [1460.5, 'in', '57 1/2 in'],
    [6.35, 'in', '1/4 in'],
    [0, 'in', '0 in'],
    [3568.7, 'ftin', '11 ft 8 1/2 in'],
    [3810, 'ftin', '12 ft 6 in'],
    [3657.6, 'ftin', '12 ft'],
    [215.9, 'ftin', '8 1/2 in'],
    [0, 'ftin', '0 in'],
  ])('%d mm in %s is %s', (mm, unit, text) => {
    expect(formatLength(mm, unit)).toBe(text);
  });

  it('carries into the next unit instead of writing 12 in or 100', () => {
    expect(formatLength(12 * 304.8 - 1, 'ftin')).toBe('12 ft');
    expect(formatLength(304.8 - 0.1, 'ftin')).toBe('1 ft');
    expect(formatLength(25.3, 'in')).toBe('1 in');
    expect(formatLength(999.7, 'm')).toBe('1.00 m');
    expect(formatLength(99.99, 'cm')).toBe('10 cm');
  });

  it('keeps the sign, but not of nothing', () => {
    expect(formatLength(-1447.8, 'in')).toBe('-57 in');
    expect(formatLength(-3568.7, 'ftin')).toBe('-11 ft 8 1/2 in');
    expect(formatLength(-0.4, 'mm')).toBe('0 mm');
    expect(formatLength(-0, 'mm')).toBe('0 mm');
    expect(formatLength(-0.04, 'cm')).toBe('0 cm');
    expect(formatLength(-0.4, 'm')).toBe('0.00 m');
    expect(formatLength(-1, 'in')).toBe('0 in');
    expect(formatLength(-1, 'ftin')).toBe('0 in');
  });

  it('rounds half a step away from zero', () => {
    expect(formatLength(2.5, 'mm')).toBe('3 mm');
    expect(formatLength(-2.5, 'mm')).toBe('-3 mm');
    expect(formatLength(-12.5, 'cm', { decimals: 0 })).toBe('-1 cm');
    expect(formatLength(-15, 'cm', { decimals: 0 })).toBe('-2 cm');
  });

  it('takes the wanted step', () => {
    expect(formatLength(2336.8, 'mm', { decimals: 1 })).toBe('2336.8 mm');
    expect(formatLength(2336, 'mm', { decimals: 1 })).toBe('2336 mm');
    expect(formatLength(1834, 'm', { decimals: 2 })).toBe('1.83 m');
    expect(formatLength(1834, 'm', { decimals: 0 })).toBe('2 m');
    expect(formatLength(25.4 * (3 + 5 / 64), 'in', { denominator: 64 })).toBe('3 5/64 in');
    expect(formatLength(25.4 * 3.4, 'in', { denominator: 2 })).toBe('3 1/2 in');
    expect(formatLength(25.4 * 3.4, 'in', { denominator: 1 })).toBe('3 in');
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, -1.1e11])('refuses %d mm', (mm) => {
    expect(() => formatLength(mm, 'mm')).toThrow(InputError);
  });

  it('refuses options out of range, by name', () => {
    for (const decimals of [-1, 3, 0.5, Number.NaN]) {
      expect(() => formatLength(1, 'mm', { decimals })).toThrow(/options.decimals/);
    }
    const bad: FormatLengthOptions = JSON.parse('{ "denominator": 10 }');
    expect(() => formatLength(1, 'in', bad)).toThrow(/options.denominator/);
  });
});

describe('there and back', () => {
  const lengths = fc.oneof(
    fc.double({ min: -20_000, max: 20_000, noNaN: true }),
    fc.integer({ min: -20_000, max: 20_000 }),
    fc.integer({ min: -64 * 500, max: 64 * 500 }).map((n) => (n * 25.4) / 64),
    // Well short of the limit, which rounding up could pass.
    fc.double({ min: -9e8, max: 9e8, noNaN: true }),
  );

  const CASES: readonly [LengthUnit, FormatLengthOptions, number][] = [
    ['mm', {}, 1],
    ['mm', { decimals: 1 }, 0.1],
    ['mm', { decimals: 2 }, 0.01],
    ['cm', {}, 1],
    ['cm', { decimals: 0 }, 10],
    ['cm', { decimals: 2 }, 0.1],
    ['m', {}, 1],
    ['m', { decimals: 0 }, 1000],
    ['m', { decimals: 2 }, 10],
    ['m', { decimals: 6 }, 0.001],
    ['in', {}, 25.4 / 8],
    ['in', { denominator: 1 }, 25.4],
    ['in', { denominator: 64 }, 25.4 / 64],
    ['ftin', {}, 25.4 / 8],
    ['ftin', { denominator: 1 }, 25.4],
    ['ftin', { denominator: 64 }, 25.4 / 64],
  ];

  it.each(CASES)('%s %j comes back within half a step', (unit, options, step) => {
    fc.assert(
      fc.property(lengths, (mm) => {
        const back = parseLength(formatLength(mm, unit, options));
        // A few roundings of doubles, each below 2^-52 of the length.
        expect(Math.abs(back - mm)).toBeLessThanOrEqual(step / 2 + Math.abs(mm) * 2 ** -50);
        expect(Object.is(back, -0)).toBe(false);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it.each(CASES)('%s %j is written alike the second time', (unit, options) => {
    fc.assert(
      fc.property(lengths, (mm) => {
        const text = formatLength(mm, unit, options);
        expect(formatLength(parseLength(text), unit, options)).toBe(text);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it.each(CASES)('%s %j turns with the sign', (unit, options) => {
    fc.assert(
      fc.property(lengths, (mm) => {
        const text = formatLength(Math.abs(mm), unit, options);
        const minus = formatLength(-Math.abs(mm), unit, options);
        expect(minus).toBe(/[1-9]/.test(text) ? `-${text}` : text);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });
});
