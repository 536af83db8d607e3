import { getAt, isList, type Json, type Path } from '../document/json.js';
import type { Kind } from '../document/lens.js';
import type { FieldPart, ListPart, Option, Part, Row } from './parts.js';

/** As many rows of one list are shown; a list that is longer was not written by hand. */
export const MOST_ROWS = 60;

type More = Partial<Pick<FieldPart, 'optional' | 'width' | 'options' | 'own'>>;

export function field(kind: Kind, path: Path, label: string, more: More = {}): FieldPart {
  return { part: 'field', path, kind, label, optional: false, width: 'medium', ...more };
}

export const length = (path: Path, label: string, more: More = {}): FieldPart =>
  field('length', path, label, more);

export const reading = (path: Path, label: string, more: More = {}): FieldPart =>
  field('reading', path, label, more);

/** A choice among words, with none said at first where it is optional. */
export function words(
  path: Path,
  label: string,
  known: Readonly<Record<string, string>>,
  unset?: string,
): FieldPart {
  const options: Option[] = Object.entries(known).map(([value, text]) => ({ value, label: text }));
  const optional = unset !== undefined;
  return field('text', path, label, {
    optional,
    options: optional ? [{ value: '', label: unset }, ...options] : options,
  });
}

/** The x and y of a point. */
export function point(path: Path, x: string, y: string): FieldPart[] {
  return [length([...path, 0], x, { width: 'short' }), length([...path, 1], y, { width: 'short' })];
}

interface ListOptions extends Omit<ListPart, 'part' | 'path' | 'rows' | 'more'> {
  readonly name: (index: number, row: Json) => string;
  readonly row: (path: Path, row: Json, index: number) => readonly Part[];
}

export function list(input: Json, path: Path, { name, row, ...options }: ListOptions): ListPart {
  const value = getAt(input, path);
  const items = isList(value) ? value : [];
  const rows: Row[] = items.slice(0, MOST_ROWS).map((item, i) => {
    const at = [...path, i];
    return { path: at, name: name(i, item), parts: row(at, item, i) };
  });
  return { part: 'list', path, rows, more: items.length - rows.length, ...options };
}
