import { DEFAULTS } from '../equipment/defaults.js';
import { CELL, CELL_RADIUS } from './standing-cells.js';
import { StandingRoom } from './standing-room.js';
import type { StrokeScene } from './stroke-scene.js';

/** Enough for cues of up to two metres: how far from the outer rectangle a player's disc is looked for, mm. */
const REACH = 2500;

/**
 * The floor around the table where a player may stand, for {@link canStand}. One serves all shots of its scene. Floor farther than
 * `reach` (mm, default 2,500) from the outer rectangle counts as no room: that is out of reach of any cue up to two metres, and
 * with a longer one errs on the cautious side.
 */
export function standingRoom(scene: StrokeScene, reach: number = REACH): StandingRoom {
  return new StandingRoom(scene, reach);
}

/** Where the standing window of a stroke begins behind the ball's centre, for a cue of length L, mm; it is `DEFAULTS.standing.sideways` wide to either side. */
export function standingFrom(length: number): number {
  return DEFAULTS.standing.nearShare * length;
}

/** Where it ends; `rim` is t_o, where the ray leaves the outer rectangle. */
export function standingTo(length: number, rim: number): number {
  return Math.max(length, rim + DEFAULTS.standing.behindRail);
}

/**
 * Is there a place for the player's disc with its centre in the window between `from` and `to` behind (px, py) along the unit
 * vector (ux, uy) and within `half` (mm) to either side? Exact up to rounding; touching counts as room. An empty window
 * (`from` > `to` or `half` < 0) holds no place.
 *
 * Proof of the last resort. Let the window W meet S. Both are closed and W is bounded, so some point c of their common part is
 * least in a direction g, chosen not square to any of the finitely many straight sides nor to the tangents where two curves
 * touch. Near c, S contains the half plane that each wall, part, rectangle or low ceiling at c leaves free, as all of these are
 * convex once grown by the disc. If all sides and curves through c had the same tangent there, both directions along it
 * would stay in S and in W, and g would have to be square to it. So two of them cross at c: two sides of W (a corner of W), a
 * side of W and the boundary of S, or two curves of the boundary of S (a corner of S). These points are finitely many, and all
 * are tried. (A circle's tangent square to g does not help either: to both sides of c, S goes beyond it.)
 */
export function canStand(
  scene: StrokeScene,
  room: StandingRoom,
  px: number,
  py: number,
  ux: number,
  uy: number,
  from: number,
  to: number,
  half: number,
): boolean {
  if (!(from <= to && half >= 0) || scene.stance.never) return false;
  // Mostly there is room on the cue's own line, a little off the table.
  const off = scene.stance.radius + CELL;
  const offX = (scene.rimX + off - (ux < 0 ? -px : px)) / Math.abs(ux);
  const offY = (scene.rimY + off - (uy < 0 ? -py : py)) / Math.abs(uy);
  const t = Math.min(to - CELL_RADIUS, Math.max(from + CELL_RADIUS, Math.min(offX, offY)));
  const inWindow = t >= from + CELL_RADIUS && half >= CELL_RADIUS;
  if (inWindow && room.cells.isSureAround(px + t * ux, py + t * uy)) return true;
  const middle = (from + to) / 2;
  return room.cells.meets(px + middle * ux, py + middle * uy, ux, uy, (to - from) / 2, half);
}
