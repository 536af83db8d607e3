import type { CornerPlan } from '../../src/delivery/corner-spare.js';
import type { PlanShape } from '../../src/delivery/plan-shape.js';

/**
 * Slow, plain twins of the corner's closed form. They share no formula with it: shapes are lists of points, walls are polygons,
 * contact is found by clipping and by distances between segments, motions by trying every heading or by flooding a grid of poses.
 */
type Point = readonly [x: number, y: number];
const FAR = 1e6;

export function rectanglePoints(
  { halfLength, halfWidth }: PlanShape,
  x: number,
  y: number,
  heading: number,
): Point[] {
  const c = Math.cos(heading);
  const s = Math.sin(heading);
  return (
    [
      [1, 1],
      [-1, 1],
      [-1, -1],
      [1, -1],
    ] as const
  ).map(([i, j]) => [x + i * halfLength * c - j * halfWidth * s, y + i * halfLength * s + j * halfWidth * c]);
}

/** The three solids of a corner as convex polygons: beyond either outer wall, and beyond the inner corner. */
export function cornerSolids({ width, widthAfter, angle }: CornerPlan): Point[][] {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const inner: Point = [(widthAfter + width * c) / s, width];
  return [
    [
      [-FAR, 0],
      [-FAR, -FAR],
      [FAR, -FAR],
      [FAR, 0],
    ],
    [
      [-FAR * c, -FAR * s],
      [FAR * c, FAR * s],
      [FAR * c - FAR * s, FAR * s + FAR * c],
      [-FAR * c - FAR * s, -FAR * s + FAR * c],
    ],
    [inner, [inner[0] + FAR, inner[1]], [inner[0] + FAR * c, inner[1] + FAR * s]],
  ];
}

/** How far apart two convex polygons are; negative by how deep they overlap along the direction in which they do least. */
export function separation(one: readonly Point[], other: readonly Point[]): number {
  let best = Number.NEGATIVE_INFINITY;
  for (const [a, b] of [
    [one, other],
    [other, one],
  ] as const) {
    a.forEach((p, i) => {
      const q = a[(i + 1) % a.length] ?? p;
      const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
      if (length === 0) return;
      for (const side of [1, -1]) {
        const nx = (side * (q[1] - p[1])) / length;
        const ny = (-side * (q[0] - p[0])) / length;
        const top = Math.max(...a.map((v) => nx * v[0] + ny * v[1]));
        const bottom = Math.min(...b.map((v) => nx * v[0] + ny * v[1]));
        best = Math.max(best, bottom - top);
      }
    });
  }
  if (best <= 0) return best;
  // Apart: the true distance, which may be from corner to corner.
  let least = Number.POSITIVE_INFINITY;
  for (const [a, b] of [
    [one, other],
    [other, one],
  ] as const) {
    for (const p of a) {
      b.forEach((q, i) => {
        least = Math.min(least, toSegment(p, q, b[(i + 1) % b.length] ?? q));
      });
    }
  }
  return least;
}

function toSegment(p: Point, a: Point, b: Point): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const along = (p[0] - a[0]) * dx + (p[1] - a[1]) * dy;
  const share = Math.min(1, Math.max(0, along / (dx * dx + dy * dy || 1)));
  return Math.hypot(p[0] - a[0] - share * dx, p[1] - a[1] - share * dy);
}

/** The least distance of a shape at a pose from the walls of a corner; negative: it runs into one. */
export function clearanceAt(
  corner: CornerPlan,
  shape: PlanShape,
  x: number,
  y: number,
  heading: number,
): number {
  const points = rectanglePoints(shape, x, y, heading);
  return Math.min(...cornerSolids(corner).map((solid) => separation(points, solid))) - shape.radius;
}

/**
 * The spare by trying `count` headings: at each the shape is pushed against both outer walls by its own points, and the passage is narrowed until the inner
 * wedge meets it; then headings are joined to their neighbours. Right to about the shape's reach times the step between headings.
 */
export function slowSpare(corner: CornerPlan, shape: PlanShape, count: number): number {
  const { width, widthAfter, angle } = corner;
  const own: number[] = [];
  const first: number[] = [];
  const second: number[] = [];
  for (let i = 0; i < count; i++) {
    // A heading square to a wall is always among them.
    const heading = (Math.PI * i) / count;
    const points = rectanglePoints(shape, 0, 0, heading);
    const normal2: Point = [Math.sin(angle), -Math.cos(angle)];
    const low1 = Math.min(...points.map((p) => p[1]));
    const low2 = Math.min(...points.map((p) => p[0] * normal2[0] + p[1] * normal2[1]));
    const y = shape.radius - low1;
    const x = (shape.radius - low2 + y * Math.cos(angle)) / Math.sin(angle);
    first.push(width - 2 * (shape.radius - low1));
    second.push(widthAfter - 2 * (shape.radius - low2));
    const at = rectanglePoints(shape, x, y, heading);
    let low = Math.max(first[i] ?? 0, second[i] ?? 0) - 1e-9;
    let high = Math.max(width, widthAfter) + 1;
    const free = (delta: number): boolean => {
      const wedge = cornerSolids({ width: width - delta, widthAfter: widthAfter - delta, angle })[2] ?? [];
      return separation(at, wedge) >= shape.radius;
    };
    for (let k = 0; k < 40; k++) {
      const middle = (low + high) / 2;
      if (free(middle)) low = middle;
      else high = middle;
    }
    own.push(low);
  }
  let low = -4 * (shape.halfLength + shape.halfWidth + shape.radius) - Math.abs(width) - Math.abs(widthAfter);
  let high = Math.max(width, widthAfter);
  for (let k = 0; k < 45; k++) {
    const middle = (low + high) / 2;
    if (joined(middle)) low = middle;
    else high = middle;
  }
  return low;

  function joined(delta: number): boolean {
    const start = own.findIndex((v) => v < delta);
    if (start < 0) return first.some((v) => v >= delta) && second.some((v) => v >= delta);
    let meetsFirst = false;
    let meetsSecond = false;
    for (let k = 1; k <= count; k++) {
      const i = (start + k) % count;
      if ((own[i] ?? 0) < delta) {
        meetsFirst = false;
        meetsSecond = false;
        continue;
      }
      meetsFirst ||= (first[i] ?? 0) >= delta - 1e-6;
      meetsSecond ||= (second[i] ?? 0) >= delta - 1e-6;
      if (meetsFirst && meetsSecond) return true;
    }
    return false;
  }
}

/**
 * Whether a rectangle gets round by steps of `step` mm, and turns that move no point of it by more than that, from one corridor to the other: a flood of a
 * grid of poses, with no theory at all. A "yes" is right for a corner wider by 2 step, a "no" for one narrower by 2 step.
 */
export function floods(corner: CornerPlan, shape: PlanShape, step: number): boolean {
  const { width, widthAfter, angle } = corner;
  const reach = Math.hypot(shape.halfLength, shape.halfWidth) + shape.radius;
  const turns = Math.ceil((Math.PI * reach) / step);
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const inner = Math.max(0, (widthAfter + width * c) / s, (width + widthAfter * c) / s);
  const far = inner + 2 * reach + 2 * step;
  const seen = new Set<number>();
  const key = (i: number, j: number, k: number): number => ((i + 2048) * 4096 + (j + 2048)) * 4096 + k;
  const free = (i: number, j: number, k: number): boolean =>
    clearanceAt(corner, shape, i * step, j * step, (k * Math.PI) / turns) >= 0;
  const stack: (readonly [number, number, number])[] = [];
  const visit = (i: number, j: number, k: number): void => {
    const along1 = i * step;
    const along2 = i * step * c + j * step * s;
    if (along1 > far + step || along2 > far + step) return;
    const kk = (k + turns) % turns;
    const id = key(i, j, kk);
    if (seen.has(id)) return;
    seen.add(id);
    if (free(i, j, kk)) stack.push([i, j, kk]);
  };
  const startAt = Math.ceil(far / step);
  for (let k = 0; k < turns; k++) {
    for (let j = 0; j * step <= width; j++) visit(startAt, j, k);
  }
  for (let pose = stack.pop(); pose !== undefined; pose = stack.pop()) {
    const [i, j, k] = pose;
    if (i * step * c + j * step * s >= inner + reach && i * step * s - j * step * c <= widthAfter)
      return true;
    visit(i + 1, j, k);
    visit(i - 1, j, k);
    visit(i, j + 1, k);
    visit(i, j - 1, k);
    visit(i, j, k + 1);
    visit(i, j, k - 1);
  }
  return false;
}
