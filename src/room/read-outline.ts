import { unitHint, writeMm } from '../equipment/read-plausible.js';
import type { NamedRing } from '../geometry/named-ring.js';
import { boundingBox, perimeter, signedArea } from '../geometry/ring.js';
import type { Point } from '../geometry/types.js';
import type { ProblemList } from '../length/read-input.js';
import { checkShape } from './check-shape.js';
import { readCorners } from './read-corners.js';
import { ROOM_LIMITS } from './room-limits.js';

/**
 * The room's outline from the caller's corners, or null with problems. See `checkShape` for what becomes of the corners'
 * numbers.
 */
export function readOutline(value: unknown, path: string, problems: ProblemList): NamedRing | null {
  if (value === undefined) {
    return problems.add(
      path,
      'missing',
      'The outline of the room is missing: give the corners of its walls in order.',
    );
  }
  const corners = readCorners(value, path, ROOM_LIMITS.count.corners, problems);
  if (corners === null) return null;
  const words = { code: 'outline', shape: 'The outline', side: 'wall' } as const;
  const shape = checkShape(corners, path, words, problems);
  const sized = checkSize(corners, shape, path, problems);
  return sized ? shape : null;
}

/** Whether it has the size of a room; told even of a shape that has other defects. */
function checkSize(
  corners: readonly Point[],
  shape: NamedRing | null,
  path: string,
  problems: ProblemList,
): boolean {
  if (corners.length === 0) return true;
  const box = boundingBox(corners);
  const sizeX = box.maxX - box.minX;
  const sizeY = box.maxY - box.minY;
  const longer = Math.max(sizeX, sizeY);
  // Corners in one point are told of as such.
  if (longer === 0) return true;
  const limits = ROOM_LIMITS.extent;
  if (longer < limits[0] || longer > limits[1]) {
    problems.add(
      path,
      'outline-wrong-unit',
      `The room is ${writeMm(round(sizeX))} by ${writeMm(round(sizeY))} overall; expected a longer side of ${writeMm(limits[0])} to ${writeMm(limits[1])}. ${unitHint(round(longer), limits)}`,
    );
    return false;
  }
  if (shape === null) return true;
  const width = (2 * Math.abs(signedArea(shape.ring))) / perimeter(shape.ring);
  if (width < ROOM_LIMITS.meanWidth) {
    problems.add(
      path,
      'outline-wrong-unit',
      `The room is ${writeMm(round(sizeX))} by ${writeMm(round(sizeY))} overall and only about ${writeMm(round(width))} wide. Check that all corners are in the same unit; a number is in millimetres.`,
    );
    return false;
  }
  return true;
}

/** To a hundredth, for messages. */
function round(mm: number): number {
  return Math.round(mm * 100) / 100;
}
