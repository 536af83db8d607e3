import type { Point } from '../geometry/types.js';
import { at, describeValue, type ProblemList, readArray, readLength } from '../length/read-input.js';
import { ROOM_LIMITS } from './room-limits.js';

/**
 * A list with at most `most` items, or null with a problem. Its length is looked at first, so that an endless list costs
 * nothing.
 */
export function readList(
  value: unknown,
  path: string,
  what: string,
  most: number,
  problems: ProblemList,
): readonly unknown[] | null {
  if (Array.isArray(value) && value.length > most) {
    return problems.add(
      path,
      'too-many',
      `There are ${value.length} ${what}; at most ${most} can be answered for.`,
    );
  }
  return readArray(value, path, what, problems);
}

/** Coordinates in mm, as many as `axes` names, or null with problems. `what` names the point: `corner 3`. */
export function readCoordinates(
  value: unknown,
  path: string,
  what: string,
  axes: readonly string[],
  problems: ProblemList,
): readonly number[] | null {
  if (!Array.isArray(value) || value.length !== axes.length) {
    return problems.add(
      path,
      'not-a-point',
      `Expected ${what} as [${axes.join(', ')}], got ${describeValue(value)}.`,
    );
  }
  const list = readArray(value, path, 'coordinates', problems);
  if (list === null) return null;
  const most = ROOM_LIMITS.coordinate;
  const read = axes.map((axis, k) =>
    readLength(list[k], at(path, k), { what: `${axis} of ${what}`, min: -most, max: most }, problems),
  );
  const good = read.filter((mm) => mm !== null);
  // Adding 0 makes 0 of -0, which a mirrored room would bring in.
  return good.length === read.length ? good.map((mm) => mm + 0) : null;
}

/** A point of the plan, mm, or null with problems. */
export function readPoint(value: unknown, path: string, what: string, problems: ProblemList): Point | null {
  const read = readCoordinates(value, path, what, ['x', 'y'], problems);
  return read === null ? null : [read[0], read[1]];
}

/** At most `most` corners in the order given, mm, or null with problems, one for each corner that cannot be read. */
export function readCorners(
  value: unknown,
  path: string,
  most: number,
  problems: ProblemList,
): Point[] | null {
  const list = readList(value, path, 'corners', most, problems);
  if (list === null) return null;
  const read = list.map((corner, i) => readPoint(corner, at(path, i), `corner ${i + 1}`, problems));
  const good = read.filter((corner) => corner !== null);
  return good.length === read.length ? good : null;
}
