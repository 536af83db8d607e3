import type { FurnishingSpec } from '../equipment/furnishing-types.js';
import type { Placement, Ring } from '../geometry/types.js';
import { TOUCH_SLACK } from './layout-rules-overlap.js';

/** Farthest that two tries along a line lie apart, mm: a gap that is narrower may be missed. */
const TRY_EVERY = 120;
/** Positions closer than this are one, mm. */
const SAME = 15;
const HALVINGS = 16;

/** A line that a piece may stand along: from `at` in the direction `angle`, the piece to its left. */
export interface StandLine {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  readonly length: number;
}

/** The sides of a segment as a line to stand along. */
export function standLine([[ax, ay], [bx, by]]: Ring): StandLine {
  return {
    x: ax,
    y: ay,
    angle: Math.atan2(by - ay, bx - ax),
    length: Math.sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay)),
  };
}

/** How a piece stands along a line: which side of it (as `SIDES` has them), and how far that side lies off the line, mm. */
export interface StandWay {
  readonly side: number;
  readonly off: number;
}

/**
 * Poses of a piece along a line at which `fits` holds: both ends of every free stretch, its middle, and steps from both ends. The list is
 * the mirror image of itself where the line, the piece and `fits` are.
 *
 * @param step Positions inside a free stretch lie this far apart, counted from both of its ends, mm.
 * @param beyond How far the piece may reach over the ends of the line, mm.
 */
export function posesAlong(
  line: StandLine,
  spec: FurnishingSpec,
  { side, off }: StandWay,
  fits: (pose: Placement) => boolean,
  step: number,
  beyond = 0,
): readonly Placement[] {
  const upright = side % 2 === 0;
  const half = (upright ? spec.length : spec.width) / 2;
  const depth = off + (upright ? spec.width : spec.length) / 2;
  const cos = Math.cos(line.angle);
  const sin = Math.sin(line.angle);
  const at = (s: number): Placement => ({
    x: line.x + s * cos - depth * sin,
    y: line.y + s * sin + depth * cos,
    angle: line.angle - (side * Math.PI) / 2,
  });
  const free = (s: number): boolean => fits(at(s));
  const from = half - beyond;
  const to = line.length - half + beyond;
  if (to < from - TOUCH_SLACK) return [];
  const positions: number[] = [];
  for (const [lo, hi] of freeStretches(from, Math.max(from, to), free)) addPositions(positions, lo, hi, step);
  return positions.map(at);
}

/** Stretches of [from, to] at whose tries `free` holds, with their ends found by halving, from inside. */
function freeStretches(
  from: number,
  to: number,
  free: (s: number) => boolean,
): readonly (readonly [number, number])[] {
  const count = Math.max(2, Math.ceil((to - from) / TRY_EVERY));
  const tries = Array.from({ length: count + 1 }, (_, k) => from + ((to - from) * k) / count);
  const stretches: [number, number][] = [];
  let lo: number | null = null;
  let before = false;
  tries.forEach((s, k) => {
    const now = free(s);
    if (now && !before) lo = k === 0 ? s : endOf(s, tries[k - 1], free);
    if (!now && before && lo !== null) {
      stretches.push([lo, endOf(tries[k - 1], s, free)]);
      lo = null;
    }
    before = now;
  });
  if (before && lo !== null) stretches.push([lo, to]);
  return stretches;
}

/** The end of a free stretch between a free place and one that is not; short of it by what touching forgives, if that is free. */
function endOf(inside: number, outside: number, free: (s: number) => boolean): number {
  let good = inside;
  let bad = outside;
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (good + bad) / 2;
    if (free(middle)) good = middle;
    else bad = middle;
  }
  const back = good + Math.sign(inside - outside) * TOUCH_SLACK;
  return free(back) ? back : good;
}

function addPositions(positions: number[], lo: number, hi: number, step: number): void {
  const add = (s: number): void => {
    if (positions.every((p) => Math.abs(p - s) > SAME)) positions.push(s);
  };
  add(lo);
  add(hi);
  add((lo + hi) / 2);
  for (let s = step; 2 * s < hi - lo; s += step) {
    add(lo + s);
    add(hi - s);
  }
}
