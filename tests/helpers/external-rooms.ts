import type { TableSpec } from '../../src/equipment/equipment-types.js';
import type { Length, RoomInput } from '../../src/index.js';
import { checkFitInput } from '../../src/index.js';
import type { SlowRoom } from '../external/slow/scene.js';
import { swingOf } from '../external/slow/scene.js';
import { footprintRing, plainRing } from './external-plain.js';
import type { OpenRoom } from './open-rooms.js';

/** A real room as an input, and the same in plain numbers for the slow second opinion. */
export interface CheckedRoom {
  readonly id: string;
  readonly input: RoomInput;
  readonly slow: SlowRoom;
  /** The same with the swings of doors as wide as the library may take them. */
  readonly cautious: SlowRoom;
  /** Doors of the data that the library refuses, with its codes: they are left out. */
  readonly badDoors: readonly string[];
  /** Other defects of the data: the room is of no use. */
  readonly problems: readonly string[];
}

/**
 * Height as a flat ceiling, fixtures and columns as obstacles, doors hung at their first end and opening in and out by turns.
 */
export function checkedRoom(room: OpenRoom, table: string): CheckedRoom {
  const columns = (room.holes ?? []).map((ring, i) => ({
    name: `column ${i + 1}`,
    ring,
    from: 0,
    to: Infinity,
  }));
  const fixtures = (room.obst ?? []).map(({ k, pts, z0, z1 }, i) => ({
    name: `${k} ${i + 1}`,
    ring: pts,
    from: Math.max(0, z0),
    to: z1 ?? Infinity,
  }));
  const things = [...columns, ...fixtures];
  const obstacles = things.map(({ name, ring, from, to }) => ({
    name,
    footprint: ring,
    from,
    ...(to === Infinity ? {} : { to }),
  }));
  let doors = (room.doors ?? []).map(({ a, b }, i) => ({
    hinge: a,
    latch: b,
    opens: i % 2 === 0 ? ('in' as const) : ('out' as const),
  }));
  const inputWith = (): RoomInput => ({ outline: room.pts, ceiling: room.height, obstacles, doors });
  let problems = checkFitInput({ room: inputWith(), table });
  const badDoors = problems.filter((p) => p.path.startsWith('room.doors['));
  if (badDoors.length > 0) {
    const bad = new Set(badDoors.map((p) => Number(/\[(\d+)\]/.exec(p.path)?.[1])));
    doors = doors.filter((_, i) => !bad.has(i));
    problems = checkFitInput({ room: inputWith(), table });
  }
  const inward = doors.filter((door) => door.opens === 'in');
  const slow = { outline: room.pts, ceiling: room.height, things };
  return {
    id: room.id,
    input: inputWith(),
    slow: { ...slow, swings: inward.map(({ hinge, latch }) => swingOf(room.pts, hinge, latch)) },
    cautious: { ...slow, swings: inward.map(({ hinge, latch }) => swingOf(room.pts, hinge, latch, 6)) },
    badDoors: badDoors.map((p) => `${p.path} ${p.code}`),
    problems: problems.map((p) => `${p.path} ${p.code}`),
  };
}

/** A room whose input is in plain millimetres, with a flat ceiling or none; circles as polygons in them. */
export function plainRoom(id: string, input: RoomInput): CheckedRoom {
  const plain = (value: unknown, otherwise: number): number =>
    typeof value === 'number' ? value : otherwise;
  const outline = plainRing(input.outline);
  const inward = (input.doors ?? [])
    .filter((door) => door.opens === 'in')
    .map((d) => plainRing([d.hinge, d.latch]));
  const room = {
    outline,
    ceiling: plain(input.ceiling, Infinity),
    things: (input.obstacles ?? []).map(({ name, footprint, from, to }) => ({
      name,
      ring: footprintRing(footprint),
      from: plain(from, 0),
      to: plain(to, Infinity),
    })),
  };
  return {
    id,
    input,
    slow: { ...room, swings: inward.map(([hinge, latch]) => swingOf(outline, hinge, latch)) },
    cautious: { ...room, swings: inward.map(([hinge, latch]) => swingOf(outline, hinge, latch, 6)) },
    badDoors: [],
    problems: [],
  };
}

/** A rectangular, empty room with a corner at the origin. */
export function emptyRoom(length: Length, width: Length): RoomInput {
  return {
    outline: [
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ],
  };
}

/** R + s + a: what a level stroke takes behind the nearest ball centre, besides the cue. */
export function besidesCue(table: TableSpec, stroke: { backswing: number; margin: number }): number {
  return table.ballDiameter / 2 + stroke.backswing + stroke.margin;
}
