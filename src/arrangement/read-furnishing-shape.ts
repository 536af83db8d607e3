import { FURNISHING_LIMITS } from '../equipment/furnishing-limits.js';
import type { FurnishingSpec } from '../equipment/furnishing-types.js';
import { readPlausible } from '../equipment/read-plausible.js';
import { boundingBox, circleRing, rectangleRing, translated } from '../geometry/ring.js';
import type { Ring } from '../geometry/types.js';
import { at, type ProblemList, readLength, readObject } from '../length/read-input.js';
import { checkShape } from '../room/check-shape.js';
import { readCorners } from '../room/read-corners.js';

type Range = readonly [least: number, most: number];

/** A footprint in the piece's own frame: the middle of its bounding rectangle is the origin. */
export interface PieceShape {
  readonly ring: Ring;
  readonly length: number;
  readonly width: number;
}

/**
 * A footprint from its sides, its diameter or its corners, or null with problems. `usual` is the kind it is of: a measure that is far from
 * what is usual is taken for a slip of the unit.
 */
export function readPieceShape(
  value: unknown,
  path: string,
  owner: string,
  usual: FurnishingSpec | null,
  problems: ProblemList,
): PieceShape | null {
  const shape = Array.isArray(value)
    ? cornered(value, path, owner, usual, problems)
    : measured(value, path, owner, usual, problems);
  if (shape === null) return null;
  const { length, width } = shape;
  const [key, longer] = length >= width ? (['length', length] as const) : (['width', width] as const);
  const what = `${key} of ${owner}, its longer side,`;
  // Sides that are near what is usual for the kind are good whatever they are.
  const good =
    usual !== null || readPlausible(longer, path, what, FURNISHING_LIMITS.longest, problems) !== null;
  return good ? shape : null;
}

function measured(
  value: unknown,
  path: string,
  owner: string,
  usual: FurnishingSpec | null,
  problems: ProblemList,
): PieceShape | null {
  const fields = readObject(value, path, ['length', 'width', 'diameter'], problems);
  if (fields === null) return null;
  const side = (key: 'length' | 'width' | 'diameter'): number | null =>
    fields.has(key)
      ? readPlausible(fields.get(key), at(path, key), `${key} of ${owner}`, sideRange(usual, key), problems)
      : problems.add(at(path, key), 'missing', `The ${key} of ${owner} is missing.`);
  if (!fields.has('diameter')) {
    const length = side('length');
    const width = side('width');
    if (length === null || width === null) return null;
    return { ring: rectangleRing([0, 0], length, width), length, width };
  }
  if (fields.size > 1) {
    return problems.add(
      path,
      'footprint-round-and-square',
      `The footprint of ${owner} has a diameter and the sizes of a rectangle; give one or the other.`,
    );
  }
  const diameter = side('diameter');
  if (diameter === null) return null;
  return { ring: circleRing([0, 0], diameter), length: diameter, width: diameter };
}

function cornered(
  value: readonly unknown[],
  path: string,
  owner: string,
  usual: FurnishingSpec | null,
  problems: ProblemList,
): PieceShape | null {
  const corners = readCorners(value, path, FURNISHING_LIMITS.count.corners, problems);
  if (corners === null) return null;
  const words = { code: 'footprint', shape: `The footprint of ${owner}`, side: 'side' } as const;
  const shape = checkShape(corners, path, words, problems);
  if (shape === null) return null;
  const box = boundingBox(shape.ring);
  const side = (key: 'length' | 'width', mm: number): number | null =>
    // As it would be written by hand, for the message.
    readPlausible(Math.round(mm * 100) / 100, path, `${key} of ${owner}`, sideRange(usual, key), problems) ===
    null
      ? null
      : mm;
  const length = side('length', box.maxX - box.minX);
  const width = side('width', box.maxY - box.minY);
  if (length === null || width === null) return null;
  const ring = translated(shape.ring, -(box.minX + box.maxX) / 2, -(box.minY + box.maxY) / 2);
  return { ring, length, width };
}

function sideRange(usual: FurnishingSpec | null, key: 'length' | 'width' | 'diameter'): Range {
  const { side } = FURNISHING_LIMITS;
  return usual === null ? side : nearUsual(usual[key === 'width' ? 'width' : 'length'], side);
}

/** What a thing may measure whose kind usually measures so much. */
export function nearUsual(usual: number, [least, most]: Range): Range {
  const { ofUsual } = FURNISHING_LIMITS;
  return [Math.max(least, usual / ofUsual), Math.min(most, usual * ofUsual)];
}

/** A length that is 0 or plausible, mm, or null with a problem. */
export function readZeroOr(
  value: unknown,
  path: string,
  what: string,
  range: Range,
  problems: ProblemList,
): number | null {
  const mm = readLength(value, path, { what }, problems);
  if (mm === null) return null;
  return mm === 0 ? 0 : readPlausible(value, path, what, range, problems);
}
