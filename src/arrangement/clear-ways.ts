import type { TableSpec } from '../equipment/equipment-types.js';
import { findWays, type WayPair } from '../geometry/free-way.js';
import type { WayTarget } from '../geometry/free-way-target.js';
import type { WayThing } from '../geometry/free-way-widest.js';
import type { Placement } from '../geometry/types.js';
import type { Scene } from '../room/scene.js';
import type { ClearWay } from './arrangement-report.js';
import { pieceBlocks, roomBlocks } from './clear-ways-blocked.js';
import { doorTarget, needsWay, openingWidth, pieceTarget, touches } from './clear-ways-targets.js';
import { THE_TABLE, tableRing } from './layout-rules.js';
import type { PlacedPiece } from './piece-place.js';

/** The widest way is looked for up to so many times the wanted width, and no further down than this share of it. */
const MOST = 2;
const LEAST = 0.25;

/** A table and where it stands. */
export interface StandingTable {
  readonly table: TableSpec;
  readonly pose: Placement;
}

/**
 * The clear ways of a layout: from each door to the table, to each door after it and to each piece that stands on the floor or has a use zone;
 * in a room without doors, from the table to each such piece.
 *
 * - In the way of a walker are the walls, everything whose underside is lower than the head height, the table's outer rectangle, and floor
 *   under a ceiling lower than the head height. Leaves of doors open as one walks, and zones are floor to walk on.
 * - A door is reached where a disc as wide as the way touches its opening and can come through: half the way's width or more from both
 *   jambs. An opening narrower than the way is passed at the width it has, see `WayTarget`, and a way to it has no more width there than that.
 * - The table is reached where the disc stands square before a side of its frame, within 10 mm; a piece where the disc's centre is on one of its
 *   zones, or likewise at a side of its body where it has none. A zone shallower than half the way is reached at the body's side behind it.
 *
 * Touching is free: a gap exactly as wide as the way lets it through, and rounding may take 0.000 002 mm from it. `found` is proved by the
 * path, and `certain` without `found` by a closed line of things and gaps, each too narrow, round one of the two. `widest` is told up to twice the
 * wanted width, or the opening of the doors if that is less; it is a gap's own width, or else up to 0.5 mm less than the
 * widest. No way narrower than a quarter of the wanted width is looked for.
 *
 * @param width Of the ways, mm.
 */
export function clearWays(
  scene: Scene,
  table: StandingTable | null,
  placed: readonly PlacedPiece[],
  width: number,
): readonly ClearWay[] {
  const frame = table === null ? null : tableRing(table.table, table.pose);
  const blocks = [...roomBlocks(scene), ...pieceBlocks(placed)];
  if (frame !== null) blocks.push({ name: THE_TABLE, ring: frame });

  const ends = scene.doors.map((door): WayEnd => {
    const target = doorTarget(scene, door);
    return { name: door.name, target, most: Math.max(width, Math.min(MOST * width, openingWidth(target))) };
  });
  const doors = ends.length;
  const add = (name: string, target: WayTarget): void => {
    ends.push({ name, target, most: MOST * width });
  };
  if (frame !== null) add(THE_TABLE, touches(frame));
  for (const piece of placed) if (needsWay(piece)) add(piece.spec.name, pieceTarget(piece, MOST * width));

  const pairs: WayPair[] = [];
  const starts = doors > 0 ? doors : frame === null ? 0 : 1;
  for (let from = 0; from < starts; from++) {
    const to = ends.map((_, k) => k).filter((k) => k > from);
    // The table before the other doors, as the nearer question.
    to.sort((a, b) => rank(a, doors, frame !== null) - rank(b, doors, frame !== null) || a - b);
    for (const k of to) pairs.push({ from, to: k, most: Math.min(ends[from].most, ends[k].most) });
  }

  const targets = ends.map(({ target }) => target);
  const rings = blocks.map(({ ring }) => ring);
  const nameOf = ({ kind, index }: WayThing): string =>
    kind === 'wall' ? scene.wallNames[index] : blocks[index].name;
  return findWays(scene.outline, rings, targets, pairs, width, LEAST * width).map(
    ({ found, certain, path, widest }, k): ClearWay => ({
      from: ends[pairs[k].from].name,
      to: ends[pairs[k].to].name,
      width,
      found,
      certain,
      path,
      widest: widest === null ? null : widest.width,
      between: widest?.narrowest == null ? [] : distinct(widest.narrowest.between.map(nameOf)),
    }),
  );
}

interface WayEnd {
  readonly name: string;
  readonly target: WayTarget;
  /** No wider way is looked for from or to it, mm. */
  readonly most: number;
}

function rank(end: number, doors: number, hasTable: boolean): number {
  if (hasTable && end === doors) return 0;
  return end < doors ? 1 : 2;
}

function distinct(names: readonly string[]): string[] {
  return [...new Set(names)];
}
