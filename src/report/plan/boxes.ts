import type { PaperPoint } from './svg.js';

/** A rectangle on paper, mm: middle, sides, and the clockwise angle of its first side from the x axis (y down), radians. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly angle: number;
}

/** An upright rectangle by its upper left and lower right corners. */
export interface Area {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export type Segment = readonly [from: PaperPoint, to: PaperPoint];

/** The corners in order. */
export function cornersOf({ x, y, width, height, angle }: Box): readonly PaperPoint[] {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([i, j]): PaperPoint => {
    const dx = (i * width) / 2;
    const dy = (j * height) / 2;
    return [x + dx * cos - dy * sin, y + dx * sin + dy * cos];
  });
}

/** Whether a box lies in an area, edges included. */
export function lies(box: Box, { left, top, right, bottom }: Area): boolean {
  return cornersOf(box).every(
    ([x, y]) => x >= left - TOUCH && x <= right + TOUCH && y >= top - TOUCH && y <= bottom + TOUCH,
  );
}

/** Whether two boxes have more than a touch in common: separating axes. */
export function overlap(a: Box, b: Box): boolean {
  const far = Math.hypot(a.width, a.height) + Math.hypot(b.width, b.height);
  if (2 * Math.hypot(a.x - b.x, a.y - b.y) >= far) return false;
  return !separated(a, cornersOf(b)) && !separated(b, cornersOf(a));
}

/** Length of the part of a segment that lies in a box, mm. */
export function lengthInside({ x, y, width, height, angle }: Box, [from, to]: Segment): number {
  const far = (width + height) / 2;
  if (Math.min(from[0], to[0]) - x > far || x - Math.max(from[0], to[0]) > far) return 0;
  if (Math.min(from[1], to[1]) - y > far || y - Math.max(from[1], to[1]) > far) return 0;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const ax = (from[0] - x) * cos + (from[1] - y) * sin;
  const ay = (from[1] - y) * cos - (from[0] - x) * sin;
  const dx = (to[0] - from[0]) * cos + (to[1] - from[1]) * sin;
  const dy = (to[1] - from[1]) * cos - (to[0] - from[0]) * sin;
  let low = 0;
  let high = 1;
  for (const [start, step, half] of [
    [ax, dx, width / 2],
    [ay, dy, height / 2],
  ]) {
    if (step === 0) {
      if (Math.abs(start) >= half) return 0;
      continue;
    }
    const one = (-half - start) / step;
    const other = (half - start) / step;
    low = Math.max(low, Math.min(one, other));
    high = Math.min(high, Math.max(one, other));
  }
  return high > low ? (high - low) * Math.hypot(dx, dy) : 0;
}

/** mm; far less than a printer shows. */
const TOUCH = 1e-6;

function separated({ x, y, width, height, angle }: Box, corners: readonly PaperPoint[]): boolean {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const along = corners.map(([cx, cy]) => (cx - x) * cos + (cy - y) * sin);
  const across = corners.map(([cx, cy]) => (cy - y) * cos - (cx - x) * sin);
  const apart = (values: readonly number[], half: number): boolean =>
    Math.min(...values) >= half - TOUCH || Math.max(...values) <= TOUCH - half;
  return apart(along, width / 2) || apart(across, height / 2);
}
