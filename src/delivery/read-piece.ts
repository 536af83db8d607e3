import { DEFAULTS } from '../equipment/defaults.js';
import { usualCarriers } from '../equipment/handling.js';
import { PASSAGE_LIMITS } from '../equipment/passage-limits.js';
import type { PieceSet, UsualPiece } from '../equipment/pieces.js';
import { readPlausible, unitHint, writeMm } from '../equipment/read-plausible.js';
import {
  at,
  describeValue,
  type ProblemList,
  readName,
  readNumber,
  readObject,
  readWord,
} from '../length/read-input.js';
import { readList } from '../room/read-corners.js';
import type { Piece } from './carried.js';
import type { HoldName } from './delivery-input.js';
import type { DefaultNotes } from './read-passage-notes.js';

const SIDES = ['length', 'width', 'thickness'] as const;
const KEYS = ['name', ...SIDES, 'count', 'mass', 'carriers', 'held', 'tilt'] as const;
const HOLDS: readonly HoldName[] = ['flat', 'on-edge', 'on-end'];

/** The pieces of a usual set, checked as they are. */
export function usualPieces(set: PieceSet): Piece[] {
  return set.pieces.map((piece: UsualPiece) => ({
    name: piece.name,
    length: piece.length,
    width: piece.width,
    thickness: piece.thickness,
    count: piece.count,
    mass: piece.mass,
    carriers: usualCarriers(piece.mass),
    held: piece.held,
    tilt: radians(DEFAULTS.delivery.tilt),
  }));
}

/** Pieces of one's own in the order given, or null with problems. */
export function readPieces(
  value: unknown,
  path: string,
  problems: ProblemList,
  notes: DefaultNotes,
): Piece[] | null {
  const list = readList(value, path, 'pieces', PASSAGE_LIMITS.count.pieces, problems);
  if (list === null) return null;
  if (list.length === 0) {
    return problems.add(
      path,
      'no-pieces',
      "The list of pieces is empty; leave it out for the table's usual pieces, or list at least one.",
    );
  }
  const names = new Map<string, number>();
  const read = list.map((item, i) => readPiece(item, at(path, i), i, names, problems, notes));
  const good = read.filter((piece) => piece !== null);
  return good.length === read.length ? good : null;
}

function readPiece(
  value: unknown,
  path: string,
  index: number,
  names: Map<string, number>,
  problems: ProblemList,
  notes: DefaultNotes,
): Piece | null {
  const before = problems.problems.length;
  const fields = readObject(value, path, KEYS, problems);
  if (fields === null) return null;
  const name = fields.has('name')
    ? readName(fields.get('name'), at(path, 'name'), "piece's name", problems)
    : problems.add(
        at(path, 'name'),
        'missing',
        `Piece ${index + 1} has no name; the report needs something to call it.`,
      );
  if (name !== null) claim(name, index, at(path, 'name'), names, problems);
  const owner = name === null ? `piece ${index + 1}` : `"${name}"`;

  const limits = PASSAGE_LIMITS.piece;
  const sides = SIDES.map((key) =>
    fields.has(key)
      ? readPlausible(fields.get(key), at(path, key), `${key} of ${owner}`, limits.side, problems)
      : problems.add(at(path, key), 'missing', `The ${key} of ${owner} is missing.`),
  );
  const [length, width, thickness] = sides.map((mm) => mm ?? Number.NaN).sort((a, b) => b - a);
  if (length < limits.longest[0]) checkLongest(fields, path, owner, length, problems);

  const number = (key: string, what: string, [min, max]: readonly [number, number], unit: string) =>
    fields.has(key)
      ? readNumber(fields.get(key), at(path, key), { what: `${what} of ${owner}`, min, max }, unit, problems)
      : null;
  const whole = (key: string, what: string, range: readonly [number, number]) => {
    const read = number(key, what, range, '');
    if (read === null || Number.isInteger(read)) return read;
    return problems.add(
      at(path, key),
      'not-a-whole-number',
      `The ${what} of ${owner} is ${read}; give a whole number.`,
    );
  };
  const count = whole('count', 'count', limits.count);
  const carriers = whole('carriers', 'number of carriers', limits.carriers);
  const mass = number('mass', 'mass', limits.mass, ' kg');
  const tilt = number('tilt', 'tilt', limits.tilt, ' degrees');
  const held = fields.has('held') ? readHeld(fields.get('held'), at(path, 'held'), owner, problems) : HOLDS;
  if (problems.problems.length > before || name === null || held === null) return null;

  if (count === null) notes.add('count', name);
  if (!fields.has('held')) notes.add('held', name);
  if (tilt === null) notes.add('tilt', name);
  if (carriers === null && mass !== null) notes.add('carriers', name);
  return {
    name,
    length,
    width,
    thickness,
    count: count ?? 1,
    mass,
    carriers: carriers ?? (mass === null ? null : usualCarriers(mass)),
    held: [...held],
    // Adding 0 makes 0 of -0.
    tilt: radians((tilt ?? DEFAULTS.delivery.tilt) + 0),
  };
}

/** Ways of holding a piece, each once, in a fixed order; or null with a problem. */
function readHeld(value: unknown, path: string, owner: string, problems: ProblemList): HoldName[] | null {
  const list = readList(value, path, 'ways of holding a piece', HOLDS.length, problems);
  if (list === null) return null;
  if (list.length === 0) {
    return problems.add(
      path,
      'no-holds',
      `The list of ways in which ${owner} may be held is empty; leave it out for every way, or name at least one.`,
    );
  }
  const before = problems.problems.length;
  const words = list.map((item, i) => readWord(item, at(path, i), HOLDS, problems));
  words.forEach((word, i) => {
    if (word === null || words.indexOf(word) === i) return;
    problems.add(at(path, i), 'given-twice', `"${word}" is in the list of ways to hold ${owner} already.`);
  });
  return problems.problems.length > before ? null : HOLDS.filter((hold) => words.includes(hold));
}

function claim(
  name: string,
  index: number,
  path: string,
  names: Map<string, number>,
  problems: ProblemList,
): void {
  const key = name.toLowerCase();
  const other = names.get(key);
  if (other === undefined) {
    names.set(key, index);
    return;
  }
  problems.add(
    path,
    'name-taken',
    `"${name}" is the name of piece ${other + 1} already; give one of the two another name, or one entry a "count" if they are alike.`,
  );
}

/** Each measure may be small, but not all three. */
function checkLongest(
  fields: ReadonlyMap<string, unknown>,
  path: string,
  owner: string,
  longest: number,
  problems: ProblemList,
): void {
  const { longest: limits } = PASSAGE_LIMITS.piece;
  const hint = unitHint(fields.get('length'), limits);
  problems.add(
    at(path, 'length'),
    'implausible-length',
    `No side of ${owner} is longer than ${writeMm(longest)}; expected ${writeMm(limits[0])} to ${writeMm(limits[1])} for the longest. ${hint}`,
  );
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** What `pieces` may be at all, for messages. */
export function refusePieces(value: unknown, path: string, problems: ProblemList): null {
  return problems.add(
    path,
    'not-pieces',
    `Expected the name of one of the table's usual sets of pieces, or a list of pieces, got ${describeValue(value)}.`,
  );
}
