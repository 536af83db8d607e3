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

/** Why a text was refused, in words that say what to write instead. */
export interface Refusal {
  readonly ok: false;
  readonly code: LengthProblemCode;
  readonly message: string;
}

export function refuse(code: LengthProblemCode, message: string): Refusal {
  return { ok: false, code, message };
}

/** A place in a text that is read from left to right, each character a bounded number of times. */
export interface Cursor {
  readonly text: string;
  pos: number;
}

/** The character at the cursor; empty at the end. */
export function peek(at: Cursor): string {
  return at.text.charAt(at.pos);
}

export function takeWhile(at: Cursor, wanted: (char: string) => boolean): string {
  const start = at.pos;
  while (at.pos < at.text.length && wanted(peek(at))) at.pos++;
  return at.text.slice(start, at.pos);
}

/** Spaces that typists and typesetters put between a number and its unit. */
const SPACES = ' \t\n\r\u00a0\u2007\u2009\u202f';

export function skipSpace(at: Cursor): void {
  while (isOneOf(SPACES, peek(at))) at.pos++;
}

export function isOneOf(set: string, char: string): boolean {
  return char !== '' && set.includes(char);
}

export function isDigit(char: string): boolean {
  return char >= '0' && char <= '9';
}

export function isLetter(char: string): boolean {
  return char.toLowerCase() !== char.toUpperCase();
}

/** Hyphens that join feet to inches (`11'-8"`) or a whole number to its fraction (`8-1/2`). */
export const HYPHENS = '-‐‑';

/** What stands at the cursor does not belong there. */
export function refuseHere(at: Cursor, expected: 'number' | 'unit'): Refusal {
  const code = at.text.codePointAt(at.pos);
  const found = code === undefined ? 'nothing' : `"${String.fromCodePoint(code)}"`;
  return refuse(
    'unreadable-length',
    `"${at.text}" has ${found} where a ${expected} should stand; write a number and its unit, such as "183 cm".`,
  );
}
