import { describe, expect, it } from 'vitest';
import { checkFitInput } from '../../src/check-fit-input.js';
import { read } from './read-pieces.js';

const crate = { name: 'crate', footprint: { length: 900, width: 600 }, height: 700 };
const zone = (...zones: readonly unknown[]): object => ({ ...crate, zones });
const footprint = (shape: unknown): object => ({ ...crate, footprint: shape });
const KINDS =
  '"darts", "table-tennis", "table-football", "upright-cabinet", "pinball", "music-machine", "bar", "stool", "sofa", "cupboard", "cue-rack", "score-board" and "lamp"';
const ZONE = 'furnishings[0].zones[0]';

/** What is wrong, one piece, and each problem as `code @ path: message`. */
const PIECES: readonly (readonly [string, unknown, ...string[]])[] = [
  [
    'a kind that is misspelt',
    { kind: 'darst' },
    `unknown-kind @ furnishings[0].kind: There is no kind of piece "darst"; nearest is "darts" of ${KINDS}. Or leave out "kind" and give "footprint" and "height".`,
  ],
  [
    'a kind in capitals',
    { kind: 'Table-Football' },
    `unknown-kind @ furnishings[0].kind: There is no kind of piece "Table-Football"; nearest is "table-football" of ${KINDS}. Or leave out "kind" and give "footprint" and "height".`,
  ],
  [
    'a kind of another type',
    { kind: 7 },
    'not-text @ furnishings[0].kind: Expected the kind of the piece as text, such as "sofa", got 7.',
  ],
  [
    'nothing at all',
    {},
    'missing @ furnishings[0].footprint: The footprint of piece 1 is missing: give its length and width, its diameter or its corners, or the kind of piece it is.',
    'missing @ furnishings[0].height: The height of piece 1 is missing: from its underside to its top.',
  ],
  [
    'a property that nobody reads',
    { ...crate, colour: 'green' },
    'unknown-property @ furnishings[0].colour: There is no property "colour" here; the known ones are "kind", "name", "footprint", "height", "from", "mass", "zones", "stands", "turns" and "pose".',
  ],
  [
    'an empty name',
    { kind: 'sofa', name: ' ' },
    "empty-name @ furnishings[0].name: The piece's name is empty.",
  ],
  [
    'the name of an obstacle',
    { kind: 'sofa', name: 'Post' },
    'name-taken @ furnishings[0].name: "Post" is the name of an obstacle of the room already; give one of the two another name, so that the report can tell them apart.',
  ],
  [
    'the name of a door',
    { kind: 'sofa', name: 'hall door' },
    'name-taken @ furnishings[0].name: "hall door" is the name of a door of the room already; give one of the two another name, so that the report can tell them apart.',
  ],
  [
    'the name of a wall',
    { kind: 'sofa', name: 'wall 2' },
    'name-taken @ furnishings[0].name: "wall 2" is what the report calls a part of the room; choose another name.',
  ],
  [
    'the name of the table',
    { kind: 'sofa', name: 'The table' },
    'name-taken @ furnishings[0].name: "The table" is the name of the table already; give one of the two another name, so that the report can tell them apart.',
  ],
  [
    "the name of the players' floor",
    { kind: 'sofa', name: 'cueing' },
    'name-taken @ furnishings[0].name: "cueing" is the name of the players\' floor round the table already; give one of the two another name, so that the report can tell them apart.',
  ],
  [
    'a sofa of 2 mm',
    { kind: 'sofa', footprint: { length: 2, width: 0.9 } },
    'implausible-length @ furnishings[0].footprint.length: The length of piece 1 is 2 mm; expected 400 mm to 10000 mm. A number is in millimetres; write "2 m" or "2 ft" if that is what was meant.',
    'implausible-length @ furnishings[0].footprint.width: The width of piece 1 is 0.9 mm; expected 180 mm to 4500 mm. A number is in millimetres; write "0.9 m" or "0.9 ft" if that is what was meant.',
  ],
  [
    'a sofa in centimetres',
    { kind: 'sofa', footprint: { length: 210, width: 900 } },
    'implausible-length @ furnishings[0].footprint.length: The length of piece 1 is 210 mm; expected 400 mm to 10000 mm. A number is in millimetres; write "210 cm" or "210 in" if that is what was meant.',
  ],
  [
    'a crate of 3 mm',
    footprint({ length: 3, width: 600 }),
    'implausible-length @ furnishings[0].footprint.length: The length of "crate" is 3 mm; expected 5 mm to 20000 mm. A number is in millimetres; write "3 cm" or "3 m" or "3 in" or "3 ft" if that is what was meant.',
  ],
  [
    'a crate in centimetres',
    footprint({ length: 90, width: 60 }),
    'implausible-length @ furnishings[0].footprint: The length of "crate", its longer side, is 90 mm; expected 100 mm to 20000 mm. A number is in millimetres; write "90 cm" or "90 in" if that is what was meant.',
  ],
  [
    'a footprint of half a rectangle',
    footprint({ length: 900 }),
    'missing @ furnishings[0].footprint.width: The width of "crate" is missing.',
  ],
  [
    'a footprint both round and square',
    footprint({ length: 900, diameter: 900 }),
    'footprint-round-and-square @ furnishings[0].footprint: The footprint of "crate" has a diameter and the sizes of a rectangle; give one or the other.',
  ],
  [
    'a footprint in the room',
    footprint({ center: [0, 0], length: 900, width: 600 }),
    'unknown-property @ furnishings[0].footprint.center: There is no property "center" here; the known ones are "length", "width" and "diameter".',
  ],
  [
    'a footprint of another type',
    footprint('big'),
    'not-an-object @ furnishings[0].footprint: Expected an object with "length", "width" and "diameter", got "big".',
  ],
  [
    'corners that cross',
    footprint([
      [0, 0],
      [900, 900],
      [900, 0],
      [0, 900],
    ]),
    'footprint-crosses-itself @ furnishings[0].footprint[0]: The footprint of "crate" crosses itself: side 1 and side 3 cross at (450 mm, 450 mm). Check the order of the corners and their signs. (Side 1 starts at corner 1 of the list.)',
  ],
  [
    'two corners',
    footprint([
      [0, 0],
      [900, 900],
    ]),
    'footprint-too-few-corners @ furnishings[0].footprint: The footprint of "crate" has 2 corners; it needs at least 3.',
  ],
  [
    'corners in metres',
    footprint([
      [0, 0],
      [1.5, 0],
      [1.5, 0.6],
    ]),
    'implausible-length @ furnishings[0].footprint: The length of "crate" is 1.5 mm; expected 5 mm to 20000 mm. A number is in millimetres; write "1.5 cm" or "1.5 m" or "1.5 in" or "1.5 ft" if that is what was meant.',
    'implausible-length @ furnishings[0].footprint: The width of "crate" is 0.6 mm; expected 5 mm to 20000 mm. A number is in millimetres; write "0.6 cm" or "0.6 m" or "0.6 in" or "0.6 ft" if that is what was meant.',
  ],
  [
    'too many corners',
    footprint(Array.from({ length: 201 }, (_, i) => [10 * i, i * i])),
    'too-many @ furnishings[0].footprint: There are 201 corners; at most 200 can be answered for.',
  ],
  [
    'a height in metres',
    { ...crate, height: 1.2 },
    'implausible-length @ furnishings[0].height: The height of "crate" is 1.2 mm; expected 5 mm to 5000 mm. A number is in millimetres; write "1.2 cm" or "1.2 m" or "1.2 in" or "1.2 ft" if that is what was meant.',
  ],
  [
    'a pinball machine of 40 mm',
    { kind: 'pinball', height: 40 },
    'implausible-length @ furnishings[0].height: The height of piece 1 is 40 mm; expected 380 mm to 5000 mm. A number is in millimetres; write "40 cm" or "40 in" if that is what was meant.',
  ],
  [
    'an underside under the floor',
    { ...crate, from: -5 },
    'implausible-length @ furnishings[0].from: The underside of "crate" is -5 mm; expected 20 mm to 10000 mm. A number is in millimetres; text carries its unit, such as "183 cm".',
  ],
  [
    'an underside in metres',
    { kind: 'darts', from: 1.5 },
    'implausible-length @ furnishings[0].from: The underside of piece 1 is 1.5 mm; expected 20 mm to 10000 mm. A number is in millimetres; write "1.5 m" or "1.5 in" or "1.5 ft" if that is what was meant.',
  ],
  [
    'a mass of nothing',
    { ...crate, mass: 0 },
    'too-small @ furnishings[0].mass: The mass of "crate" is 0 kg; it must be at least 0.1 kg.',
  ],
  [
    'a mass as text',
    { ...crate, mass: '70 kg' },
    'not-a-number @ furnishings[0].mass: Expected the mass of "crate" as a number, got "70 kg".',
  ],
  [
    'a place that is none',
    { ...crate, stands: 'window' },
    'unknown-word @ furnishings[0].stands: Expected one of "wall", "corner", "free", "hung", "over-table", got "window".',
  ],
  [
    'a hung piece without a height',
    { ...crate, stands: 'hung' },
    'missing @ furnishings[0].from: Say how high "crate" hangs: "from" is its underside above the floor.',
  ],
  [
    'a kind of the floor that is hung without a height',
    { kind: 'cupboard', stands: 'hung' },
    'missing @ furnishings[0].from: Say how high piece 1 hangs: "from" is its underside above the floor.',
  ],
  [
    'a turn that is no list',
    { ...crate, turns: 90 },
    'unknown-word @ furnishings[0].turns: Expected one of "back", "square", "any" or a list of turns in degrees, got 90.',
  ],
  [
    'no turns',
    { ...crate, turns: [] },
    'no-turns @ furnishings[0].turns: The list of turns that "crate" may have is empty; leave it out, or name at least one.',
  ],
  [
    'turns beyond a full one, or none',
    { ...crate, turns: [361, 0, -400, '90'] },
    'too-large @ furnishings[0].turns[0]: The turn of "crate" is 361 degrees; it must be at most 360 degrees.',
    'too-small @ furnishings[0].turns[2]: The turn of "crate" is -400 degrees; it must be at least -360 degrees.',
    'not-a-number @ furnishings[0].turns[3]: Expected the turn of "crate" as a number, got "90".',
  ],
  [
    'too many turns',
    { ...crate, turns: new Array(73).fill(0) },
    'too-many @ furnishings[0].turns: There are 73 turns of "crate"; at most 72 can be answered for.',
  ],
  [
    'a back without a wall',
    { ...crate, turns: 'back' },
    'back-without-wall @ furnishings[0].turns: "crate" stands free, with no wall for its back; turn it "square" or "any", or let it stand at a "wall".',
  ],
  [
    'a sofa that is pulled off the wall and keeps its back to it',
    { kind: 'sofa', stands: 'free', turns: 'back' },
    'back-without-wall @ furnishings[0].turns: Piece 1 stands free, with no wall for its back; turn it "square" or "any", or let it stand at a "wall".',
  ],
  [
    'a lamp with a place, a turn and floor of its own',
    { kind: 'lamp', pose: { x: 1000, y: 1000 }, turns: 'any', zones: [{ front: 500 }] },
    'over-table-pose @ furnishings[0].pose: Piece 1 hangs over the table, goes and turns with it, and nobody needs floor for it; leave out "pose".',
    'over-table-turns @ furnishings[0].turns: Piece 1 hangs over the table, goes and turns with it, and nobody needs floor for it; leave out "turns".',
    'over-table-zones @ furnishings[0].zones: Piece 1 hangs over the table, goes and turns with it, and nobody needs floor for it; leave out "zones".',
  ],
  [
    'a lamp by its height above the bed',
    { kind: 'lamp', from: 800 },
    'over-table-too-low @ furnishings[0].from: The underside of piece 1 is 800 mm above the floor, not over the table\'s rails, which are 807 mm high; "from" is measured from the floor, not from the bed.',
  ],
  [
    'zones of another type',
    { ...crate, zones: { front: 600 } },
    'not-a-list @ furnishings[0].zones: Expected a list of use zones of "crate", got an object.',
  ],
  [
    'too many zones',
    zone(...new Array(11).fill({ front: 600 })),
    'too-many @ furnishings[0].zones: There are 11 use zones of "crate"; at most 10 can be answered for.',
  ],
  [
    'a zone that is none',
    zone({ front: 0, name: 'seat' }),
    `zone-nowhere @ ${ZONE}: The use zone "seat" of "crate" goes no farther than the piece itself; give how far it reaches at the "front", "back", "left" or "right".`,
  ],
  [
    'an empty zone',
    zone({}),
    `zone-nowhere @ ${ZONE}: The use zone "use" of "crate" goes no farther than the piece itself; give how far it reaches at the "front", "back", "left" or "right".`,
  ],
  [
    'a throw lane in metres',
    zone({ front: 2.37 }),
    `implausible-length @ ${ZONE}.front: The front of use zone "use" of "crate" is 2.37 mm; expected 10 mm to 20000 mm. A number is in millimetres; write "2.37 cm" or "2.37 m" or "2.37 in" or "2.37 ft" if that is what was meant.`,
  ],
  [
    'a zone into the piece',
    zone({ front: 600, back: -300 }),
    `implausible-length @ ${ZONE}.back: The back of use zone "use" of "crate" is -300 mm; expected 10 mm to 20000 mm. A number is in millimetres; text carries its unit, such as "183 cm".`,
  ],
  [
    'heights the wrong way round',
    zone({ front: 600, from: 2000, to: 1900 }),
    `heights-reversed @ ${ZONE}.from: The underside of use zone "use" of "crate" (2000 mm) is not below its top (1900 mm); both are above the floor.`,
  ],
  [
    'one zone name twice',
    zone({ name: 'Use 2', front: 600 }, { back: 600 }),
    'name-taken @ furnishings[0].zones[1].name: "use 2" is the name of use zone 1 of "crate" already; give one of the two another name.',
  ],
  [
    'sharing with something else',
    zone({ front: 600, shares: ['doors'] }),
    `unknown-word @ ${ZONE}.shares[0]: Expected one of "cueing", "zones", got "doors".`,
  ],
  [
    'sharing twice',
    zone({ front: 600, shares: ['zones', 'zones'] }),
    `given-twice @ ${ZONE}.shares[1]: "zones" is in the list of use zone "use" of "crate" already.`,
  ],
  [
    'sharing three times',
    zone({ front: 600, shares: ['zones', 'cueing', 'zones'] }),
    `too-many @ ${ZONE}.shares: There are 3 things that may be shared with; at most 2 can be answered for.`,
  ],
  [
    'keeping off doors in words',
    zone({ front: 600, offDoors: 'yes' }),
    `not-yes-or-no @ ${ZONE}.offDoors: Expected true or false for whether use zone "use" of "crate" keeps off doors, got "yes".`,
  ],
  [
    'a pose without a place',
    { ...crate, pose: { turn: 400 } },
    'missing @ furnishings[0].pose.x: The x of the middle of "crate" is missing.',
    'missing @ furnishings[0].pose.y: The y of the middle of "crate" is missing.',
    'too-large @ furnishings[0].pose.turn: The turn of "crate" is 400 degrees; it must be at most 360 degrees.',
  ],
  [
    'a pose far outside',
    { ...crate, pose: { x: 12_000, y: 3000 } },
    'piece-outside @ furnishings[0].pose: "crate" lies entirely outside the room: its middle is 5000 mm from wall 2, the nearest. Check its pose.',
  ],
  [
    'a pose just outside',
    { ...crate, pose: { x: 3000, y: -300 } },
    'piece-outside @ furnishings[0].pose: "crate" lies entirely outside the room: its middle is 300 mm from wall 1, the nearest. Check its pose.',
  ],
  [
    'a pose on another planet',
    { ...crate, pose: { x: 1e300, y: 0 } },
    'too-large @ furnishings[0].pose.x: The x of the middle of "crate" is 1e+300 mm; it must be at most 10000000000 mm.',
  ],
];

/** What is wrong, `furnishings`, `arrangement` and the problems. */
const WHOLE: readonly (readonly [string, unknown, unknown, ...string[]])[] = [
  [
    'furnishings of another type',
    { kind: 'sofa' },
    undefined,
    'not-a-list @ furnishings: Expected a list of furnishings, got an object.',
  ],
  [
    'furnishings of null',
    null,
    undefined,
    'not-a-list @ furnishings: Expected a list of furnishings, got null.',
  ],
  [
    'thirteen pieces',
    new Array(13).fill({ kind: 'stool' }),
    undefined,
    'too-many @ furnishings: There are 13 furnishings; at most 12 can be answered for.',
  ],
  [
    'a hole in the list',
    Object.assign(new Array(2), { 0: { kind: 'sofa' } }),
    undefined,
    'missing-item @ furnishings[1]: Item 2 of this list is missing.',
  ],
  [
    'one name twice',
    [crate, { ...crate, name: 'Crate' }],
    undefined,
    'name-taken @ furnishings[1].name: "Crate" is the name of piece 1 already; give one of the two another name, so that the report can tell them apart.',
  ],
  [
    'an arrangement of nothing',
    undefined,
    {},
    'nothing-to-arrange @ arrangement: There is nothing to arrange: list the other pieces of the room as "furnishings", or leave out "arrangement".',
  ],
  [
    'an arrangement of another type',
    [crate],
    5,
    'not-an-object @ arrangement: Expected an object with "way", "effort" and "onProgress", got 5.',
  ],
  [
    'a way in centimetres, and a broken effort',
    [crate],
    { way: 60, effort: 1.5 },
    'implausible-length @ arrangement.way: The width of the clear ways is 60 mm; expected 300 mm to 3000 mm. A number is in millimetres; write "60 cm" or "60 in" if that is what was meant.',
    'not-a-whole-number @ arrangement.effort: The effort is 1.5; give a whole number.',
  ],
  [
    'no effort',
    [crate],
    { effort: 0 },
    'too-small @ arrangement.effort: The effort is 0; it must be at least 1.',
  ],
  [
    'endless effort',
    [crate],
    { effort: 100_001 },
    'too-large @ arrangement.effort: The effort is 100001; it must be at most 100000.',
  ],
  [
    'progress that cannot be called',
    [crate],
    { onProgress: true },
    'not-a-function @ arrangement.onProgress: Expected a function that takes the progress.',
  ],
  [
    'pieces and arrangement both wrong',
    [
      { ...crate, mass: -1 },
      { kind: 'sofa', turns: 'left' },
    ],
    { way: 'wide' },
    'too-small @ furnishings[0].mass: The mass of "crate" is -1 kg; it must be at least 0.1 kg.',
    'unknown-word @ furnishings[1].turns: Expected one of "back", "square", "any" or a list of turns in degrees, got "left".',
    'no-number @ arrangement.way: The width of the clear ways cannot be read: "wide" has no number before "w"; write a number and its unit, such as "183 cm".',
  ],
];

const said = (furnishings: unknown, arrangement?: unknown): string[] =>
  read(furnishings, arrangement).problems.map(({ code, path, message }) => `${code} @ ${path}: ${message}`);

describe('problems of a piece', () => {
  it.each(PIECES)('%s', (_, piece, ...expected) => {
    expect(said([piece])).toEqual(expected);
    expect(read([piece]).checked).toBeNull();
  });
});

describe('problems of the pieces and their arrangement', () => {
  it.each(WHOLE)('%s', (_, furnishings, arrangement, ...expected) => {
    expect(said(furnishings, arrangement)).toEqual(expected);
    expect(read(furnishings, arrangement).checked).toBeNull();
  });

  it('come beside those of the room and the table, which excuse no name and no pose', () => {
    const input = {
      room: { outline: [] },
      table: 'none',
      furnishings: [
        { kind: 'sofa', name: 'post', pose: { x: 1e6, y: 0 } },
        { kind: 'divan' },
        { kind: 'lamp', from: 5 },
      ],
    };
    expect(checkFitInput(input).map(({ code, path }) => `${code} @ ${path}`)).toEqual([
      'outline-too-few-corners @ room.outline',
      'unknown-table @ table',
      'unknown-kind @ furnishings[1].kind',
      'implausible-length @ furnishings[2].from',
    ]);
  });
});

describe('what is no problem', () => {
  it.each([
    ['twelve pieces', new Array(12).fill({ kind: 'stool' })],
    ['a thin picture', [{ ...crate, footprint: { length: 800, width: 5 }, from: 1400, stands: 'hung' }]],
    ['a hung piece down to the floor', [{ ...crate, stands: 'hung', from: 0 }]],
    ['a piece as high as the ceiling and more', [{ ...crate, height: 5000 }]],
    ['every turn', [{ ...crate, turns: [-360, -45.5, 0, 360] }]],
    ['a back in a list of turns at a wall', [{ ...crate, stands: 'wall', turns: 'back' }]],
    ['a lamp just over the rails', [{ kind: 'lamp', from: 808 }]],
    ['a pose that is half outside', [{ ...crate, pose: { x: 3000, y: -299 } }]],
    ['two zones of one place', [zone({ name: 'a', front: 500 }, { name: 'b', front: 500 })]],
  ])('%s', (_, furnishings) => {
    expect(said(furnishings)).toEqual([]);
  });
});
