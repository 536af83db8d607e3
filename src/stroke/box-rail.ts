import { ANGLE_SLACK, type BoxFrame, exitRange, type Range } from './box-bounds.js';
import { cueRadius, elevationOver } from './rail-elevation.js';
import type { StrokeCue, StrokeScene } from './stroke-scene.js';

/** Bounds over a box of shots: theta_rail (radians) and t_o (mm, `rim.hi` may be Infinity). */
export interface RailRange {
  readonly theta: Range;
  readonly rim: Range;
  readonly scratch: Range;
}

export function railRange(): RailRange {
  return { theta: { lo: 0, hi: 0 }, rim: { lo: 0, hi: 0 }, scratch: { lo: 0, hi: 0 } };
}

/** Bounds of theta_rail and t_o over the box. */
export function boundRail(frame: BoxFrame, scene: StrokeScene, cue: StrokeCue, out: RailRange): void {
  const { theta, rim, scratch } = out;
  theta.lo = 0;
  theta.hi = 0;
  exitRange(frame, scene.noseX, scene.noseY, scratch);
  raise(scene, cue, scratch, scene.noseRise, theta);
  exitRange(frame, scene.crestX, scene.crestY, scratch);
  raise(scene, cue, scratch, scene.railRise, theta);
  exitRange(frame, scene.rimX, scene.rimY, rim);
  raise(scene, cue, rim, scene.railRise, theta);
  theta.lo = Math.max(0, theta.lo - ANGLE_SLACK);
  theta.hi += ANGLE_SLACK;
}

/**
 * Raises the bounds `theta` to what one height asks for at distances t in [lo, hi].
 *
 * With f(t, theta) = t sin(theta) - rise cos(theta) - r(t) + b the height asks for f >= 0, f grows with theta, and theta(t) is
 * its root. At a given theta, f is convex in t >= R (r rises straight and then stays), and grows with t where sin(theta) is
 * at least the taper r'.
 * - Below both theta(lo) and theta(hi), f < 0 at both ends and so between them: the lesser one bounds theta(t) below.
 * - At max(theta(lo), asin(r')), f >= 0 at lo and so beyond it: this bounds theta(t) above.
 * - So does the elevation that t = lo would ask for with the greatest radius in the range, which gets sharp as the range shrinks: for a
 *   given radius theta(t), where positive, falls with t.
 * Beyond the cue's reach a height asks for nothing (theta = 0).
 */
function raise(scene: StrokeScene, cue: StrokeCue, t: Range, rise: number, theta: Range): void {
  const { ballRadius } = scene;
  const reach = ballRadius + scene.stroke.backswing + cue.length;
  if (t.lo >= reach) return;
  const nearRadius = cueRadius(cue, ballRadius, t.lo);
  const farRadius = cueRadius(cue, ballRadius, Math.min(t.hi, reach));
  const near = elevationOver(t.lo, rise, nearRadius - scene.stroke.tipOffset);
  const thick = elevationOver(t.lo, rise, Math.max(nearRadius, farRadius) - scene.stroke.tipOffset);
  const taper = (cue.buttRadius - cue.tipRadius) / cue.length;
  const steady = taper > 0 ? Math.asin(Math.min(1, taper)) : 0;
  theta.hi = Math.max(theta.hi, Math.min(thick, Math.max(near, steady)));
  if (t.hi >= reach) return;
  const far = elevationOver(t.hi, rise, farRadius - scene.stroke.tipOffset);
  theta.lo = Math.max(theta.lo, Math.min(near, far));
}
