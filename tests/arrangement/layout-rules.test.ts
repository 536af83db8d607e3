import { describe, expect, it } from 'vitest';
import {
  besideProblems,
  fitsBeside,
  fitsRoom,
  fitsTable,
  roomProblems,
  roomRules,
  tableProblems,
} from '../../src/arrangement/layout-rules.js';
import type { PlacedPiece } from '../../src/arrangement/piece-place.js';
import { FURNISHINGS } from '../../src/equipment/furnishings.js';
import { TABLES } from '../../src/equipment/tables.js';
import type { Ring } from '../../src/geometry/types.js';
import type { Scene } from '../../src/room/scene.js';
import { box, doorIn, flatCeiling, L_SHAPE, obstacleOf, put, sceneOf, shaped, zone } from './layout-cases.js';

const ROOM: Ring = [
  [0, 0],
  [6000, 0],
  [6000, 5000],
  [0, 5000],
];
/** The same with a breast 1 m wide and 400 mm deep in the middle of its far wall. */
const BREAST: Ring = [
  [0, 0],
  [6000, 0],
  [6000, 5000],
  [3500, 5000],
  [3500, 4600],
  [2500, 4600],
  [2500, 5000],
  [0, 5000],
];

function codes(scene: Scene, piece: PlacedPiece): string[] {
  const rules = roomRules(scene, 600);
  const problems = roomProblems(rules, piece);
  expect(fitsRoom(rules, piece)).toBe(problems.length === 0);
  return problems.map(({ code, with: other, zone: name, amount }) =>
    [code, other, name, amount === null ? null : Math.round(amount)].filter((x) => x !== null).join(' / '),
  );
}

describe('a piece and the walls', () => {
  const chest = box('chest', 1000, 500);

  it('may touch them', () => {
    expect(codes(sceneOf(ROOM), put(chest, 500, 250))).toEqual([]);
    expect(codes(sceneOf(ROOM), put(chest, 5750, 4500, 90))).toEqual([]);
  });

  it('may not reach beyond them', () => {
    expect(codes(sceneOf(ROOM), put(chest, 3000, 200))).toEqual(['outside / wall 1 / 50']);
    expect(codes(sceneOf(ROOM), put(chest, 6100, 2500))).toEqual(['outside / wall 2 / 600']);
    expect(codes(sceneOf(ROOM), put(chest, 3000, -2000))).toEqual(['outside / wall 1 / 2250']);
  });

  it('counts a shift of a hundredth of a millimetre as touching, and no more', () => {
    expect(codes(sceneOf(ROOM), put(chest, 3000, 250 - 0.009))).toEqual([]);
    expect(codes(sceneOf(ROOM), put(chest, 3000, 250 - 0.02))).toEqual(['outside / wall 1 / 0']);
  });

  it('may not have a wall run through it, even with all its corners in the room', () => {
    const bench = box('bench', 1600, 500);
    expect(codes(sceneOf(BREAST), put(bench, 3000, 4700))).toEqual(['outside / wall 4 / 300']);
    expect(codes(sceneOf(BREAST), put(bench, 3000, 4350))).toEqual([]);
  });

  it('goes by its true shape round a corner that juts out', () => {
    const corner = shaped('corner seat', L_SHAPE);
    const room = sceneOf([
      [0, 0],
      [4000, 0],
      [4000, 4000],
      [900, 4000],
      [900, 900],
      [0, 900],
    ]);
    expect(codes(room, put(corner, 3000, 1000, 90))).toEqual([]);
    // Turned so that its hollow takes the corner of the room in.
    expect(codes(room, put(corner, 1050, 1050, 180))).not.toEqual([]);
    const niche = sceneOf([
      [0, 0],
      [2000, 0],
      [2000, 800],
      [800, 800],
      [800, 2000],
      [0, 2000],
    ]);
    expect(codes(niche, put(corner, 1000, 1000))).toEqual([]);
  });
});

describe('a piece and what is in the room', () => {
  const radiator = obstacleOf(
    'radiator',
    [
      [1000, 0],
      [2000, 0],
      [2000, 100],
      [1000, 100],
    ],
    150,
    750,
  );

  it('keeps off obstacles at its own heights', () => {
    const scene = sceneOf(ROOM, { obstacles: [radiator] });
    expect(codes(scene, put(box('chest', 800, 400), 1500, 260))).toEqual(['overlap / radiator / 40']);
    expect(codes(scene, put(box('chest', 800, 400), 1500, 300))).toEqual([]);
    expect(codes(scene, put(box('shelf', 800, 200, { from: 750, to: 1000 }), 1500, 100))).toEqual([]);
    expect(codes(scene, put(box('plinth', 800, 200, { from: 0, to: 150 }), 1500, 100))).toEqual([]);
  });

  it('stands under the ceiling over all its floor', () => {
    const attic = sceneOf(ROOM, { ceiling: [{ name: 'slope', height: 1000, slopeX: 0, slopeY: 0.5 }] });
    expect(codes(attic, put(box('press', 600, 600, { to: 1600 }), 3000, 1600))).toEqual([]);
    expect(codes(attic, put(box('press', 600, 600, { to: 1600 }), 3000, 1400))).toEqual([
      'ceiling / slope / 50',
    ]);
    expect(
      codes(
        sceneOf(ROOM, { ceiling: flatCeiling(2400) }),
        put(box('press', 600, 600, { to: 2400 }), 3000, 1400),
      ),
    ).toEqual([]);
  });

  it('keeps off the swing of a door and off the doorway', () => {
    const scene = sceneOf(ROOM, { doors: [doorIn('front door', [3000, 0], [3900, 0])] });
    const chest = box('chest', 400, 400);
    // Its near corner is 559 mm from the hinge.
    expect(codes(scene, put(chest, 3300, 750))).toEqual(['door / front door / 341']);
    expect(codes(scene, put(chest, 3300, 1105))).toEqual([]);
    // Beside the swing of 900 mm but behind the opening, within the way of 600 mm.
    expect(codes(scene, put(chest, 3950, 400))).toEqual(['door / front door / 150']);
    expect(codes(scene, put(box('transom', 400, 400, { from: 2100, to: 2300 }), 3300, 400))).toEqual([]);
    const slides = sceneOf(ROOM, {
      doors: [{ name: 'glass door', hinge: [3900, 0], latch: [3000, 0], opens: 'slides', swing: null }],
    });
    expect(codes(slides, put(chest, 3300, 750))).toEqual(['door / glass door / 50']);
    expect(codes(slides, put(chest, 3300, 800))).toEqual([]);
  });
});

describe('where a piece belongs', () => {
  it('stands with its back at a wall', () => {
    const rack = box('rack', 1000, 300, { stand: 'wall', turns: 'back' });
    expect(codes(sceneOf(ROOM), put(rack, 3000, 150))).toEqual([]);
    expect(codes(sceneOf(ROOM), put(rack, 3000, 250))).toEqual([]);
    expect(codes(sceneOf(ROOM), put(rack, 3000, 260))).toEqual(['no-wall / 110']);
    expect(codes(sceneOf(ROOM), put(rack, 5850, 2500, 90))).toEqual([]);
    expect(codes(sceneOf(ROOM), put(rack, 5850, 2500, 270))).toEqual(['no-wall / 5700']);
    expect(codes(sceneOf(ROOM), put(rack, 500, 150, 90))).toEqual(['outside / wall 1 / 350', 'no-wall']);
  });

  it('needs the wall behind the whole of its back', () => {
    const rack = box('rack', 1000, 300, { stand: 'wall', turns: 'back' });
    expect(codes(sceneOf(BREAST), put(rack, 3000, 4450, 180))).toEqual([]);
    for (const x of [2999, 2999.9, 3000.1, 3001]) {
      expect(codes(sceneOf(BREAST), put(rack, x, 4450, 180))).toEqual(['no-wall']);
    }
    expect(
      codes(
        sceneOf(BREAST),
        put(box('rack', 1000.01, 300, { stand: 'wall', turns: 'back' }), 3000, 4450, 180),
      ),
    ).toEqual([]);
  });

  it('may have any side at the wall where its turn rule says so', () => {
    const chest = box('chest', 1000, 300, { stand: 'wall', turns: 'square' });
    for (const turn of [0, 180]) expect(codes(sceneOf(ROOM), put(chest, 3000, 150, turn))).toEqual([]);
    for (const turn of [90, 270]) expect(codes(sceneOf(ROOM), put(chest, 3000, 500, turn))).toEqual([]);
    expect(codes(sceneOf(ROOM), put(chest, 3000, 700, 45))).toEqual(['no-wall / 453']);
  });

  it('takes a corner with its back and one end', () => {
    const cabinet = box('cabinet', 800, 500, { stand: 'corner', turns: 'back' });
    expect(codes(sceneOf(ROOM), put(cabinet, 400, 250))).toEqual([]);
    expect(codes(sceneOf(ROOM), put(cabinet, 5600, 250))).toEqual([]);
    expect(codes(sceneOf(ROOM), put(cabinet, 5750, 4600, 90))).toEqual([]);
    expect(codes(sceneOf(ROOM), put(cabinet, 700, 250))).toEqual(['no-wall / 300']);
    expect(codes(sceneOf(ROOM), put(cabinet, 400, 700))).toEqual(['no-wall / 450']);
  });

  it('hangs on a wall', () => {
    expect(codes(sceneOf(ROOM), put(FURNISHINGS.darts, 3000, 25))).toEqual([]);
    expect(codes(sceneOf(ROOM), put(FURNISHINGS.darts, 3000, 1500))).toEqual(['no-wall / 1475']);
  });

  it('is turned as it may be', () => {
    const table = box('games table', 1400, 700, { turns: 'square' });
    for (const turn of [0, 90, 180, 270, 0.9, 359.1])
      expect(codes(sceneOf(ROOM), put(table, 3000, 2500, turn))).toEqual([]);
    for (const turn of [2, 45, 100])
      expect(codes(sceneOf(ROOM), put(table, 3000, 2500, turn))).toEqual(['turn']);
    const listed = box('games table', 1400, 700, { turns: [30, -60] });
    for (const turn of [30, 300, 299.5])
      expect(codes(sceneOf(ROOM), put(listed, 3000, 2500, turn))).toEqual([]);
    for (const turn of [0, 60, 210])
      expect(codes(sceneOf(ROOM), put(listed, 3000, 2500, turn))).toEqual(['turn']);
  });

  it('holds a lamp over the table against obstacles and the ceiling only', () => {
    const scene = sceneOf(ROOM, {
      ceiling: flatCeiling(2000),
      obstacles: [
        obstacleOf(
          'beam',
          [
            [0, 2400],
            [6000, 2400],
            [6000, 2600],
            [0, 2600],
          ],
          1900,
        ),
      ],
      doors: [doorIn('front door', [3000, 0], [3900, 0])],
    });
    const { from, to } = FURNISHINGS.lamp;
    expect(codes(scene, put(FURNISHINGS.lamp, 3400, 100, 30))).toEqual([`ceiling / ceiling / ${to - 2000}`]);
    expect(from).toBeLessThan(1900);
    expect(codes(scene, put(FURNISHINGS.lamp, 3000, 2500))).toEqual([
      'overlap / beam / 300',
      `ceiling / ceiling / ${to - 2000}`,
    ]);
  });
});

describe('use zones', () => {
  const throwing = box('board', 450, 50, {
    stand: 'hung',
    turns: 'back',
    from: 1500,
    to: 1950,
    zones: [zone({ name: 'lane', front: 2970, left: 100, right: 100, offDoors: true })],
  });

  it('lie within the walls, off obstacles and under the ceiling', () => {
    const low = sceneOf(
      ROOM.map(([x, y]) => [x, y * 0.6] as const),
      {
        ceiling: flatCeiling(1990),
        obstacles: [
          obstacleOf(
            'step',
            [
              [2900, 1000],
              [3500, 1000],
              [3500, 1300],
              [2900, 1300],
            ],
            0,
            200,
          ),
          obstacleOf(
            'bulkhead',
            [
              [2900, 1000],
              [3500, 1000],
              [3500, 1300],
              [2900, 1300],
            ],
            2000,
          ),
        ],
      },
    );
    expect(codes(low, put(throwing, 3000, 25))).toEqual([
      'zone-outside / wall 3 / lane / 20',
      'zone-overlap / step / lane / 425',
      'zone-ceiling / ceiling / lane / 10',
    ]);
  });

  it('keep off doors where they have to', () => {
    const doors = [doorIn('front door', [3000, 0], [3900, 0])];
    const scene = sceneOf(ROOM, { doors });
    const far = put(throwing, 3300, 4975, 180);
    expect(codes(scene, far)).toEqual([]);
    const near = put(throwing, 2700, 25);
    expect(codes(scene, near)).toEqual(['zone-door / front door / lane / 25']);
    const careless = { ...throwing, zones: [zone({ name: 'lane', front: 2970, left: 100, right: 100 })] };
    expect(codes(scene, put(careless, 2700, 25))).toEqual([]);
  });

  it('keep off other bodies, but not off their own', () => {
    const board = put(throwing, 3000, 25);
    const stool = put(box('stool', 400, 400), 3000, 1500);
    expect(fitsBeside(board, stool)).toBe(false);
    expect(besideProblems(board, stool)).toEqual([
      { code: 'zone-overlap', with: 'stool', zone: 'lane', amount: 525 },
    ]);
    expect(besideProblems(stool, board)).toEqual([
      { code: 'overlap', with: 'board: lane', zone: null, amount: 525 },
    ]);
    const hanging = put(box('shelf', 400, 400, { from: 2000, to: 2200 }), 3000, 1500);
    expect(fitsBeside(board, hanging)).toBe(true);
  });

  it('lie on one another only where both may be shared', () => {
    const sharing = box('a', 500, 500, { zones: [zone({ front: 1000 })] });
    const alone = box('b', 500, 500, { zones: [zone({ front: 1000, withZones: false })] });
    const facing = (spec: typeof alone, name: string): PlacedPiece => put({ ...spec, name }, 2000, 3600, 180);
    expect(fitsBeside(put(sharing, 2000, 1500), facing(sharing, 'c'))).toBe(true);
    for (const [here, there] of [
      [sharing, alone],
      [alone, sharing],
      [alone, alone],
    ]) {
      expect(besideProblems(put({ ...here, name: 'here' }, 2000, 1500), facing(there, 'there'))).toEqual([
        { code: 'zone-shared', with: 'there', zone: 'use', amount: 400 },
      ]);
    }
    const high = { ...alone, zones: [zone({ front: 1000, from: 2000, to: 2400, withZones: false })] };
    expect(fitsBeside(put(alone, 2000, 1500), facing(high, 'high'))).toBe(true);
  });
});

describe('pieces beside one another and the table', () => {
  it('keep off one another where their heights overlap', () => {
    const chest = put(box('chest', 1000, 500), 2000, 2000);
    const touching = put(box('other chest', 1000, 500), 3000, 2000);
    const shelf = put(box('shelf', 1000, 500, { from: 900, to: 1200 }), 2500, 2000);
    expect(fitsBeside(chest, touching)).toBe(true);
    expect(fitsBeside(chest, shelf)).toBe(true);
    expect(besideProblems(chest, put(box('third', 1000, 500), 2900, 2100, 0))).toEqual([
      { code: 'overlap', with: 'third', zone: null, amount: 100 },
    ]);
  });

  it('keep off the table below its rails, zones too', () => {
    const table = TABLES['pool-7ft-bar'];
    const pose = { x: 3000, y: 2500, angle: 0 };
    const rail = table.bedHeight + table.railHeight;
    const edge = 2500 - table.outer.width / 2;
    const at = (y: number, more: Parameters<typeof box>[3] = {}): PlacedPiece =>
      put(box('chest', 1000, 500, more), 3000, y);
    expect(fitsTable(at(edge - 250), table, pose)).toBe(true);
    expect(tableProblems(at(edge - 200), table, pose)).toEqual([
      { code: 'table', with: 'the table', zone: null, amount: expect.closeTo(50, 6) },
    ]);
    expect(fitsTable(at(edge - 200, { from: rail, to: rail + 100 }), table, pose)).toBe(true);
    expect(tableProblems(at(edge - 850, { zones: [zone({ front: 700 })] }), table, pose)).toEqual([
      { code: 'zone-table', with: 'the table', zone: 'use', amount: expect.closeTo(100, 6) },
    ]);
    expect(fitsTable(at(edge - 850, { zones: [zone({ front: 700, from: rail })] }), table, pose)).toBe(true);
    expect(fitsTable(put(FURNISHINGS.lamp, 3000, 2500), table, pose)).toBe(true);
  });
});
