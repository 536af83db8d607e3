/*
 * The only importer of polygon-clipping. It is small and fast, but on its own it is not to be trusted: given raw doubles it
 * throws on about every twelfth rotated room, is now and then wrong without a word, and on a few inputs never returns. Edges
 * that are collinear up to rounding are its worst case, and a table parallel to a wall makes just those. So it gets
 * corners on a binary grid only and few pieces at a time; what comes back is checked; and when a check fails, a ladder of
 * other groupings and coarser grids is climbed, as JTS does in OverlayNGRobust.
 */
import polygonClipping from 'polygon-clipping';
import {
  type ClipShape,
  emptyPiece,
  middle,
  type Piece,
  readShape,
  snapPolygon,
  snapShape,
  toRegion,
} from './clip-shape.js';
import { type Region, RegionError, type Shape } from './region.js';
import type { Point } from './types.js';

/** Step of the grid that regions lie on, mm. A power of two, so that every coordinate on it is exact. */
export const REGION_GRID: number = 2 ** -10;

/**
 * Most corners in one call of polygon-clipping, given or made on the way. A call that hangs cannot be interrupted from
 * inside, so the size of the question is limited instead. Two stars of 5,000 corners each take some seconds.
 */
const MOST_CORNERS = 10_000;

interface Rung {
  /** Step of the grid, a power of two, mm. */
  readonly grid: number;
  /** Pieces united in one call. Eight are as safe as two and several times faster than all at once. */
  readonly group: number;
}

/** From the finest grid up. Even the last is far finer than a drawn line. */
const LADDER: readonly Rung[] = [
  { grid: REGION_GRID, group: 8 },
  { grid: REGION_GRID, group: 3 },
  { grid: 2 ** -9, group: 8 },
  { grid: 2 ** -8, group: 5 },
  { grid: 2 ** -7, group: 3 },
  { grid: 2 ** -6, group: 8 },
  { grid: 2 ** -4, group: 2 },
];

/** A shape cut in two. */
export interface RegionSplit {
  /** What of it lies in the cutters. */
  readonly inside: Region;
  /** What of it lies outside all of them. */
  readonly outside: Region;
}

/**
 * The union of shapes, mm.
 *
 * Regions propose and draw. Every corner of the result lies on a grid, mostly of 2^-10 mm ({@link REGION_GRID}), where the
 * input was rounded to and every intermediate result again: the boundary may be off by a step for the input and one for
 * each of the log8(n) rounds, to either side. Verdicts do not rest on regions; they are certified elsewhere on the original
 * numbers.
 *
 * Behaviour: shapes that overlap or share an edge become one piece; shapes that touch in a point only may stay apart.
 * Pieces and holes whose mean width is two steps of the grid or less are dropped. The direction of rings is free. Rings must be
 * simple, with holes inside their outlines and apart: where they are not, areas do not add up, and the call mostly ends in an
 * error; otherwise a ring that crosses itself counts as filled wherever it winds around. The input is not changed.
 *
 * @throws RegionError for coordinates that are not finite or beyond 10 km, rings of fewer than three corners, more than
 * 10,000 corners, or when no grid gives a result that passes its checks.
 */
export function unite(shapes: readonly Shape[]): Region {
  return climb(shapes, (pieces, rung, origin) => toRegion(uniteAll(pieces.flat(), rung), origin));
}

/** What two shapes have in common, mm; nothing when they only touch. Rounds, errs and throws as {@link unite} does. */
export function intersect(a: Shape, b: Shape): Region {
  return split(a, [b]).inside;
}

/** A shape less all the cutters, mm. Rounds, errs and throws as {@link unite} does. */
export function subtract(from: Shape, cutters: readonly Shape[]): Region {
  return split(from, cutters).outside;
}

/**
 * A shape cut in two by the union of the cutters, mm. Both parts are computed for themselves, and a result is only returned
 * when their areas add up to that of the whole. Rounds, errs and throws as {@link unite} does.
 */
export function split(whole: Shape, cutters: readonly Shape[]): RegionSplit {
  return climb([whole, ...cutters], ([body, ...rest], rung, origin) => {
    const parts = splitBy(uniteAll(body, rung), uniteAll(rest.flat(), rung), rung.grid);
    return { inside: toRegion(parts.inside, origin), outside: toRegion(parts.outside, origin) };
  });
}

/** Tries one rung after another until a result passes all checks. */
function climb<T>(
  shapes: readonly Shape[],
  attempt: (pieces: readonly (readonly Piece[])[], rung: Rung, origin: Point) => T,
): T {
  const polygons = shapes.map(readShape);
  const origin = middle(polygons);
  for (const rung of LADDER) {
    const pieces = polygons.map((list) => list.map((polygon) => snapPolygon(polygon, origin, rung.grid)));
    try {
      return attempt(pieces, rung, origin);
    } catch (thrown) {
      if (!(thrown instanceof RegionError && thrown.code === 'unresolved')) throw thrown;
    }
  }
  throw unresolved();
}

function unresolved(): RegionError {
  return new RegionError(
    'unresolved',
    'These shapes could not be combined: on every grid that was tried the result failed its checks. Look for a ring that crosses itself.',
  );
}

/** Unites pieces group by group and level by level. */
function uniteAll(pieces: readonly Piece[], rung: Rung): Piece {
  let level = byPlace(pieces.filter((piece) => piece.corners > 0));
  if (level.length === 0) return emptyPiece();
  // A single piece goes through as well: that checks it.
  do {
    const next: Piece[] = [];
    for (let i = 0; i < level.length; i += rung.group)
      next.push(uniteGroup(level.slice(i, i + rung.group), rung.grid));
    level = next;
  } while (level.length > 1);
  return level[0];
}

function uniteGroup(group: readonly Piece[], grid: number): Piece {
  const [first, ...rest] = group.map((piece) => piece.shape);
  const union = called(group, grid, () => polygonClipping.union(first, ...rest));
  // It covers its largest part, and it is no larger than all of them together.
  const slack = roundingArea(group, grid);
  let largest = 0;
  let sum = 0;
  for (const piece of group) {
    largest = Math.max(largest, piece.area);
    sum += piece.area;
  }
  insist(union.area >= largest - slack && union.area <= sum + slack);
  return union;
}

function splitBy(body: Piece, cutter: Piece, grid: number): { inside: Piece; outside: Piece } {
  if (body.corners === 0 || cutter.corners === 0) return { inside: emptyPiece(), outside: body };
  const both = [body, cutter];
  const inside = called(both, grid, () => polygonClipping.intersection(body.shape, cutter.shape));
  const outside = called(both, grid, () => polygonClipping.difference(body.shape, cutter.shape));
  const slack = roundingArea(both, grid);
  insist(Math.abs(inside.area + outside.area - body.area) <= slack);
  insist(inside.area <= cutter.area + slack);
  return { inside, outside };
}

/** One call of polygon-clipping: within the budget, whatever it throws caught, and its result back on the grid and plausible. */
function called(parts: readonly Piece[], grid: number, operation: () => ClipShape): Piece {
  let corners = 0;
  let perimeter = 0;
  for (const part of parts) {
    corners += part.corners;
    perimeter += part.perimeter;
  }
  if (corners > MOST_CORNERS) {
    throw new RegionError(
      'too-many-corners',
      `These shapes have ${corners} corners together; ${MOST_CORNERS} are the limit.`,
    );
  }
  let raw: ClipShape;
  try {
    raw = operation();
  } catch {
    // Errors of its own, and RangeErrors when its recursion runs deep.
    throw unresolved();
  }
  const result = snapShape(raw, grid);
  if (result.corners === 0) return result;
  // The boundary of every union, intersection and difference is part of the boundaries of its parts. NaN fails here, too.
  insist(result.perimeter <= perimeter + 2 * grid * result.corners);
  const box = boxOf(parts);
  insist(result.minX >= box.minX - grid && result.maxX <= box.maxX + grid);
  insist(result.minY >= box.minY - grid && result.maxY <= box.maxY + grid);
  return result;
}

/** The most that rounding to the grid and dropping thin rings changes an area by: a strip along every edge. */
function roundingArea(pieces: readonly Piece[], grid: number): number {
  let area = 0;
  for (const piece of pieces) area += 2 * grid * piece.perimeter + 4 * grid * grid * piece.corners;
  return area;
}

function insist(holds: boolean): void {
  if (!holds) throw unresolved();
}

/** Neighbours together, along the longer side of the common box, so that groups melt into few corners early. */
function byPlace(pieces: readonly Piece[]): Piece[] {
  const box = boxOf(pieces);
  const alongX = box.maxX - box.minX >= box.maxY - box.minY;
  const place = (piece: Piece): number => (alongX ? piece.minX + piece.maxX : piece.minY + piece.maxY);
  return [...pieces].sort((a, b) => place(a) - place(b));
}

function boxOf(pieces: readonly Piece[]): { minX: number; minY: number; maxX: number; maxY: number } {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const piece of pieces) {
    box.minX = Math.min(box.minX, piece.minX);
    box.minY = Math.min(box.minY, piece.minY);
    box.maxX = Math.max(box.maxX, piece.maxX);
    box.maxY = Math.max(box.maxY, piece.maxY);
  }
  return box;
}
