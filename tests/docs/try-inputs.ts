import fc from 'fast-check';
import type { Json } from '../../docs/try/document/json.js';
import type { Catalogues } from '../../docs/try/form/shape-table.js';
import { CUES } from '../../src/equipment/cues.js';
import { FURNISHINGS } from '../../src/equipment/furnishings.js';
import { TABLES } from '../../src/equipment/tables.js';

/** Inputs as they are written in the form of the try-it page: lengths as text, everything that may be left out sometimes left out. */

export const CATALOGUES: Catalogues = {
  tables: Object.entries(TABLES).map(([id, { name, game, field, outer }]) => ({
    id,
    name,
    game,
    about: [`${field.length} mm`, `${field.width} mm`],
    field: [`${field.length} mm`, `${field.width} mm`],
    outer: [`${outer.length} mm`, `${outer.width} mm`],
  })),
  cues: Object.values(CUES).map(({ name }) => name),
  pieces: Object.entries(FURNISHINGS).map(([kind, { name }]) => ({ kind, name })),
};

const length = fc.constantFrom('4.5 m', `11' 8"`, '183 cm', '57 in', '0', '2310 mm', '12ft 6in', 'nonsense');
const name = fc.constantFrom('the post', '<b>bold</b>', 'Zürich & "so"', 'A', '名');
const degrees = fc.constantFrom(0, 90, 12.5, -30);
const point = fc.tuple(length, length);
const list = <T>(item: fc.Arbitrary<T>, most = 4): fc.Arbitrary<T[]> =>
  fc.array(item, { minLength: 1, maxLength: most });

/** An object some of whose keys may be missing; at least one is there. */
function some(keys: Readonly<Record<string, fc.Arbitrary<Json>>>): fc.Arbitrary<Json> {
  return record({}, keys).filter((value) => JSON.stringify(value) !== '{}');
}

function record(
  required: Readonly<Record<string, fc.Arbitrary<Json>>>,
  optional: Readonly<Record<string, fc.Arbitrary<Json>>>,
): fc.Arbitrary<Json> {
  return fc.record({ ...required, ...optional }, { requiredKeys: Object.keys(required) }).map(plain);
}

const footprint = fc.oneof(
  list(point, 5),
  record({ center: point, length, width: length }, { turn: degrees }),
  record({ center: point, diameter: length }, {}),
);
const obstacle = record({ name, footprint }, { from: length, to: length, movable: fc.constant(true) });
const opens = fc.constantFrom('in', 'out', 'slides');
const pointDoor = record({ hinge: point, latch: point, opens }, { name });
const wallDoor = record(
  { wall: name, start: length, width: length, hinge: fc.constantFrom('start', 'end'), opens },
  { name },
);
const spacePoint = fc.tuple(length, length, length);
const ceiling = fc.oneof(length, list(fc.tuple(spacePoint, spacePoint, spacePoint), 2));

const several = list(length, 3).map((lengths): Json => (lengths.length > 1 ? { length: lengths } : 'x'));
const reading = fc.oneof(length, several, record({ length, by: fc.constantFrom('tape', 'laser') }, {}));
const corner = fc.oneof(fc.constant('external'), degrees);
const tape = record(
  { walls: list(record({ length: reading }, { from: name, corner })) },
  {
    walk: fc.constantFrom('clockwise', 'anticlockwise'),
    diagonals: list(record({ from: name, to: name, length: reading }, {})),
    heights: list(reading),
    offsets: list(
      record(
        {
          kind: fc.constantFrom('alcove', 'breast', 'bay'),
          wall: name,
          start: reading,
          width: reading,
          depth: reading,
        },
        { name, front: reading, rest: reading },
      ),
      2,
    ),
    angles: list(record({ corner: name, before: reading, after: reading, across: reading }, {}), 2),
    by: fc.constantFrom('tape', 'laser', 'estimate'),
    tapeClass: fc.constantFrom('I', 'II', 'III'),
  },
);
const shared = { ceiling, obstacles: list(obstacle, 3), tolerance: length };
const room = fc.oneof(
  record({ outline: list(point, 8) }, { ...shared, doors: list(pointDoor, 2) }),
  record({ tape }, { ...shared, doors: list(fc.oneof(pointDoor, wallDoor), 2) }),
);

const size = record({ length, width: length }, {});
const table = fc.oneof(
  fc.constantFrom(...Object.keys(TABLES), 'no-such-table'),
  record({ field: size, outer: size }, { name, bedHeight: length, mass: degrees }),
);
const cue = fc.oneof(
  fc.constantFrom(...CATALOGUES.cues),
  length,
  record({ length }, { tipDiameter: length }),
);
const pose = some({ x: length, y: length, turn: degrees });
const piece = fc.oneof(
  record({ kind: fc.constantFrom(...Object.keys(FURNISHINGS), 'no-such-kind') }, { name, pose }),
  record({ footprint: size, height: length }, { name, pose, stands: fc.constantFrom('wall', 'free') }),
);

export const INPUT: fc.Arbitrary<Json> = record(
  { room, table },
  {
    cues: list(cue, 3),
    pose,
    stroke: some({ backswing: length, margin: length, maxElevation: degrees }),
    search: some({ turns: fc.constantFrom('any', 'square'), gap: length }),
    furnishings: list(piece, 3),
    delivery: fc.constant({ route: [{ kind: 'doorway', width: '86 cm' }] }),
  },
);

/** Anything at all where an input is expected, also with the right keys. */
export const ANYTHING: fc.Arbitrary<Json> = fc.oneof(
  fc.jsonValue().map(plain),
  fc
    .record({
      room: fc.jsonValue(),
      table: fc.jsonValue(),
      cues: fc.jsonValue(),
      furnishings: fc.jsonValue(),
    })
    .map(plain),
  fc
    .record({
      outline: fc.jsonValue(),
      tape: fc.jsonValue(),
      obstacles: fc.array(fc.jsonValue()),
      doors: fc.array(fc.jsonValue()),
      ceiling: fc.jsonValue(),
    })
    .map((value) => plain({ room: value })),
);

/** As it comes out of a file. */
function plain(value: unknown): Json {
  const parsed: Json = JSON.parse(JSON.stringify(value));
  return parsed;
}
