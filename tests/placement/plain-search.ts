import type { Placement, Point, Ring, Size } from '../../src/geometry/types.js';
import type { PlacementProblem } from '../../src/placement/placement-problem.js';
import { corners, pointDistance, pointInside, segmentDistance, sides } from './plain-distance.js';

export interface PlainResult {
  readonly value: number;
  readonly upperBound: number;
  readonly boxes: number;
}

interface Box {
  readonly pose: Placement;
  readonly dx: number;
  readonly dy: number;
  readonly turn: number;
  readonly bound: number;
}

/**
 * The obvious solver: boxes of poses, bounded by nothing but how far a box can move a point of a rectangle. Shares no code with
 * src. Slow: thousands of boxes where the library needs a few hundred.
 */
export function plainSearch(problem: PlacementProblem, gap: number, maxBoxes: number): PlainResult {
  const xs = problem.outline.map(([x]) => x);
  const ys = problem.outline.map(([, y]) => y);
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  let value = 0;
  let boxes = 0;
  const waiting: Box[] = [];
  const consider = (pose: Placement, dx: number, dy: number, turn: number, above: number): void => {
    boxes++;
    const shift = Math.hypot(dx, dy);
    const { play, frame, free } = measure(problem, pose);
    if (frame + shift + swing(problem.frame, turn) < 0) return;
    if (free && play > 0 && frame >= 0) value = Math.max(value, play);
    const inner = Math.min(problem.play.length, problem.play.width) / 2;
    const disc = middleDistance(problem, pose) + shift - inner;
    const bound = Math.min(above, play + shift + swing(problem.play, turn), disc);
    if (bound > value + gap) insert(waiting, { pose, dx, dy, turn, bound });
  };
  const start = { x: (minX + maxX) / 2, y: (minY + maxY) / 2, angle: Math.PI / 2 };
  consider(start, (maxX - minX) / 2, (maxY - minY) / 2, Math.PI / 2, Number.POSITIVE_INFINITY);
  const radius = Math.hypot(problem.play.length, problem.play.width) / 2;
  for (;;) {
    const box = waiting.shift();
    if (box === undefined || box.bound <= value + gap) return { value, upperBound: value + gap, boxes };
    if (boxes > maxBoxes) return { value, upperBound: box.bound, boxes };
    const { pose, dx, dy, turn, bound } = box;
    for (const sign of [-1, 1]) {
      if (dx >= dy && dx >= radius * turn) {
        consider({ ...pose, x: pose.x + (sign * dx) / 2 }, dx / 2, dy, turn, bound);
      } else if (dy >= radius * turn) {
        consider({ ...pose, y: pose.y + (sign * dy) / 2 }, dx, dy / 2, turn, bound);
      } else {
        consider({ ...pose, angle: pose.angle + (sign * turn) / 2 }, dx, dy, turn / 2, bound);
      }
    }
  }
}

/** Keeps the list sorted by falling bound. */
function insert(waiting: Box[], box: Box): void {
  let from = 0;
  let to = waiting.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if (waiting[middle].bound >= box.bound) from = middle + 1;
    else to = middle;
  }
  waiting.splice(from, 0, box);
}

/** Furthest that a turn moves a point of the rectangle. */
function swing(size: Size, turn: number): number {
  return Math.hypot(size.length, size.width) * Math.sin(Math.min(turn, Math.PI) / 2);
}

/** Least signed separation of Q from walls and tall things, and of the frame from everything. */
function measure(problem: PlacementProblem, pose: Placement): { play: number; frame: number; free: boolean } {
  const q = corners(problem.play, pose);
  const f = corners(problem.frame, pose);
  let play = Number.POSITIVE_INFINITY;
  let frame = Number.POSITIVE_INFINITY;
  for (const ring of [problem.outline, ...problem.tall]) {
    for (const edge of sides(ring)) {
      play = Math.min(play, separation(q, edge));
      frame = Math.min(frame, separation(f, edge));
    }
  }
  for (const ring of problem.low)
    for (const edge of sides(ring)) frame = Math.min(frame, separation(f, edge));
  const middle: Point = [pose.x, pose.y];
  const inFootprint = [...problem.tall, ...problem.low].some((ring) => pointInside(ring, middle));
  return { play, frame, free: pointInside(problem.outline, middle) && !inFootprint };
}

/** Distance of a convex polygon from a segment; minus the shortest way out where they overlap (separating axes). */
function separation(polygon: Ring, [a, b]: [Point, Point]): number {
  let apart = Number.NEGATIVE_INFINITY;
  for (const [p, q] of [...sides(polygon), [a, b]]) {
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const nx = (p[1] - q[1]) / length;
    const ny = (q[0] - p[0]) / length;
    const first = shadow(polygon, nx, ny);
    const second = shadow([a, b], nx, ny);
    apart = Math.max(apart, first.from - second.to, second.from - first.to);
  }
  if (apart <= 0) return apart;
  return Math.min(...sides(polygon).map(([p, q]) => segmentDistance(a, b, p, q)));
}

/** What the points cover of the direction (nx, ny). */
function shadow(points: readonly Point[], nx: number, ny: number): { from: number; to: number } {
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  for (const [x, y] of points) {
    const at = nx * x + ny * y;
    if (at < from) from = at;
    if (at > to) to = at;
  }
  return { from, to };
}

/** Distance of the middle from the nearest wall or tall thing, negative outside free space. */
function middleDistance(problem: PlacementProblem, pose: Placement): number {
  const middle: Point = [pose.x, pose.y];
  let least = Number.POSITIVE_INFINITY;
  for (const ring of [problem.outline, ...problem.tall])
    for (const [a, b] of sides(ring)) least = Math.min(least, pointDistance(a, b, middle));
  const free =
    pointInside(problem.outline, middle) && !problem.tall.some((ring) => pointInside(ring, middle));
  return free ? least : -least;
}
