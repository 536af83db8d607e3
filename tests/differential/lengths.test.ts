import { describe, expect, it } from 'vitest';
import { formatLength, type LengthUnit, parseLength } from '../../src/index.js';
import { between, random } from '../stroke/scenes.js';

/** A whole number over another. */
type Ratio = readonly [over: bigint, under: bigint];

/** mm of one unit. */
const MM: Readonly<Record<string, Ratio>> = {
  mm: [1n, 1n],
  cm: [10n, 1n],
  m: [1000n, 1n],
  in: [254n, 10n],
  ft: [3048n, 10n],
};

const add = ([a, b]: Ratio, [c, d]: Ratio): Ratio => [a * d + c * b, b * d];
const times = ([a, b]: Ratio, [c, d]: Ratio): Ratio => [a * c, b * d];

/** The text's exact value in mm, read word by word with whole numbers only. */
function exact(text: string): Ratio {
  const negative = text.startsWith('-');
  let sum: Ratio = [0n, 1n];
  let pending: Ratio = [0n, 1n];
  for (const word of text.replace('-', '').split(' ')) {
    const unit = MM[word];
    if (unit !== undefined) {
      sum = add(sum, times(pending, unit));
      pending = [0n, 1n];
    } else if (word.includes('/')) {
      const [over, under] = word.split('/');
      pending = add(pending, [BigInt(over), BigInt(under)]);
    } else {
      const [whole, after = ''] = word.split('.');
      pending = add(pending, [BigInt(`${whole}${after}`), 10n ** BigInt(after.length)]);
    }
  }
  return negative ? [-sum[0], sum[1]] : sum;
}

/** A double as the ratio that it is. */
function ratioOf(mm: number): Ratio {
  let under = 1n;
  let over = mm;
  while (!Number.isInteger(over)) {
    over *= 2;
    under *= 2n;
  }
  return [BigInt(over), under];
}

/** |a - b| as a double: for comparing with limits far larger than its rounding. */
function apart(a: Ratio, b: Ratio): number {
  const [over, under] = add(a, [-b[0], b[1]]);
  return Number((over * 10n ** 15n) / under) / 1e15;
}

const UNITS: readonly LengthUnit[] = ['mm', 'cm', 'm', 'in', 'ftin'];

describe('lengths against arithmetic on whole numbers', () => {
  it('are written to the nearest step and read as what stands there, 4,000 of them', () => {
    const next = random(20_251_208);
    for (let k = 0; k < 4000; k++) {
      const size = 10 ** between(next, -3, 8);
      const mm = (next() < 0.2 ? -1 : 1) * (next() < 0.3 ? Math.round(size) : size);
      const unit = UNITS[k % UNITS.length];
      const decimals = Math.floor(3 * next());
      const denominator = ([1, 2, 4, 8, 16, 32, 64] as const)[Math.floor(7 * next())];
      const text = formatLength(mm, unit, { decimals, denominator });
      const value = exact(text);
      const inch = unit === 'in' || unit === 'ftin';
      const step = inch ? 25.4 / denominator : { mm: 1, cm: 10, m: 1000 }[unit] / 10 ** decimals;
      const where = `${mm} mm as "${text}"`;
      expect(Math.abs(apart(value, ratioOf(mm))), where).toBeLessThanOrEqual(
        step / 2 + 4e-16 * Math.abs(mm) + 1e-12,
      );
      // Read back, it is off by rounding only: three doubles at most.
      expect(Math.abs(apart(value, ratioOf(parseLength(text)))), where).toBeLessThanOrEqual(
        4e-16 * Math.abs(mm) + 1e-12,
      );
    }
  });
});
