import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/input-error.js';
import { type LengthProblemCode, parseLength, tryParseLength } from '../../src/length/parse-length.js';

const SEED = 20251;

function codeOf(text: string): string {
  const parsed = tryParseLength(text);
  return parsed.ok ? `read as ${parsed.mm} mm` : parsed.code;
}

describe('lengths that people write', () => {
  it.each<[string, number]>([
    ['183 cm', 1830],
    ['183cm', 1830],
    ['183CM', 1830],
    ['1830 mm', 1830],
    ['1830 mm.', 1830],
    ['1.83m', 1830],
    ['1.83 Metres', 1830],
    ['4.5 m', 4500],
    ['4,5 m', 4500],
    ['0,125 m', 125],
    ['1234,5 mm', 1234.5],
    ['1.234 m', 1234],
    ['1234 mm', 1234],
    // As the ball is printed in the WPA Recommended Equipment Specifications, s. 16.
    ['5.715 cm', 57.15],
    ['1,2345 m', 1234.5],
    ['.5 m', 500],
    ['½ m', 500],
    ['1/2 m', 500],
    ['4½ m', 4500],
    ['  90\u00a0cm  ', 900],
    ['+20 mm', 20],
  ])('%s is %d mm', (text, mm) => {
    expect(parseLength(text)).toBe(mm);
  });

  // The international inch is 25.4 mm exactly (1959 agreement), the foot twelve of them.
  it.each<[string, number]>([
    ['57 in', 1447.8],
    ['57in', 1447.8],
    ['57 inches', 1447.8],
    ['57"', 1447.8],
    ["57''", 1447.8],
    ['57″', 1447.8],
    ['57 ins.', 1447.8],
    ['8½ in', 215.9],
    ['8 ½ in', 215.9],
    ['8 1/2 in', 215.9],
    ['8-1/2 in', 215.9],
    ['8 1⁄2 in', 215.9],
    ['8.5 in', 215.9],
    ['⅜"', 9.525],
    ['1.125 in', 28.575],
    ['6 ft', 1828.8],
    ['6 feet', 1828.8],
    ['1 foot', 304.8],
    ["6'", 1828.8],
    ['4.5 ft', 1371.6],
    [`11' 8 1/2"`, 3568.7],
    [`11'8 1/2"`, 3568.7],
    [`11'-8 1/2"`, 3568.7],
    [`11' - 8-1/2"`, 3568.7],
    ['11ft 8½in', 3568.7],
    ['11 ft. 8.5 in.', 3568.7],
    ['11’ 8 ½”', 3568.7],
    ['11′ 8½″', 3568.7],
    ['11´ 8½´´', 3568.7],
    ['11 Feet 8½ Inches', 3568.7],
    ['12ft 6in', 3810],
    ["12'6", 3810],
    ['12 ft 6', 3810],
    ["12' 6 1/2", 3822.7],
    ['0 ft 6 in', 152.4],
  ])('%s is %d mm', (text, mm) => {
    expect(parseLength(text)).toBe(mm);
  });

  it.each<[string, number]>([
    ['5 m 20 cm', 5200],
    ['5m20cm', 5200],
    ['5 m 20 cm 5 mm', 5205],
    ['5 m 205 mm', 5205],
    ['20 cm 5 mm', 205],
    ['5 m 2.5 cm', 5025],
    ['5m20', 5200],
    ['5m05', 5050],
  ])('%s is %d mm', (text, mm) => {
    expect(parseLength(text)).toBe(mm);
  });

  it('takes a sign before the whole length, in each shape of a minus', () => {
    for (const minus of ['-', '−', '–', '‐', '‑']) {
      expect(parseLength(`${minus}120 cm`)).toBe(-1200);
      expect(parseLength(`${minus} 120 cm`)).toBe(-1200);
      expect(parseLength(`${minus}5 ft 6 in`)).toBe(-1676.4);
    }
  });

  it('needs no unit for nothing, and never answers minus nothing', () => {
    for (const text of ['0', '-0', '0.0', '0 m', '-0 ft 0 in'])
      expect(Object.is(parseLength(text), 0)).toBe(true);
  });

  it('reads decimals to the nearest double, not to the product of two of them', () => {
    // 1.001 * 1000 is 1000.9999999999999 and 0.29 * 1000 is 290 only by luck of the last bit.
    expect(parseLength('1.001 m')).toBe(1001);
    expect(parseLength('4.35 m')).toBe(4350);
    expect(parseLength('2.007 m')).toBe(2007);
    expect(parseLength('50 in')).toBe(1270);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999 }), (mm) => {
        const digits = String(mm).padStart(4, '0');
        const metres = `${digits.slice(0, -3)}.${digits.slice(-3)}`;
        expect(parseLength(`${metres} m`)).toBe(mm);
      }),
      { seed: SEED },
    );
  });
});

describe('text that is refused', () => {
  const REFUSED: readonly [string, LengthProblemCode, RegExp][] = [
    ['', 'empty-length', /183 cm/],
    [' \t\u00a0', 'empty-length', /183 cm/],
    [`${'1'.repeat(99)} m`, 'length-too-long', /101 characters/],
    ['NaN', 'no-number', /no number/],
    ['Infinity', 'no-number', /no number/],
    ['cm', 'no-number', /no number/],
    ['-', 'no-number', /at its end/],
    ['5 ft-', 'no-number', /at its end/],
    ['about 5 m', 'no-number', /before "a"/],
    ['-"', 'no-number', /no number/],
    ['5. m', 'bad-number', /no digit after the point/],
    ['5, m', 'bad-number', /no digit after the comma/],
    ['. m', 'bad-number', /no digit/],
    ['1e3 mm', 'bad-number', /exponent/],
    ['1.5E+2 mm', 'bad-number', /exponent/],
    ['1,234 m', 'ambiguous-number', /1234 or 1\.234/],
    ['12,500 mm', 'ambiguous-number', /12500 or 12\.500/],
    ['1.234 mm', 'ambiguous-number', /1234 mm or 1\.234 mm/],
    ['12.500 mm', 'ambiguous-number', /12500 mm or 12\.5 mm/],
    ['1.234,5 m', 'ambiguous-number', /more than one/],
    ['1,234.5 m', 'ambiguous-number', /more than one/],
    ['1,5,5 m', 'ambiguous-number', /more than one/],
    ['1.5.5 m', 'ambiguous-number', /more than one/],
    ['1 234 mm', 'ambiguous-number', /without spaces/],
    ['8.5 1/2 in', 'ambiguous-number', /no unit after "8\.5"/],
    ['5 ft.6 in', 'ambiguous-number', /space after the unit/],
    ['3/2 in', 'bad-fraction', /1 1\/2 in/],
    ['8 8/8 in', 'bad-fraction', /not less than 1/],
    ['8 1/0 in', 'bad-fraction', /under the line/],
    ['8 1/ in', 'bad-fraction', /under the line/],
    ['183', 'no-unit', /write "183 cm" or "183 mm"/],
    ['4.5', 'no-unit', /write "4.5 m" or "4.5 ft"/],
    ['57', 'no-unit', /write "57 cm" or "57 in"/],
    ['8 1/2', 'no-unit', /write "8 1\/2 m" or "8 1\/2 ft"/],
    ['5m5', 'no-unit', /write "5 m 5 cm" or "5\.5 m"/],
    ['5m 20', 'no-unit', /write "5 m 20 cm" or "5\.20 m"/],
    ['5m200', 'no-unit', /unit after each/],
    ['20 cm 5', 'no-unit', /unit after each/],
    ['5 km', 'unknown-unit', /"km"/],
    ['5 yards', 'unknown-unit', /mm, cm, m, in or ft/],
    ['5 ft 20 cm', 'mixed-units', /cm after ft/],
    ['6 in 5 ft', 'mixed-units', /ft after in/],
    ['5 ft 5 ft', 'mixed-units', /ft after ft/],
    ["1'234 mm", 'mixed-units', /mm after ft/],
    ['5.5 ft 6 in', 'mixed-units', /whole ft/],
    ['5½ m 20 cm', 'mixed-units', /whole m/],
    ['5ft 14in', 'part-too-large', /14 in after ft.*less than 12/],
    ["5'12", 'part-too-large', /less than 12/],
    ['5 m 120 cm', 'part-too-large', /less than 100/],
    ['2 m 1500 mm', 'part-too-large', /less than 1000/],
    ['20 cm 12 mm', 'part-too-large', /less than 10 mm/],
    ['--1 m', 'unreadable-length', /"-" where a number/],
    ['5 m -20 cm', 'unreadable-length', /"-" where a number/],
    ['5-6 m', 'unreadable-length', /"-" where a unit/],
    ['5 m²', 'unreadable-length', /"²"/],
    ['½½ m', 'unreadable-length', /"½"/],
    ['5 m & 20 cm', 'unreadable-length', /"&"/],
    ['😀', 'unreadable-length', /"😀"/],
  ];

  it.each(REFUSED)('%s: %s', (text, code, words) => {
    const parsed = tryParseLength(text);
    expect(parsed).toMatchObject({ ok: false, code, message: expect.stringMatching(words) });
  });

  it('throws the same problem, alone and with an empty path', () => {
    try {
      parseLength('183');
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(InputError);
      if (!(error instanceof InputError)) return;
      expect(error.problems).toEqual([
        { path: '', code: 'no-unit', message: '"183" has no unit; write "183 cm" or "183 mm".' },
      ]);
    }
  });

  it('refuses huge text at once', () => {
    expect(codeOf('9'.repeat(10_000_000))).toBe('length-too-long');
  });

  it('says a sentence of its own about every text, and neither crashes nor answers an odd number', () => {
    const alphabet = fc.constantFrom(...`0123456789 .,/'"-−½⅛’”mcftinMe\u00a0²😀`);
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(alphabet, { maxLength: 14 }).map((a) => a.join('')),
        ),
        (text) => {
          const parsed = tryParseLength(text);
          if (parsed.ok) expect(Number.isFinite(parsed.mm) && !Object.is(parsed.mm, -0)).toBe(true);
          else expect(parsed.message).toMatch(/^[^\0]+\.$/s);
        },
      ),
      { seed: SEED, numRuns: 3000 },
    );
  });

  it('mirrors a length when the minus is added', () => {
    const alphabet = fc.constantFrom(...'0123456789 ./\'"½mcftin');
    fc.assert(
      fc.property(fc.array(alphabet, { maxLength: 12 }), (chars) => {
        const text = `1${chars.join('')}`;
        const plain = tryParseLength(text);
        const minus = tryParseLength(`-${text}`);
        expect(minus.ok).toBe(plain.ok);
        if (plain.ok && minus.ok) expect(minus.mm + plain.mm).toBe(0);
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });
});
