import { describe, expect, it } from 'vitest';
import { piecesOf } from '../../src/equipment/pieces.js';
import { TABLES } from '../../src/equipment/tables.js';
import { read } from './read-inputs.js';

const doorway = { kind: 'doorway', width: 800, height: 2000 };
const corner = { kind: 'corner', width: 1000, height: 2400 };
const stair = { kind: 'stair', width: 860, headroom: 2000, pitch: 42 };
const quarter = { kind: 'quarter-landing', width: 860, headroom: 2000, pitch: 42 };
const half = { ...quarter, kind: 'half-landing' };
const winder = { ...stair, kind: 'winder' };
const lift = { kind: 'lift', width: 1100, depth: 1400, height: 2200, door: { width: 900, height: 2000 } };
const slate = { name: 'Slate', length: 1450, width: 910, thickness: 45 };

/** A way with one passage. */
const on = (passage: unknown) => ({ route: [passage] });
/** A way with these pieces. */
const carry = (...pieces: unknown[]) => ({ route: [doorway], pieces });

/** What is wrong, the way, where it is told (below `delivery`), the code, and words of the message. */
const WRONG: readonly (readonly [what: string, way: unknown, path: string, code: string, words: RegExp])[] = [
  ['no way', null, '', 'not-an-object', /"route"/],
  ['a word unknown', { ...on(doorway), hand: 5 }, '.hand', 'unknown-property', /"handRoom"/],
  ['no route', {}, '.route', 'missing', /in the order walked/],
  ['a route that is no list', { route: doorway }, '.route', 'not-a-list', /passages/],
  ['an empty route', { route: [] }, '.route', 'no-passages', /leave the way in out/],
  [
    'too many passages',
    { route: Array(101).fill(doorway) },
    '.route',
    'too-many',
    /101 passages; at most 100/,
  ],
  [
    'a hole in the route',
    { route: Object.assign(new Array(3), { 0: doorway, 2: doorway }) },
    '.route[1]',
    'missing-item',
    /Item 2/,
  ],
  ['no passage', on(5), '.route[0]', 'not-an-object', /"kind"/],
  ['no kind', on({ width: 800 }), '.route[0].kind', 'missing', /"quarter-landing"/],
  ['a kind unknown', on({ ...doorway, kind: 'door' }), '.route[0].kind', 'unknown-word', /"doorway".*"door"/],
  [
    'a getter',
    on({
      ...stair,
      get run() {
        return 1;
      },
    }),
    '.route[0].run',
    'not-plain-data',
    /getter/,
  ],
  ['a name that is empty', on({ ...doorway, name: ' ' }), '.route[0].name', 'empty-name', /empty/],
  ['a name that is no text', on({ ...doorway, name: 4 }), '.route[0].name', 'not-text', /as text/],
  ['a name too long', on({ ...doorway, name: 'x'.repeat(201) }), '.route[0].name', 'name-too-long', /200/],
  [
    'two passages of one name',
    {
      route: [
        { ...doorway, name: 'Hall' },
        { ...corner, name: 'hall' },
      ],
    },
    '.route[1].name',
    'name-taken',
    /passage 1/,
  ],
  [
    'no width',
    on({ kind: 'doorway', height: 2000 }),
    '.route[0].width',
    'missing',
    /clear width of "Doorway 1"/,
  ],
  ['a width in cm', on({ ...doorway, width: 80 }), '.route[0].width', 'implausible-length', /"80 cm"/],
  ['a width in m', on({ ...doorway, width: 0.8 }), '.route[0].width', 'implausible-length', /"0.8 m"/],
  ['a width in inches', on({ ...doorway, width: 32 }), '.route[0].width', 'implausible-length', /"32 in"/],
  [
    'a width that is no length',
    on({ ...doorway, width: 'wide' }),
    '.route[0].width',
    'no-number',
    /cannot be read/,
  ],
  ['no height', on({ kind: 'doorway', width: 800 }), '.route[0].height', 'missing', /clear height/],
  [
    'a wall far too deep',
    on({ ...doorway, depth: 5000 }),
    '.route[0].depth',
    'implausible-length',
    /3000 mm/,
  ],
  ['a leaf in cm', on({ ...doorway, leaf: 4.4 }), '.route[0].leaf', 'implausible-length', /"4.4 cm"/],
  [
    'a space without its depth',
    on({ ...doorway, before: { left: 300 } }),
    '.route[0].before.depth',
    'missing',
    /the space in front of "Doorway 1"/,
  ],
  [
    'a negative floor',
    on({ ...doorway, after: { depth: 900, left: -5 } }),
    '.route[0].after.left',
    'implausible-length',
    /left/,
  ],
  ['a strange space', on({ ...doorway, after: 900 }), '.route[0].after', 'not-an-object', /"depth"/],
  [
    'a tolerance too large',
    on({ ...doorway, tolerance: '1 m' }),
    '.route[0].tolerance',
    'implausible-length',
    /200 mm/,
  ],
  ['a sill on a doorway', on({ ...doorway, sill: 100 }), '.route[0].sill', 'unknown-property', /known ones/],
  ['no turn', on({ ...corner, turn: 0 }), '.route[0].turn', 'turn-out-of-range', /5 to 175 degrees/],
  ['a turn back', on({ ...corner, turn: 180 }), '.route[0].turn', 'turn-out-of-range', /180 degrees/],
  ['a turn as text', on({ ...corner, turn: '90' }), '.route[0].turn', 'not-a-number', /turn of "Corner 1"/],
  [
    'a narrow corner',
    on({ ...corner, widthAfter: 1 }),
    '.route[0].widthAfter',
    'implausible-length',
    /"1 m"/,
  ],
  [
    'a low corner',
    on({ ...corner, heightAfter: 2.4 }),
    '.route[0].heightAfter',
    'implausible-length',
    /"2.4 m"/,
  ],
  [
    'no pitch and no step',
    on({ kind: 'stair', width: 860, headroom: 2000 }),
    '.route[0].pitch',
    'missing',
    /pitch in degrees, or the rise and going/,
  ],
  [
    'pitch and step',
    on({ ...stair, rise: 200, going: 230 }),
    '.route[0].pitch',
    'slope-given-twice',
    /not both/,
  ],
  ['pitch and rise', on({ ...stair, rise: 200 }), '.route[0].pitch', 'slope-given-twice', /not both/],
  [
    'rise alone',
    on({ kind: 'stair', width: 860, headroom: 2000, rise: 200 }),
    '.route[0].going',
    'missing',
    /going of one step/,
  ],
  [
    'going alone',
    on({ kind: 'stair', width: 860, headroom: 2000, going: 230 }),
    '.route[0].rise',
    'missing',
    /rise of one step/,
  ],
  [
    'a pitch in radians',
    on({ ...stair, pitch: 0.7 }),
    '.route[0].pitch',
    'pitch-out-of-range',
    /2 to 75 degrees/,
  ],
  [
    'steps as steep as a ladder',
    on({ kind: 'stair', width: 860, headroom: 2000, rise: 300, going: 60 }),
    '.route[0].rise',
    'pitch-out-of-range',
    /78.7 degrees/,
  ],
  [
    'a rise in inches',
    on({ kind: 'stair', width: 860, headroom: 2000, rise: 7.75, going: 254 }),
    '.route[0].rise',
    'implausible-length',
    /"7.75 in"/,
  ],
  ['headroom in m', on({ ...stair, headroom: 2 }), '.route[0].headroom', 'implausible-length', /"2 m"/],
  ['a short flight', on({ ...stair, run: 3 }), '.route[0].run', 'implausible-length', /"3 m"/],
  [
    'a foot without depth',
    on({ ...stair, bottom: {} }),
    '.route[0].bottom.depth',
    'missing',
    /floor at the foot/,
  ],
  [
    'a low head',
    on({ ...stair, top: { depth: 900, height: 2 } }),
    '.route[0].top.height',
    'implausible-length',
    /"2 m"/,
  ],
  [
    'a quarter landing too shallow',
    on({ ...quarter, widthAfter: 900, depth: 880 }),
    '.route[0].depth',
    'landing-too-shallow',
    /880 mm deep.*900 mm wide/,
  ],
  [
    'a quarter landing too narrow',
    on({ ...quarter, breadth: 800 }),
    '.route[0].breadth',
    'landing-too-narrow',
    /800 mm broad.*860 mm wide/,
  ],
  [
    'a well on a quarter landing',
    on({ ...quarter, well: 50 }),
    '.route[0].well',
    'unknown-property',
    /"breadth"/,
  ],
  [
    'a breadth on a half landing',
    on({ ...half, breadth: 900 }),
    '.route[0].breadth',
    'unknown-property',
    /"well"/,
  ],
  [
    'a winder that climbs a storey',
    on({ ...winder, climb: 5000 }),
    '.route[0].climb',
    'implausible-length',
    /3000 mm/,
  ],
  [
    'a lift without a door',
    on({ ...lift, door: undefined }),
    '.route[0].door',
    'missing',
    /clear width and height/,
  ],
  ['a lift with a strange door', on({ ...lift, door: 900 }), '.route[0].door', 'not-an-object', /"width"/],
  [
    'a door wider than the car',
    on({ ...lift, door: { width: 1200, height: 2000 } }),
    '.route[0].door.width',
    'door-wider-than-car',
    /1200 mm wide.*1100 mm from side to side/,
  ],
  [
    'a door higher than the car',
    on({ ...lift, door: { width: 900, height: 2300 } }),
    '.route[0].door.height',
    'door-higher-than-car',
    /2300 mm high.*2200 mm/,
  ],
  ['a car in cm', on({ ...lift, depth: 140 }), '.route[0].depth', 'implausible-length', /"140 cm"/],
  ['a hand room in m', { ...on(doorway), handRoom: 2500 }, '.handRoom', 'implausible-length', /200 mm/],
  ['a negative tolerance', { ...on(doorway), tolerance: -1 }, '.tolerance', 'implausible-length', /-1 mm/],
  ['a strange detail', { ...on(doorway), detail: 'all' }, '.detail', 'unknown-word', /"motions"/],
  ['no boxes', { ...on(doorway), maxBoxes: 0 }, '.maxBoxes', 'too-small', /at least 1/],
  ['boxes without end', { ...on(doorway), maxBoxes: 1e10 }, '.maxBoxes', 'too-large', /at most/],
  ['pieces that are none', { ...on(doorway), pieces: 3 }, '.pieces', 'not-pieces', /usual sets of pieces/],
  ['no pieces', carry(), '.pieces', 'no-pieces', /at least one/],
  ['too many pieces', carry(...Array(51).fill(slate)), '.pieces', 'too-many', /51 pieces; at most 50/],
  [
    'a set unknown',
    { ...on(doorway), pieces: 'one piece' },
    '.pieces',
    'unknown-pieces',
    /the known ones are "three-piece" and "one-piece"; nearest is "one-piece"/,
  ],
  ['a piece without a name', carry({ ...slate, name: undefined }), '.pieces[0].name', 'missing', /call it/],
  [
    'two pieces of one name',
    carry(slate, { ...slate, name: 'SLATE' }),
    '.pieces[1].name',
    'name-taken',
    /"count"/,
  ],
  ['a piece without a side', carry({ ...slate, width: undefined }), '.pieces[0].width', 'missing', /"Slate"/],
  [
    'a thickness in cm',
    carry({ ...slate, thickness: 4.5 }),
    '.pieces[0].thickness',
    'implausible-length',
    /"4.5 cm"/,
  ],
  [
    'a whole piece in cm',
    carry({ ...slate, length: 145, width: 91, thickness: 5 }),
    '.pieces[0].length',
    'implausible-length',
    /longer than 145 mm.*"145 cm"/,
  ],
  ['half a piece', carry({ ...slate, count: 1.5 }), '.pieces[0].count', 'not-a-whole-number', /whole number/],
  ['no piece at all', carry({ ...slate, count: 0 }), '.pieces[0].count', 'too-small', /at least 1/],
  ['nobody to carry', carry({ ...slate, carriers: 0 }), '.pieces[0].carriers', 'too-small', /carriers/],
  ['a mass without weight', carry({ ...slate, mass: 0 }), '.pieces[0].mass', 'too-small', /kg/],
  ['a mass as text', carry({ ...slate, mass: '90 kg' }), '.pieces[0].mass', 'not-a-number', /"90 kg"/],
  ['a tilt beyond upright', carry({ ...slate, tilt: 91 }), '.pieces[0].tilt', 'too-large', /90 degrees/],
  ['no way to hold it', carry({ ...slate, held: [] }), '.pieces[0].held', 'no-holds', /every way/],
  [
    'a way of holding unknown',
    carry({ ...slate, held: ['flat', 'up'] }),
    '.pieces[0].held[1]',
    'unknown-word',
    /"on-end"/,
  ],
  [
    'one way of holding twice',
    carry({ ...slate, held: ['flat', 'flat'] }),
    '.pieces[0].held[1]',
    'given-twice',
    /already/,
  ],
  [
    'ways of holding without end',
    carry({ ...slate, held: Array(4).fill('flat') }),
    '.pieces[0].held',
    'too-many',
    /at most 3/,
  ],
  [
    'a piece with a word unknown',
    carry({ ...slate, weight: 90 }),
    '.pieces[0].weight',
    'unknown-property',
    /"mass"/,
  ],
];

describe('a wrong way in', () => {
  it.each(WRONG)('is told: %s', (_, way, path, code, words) => {
    const { checked, problems, assumptions } = read(way);
    expect(checked).toBeNull();
    expect(assumptions).toEqual([]);
    expect(problems.map((p) => [p.path, p.code])).toEqual([[`delivery${path}`, code]]);
    expect(problems[0]?.message).toMatch(words);
    expect(problems[0]?.message).toMatch(/^[A-Z"].*[.]$/s);
  });

  it('is told with every problem at once', () => {
    const { problems } = read({
      route: [
        { ...doorway, width: 8, height: undefined },
        { kind: 'hole' },
        { ...stair, pitch: 80, run: 'x' },
      ],
      pieces: [
        { ...slate, tilt: 100 },
        { name: 'Rail', length: 1200, width: 120 },
      ],
      handRoom: 900,
      detail: 1,
    });
    expect(problems.map(({ path }) => path).sort()).toEqual(
      [
        'delivery.detail',
        'delivery.handRoom',
        'delivery.pieces[0].tilt',
        'delivery.pieces[1].thickness',
        'delivery.route[0].height',
        'delivery.route[0].width',
        'delivery.route[1].kind',
        'delivery.route[2].pitch',
        'delivery.route[2].run',
      ].sort(),
    );
  });

  it('lists the sets of the table at hand', () => {
    const { problems } = read({ route: [doorway], pieces: 'x'.repeat(100_000) }, TABLES['snooker-12ft']);
    const known = piecesOf(TABLES['snooker-12ft']).map(({ name }) => `"${name}"`);
    for (const name of known) expect(problems[0]?.message).toContain(name);
    expect(problems[0]?.message.length).toBeLessThan(300);
  });
});

describe('what may look wrong but is not', () => {
  const route = (passage: unknown) => read(on(passage)).problems;

  it('is an opening wider than high, a wall without depth, and a piece given in any order', () => {
    expect(route({ ...doorway, width: 2400, height: 2000, depth: 0 })).toEqual([]);
    expect(route({ kind: 'opening', width: 2000, height: 800, sill: 0 })).toEqual([]);
    const sides = [1450, 910, 45];
    for (const [i, j, k] of [
      [0, 1, 2],
      [2, 1, 0],
      [1, 0, 2],
      [2, 0, 1],
    ] as const) {
      const piece = { name: 'Slate', length: sides[i], width: sides[j], thickness: sides[k] };
      expect(read(carry(piece)).checked?.pieces[0]).toMatchObject({
        length: 1450,
        width: 910,
        thickness: 45,
      });
    }
  });

  it('is a half landing less deep than its flights are wide, and limits that are met exactly', () => {
    expect(route({ ...half, depth: 600 })).toEqual([]);
    expect(route({ ...quarter, widthAfter: 900, depth: 900, breadth: 860 })).toEqual([]);
    expect(route({ ...corner, turn: 5 })).toEqual([]);
    expect(route({ ...corner, turn: 175 })).toEqual([]);
    expect(route({ ...lift, door: { width: 1100, height: 2200 } })).toEqual([]);
  });
});
