import { describe, expect, it } from 'vitest';
import { arrangementBounds } from '../../src/arrangement/arrangement-bounds.js';
import {
  fitsBeside,
  fitsRoom,
  fitsTable,
  roomProblems,
  roomRules,
} from '../../src/arrangement/layout-rules.js';
import { type PlacedPiece, placePiece } from '../../src/arrangement/piece-place.js';
import { reportArrangement } from '../../src/arrangement/report-arrangement.js';
import { fitQuestion } from '../../src/check-fit-input.js';
import type { FurnishingSpec } from '../../src/equipment/furnishing-types.js';
import { FURNISHINGS } from '../../src/equipment/furnishings.js';
import { TABLES } from '../../src/equipment/tables.js';
import { rectangleRing } from '../../src/geometry/ring.js';
import type { Placement, Point, Ring } from '../../src/geometry/types.js';
import { findPlace } from '../../src/placement/find-place.js';
import type { Scene } from '../../src/room/scene.js';
import { box, obstacleOf, put, sceneOf } from '../arrangement/layout-cases.js';
import { seeded } from '../helpers/external-random.js';
import { checkedRoom } from '../helpers/external-rooms.js';
import * as jts from '../helpers/jsts.js';
import { openRooms } from '../helpers/open-rooms.js';

/**
 * JTS, through its JavaScript port, as a judge of whole layouts: real rooms are filled with pieces of the catalogue at random, as the rules allow;
 * JTS has to find everything inside the walls and apart, and has to find a reason for each place that was refused.
 */

const TABLE = TABLES['pool-7ft-bar'];
const RAIL = TABLE.bedHeight + TABLE.railHeight;
/** Overlaps of less area may be touching with rounding, 0.01 mm over 20 m; mm2. */
const TOUCHING = 200;

interface Layout {
  readonly name: string;
  readonly scene: Scene;
  readonly frame: Placement;
  readonly placed: readonly PlacedPiece[];
  /** What did not fit, and what stood there already. */
  readonly refused: readonly { readonly piece: PlacedPiece; readonly beside: readonly PlacedPiece[] }[];
}

const layouts = openRooms
  .filter((room, i) => room.area_m2 > 24 && room.area_m2 < 90 && i % 5 === 2)
  .flatMap((open): Layout[] => {
    const { input, problems, id } = checkedRoom(open, TABLE.id ?? '');
    if (problems.length > 0) return [];
    const question = fitQuestion({ room: input, table: 'pool-7ft-bar', cues: [1448] });
    const { scene, stroke, cues, search } = question;
    const { gap, maxBoxes } = search;
    const found = findPlace({
      scene,
      table: TABLE,
      stroke,
      cues,
      search: { gap, maxBoxes, turns: 'square' },
    });
    return found.pose === null ? [] : [filled(id, scene, found.pose)];
  })
  .slice(0, 24);

/** Tries every kind of the catalogue at random places along the walls, and some anywhere. */
function filled(name: string, scene: Scene, frame: Placement): Layout {
  const random = seeded(name.length * 977 + scene.outline.length);
  const rules = roomRules(scene, 600);
  const kinds: readonly FurnishingSpec[] = Object.values(FURNISHINGS).filter((k) => k.stand !== 'over-table');
  const placed: PlacedPiece[] = [];
  const refused: { piece: PlacedPiece; beside: readonly PlacedPiece[] }[] = [];
  for (let i = 0; i < 150 && placed.length < 12; i++) {
    const kind = kinds[Math.floor(random() * kinds.length)];
    const spec = { ...kind, name: `${kind.name} ${i}` };
    const piece = placePiece(spec, poseFor(scene, spec, random));
    const fits =
      fitsRoom(rules, piece) &&
      fitsTable(piece, TABLE, frame) &&
      placed.every((other) => fitsBeside(piece, other));
    if (fits) placed.push(piece);
    else refused.push({ piece, beside: [...placed] });
  }
  return { name, scene, frame, placed, refused };
}

function poseFor({ outline }: Scene, spec: FurnishingSpec, random: () => number): Placement {
  const wall = Math.floor(random() * outline.length);
  const a = outline[wall];
  const b = outline[(wall + 1) % outline.length];
  const angle = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const along = random();
  const off = spec.width / 2 + (spec.stand === 'free' ? random() * 2500 : 0);
  const [x, y] = [a[0] + along * (b[0] - a[0]), a[1] + along * (b[1] - a[1])];
  return { x: x - off * Math.sin(angle), y: y + off * Math.cos(angle), angle };
}

interface Solid {
  readonly ring: Ring;
  readonly from: number;
  readonly to: number;
}

function meet(a: Solid, b: Solid): boolean {
  return a.from < b.to && b.from < a.to;
}

function shared(a: Ring, b: Ring): number {
  return jts.area(jts.intersection(jts.polygon(a), jts.polygon(b)));
}

function beyond(scene: Scene, ring: Ring): number {
  return jts.area(jts.difference(jts.polygon(ring), jts.polygon(scene.outline)));
}

function bodyOf({ spec, ring }: PlacedPiece): Solid {
  return { ring, from: spec.from, to: spec.to };
}

function zonesOf({ zones }: PlacedPiece) {
  return zones.map(({ spec, ring }) => ({ ring, from: spec.from, to: spec.to, spec }));
}

/** The floor behind a doorway, 600 mm deep, on its room side, by the wall's own direction; and the swing. */
function doorFloors(scene: Scene): readonly Ring[] {
  return scene.doors.flatMap(({ hinge, latch, swing }) => {
    const middle: Point = [(hinge[0] + latch[0]) / 2, (hinge[1] + latch[1]) / 2];
    const length = Math.hypot(latch[0] - hinge[0], latch[1] - hinge[1]);
    const angle = Math.atan2(latch[1] - hinge[1], latch[0] - hinge[0]);
    const strips = [1, -1].map((side): Ring => {
      const at: Point = [middle[0] - side * 300 * Math.sin(angle), middle[1] + side * 300 * Math.cos(angle)];
      return rectangleRing(at, length, 600, angle);
    });
    // Of the two sides the one that lies in the room.
    const [strip] = strips.sort((s, t) => beyond(scene, s) - beyond(scene, t));
    return swing === null ? [strip] : [strip, swing];
  });
}

/** All that is wrong with a piece at its place, as areas, mm2: the largest counts. Walls behind pieces are not looked at. */
function worst(layout: Layout, piece: PlacedPiece, others: readonly PlacedPiece[]): number {
  const { scene, frame } = layout;
  const table = rectangleRing([frame.x, frame.y], TABLE.outer.length, TABLE.outer.width, frame.angle);
  const body = bodyOf(piece);
  const things: number[] = [];
  const doors = doorFloors(scene);
  for (const solid of [
    { ...body, offDoors: true },
    ...zonesOf(piece).map((z) => ({ ...z, offDoors: z.spec.offDoors })),
  ]) {
    things.push(beyond(scene, solid.ring));
    for (const o of scene.obstacles) if (meet(solid, o)) things.push(shared(solid.ring, o.ring));
    if (solid.offDoors && solid.from < 2100) for (const ring of doors) things.push(shared(solid.ring, ring));
    if (solid.from < RAIL) things.push(shared(solid.ring, table));
    // Flat ceilings only in these rooms.
    if (scene.ceiling.some(({ height }) => height < solid.to)) things.push(Infinity);
  }
  for (const other of others) {
    const its = bodyOf(other);
    if (meet(body, its)) things.push(shared(body.ring, its.ring));
    for (const z of zonesOf(other)) if (meet(body, z)) things.push(shared(body.ring, z.ring));
    for (const z of zonesOf(piece)) {
      if (meet(z, its)) things.push(shared(z.ring, its.ring));
      for (const y of zonesOf(other)) {
        if (meet(z, y) && !(z.spec.withZones && y.spec.withZones)) things.push(shared(z.ring, y.ring));
      }
    }
  }
  return Math.max(...things);
}

describe('JTS on whole layouts in real rooms', () => {
  it('has enough of them', () => {
    expect(layouts.length).toBeGreaterThanOrEqual(15);
    expect(layouts.reduce((sum, { placed }) => sum + placed.length, 0)).toBeGreaterThan(60);
    expect(layouts.reduce((sum, { refused }) => sum + refused.length, 0)).toBeGreaterThan(500);
  });

  it.each(layouts)('finds everything inside and apart: $name', (layout) => {
    for (const piece of layout.placed) {
      const others = layout.placed.filter((other) => other !== piece);
      expect(worst(layout, piece, others)).toBeLessThan(TOUCHING);
    }
  });

  it.each(layouts)('finds a reason for what was refused: $name', (layout) => {
    const rules = roomRules(layout.scene, 600);
    for (const { piece, beside } of layout.refused.slice(0, 25)) {
      // Its stand is no matter of overlap.
      if (roomProblems(rules, piece).some(({ code }) => code === 'no-wall' || code === 'turn')) continue;
      expect(worst(layout, piece, beside)).toBeGreaterThan(0);
    }
  });

  it.each(layouts)('agrees with the report on what is free: $name', ({ scene, frame, placed }) => {
    const pieces = placed.map(({ spec, pose }) => ({ ...spec, pose }));
    const report = reportArrangement(
      {
        scene,
        table: TABLE,
        stroke: { backswing: 150, shortBackswing: 45, margin: 20, tipOffset: 10, maxElevation: 0.35 },
        cue: { name: '57 in', length: 1448, tipRadius: 5, buttRadius: 15 },
        arrangement: { pieces, way: 600, effort: 1, onProgress: null },
      },
      {
        tablePose: frame,
        poses: placed.map(({ pose }) => pose),
        value: { value: 0, upperBound: 0, placed: 1, play: 0, apart: 1 },
        layouts: 1,
        stopped: false,
        rejections: [],
      },
      [],
    );
    expect(report.complete).toBe(true);
    // What stands on the floor, as JTS measures it: never more than there is.
    const standing = placed.filter(({ spec }) => spec.from === 0).map(({ ring }) => jts.polygon(ring));
    const table = jts.polygon(
      rectangleRing([frame.x, frame.y], TABLE.outer.length, TABLE.outer.width, frame.angle),
    );
    const taken = jts.area(jts.union([table, ...standing])) / 1e6;
    const columns = scene.obstacles.filter(({ from }) => from === 0).map(({ ring }) => jts.polygon(ring));
    const floor = jts.polygon(scene.outline);
    const free = (jts.area(floor) - jts.area(jts.intersection(floor, jts.union(columns)))) / 1e6;
    const { bounds } = report;
    expect(bounds.floor.needed).toBeCloseTo(taken, 3);
    expect(bounds.floor.available).toBeCloseTo(free, 6);
    expect(bounds.floor.needed).toBeLessThanOrEqual(bounds.floor.available);
    expect(bounds.wall.needed).toBeLessThanOrEqual(bounds.wall.available);
    const apart = arrangementBounds(
      scene,
      TABLE,
      pieces.map((piece) => ({ ...piece, pose: null })),
    );
    expect(apart.wall.needed).toBeLessThanOrEqual(apart.wall.available);
    for (const { share } of report.sharing) expect(share).toBeLessThanOrEqual(1);
  });
});

/** Standing room behind the oche, mm: common practice, no source. */
const BEHIND_OCHE = 600;

describe('floor for darts (Western Australia, Sports Dimensions Guide: oche 2.37 m from the face of the board, bull 1.73 m above the floor)', () => {
  const { darts } = FURNISHINGS;
  const room = (deep: number, more: Partial<Scene> = {}): Scene =>
    sceneOf(
      [
        [0, 0],
        [3000, 0],
        [3000, deep],
        [0, deep],
      ],
      more,
    );
  /** The board's back on the wall. */
  const board = put(darts, 1500, darts.width / 2);
  const fits = (scene: Scene): boolean => fitsRoom(roomRules(scene, 600), board);

  it('hangs the bull at 1.73 m', () => {
    expect((darts.from + darts.to) / 2).toBe(1730);
  });

  it('takes 2.37 m from the face of the board to the oche, and room to stand behind it', () => {
    const deep = darts.width + 2370 + BEHIND_OCHE;
    expect(fits(room(deep))).toBe(true);
    expect(fits(room(deep + 500))).toBe(true);
    expect(fits(room(deep - 1))).toBe(false);
  });

  it('keeps the lane free over the width of the oche, 915 mm', () => {
    const stool = (x: number, y: number) => obstacleOf('stool', rectangleRing([x, y], 300, 300), 0, 600);
    const deep = 4000;
    for (const y of [400, 1500, darts.width + 2370]) {
      expect(fits(room(deep, { obstacles: [stool(1500, y)] }))).toBe(false);
      expect(fits(room(deep, { obstacles: [stool(1500 + 915 / 2 + 149, y)] }))).toBe(false);
      expect(fits(room(deep, { obstacles: [stool(1500 + 915 / 2 + 150, y)] }))).toBe(true);
    }
    expect(fits(room(deep, { obstacles: [stool(1500, darts.width + 2370 + BEHIND_OCHE + 150)] }))).toBe(true);
  });

  it('lets nobody walk into a throw', () => {
    const door = {
      name: 'door',
      hinge: [0, 2500] as const,
      latch: [0, 1700] as const,
      opens: 'slides' as const,
      swing: null,
    };
    // 600 mm behind the doorway reach to x = 600; the lane starts at 1500 - 457.5.
    expect(fits(room(4000, { doors: [door] }))).toBe(true);
    const near = put(darts, 900, darts.width / 2);
    expect(roomProblems(roomRules(room(4000, { doors: [door] }), 600), near).map(({ code }) => code)).toEqual(
      ['zone-door'],
    );
  });
});

describe('floor for table tennis (recreation and coaching 8.5 x 4.12 m, second-hand; table 2.74 x 1.525 m: ITTF Technical Leaflet T1)', () => {
  const spec = FURNISHINGS['table-tennis'];
  const room = (length: number, width: number): Scene =>
    sceneOf([
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ]);
  const fits = (length: number, width: number, turn = 0): boolean =>
    fitsRoom(roomRules(room(length, width), 600), put(spec, length / 2, width / 2, turn));

  it('is 8.5 x 4.12 m and no less, whichever way round', () => {
    expect(fits(8500, 4120)).toBe(true);
    expect(fits(8499, 4120)).toBe(false);
    expect(fits(8500, 4119)).toBe(false);
    expect(fits(4120, 8500)).toBe(false);
    expect(fits(4120, 8500, 90)).toBe(true);
  });

  it.each([
    ['local', 9000, 5000],
    ['league', 10_000, 5000],
    ['national', 12_000, 6000],
    ['international', 14_000, 7000],
  ])('is there in a %s playing space of %i x %i mm (second-hand)', (_, length, width) => {
    expect(fits(length, width)).toBe(true);
  });

  it('keeps other furniture off', () => {
    const table = put(spec, 4250, 2060);
    const stool = (x: number, y: number) => put(box('stool', 300, 300), x, y);
    expect(fitsBeside(table, stool(149, 2060))).toBe(false);
    expect(fitsBeside(table, stool(-150, 2060))).toBe(true);
    expect(fitsBeside(table, stool(4250, 4120 + 150))).toBe(true);
    expect(fitsBeside(table, stool(4250, 4120 + 149))).toBe(false);
  });
});
