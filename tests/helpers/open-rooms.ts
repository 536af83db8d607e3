import { readFileSync } from 'node:fs';
import type { Point, Ring } from '../../src/geometry/types.js';
import type { RoomInput } from '../../src/room/room-input.js';

/** A room of tests/fixtures/rooms/rooms-open.json; sources and licences in the NOTICE beside it. Millimetres. */
export interface OpenRoom {
  readonly id: string;
  /** Building. */
  readonly bld: string;
  /** Guessed from the room's name in the model; `room` where unknown. */
  readonly kind: string;
  /** Number of corners. */
  readonly n: number;
  /** Area in m2 by the converter, holes taken off, rounded to 0.001. */
  readonly area_m2: number;
  /** Height of the space in the model; may include some of the slab. */
  readonly height: number;
  /** Anticlockwise. */
  readonly pts: Ring;
  readonly holes?: readonly Ring[];
  /** Openings: both ends on a wall, clear width and height. */
  readonly doors?: readonly {
    readonly a: Point;
    readonly b: Point;
    readonly w: number;
    readonly h: number;
  }[];
  /** Fixtures: kind, footprint, and heights above the floor. */
  readonly obst?: readonly {
    readonly k: string;
    readonly pts: Ring;
    readonly z0: number;
    readonly z1?: number;
  }[];
}

function load(): readonly OpenRoom[] {
  const url = new URL('../fixtures/rooms/rooms-open.json', import.meta.url);
  const file: { rooms: OpenRoom[] } = JSON.parse(readFileSync(url, 'utf8'));
  return file.rooms;
}

/** All 551 rooms, in the order of the file. */
export const openRooms: readonly OpenRoom[] = load();

/**
 * The room as an input of the library: doors hung at `a` opening in (openings wider than 3 m left out: those are no
 * leaves), columns and fixtures as obstacles, fixtures numbered so that no two share a name.
 */
export function openRoomInput(room: OpenRoom): RoomInput {
  const columns = (room.holes ?? []).map((footprint, i) => ({ name: `column ${i + 1}`, footprint }));
  const fixtures = (room.obst ?? []).map((fixture, i) => ({
    name: `${fixture.k} ${i + 1}`,
    footprint: fixture.pts,
    from: Math.max(0, fixture.z0),
    ...(fixture.z1 === undefined ? {} : { to: fixture.z1 }),
  }));
  return {
    outline: room.pts,
    ceiling: room.height,
    obstacles: [...columns, ...fixtures],
    doors: (room.doors ?? [])
      .filter((door) => Math.hypot(door.b[0] - door.a[0], door.b[1] - door.a[1]) <= 3000)
      .map((door) => ({ hinge: door.a, latch: door.b, opens: 'in' as const })),
  };
}
