import type { HalfSpace } from './solids-convex.js';

/** x0 <= x <= x1, y0 <= y <= y1 in plan, mm; endless sides are infinite. */
export interface PlanRect {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

/** The column over a rectangle. */
export function column({ x0, x1, y0, y1 }: PlanRect): HalfSpace[] {
  return [
    [-1, 0, 0, -x0],
    [1, 0, 0, x1],
    [0, -1, 0, -y0],
    [0, 1, 0, y1],
  ];
}

/** Rectangles, each as large as can be, that together cover all of the plane that the open ones leave. Open ones with a negative side are none. */
export function coverAround(open: readonly PlanRect[]): PlanRect[] {
  const real = open.filter(({ x0, x1, y0, y1 }) => x0 < x1 && y0 < y1);
  const xs = breaks(real.flatMap(({ x0, x1 }) => [x0, x1]));
  const ys = breaks(real.flatMap(({ y0, y1 }) => [y0, y1]));
  const free = (cell: PlanRect) =>
    !real.some((r) => r.x0 < cell.x1 && cell.x0 < r.x1 && r.y0 < cell.y1 && cell.y0 < r.y1);
  const all = strips(xs).flatMap(([x0, x1]) => strips(ys).map(([y0, y1]) => ({ x0, x1, y0, y1 })));
  const closed = all.filter(free);
  return closed.filter(
    (a) => !closed.some((b) => b !== a && b.x0 <= a.x0 && a.x1 <= b.x1 && b.y0 <= a.y0 && a.y1 <= b.y1),
  );
}

function breaks(values: readonly number[]): number[] {
  return [...new Set([-Infinity, ...values, Infinity])].sort((a, b) => a - b);
}

/** Every stretch between two of the breaks. */
function strips(values: readonly number[]): [number, number][] {
  return values.flatMap((from, i) => values.slice(i + 1).map((to): [number, number] => [from, to]));
}
