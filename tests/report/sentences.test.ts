import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLength } from '../../src/length/parse-length.js';
import {
  joinWords,
  plainName,
  roundTo,
  sayAccount,
  sayCue,
  sayCushion,
  sayDegrees,
  sayLength,
  sayShares,
} from '../../src/report/sentences.js';
import { columnsOf, wrapText } from '../../src/report/wrap.js';

const SEED = 20_261_128;
const mm = fc.double({ min: -30_000, max: 30_000, noNaN: true });
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('roundTo', () => {
  it('moves down, up or to the nearest step, by less than a step', () => {
    fc.assert(
      fc.property(mm, fc.constantFrom(1, 10, 12.7, 0.1), (value, step) => {
        // The noise that is allowed for is 1e-6.
        const down = roundTo(value, step, 'down');
        const up = roundTo(value, step, 'up');
        const near = roundTo(value, step, 'near');
        expect(down).toBeLessThanOrEqual(value + 2e-6);
        expect(down).toBeGreaterThan(value - step - 2e-6);
        expect(up).toBeGreaterThanOrEqual(value - 2e-6);
        expect(up).toBeLessThan(value + step + 2e-6);
        expect(Math.abs(near - value)).toBeLessThanOrEqual(step / 2 + 2e-6);
      }),
      { seed: SEED },
    );
  });

  it('keeps a whole number of steps, whatever the doubles made of it', () => {
    for (const rounding of ['down', 'up', 'near'] as const) {
      expect(roundTo(57 * 25.4, 12.7, rounding)).toBeCloseTo(1447.8, 9);
      expect(roundTo(0.1 + 0.2, 0.1, rounding)).toBeCloseTo(0.3, 12);
    }
    expect(Object.is(roundTo(-0.2, 1, 'near'), 0)).toBe(true);
  });
});

describe('sayLength', () => {
  it('says what parseLength reads back within a step', () => {
    fc.assert(
      fc.property(mm, fc.constantFrom('mm', 'cm', 'ftin'), (value, units) => {
        const step = { mm: 1, cm: 10, ftin: 12.7 }[units];
        expect(Math.abs(parseLength(plain(sayLength(value, units))) - value)).toBeLessThanOrEqual(
          step / 2 + 1e-6,
        );
      }),
      { seed: SEED },
    );
  });
});

describe('sayCue', () => {
  // One inch is 25.4 mm.
  it.each([
    [1447.8, 'cm', 'near', '145 cm (57 in)'],
    [1447.8, 'mm', 'near', '1448 mm (57 in)'],
    [1447.8, 'ftin', 'near', '57 in'],
    [1449.5, 'ftin', 'near', '57 in'],
    [1450, 'ftin', 'near', 'about 57 in'],
    [1441, 'ftin', 'near', 'about 56 1/2 in'],
    [1441, 'cm', 'near', '144 cm'],
    [1447.7, 'cm', 'down', '144 cm (56 1/2 in)'],
    [1447.7, 'ftin', 'down', '56 1/2 in'],
    [1447.9, 'ftin', 'up', '57 1/2 in'],
  ] as const)('says %d in %s, %s, as %s', (length, units, rounding, text) => {
    expect(plain(sayCue(length, units, rounding))).toBe(text);
  });
});

describe('sayAccount', () => {
  it.each([
    [{ needed: 5814, available: 5906, spare: 92 }, '582 cm', '591 cm', '9 cm to spare'],
    [{ needed: 5814, available: 5823, spare: 9 }, '582 cm', '582 cm', 'less than 1 cm to spare'],
    [{ needed: 5814, available: 5813.9, spare: -0.1 }, '582 cm', '581 cm', '1 cm missing'],
    [{ needed: 5814, available: 5814, spare: -1e-9 }, '582 cm', '581 cm', '1 cm missing'],
    [{ needed: 5810, available: 5690, spare: -120 }, '581 cm', '569 cm', '12 cm missing'],
  ] as const)('accounts for %j', (span, needed, available, spare) => {
    const account = sayAccount(span, 'cm');
    expect([account.needed, account.available, account.spare].map(plain)).toEqual([needed, available, spare]);
  });
});

describe('sayShares', () => {
  it('never rounds a blocked share away nor an open one up', () => {
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    const verdict = fc.constantFrom('clear', 'tight', 'partial');
    fc.assert(
      fc.property(part, part, verdict, (a, b, word) => {
        const open = Math.min(a, b);
        const blocked = 1 - Math.max(a, b);
        const said = sayShares({ open, cramped: 1 - open - blocked, blocked }, word);
        if (blocked > 1e-8) expect(said.blocked).not.toBe('none');
        if (open < 1 - 1e-8) expect(said.open).not.toBe('all');
        if (open > 0) expect(said.open).not.toBe('none');
      }),
      { seed: SEED },
    );
  });

  it('does not contradict a verdict that a sample missed the reason of', () => {
    const all = { open: 1, cramped: 0, blocked: 0 };
    expect(sayShares(all, 'clear')).toEqual({ open: 'all', cramped: 'none', blocked: 'none' });
    expect(sayShares(all, 'tight')).toEqual({ open: 'over 99%', cramped: 'under 1%', blocked: 'none' });
    expect(sayShares(all, 'partial')).toEqual({ open: 'over 99%', cramped: 'none', blocked: 'under 1%' });
  });
});

describe('words', () => {
  it('joins names', () => {
    expect(joinWords(['a'])).toBe('a');
    expect(joinWords(['a', 'b'])).toBe('a and b');
    expect(joinWords(['a', 'b', 'c'])).toBe('a, b and c');
    expect(joinWords([])).toBe('nothing');
  });

  it('says one degree, and two', () => {
    expect(plain(sayDegrees(1.02))).toBe('1 degree');
    expect(plain(sayDegrees(12.34))).toBe('12.3 degrees');
  });

  it('turns control characters and direction marks of a name into spaces, and leaves the rest', () => {
    expect(plainName('  Säule \u001b[31m2\u202e\u0000x ')).toBe('Säule  [31m2 x');
  });

  it('finds each cushion on the plan: half a turn swaps the ends', () => {
    const opposite = {
      'on the right': 'on the left',
      'at the upper right': 'at the lower left',
      'at the top': 'at the bottom',
      'at the upper left': 'at the lower right',
    };
    for (const [i, [one, other]] of Object.entries(opposite).entries()) {
      expect(sayCushion('endA', i * 45)).toBe(`end cushion ${one}`);
      expect(sayCushion('endB', i * 45)).toBe(`end cushion ${other}`);
      expect(sayCushion('sideB', i * 45 + 90)).toBe(`side cushion ${one}`);
      expect(sayCushion('sideA', i * 45 + 90)).toBe(`side cushion ${other}`);
    }
  });
});

describe('wrapText', () => {
  it('keeps every letter, in order, within the width', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 300 }), fc.integer({ min: 12, max: 80 }), (text, width) => {
        const lines = wrapText(text, '- ', '  ', width);
        for (const line of lines) expect(columnsOf(line)).toBeLessThanOrEqual(width);
        const bare = (s: string): string => s.replace(/[ \t\n]/g, '');
        expect(bare(lines.map((line) => line.slice(2)).join(''))).toBe(bare(text));
      }),
      { seed: SEED },
    );
  });

  it('does not divide a number from its unit', () => {
    expect(wrapText('at most 12\u00a0ft 6', '', '', 12)).toEqual(['at most', '12 ft 6']);
  });

  it('counts wide letters twice and marks over letters not at all', () => {
    expect(columnsOf('卓球')).toBe(4);
    expect(columnsOf('e\u0301')).toBe(1);
    expect(columnsOf('plain')).toBe(5);
  });
});
