import type { EdgeArrays } from './edge-arrays.js';
import type { TurnedRectangle } from './rectangle-distance.js';
import type { Point } from './types.js';

/**
 * The two ends of a shortest line between a rectangle and edge `e`: first on the rectangle, then on the edge. Where several are
 * equally short (edge along a side) the one about the middle of what faces. Null where they overlap or touch.
 */
export function rectangleWitness(
  rectangle: TurnedRectangle,
  edges: EdgeArrays,
  e: number,
): readonly [Point, Point] | null {
  const { x, y, cos, sin, halfLength, halfWidth } = rectangle;
  const local = (px: number, py: number): Point => [
    (px - x) * cos + (py - y) * sin,
    (py - y) * cos - (px - x) * sin,
  ];
  const plan = ([u, v]: Point): Point => [x + u * cos - v * sin, y + u * sin + v * cos];
  const a = local(edges.ax[e], edges.ay[e]);
  const b = local(edges.bx[e], edges.by[e]);
  const length = edges.length[e];
  const tx = (b[0] - a[0]) / length;
  const ty = (b[1] - a[1]) / length;

  const pairs: { readonly on: Point; readonly off: Point; readonly distance: number }[] = [];
  const add = (on: Point, off: Point): void => {
    pairs.push({ on, off, distance: Math.hypot(on[0] - off[0], on[1] - off[1]) });
  };
  for (const end of [a, b]) add(clamp(end, halfLength, halfWidth), end);
  for (const u of [-halfLength, halfLength]) {
    for (const v of [-halfWidth, halfWidth]) {
      const at = Math.max(0, Math.min(length, (u - a[0]) * tx + (v - a[1]) * ty));
      add([u, v], [a[0] + at * tx, a[1] + at * ty]);
    }
  }
  const least = pairs.reduce((d, pair) => Math.min(d, pair.distance), Number.POSITIVE_INFINITY);
  if (!(least > 0) || meets(a, b, halfLength, halfWidth)) return null;
  const nearest = pairs.filter((pair) => pair.distance <= least + EQUAL);
  const mean = (pick: (pair: { readonly on: Point; readonly off: Point }) => number): number =>
    nearest.reduce((sum, pair) => sum + pick(pair), 0) / nearest.length;
  // The shortest vector between two convex sets is unique: equally short pairs are shifts of one another, and so is their mean.
  return [
    plan([mean((p) => p.on[0]), mean((p) => p.on[1])]),
    plan([mean((p) => p.off[0]), mean((p) => p.off[1])]),
  ];
}

/** Distances within this (mm) count as equal. */
const EQUAL = 1e-6;

function clamp([u, v]: Point, halfLength: number, halfWidth: number): Point {
  return [Math.max(-halfLength, Math.min(halfLength, u)), Math.max(-halfWidth, Math.min(halfWidth, v))];
}

/** Does the segment meet the rectangle about the origin? */
function meets(a: Point, b: Point, halfLength: number, halfWidth: number): boolean {
  let from = 0;
  let to = 1;
  for (const [start, step, half] of [
    [a[0], b[0] - a[0], halfLength],
    [a[1], b[1] - a[1], halfWidth],
  ]) {
    if (step === 0) {
      if (Math.abs(start) > half) return false;
      continue;
    }
    const first = (-half - start) / step;
    const second = (half - start) / step;
    from = Math.max(from, Math.min(first, second));
    to = Math.min(to, Math.max(first, second));
  }
  return from <= to;
}
