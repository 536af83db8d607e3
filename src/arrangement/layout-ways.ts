import type { TableSpec } from '../equipment/equipment-types.js';
import type { Placement, Ring } from '../geometry/types.js';
import type { Scene } from '../room/scene.js';
import { createWayCheck, quickWays, type WayCheck } from './clear-ways-quick.js';
import { tableRing } from './layout-rules.js';
import type { PlacedPiece } from './piece-place.js';

/** Which things of a layout are reached. */
export interface ReachedThings {
  /** Share of the doors that lead to the table and, past it, to one another with no pieces in the room, 0..1; 1 without a table or doors. */
  readonly doors: number;
  /** Whether the pieces leave the table reached from all of these. */
  readonly table: boolean;
  /** By piece: whether it is reached from all of these; from the table where there are none. */
  readonly pieces: readonly boolean[];
}

export type WayJudge = (
  tablePose: Placement | null,
  placed: readonly (PlacedPiece | null)[],
) => ReachedThings;

/**
 * Prepares a room for the question which things of a layout are reached. Doors that the table itself is not reached from, or cuts off from
 * the others, wherever the pieces stand, are told by their share and otherwise left out: no piece can make up for them.
 */
export function layoutWays(scene: Scene, table: TableSpec | null, way: number): WayJudge {
  const check = createWayCheck(scene, way);
  let last: { readonly pose: Placement; readonly check: WayCheck } | null = null;
  const bare = table === null ? together(check, null) : check;
  const all = Math.max(1, check.doors.length);
  return (tablePose, placed) => {
    const frame = table === null || tablePose === null ? null : tableRing(table, tablePose);
    let used = bare;
    if (frame !== null && tablePose !== null && check.doors.length > 0) {
      if (last === null || !same(last.pose, tablePose))
        last = { pose: tablePose, check: reaching(check, frame) };
      used = last.check;
    }
    const there = placed.filter((piece) => piece !== null);
    const ways = quickWays(used, frame, there);
    let k = 0;
    return {
      doors: check.doors.length === 0 ? 1 : used.doors.length / all,
      table: ways.table && ways.doors.every((door) => door),
      pieces: placed.map((piece) => piece !== null && ways.pieces[k++]),
    };
  };
}

/** The doors from which a table is reached in the room without pieces, and that it does not cut off from one another: the most of them. */
function reaching(check: WayCheck, frame: Ring): WayCheck {
  const all = quickWays(check, frame, []);
  if (all.table && all.doors.every((door) => door)) return check;
  const doors = check.doors.filter((door) => quickWays({ ...check, doors: [door] }, frame, []).table);
  return together({ ...check, doors }, frame);
}

/** The most doors that go together with one another. */
function together(check: WayCheck, frame: Ring | null): WayCheck {
  const { doors } = check;
  if (quickWays(check, frame, []).doors.every((door) => door)) return check;
  const groups = doors.map((a) =>
    doors.filter(
      (b) => a === b || quickWays({ ...check, doors: [a, b] }, frame, []).doors.every((door) => door),
    ),
  );
  return { ...check, doors: groups.reduce((a, b) => (b.length > a.length ? b : a)) };
}

function same(a: Placement, b: Placement): boolean {
  return a.x === b.x && a.y === b.y && a.angle === b.angle;
}
