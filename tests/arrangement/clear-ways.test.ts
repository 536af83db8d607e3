import { describe, expect, it } from 'vitest';
import type { ClearWay } from '../../src/arrangement/arrangement-report.js';
import { clearWays, type StandingTable } from '../../src/arrangement/clear-ways.js';
import { createWayCheck, quickWays } from '../../src/arrangement/clear-ways-quick.js';
import { tableRing } from '../../src/arrangement/layout-rules.js';
import { type PlacedPiece, placePiece } from '../../src/arrangement/piece-place.js';
import type { FurnishingSpec, UseZoneSpec } from '../../src/equipment/furnishing-types.js';
import { FURNISHINGS } from '../../src/equipment/furnishings.js';
import { TABLES } from '../../src/equipment/tables.js';
import { boundingBox, rectangleRing } from '../../src/geometry/ring.js';
import type { Scene } from '../../src/room/scene.js';
import { sampledClearance } from '../geometry/free-way-oracle.js';
import { openRoomInput, openRooms } from '../helpers/open-rooms.js';
import { randomFrom } from '../helpers/rings.js';
import { sceneOf } from '../room/read.js';

const WIDTH = 600;

interface Things {
  readonly doors?: readonly unknown[];
  readonly obstacles?: readonly unknown[];
  readonly ceiling?: unknown;
}

/** A room of 6 m by 4 m. */
function room({ doors = [WEST], obstacles = [], ceiling = 2500 }: Things = {}): Scene {
  const outline = [
    [0, 0],
    [6000, 0],
    [6000, 4000],
    [0, 4000],
  ];
  return sceneOf({ outline, ceiling, obstacles, doors });
}

/** In the corner at the origin, hung in the west wall. */
const WEST = { name: 'west door', hinge: [0, 900], latch: [0, 100], opens: 'in' };
const EAST = { name: 'east door', hinge: [6000, 3000], latch: [6000, 3800], opens: 'in' };

function zone(sides: Partial<UseZoneSpec>): UseZoneSpec {
  return {
    name: 'user',
    front: 0,
    back: 0,
    left: 0,
    right: 0,
    from: 0,
    to: 2000,
    withCueing: true,
    withZones: true,
    offDoors: false,
    ...sides,
  };
}

function piece(
  name: string,
  [x, y, turn = 0]: readonly number[],
  [length, width]: readonly [number, number],
  more: Partial<FurnishingSpec> = {},
): PlacedPiece {
  const spec: FurnishingSpec = {
    kind: null,
    name,
    ring: rectangleRing([0, 0], length, width),
    length,
    width,
    from: 0,
    to: 1000,
    mass: null,
    stand: 'free',
    turns: 'any',
    zones: [],
    source: 'made up for this test',
    ...more,
  };
  return placePiece(spec, { x, y, angle: (turn * Math.PI) / 180 });
}

function ways(
  scene: Scene,
  placed: readonly PlacedPiece[],
  table: StandingTable | null = null,
  width = WIDTH,
): Map<string, ClearWay> {
  return new Map(
    clearWays(scene, table, placed, width).map((way) => [`${way.from} > ${way.to}`, way] as const),
  );
}

function wayTo(scene: Scene, placed: readonly PlacedPiece[], width = WIDTH): ClearWay {
  const way = ways(scene, placed, null, width).get(`west door > ${placed[0].spec.name}`);
  if (way === undefined) throw new Error('No such way was looked for.');
  return way;
}

const TABLE: StandingTable = { table: TABLES['pool-7ft-bar'], pose: { x: 3300, y: 2000, angle: 0 } };

describe('clear ways', () => {
  it('lead from each door to the table, to the other doors and to each piece that needs one', () => {
    const placed = [
      piece('cupboard', [3000, 3750], [1000, 500]),
      piece('board', [5000, 3975, 180], [500, 50], {
        stand: 'hung',
        from: 1500,
        zones: [zone({ front: 1000 })],
      }),
      piece('scores', [1000, 3980], [500, 40], { stand: 'hung', from: 1400 }),
      piece('lamp', [3300, 2000], [1500, 300], {
        stand: 'over-table',
        from: 1600,
        zones: [zone({ front: 1 })],
      }),
    ];
    const list = (scene: Scene, table: StandingTable | null): string[] => [
      ...ways(scene, placed, table).keys(),
    ];
    expect(list(room({ doors: [WEST, EAST] }), TABLE)).toEqual([
      'west door > the table',
      'west door > east door',
      'west door > cupboard',
      'west door > board',
      'east door > the table',
      'east door > cupboard',
      'east door > board',
    ]);
    expect(list(room({ doors: [] }), TABLE)).toEqual(['the table > cupboard', 'the table > board']);
    expect(list(room({ doors: [] }), null)).toEqual([]);
    for (const way of ways(room({ doors: [WEST, EAST] }), placed, TABLE).values()) {
      expect(way.found, `${way.from} > ${way.to}: ${way.widest} ${way.between.join(', ')}`).toBe(true);
      expect(way.width).toBe(WIDTH);
      expect(way.path.length).toBeGreaterThanOrEqual(1);
    }
  });

  it('are as wide as the gap that they pass, between things by name', () => {
    const sofa = piece('sofa', [5500, 2000], [800, 800]);
    const screen = piece('screen', [3000, 1600], [100, 3200]);
    const { found, widest, between } = wayTo(room(), [sofa, screen], 700);
    expect(found).toBe(true);
    expect(widest).toBeCloseTo(800, 6);
    expect(between).toEqual([]);
    const narrow = wayTo(room(), [sofa, piece('screen', [3000, 1800], [100, 3600])]);
    expect([narrow.found, narrow.certain]).toEqual([false, true]);
    expect(narrow.widest).toBeCloseTo(400, 6);
    expect(narrow.between).toEqual(['wall 3', 'screen']);
    expect(narrow.path).toEqual([]);
    expect(wayTo(room(), [sofa, piece('screen', [3000, 1700], [100, 3400])]).found).toBe(true);
  });

  it('pass the table, which is in the way like everything else', () => {
    const east = room({ doors: [WEST, EAST] });
    const there = ways(east, [], TABLE).get('west door > east door');
    expect(there?.found).toBe(true);
    // Up to the north wall, and closer than a way to the south one.
    const { length, width } = TABLES['pool-7ft-bar'].outer;
    const across = { table: TABLE.table, pose: { x: 3000, y: 4000 - length / 2, angle: Math.PI / 2 } };
    const left = 4000 - length;
    expect(left).toBeGreaterThan(WIDTH);
    const through = ways(east, [], across).get('west door > east door');
    expect(through?.found).toBe(true);
    const shut = ways(east, [piece('box', [3000, (left - 550) / 2], [500, left - 550])], across);
    expect(shut.get('west door > east door')?.certain).toBe(true);
    expect(shut.get('west door > east door')?.found).toBe(false);
    expect(shut.get('west door > the table')?.found).toBe(true);
    expect(shut.get('east door > the table')?.found).toBe(true);
    expect(width).toBeLessThan(3000);
  });

  it('go under what hangs higher than a head, and not under a low ceiling', () => {
    const sofa = piece('sofa', [5500, 2000], [800, 800]);
    const beam = (from: number): Things => ({
      obstacles: [
        {
          name: 'beam',
          footprint: [
            [3000, 0],
            [3200, 0],
            [3200, 4000],
            [3000, 4000],
          ],
          from,
        },
      ],
    });
    expect(wayTo(room(beam(2000)), [sofa]).found).toBe(true);
    expect(wayTo(room(beam(1900)), [sofa]).found).toBe(true);
    expect(wayTo(room(beam(1850)), [sofa]).found).toBe(false);
    const high = piece('shelf', [3000, 2000], [200, 4000], { stand: 'hung', from: 1900 });
    const low = piece('shelf', [3000, 2000], [200, 4000], { stand: 'hung', from: 1700 });
    expect(wayTo(room(), [sofa, high]).found).toBe(true);
    expect(wayTo(room(), [sofa, low]).found).toBe(false);
    // Falls from 2.5 m in the west to 1.3 m in the east: 1.9 m in the middle.
    const slope = [
      [0, 0, 2500],
      [6000, 0, 1300],
      [0, 4000, 2500],
    ];
    const attic = room({ ceiling: [slope] });
    expect(wayTo(attic, [sofa]).found).toBe(false);
    expect(wayTo(attic, [piece('sofa', [2600, 2000], [800, 800])]).found).toBe(true);
  });

  it('cross door swings and zones', () => {
    const sofa = piece('sofa', [5500, 2000], [800, 800], {
      zones: [zone({ front: 1500, back: 900, left: 0, right: 3000 })],
    });
    const rack = piece('rack', [3000, 3900], [800, 100], { zones: [zone({ front: 3800 })] });
    expect(wayTo(room({ doors: [WEST, EAST] }), [sofa, rack]).found).toBe(true);
  });

  it('start at a door in a corner, and at one that is narrower than they are', () => {
    const sofa = piece('sofa', [5000, 2000], [800, 800]);
    const door = (from: number, to: number): Scene =>
      room({ doors: [{ ...WEST, hinge: [0, from], latch: [0, to] }] });
    expect(wayTo(door(0, 600), [sofa]).found).toBe(true);
    expect(wayTo(door(0, 700), [sofa]).widest).toBeCloseTo(700, 6);
    const narrow = wayTo(door(0, 550), [sofa]);
    expect(narrow.found).toBe(true);
    expect(narrow.widest).toBeGreaterThanOrEqual(600);
    // Something in the doorway that leaves 500 of 800.
    const box = piece('box', [400, 700], [800, 400]);
    const beside = wayTo(door(0, 800), [sofa, box]);
    expect([beside.found, beside.certain]).toEqual([false, true]);
    expect(beside.widest).toBeGreaterThan(499.4);
    expect(beside.widest).toBeLessThanOrEqual(500);
    expect(beside.between).toEqual(expect.arrayContaining(['box']));
  });

  it('start at a door that was measured a little off its wall', () => {
    const sofa = piece('sofa', [5000, 2000], [800, 800]);
    for (const off of [-30, 30]) {
      const scene = room({ doors: [{ ...WEST, hinge: [off, 900], latch: [off, 100] }] });
      expect(wayTo(scene, [sofa]).found).toBe(true);
    }
  });

  it('do not start from a door that is blocked', () => {
    const sofa = piece('sofa', [5000, 2000], [800, 800]);
    const { found, certain, widest } = wayTo(room(), [sofa, piece('box', [300, 500], [500, 1000])]);
    expect([found, certain, widest]).toEqual([false, true, null]);
  });

  it('end on a zone, or at the body of a piece without one', () => {
    // Its back half a metre from the east wall, shut off by a box on either side; only its front is open.
    const boxes = [piece('box 1', [5500, 1350], [1000, 300]), piece('box 2', [5500, 2650], [1000, 300])];
    const bar = (zones: readonly UseZoneSpec[]): PlacedPiece =>
      piece('bar', [5300, 2000, 90], [1000, 400], { zones });
    expect(wayTo(room(), [bar([]), ...boxes]).found).toBe(true);
    // Turned by 90 degrees its front looks west.
    expect(wayTo(room(), [bar([zone({ front: 700 })]), ...boxes]).found).toBe(true);
    const behind = wayTo(room(), [bar([zone({ back: 500 })]), ...boxes]);
    expect([behind.found, behind.certain]).toEqual([false, true]);
    expect(wayTo(room(), [bar([zone({ back: 500 }), zone({ front: 700 })]), ...boxes]).found).toBe(true);
    // The zone alone can be reached: the body stands on a plinth of other things.
    const onBoxes = piece('bell', [3000, 2000], [200, 200], { zones: [zone({ front: 1500 })] });
    const plinth = piece('plinth', [3000, 1800], [1500, 1600]);
    expect(wayTo(room(), [onBoxes, plinth]).found).toBe(true);
    expect(wayTo(room(), [piece('bell', [3000, 2000], [200, 200]), plinth]).found).toBe(false);
  });

  it('end before a zone that is shallower than half a way, on its side of the piece', () => {
    const rack = (turn: number): PlacedPiece =>
      piece('rack', [3000, 2000, turn], [800, 100], { zones: [zone({ front: 200 })] });
    for (const turn of [0, 90, 200]) expect(wayTo(room(), [rack(turn)]).found).toBe(true);
    // Its front at 150 mm from a wall of boxes: nobody gets before it, though its back is open.
    const boxes = piece('boxes', [3000, 2400], [2000, 400]);
    expect(wayTo(room(), [rack(0), boxes]).found).toBe(false);
    expect(wayTo(room(), [rack(180), boxes]).found).toBe(true);
  });

  it('do not lead to a piece that is wholly walled in', () => {
    const island = piece('island', [3000, 2000], [500, 500]);
    const walls = [
      piece('north', [3000, 3000], [2000, 100]),
      piece('south', [3000, 1000], [2000, 100]),
      piece('west', [2000, 2000], [100, 2000]),
    ];
    expect(wayTo(room(), [island, ...walls]).found).toBe(true);
    const shut = wayTo(room(), [island, ...walls, piece('east', [4000, 1700], [100, 2000])]);
    expect([shut.found, shut.certain, shut.path]).toEqual([false, true, []]);
    expect(shut.widest).toBeCloseTo(250, 6);
    expect(shut.between).toEqual(['north', 'east']);
  });
});

describe('the quick check', () => {
  it('says what clear ways say, in real rooms with pieces anywhere', () => {
    const random = randomFrom(4711);
    const kinds = Object.values(FURNISHINGS);
    const rooms = openRooms.filter(
      ({ area_m2, doors }) => area_m2 > 20 && area_m2 < 80 && doors !== undefined,
    );
    let there = 0;
    let missing = 0;
    for (let k = 0; k < 120; k++) {
      const scene = sceneOf(openRoomInput(rooms[Math.floor(random() * rooms.length)]));
      const box = boundingBox(scene.outline);
      const pose = (): { x: number; y: number; angle: number } => ({
        x: box.minX + random() * (box.maxX - box.minX),
        y: box.minY + random() * (box.maxY - box.minY),
        angle: random() < 0.5 ? (Math.PI / 2) * Math.floor(random() * 4) : random() * 6,
      });
      const placed = Array.from({ length: 1 + Math.floor(random() * 6) }, (_, i) => {
        const spec = kinds[Math.floor(random() * kinds.length)];
        return placePiece({ ...spec, name: `${spec.name} ${i}` }, pose());
      });
      const table = random() < 0.7 ? { table: TABLES['pool-7ft-bar'], pose: pose() } : null;
      const frame = table === null ? null : tableRing(table.table, table.pose);
      const check = createWayCheck(scene, WIDTH);
      const quick = quickWays(check, frame, placed);
      expect(quickWays(check, frame, placed)).toEqual(quick);
      const all = clearWays(scene, table, placed, WIDTH);
      const to = (name: string): boolean =>
        all.filter((way) => way.to === name || way.from === name).every((way) => way.found);
      for (const way of all) {
        expect(way.certain, `round ${k}: ${way.from} > ${way.to}`).toBe(true);
        if (way.found) there++;
        else missing++;
        const known = way.widest;
        if (way.found) expect(known).toBeGreaterThanOrEqual(WIDTH);
        else if (known !== null) expect(known).toBeLessThan(WIDTH);
      }
      if (scene.doors.length === 0 && table === null) continue;
      expect(quick.pieces, `round ${k}`).toEqual(placed.map(({ spec }) => to(spec.name)));
      if (scene.doors.length > 0 && table !== null) {
        const toTable = all.filter((way) => way.to === 'the table').every((way) => way.found);
        expect(quick.table).toBe(toTable);
      }
      const doors = new Set(scene.doors.map(({ name }) => name));
      const between = all.filter((way) => doors.has(way.to));
      expect(quick.doors.every((door) => door)).toBe(between.every((way) => way.found));
    }
    expect(there).toBeGreaterThan(150);
    expect(missing).toBeGreaterThan(150);
  });

  it('is sure of nothing that a plain look along the path refutes', () => {
    const placed = [
      piece('sofa', [5500, 2000, 20], [800, 800]),
      piece('screen', [3000, 1650], [100, 3300]),
      piece('post', [2000, 3000, 45], [300, 300]),
    ];
    const scene = room();
    for (const way of clearWays(scene, null, placed, WIDTH)) {
      expect(way.found).toBe(true);
      const rings = placed.map(({ ring }) => ring);
      expect(sampledClearance(scene.outline, rings, way.path)).toBeGreaterThanOrEqual(WIDTH / 2 - 2e-6);
    }
  });
});
