import {
  type Cursor,
  isDigit,
  isLetter,
  isOneOf,
  peek,
  type Refusal,
  refuse,
  refuseHere,
  takeWhile,
} from './text-cursor.js';

/** The units that a part of a length is written in. */
export type PartUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft';

const UNIT_WORDS: { readonly [unit in PartUnit]: readonly string[] } = {
  mm: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'],
  cm: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  m: ['m', 'metre', 'metres', 'meter', 'meters'],
  in: ['in', 'ins', 'inch', 'inches'],
  ft: ['ft', 'foot', 'feet'],
};
const PART_UNITS: readonly PartUnit[] = ['mm', 'cm', 'm', 'in', 'ft'];

/** Apostrophe, prime, curly quotes, acute accent and modifier prime: one is feet, two in a row are inches. */
const SINGLE_MARKS = "'′’‘´ʹ";
const DOUBLE_MARKS = '"″”“ʺ';

/** The unit at the cursor, null where the text ends or a digit follows, or why what stands there is no unit. */
export function readUnit(at: Cursor): PartUnit | null | Refusal {
  const char = peek(at);
  if (char === '' || isDigit(char)) return null;
  if (isOneOf(DOUBLE_MARKS, char)) {
    at.pos++;
    return 'in';
  }
  if (isOneOf(SINGLE_MARKS, char)) {
    at.pos++;
    if (!isOneOf(SINGLE_MARKS, peek(at))) return 'ft';
    at.pos++;
    return 'in';
  }
  const word = takeWhile(at, isLetter);
  if (word === '') return refuseHere(at, 'unit');
  const lower = word.toLowerCase();
  const unit = PART_UNITS.find((u) => UNIT_WORDS[u].includes(lower));
  if (unit === undefined)
    return refuse('unknown-unit', `"${word}" is not a unit that is known here; use mm, cm, m, in or ft.`);
  if (peek(at) === '.') {
    at.pos++;
    if (isDigit(peek(at))) {
      return refuse(
        'ambiguous-number',
        `"${at.text}" has a point between "${word}" and a digit; put a space after the unit.`,
      );
    }
  }
  return unit;
}

/** Whether a unit could begin here: then a number is missing before it. */
export function startsUnit(at: Cursor): boolean {
  const char = peek(at);
  return isLetter(char) || isOneOf(SINGLE_MARKS, char) || isOneOf(DOUBLE_MARKS, char);
}
