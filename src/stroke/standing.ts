import { DEFAULTS } from '../equipment/defaults.js';
import { LIMITS } from '../equipment/limits.js';
import { CELL, CELL_RADIUS } from './standing-cells.js';
import { StandingRoom } from './standing-room.js';
import type { StrokeScene } from './stroke-scene.js';

/** How far from the outer rectangle a player's disc is looked for, mm: as far as the window of the longest cue that is accepted goes. */
const REACH = Math.hypot(LIMITS.cue.length[1], DEFAULTS.standing.sideways);

/**
 * The floor around the table where a player may stand, for {@link canStand}. One serves all shots of its scene. Floor farther than
 * `reach` (mm) from the outer rectangle counts as no room; by default that is out of every cue's reach.
 */
export function standingRoom(scene: StrokeScene, reach: number = REACH): StandingRoom {
  return new StandingRoom(scene, reach);
}

/** Where the standing window of a stroke begins behind the ball's centre, for a cue of length L, mm. */
export function standingFrom(length: number): number {
  return DEFAULTS.standing.nearShare * length;
}

/** Where it ends; `rim` is t_o, where the ray leaves the outer rectangle. */
export function standingTo(length: number, rim: number): number {
  return Math.max(length, rim + DEFAULTS.standing.behindRail);
}

/** How far to either side of the cue's line it reaches, mm. */
export const STANDING_ASIDE: number = DEFAULTS.standing.sideways;

/**
 * Is there a place for the player's disc with its centre in the window between `from` and `to` behind (px, py) along the unit
 * vector (ux, uy) and within `half` (mm) to either side? Exact up to rounding; touching counts as room. An empty window
 * (`from` > `to` or `half` < 0) holds no place.
 *
 * Proof of the last resort. Let the window W meet S. Both are closed and W is bounded, so some point c of their common part is
 * least in a direction g, chosen square to none of the finitely many straight pieces of their boundaries, nor to a tangent
 * that two curves share where they touch. Each thing at c, grown by the disc, is convex, so S holds whatever of the half plane
 * beyond its tangent the others leave. Had all pieces of boundary through c one tangent, S and W would go on along it both ways,
 * and g would be square to it: so there is only one piece, and it is a circle. But S lies outside the circle, also a little
 * beyond its tangent on both sides of c, where g is less. So two pieces cross at c: sides of W (a corner of W), a side of W and
 * the boundary of S, or two curves of the boundary of S (a corner of S). These points are finitely many, and all are tried.
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
  const ask = room.question;
  ask[0] = px;
  ask[1] = py;
  ask[2] = ux;
  ask[3] = uy;
  ask[4] = from;
  ask[5] = to;
  ask[6] = half;
  return answer(scene, room);
}

/** {@link canStand} for the question that is written down in the room: numbers handed over one by one would be boxed. */
function answer(scene: StrokeScene, room: StandingRoom): boolean {
  const ask = room.question;
  const px = ask[0];
  const py = ask[1];
  const ux = ask[2];
  const uy = ask[3];
  const from = ask[4];
  const to = ask[5];
  const half = ask[6];
  if (!(from <= to && half >= 0) || scene.stance.never) return false;
  // Mostly there is room on the cue's own line, a little off the table.
  const off = scene.stance.radius + CELL;
  const offX = (scene.rimX + off - (ux < 0 ? -px : px)) / Math.abs(ux);
  const offY = (scene.rimY + off - (uy < 0 ? -py : py)) / Math.abs(uy);
  const t = Math.min(to - CELL_RADIUS, Math.max(from + CELL_RADIUS, Math.min(offX, offY)));
  const inWindow = t >= from + CELL_RADIUS && half >= CELL_RADIUS;
  if (inWindow && room.cells.isSureAround(px + t * ux, py + t * uy)) return true;
  const middle = (from + to) / 2;
  const { window } = room.cells;
  window[0] = px + middle * ux;
  window[1] = py + middle * uy;
  window[2] = ux;
  window[3] = uy;
  window[4] = (to - from) / 2;
  window[5] = half;
  return room.cells.meetsWindow();
}
