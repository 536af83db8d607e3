import { DEFAULTS } from '../equipment/defaults.js';
import { editDistance } from '../equipment/edit-distance.js';
import type { TableSpec } from '../equipment/equipment-types.js';
import { PASSAGE_LIMITS } from '../equipment/passage-limits.js';
import { type PieceSet, piecesOf } from '../equipment/pieces.js';
import { readPlausible, writeMm } from '../equipment/read-plausible.js';
import {
  at,
  describeValue,
  listWords,
  type ProblemList,
  readNumber,
  readObject,
  readWord,
} from '../length/read-input.js';
import type { Piece } from './carried.js';
import type { Passage } from './passages.js';
import { readRoute } from './read-passage.js';
import { DefaultNotes } from './read-passage-notes.js';
import { readPieces, refusePieces, usualPieces } from './read-piece.js';

const KEYS = ['route', 'pieces', 'handRoom', 'tolerance', 'detail', 'maxBoxes'] as const;

/** A checked way in: mm and radians, nothing optional, `Infinity` where nothing limits. */
export interface CheckedDelivery {
  readonly route: readonly Passage[];
  /** Name of the usual set that is carried, or null for pieces of one's own. */
  readonly pieceSet: string | null;
  /** Sets of the table that could be asked for instead; none without a table. */
  readonly otherSets: readonly { readonly name: string; readonly pieces: readonly Piece[] }[];
  readonly pieces: readonly Piece[];
  readonly handRoom: number;
  readonly detail: 'answer' | 'motions';
  readonly maxBoxes: number;
}

/**
 * The checked way in, or null with every problem that was found. Each default that was used is added to the assumptions as one sentence,
 * however many passages it was used for.
 *
 * @param table Null where there is none, or where it could not be read: then its problems stand in the list already, and that its pieces
 * are not known is no problem of its own.
 */
export function readDelivery(
  value: unknown,
  path: string,
  table: TableSpec | null,
  problems: ProblemList,
  assumptions: string[],
): CheckedDelivery | null {
  const before = problems.problems.length;
  const fields = readObject(value, path, KEYS, problems);
  if (fields === null) return null;
  const notes = new DefaultNotes();
  const usual = DEFAULTS.delivery;
  const length = (key: 'handRoom' | 'tolerance', what: string): number | null =>
    fields.has(key)
      ? readPlausible(fields.get(key), at(path, key), what, PASSAGE_LIMITS[key], problems)
      : usual[key];
  const handRoom = length('handRoom', 'hand room');
  const tolerance = length('tolerance', 'tolerance of the way');
  const routePath = at(path, 'route');
  const route = fields.has('route')
    ? readRoute(fields.get('route'), routePath, (tolerance ?? usual.tolerance) + 0, problems, notes)
    : problems.add(
        routePath,
        'missing',
        'The route is missing; list what the table has to be carried through, in the order walked.',
      );
  const sets = table === null ? [] : piecesOf(table);
  const carried = readCarried(fields.get('pieces'), at(path, 'pieces'), sets, before > 0, problems, notes);
  const detail = fields.has('detail')
    ? readWord(fields.get('detail'), at(path, 'detail'), ['answer', 'motions'], problems)
    : 'answer';
  const [min, max] = PASSAGE_LIMITS.maxBoxes;
  const maxBoxes = fields.has('maxBoxes')
    ? readNumber(
        fields.get('maxBoxes'),
        at(path, 'maxBoxes'),
        { what: 'limit of boxes', min, max },
        '',
        problems,
      )
    : usual.maxBoxes;
  if (problems.problems.length > before) return null;
  if (route === null || carried === null || handRoom === null || detail === null || maxBoxes === null)
    return null;

  if (!fields.has('handRoom')) {
    assumptions.push(`Hand room of ${writeMm(handRoom)} on every side of every piece (default).`);
  }
  if (!fields.has('tolerance')) {
    assumptions.push(
      `Measurements of the way are off by ${writeMm(usual.tolerance)} at most, where nothing else is said (default).`,
    );
  }
  assumptions.push(...carried.notes, ...notes.sentences());
  return {
    route,
    pieceSet: carried.set,
    otherSets: sets
      .filter(({ name }) => name !== carried.set)
      .map((set) => ({ name: set.name, pieces: usualPieces(set) })),
    pieces: carried.pieces,
    handRoom: handRoom + 0,
    detail,
    maxBoxes: Math.floor(maxBoxes),
  };
}

interface CarriedPieces {
  readonly set: string | null;
  readonly pieces: readonly Piece[];
  readonly notes: readonly string[];
}

function readCarried(
  value: unknown,
  path: string,
  sets: readonly PieceSet[],
  explained: boolean,
  problems: ProblemList,
  notes: DefaultNotes,
): CarriedPieces | null {
  if (Array.isArray(value)) {
    const pieces = readPieces(value, path, problems, notes);
    return pieces === null ? null : { set: null, pieces, notes: [] };
  }
  if (value !== undefined && typeof value !== 'string') return refusePieces(value, path, problems);
  const [first] = sets;
  if (first === undefined) {
    if (explained) return null;
    return problems.add(
      path,
      'no-table',
      'Without a table there are no usual pieces; give the table, or list the pieces that are carried.',
    );
  }
  const set = value === undefined ? first : sets.find(({ name }) => name === value);
  if (set === undefined) return refuseSet(value ?? '', path, sets, problems);
  const { tilt } = DEFAULTS.delivery;
  const about = [
    `The sizes and masses of the ${set.name} set are usual figures, not measured. ${set.source}`,
    `Its pieces may be tilted by ${tilt} degrees out of each way of holding them and have as many carriers as the mass of each asks for (default).`,
  ];
  return {
    set: set.name,
    pieces: usualPieces(set),
    notes:
      value === undefined
        ? [`What is carried is the ${set.name} set, the most usual one of such a table (default).`, ...about]
        : about,
  };
}

const MOST_CHARACTERS = 60;

function refuseSet(value: string, path: string, sets: readonly PieceSet[], problems: ProblemList): null {
  const known = sets.map(({ name }) => name);
  // Long text is no name, and comparing it would only take time.
  const wanted = value.slice(0, MOST_CHARACTERS).trim().toLowerCase();
  const [nearest] = [...known].sort((a, b) => editDistance(wanted, a) - editDistance(wanted, b));
  const others =
    known.length === 1 ? 'the only one is' : `the known ones are ${listWords(known)}; nearest is`;
  return problems.add(
    path,
    'unknown-pieces',
    `This table has no set of pieces ${describeValue(value)}; ${others} "${nearest}". Or list the pieces with their sizes.`,
  );
}
