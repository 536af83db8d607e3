import { getAt, isList, isObject, type Json, type Path, removeAt, setAt } from './json.js';

/**
 * How one value of the input is written in one control, as text, and back. Reading and writing the same text changes nothing, so
 * whatever a control cannot show stays as it is until somebody writes something else there.
 */
export type Kind =
  /** A length with its unit. */
  | 'length'
  /** A tape reading: a length, or several of the same with semicolons between. */
  | 'reading'
  /** A plain number, such as degrees. */
  | 'number'
  /** A name or a word. */
  | 'text'
  /** `internal`, `external` or degrees. */
  | 'corner'
  /** Yes, or left out. */
  | 'flag';

export const YES = 'yes';

/** The value as the control shows it. */
export function toText(kind: Kind, value: Json | undefined): string {
  if (value === undefined) return '';
  switch (kind) {
    case 'length':
      return lengthText(value);
    case 'reading':
      return readingText(value);
    case 'flag':
      return value === true ? YES : '';
    case 'number':
    case 'corner':
    case 'text':
      return typeof value === 'string' || typeof value === 'number' ? String(value) : JSON.stringify(value);
  }
}

/** The value that a text stands for; undefined: nothing was written. `old` is what stood there. */
export function fromText(kind: Kind, text: string, old: Json | undefined): Json | undefined {
  const written = text.trim();
  if (written === '') return undefined;
  switch (kind) {
    case 'reading':
      return reading(written, old);
    case 'flag':
      return true;
    case 'number':
    case 'corner':
      return NUMBER.test(written) ? Number(written.replace(',', '.')) : written;
    case 'length':
    case 'text':
      return written;
  }
}

/** The input with another text in one control. A value that may be left out is left out where nothing is written. */
export function edit(input: Json, path: Path, kind: Kind, text: string, optional: boolean): Json {
  const old = getAt(input, path);
  if (text === toText(kind, old)) return input;
  const value = fromText(kind, text, old);
  if (value !== undefined) return setAt(input, path, value);
  return optional ? removeAt(input, path) : setAt(input, path, '');
}

const NUMBER = /^[-+]?(\d+([.,]\d*)?|[.,]\d+)$/;

function lengthText(value: Json): string {
  if (typeof value === 'number') return `${value} mm`;
  return typeof value === 'string' ? value : JSON.stringify(value);
}

function readingText(value: Json): string {
  const length = isObject(value) ? value.length : value;
  if (length === undefined) return '';
  return isList(length) ? length.map(lengthText).join('; ') : lengthText(length);
}

function reading(written: string, old: Json | undefined): Json {
  const parts = written
    .split(';')
    .map((part) => part.trim())
    .filter((part) => part !== '');
  const [first = written] = parts;
  const length = parts.length > 1 ? parts : first;
  if (!isObject(old)) return parts.length > 1 ? { length } : length;
  const others = Object.keys(old).some((key) => key !== 'length');
  return others || parts.length > 1 ? { ...old, length } : length;
}
