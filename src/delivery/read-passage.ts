import { DEFAULTS } from '../equipment/defaults.js';
import { PASSAGE_LIMITS } from '../equipment/passage-limits.js';
import { at, type ProblemList, readName, readObject, readWord } from '../length/read-input.js';
import { capital } from '../room/names.js';
import { readList } from '../room/read-corners.js';
import type { PassageInput } from './delivery-input.js';
import type { Corner, Corridor, Passage } from './passages.js';
import { PassageFields } from './read-passage-fields.js';
import { readGate, readLift, type Unnamed } from './read-passage-gates.js';
import type { DefaultNotes } from './read-passage-notes.js';
import { readLanding, readStair, readWinder } from './read-passage-stairs.js';

export type PassageKind = PassageInput['kind'];

const SLOPE = ['pitch', 'rise', 'going'] as const;
const LANDING = ['width', 'widthAfter', 'headroom', ...SLOPE, 'depth'] as const;

/** The properties of each kind besides its name and its tolerance. */
export const PASSAGE_KEYS: Readonly<Record<PassageKind, readonly string[]>> = {
  doorway: ['width', 'height', 'depth', 'leaf', 'before', 'after'],
  corridor: ['width', 'height'],
  corner: ['width', 'height', 'widthAfter', 'heightAfter', 'turn'],
  stair: ['width', 'headroom', ...SLOPE, 'run', 'bottom', 'top'],
  'quarter-landing': [...LANDING, 'breadth'],
  'half-landing': [...LANDING, 'well'],
  winder: ['width', 'headroom', ...SLOPE, 'climb'],
  lift: ['width', 'depth', 'height', 'door', 'before'],
  opening: ['width', 'height', 'sill', 'depth', 'after'],
};
const KINDS: readonly PassageKind[] = [
  'doorway',
  'corridor',
  'corner',
  'stair',
  'quarter-landing',
  'half-landing',
  'winder',
  'lift',
  'opening',
];
const COMMON = ['kind', 'name', 'tolerance'] as const;
const ALL_KEYS = [...new Set([...COMMON, ...Object.values(PASSAGE_KEYS).flat()])];

/**
 * The passages in order, or null with problems. One without a name is called by its kind and a number, such as `Doorway 2`; one without a
 * tolerance has that of the way.
 */
export function readRoute(
  value: unknown,
  path: string,
  tolerance: number,
  problems: ProblemList,
  notes: DefaultNotes,
): Passage[] | null {
  const list = readList(value, path, 'passages', PASSAGE_LIMITS.count.passages, problems);
  if (list === null) return null;
  if (list.length === 0) {
    return problems.add(
      path,
      'no-passages',
      'The route has no passage; list what the table has to be carried through, in the order walked, or leave the way in out.',
    );
  }
  const names = readNames(list, path, problems);
  const read = list.map((item, i) => readPassage(item, at(path, i), names[i], tolerance, problems, notes));
  const good = read.filter((passage) => passage !== null);
  return good.length === read.length ? good : null;
}

function readPassage(
  value: unknown,
  path: string,
  name: string,
  tolerance: number,
  problems: ProblemList,
  notes: DefaultNotes,
): Passage | null {
  const before = problems.problems.length;
  const kind = kindOf(value);
  const keys = kind === null ? ALL_KEYS : [...COMMON, ...PASSAGE_KEYS[kind]];
  const raw = readObject(value, path, keys, problems);
  if (raw === null) return null;
  if (kind === null) {
    if (raw.has('kind')) readWord(raw.get('kind'), at(path, 'kind'), KINDS, problems);
    else if (problems.problems.length === before) {
      problems.add(
        at(path, 'kind'),
        'missing',
        `Say what kind of passage this is: ${KINDS.map((word) => `"${word}"`).join(', ')}.`,
      );
    }
    return null;
  }
  const fields = new PassageFields(raw, path, name, problems, notes);
  const own = fields.has('tolerance')
    ? fields.needed('tolerance', 'tolerance', PASSAGE_LIMITS.tolerance)
    : tolerance;
  const read = readKind(fields, kind);
  return problems.problems.length > before ? null : { ...read, name, tolerance: own };
}

function readKind(fields: PassageFields, kind: PassageKind): Unnamed<Passage> {
  switch (kind) {
    case 'doorway':
    case 'opening':
      return readGate(fields, kind);
    case 'corridor':
      return readCorridor(fields);
    case 'corner':
      return readCorner(fields);
    case 'stair':
      return readStair(fields);
    case 'quarter-landing':
    case 'half-landing':
      return readLanding(fields, kind);
    case 'winder':
      return readWinder(fields);
    case 'lift':
      return readLift(fields);
  }
}

function readCorridor(fields: PassageFields): Unnamed<Corridor> {
  return {
    kind: 'corridor',
    width: fields.needed('width', 'clear width', PASSAGE_LIMITS.width),
    height: fields.needed('height', 'clear height', PASSAGE_LIMITS.height),
  };
}

function readCorner(fields: PassageFields): Unnamed<Corner> {
  const limits = PASSAGE_LIMITS;
  const width = fields.needed('width', 'clear width', limits.width);
  const height = fields.needed('height', 'clear height', limits.height);
  let turn: number = DEFAULTS.delivery.turn;
  if (fields.has('turn')) turn = fields.degrees('turn', 'turn', limits.turn, 'turn-out-of-range');
  else fields.note('turn');
  return {
    kind: 'corner',
    width,
    height,
    widthAfter: fields.optional('widthAfter', 'width after the turn', limits.width, width, 'widthAfter'),
    heightAfter: fields.optional(
      'heightAfter',
      'height after the turn',
      limits.height,
      height,
      'heightAfter',
    ),
    angle: ((180 - turn) * Math.PI) / 180,
  };
}

/** A name for each: the given ones first, then numbers of each kind that are still free. Capitals do not tell two names apart. */
function readNames(list: readonly unknown[], path: string, problems: ProblemList): string[] {
  const taken = new Map<string, number>();
  const given = list.map((item, i) => {
    const value = peek(item, 'name');
    if (value === undefined) return null;
    const namePath = at(at(path, i), 'name');
    const name = readName(value, namePath, "passage's name", problems);
    if (name === null) return null;
    const other = taken.get(name.toLowerCase());
    if (other !== undefined) {
      return problems.add(
        namePath,
        'name-taken',
        `"${name}" is the name of passage ${other + 1} already; give one of the two another name, so that the report can tell them apart.`,
      );
    }
    taken.set(name.toLowerCase(), i);
    return name;
  });
  const numbers = new Map<string, number>();
  return given.map((name, i) => {
    if (name !== null) return name;
    const word = capital((kindOf(list[i]) ?? 'passage').replace('-', ' '));
    let number = numbers.get(word) ?? 0;
    do number++;
    while (taken.has(`${word} ${number}`.toLowerCase()));
    numbers.set(word, number);
    return `${word} ${number}`;
  });
}

function kindOf(value: unknown): PassageKind | null {
  const kind = peek(value, 'kind');
  return KINDS.find((known) => known === kind) ?? null;
}

/** A data property of something that is yet to be checked. */
function peek(value: unknown, key: string): unknown {
  if (typeof value !== 'object' || value === null) return undefined;
  return Object.getOwnPropertyDescriptor(value, key)?.value;
}
