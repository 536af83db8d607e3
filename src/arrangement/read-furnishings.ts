import { DEFAULTS } from '../equipment/defaults.js';
import type { TableSpec } from '../equipment/equipment-types.js';
import { FURNISHING_LIMITS } from '../equipment/furnishing-limits.js';
import { readPlausible, writeMm } from '../equipment/read-plausible.js';
import { at, type ProblemList, readNumber, readObject } from '../length/read-input.js';
import { NameBook } from '../room/names.js';
import { readList } from '../room/read-corners.js';
import type { Scene } from '../room/scene.js';
import type { CheckedArrangement, CheckedPiece } from './checked-arrangement.js';
import type { ArrangementProgress } from './furnishing-input.js';
import { type ReadPiece, readFurnishing } from './read-furnishing.js';
import { noteDefaults } from './read-furnishing-notes.js';

/**
 * The checked pieces in the order given, or null with every problem that was found. Each default that was used becomes part of a sentence of
 * the assumptions. A list without pieces is good.
 *
 * @param scene Null where the room could not be read: names and poses are not held against it then.
 * @param table Null where it could not be read: what hangs over it does so over a bed of the default height then.
 */
export function readFurnishings(
  value: unknown,
  path: string,
  scene: Scene | null,
  table: TableSpec | null,
  problems: ProblemList,
  assumptions: string[],
): readonly CheckedPiece[] | null {
  const list = readList(value, path, 'furnishings', FURNISHING_LIMITS.count.pieces, problems);
  if (list === null) return null;
  const names = namesTaken(scene);
  const read = list.map((item, i) => readFurnishing(item, at(path, i), i, scene, table, names, problems));
  const good = read.filter((piece) => piece !== null);
  if (good.length < read.length) return null;
  const named = withNames(good, scene);
  noteDefaults(named, assumptions);
  return named.map(({ piece }) => piece);
}

/** The checked pieces and how to arrange them; null with problems, and where there are no pieces. */
export function readArrangement(
  furnishings: unknown,
  value: unknown,
  scene: Scene | null,
  table: TableSpec | null,
  problems: ProblemList,
  assumptions: string[],
): CheckedArrangement | null {
  const path = 'arrangement';
  const before = problems.problems.length;
  const pieces =
    furnishings === undefined
      ? []
      : readFurnishings(furnishings, 'furnishings', scene, table, problems, assumptions);
  if (furnishings === undefined && value !== undefined) {
    problems.add(
      path,
      'nothing-to-arrange',
      'There is nothing to arrange: list the other pieces of the room as "furnishings", or leave out "arrangement".',
    );
  }
  const fields =
    value === undefined
      ? new Map<string, unknown>()
      : readObject(value, path, ['way', 'effort', 'onProgress'], problems);
  if (fields === null) return null;
  const usual = DEFAULTS.arrangement;
  const way = fields.has('way')
    ? readPlausible(
        fields.get('way'),
        at(path, 'way'),
        'width of the clear ways',
        FURNISHING_LIMITS.way,
        problems,
      )
    : usual.way;
  const effort = fields.has('effort')
    ? readEffort(fields.get('effort'), at(path, 'effort'), problems)
    : usual.effort;
  const onProgress = fields.get('onProgress');
  if (onProgress !== undefined && !isCallback(onProgress)) {
    return problems.add(
      at(path, 'onProgress'),
      'not-a-function',
      'Expected a function that takes the progress.',
    );
  }
  if (problems.problems.length > before || pieces === null || pieces.length === 0) return null;
  if (way === null || effort === null) return null;
  if (!fields.has('way')) assumptions.push(`Clear ways are ${writeMm(way)} wide (default).`);
  return { pieces, way, effort, onProgress: onProgress ?? null };
}

/** What the answer calls things that are no pieces. */
function namesTaken(scene: Scene | null): NameBook {
  const names = new NameBook();
  names.reserve('the table', 'the table');
  names.reserve('cueing', "the players' floor round the table");
  for (const name of scene?.wallNames ?? []) names.reserve(name, 'a wall');
  for (const { name } of scene?.obstacles ?? []) names.reserve(name, 'an obstacle of the room');
  for (const { name } of scene?.doors ?? []) names.reserve(name, 'a door of the room');
  return names;
}

/** Every piece with a name: one without has that of its kind, numbered where there are several or where something else has it. */
function withNames(pieces: readonly ReadPiece[], scene: Scene | null): readonly ReadPiece[] {
  const small = (name: string): string => name.toLowerCase();
  const taken = new Set(
    [...(scene?.obstacles ?? []), ...(scene?.doors ?? [])].map(({ name }) => small(name)),
  );
  for (const { given, piece } of pieces) if (given.has('name')) taken.add(small(piece.name));
  const nameless = pieces.filter(({ given }) => !given.has('name')).map(({ piece }) => piece.name);
  return pieces.map((read, i) => {
    if (read.given.has('name')) return read;
    const kind = read.piece.name;
    // One without a kind either has its place in the list for a number, as in messages.
    const [base, first] = kind === '' ? ['piece', i + 1] : [kind, 1];
    const alone = kind !== '' && nameless.indexOf(kind) === nameless.lastIndexOf(kind);
    let name = base;
    if (!alone || taken.has(small(name))) {
      let number = first;
      do name = `${base} ${number++}`;
      while (taken.has(small(name)));
    }
    taken.add(small(name));
    return { ...read, piece: { ...read.piece, name } };
  });
}

function readEffort(value: unknown, path: string, problems: ProblemList): number | null {
  const [min, max] = FURNISHING_LIMITS.effort;
  const effort = readNumber(value, path, { what: 'effort', min, max }, '', problems);
  if (effort === null || Number.isInteger(effort)) return effort;
  return problems.add(path, 'not-a-whole-number', `The effort is ${effort}; give a whole number.`);
}

function isCallback(value: unknown): value is (progress: ArrangementProgress) => boolean | undefined {
  return typeof value === 'function';
}
