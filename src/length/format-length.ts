import { InputError } from '../input-error.js';
import type { LengthUnit } from './length.js';

/** How finely {@link formatLength} writes. */
export interface FormatLengthOptions {
  /** Digits after the point for mm (default 0), cm (default 1) and m (default 3): 0 to 2, for m 0 to 6. */
  readonly decimals?: number;
  /** Inches are rounded to one part in so many; default 8. */
  readonly denominator?: 1 | 2 | 4 | 8 | 16 | 32 | 64;
}

/**
 * A length as text with its unit: `1830 mm`, `183 cm`, `1.83 m`, `57 1/8 in`, `11 ft 8 1/2 in`. Rounded to the nearest
 * step, half a step away from zero; the steps are 1 mm, 1 mm, 1 mm and 1/8 in unless the options say otherwise. Zeros
 * after the point are left out (m keeps two decimals), fractions are reduced, and feet or inches of 0 are left out beside
 * the other. What rounds to nothing has no sign. `parseLength` reads every result back to within half a step.
 *
 * @throws InputError for a length that is not finite or beyond 1e11 mm, and for options out of range.
 */
export function formatLength(mm: number, unit: LengthUnit, options: FormatLengthOptions = {}): string {
  if (typeof mm !== 'number' || !(Math.abs(mm) <= MAX_MM)) {
    refuse('', 'not-a-number', `Only a finite length of at most ${MAX_MM} mm can be written.`);
  }
  if (!UNITS.includes(unit)) refuse('unit', 'unknown-unit', `The unit is one of ${UNITS.join(', ')}.`);
  if (typeof options !== 'object' || options === null)
    refuse('options', 'not-an-object', 'Expected an object with options.');
  const size = Math.abs(mm);
  const text = unit === 'in' || unit === 'ftin' ? inches(size, unit, options) : decimals(size, unit, options);
  return mm < 0 && /[1-9]/.test(text) ? `-${text}` : text;
}

const UNITS: readonly LengthUnit[] = ['mm', 'cm', 'm', 'in', 'ftin'];

function refuse(path: string, code: string, message: string): never {
  throw new InputError([{ path, code, message }]);
}

/** Ten times as far as a room may lie from its origin; doubles still carry the finest step there. */
const MAX_MM = 1e11;

const DECIMAL_UNITS = {
  mm: { perUnit: 1, usual: 0, kept: 0, most: 2 },
  cm: { perUnit: 10, usual: 1, kept: 0, most: 2 },
  m: { perUnit: 1000, usual: 3, kept: 2, most: 6 },
} as const;

function decimals(mm: number, unit: 'mm' | 'cm' | 'm', options: FormatLengthOptions): string {
  const { perUnit, usual, kept, most } = DECIMAL_UNITS[unit];
  const digits = options.decimals ?? usual;
  if (!Number.isInteger(digits) || digits < 0 || digits > most) {
    const message = `The decimals of ${unit} are a whole number from 0 to ${most}.`;
    refuse('options.decimals', 'out-of-range', message);
  }
  const perStep = 10 ** digits;
  // One whole number of steps, so that no digit is rounded twice.
  const steps = Math.round((mm * perStep) / perUnit);
  const whole = Math.floor(steps / perStep);
  let after = digits === 0 ? '' : String(steps % perStep).padStart(digits, '0');
  while (after.length > kept && after.endsWith('0')) after = after.slice(0, -1);
  return after === '' ? `${whole} ${unit}` : `${whole}.${after} ${unit}`;
}

const TENTHS_PER_INCH = 254;

function inches(mm: number, unit: 'in' | 'ftin', options: FormatLengthOptions): string {
  const denominator = options.denominator ?? 8;
  if (![1, 2, 4, 8, 16, 32, 64].includes(denominator)) {
    const message = 'Inches are rounded to whole ones, halves, quarters, 8ths, 16ths, 32nds or 64ths.';
    refuse('options.denominator', 'out-of-range', message);
  }
  // Rounded once, to whole parts: 12 inches can then not be left over beside the feet.
  const parts = Math.round((mm * 10 * denominator) / TENTHS_PER_INCH);
  const perFoot = 12 * denominator;
  const feet = unit === 'ftin' ? Math.floor(parts / perFoot) : 0;
  const rest = parts - feet * perFoot;
  if (feet > 0 && rest === 0) return `${feet} ft`;
  const text = `${wholeAndFraction(rest, denominator)} in`;
  return feet > 0 ? `${feet} ft ${text}` : text;
}

function wholeAndFraction(parts: number, denominator: number): string {
  const whole = Math.floor(parts / denominator);
  let over = denominator;
  let left = parts - whole * denominator;
  if (left === 0) return String(whole);
  while (left % 2 === 0) {
    left /= 2;
    over /= 2;
  }
  return whole === 0 ? `${left}/${over}` : `${whole} ${left}/${over}`;
}
