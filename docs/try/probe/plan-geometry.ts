/**
 * Where things lie: between the pixels of the plan, the room (mm, y up) and the table's own frame (mm from the middle of the field, x
 * along the table). Nothing here knows the library or the page.
 */

export type Point = readonly [x: number, y: number];

/** Where the table stands: mm, and degrees anticlockwise. */
export interface TablePose {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
}

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

export function toRadians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** From the table's frame into the room. */
export function fieldToRoom({ x, y, turn }: TablePose, [u, v]: Point): Point {
  const cos = Math.cos(toRadians(turn));
  const sin = Math.sin(toRadians(turn));
  return [x + cos * u - sin * v, y + sin * u + cos * v];
}

export function roomToField({ x, y, turn }: TablePose, [px, py]: Point): Point {
  const cos = Math.cos(toRadians(turn));
  const sin = Math.sin(toRadians(turn));
  const dx = px - x;
  const dy = py - y;
  return [cos * dx + sin * dy, cos * dy - sin * dx];
}

/** Corners of a rectangle of half sides (halfX, halfY) around the middle of the table, in the room, anticlockwise. */
export function rectangleAt(pose: TablePose, halfX: number, halfY: number): readonly Point[] {
  const corners: readonly Point[] = [
    [-halfX, -halfY],
    [halfX, -halfY],
    [halfX, halfY],
    [-halfX, halfY],
  ];
  return corners.map((corner) => fieldToRoom(pose, corner));
}

export function boxAround(points: readonly Point[]): Box {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}

export function grownBox({ left, right, low, high }: Box, by: number): Box {
  return { left: left - by, right: right + by, low: low - by, high: high + by };
}

/** The part of the room that the plan shows: all of it with its walls, but no farther from the table than `reach`. */
export function shownBox(
  outline: readonly Point[],
  table: readonly Point[],
  reach: number,
  wall: number,
): Box {
  const room = grownBox(boxAround(outline), wall);
  const near = grownBox(boxAround(table), reach);
  return {
    left: Math.max(room.left, near.left),
    right: Math.min(room.right, near.right),
    low: Math.max(room.low, near.low),
    high: Math.min(room.high, near.high),
  };
}

/** The plan on the screen: one scale, y turned over, the origin in the upper left corner. */
export interface PlanView {
  readonly width: number;
  readonly height: number;
  /** Pixels a millimetre. */
  readonly scale: number;
  toPixel(point: Point): Point;
  toRoom(pixel: Point): Point;
}

/** A view of `box`, `width` pixels wide unless it would be higher than `mostHeight`; the box is in its middle. */
export function planView(box: Box, width: number, mostHeight: number): PlanView {
  const across = Math.max(1, box.right - box.left);
  const up = Math.max(1, box.high - box.low);
  const scale = Math.min(width / across, mostHeight / up);
  const height = up * scale;
  const left = (width - across * scale) / 2;
  return {
    width,
    height,
    scale,
    toPixel: ([x, y]) => [left + (x - box.left) * scale, (box.high - y) * scale],
    toRoom: ([x, y]) => [box.left + (x - left) / scale, box.high - y / scale],
  };
}

/** Distance along the ray from `from` by the unit vector to its first crossing of the segment a-b; null where it passes. */
export function rayToSegment(from: Point, [ux, uy]: Point, a: Point, b: Point): number | null {
  const ex = b[0] - a[0];
  const ey = b[1] - a[1];
  const across = ux * ey - uy * ex;
  if (across === 0) return null;
  const dx = a[0] - from[0];
  const dy = a[1] - from[1];
  const along = (dx * ey - dy * ex) / across;
  const share = (dx * uy - dy * ux) / across;
  return along >= 0 && share >= 0 && share <= 1 ? along : null;
}

/** Where a ray crosses the edges of a ring: distance and the index of the edge, the nearest first. */
export function crossings(
  from: Point,
  direction: Point,
  ring: readonly Point[],
): readonly { readonly at: number; readonly edge: number }[] {
  const found: { at: number; edge: number }[] = [];
  ring.forEach((corner, edge) => {
    const at = rayToSegment(from, direction, corner, ring[(edge + 1) % ring.length] ?? corner);
    if (at !== null) found.push({ at, edge });
  });
  return found.sort((p, q) => p.at - q.at);
}
