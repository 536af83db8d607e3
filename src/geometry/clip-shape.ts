/*
 * Between the regions of the library and the shapes that polygon-clipping takes: checked at the door, moved near the
 * origin, and put on a binary grid, where sums and differences of coordinates are exact.
 */
import { checkRing, type Region, type RegionPolygon, type Shape } from './region.js';
import { boundingBox } from './ring.js';
import type { Point, Ring } from './types.js';

/** The shapes of polygon-clipping: closed rings, the outline of a polygon first. */
export type ClipRing = [number, number][];
export type ClipShape = ClipRing[][];

/** Polygons on a grid, with what the checks of a result need to know. */
export interface Piece {
  readonly shape: ClipShape;
  readonly area: number;
  readonly perimeter: number;
  /** 0: nothing is left of it on the grid. */
  readonly corners: number;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The polygons of a shape, checked at the door. */
export function readShape(shape: Shape): readonly RegionPolygon[] {
  const polygons: RegionPolygon[] = [];
  const corners: Point[] = [];
  for (const item of shape) {
    if ('outer' in item) polygons.push(item);
    else corners.push(item);
  }
  if (corners.length > 0) polygons.push({ outer: corners, holes: [] });
  for (const { outer, holes } of polygons) for (const ring of [outer, ...holes]) checkRing(ring);
  return polygons;
}

/** Whole millimetres near the middle of all corners, so that moving there and back leaves every grid in place. */
export function middle(shapes: readonly (readonly RegionPolygon[])[]): Point {
  const box = boundingBox(shapes.flat().flatMap((polygon) => polygon.outer));
  if (box.minX > box.maxX) return [0, 0];
  // Adding 0 makes 0 of -0, here and so in every coordinate that comes out.
  return [Math.round((box.minX + box.maxX) / 2) + 0, Math.round((box.minY + box.maxY) / 2) + 0];
}

/**
 * A polygon moved so that `origin` becomes (0, 0), on the grid. Only rings of fewer than three different corners are dropped:
 * one without area may also be one that crosses itself, and must not vanish unseen.
 */
export function snapPolygon({ outer, holes }: RegionPolygon, [ox, oy]: Point, grid: number): Piece {
  const snap = (ring: Ring): ClipRing =>
    snapRing(
      ring.map(([x, y]): [number, number] => [x - ox, y - oy]),
      grid,
    );
  return measure(keep([[outer, ...holes].map(snap)], (ring) => ring.length > 3));
}

/** A result back on the grid, without rings whose mean width is two steps of it or less. */
export function snapShape(shape: ClipShape, grid: number): Piece {
  const snapped = shape.map((polygon) => polygon.map((ring) => snapRing(ring, grid)));
  // The area of a thin ring is half its perimeter times its mean width.
  return measure(
    keep(snapped, (ring) => {
      const { area, perimeter } = ringSize(ring);
      return ring.length > 3 && Math.abs(area) > grid * perimeter;
    }),
  );
}

/** The shape without the rings that fail the test; a polygon goes when its outline does. */
function keep(shape: ClipShape, test: (ring: ClipRing) => boolean): ClipShape {
  return shape.filter(([outline]) => test(outline)).map((polygon) => polygon.filter(test));
}

/** The ring on the grid, closed and without repeats. */
function snapRing(ring: ClipRing, grid: number): ClipRing {
  const closed: ClipRing = [];
  for (const [x, y] of ring) {
    const sx = Math.round(x / grid) * grid;
    const sy = Math.round(y / grid) * grid;
    const last = closed.at(-1);
    if (last === undefined || last[0] !== sx || last[1] !== sy) closed.push([sx, sy]);
  }
  const first = closed.at(0);
  const last = closed.at(-1);
  if (first !== undefined && last !== undefined && (first[0] !== last[0] || first[1] !== last[1])) {
    closed.push([first[0], first[1]]);
  }
  return closed;
}

/** Signed area (taken from the first corner, for small products) and perimeter of a closed ring. */
function ringSize(closed: ClipRing): { area: number; perimeter: number } {
  const [ox, oy] = closed[0];
  let twice = 0;
  let perimeter = 0;
  for (let i = 1; i < closed.length; i++) {
    const [ax, ay] = closed[i - 1];
    const [bx, by] = closed[i];
    twice += (ax - ox) * (by - oy) - (ay - oy) * (bx - ox);
    perimeter += Math.hypot(bx - ax, by - ay);
  }
  return { area: twice / 2, perimeter };
}

function measure(shape: ClipShape): Piece {
  let area = 0;
  let perimeter = 0;
  let corners = 0;
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const polygon of shape) {
    for (const [k, ring] of polygon.entries()) {
      const size = ringSize(ring);
      area += k === 0 ? Math.abs(size.area) : -Math.abs(size.area);
      perimeter += size.perimeter;
      corners += ring.length - 1;
      for (const [x, y] of ring) {
        minX = Math.min(minX, x);
        minY = Math.min(minY, y);
        maxX = Math.max(maxX, x);
        maxY = Math.max(maxY, y);
      }
    }
  }
  return { shape, area, perimeter, corners, minX, minY, maxX, maxY };
}

/** Nothing, as a piece. */
export function emptyPiece(): Piece {
  return measure([]);
}

/** Back to the library's own: open rings, outlines anticlockwise, holes clockwise, moved back by `origin`. */
export function toRegion(piece: Piece, origin: Point): Region {
  return piece.shape.map(([outline, ...holes]) => ({
    outer: openRing(outline, 1, origin),
    holes: holes.map((hole) => openRing(hole, -1, origin)),
  }));
}

function openRing(closed: ClipRing, direction: 1 | -1, [ox, oy]: Point): Ring {
  const ring = closed.slice(0, -1).map(([x, y]): Point => [x + ox, y + oy]);
  return ringSize(closed).area * direction < 0 ? ring.reverse() : ring;
}
