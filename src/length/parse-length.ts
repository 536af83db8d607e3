import { InputError } from '../input-error.js';

/** Why a text is not a length. */
export type LengthProblemCode =
  | 'empty-length'
  | 'length-too-long'
  | 'no-number'
  | 'bad-number'
  | 'ambiguous-number'
  | 'bad-fraction'
  | 'no-unit'
  | 'unknown-unit'
  | 'mixed-units'
  | 'part-too-large'
  | 'unreadable-length';

/** A length in mm, or the reason why the text is not one, in words that say what to write instead. */
export type ParsedLength =
  | { readonly ok: true; readonly mm: number }
  | { readonly ok: false; readonly code: LengthProblemCode; readonly message: string };

/**
 * Millimetres from text as people write it: a number with its unit, such as `183 cm`, `4.5 m`, `4,5 m`, `57 in`,
 * `8½ in`, `-120 cm`, or parts from large to small, such as `11' 8 1/2"`, `12ft 6in`, `5 m 20 cm`.
 *
 * - Units: mm, cm, m, in, ft, their names, `'` and `"` in any of their typographic shapes; capitals do not matter.
 * - A decimal point or comma. A comma before exactly three digits (`1,234 m`) is refused: it may group thousands. So is such
 *   a point before mm or cm (`1.234 mm`); before m, in and ft it is a decimal point (`1.234 m`).
 * - A sign stands before the whole length. Inches after feet are under 12, centimetres after metres under 100.
 * - After feet the inch mark may be missing (`12'6` is 12 ft 6 in); `5m20` is 5 m 20 cm, with two digits and no space. A lone
 *   `0` needs no unit.
 *
 * The value is the double nearest to what was written, save that thirds and the like round once more. At most 100 characters.
 *
 * @throws InputError with one problem, whose path is empty, for text that is wrong or can be read in two ways.
 */
export function parseLength(text: string): number {
  const parsed = tryParseLength(text);
  if (parsed.ok) return parsed.mm;
  throw new InputError([{ path: '', code: parsed.code, message: parsed.message }]);
}

/** As {@link parseLength}, with the problem as data instead of an error. */
export function tryParseLength(text: string): ParsedLength {
  if (text.length > MAX_CHARACTERS) {
    return refuse(
      'length-too-long',
      `the text has ${text.length} characters; a length has at most ${MAX_CHARACTERS}.`,
    );
  }
  const at: Cursor = { text, pos: 0 };
  skipSpace(at);
  if (at.pos === text.length)
    return refuse('empty-length', 'the text is empty; write a number and its unit, such as "183 cm".');
  const sign = takeSign(at);
  skipSpace(at);
  const parts: Part[] = [];
  while (at.pos < text.length) {
    const part = readPart(at, parts);
    if ('ok' in part) return part;
    parts.push(part);
    skipSpace(at);
  }
  if (parts.length === 0)
    return refuse('no-number', `"${text}" has no number; write a number and its unit, such as "183 cm".`);
  return addUp(parts, sign, text);
}

const MAX_CHARACTERS = 100;

type Unit = 'mm' | 'cm' | 'm' | 'in' | 'ft';

/** `exponent`: a unit is 10^exponent mm; of inches and feet, the tenths of a mm in one. */
const UNITS: {
  readonly [unit in Unit]: {
    readonly exponent: number;
    readonly tenths: number;
    readonly perLarger: number;
    readonly larger: readonly Unit[];
  };
} = {
  mm: { exponent: 0, tenths: 10, perLarger: 10, larger: ['cm', 'm'] },
  cm: { exponent: 1, tenths: 100, perLarger: 100, larger: ['m'] },
  m: { exponent: 3, tenths: 10_000, perLarger: Number.POSITIVE_INFINITY, larger: [] },
  in: { exponent: Number.NaN, tenths: 254, perLarger: 12, larger: ['ft'] },
  ft: { exponent: Number.NaN, tenths: 3048, perLarger: Number.POSITIVE_INFINITY, larger: [] },
};

const UNIT_WORDS: ReadonlyMap<string, Unit> = /* @__PURE__ */ new Map([
  ['mm', 'mm'],
  ['millimetre', 'mm'],
  ['millimetres', 'mm'],
  ['millimeter', 'mm'],
  ['millimeters', 'mm'],
  ['cm', 'cm'],
  ['centimetre', 'cm'],
  ['centimetres', 'cm'],
  ['centimeter', 'cm'],
  ['centimeters', 'cm'],
  ['m', 'm'],
  ['metre', 'm'],
  ['metres', 'm'],
  ['meter', 'm'],
  ['meters', 'm'],
  ['in', 'in'],
  ['ins', 'in'],
  ['inch', 'in'],
  ['inches', 'in'],
  ['ft', 'ft'],
  ['foot', 'ft'],
  ['feet', 'ft'],
]);

/** Apostrophe, prime, curly quotes, acute accent and modifier prime: one is feet, two in a row are inches. */
const SINGLE_MARKS = "'′’‘´ʹ";
const DOUBLE_MARKS = '"″”“ʺ';
/** Hyphens that join feet to inches (`11'-8"`) or a whole number to its fraction (`8-1/2`). */
const HYPHENS = '-‐‑';
const MINUS_SIGNS = '-−–‐‑';
const SLASHES = '/⁄';
const SPACES = ' \t\n\r\u00a0\u2007\u2009\u202f';
const VULGAR = '½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒';
const VULGAR_OVER: readonly number[] = [
  1, 2, 1, 3, 2, 3, 1, 4, 3, 4, 1, 5, 2, 5, 3, 5, 4, 5, 1, 6, 5, 6, 1, 7, 1, 8, 3, 8, 5, 8, 7, 8, 1, 9, 1, 10,
];

interface Cursor {
  readonly text: string;
  pos: number;
}

interface WrittenNumber {
  /** Decimal digits with a point: exact, for units that are a power of ten of mm. */
  readonly decimal: string;
  /** The proper fraction after it; 0 without. */
  readonly fraction: number;
  /** Digits alone: no decimals and no fraction. */
  readonly whole: boolean;
  /** A point before exactly three digits, which may group thousands. */
  readonly grouped: boolean;
}

interface Part {
  readonly number: WrittenNumber;
  readonly unit: Unit;
}

type Refusal = Extract<ParsedLength, { ok: false }>;

function refuse(code: LengthProblemCode, message: string): Refusal {
  return { ok: false, code, message };
}

function isOneOf(set: string, char: string): boolean {
  return char !== '' && set.includes(char);
}

function isDigit(char: string): boolean {
  return char >= '0' && char <= '9';
}

function isLetter(char: string): boolean {
  return char.toLowerCase() !== char.toUpperCase();
}

function skipSpace(at: Cursor): void {
  while (isOneOf(SPACES, at.text.charAt(at.pos))) at.pos++;
}

function takeWhile(at: Cursor, wanted: (char: string) => boolean): string {
  const start = at.pos;
  while (at.pos < at.text.length && wanted(at.text.charAt(at.pos))) at.pos++;
  return at.text.slice(start, at.pos);
}

function takeSign(at: Cursor): 1 | -1 {
  const char = at.text.charAt(at.pos);
  const minus = isOneOf(MINUS_SIGNS, char);
  if (minus || char === '+') at.pos++;
  return minus ? -1 : 1;
}

/** One number with its unit, or with the unit that the part before it implies. */
function readPart(at: Cursor, before: readonly Part[]): Part | Refusal {
  const last = before.at(-1);
  if (last?.unit === 'ft' && isOneOf(HYPHENS, at.text.charAt(at.pos))) {
    at.pos++;
    skipSpace(at);
  }
  const start = at.pos;
  const number = readNumber(at);
  if ('ok' in number) return number;
  const end = at.pos;
  const written = at.text.slice(start, end);
  const next = at.text.charAt(at.pos);
  if ((next === 'e' || next === 'E') && /^[+-]?\d/.test(at.text.slice(at.pos + 1, at.pos + 3))) {
    return refuse('bad-number', `"${at.text}" has an exponent; write the number out, such as "1500 mm".`);
  }
  skipSpace(at);
  const unit = readUnit(at);
  if (unit === null) return impliedUnit(at, number, written, start, last);
  if (typeof unit !== 'string') return unit;
  if (number.grouped && (unit === 'mm' || unit === 'cm')) {
    return refuse(
      'ambiguous-number',
      `"${written} ${unit}" may mean ${written.replace('.', '')} ${unit} or ${Number(written)} ${unit}; write it without the point, or with one or two decimals.`,
    );
  }
  return { number, unit };
}

function readNumber(at: Cursor): WrittenNumber | Refusal {
  const { text } = at;
  const first = text.charAt(at.pos);
  const vulgar = takeVulgar(at);
  if (vulgar !== null) return { decimal: '0', fraction: vulgar, whole: false, grouped: false };
  const run = takeWhile(at, (c) => isDigit(c) || c === '.' || c === ',');
  if (run === '') {
    const found = String.fromCodePoint(text.codePointAt(at.pos) ?? 0);
    if (isLetter(first) || isOneOf(SINGLE_MARKS + DOUBLE_MARKS, first)) {
      return refuse(
        'no-number',
        `"${text}" has no number before "${found}"; write a number and its unit, such as "183 cm".`,
      );
    }
    return refuse(
      'unreadable-length',
      `"${text}" has "${found}" in a place where a number should stand; write a number and its unit, such as "183 cm".`,
    );
  }
  const marks = [...run].filter((c) => !isDigit(c));
  if (marks.length > 1) {
    return refuse(
      'ambiguous-number',
      `"${run}" has more than one point or comma; write thousands without a separator, such as "1234.5 mm".`,
    );
  }
  const mark = marks[0];
  if (mark !== undefined) return readDecimals(text, run, mark);
  if (isOneOf(SLASHES, text.charAt(at.pos))) {
    const fraction = readFraction(at, run);
    return typeof fraction === 'number' ? { decimal: '0', fraction, whole: false, grouped: false } : fraction;
  }
  const fraction = readFractionAfter(at);
  if (typeof fraction !== 'number') return fraction;
  return { decimal: run, fraction, whole: fraction === 0, grouped: false };
}

function readDecimals(text: string, run: string, mark: string): WrittenNumber | Refusal {
  const [whole = '', decimals = ''] = run.split(mark);
  if (decimals === '')
    return refuse(
      'bad-number',
      `"${text}" has no digit after "${run}"; write "${whole === '' ? '0' : whole}" or add the decimals.`,
    );
  const grouped = decimals.length === 3 && whole.length >= 1 && whole.length <= 3 && !whole.startsWith('0');
  if (grouped && mark === ',') {
    return refuse(
      'ambiguous-number',
      `"${run}" may mean ${whole}${decimals} or ${whole}.${decimals}; write it without the comma, or with a decimal point.`,
    );
  }
  return { decimal: `${whole === '' ? '0' : whole}.${decimals}`, fraction: 0, whole: false, grouped };
}

/** The fraction that follows a whole number (`8 1/2`, `8-1/2`, `8½`), 0 without one. */
function readFractionAfter(at: Cursor): number | Refusal {
  const start = at.pos;
  skipSpace(at);
  const vulgar = takeVulgar(at);
  if (vulgar !== null) return vulgar;
  if (at.pos === start && isOneOf(HYPHENS, at.text.charAt(at.pos))) at.pos++;
  if (at.pos > start) {
    const numerator = takeWhile(at, isDigit);
    if (numerator !== '' && isOneOf(SLASHES, at.text.charAt(at.pos))) return readFraction(at, numerator);
  }
  at.pos = start;
  return 0;
}

function takeVulgar(at: Cursor): number | null {
  const char = at.text.charAt(at.pos);
  const index = char === '' ? -1 : VULGAR.indexOf(char);
  if (index < 0) return null;
  at.pos++;
  return (VULGAR_OVER[2 * index] ?? 0) / (VULGAR_OVER[2 * index + 1] ?? 1);
}

/** From the slash on. */
function readFraction(at: Cursor, numerator: string): number | Refusal {
  at.pos++;
  const denominator = takeWhile(at, isDigit);
  const over = Number(denominator);
  if (over === 0)
    return refuse(
      'bad-fraction',
      `"${at.text}" has a fraction with nothing, or 0, under the line; write it as in "8 1/2 in".`,
    );
  if (Number(numerator) >= over) {
    return refuse(
      'bad-fraction',
      `${numerator}/${denominator} is not less than 1; write the whole number before the fraction, as in "1 1/2 in".`,
    );
  }
  return Number(numerator) / over;
}

/** A unit, null where there is none, or why what stands there is no unit. */
function readUnit(at: Cursor): Unit | null | Refusal {
  const { text } = at;
  const char = text.charAt(at.pos);
  if (char === '' || isDigit(char)) return null;
  if (isOneOf(DOUBLE_MARKS, char)) {
    at.pos++;
    return 'in';
  }
  if (isOneOf(SINGLE_MARKS, char)) {
    at.pos++;
    if (!isOneOf(SINGLE_MARKS, text.charAt(at.pos))) return 'ft';
    at.pos++;
    return 'in';
  }
  const word = takeWhile(at, isLetter);
  if (word === '') {
    const found = String.fromCodePoint(text.codePointAt(at.pos) ?? 0);
    return refuse(
      'unreadable-length',
      `"${text}" has "${found}" in a place where a unit should stand; write a number and its unit, such as "183 cm".`,
    );
  }
  const unit = UNIT_WORDS.get(word.toLowerCase());
  if (unit === undefined)
    return refuse('unknown-unit', `"${word}" is not a unit that is known here; use mm, cm, m, in or ft.`);
  if (text.charAt(at.pos) === '.') {
    at.pos++;
    if (isDigit(text.charAt(at.pos))) {
      return refuse(
        'ambiguous-number',
        `"${text}" has a point between "${word}" and a digit; put a space after the unit.`,
      );
    }
  }
  return unit;
}

/** What a number without a unit means: inches after feet, centimetres after metres where the two digits touch them. */
function impliedUnit(
  at: Cursor,
  number: WrittenNumber,
  written: string,
  start: number,
  last: Part | undefined,
): Part | Refusal {
  const { text } = at;
  if (at.pos < text.length) {
    return refuse(
      'ambiguous-number',
      `"${text}" has no unit after "${written}"; write one number without spaces, or a unit after each.`,
    );
  }
  if (last === undefined) {
    if (number.fraction === 0 && Number(number.decimal) === 0) return { number, unit: 'mm' };
    return refuse('no-unit', `"${text}" has no unit; ${unitHint(Number(number.decimal), written)}.`);
  }
  if (last.unit === 'ft') return { number, unit: 'in' };
  if (last.unit === 'm' && number.whole) {
    if (written.length === 2 && isLetter(text.charAt(start - 1))) return { number, unit: 'cm' };
    return refuse(
      'no-unit',
      `"${text}" has no unit after "${written}"; write "${last.number.decimal} m ${written} cm" or "${last.number.decimal}.${written} m".`,
    );
  }
  return refuse('no-unit', `"${text}" has no unit after "${written}"; write a unit after each number.`);
}

/** The two units that a bare number of this size is most likely meant in. */
function unitHint(value: number, written: string): string {
  const [one, two] = value < 20 ? ['m', 'ft'] : value < 100 ? ['cm', 'in'] : ['cm', 'mm'];
  return `write "${written} ${one}" or "${written} ${two}"`;
}

function addUp(parts: readonly Part[], sign: 1 | -1, text: string): ParsedLength {
  let previous: Part | undefined;
  let tenthsOfMm = 0;
  let mm = 0;
  for (const part of parts) {
    const { exponent, tenths, perLarger, larger } = UNITS[part.unit];
    const { decimal, fraction } = part.number;
    const value = Number(decimal) + fraction;
    if (previous !== undefined) {
      if (!larger.includes(previous.unit)) {
        return refuse(
          'mixed-units',
          `"${text}" has ${part.unit} after ${previous.unit}; write one unit, or "5 m 20 cm", or "5 ft 6 in".`,
        );
      }
      if (!previous.number.whole) {
        return refuse(
          'mixed-units',
          `"${text}" has ${part.unit} after ${previous.unit} that are not whole; write one unit, or a whole number of ${previous.unit}.`,
        );
      }
      const limit = part.unit === 'mm' && previous.unit === 'm' ? 1000 : perLarger;
      if (value >= limit) {
        return refuse(
          'part-too-large',
          `"${text}" has ${value} ${part.unit} after ${previous.unit}; less than ${limit} can stand there.`,
        );
      }
    }
    // Decimal units shift the decimal point of the text, so that "1.001 m" is 1001 mm and not 1000.9999999999999 mm.
    if (Number.isNaN(exponent)) tenthsOfMm += value * tenths;
    else mm += fraction === 0 ? Number(`${decimal}e${exponent}`) : value * 10 ** exponent;
    previous = part;
  }
  const total = mm + tenthsOfMm / 10;
  return { ok: true, mm: total === 0 ? 0 : sign * total };
}
