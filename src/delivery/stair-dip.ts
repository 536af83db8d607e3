/**
 * How far, upright, a rectangle may come below the line of the nosings without hitting one of them, at every slope against that line
 * between `from` and `to` (radians, 0 <= from <= to <= pi/2): an upper bound.
 *
 * Only a corner can dip in between two nosings, which are D = rise / sin pitch apart along the line. At height t over its lowest corner the
 * rectangle is min(t cot e, along cos e) + min(t tan e, up sin e) wide, up to its next corner; where that is wider than D while the corner
 * is t deep, one nosing is inside. Nothing comes deeper than a whole step, rise cos pitch square to the line.
 */
export function nosingDip(
  along: number,
  up: number,
  pitch: number,
  rise: number,
  from: number,
  to: number,
): number {
  if (rise <= 0) return 0;
  const spacing = rise / Math.sin(pitch);
  const whole = rise * Math.cos(pitch);
  // Over the range of slopes each share of the width is at least this much.
  const cot = to >= Math.PI / 2 ? 0 : 1 / Math.tan(to);
  const tan = Math.tan(from);
  const lastAlong = along * Math.cos(to);
  const lastUp = up * Math.sin(from);
  // Up to the higher of its two next corners the width only grows.
  const known = Math.max(along * Math.sin(from), up * Math.cos(to));
  const width = (t: number): number =>
    Math.min(cot > 1e15 ? lastAlong : t * cot, lastAlong) + Math.min(t * tan, lastUp);
  const deepest = Math.min(whole, known);
  if (width(deepest) <= spacing) return rise;
  // Concave and growing: a chord from either side narrows it down.
  let lo = 0;
  let hi = deepest;
  for (let i = 0; i < 40 && hi - lo > 1e-3; i++) {
    const mid = (lo + hi) / 2;
    if (width(mid) > spacing) hi = mid;
    else lo = mid;
  }
  return hi / Math.cos(pitch);
}

/** The slope of a rectangle against a line, both in radians, folded to 0 .. pi/2, over tilts within `half` of `tilt`. */
export function slopeAgainst(tilt: number, pitch: number, half: number): { from: number; to: number } {
  const off = tilt - pitch - Math.PI * Math.round((tilt - pitch) / Math.PI);
  const from = Math.max(0, Math.abs(off) - half);
  return { from, to: Math.min(Math.PI / 2, Math.abs(off) + half) };
}
