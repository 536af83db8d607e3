import { describe, expect, it } from 'vitest';
import { furnishedScene } from '../../src/arrangement/furnished-scene.js';
import { fitsTable } from '../../src/arrangement/layout-rules.js';
import { FURNISHINGS } from '../../src/equipment/furnishings.js';
import { TABLES } from '../../src/equipment/tables.js';
import { signedArea } from '../../src/geometry/ring.js';
import { clearanceAt } from '../../src/placement/clearance-at.js';
import { tableProblem } from '../../src/placement/problem-for.js';
import { box, L_SHAPE, obstacleOf, put, sceneOf, shaped, zone } from './layout-cases.js';

const ROOM = sceneOf(
  [
    [0, 0],
    [7000, 0],
    [7000, 5000],
    [0, 5000],
  ],
  {
    obstacles: [
      obstacleOf('pillar', [
        [0, 0],
        [300, 0],
        [300, 300],
        [0, 300],
      ]),
    ],
  },
);

describe('a room with pieces in it', () => {
  it("has its own obstacles first, then the pieces' bodies with their heights", () => {
    const seat = put(shaped('corner seat', L_SHAPE, { to: 700 }), 1000, 4000, 90);
    const shelf = put(box('shelf', 800, 300, { from: 1400, to: 1700 }), 3000, 150);
    const { obstacles, reserved } = furnishedScene(ROOM, [seat, shelf]);
    expect(obstacles.map(({ name, from, to, movable }) => [name, from, to, movable])).toEqual([
      ['pillar', 0, Infinity, false],
      ['corner seat', 0, 700, true],
      ['shelf', 1400, 1700, true],
    ]);
    expect(obstacles[1].ring).toBe(seat.ring);
    const areas = obstacles[1].parts.map((part) => signedArea(part));
    expect(areas.reduce((sum, area) => sum + area, 0)).toBeCloseTo(signedArea(L_SHAPE), 3);
    expect(reserved).toEqual([]);
  });

  it('keeps the table off zones that cues may cross, and cues off the others', () => {
    const zones = [
      zone({ name: 'seat', front: 500 }),
      zone({ name: 'players', front: 900, withCueing: false, to: 1800 }),
      zone({ name: 'high', front: 900, from: 832 }),
    ];
    const piece = put(box('machine', 700, 700, { zones }), 3500, 350);
    const { obstacles, reserved } = furnishedScene(ROOM, [piece]);
    expect(obstacles.slice(2)).toEqual([
      {
        name: 'machine: players',
        ring: piece.zones[1].ring,
        parts: [piece.zones[1].ring],
        from: 0,
        to: 1800,
        movable: true,
      },
    ]);
    // The default rails are 832 mm high.
    expect(reserved).toEqual([{ name: 'machine: seat', ring: piece.zones[0].ring }]);
    const higher = furnishedScene(ROOM, [piece], { bedHeight: 860, railHeight: 40 });
    expect(higher.reserved.map(({ name }) => name)).toEqual(['machine: seat', 'machine: high']);
  });

  it('changes nothing else, and adds to what was reserved', () => {
    const before = { ...ROOM, reserved: [{ name: 'way', ring: L_SHAPE }] };
    const { obstacles, reserved, ...rest } = furnishedScene(before, [put(FURNISHINGS.sofa, 3500, 500)]);
    const { obstacles: _, reserved: __, ...was } = before;
    expect(rest).toEqual(was);
    expect(obstacles[0]).toBe(ROOM.obstacles[0]);
    expect(reserved[0].name).toBe('way');
    expect(furnishedScene(ROOM, [])).toEqual(ROOM);
  });

  it('lets the table stand where the rules of a layout do', () => {
    const table = TABLES['pool-7ft-bar'];
    let stands = 0;
    const pieces = Object.values(FURNISHINGS).filter(({ stand }) => stand !== 'over-table');
    pieces.forEach((spec, k) => {
      for (let i = 0; i < 30; i++) {
        const piece = put(spec, 1000 + ((i * 937 + k * 311) % 5000), 800 + ((i * 613) % 3400), 37 * i);
        const pose = { x: 3500, y: 2500, angle: 0.3 * k };
        const alone = sceneOf(ROOM.outline);
        const free = clearanceAt(tableProblem(furnishedScene(alone, [piece], table), table), pose).stands;
        expect(free).toBe(fitsTable(piece, table, pose));
        if (free) stands++;
      }
    });
    expect(stands).toBeGreaterThan(20);
    expect(stands).toBeLessThan(pieces.length * 30 - 20);
  });
});
