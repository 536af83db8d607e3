import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrangementBounds } from '../../src/arrangement/arrangement-bounds.js';
import type { CheckedPiece } from '../../src/arrangement/checked-arrangement.js';
import { fitsBeside, fitsRoom, fitsTable, roomRules } from '../../src/arrangement/layout-rules.js';
import { type PlacedPiece, placePiece } from '../../src/arrangement/piece-place.js';
import type { FurnishingSpec } from '../../src/equipment/furnishing-types.js';
import { FURNISHINGS } from '../../src/equipment/furnishings.js';
import { TABLES } from '../../src/equipment/tables.js';
import { circleRing, rectangleRing } from '../../src/geometry/ring.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import type { Scene } from '../../src/room/scene.js';
import { skylineRings } from '../helpers/rings.js';
import { box, doorIn, L_SHAPE, obstacleOf, put, sceneOf, shaped } from './layout-cases.js';

const ROOM: Ring = [
  [0, 0],
  [6000, 0],
  [6000, 5000],
  [0, 5000],
];

/** To be placed. */
function open(spec: FurnishingSpec): CheckedPiece {
  return { ...spec, pose: null };
}

function given({ spec, pose }: PlacedPiece): CheckedPiece {
  return { ...spec, pose };
}

const AT_WALL = { stand: 'wall', turns: 'back' } as const;

describe('the floor', () => {
  it('is that of the table and of what stands on the floor, against the room less what stands there', () => {
    const scene = sceneOf(ROOM, {
      obstacles: [
        obstacleOf('pillar', rectangleRing([3000, 5000], 1000, 1000)),
        obstacleOf('second pillar', rectangleRing([3200, 4900], 1000, 200)),
        obstacleOf('beam', rectangleRing([3000, 2500], 6000, 300), 2200),
      ],
    });
    const pieces = [
      open(FURNISHINGS.darts),
      open(FURNISHINGS.lamp),
      open(box('chest', 1000, 500)),
      open(shaped('seat', L_SHAPE)),
    ];
    const table = TABLES['pool-7ft-bar'];
    const { needed, available } = arrangementBounds(scene, table, pieces).floor;
    const own = (table.outer.length * table.outer.width) / 1e6;
    expect(needed).toBeCloseTo(own + 0.5 + 2.56, 2);
    // 1000 x 500 of the pillar is in the room, and of the second 200 x 200 besides.
    expect(available).toBeCloseTo(30 - 0.5 - 0.04, 9);
    expect(arrangementBounds(scene, null, pieces).floor.needed).toBeCloseTo(0.5 + 2.56, 2);
  });

  it('proves that six chests of a square metre do not go into less than six', () => {
    const chests = [1, 2, 3, 4, 5, 6].map((i) => open(box(`chest ${i}`, 1000, 1000)));
    const into = (width: number) =>
      arrangementBounds(
        sceneOf([
          [0, 0],
          [3000, 0],
          [3000, width],
          [0, width],
        ]),
        null,
        chests,
      ).floor;
    const tight = into(2000);
    expect(tight.needed).toBeLessThanOrEqual(tight.available);
    const less = into(1999);
    expect(less.needed).toBeGreaterThan(less.available);
  });
});

describe('the wall', () => {
  const doors = [doorIn('door', [1000, 0], [1900, 0]), doorIn('other door', [1500, 0], [2500, 0])];

  it('is what pieces with a common height touch, against the walls clear of doorways', () => {
    const pieces = [
      open(box('press', 1200, 600, { ...AT_WALL, to: 2000 })),
      open(box('rack', 900, 100, { ...AT_WALL, stand: 'hung', from: 1000, to: 1800 })),
      open(box('chest', 1500, 500, { ...AT_WALL, to: 900 })),
      open(box('free', 3000, 500)),
    ];
    const { needed, available } = arrangementBounds(sceneOf(ROOM, { doors }), null, pieces).wall;
    // Press and chest; the rack hangs over the chest.
    expect(needed).toBeGreaterThan(2699);
    expect(needed).toBeLessThanOrEqual(2700);
    expect(available).toBeCloseTo(22_000 - 1500, 6);
  });

  it('is the least side that the turns allow, and back and end in a corner', () => {
    const needs = (more: Partial<FurnishingSpec>): number =>
      Math.round(arrangementBounds(sceneOf(ROOM), null, [open(box('chest', 1500, 500, more))]).wall.needed);
    expect(needs({ stand: 'wall', turns: 'back' })).toBe(1500);
    expect(needs({ stand: 'wall', turns: 'square' })).toBe(500);
    expect(needs({ stand: 'wall', turns: [0, 90] })).toBe(500);
    expect(needs({ stand: 'corner', turns: 'back' })).toBe(2000);
    expect(needs({ stand: 'corner', turns: 'square' })).toBe(2000);
    expect(needs({ stand: 'hung', turns: 'back', from: 2100, to: 2300 })).toBe(0);
  });

  it('counts of a footprint only what lies at the wall', () => {
    const needs = (spec: FurnishingSpec): number =>
      arrangementBounds(sceneOf(ROOM), null, [open(spec)]).wall.needed;
    expect(needs(shaped('seat', L_SHAPE, AT_WALL))).toBeCloseTo(2000, 0);
    const turned = L_SHAPE.map(([x, y]): Point => [-x, -y]);
    expect(needs(shaped('seat', turned, AT_WALL))).toBeCloseTo(800, 0);
    expect(needs({ ...box('stool', 400, 400, AT_WALL), ring: circleRing([0, 0], 400) })).toBeLessThan(80);
  });

  it('counts of a given piece what it touches where it stands', () => {
    const press = box('press', 1200, 600, AT_WALL);
    const needs = (piece: PlacedPiece): number =>
      arrangementBounds(sceneOf(ROOM), null, [given(piece)]).wall.needed;
    expect(needs(put(press, 3000, 300))).toBeCloseTo(1200, 0);
    expect(needs(put(press, 600, 300))).toBeCloseTo(1800, 0);
    expect(needs(put(press, 3000, 350))).toBe(0);
  });

  it('proves that four racks of 1 m do not go on 3.9 m of wall', () => {
    const racks = [1, 2, 3, 4].map((i) => open(box(`rack ${i}`, 1000, 100, AT_WALL)));
    const wide = sceneOf([
      [0, 0],
      [1100, 0],
      [1100, 900],
      [0, 900],
    ]);
    const fine = arrangementBounds(wide, null, racks).wall;
    expect(fine.needed).toBeLessThanOrEqual(fine.available);
    const small = sceneOf([
      [0, 0],
      [1050, 0],
      [1050, 900],
      [0, 900],
    ]);
    const { needed, available } = arrangementBounds(small, null, racks).wall;
    expect(available).toBe(3900);
    expect(needed).toBeGreaterThan(available);
  });
});

/** Whether the rules allow a whole layout. */
function allowed(scene: Scene, placed: readonly PlacedPiece[]): boolean {
  const rules = roomRules(scene, 600);
  return (
    placed.every((piece) => fitsRoom(rules, piece)) &&
    placed.every((a, i) => placed.slice(0, i).every((b) => fitsBeside(a, b)))
  );
}

function holds(scene: Scene, placed: readonly PlacedPiece[], poseGiven: boolean): void {
  const pieces = placed.map((piece) => (poseGiven ? given(piece) : open(piece.spec)));
  const { floor, wall } = arrangementBounds(scene, null, pieces);
  expect(floor.needed).toBeLessThanOrEqual(floor.available);
  expect(wall.needed).toBeLessThanOrEqual(wall.available);
}

describe('where everything goes in, nothing is proved against it', () => {
  it('in a floor that is tiled, even where tiles overlap by the slack', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 120, max: 900 }),
        fc.integer({ min: 120, max: 900 }),
        fc.double({ min: 0, max: 0.009, noNaN: true }),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        (columns, rows, length, width, slack, turn) => {
          // Tiles a little larger than their places.
          const scene = sceneOf(rectangleRing([0, 0], columns * length, rows * width, turn));
          const placed: PlacedPiece[] = [];
          for (let i = 0; i < columns; i++) {
            for (let k = 0; k < rows; k++) {
              const [u, v] = [(i + 0.5 - columns / 2) * length, (k + 0.5 - rows / 2) * width];
              const x = u * Math.cos(turn) - v * Math.sin(turn);
              const y = u * Math.sin(turn) + v * Math.cos(turn);
              placed.push(
                placePiece(box(`tile ${i} ${k}`, length + slack, width + slack), { x, y, angle: turn }),
              );
            }
          }
          expect(allowed(scene, placed)).toBe(true);
          holds(scene, placed, false);
          holds(scene, placed, true);
        },
      ),
      { seed: 531, numRuns: 100 },
    );
  });

  it('along walls that are lined from end to end, even where neighbours overlap by the slack', () => {
    fc.assert(
      fc.property(
        skylineRings(3).filter((ring) => ring.every(([, y]) => y === 0 || y > 1500)),
        fc.integer({ min: 1, max: 4 }),
        fc.double({ min: 0, max: 0.004, noNaN: true }),
        fc.boolean(),
        (outline, each, slack, slanted) => {
          const scene = sceneOf(outline);
          const placed: PlacedPiece[] = [];
          outline.forEach((a, i) => {
            const b = outline[(i + 1) % outline.length];
            const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
            const angle = Math.atan2(b[1] - a[1], b[0] - a[0]);
            const length = long / each;
            for (let k = 0; k < each; k++) {
              // 60 mm deep, or a wedge on its long side: at corners they leave one another out.
              const size = length + slack;
              const ring: Ring = slanted
                ? [
                    [-size / 2, -30],
                    [size / 2, -30],
                    [0, 30],
                  ]
                : rectangleRing([0, 0], size, 60);
              const spec = { ...box(`rack ${i} ${k}`, size, 60, AT_WALL), ring };
              const along = (k + 0.5) * length;
              const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
              const piece = placePiece(spec, {
                x: a[0] + along * cos - (30 - slack) * sin,
                y: a[1] + along * sin + (30 - slack) * cos,
                angle,
              });
              if (allowed(scene, [...placed, piece])) placed.push(piece);
            }
          });
          fc.pre(placed.length >= 4);
          holds(scene, placed, false);
          holds(scene, placed, true);
        },
      ),
      { seed: 532, numRuns: 100 },
    );
  });

  it('in layouts of the catalogue that were tried at random', () => {
    const kinds = Object.values(FURNISHINGS).filter(({ stand }) => stand !== 'over-table');
    const table = TABLES['pool-7ft-bar'];
    const scene = sceneOf(ROOM, { doors: [doorIn('door', [1000, 0], [1900, 0])] });
    const frame = { x: 3000, y: 2500, angle: 0 };
    const rules = roomRules(scene, 600);
    const places = fc.tuple(
      fc.nat(kinds.length - 1),
      fc.integer({ min: 0, max: 3 }),
      fc.integer({ min: 0, max: 1000 }).map((n) => n / 1000),
    );
    let most = 0;
    fc.assert(
      fc.property(fc.array(places, { minLength: 20, maxLength: 60 }), (list) => {
        const placed: PlacedPiece[] = [];
        list.forEach(([kind, wall, share], i) => {
          if (placed.length === 12) return;
          const spec = { ...kinds[kind], name: `piece ${i}` };
          const [a, b] = [ROOM[wall], ROOM[(wall + 1) % 4]];
          const angle = (wall * Math.PI) / 2;
          const out = spec.stand === 'free' ? spec.width : spec.width / 2;
          const piece = placePiece(spec, {
            x: a[0] + share * (b[0] - a[0]) - out * Math.round(Math.sin(angle)),
            y: a[1] + share * (b[1] - a[1]) + out * Math.round(Math.cos(angle)),
            angle,
          });
          const fits =
            fitsRoom(rules, piece) &&
            fitsTable(piece, table, frame) &&
            placed.every((p) => fitsBeside(p, piece));
          if (fits) placed.push(piece);
        });
        most = Math.max(most, placed.length);
        const { floor, wall } = arrangementBounds(
          scene,
          table,
          placed.map((p) => open(p.spec)),
        );
        expect(floor.needed).toBeLessThanOrEqual(floor.available);
        expect(wall.needed).toBeLessThanOrEqual(wall.available);
      }),
      { seed: 533, numRuns: 60 },
    );
    expect(most).toBeGreaterThan(4);
  });
});
