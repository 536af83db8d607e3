import {
  type Arrivals,
  arrivalsAt,
  goTogether,
  type WayField,
  wayField,
  wayLayout,
} from '../geometry/free-way-field.js';
import type { WayTarget } from '../geometry/free-way-target.js';
import type { Ring } from '../geometry/types.js';
import type { Scene } from '../room/scene.js';
import { pieceBlocks, roomBlocks } from './clear-ways-blocked.js';
import { doorTarget, needsWay, pieceTarget, touches } from './clear-ways-targets.js';
import type { PlacedPiece } from './piece-place.js';

/** What a search asks about the ways of many layouts of one room: prepared by {@link createWayCheck}, never changed. */
export interface WayCheck {
  readonly field: WayField;
  readonly doors: readonly WayTarget[];
  /** Of the ways, mm. */
  readonly width: number;
}

/** Which things of one layout have their clear ways. */
export interface WaysThere {
  /** By piece: a way leads to it from every door, or from the table where there are no doors. True for pieces that need none. */
  readonly pieces: readonly boolean[];
  /** A way leads to the table from every door; true without doors, and without a table. */
  readonly table: boolean;
  /** By door: a way leads from it to every other door. */
  readonly doors: readonly boolean[];
}

/** Prepares the room: its walls, obstacles, low ceilings and doors. */
export function createWayCheck(scene: Scene, width: number): WayCheck {
  const fixed = roomBlocks(scene).map(({ ring }) => ring);
  return {
    field: wayField(scene.outline, fixed, width),
    doors: scene.doors.map((door) => doorTarget(scene, door)),
    width,
  };
}

/**
 * Which ways of a layout are there: the same answers as `clearWays` gives for all of them at once, by the same proof but without paths.
 *
 * @param table The table's outer rectangle, anticlockwise; null: no table.
 */
export function quickWays(check: WayCheck, table: Ring | null, placed: readonly PlacedPiece[]): WaysThere {
  const { field, doors, width } = check;
  const moving = pieceBlocks(placed).map(({ ring }) => ring);
  const targets = [...doors];
  if (table !== null) {
    moving.push(table);
    targets.push(touches(table));
  }
  const indexOf = placed.map((piece) => (needsWay(piece) ? targets.push(pieceTarget(piece, width)) - 1 : -1));
  const arrivals = arrivalsAt(wayLayout(field, moving), targets, width);
  const starts = doors.map((_, k) => k);
  if (doors.length === 0 && table !== null) starts.push(0);
  return {
    pieces: indexOf.map((k) => k < 0 || fromAll(arrivals, starts, k)),
    table: table === null || fromAll(arrivals, starts, doors.length),
    doors: doors.map((_, k) => fromAll(arrivals, starts, k)),
  };
}

function fromAll(arrivals: Arrivals, starts: readonly number[], to: number): boolean {
  return starts.every((from) => from === to || goTogether(arrivals, from, to));
}
