import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitQuestion } from '../../src/check-fit-input.js';
import { DEFAULTS } from '../../src/equipment/defaults.js';
import { FURNISHINGS } from '../../src/equipment/furnishings.js';
import { FURNISHING_IDS } from '../../src/equipment/furnishings-ids.js';
import { TABLES } from '../../src/equipment/tables.js';
import { boundingBox, circleRing, rectangleRing, signedArea } from '../../src/geometry/ring.js';
import { pieceOf, piecesOf, read, SCENE } from './read-pieces.js';

const crate = { footprint: { length: 900, width: 600 }, height: 700 };

describe('a piece by its kind', () => {
  it.each(FURNISHING_IDS.filter((id) => id !== 'lamp'))('%s is as the catalogue has it', (kind) => {
    expect(pieceOf({ kind })).toEqual({ ...FURNISHINGS[kind], pose: null });
  });

  it('takes what is given and leaves the rest as it is usual', () => {
    const { sofa } = FURNISHINGS;
    const piece = pieceOf({
      kind: 'sofa',
      name: ' red sofa ',
      footprint: { length: '2.4 m', width: 950 },
      mass: 82,
    });
    expect(piece).toEqual({
      ...sofa,
      name: 'red sofa',
      ring: rectangleRing([0, 0], 2400, 950),
      length: 2400,
      width: 950,
      mass: 82,
      source: `Measurements given; whatever was not is usual for the kind. ${sofa.source}`,
      pose: null,
    });
  });

  it('keeps its height where only its underside is given, and its underside where only its height is', () => {
    const { darts } = FURNISHINGS;
    expect(pieceOf({ kind: 'darts', from: 1400 })).toMatchObject({ from: 1400, to: 1400 + 451 });
    expect(pieceOf({ kind: 'darts', height: 400 })).toMatchObject({ from: darts.from, to: darts.from + 400 });
  });

  it('turns as is usual for its kind, or as is usual where it is said to stand', () => {
    expect(pieceOf({ kind: 'stool' }).turns).toBe('any');
    expect(pieceOf({ kind: 'stool', stands: 'free' }).turns).toBe('any');
    expect(pieceOf({ kind: 'stool', stands: 'wall' }).turns).toBe('back');
    expect(pieceOf({ kind: 'sofa', stands: 'free' }).turns).toBe('square');
    expect(pieceOf({ kind: 'sofa', stands: 'corner' }).turns).toBe('back');
    expect(pieceOf({ kind: 'sofa', turns: [90, -0] }).turns).toEqual([90, 0]);
  });

  it('loses its zones to those that are given, also to none', () => {
    expect(pieceOf({ kind: 'sofa', zones: [] }).zones).toEqual([]);
    expect(pieceOf({ kind: 'bar', zones: [{ front: 700 }] }).zones).toHaveLength(1);
  });
});

describe('a piece by its measurements', () => {
  it('stands free and square on the floor, and nobody needs floor to use it', () => {
    expect(pieceOf({ ...crate, name: 'crate' })).toEqual({
      kind: null,
      name: 'crate',
      ring: rectangleRing([0, 0], 900, 600),
      length: 900,
      width: 600,
      from: 0,
      to: 700,
      mass: null,
      stand: 'free',
      turns: 'square',
      zones: [],
      source: 'Measurements given; whatever was not is the default (common practice, no source).',
      pose: null,
    });
  });

  it.each(['wall', 'corner', 'hung'] as const)('has its back to the wall where it stands: %s', (stands) => {
    expect(pieceOf({ ...crate, stands, from: 100 })).toMatchObject({ stand: stands, turns: 'back' });
  });

  it('may be round: a polygon about the circle', () => {
    const piece = pieceOf({ footprint: { diameter: '80 cm' }, height: 750 });
    expect(piece.ring).toEqual(circleRing([0, 0], 800));
    expect([piece.length, piece.width]).toEqual([800, 800]);
  });

  it('may have corners, in either direction, from any origin: the middle of its rectangle becomes the origin', () => {
    const corners = [
      [0, 0],
      [1600, 0],
      [1600, 600],
      [600, 600],
      [600, 1200],
      [0, 1200],
    ] as const;
    const ring = [
      [-800, -600],
      [800, -600],
      [800, 0],
      [-200, 0],
      [-200, 600],
      [-800, 600],
    ];
    const shifts = fc.tuple(
      fc.integer({ min: -9e6, max: 9e6 }),
      fc.integer({ min: -9e6, max: 9e6 }),
      fc.boolean(),
    );
    fc.assert(
      fc.property(shifts, fc.nat({ max: 5 }), ([dx, dy, back], first) => {
        const moved = corners.map(([x, y]) => [x + dx, y + dy]);
        const begun = [...moved.slice(first), ...moved.slice(0, first)];
        const piece = pieceOf({ footprint: back ? begun.reverse() : begun, height: 700 });
        expect(piece.ring).toEqual(ring);
        expect([piece.length, piece.width]).toEqual([1600, 1200]);
      }),
      { seed: 20251201, numRuns: 100 },
    );
  });

  it('has an anticlockwise ring about its middle, whatever its corners', () => {
    const point = fc.tuple(fc.integer({ min: -2000, max: 2000 }), fc.integer({ min: -2000, max: 2000 }));
    let read3 = 0;
    fc.assert(
      fc.property(fc.array(point, { minLength: 3, maxLength: 5 }), (footprint) => {
        const { checked } = read([{ footprint, height: 500 }]);
        if (checked === null) return;
        read3++;
        const { ring, length, width } = checked.pieces[0] ?? pieceOf(crate);
        const box = boundingBox(ring);
        expect(signedArea(ring)).toBeGreaterThan(0);
        expect(box.maxX).toBeCloseTo(length / 2, 9);
        expect(box.minX).toBeCloseTo(-length / 2, 9);
        expect(box.maxY).toBeCloseTo(width / 2, 9);
        expect(box.minY).toBeCloseTo(-width / 2, 9);
      }),
      { seed: 20251202, numRuns: 300 },
    );
    expect(read3).toBeGreaterThan(50);
  });

  it('has zones as they are given, and else up to the head height, shared by turns, across doors', () => {
    const zones = [
      { name: 'chair', front: '70 cm', left: 0, from: 100, to: '1.8 m', shares: ['zones'], offDoors: true },
      { back: 300 },
      { right: 200, shares: [] },
    ];
    expect(pieceOf({ ...crate, zones }).zones).toEqual([
      {
        name: 'chair',
        front: 700,
        back: 0,
        left: 0,
        right: 0,
        from: 100,
        to: 1800,
        withCueing: false,
        withZones: true,
        offDoors: true,
      },
      {
        name: 'use 2',
        front: 0,
        back: 300,
        left: 0,
        right: 0,
        from: 0,
        to: DEFAULTS.arrangement.zoneHeight,
        withCueing: true,
        withZones: true,
        offDoors: false,
      },
      expect.objectContaining({ name: 'use 3', right: 200, withCueing: false, withZones: false }),
    ]);
  });
});

describe('what hangs over the table', () => {
  it('hangs so far above the bed of that table', () => {
    // WPA Recommended Equipment Specifications, s. 15: 1.016 m above the bed.
    for (const table of [TABLES['pool-9ft'], TABLES['snooker-12ft'], TABLES['carom-match']]) {
      const { from, to } = pieceOf({ kind: 'lamp' }, table);
      expect(from).toBe(table.bedHeight + 1016);
      expect(to - from).toBe(300);
    }
    expect(pieceOf({ ...crate, stands: 'over-table' }).from).toBe(TABLES['pool-9ft'].bedHeight + 1016);
  });

  it('hangs where it is said to, above the floor', () => {
    expect(pieceOf({ kind: 'lamp', from: '1.9 m', height: 200 })).toMatchObject({ from: 1900, to: 2100 });
  });

  it('has no zones, also where its kind has some', () => {
    expect(pieceOf({ kind: 'score-board', stands: 'over-table' }).zones).toEqual([]);
    expect(pieceOf({ kind: 'lamp', zones: [] }).zones).toEqual([]);
  });
});

describe('a given pose', () => {
  it.each([
    [undefined, 0],
    [0, 0],
    [-0, 0],
    [90, Math.PI / 2],
    [-90, (3 * Math.PI) / 2],
    [180, Math.PI],
    [360, 0],
    [-360, 0],
  ])('turned by %s degrees has %s radians', (turn, angle) => {
    const { pose } = pieceOf({ kind: 'sofa', pose: { x: '2 m', y: -0, turn } });
    expect(pose).toEqual({ x: 2000, y: 0, angle });
  });

  it('may stand partly outside, on another piece, or off its wall: that is for the judgement', () => {
    const poses = [
      { x: 0, y: 0, turn: 45 },
      { x: 3500, y: 3000, turn: 10 },
      { x: 6500, y: 3000 },
    ];
    expect(piecesOf(poses.map((pose) => ({ kind: 'sofa', pose })))).toHaveLength(3);
  });
});

describe('the names of pieces', () => {
  const names = (...furnishings: readonly object[]): string[] =>
    piecesOf(furnishings).map(({ name }) => name);

  it('are those of their kinds, numbered where there are several', () => {
    expect(names({ kind: 'sofa' }, { kind: 'stool' }, { kind: 'darts' }, { kind: 'stool' })).toEqual([
      'sofa',
      'stool 1',
      'darts board',
      'stool 2',
    ]);
  });

  it('keep off names that were given, here and in the room', () => {
    expect(names({ kind: 'sofa' }, { kind: 'cupboard', name: 'Sofa' })).toEqual(['sofa 1', 'Sofa']);
    expect(names({ kind: 'sofa' }, { kind: 'sofa' }, { kind: 'stool', name: 'sofa 2' })).toEqual([
      'sofa 1',
      'sofa 3',
      'sofa 2',
    ]);
    const post = SCENE.obstacles[0];
    if (post === undefined) throw new Error('No post.');
    const crowded = { ...SCENE, obstacles: [{ ...post, name: 'sofa' }] };
    expect(read([{ kind: 'sofa' }], undefined, crowded).checked?.pieces[0]?.name).toBe('sofa 1');
  });

  it('are the place in the list for those without a kind', () => {
    expect(names({ kind: 'sofa' }, crate, { ...crate, name: 'piece 3' }, crate)).toEqual([
      'sofa',
      'piece 2',
      'piece 3',
      'piece 4',
    ]);
    expect(names(crate, { ...crate, name: 'Piece 1' })).toEqual(['piece 2', 'Piece 1']);
  });
});

describe('how pieces are arranged', () => {
  it('is the defaults where nothing is said', () => {
    for (const nothing of [undefined, {}, { way: undefined }]) {
      expect(read([{ kind: 'sofa' }], nothing).checked).toMatchObject({
        way: DEFAULTS.arrangement.way,
        effort: DEFAULTS.arrangement.effort,
        onProgress: null,
      });
    }
  });

  it('is as it is given', () => {
    const onProgress = (): boolean => false;
    const { checked, assumptions } = read([{ kind: 'sofa' }], { way: '75 cm', effort: 7, onProgress });
    expect(checked).toMatchObject({ way: 750, effort: 7 });
    expect(checked?.onProgress).toBe(onProgress);
    expect(assumptions.join()).not.toContain('way');
  });

  it('is nothing without pieces', () => {
    for (const none of [undefined, []]) {
      expect(read(none)).toEqual({ checked: null, problems: [], assumptions: [] });
    }
    expect(read([], { way: 700 })).toEqual({ checked: null, problems: [], assumptions: [] });
  });

  it('comes with the question', () => {
    const room = {
      outline: [
        [0, 0],
        [7000, 0],
        [7000, 6000],
        [0, 6000],
      ],
    } as const;
    const table = 'pool-9ft';
    expect(fitQuestion({ room, table }).arrangement).toBeNull();
    expect(fitQuestion({ room, table, furnishings: [] }).arrangement).toBeNull();
    const { arrangement, assumptions } = fitQuestion({ room, table, furnishings: [{ kind: 'lamp' }] });
    expect(arrangement?.pieces[0]?.from).toBe(TABLES[table].bedHeight + 1016);
    expect(assumptions).toContain('Clear ways are 600 mm wide (default).');
  });
});

describe('what was assumed', () => {
  it('is said of each kind in one sentence with its source', () => {
    expect(read([{ kind: 'sofa' }, { kind: 'darts', name: 'board', from: 1500 }]).assumptions).toEqual([
      `"sofa" has the usual size, height, place and use zones of its kind (default). ${FURNISHINGS.sofa.source}`,
      `"board" has the usual size, height, place and use zones of its kind (default). ${FURNISHINGS.darts.source}`,
      'Clear ways are 600 mm wide (default).',
    ]);
  });

  it('is said of a lamp with its height above the bed', () => {
    expect(read([{ kind: 'lamp' }], { way: 600 }).assumptions).toEqual([
      `"lamp over the table" has the usual size, height and place of its kind (default). ${FURNISHINGS.lamp.source}`,
      '"lamp over the table" hangs 1016 mm above the bed (default).',
    ]);
  });

  it('is said of other pieces in one sentence a default', () => {
    const pieces = [
      { ...crate, name: 'a', pose: { x: 1000, y: 1000 } },
      { ...crate, name: 'b', zones: [{ front: 600 }], pose: { x: 3000, y: 1000 } },
      { ...crate, name: 'c', stands: 'wall', zones: [{ front: 600, shares: [] }] },
    ];
    expect(read(pieces, { way: 600 }).assumptions).toEqual([
      '"a" and "b" stand free (default).',
      '"c" has its back to the wall (default).',
      '"a" and "b" stand square to the walls (default).',
      '"a" is used without floor of its own: no use zone was given (default).',
      '"b" and "c" have use zones free up to 2000 mm and shared by turns with cues and other zones, where nothing else was said (default).',
      '"a" and "b" stand with their lengths along x (default).',
    ]);
  });

  it('is nothing where everything is given', () => {
    const zones = [{ front: 600, to: 1900, shares: ['cueing'] }];
    const all = { ...crate, from: 0, stands: 'wall', turns: 'any', zones, pose: { x: 900, y: 900, turn: 0 } };
    expect(read([all, { kind: 'sofa', ...all }], { way: 800 }).assumptions).toEqual([]);
  });
});
