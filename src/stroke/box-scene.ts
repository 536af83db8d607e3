import {
  depthInRing,
  distanceEdgeToBox,
  distanceToConvex,
  reflexStarts,
} from '../geometry/shape-distance.js';
import { LENGTH_SLACK } from './box-bounds.js';
import { growthInPlan } from './prepare-strokes.js';
import type { StrokeCue, StrokeScene } from './stroke-scene.js';

/** True only if Q lies in the room, and no nearer to its walls than they are grown by. */
export function allBallsStartFree(scene: StrokeScene): boolean {
  const { walls, qx, qy } = scene;
  const list = Int32Array.from({ length: walls.count }, (_, i) => i);
  if (depthInRing(walls, reflexStarts(walls), list, 0, walls.count, 0, 0) < 0) return false;
  const least = growthInPlan(scene) + LENGTH_SLACK;
  return list.every((i) => distanceEdgeToBox(walls, i, qx, qy) >= least);
}

/**
 * True only if no stroke of any shot with theta >= theta_rail can meet part k: it lies outside the table and low enough.
 *
 * Proof. A cue that reaches the grown part at t0 reaches the rim before it, t_o <= t0, and there clears the rail's top:
 * z(t_o) - r / cos(theta) >= top. It rises from there on, so z(t0) - a / cos(theta) >= top + (r - a) / cos(theta) for the cue's
 * least radius r, whose least value over [0, theta_max] is at one of the ends.
 */
export function liesUnderEveryCue(scene: StrokeScene, cue: StrokeCue, k: number): boolean {
  const { parts, stroke, rimX, rimY, noseX, noseY, ballRadius } = scene;
  const cos = Math.cos(stroke.maxElevation);
  const lift = Math.min(cue.tipRadius, cue.buttRadius) - stroke.margin;
  const top = scene.ballHeight + scene.railRise + Math.min(lift, lift / cos);
  if (parts.to[k] > top - LENGTH_SLACK) return false;
  // Things at ball height within (a - b) / cos(theta_max) of a ball count as in the way (see passesOverFrom).
  const toRim = ballRadius + Math.min(rimX - noseX, rimY - noseY);
  if (toRim * cos <= stroke.margin - stroke.tipOffset + LENGTH_SLACK) return false;
  const first = parts.start[k];
  const end = parts.start[k + 1];
  if (distanceToConvex(parts.edges, first, end, 0, 0) <= 0) return false;
  const least = growthInPlan(scene) + LENGTH_SLACK;
  for (let i = first; i < end; i++) if (distanceEdgeToBox(parts.edges, i, rimX, rimY) < least) return false;
  return true;
}
