import { InputError } from '../input-error.js';
import { readNumber, type WrittenNumber } from './read-number.js';
import { type PartUnit, readUnit, startsUnit } from './read-unit.js';
import {
  type Cursor,
  HYPHENS,
  isLetter,
  isOneOf,
  type LengthProblemCode,
  peek,
  type Refusal,
  refuse,
  skipSpace,
} from './text-cursor.js';

export type { LengthProblemCode };

/** A length in mm, or the reason why the text is not one, in words that say what to write instead. */
export type ParsedLength = { readonly ok: true; readonly mm: number } | Refusal;

/**
 * Millimetres from text as people write it: a number with its unit, such as `183 cm`, `4.5 m`, `4,5 m`, `57 in`,
 * `8½ in`, `-120 cm`, or parts from large to small, such as `11' 8 1/2"`, `12ft 6in`, `5 m 20 cm`.
 *
 * - Units: mm, cm, m, in, ft, their English names, `'` and `"` in any of their typographic shapes; capitals do not matter.
 * - A decimal point or comma. A comma before exactly three digits (`1,234 m`) is refused: it may group thousands. So is
 *   such a point before mm (`1.234 mm`); before the other units it is a decimal point (`1.234 m`, `5.715 cm`).
 * - A sign stands before the whole length. Inches after feet are under 12, centimetres after metres under 100.
 * - After feet the inch mark may be missing (`12'6` is 12 ft 6 in). `5m20` is 5 m 20 cm: with two digits and no space
 *   nothing else can be meant. A lone `0` needs no unit.
 *
 * In mm, cm and m the result is the double nearest to what was written; in inches and feet, and with fractions, it may be
 * a few roundings off. Text of more than 100 characters is refused at once.
 *
 * @throws InputError with one problem, whose path is empty, for text that is wrong or can be read in two ways.
 */
export function parseLength(text: string): number {
  if (typeof text !== 'string') {
    const message = 'Expected a length as text with its unit, such as "183 cm".';
    throw new InputError([{ path: '', code: 'not-text', message }]);
  }
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
  if (at.pos === text.length) {
    return refuse('empty-length', 'the text is empty; write a number and its unit, such as "183 cm".');
  }
  const sign = takeSign(at);
  skipSpace(at);
  const parts: Part[] = [];
  do {
    const part = readPart(at, parts.at(-1));
    if ('ok' in part) return part;
    parts.push(part);
    skipSpace(at);
  } while (at.pos < text.length);
  return addUp(parts, sign, text);
}

const MAX_CHARACTERS = 100;
const MINUS_SIGNS = '-−–‐‑';

/** What one of each unit measures, and what it may follow: `below[u]` of it make one u. */
const UNITS: {
  readonly [unit in PartUnit]: {
    /** Power of ten of mm; null for inches and feet. */
    readonly exponent: number | null;
    readonly tenthsOfMm: number;
    readonly below: { readonly [larger in PartUnit]?: number };
  };
} = {
  mm: { exponent: 0, tenthsOfMm: 10, below: { cm: 10, m: 1000 } },
  cm: { exponent: 1, tenthsOfMm: 100, below: { m: 100 } },
  m: { exponent: 3, tenthsOfMm: 10_000, below: {} },
  in: { exponent: null, tenthsOfMm: 254, below: { ft: 12 } },
  ft: { exponent: null, tenthsOfMm: 3048, below: {} },
};

interface Part {
  readonly number: WrittenNumber;
  readonly unit: PartUnit;
}

function takeSign(at: Cursor): 1 | -1 {
  const char = peek(at);
  const minus = isOneOf(MINUS_SIGNS, char);
  if (minus || char === '+') at.pos++;
  return minus ? -1 : 1;
}

/** One number with its unit, or with the unit that the part before it implies. */
function readPart(at: Cursor, last: Part | undefined): Part | Refusal {
  if (last?.unit === 'ft' && isOneOf(HYPHENS, peek(at))) {
    at.pos++;
    skipSpace(at);
  }
  const start = at.pos;
  if (startsUnit(at) || start === at.text.length) {
    const where = start === at.text.length ? 'at its end' : `before "${peek(at)}"`;
    return refuse(
      'no-number',
      `"${at.text}" has no number ${where}; write a number and its unit, such as "183 cm".`,
    );
  }
  const number = readNumber(at);
  if ('ok' in number) return number;
  const written = at.text.slice(start, at.pos);
  skipSpace(at);
  const unit = readUnit(at);
  if (unit === null) return implyUnit(at, number, written, start, last);
  if (typeof unit !== 'string') return unit;
  if (number.grouped && unit === 'mm') {
    return refuse(
      'ambiguous-number',
      `"${written} ${unit}" may mean ${written.replace('.', '')} ${unit} or ${Number(written)} ${unit}; write it without the point, or with one or two decimals.`,
    );
  }
  return { number, unit };
}

/** What a number without a unit means: inches after feet, centimetres after metres where two digits touch the m. */
function implyUnit(
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
    const [one, two] = likelyUnits(Number(number.decimal));
    return refuse('no-unit', `"${text}" has no unit; write "${written} ${one}" or "${written} ${two}".`);
  }
  if (last.unit === 'ft') return { number, unit: 'in' };
  if (last.unit === 'm' && number.whole && written.length === 2 && isLetter(text.charAt(start - 1))) {
    return { number, unit: 'cm' };
  }
  const hint =
    last.unit === 'm' && number.whole && written.length < 3
      ? `write "${last.number.decimal} m ${written} cm" or "${last.number.decimal}.${written} m"`
      : 'write a unit after each number';
  return refuse('no-unit', `"${text}" has no unit after "${written}"; ${hint}.`);
}

/** The two units that a bare number of this size is most likely meant in. */
function likelyUnits(value: number): readonly [PartUnit, PartUnit] {
  if (value < 20) return ['m', 'ft'];
  return value < 100 ? ['cm', 'in'] : ['cm', 'mm'];
}

function addUp(parts: readonly Part[], sign: 1 | -1, text: string): ParsedLength {
  let previous: Part | undefined;
  let tenthsOfMm = 0;
  let mm = 0;
  for (const part of parts) {
    const { number, unit } = part;
    const value = Number(number.decimal) + number.fraction;
    if (previous !== undefined) {
      const refusal = refusePair(previous, part, value, text);
      if (refusal !== null) return refusal;
    }
    const { exponent, tenthsOfMm: each } = UNITS[unit];
    // Decimal units move the point of the text: "1.001 m" is 1001 mm, where 1.001 * 1000 is 1000.9999999999999. Inches and
    // feet are whole tenths of a mm, so that only the division at the end rounds.
    if (exponent !== null && number.fraction === 0) mm += Number(`${number.decimal}e${exponent}`);
    else tenthsOfMm += value * each;
    previous = part;
  }
  const total = mm + tenthsOfMm / 10;
  return { ok: true, mm: total === 0 ? 0 : sign * total };
}

/** Why one part may not follow the other, or null. */
function refusePair(previous: Part, part: Part, value: number, text: string): Refusal | null {
  const { unit } = part;
  const limit = UNITS[unit].below[previous.unit];
  if (limit === undefined) {
    return refuse(
      'mixed-units',
      `"${text}" has ${unit} after ${previous.unit}; write one unit, or parts as in "5 m 20 cm" or "5 ft 6 in".`,
    );
  }
  if (!previous.number.whole) {
    return refuse(
      'mixed-units',
      `"${text}" has ${unit} after ${previous.unit} with a fraction; write one unit, or whole ${previous.unit}.`,
    );
  }
  if (value >= limit) {
    return refuse(
      'part-too-large',
      `"${text}" has ${value} ${unit} after ${previous.unit}; it must be less than ${limit} ${unit} there.`,
    );
  }
  return null;
}
