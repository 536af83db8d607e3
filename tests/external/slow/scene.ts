import type { TableSpec } from '../../../src/equipment/equipment-types.js';
import { type Corners, depthIn, rectangleAt, room, type Spot, spotToRing } from './plane.js';

/**
 * The model once more, read from its text alone (design/model.md) and written for reading, not for speed: what a room, a table and a cue are to
 * the slow second opinion. Figures of the model stand here again on purpose, so that a slip in the library's own table of
 * defaults shows.
 */
export interface SlowRoom {
  readonly outline: Corners;
  /** Flat; Infinity: none. */
  readonly ceiling: number;
  readonly things: readonly {
    readonly name: string;
    readonly ring: Corners;
    readonly from: number;
    readonly to: number;
  }[];
  /** Quarter circles that leaves sweep over. */
  readonly swings: readonly Corners[];
}

export interface SlowStroke {
  readonly backswing: number;
  readonly shortBackswing: number;
  readonly margin: number;
  /** b */
  readonly over: number;
  /** theta_max, radians */
  readonly steepest: number;
}

export interface SlowCue {
  readonly length: number;
  readonly tip: number;
  readonly butt: number;
}

export interface SlowPose {
  readonly x: number;
  readonly y: number;
  /** radians */
  readonly angle: number;
}

export const CUSHION_DEPTH = 50;

/** The model's defaults for a ball of this diameter. */
export function usualStroke(ballDiameter: number): SlowStroke {
  return {
    backswing: 150,
    shortBackswing: 45,
    margin: 20,
    over: (0.35 * ballDiameter) / 2,
    steepest: (20 * Math.PI) / 180,
  };
}

export function usualCue(length: number): SlowCue {
  return { length, tip: 5, butt: 15 };
}

/**
 * The quarter circle that a leaf sweeps over from latch to wide open, on the side of the wall that the room lies on: a polygon in
 * it or, with `more`, one that goes at least so much beyond it (mm).
 */
export function swingOf(outline: Corners, hinge: Spot, latch: Spot, more: number | null = null): Corners {
  const steps = 12;
  const leaf = Math.hypot(latch[0] - hinge[0], latch[1] - hinge[1]);
  const start = Math.atan2(latch[1] - hinge[1], latch[0] - hinge[0]);
  const middle: Spot = [(hinge[0] + latch[0]) / 2, (hinge[1] + latch[1]) / 2];
  const probe = Math.min(50, leaf / 10);
  const turn = (sign: number): number =>
    depthIn(outline, [
      middle[0] - sign * probe * Math.sin(start),
      middle[1] + sign * probe * Math.cos(start),
    ]);
  const sign = turn(1) >= turn(-1) ? 1 : -1;
  const reach = more === null ? leaf : (leaf + more) / Math.cos(Math.PI / 4 / steps);
  const arc = Array.from({ length: steps + 1 }, (_, i): Spot => {
    const angle = start + (sign * i * Math.PI) / 2 / steps;
    return [hinge[0] + reach * Math.cos(angle), hinge[1] + reach * Math.sin(angle)];
  });
  return [hinge, ...arc];
}

/** More than 0: the table's outer rectangle is off everything in its way. 0 or less: it touches, or by how much it is in the way. */
export function frameRoom(scene: SlowRoom, table: TableSpec, pose: SlowPose, shrink = 0): number {
  const railTop = table.bedHeight + table.railHeight;
  if (scene.ceiling < railTop) return Number.NEGATIVE_INFINITY;
  const frame = rectangleAt(
    pose.x,
    pose.y,
    pose.angle,
    table.outer.length - 2 * shrink,
    table.outer.width - 2 * shrink,
  );
  const inTheWay = scene.things.filter((thing) => thing.from < railTop).map((thing) => thing.ring);
  return room(
    frame,
    scene.outline,
    [...inTheWay, ...scene.swings].filter((ring) => boxesMeet(frame, ring)),
  );
}

function boxesMeet(first: Corners, second: Corners): boolean {
  return [0, 1].every((axis) => {
    const a = first.map((corner) => corner[axis]);
    const b = second.map((corner) => corner[axis]);
    return Math.min(...a) <= Math.max(...b) && Math.min(...b) <= Math.max(...a);
  });
}

/** Things that a level cue meets: neither under every cue nor over every open stroke. */
export function tallThings(
  scene: SlowRoom,
  table: TableSpec,
  stroke: SlowStroke,
  cue: SlowCue,
): readonly Corners[] {
  const low = table.bedHeight + table.railHeight;
  const high = highestAxis(table, stroke, cue);
  return scene.things
    .filter((thing) => thing.to + stroke.margin > low && thing.from < high)
    .map((thing) => thing.ring);
}

/** How high an open stroke needs the air: its butt end at the steepest theta_rail, and the margin over it. */
export function highestAxis(table: TableSpec, stroke: SlowStroke, cue: SlowCue): number {
  const radius = table.ballDiameter / 2;
  const ell = radius + stroke.backswing + cue.length;
  const frozen = [table.outer.length - table.field.length, table.outer.width - table.field.width].map(
    (twice) => {
      const rail = twice / 2;
      return railElevation(table, stroke, cue, radius, radius + Math.min(CUSHION_DEPTH, rail), radius + rail);
    },
  );
  const theta = Math.max(...frozen);
  return table.bedHeight + radius + (stroke.over + stroke.margin) / Math.cos(theta) + ell * Math.sin(theta);
}

/** Clearance: distance of Q from walls and tall things. 0 or less where they meet. */
export function clearance(
  table: TableSpec,
  outline: Corners,
  tall: readonly Corners[],
  pose: SlowPose,
): number {
  const { field, ballDiameter } = table;
  const q = rectangleAt(pose.x, pose.y, pose.angle, field.length - ballDiameter, field.width - ballDiameter);
  return room(q, outline, tall);
}

/** theta_rail, by halving: the least elevation at which the lower side of the cue clears nose, crest and rim. */
export function railElevation(
  table: TableSpec,
  stroke: SlowStroke,
  cue: SlowCue,
  nose: number,
  crest: number,
  rim: number,
): number {
  const radius = table.ballDiameter / 2;
  const ell = radius + stroke.backswing + cue.length;
  const clears = (theta: number, t: number, height: number): boolean => {
    // Beyond the butt end there is no cue.
    if (t >= ell) return true;
    const share = Math.min(1, Math.max(0, (t - radius) / cue.length));
    const thick = cue.tip + (cue.butt - cue.tip) * share;
    const axis = radius + stroke.over / Math.cos(theta) + t * Math.tan(theta);
    return axis - thick / Math.cos(theta) >= height;
  };
  const clearsAll = (theta: number): boolean =>
    clears(theta, nose, table.noseHeight) &&
    clears(theta, crest, table.railHeight) &&
    clears(theta, rim, table.railHeight);
  if (clearsAll(0)) return 0;
  let low = 0;
  let high = Math.PI / 2 - 1e-6;
  if (!clearsAll(high)) return Number.POSITIVE_INFINITY;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (clearsAll(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** Plan distance from a spot inside a centred rectangle, along (ux, uy), to where it leaves it. */
export function leaves(halfX: number, halfY: number, x: number, y: number, ux: number, uy: number): number {
  const alongX = ux === 0 ? Number.POSITIVE_INFINITY : (Math.sign(ux) * halfX - x) / ux;
  const alongY = uy === 0 ? Number.POSITIVE_INFINITY : (Math.sign(uy) * halfY - y) / uy;
  return Math.min(alongX, alongY);
}

/** How far the spot is from the outer rectangle, in the table's own frame; 0 inside. */
export function offFrame(table: TableSpec, u: number, v: number): number {
  const dx = Math.max(0, Math.abs(u) - table.outer.length / 2);
  const dy = Math.max(0, Math.abs(v) - table.outer.width / 2);
  return Math.hypot(dx, dy);
}

/** Slack of a player's disc centred at the spot: how much wider it could be. */
export function discSlack(scene: SlowRoom, spot: Spot, radius: number): number {
  let slack = depthIn(scene.outline, spot) - radius;
  for (const thing of scene.things) {
    if (thing.from < 1900) slack = Math.min(slack, spotToRing(spot, thing.ring) - radius);
  }
  return slack;
}
