import { readPlausible } from '../equipment/read-plausible.js';
import { FLAT_TOLERANCE } from '../geometry/named-ring.js';
import { at, ProblemList } from '../length/read-input.js';
import { readList, readPoint } from './read-corners.js';
import { ROOM_LIMITS } from './room-limits.js';

/**
 * How far off each wall may be, mm, in the caller's order, or null with problems: one for each corner of the outline, since
 * wall k starts from corner k. A list of corners that is closed by its first one may leave out the wall without length.
 */
export function readWallTolerances(
  value: unknown,
  path: string,
  outline: unknown,
  problems: ProblemList,
): readonly number[] | null {
  const list = readList(value, path, 'tolerances of walls', ROOM_LIMITS.count.corners, problems);
  if (list === null) return null;
  const read = list.map((item, i) =>
    readPlausible(item, at(path, i), `tolerance of wall ${i + 1}`, ROOM_LIMITS.tolerance, problems),
  );
  if (Array.isArray(outline) && outline.length > 0) {
    const corners = outline.length;
    const fits = list.length === corners || (list.length === corners - 1 && isClosed(outline));
    if (!fits) {
      return problems.add(
        path,
        'wall-tolerances-count',
        `There are ${list.length} tolerances of walls and ${corners} corners in the outline; give one for each wall, in the order of the corners that the walls start from.`,
      );
    }
  }
  const good = read.filter((mm) => mm !== null);
  return good.length === read.length ? good : null;
}

function isClosed(outline: readonly unknown[]): boolean {
  // What is wrong with a corner is told where the outline is read.
  const unheard = new ProblemList();
  const first = readPoint(outline[0], '', '', unheard);
  const last = readPoint(outline[outline.length - 1], '', '', unheard);
  if (first === null || last === null) return false;
  return Math.hypot(last[0] - first[0], last[1] - first[1]) <= FLAT_TOLERANCE;
}

/**
 * The tolerances of the sides that are left of an outline. `starts[k]` is the caller's corner that side k starts from; a side
 * that is made of several walls of the list has the greatest of theirs.
 */
export function greatestOfMerged(ofWalls: readonly number[], starts: readonly number[]): readonly number[] {
  const count = Math.max(ofWalls.length, ...starts.map((s) => s + 1));
  const isStart = new Set(starts);
  return starts.map((start) => {
    let greatest = 0;
    let wall = start;
    do {
      greatest = Math.max(greatest, ofWalls[wall] ?? 0);
      wall = (wall + 1) % count;
    } while (!isStart.has(wall));
    return greatest;
  });
}
