import type { Placement, Point } from '../geometry/types.js';
import { at, type ProblemList, readLength, readNumber, readObject } from '../length/read-input.js';
import { ROOM_LIMITS } from '../room/room-limits.js';

/**
 * Centre (mm) and turn (radians) of a table, or null with problems; the turn defaults to 0. Half a turn is left as it is:
 * balls and directions may be told along the table's own axis.
 */
export function readPose(value: unknown, path: string, problems: ProblemList): Placement | null {
  const fields = readObject(value, path, ['x', 'y', 'turn'], problems);
  if (fields === null) return null;
  const center = readCenter(fields, path, "table's centre", problems);
  const limits = { what: 'turn of the table', min: -360, max: 360 };
  const given = fields.get('turn');
  const turn = given === undefined ? 0 : readNumber(given, at(path, 'turn'), limits, ' degrees', problems);
  if (center === null || turn === null) return null;
  return { x: center[0], y: center[1], angle: (turn * Math.PI) / 180 };
}

/** The point of the fields x and y, mm, or null with problems. */
export function readCenter(
  fields: ReadonlyMap<string, unknown>,
  path: string,
  what: string,
  problems: ProblemList,
): Point | null {
  // No room lies farther out, and beyond some point doubles tell nothing of one.
  const most = ROOM_LIMITS.coordinate;
  const coordinate = (key: 'x' | 'y'): number | null => {
    const value = fields.get(key);
    if (value === undefined)
      return problems.add(at(path, key), 'missing', `The ${key} of the ${what} is missing.`);
    return readLength(
      value,
      at(path, key),
      { what: `${key} of the ${what}`, min: -most, max: most },
      problems,
    );
  };
  const x = coordinate('x');
  const y = coordinate('y');
  // Adding 0 makes 0 of -0, which JSON cannot tell apart.
  return x === null || y === null ? null : [x + 0, y + 0];
}
