import { getAt, isObject, type Json, type Path } from '../document/json.js';
import type { Strings } from '../strings.js';
import { field, list, reading, words as wordsField } from './make-parts.js';
import type { ListPart, Part } from './parts.js';

/** The readings of a survey, in the order in which one takes them. */
export function tapeParts(input: Json, path: Path, strings: Strings): Part[] {
  const words = strings.tape;
  return [
    walls(input, [...path, 'walls'], strings),
    wordsField(
      [...path, 'walk'],
      words.walk,
      { clockwise: words.clockwise, anticlockwise: words.anticlockwise },
      strings.form.unset,
    ),
    diagonals(input, [...path, 'diagonals'], strings),
    list(input, [...path, 'heights'], {
      heading: words.heights,
      name: (i) => words.height(i + 1),
      row: (at) => [reading(at, words.length)],
      add: [{ label: words.addHeight, item: '' }],
      columns: true,
      ordered: false,
      optional: true,
    }),
    offsets(input, [...path, 'offsets'], strings),
    angles(input, [...path, 'angles'], strings),
    wordsField([...path, 'by'], words.by, words.means, strings.form.unset),
    wordsField([...path, 'tapeClass'], words.tapeClass, { I: 'I', II: 'II', III: 'III' }, strings.form.unset),
  ];
}

function walls(input: Json, path: Path, strings: Strings): ListPart {
  const words = strings.tape;
  const items = getAt(input, path);
  const count = Array.isArray(items) ? items.length : 0;
  const corner = (index: number): string => cornerName(getAt(input, [...path, index]), index);
  return list(input, path, {
    heading: words.walls,
    note: words.note,
    name: (i) => words.wall(corner(i), corner((i + 1) % Math.max(1, count))),
    row: (at, row) => [
      ...(hasName(row)
        ? [field('text', [...at, 'from'], words.from, { optional: true, width: 'short' })]
        : []),
      reading([...at, 'length'], words.length),
      field('corner', [...at, 'corner'], words.corner, {
        optional: true,
        options: [
          { value: '', label: words.internal },
          { value: 'external', label: words.external },
        ],
        own: words.degrees,
      }),
    ],
    add: [{ label: words.addWall, item: { length: '' } }],
    columns: true,
    ordered: true,
    optional: false,
  });
}

function hasName(row: Json): boolean {
  return isObject(row) && Object.hasOwn(row, 'from');
}

/** The corner's own name, or its letter in order. */
function cornerName(row: Json | undefined, index: number): string {
  if (isObject(row) && typeof row.from === 'string') return row.from;
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : cornerName(undefined, Math.floor(index / 26) - 1) + letter;
}

function diagonals(input: Json, path: Path, strings: Strings): ListPart {
  const words = strings.tape;
  return list(input, path, {
    heading: words.diagonals,
    name: (i) => words.diagonal(i + 1),
    row: (at) => [
      field('text', [...at, 'from'], words.from, { width: 'short' }),
      field('text', [...at, 'to'], words.to, { width: 'short' }),
      reading([...at, 'length'], words.length),
    ],
    add: [{ label: words.addDiagonal, item: { from: '', to: '', length: '' } }],
    columns: true,
    ordered: false,
    optional: true,
  });
}

function angles(input: Json, path: Path, strings: Strings): ListPart {
  const words = strings.tape;
  return list(input, path, {
    heading: words.angles,
    name: (i) => words.angle(i + 1),
    row: (at) => [
      field('text', [...at, 'corner'], words.at, { width: 'short' }),
      reading([...at, 'before'], words.before),
      reading([...at, 'after'], words.after),
      reading([...at, 'across'], words.across),
    ],
    add: [{ label: words.addAngle, item: { corner: '', before: '', after: '', across: '' } }],
    columns: false,
    ordered: false,
    optional: true,
  });
}

function offsets(input: Json, path: Path, strings: Strings): ListPart {
  const words = strings.tape;
  return list(input, path, {
    heading: words.offsets,
    name: (i) => words.offset(i + 1),
    row: (at, row) => [
      wordsField([...at, 'kind'], words.kind, words.kinds),
      field('text', [...at, 'wall'], words.onWall, { width: 'short' }),
      field('text', [...at, 'name'], strings.obstacles.name, { optional: true, width: 'long' }),
      reading([...at, 'start'], words.start),
      reading([...at, 'width'], words.width),
      reading([...at, 'depth'], words.depth),
      ...(isObject(row) && (row.kind === 'bay' || row.front !== undefined)
        ? [reading([...at, 'front'], words.front, { optional: true })]
        : []),
      reading([...at, 'rest'], words.rest, { optional: true }),
    ],
    add: [{ label: words.addOffset, item: { kind: 'breast', wall: '', start: '', width: '', depth: '' } }],
    columns: false,
    ordered: false,
    optional: true,
  });
}
