import { isOpenFloor, squareToSegment, WAY_SLACK, type WayPlan } from './free-way-plan.js';
import type { Point, Ring } from './types.js';

/** A disc counts as touching where no more than this is between, mm: the thing stands where a search put it. */
export const WAY_TOUCH = 10;

/** A straight stretch from a to b. */
export type Side = readonly [a: Point, b: Point];

/** Where a disc is to arrive. Any one of these will do; a target without any is never reached. */
export interface WayTarget {
  /**
   * Sides to touch, with the floor to the right of a -> b, as round an anticlockwise footprint: the disc stands square before the side, and
   * touches it or comes within {@link WAY_TOUCH}.
   */
  readonly sides: readonly Side[];
  /**
   * Openings to come through, from either side. The disc touches the opening where it can go through: at least its radius from both jambs.
   * An opening narrower than the disc is entered with the width it has: a disc as wide as the opening must find its middle free, and the
   * wide one touch it near enough to the middle to be that disc grown within jambs that lie as far apart as it is wide.
   */
  readonly openings: readonly Side[];
  /** Floor to be on: convex anticlockwise rings of which one is to hold the disc's centre. */
  readonly regions: readonly Ring[];
}

/** The lines on which a centre has arrived, and the borders of regions, in flat arrays; see {@link arrivalLines}. */
export type Line = readonly [ax: number, ay: number, bx: number, by: number];

/** Lines that every way to the target ends on or crosses: those of centres that touch, and the borders of the regions. */
export function arrivalLines(plan: WayPlan, target: WayTarget, width: number): Line[] {
  const h = width / 2;
  const lines: Line[] = [];
  for (const [[ax, ay], [bx, by]] of target.sides) {
    for (const off of [h, h + WAY_TOUCH]) lines.push(...moved(ax, ay, bx, by, off));
  }
  for (const [[ax, ay], [bx, by]] of target.openings) {
    const length = Math.hypot(bx - ax, by - ay);
    if (length === 0) continue;
    // Half of the stretch round the middle in which the disc may touch.
    const reach = Math.abs(h - length / 2) / length;
    const [mx, my] = [(ax + bx) / 2, (ay + by) / 2];
    const [dx, dy] = [(bx - ax) * reach, (by - ay) * reach];
    for (const way of [-1, 1]) {
      const [px, py, qx, qy] = [mx - way * dx, my - way * dy, mx + way * dx, my + way * dy];
      if (length < width) {
        const [nx, ny] = [(way * (by - ay)) / 2, (-way * (bx - ax)) / 2];
        if (!discFree(plan, mx + nx, my + ny, length / 2)) continue;
      }
      // Turned along the opening, so that a stretch of no length has a side as well.
      const [ox, oy] = [(way * (by - ay)) / length, (-way * (bx - ax)) / length];
      for (const off of [h, h + WAY_TOUCH])
        lines.push([px + off * ox, py + off * oy, qx + off * ox, qy + off * oy]);
    }
  }
  for (const ring of target.regions) {
    for (let i = 0; i < ring.length; i++) {
      const [ax, ay] = ring[i];
      const [bx, by] = ring[i + 1 === ring.length ? 0 : i + 1];
      lines.push([ax, ay, bx, by]);
    }
  }
  return lines;
}

/** The side moved to its right; nothing where it has no length. */
function moved(ax: number, ay: number, bx: number, by: number, off: number): Line[] {
  const length = Math.hypot(bx - ax, by - ay);
  if (length === 0) return [];
  const ox = ((by - ay) / length) * off;
  const oy = (-(bx - ax) / length) * off;
  return [[ax + ox, ay + oy, bx + ox, by + oy]];
}

function discFree(plan: WayPlan, x: number, y: number, radius: number): boolean {
  if (!isOpenFloor(plan, x, y)) return false;
  const least = (radius - WAY_SLACK) ** 2;
  for (let i = 0; i < plan.count; i++) {
    if (squareToSegment(x, y, plan.ax[i], plan.ay[i], plan.bx[i], plan.by[i]) < least) return false;
  }
  return true;
}

/**
 * The stretches of a line on which a disc of diameter `width` is free: [ax, ay, bx, by] in order along it, each as long as can be. The edges'
 * neighbourhoods are convex, so each takes one interval of the line.
 */
export function freeStretches(plan: WayPlan, line: Line, width: number): Line[] {
  const h = width / 2 - WAY_SLACK;
  const [px, py, qx, qy] = line;
  const length = Math.hypot(qx - px, qy - py);
  // A line of no length is one place; any direction serves it.
  const ux = length === 0 ? 1 : (qx - px) / length;
  const uy = length === 0 ? 0 : (qy - py) / length;
  const lowX = Math.min(px, qx) - h;
  const highX = Math.max(px, qx) + h;
  const lowY = Math.min(py, qy) - h;
  const highY = Math.max(py, qy) + h;
  const taken: [number, number][] = [];
  for (let i = 0; i < plan.count; i++) {
    const ax = plan.ax[i];
    const ay = plan.ay[i];
    const bx = plan.bx[i];
    const by = plan.by[i];
    if (ax >= highX && bx >= highX) continue;
    if (ax <= lowX && bx <= lowX) continue;
    if (ay >= highY && by >= highY) continue;
    if (ay <= lowY && by <= lowY) continue;
    const interval = nearInterval(px, py, ux, uy, ax, ay, bx, by, h);
    if (interval !== null && interval[1] > 0 && interval[0] < length) taken.push(interval);
  }
  taken.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const free: Line[] = [];
  let from = 0;
  const add = (to: number): void => {
    if (to < from) return;
    const t = (from + to) / 2;
    // A stretch keeps off every edge, so it is open floor as a whole or not at all.
    if (!isOpenFloor(plan, px + t * ux, py + t * uy)) return;
    free.push([px + from * ux, py + from * uy, px + to * ux, py + to * uy]);
  };
  for (const [start, end] of taken) {
    if (start > from || (start === from && from > 0)) add(start);
    if (end > from) from = end;
    if (from > length) return free;
  }
  add(length);
  return free;
}

/** Where along the line p + t u the distance to the segment from a to b is less than h; null: nowhere. */
function nearInterval(
  px: number,
  py: number,
  ux: number,
  uy: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  h: number,
): [number, number] | null {
  let low = Infinity;
  let high = -Infinity;
  // The discs round both ends,
  const alongA = (ax - px) * ux + (ay - py) * uy;
  const asideA = (ax - px) * uy - (ay - py) * ux;
  const alongB = (bx - px) * ux + (by - py) * uy;
  const asideB = (bx - px) * uy - (by - py) * ux;
  if (Math.abs(asideA) < h) {
    const half = Math.sqrt((h - asideA) * (h + asideA));
    low = alongA - half;
    high = alongA + half;
  }
  if (Math.abs(asideB) < h) {
    const half = Math.sqrt((h - asideB) * (h + asideB));
    low = Math.min(low, alongB - half);
    high = Math.max(high, alongB + half);
  }
  // and the rectangle between them: |n . (x - a)| < h and 0 <= d . (x - a) <= length.
  const length = Math.hypot(bx - ax, by - ay);
  if (length > 0) {
    const dx = (bx - ax) / length;
    const dy = (by - ay) / length;
    const start = (px - ax) * dx + (py - ay) * dy;
    const slope = ux * dx + uy * dy;
    const off = (py - ay) * dx - (px - ax) * dy;
    const offSlope = uy * dx - ux * dy;
    const [s0, s1] = between(start, slope, 0, length);
    const [o0, o1] = between(off, offSlope, -h, h);
    const from = Math.max(s0, o0);
    const to = Math.min(s1, o1);
    if (from < to) {
      low = Math.min(low, from);
      high = Math.max(high, to);
    }
  }
  return low < high ? [low, high] : null;
}

/** Where value + t slope lies between two bounds; inside out where nowhere. */
function between(value: number, slope: number, low: number, high: number): readonly [number, number] {
  if (slope === 0) return value > low && value < high ? [-Infinity, Infinity] : [Infinity, -Infinity];
  const a = (low - value) / slope;
  const b = (high - value) / slope;
  return a < b ? [a, b] : [b, a];
}
