import type { Carried } from './carried.js';
import { type CornerPlan, cornerSpare } from './corner-spare.js';
import { type HoldFamily, holdFamilies } from './holds.js';
import type { StairTurn } from './landing-space.js';
import { sectionBound } from './stair-bounds.js';
import { nosingDip, slopeAgainst } from './stair-dip.js';

/** Tilts are looked at in steps of about this, radians. */
const STEP = Math.PI / 360;
/** mm: below this nobody asks by how much more is missing. */
const LEAST = -3000;

/** The right-angled corners through which everything must go in plan (see planSpare). */
function cornersOf({ kind, width, widthAfter, depth, breadth }: StairTurn): CornerPlan[] {
  const corner = (first: number, after: number): CornerPlan => ({
    width: first,
    widthAfter: after,
    angle: Math.PI / 2,
  });
  if (kind === 'half-landing') return [corner(width, depth), corner(widthAfter, depth)];
  if (breadth === width || depth === widthAfter) return [corner(width, widthAfter)];
  return [corner(width, depth), corner(breadth, widthAfter)];
}

/** Most that a shape leaves spare in those corners. */
function cornersAtMost(turn: StairTurn, halfLength: number, halfWidth: number, radius: number): number {
  let most = Number.POSITIVE_INFINITY;
  for (const corner of cornersOf(turn)) {
    most = Math.min(most, cornerSpare(corner, { halfLength, halfWidth, radius }).atMost);
  }
  return most;
}

/**
 * No way at one tilt has more spare than this. On either flight the box needs, heading as it likes, at least its width square to some slope no steeper
 * than the flight's, between a floor up to a step below the line of the nosings and the ceiling; of the tilts at which it
 * has that, the one that covers the least in plan must still go through the corners. `known`: a spare that a way is known to have; the bound is
 * not sought below it.
 */
export function heldTurnBound(turn: StairTurn, box: Carried, known: number = LEAST): number {
  let most = known;
  for (const family of holdFamilies(box)) most = Math.max(most, familyBound(turn, family, most));
  return most;
}

function familyBound(turn: StairTurn, family: HoldFamily, known: number): number {
  const { across } = family;
  const cells = tiltCells(turn, family).filter(({ height }) => height > known);
  // From the most height to the least; the least plan length of those so far.
  cells.sort((p, q) => q.height - p.height);
  let shortest = Number.POSITIVE_INFINITY;
  for (const cell of cells) {
    shortest = Math.min(shortest, cell.length);
    cell.length = shortest;
  }
  const corner = (i: number): number => cornersAtMost(turn, cells[i].length / 2, across / 2, 0);
  // With the first i + 1 cells: no more than max(height of the next one, what their least length leaves).
  let lo = 0;
  let hi = cells.length - 1;
  if (hi < 0) return known;
  let bound = Math.min(cells[0].height, Math.max(known, corner(hi)));
  if (bound <= known) return known;
  while (lo < hi) {
    const mid = (lo + hi) >> 1;
    const inPlan = corner(mid);
    bound = Math.min(bound, Math.max(cells[mid + 1].height, inPlan));
    if (cells[mid + 1].height > inPlan) lo = mid + 1;
    else hi = mid;
  }
  return bound;
}

/**
 * No way at one tilt has more spare than this, nor is it sought below `level`: as heldTurnBound, but closer. Wholly on the narrower flight the
 * box has one heading against it, at which it must have room between the walls and, corners dipping in between the nosings no farther
 * than they can in any upright section along the heading, under the ceiling as well.
 */
export function heldTurnBoundNear(turn: StairTurn, box: Carried, level: number): number {
  let most = level;
  for (const family of holdFamilies(box)) {
    const spans = tiltCells(turn, family).filter(
      (span) => span.height > level && standsOnFlight(turn, family, span, level),
    );
    if (spans.length === 0) continue;
    const shortest = spans.reduce((least, { length }) => Math.min(least, length), Number.POSITIVE_INFINITY);
    most = Math.max(most, cornersAtMost(turn, shortest / 2, family.across / 2, 0));
  }
  return most;
}

/** Headings are told apart down to this, radians. */
const FINEST = Math.PI / 720;

/** Whether some tilt of the span may have room for `level` at some heading against the flight (0: straight up, pi: straight down). */
function standsOnFlight(turn: StairTurn, family: HoldFamily, span: TiltSpan, level: number): boolean {
  const { pitch, rise, headroom } = turn;
  const { along, across, up } = family;
  const width = Math.min(turn.width, turn.widthAfter);
  const steepest = Math.tan(pitch);
  const s = Math.sin(span.tilt);
  const c = Math.cos(span.tilt);
  const offTilt = ((along + up) / Math.cos(pitch)) * span.half;
  const stands = (heading: number, half: number): boolean => {
    const sin = Math.sin(heading);
    const cos = Math.abs(Math.cos(heading));
    // Each measure at the middle, less all that it can change within the part.
    const between = width - span.length * sin - across * cos + (along + up + across) * half;
    if (between < level) return false;
    const t = steepest * Math.cos(heading);
    const needed = along * Math.abs(s - t * c) + up * Math.abs(c + t * s) + across * steepest * sin;
    const off = offTilt + (along + up + across) * steepest * half;
    if (headroom + rise - needed + off < level) return false;
    const slope = Math.atan(t);
    const turned = steepest * half;
    const dip = dipAround(family, rise, span.tilt, slope, span.half, turned);
    if (headroom + dip - needed + off < level) return false;
    if (half <= FINEST) return true;
    return stands(heading - half / 2, half / 2) || stands(heading + half / 2, half / 2);
  };
  return stands(Math.PI / 4, Math.PI / 4) || stands((3 * Math.PI) / 4, Math.PI / 4);
}

/** nosingDip in an upright section in which the nosings' line slopes by `slope` give or take `turned`. */
function dipAround(
  { along, up }: HoldFamily,
  rise: number,
  tilt: number,
  slope: number,
  halfTilt: number,
  turned: number,
): number {
  const least = Math.abs(slope) - turned;
  if (least < 0.02) return rise;
  const { from, to } = slopeAgainst(tilt, slope, halfTilt + turned);
  const dip = nosingDip(along, up, least, rise, from, to);
  return Math.min(rise, (dip * Math.cos(least)) / Math.cos(least + 2 * turned));
}

interface TiltSpan {
  readonly tilt: number;
  readonly half: number;
  /** No tilt of the span has more height left over a flight. */
  readonly height: number;
  /** None is shorter in plan. */
  length: number;
}

function tiltCells({ pitch, headroom, rise }: StairTurn, { along, up, tilts }: HoldFamily): TiltSpan[] {
  const plan = (tilt: number): number => along * Math.cos(tilt) + up * Math.sin(tilt);
  const steep = (along + up) / Math.cos(pitch);
  const spans: TiltSpan[] = [];
  for (const [from, to] of tilts) {
    const count = Math.max(1, Math.ceil((to - from) / STEP));
    const half = (to - from) / count / 2;
    for (let i = 0; i < count; i++) {
      const mid = from + (2 * i + 1) * half;
      const needed = leastHeight(along, up, pitch, mid) - steep * half;
      spans.push({
        tilt: mid,
        half,
        height: headroom + rise - needed,
        // P is concave in the tilt.
        length: Math.min(plan(mid - half), plan(mid + half)),
      });
    }
  }
  return spans;
}

/**
 * Least upright extent over a slope, whatever the heading: along |sin o - T cos o| + up |cos o + T sin o| with T = tan pitch cos(heading), piecewise linear in T.
 * What the edge across adds is left out.
 */
function leastHeight(along: number, up: number, pitch: number, tilt: number): number {
  const steepest = Math.tan(pitch);
  const s = Math.sin(tilt);
  const c = Math.cos(tilt);
  const height = (t: number): number => along * Math.abs(s - t * c) + up * Math.abs(c + t * s);
  let least = Math.min(height(steepest), height(-steepest));
  if (s <= steepest * c) least = Math.min(least, height(s / c));
  if (c <= steepest * s) least = Math.min(least, height(-c / s));
  return least;
}

/**
 * No motion whatever has more spare than this. The box holds a capsule as thick as itself; over the turn its axis, of length l - h, cannot rise
 * by more than x tan pitch + climb + headroom - h + rise over x mm of plan, so in plan it always covers a segment of at least
 * Lc, where x = Lc makes that the length. What stops a stadium of that length in plan stops the box.
 */
export function turnBound(turn: StairTurn, { l, w, h }: Carried): number {
  const { pitch, headroom, rise, climb } = turn;
  const narrowest = Math.min(turn.width, turn.widthAfter);
  const ball = Math.min(narrowest - h, headroom + rise - h / Math.cos(pitch), turn.depth - h);
  const bound = Math.min(ball, sectionBound(narrowest, headroom + rise, pitch, w, h));
  const needed = (delta: number): number => {
    const gap = headroom - delta - h + rise + climb;
    return cornersAtMost(turn, leastAxis(l - h, gap, Math.tan(pitch)) / 2, 0, h / 2);
  };
  // Less headroom makes the segment longer: for every delta above `level` it is no shorter than at `level`.
  let level = LEAST;
  let most = Math.min(bound, Math.max(level, needed(level)));
  for (let i = 0; i < 6 && most - level > 1; i++) {
    const mid = (level + most) / 2;
    const next = needed(mid);
    if (next > mid) level = mid;
    most = Math.min(most, Math.max(mid, next));
  }
  return most;
}

/** x >= 0 with x^2 + (x slope + gap)^2 = length^2; 0 where the axis could stand upright. */
export function leastAxis(length: number, gap: number, slope: number): number {
  if (length <= 0 || gap >= length) return 0;
  const a = 1 + slope * slope;
  const b = slope * gap;
  return Math.max(0, (-b + Math.sqrt(b * b - a * (gap * gap - length * length))) / a);
}
