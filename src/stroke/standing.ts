import { DEFAULTS } from '../equipment/defaults.js';
import { TOUCH } from '../geometry/curve-crossings.js';
import { CELL, CELL_RADIUS, StandingRoom } from './standing-room.js';
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

  // Mostly there is a place on the cue's own line, a little off the table.
  const off = scene.stance.radius + CELL;
  const offX = (scene.rimX + off - (ux < 0 ? -px : px)) / Math.abs(ux);
  const offY = (scene.rimY + off - (uy < 0 ? -py : py)) / Math.abs(uy);
  const t = Math.max(from, Math.min(offX, offY));
  if (t <= to && room.holds(px + t * ux, py + t * uy)) return true;

  const middle = (from + to) / 2;
  const x = px + middle * ux;
  const y = py + middle * uy;
  const along = (to - from) / 2;
  const found = searchCells(room, x, y, ux, uy, along, half);
  if (found !== UNDECIDED) return found === FOUND;
  return touchesEdge(room, x, y, ux, uy, along, half);
}

const NONE = 0;
const FOUND = 1;
const UNDECIDED = 2;

/** Looks through the cells that the window may meet: one whose centre has room decides for, none with any slack decides against. */
function searchCells(
  room: StandingRoom,
  x: number,
  y: number,
  ux: number,
  uy: number,
  along: number,
  half: number,
): number {
  const support = (CELL / 2) * (Math.abs(ux) + Math.abs(uy)) + TOUCH;
  const extentX = along * Math.abs(ux) + half * Math.abs(uy) + CELL / 2;
  const extentY = along * Math.abs(uy) + half * Math.abs(ux) + CELL / 2;
  const firstRow = Math.max(0, Math.ceil((y - extentY - room.bottom) / CELL - 0.5 - TOUCH));
  const lastRow = Math.min(room.rows - 1, Math.floor((y + extentY - room.bottom) / CELL - 0.5 + TOUCH));
  let answer = NONE;
  for (let row = firstRow; row <= lastRow; row++) {
    const dy = room.centerY(row) - y;
    // Centres (dx, dy) with |dx ux + dy uy| <= along + support and |dy ux - dx uy| <= half + support.
    let least = -extentX;
    let most = extentX;
    if (ux !== 0) {
      const reach = (along + support) / Math.abs(ux);
      const center = (-dy * uy) / ux;
      least = Math.max(least, center - reach);
      most = Math.min(most, center + reach);
    }
    if (uy !== 0) {
      const reach = (half + support) / Math.abs(uy);
      const center = (dy * ux) / uy;
      least = Math.max(least, center - reach);
      most = Math.min(most, center + reach);
    }
    const lastColumn = Math.min(room.columns - 1, Math.floor((x + most - room.left) / CELL - 0.5 + TOUCH));
    let column = Math.max(0, Math.ceil((x + least - room.left) / CELL - 0.5 - TOUCH));
    while (column <= lastColumn) {
      const cell = row * room.columns + column;
      const slack = room.slackOfCell(cell);
      const missing = -slack - CELL_RADIUS - 2 * TOUCH;
      if (missing > 0) {
        // The slack grows by at most the way gone, so the next cells have no room either.
        column += 1 + Math.floor(missing / CELL);
        continue;
      }
      const dx = room.centerX(column) - x;
      const inside = Math.abs(dx * ux + dy * uy) <= along && Math.abs(dy * ux - dx * uy) <= half;
      if (inside && slack >= 0) return FOUND;
      if (room.hasCornerWithin(cell, x, y, ux, uy, along, half)) return FOUND;
      answer = UNDECIDED;
      column++;
    }
  }
  return answer;
}

/** Is a corner of the window in S, or does the boundary of S cross one of its sides? */
function touchesEdge(
  room: StandingRoom,
  x: number,
  y: number,
  ux: number,
  uy: number,
  along: number,
  half: number,
): boolean {
  const nearX = x - along * ux;
  const nearY = y - along * uy;
  const farX = x + along * ux;
  const farY = y + along * uy;
  const asideX = -half * uy;
  const asideY = half * ux;
  return (
    room.holds(nearX + asideX, nearY + asideY) ||
    room.holds(nearX - asideX, nearY - asideY) ||
    room.holds(farX + asideX, farY + asideY) ||
    room.holds(farX - asideX, farY - asideY) ||
    room.boundaryCrosses(nearX + asideX, nearY + asideY, ux, uy, 2 * along) ||
    room.boundaryCrosses(nearX - asideX, nearY - asideY, ux, uy, 2 * along) ||
    room.boundaryCrosses(nearX - asideX, nearY - asideY, -uy, ux, 2 * half) ||
    room.boundaryCrosses(farX - asideX, farY - asideY, -uy, ux, 2 * half)
  );
}
