import {
  at,
  describeValue,
  type ProblemList,
  readName,
  readNumber,
  readObject,
} from '../length/read-input.js';
import { DEFAULTS } from './defaults.js';
import { editDistance } from './edit-distance.js';
import type { FieldSize, TableSpec } from './equipment-types.js';
import { LIMITS } from './limits.js';
import { readPlausible, writeMm } from './read-plausible.js';
import { TABLES } from './tables.js';

const TABLE_KEYS = [
  'name',
  'game',
  'field',
  'outer',
  'bedHeight',
  'noseHeight',
  'railHeight',
  'ballDiameter',
  'mass',
] as const;

/**
 * A checked table from an id of the catalogue, an entry of it, or measurements; null with problems. Every default that
 * stands in for a measurement is added to the assumptions as a sentence.
 */
export function readTable(
  value: unknown,
  path: string,
  problems: ProblemList,
  assumptions: string[],
): TableSpec | null {
  const entry = Object.values(TABLES).find((table) => table === value || table.id === value);
  if (entry !== undefined) return entry;
  if (typeof value === 'string') return refuseId(value, path, problems);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return problems.add(
      path,
      'not-a-table',
      `Expected the id of a table, such as "pool-9ft", or its measurements with "field" and "outer", got ${describeValue(value)}.`,
    );
  }
  return readMeasurements(value, path, problems, assumptions);
}

function readMeasurements(
  value: unknown,
  path: string,
  problems: ProblemList,
  assumptions: string[],
): TableSpec | null {
  const before = problems.problems.length;
  const fields = readObject(value, path, TABLE_KEYS, problems);
  if (fields === null) return null;
  const text = (key: string, what: string): string | null =>
    fields.has(key) ? readName(fields.get(key), at(path, key), what, problems) : null;
  const name = text('name', "table's name");
  const game = text('game', "table's game");
  const field = readSize(fields.get('field'), at(path, 'field'), 'play field', FIELD, problems);
  const outer = readSize(fields.get('outer'), at(path, 'outer'), 'outer size', OUTER, problems);
  if (field !== null && outer !== null) checkRails(field, outer, path, problems);

  const notes: string[] = [];
  /** A length with its default, which becomes a note. */
  const measure = (key: Measure, what: string, usual: number, note: string): number | null => {
    if (fields.has(key)) return readPlausible(fields.get(key), at(path, key), what, LIMITS[key], problems);
    notes.push(`${note.replace('#', writeMm(usual))} (default).`);
    return usual;
  };
  const { table } = DEFAULTS;
  const bedHeight = measure('bedHeight', 'bed height', table.bedHeight, 'Bed height #');
  const ballDiameter = measure('ballDiameter', 'ball diameter', table.ballDiameter, 'Ball diameter #');
  // Each default gives way to what was measured, so that a nose never stands above its rail by default.
  const ballsNose = table.noseShare * (ballDiameter ?? table.ballDiameter);
  const givenRail = fields.has('railHeight')
    ? readPlausible(
        fields.get('railHeight'),
        at(path, 'railHeight'),
        'rail height',
        LIMITS.railHeight,
        problems,
      )
    : undefined;
  const noseHeight = measure(
    'noseHeight',
    'nose height',
    Math.min(ballsNose, givenRail ?? Number.POSITIVE_INFINITY),
    'Cushion nose # above the cloth',
  );
  const railHeight =
    givenRail !== undefined
      ? givenRail
      : measure(
          'railHeight',
          'rail height',
          Math.max(table.railHeight, noseHeight ?? 0),
          'Rail top # above the cloth',
        );
  if (noseHeight !== null && railHeight !== null && noseHeight > railHeight) {
    problems.add(
      at(path, 'noseHeight'),
      'nose-above-rail',
      `The cushion's nose is ${writeMm(noseHeight)} above the cloth, but the top of the rail only ${writeMm(railHeight)}; measure both from the cloth.`,
    );
  }
  if (field !== null && ballDiameter !== null && ballDiameter >= field.width) {
    problems.add(
      at(path, 'ballDiameter'),
      'ball-too-large',
      `A ball of ${writeMm(ballDiameter)} cannot roll on a field ${writeMm(field.width)} wide; check the units of both.`,
    );
  }
  const mass = fields.has('mass')
    ? readNumber(
        fields.get('mass'),
        at(path, 'mass'),
        { what: "table's mass", min: LIMITS.mass[0], max: LIMITS.mass[1] },
        ' kg',
        problems,
      )
    : null;

  if (problems.problems.length > before) return null;
  if (field === null || outer === null || bedHeight === null || ballDiameter === null) return null;
  if (noseHeight === null || railHeight === null) return null;
  assumptions.push(...notes);
  return {
    id: null,
    name: name ?? `Table with a field of ${writeMm(field.length)} x ${writeMm(field.width)}`,
    game: game ?? 'any',
    field,
    outer,
    bedHeight,
    noseHeight,
    railHeight,
    ballDiameter,
    usualCue: table.usualCue,
    mass,
    legs: null,
    source: 'Measurements given; whatever was not is the default (common practice, no source).',
  };
}

type Measure = 'bedHeight' | 'noseHeight' | 'railHeight' | 'ballDiameter';

interface SizeLimits {
  readonly length: readonly [number, number];
  readonly width: readonly [number, number];
}

const FIELD: SizeLimits = LIMITS.field;
const OUTER: SizeLimits = {
  length: [LIMITS.field.length[0], LIMITS.field.length[1] + 2 * LIMITS.rail],
  width: [LIMITS.field.width[0], LIMITS.field.width[1] + 2 * LIMITS.rail],
};

function readSize(
  value: unknown,
  path: string,
  what: string,
  limits: SizeLimits,
  problems: ProblemList,
): FieldSize | null {
  if (value === undefined) {
    return problems.add(path, 'missing', `The ${what} of the table is missing; give its length and width.`);
  }
  const fields = readObject(value, path, ['length', 'width'], problems);
  if (fields === null) return null;
  const side = (key: 'length' | 'width'): number | null =>
    fields.has(key)
      ? readPlausible(fields.get(key), at(path, key), `${key} of the ${what}`, limits[key], problems)
      : problems.add(at(path, key), 'missing', `The ${key} of the ${what} is missing.`);
  const length = side('length');
  const width = side('width');
  if (length === null || width === null) return null;
  if (width > length) {
    return problems.add(
      path,
      'width-exceeds-length',
      `The ${what} is ${writeMm(width)} wide but only ${writeMm(length)} long; the length is the longer side, so swap the two.`,
    );
  }
  return { length, width };
}

/** The rails lie between the field and the outer size: some on each side, but not metres of them. */
function checkRails(field: FieldSize, outer: FieldSize, path: string, problems: ProblemList): void {
  for (const key of ['length', 'width'] as const) {
    const rails = outer[key] - field[key];
    if (rails <= 0) {
      problems.add(
        at(at(path, 'outer'), key),
        'outer-not-larger',
        `The outer ${key} of ${writeMm(outer[key])} leaves no rail around a field of ${writeMm(field[key])}; the field is measured nose to nose, the outer size over the rails.`,
      );
    } else if (rails > 2 * LIMITS.rail) {
      problems.add(
        at(at(path, 'outer'), key),
        'rail-too-wide',
        `The outer ${key} of ${writeMm(outer[key])} leaves rails of ${writeMm(rails / 2)} beside a field of ${writeMm(field[key])}; more than ${writeMm(LIMITS.rail)} is no rail. Check both sizes and their units.`,
      );
    }
  }
}

const MOST_ID_CHARACTERS = 60;
const NEAREST = 3;

function refuseId(id: string, path: string, problems: ProblemList): null {
  const ids = Object.keys(TABLES);
  // Long text is no id, and comparing it would only take time.
  const wanted = id.slice(0, MOST_ID_CHARACTERS).trim().toLowerCase();
  const nearest = ids
    .map((known) => ({ known, distance: editDistance(wanted, known) }))
    .sort((a, b) => a.distance - b.distance)
    .slice(0, NEAREST)
    .map(({ known }) => `"${known}"`);
  return problems.add(
    path,
    'unknown-table',
    `There is no table ${describeValue(id)}; the nearest are ${nearest.join(', ')}. TABLES lists them all, or give measurements with "field" and "outer".`,
  );
}
