import type { StrokeCue, StrokeScene } from './stroke-scene.js';

/**
 * What the table itself asks of a cue. Symbols as in the model: h is a height over the cloth at plan distance t from the
 * ball's centre, `rise` = h - R, r the cue's radius there and b the tip offset.
 */

/** Where the ray from a ball leaves the three rectangles of a table, in plan, mm: t_n, t_r and t_o. */
export interface RailDistances {
  readonly nose: number;
  readonly crest: number;
  readonly rim: number;
}

/** r(t): the cue's radius at plan distance t from the ball's centre, so t - R behind the tip; constant beyond either end. */
export function cueRadius(cue: StrokeCue, ballRadius: number, t: number): number {
  const behindTip = t - ballRadius;
  if (behindTip <= 0) return cue.tipRadius;
  if (behindTip >= cue.length) return cue.buttRadius;
  return cue.tipRadius + ((cue.buttRadius - cue.tipRadius) * behindTip) / cue.length;
}

/**
 * Least elevation (radians) at which a cue whose axis starts b / cos(theta) over the ball's centre clears by `gap` (plus
 * b, square to the axis) a point `rise` higher than the ball's centre at plan distance t:
 *
 *     t sin(theta) - rise cos(theta) >= gap,   gap = r - b
 *     hypot(t, rise) sin(theta - delta) >= gap,   delta = atan2(rise, t)
 *
 * `Infinity` where no elevation does; may be negative. The condition holds from this root, the lower one, up to pi + delta -
 * asin(gap / hypot(t, rise)), which lies beyond 90 degrees as long as gap <= t: upright, the axis is t away from the point.
 */
export function elevationOver(t: number, rise: number, gap: number): number {
  const reach = Math.hypot(t, rise);
  if (gap > reach) return Infinity;
  if (gap < -reach) return -Infinity;
  return Math.atan2(rise, t) + Math.asin(gap / reach);
}

/** Plan distances from a ball at (px, py), in Q, along the unit vector (ux, uy) to where the ray leaves nose, crest and rim. */
export function railDistances(
  scene: StrokeScene,
  px: number,
  py: number,
  ux: number,
  uy: number,
): RailDistances {
  // Where a component is 0, the distance along it comes out as Infinity.
  const perX = 1 / Math.abs(ux);
  const perY = 1 / Math.abs(uy);
  const ahead = ux < 0 ? -px : px;
  const aside = uy < 0 ? -py : py;
  return {
    nose: Math.min((scene.noseX - ahead) * perX, (scene.noseY - aside) * perY),
    crest: Math.min((scene.crestX - ahead) * perX, (scene.crestY - aside) * perY),
    rim: Math.min((scene.rimX - ahead) * perX, (scene.rimY - aside) * perY),
  };
}

/**
 * theta_rail, radians: the least elevation >= 0 at which the cue's lower side clears the nose at t_n and the rail's top at t_r
 * and t_o. `Infinity` where none does.
 *
 * A height counts only if the cue reaches it, which is taken to be so where t < R + s + L: at an elevation the cue reaches a
 * little less far, so a rail just within reach may ask for an elevation that it need not. That is the cautious side as far as the
 * table goes (raised by that little, the cue may pass over a low thing behind the rail that it would meet level).
 */
export function railElevation(scene: StrokeScene, cue: StrokeCue, distances: RailDistances): number {
  return Math.max(
    0,
    elevationAt(scene, cue, distances.nose, scene.noseRise),
    elevationAt(scene, cue, distances.crest, scene.railRise),
    elevationAt(scene, cue, distances.rim, scene.railRise),
  );
}

/**
 * An elevation (radians) that theta_rail exceeds for no shot on the table: that of a ball frozen square to the cushion
 * whose rim is nearer, where theta_rail is greatest, or the cue's taper if that is steeper.
 *
 * Proof. Write f(t, theta) = t sin(theta) - rise cos(theta) - r(t) + b, so a height asks for f >= 0. Every shot has
 * t_n >= R, t_r >= R + crest - nose and t_o >= R + rim - nose (least over the sides), with equality for that frozen ball when
 * both minima belong to the same side. f grows with theta (up to 45 degrees at least, as t >= R >= -rise), and with t where
 * sin(theta) >= r'(t). Hence at theta* = max(theta at the least distance, asin(greatest r')), f(t, theta*) >= 0 for every
 * greater t too. Usual tapers are under half a degree, below what any rail asks for, so the bound is attained.
 */
export function steepestRail(scene: StrokeScene, cue: StrokeCue): number {
  const toCrest = scene.ballRadius + Math.min(scene.crestX - scene.noseX, scene.crestY - scene.noseY);
  const toRim = scene.ballRadius + Math.min(scene.rimX - scene.noseX, scene.rimY - scene.noseY);
  const nearest = railElevation(scene, cue, { nose: scene.ballRadius, crest: toCrest, rim: toRim });
  const taper = Math.max(0, (cue.buttRadius - cue.tipRadius) / cue.length);
  return Math.max(nearest, Math.asin(Math.min(1, taper)));
}

function elevationAt(scene: StrokeScene, cue: StrokeCue, t: number, rise: number): number {
  const { ballRadius, stroke } = scene;
  if (t >= ballRadius + stroke.backswing + cue.length) return 0;
  return elevationOver(t, rise, cueRadius(cue, ballRadius, t) - stroke.tipOffset);
}
