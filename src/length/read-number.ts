import {
  type Cursor,
  HYPHENS,
  isDigit,
  isOneOf,
  peek,
  type Refusal,
  refuse,
  refuseHere,
  skipSpace,
  takeWhile,
} from './text-cursor.js';

/** A number as it was written, before its unit is known. */
export interface WrittenNumber {
  /** Decimal digits with a point. Kept as text so that a unit which is a power of ten only moves the point. */
  readonly decimal: string;
  /** The proper fraction after it; 0 without. */
  readonly fraction: number;
  /** Digits alone: no decimals and no fraction. */
  readonly whole: boolean;
  /** A point before exactly three digits, which may group thousands. */
  readonly grouped: boolean;
}

const SLASHES = '/⁄';
const VULGAR = '½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒';
/** Numerator and denominator of each character of VULGAR. */
const VULGAR_OVER: readonly number[] = [
  1, 2, 1, 3, 2, 3, 1, 4, 3, 4, 1, 5, 2, 5, 3, 5, 4, 5, 1, 6, 5, 6, 1, 7, 1, 8, 3, 8, 5, 8, 7, 8, 1, 9, 1, 10,
];

/** The unsigned number at the cursor: `183`, `4.5`, `4,5`, `.5`, `1/2`, `8 1/2`, `8-1/2`, `8½`. */
export function readNumber(at: Cursor): WrittenNumber | Refusal {
  const vulgar = takeVulgar(at);
  if (vulgar !== null) return { decimal: '0', fraction: vulgar, whole: false, grouped: false };
  const run = takeWhile(at, (c) => isDigit(c) || c === '.' || c === ',');
  if (run === '') return refuseHere(at, 'number');
  const marks = [...run].filter((c) => !isDigit(c));
  if (marks.length > 1) {
    return refuse(
      'ambiguous-number',
      `"${run}" has more than one point or comma; write thousands without a separator, such as "1234.5 mm".`,
    );
  }
  const mark = marks[0];
  const number = mark === undefined ? readWhole(at, run) : readDecimals(run, mark);
  if ('ok' in number || !hasExponent(at)) return number;
  return refuse('bad-number', `"${at.text}" has an exponent; write the number out, such as "1500 mm".`);
}

function readWhole(at: Cursor, digits: string): WrittenNumber | Refusal {
  if (isOneOf(SLASHES, peek(at))) {
    const fraction = readFraction(at, digits);
    return typeof fraction === 'number' ? { decimal: '0', fraction, whole: false, grouped: false } : fraction;
  }
  const fraction = readFractionAfter(at);
  if (fraction === null) return { decimal: digits, fraction: 0, whole: true, grouped: false };
  return typeof fraction === 'number'
    ? { decimal: digits, fraction, whole: false, grouped: false }
    : fraction;
}

function readDecimals(run: string, mark: string): WrittenNumber | Refusal {
  const [whole = '', decimals = ''] = run.split(mark);
  if (decimals === '') {
    return refuse(
      'bad-number',
      `"${run}" has no digit after the ${mark === '.' ? 'point' : 'comma'}; leave it out or add the decimals.`,
    );
  }
  // Thousands never begin with a 0, so "0,125 m" can only be a decimal.
  const grouped = decimals.length === 3 && whole.length >= 1 && whole.length <= 3 && !whole.startsWith('0');
  if (grouped && mark === ',') {
    return refuse(
      'ambiguous-number',
      `"${run}" may mean ${whole}${decimals} or ${whole}.${decimals}; write it without the comma, or with another number of decimals.`,
    );
  }
  return { decimal: `${whole === '' ? '0' : whole}.${decimals}`, fraction: 0, whole: false, grouped };
}

/** The fraction that follows a whole number (`8 1/2`, `8-1/2`, `8½`); null, and the cursor where it was, without one. */
function readFractionAfter(at: Cursor): number | null | Refusal {
  const start = at.pos;
  skipSpace(at);
  const vulgar = takeVulgar(at);
  if (vulgar !== null) return vulgar;
  if (at.pos === start && isOneOf(HYPHENS, peek(at))) at.pos++;
  if (at.pos > start) {
    const numerator = takeWhile(at, isDigit);
    if (numerator !== '' && isOneOf(SLASHES, peek(at))) return readFraction(at, numerator);
  }
  at.pos = start;
  return null;
}

function takeVulgar(at: Cursor): number | null {
  const char = peek(at);
  const index = char === '' ? -1 : VULGAR.indexOf(char);
  if (index < 0) return null;
  at.pos++;
  return (VULGAR_OVER[2 * index] ?? 0) / (VULGAR_OVER[2 * index + 1] ?? 1);
}

/** A proper fraction, from the slash on. */
function readFraction(at: Cursor, numerator: string): number | Refusal {
  at.pos++;
  const denominator = takeWhile(at, isDigit);
  const over = Number(denominator);
  if (over === 0) {
    return refuse(
      'bad-fraction',
      `"${at.text}" has a fraction with 0 or nothing under the line; write it as in "8 1/2 in".`,
    );
  }
  if (Number(numerator) >= over) {
    return refuse(
      'bad-fraction',
      `${numerator}/${denominator} is not less than 1; write the whole number before the fraction, as in "1 1/2 in".`,
    );
  }
  return Number(numerator) / over;
}

function hasExponent(at: Cursor): boolean {
  const { text, pos } = at;
  const mark = text.charAt(pos);
  if (mark !== 'e' && mark !== 'E') return false;
  const next = text.charAt(pos + 1);
  return isDigit(next) || ((next === '+' || next === '-') && isDigit(text.charAt(pos + 2)));
}
