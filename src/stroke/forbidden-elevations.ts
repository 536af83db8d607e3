import { elevationOver } from './rail-elevation.js';

/**
 * Which elevations one thing in the room forbids to one shot. Symbols as in the model: ell = R + s + L is how far the cue's
 * axis reaches, a the margin, b the tip offset; heights here are over the ball's centre. The axis at plan distance t is
 * b / cos(theta) + t tan(theta) high, and reaches to t = ell cos(theta).
 *
 * Elevations run over [0, steepest], radians, steepest = theta_max < pi / 2; a, b >= 0. Bounds hold to rounding: the closed forms to
 * some 1e-15, roots that are searched for to {@link ROOT_GAP}, on the cautious side.
 */
export interface Reach {
  readonly ell: number;
  readonly margin: number;
  readonly tipOffset: number;
  readonly steepest: number;
}

/** Bound of the search for a root: far below what an elevation is ever told to, radians. */
const ROOT_GAP = 1e-13;

/**
 * The open interval (lo, hi) of elevations at which the cue meets a prism whose grown footprint the ray crosses on [t0, t1], with
 * its underside `from` and its top `to` over the ball's centre (`Infinity` allowed): lo goes to `out[0]`, hi to `out[1]`. Where
 * nothing below hi is free, lo is -1. False where nothing is forbidden. hi may exceed the steepest elevation.
 *
 * The shot is clear where it stops short (theta >= hi, or ell <= t0), passes over (theta >= hi) or under (theta <= lo). hi never
 * grows with t0, lo never grows with t1; both hold for bounds over boxes of shots.
 */
export function forbiddenByPrism(
  reach: Reach,
  t0: number,
  t1: number,
  from: number,
  to: number,
  out: Float64Array,
): boolean {
  if (t0 >= reach.ell) return false;
  const hi = Math.min(stopsShortFrom(reach.ell, t0), passesOverFrom(reach, t0, to));
  if (hi <= 0) return false;
  const lo = passesUnderUpTo(reach, t1, from);
  if (lo >= hi) return false;
  out[0] = lo;
  out[1] = hi;
  return true;
}

/** Least elevation at which a cue of reach ell > t0 stops short of plan distance t0: ell cos(theta) <= t0. Falls as t0 grows. */
export function stopsShortFrom(ell: number, t0: number): number {
  return Math.acos(t0 / ell);
}

/**
 * Least elevation from which the cue passes over a top `to` high that begins at t0, `Infinity` where it does not: there
 *
 *     t0 tan(theta) + b / cos(theta) - a / cos(theta) >= to, so elevationOver(t0, to, a - b) <= theta
 *
 * Never grows with t0 as long as it is positive; it may come out negative, and is then so for every t0.
 *
 * The condition fails again beyond an upper root only if hypot(t0, to) < (a - b) / cos(steepest); then passing over is
 * taken to be impossible, which errs on the cautious side, for things at ball height within a few centimetres of the ball.
 */
export function passesOverFrom(reach: Reach, t0: number, to: number): number {
  if (to === Infinity) return Infinity;
  const gap = reach.margin - reach.tipOffset;
  const c = Math.cos(reach.steepest);
  if (gap > 0 && (t0 * t0 + to * to) * c * c < gap * gap) return Infinity;
  return elevationOver(t0, to, gap);
}

/**
 * Steepest elevation at which the cue passes under an underside `from` high that ends at t1, -1 where it does not at any:
 *
 *     (a + b) / cos(theta) + min(t1, ell cos(theta)) tan(theta) <= from
 *
 * Both branches grow with theta, so the better of the two holds: up to elevationOver(t1, from, -(a + b)) where the underside
 * ends, or as long as the butt's end stays below it. May exceed the steepest elevation. Never grows with t1.
 */
export function passesUnderUpTo(reach: Reach, t1: number, from: number): number {
  const gap = reach.margin + reach.tipOffset;
  if (from < gap) return -1;
  return Math.max(elevationOver(t1, from, -gap), staysBelowUpTo(reach, from, 0));
}

/**
 * Steepest elevation at which the whole cue stays `margin` below a ceiling face that is `height` over the ball's centre at the
 * ball and rises by `slope` per mm along the shot; -1 where none does. At the butt's end and at the ball's end it asks for
 *
 *     (a + b) / cos(theta) + ell sin(theta) - slope ell cos(theta) <= height,   (a + b) / cos(theta) <= height
 *
 * Above that elevation everything counts as forbidden. Never falls with height or slope.
 */
export function belowCeilingUpTo(reach: Reach, height: number, slope: number): number {
  const gap = reach.margin + reach.tipOffset;
  if (height < gap) return -1;
  const nearEnd = gap > 0 ? Math.acos(gap / height) : Math.PI / 2;
  const buttEnd = staysBelowUpTo(reach, height, slope);
  return Math.min(nearEnd, buttEnd);
}

/**
 * Steepest elevation up to which the butt's end stays `margin` below a face `height` over the ball's centre with slope
 * `slope`: the first root of
 *
 *     g(theta) = (a + b) / cos(theta) + ell sin(theta) - slope ell cos(theta) = height
 *
 * or pi / 2 where g stays under `height` up to the steepest elevation; -1 where it starts over it. g grows as long as
 * tan(theta) < -1 / slope, or always where slope >= 0. Beyond that (a face that falls more steeply than the cue's end could
 * follow) it may fall again; then whatever is not certain is counted as forbidden.
 */
function staysBelowUpTo(reach: Reach, height: number, slope: number): number {
  const { ell, steepest } = reach;
  const gap = reach.margin + reach.tipOffset;
  if (gap - slope * ell > height) return -1;
  const peak = slope < 0 ? Math.atan(-1 / slope) : Math.PI / 2;
  const end = Math.min(steepest, peak);
  const most = gap / Math.cos(end) + ell * Math.sin(end) - slope * ell * Math.cos(end);
  if (most > height) return rootBelow(gap, ell, slope, height, end);
  if (end === steepest) return Math.PI / 2;
  const bound = gap / Math.cos(steepest) + ell * Math.hypot(1, slope);
  return bound <= height ? Math.PI / 2 : end;
}

/** Newton's steps are left for halving after this many; they take five or six. */
const NEWTON_STEPS = 8;

/**
 * The root of g = height in [0, end], where g grows from g(0) <= height to g(end) > height, from below: Newton's steps inside a
 * shrinking bracket, each aimed a little past the root so that the bracket closes from both sides.
 */
function rootBelow(gap: number, ell: number, slope: number, height: number, end: number): number {
  let below = 0;
  let above = end;
  let theta = Math.min(end, Math.asin(Math.min(1, (height - gap) / ell)));
  for (let step = 1; ; step++) {
    const c = Math.cos(theta);
    const s = Math.sin(theta);
    const excess = gap / c + ell * (s - slope * c) - height;
    if (excess > 0) above = theta;
    else below = theta;
    if (above - below <= ROOT_GAP) return below;
    theta -= excess / ((gap * s) / (c * c) + ell * (c + slope * s));
    theta += excess > 0 ? -ROOT_GAP / 4 : ROOT_GAP / 4;
    if (step > NEWTON_STEPS || !(theta > below && theta < above)) theta = (below + above) / 2;
  }
}
