import { unitHint, writeMm } from '../equipment/read-plausible.js';
import { boundingBox, circleExcess, circleRing, rectangleRing } from '../geometry/ring.js';
import type { Ring } from '../geometry/types.js';
import { at, type ProblemList, readLength, readNumber, readObject } from '../length/read-input.js';
import { checkShape, type ShapeWords } from './check-shape.js';
import { capital } from './names.js';
import { readCorners, readPoint } from './read-corners.js';
import { ROOM_LIMITS } from './room-limits.js';

/** A footprint as a ring, with what had to be assumed for it. */
export interface FootprintShape {
  /** Anticlockwise, simple, without repeated and straight corners. */
  readonly ring: Ring;
  /** How far the ring's corners lie outside the circle it stands for, mm; null for other shapes. */
  readonly excess: number | null;
  /** A rectangle whose turn was not given. */
  readonly unturned: boolean;
}

const KEYS = ['center', 'length', 'width', 'turn', 'diameter'] as const;

/** A footprint from corners, or from a rectangle or circle about its centre; null with problems. `owner` names it: `"sofa"`. */
export function readFootprint(
  value: unknown,
  path: string,
  owner: string,
  problems: ProblemList,
): FootprintShape | null {
  if (value === undefined) {
    return problems.add(
      path,
      'missing',
      `The footprint of ${owner} is missing: give its corners, or its center with length and width or with a diameter.`,
    );
  }
  if (Array.isArray(value)) return readPolygon(value, path, owner, problems);
  const fields = readObject(value, path, KEYS, problems);
  if (fields === null) return null;
  const before = problems.problems.length;
  const round = fields.has('diameter');
  if (round && ['length', 'width', 'turn'].some((key) => fields.has(key))) {
    return problems.add(
      path,
      'footprint-round-and-square',
      `The footprint of ${owner} has a diameter and the sizes of a rectangle; give one or the other.`,
    );
  }
  const center = fields.has('center')
    ? readPoint(fields.get('center'), at(path, 'center'), 'the center', problems)
    : problems.add(at(path, 'center'), 'missing', `The center of ${owner} is missing.`);
  const size = (key: 'length' | 'width' | 'diameter'): number | null =>
    readSize(fields.get(key), at(path, key), key, owner, problems);

  if (round) {
    const diameter = size('diameter');
    if (center === null || diameter === null) return null;
    const ring = circleRing(center, diameter);
    return checkSize(ring, fields.get('diameter'), path, owner, problems)
      ? { ring, excess: circleExcess(diameter), unturned: false }
      : null;
  }
  const length = size('length');
  const width = size('width');
  const turn = fields.has('turn')
    ? readNumber(
        fields.get('turn'),
        at(path, 'turn'),
        { what: `turn of ${owner}`, min: -360, max: 360 },
        ' degrees',
        problems,
      )
    : 0;
  if (
    problems.problems.length > before ||
    center === null ||
    length === null ||
    width === null ||
    turn === null
  )
    return null;
  const longer = length > width ? 'length' : 'width';
  const ring = rectangleRing(center, length, width, (turn * Math.PI) / 180);
  if (!checkSize(ring, fields.get(longer), path, owner, problems)) return null;
  const shape = checkShape(ring, path, wordsFor(owner), problems);
  return shape === null ? null : { ring: shape.ring, excess: null, unturned: !fields.has('turn') };
}

function readPolygon(
  value: readonly unknown[],
  path: string,
  owner: string,
  problems: ProblemList,
): FootprintShape | null {
  const corners = readCorners(value, path, ROOM_LIMITS.count.footprintCorners, problems);
  if (corners === null) return null;
  const shape = checkShape(corners, path, wordsFor(owner), problems);
  if (shape === null || !checkSize(shape.ring, undefined, path, owner, problems)) return null;
  return { ring: shape.ring, excess: null, unturned: false };
}

function wordsFor(owner: string): ShapeWords {
  return { code: 'footprint', shape: `The footprint of ${owner}`, side: 'side' };
}

function readSize(
  value: unknown,
  path: string,
  what: string,
  owner: string,
  problems: ProblemList,
): number | null {
  if (value === undefined) return problems.add(path, 'missing', `The ${what} of ${owner} is missing.`);
  const mm = readLength(value, path, { what: `${what} of ${owner}` }, problems);
  if (mm === null || mm > 0) return mm;
  return problems.add(
    path,
    'not-positive',
    `The ${what} of ${owner} is ${writeMm(mm)}; it must be more than 0.`,
  );
}

/** Whether the thing is neither smaller than anything that stands in a room nor larger than any room. */
function checkSize(ring: Ring, given: unknown, path: string, owner: string, problems: ProblemList): boolean {
  const box = boundingBox(ring);
  const sizeX = box.maxX - box.minX;
  const sizeY = box.maxY - box.minY;
  const longer = Math.max(sizeX, sizeY);
  const limits = ROOM_LIMITS.footprint;
  if (longer >= limits[0] && longer <= limits[1]) return true;
  const shown = Math.round(longer * 100) / 100;
  problems.add(
    path,
    'footprint-wrong-unit',
    `${capital(owner)} is ${writeMm(shown)} long; expected ${writeMm(limits[0])} to ${writeMm(limits[1])}. ${unitHint(given ?? shown, limits)}`,
  );
  return false;
}
