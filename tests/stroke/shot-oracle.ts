import type { TableSpec } from '../../src/equipment/equipment-types.js';
import type { Placement, Ring } from '../../src/geometry/types.js';
import type { Scene } from '../../src/room/scene.js';
import type { StrokeCue } from '../../src/stroke/stroke-scene.js';
import type { StrokeSettings } from '../../src/stroke/stroke-settings.js';

/**
 * The slow and obvious way to judge a shot, sharing no code with src/stroke: points along the cue's axis in the room's own
 * coordinates, tried one after the other against the model's words. `ease` (mm) makes the judge kinder (positive) or stricter
 * (negative) in every length, so that a closed form has to lie between a strict and a kind judge.
 */
export interface OracleShot {
  readonly scene: Scene;
  readonly table: TableSpec;
  readonly pose: Placement;
  readonly stroke: StrokeSettings;
  readonly cue: StrokeCue;
  /** Ball in the table's frame and direction from its long axis. */
  readonly x: number;
  readonly y: number;
  readonly phi: number;
}

/** Points along the axis, mm apart. */
const STEP = 1;

export function inside(ring: Ring, x: number, y: number): boolean {
  let odd = false;
  for (let i = 0; i < ring.length; i++) {
    const [ax, ay] = ring[i];
    const [bx, by] = ring[(i + 1) % ring.length];
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) odd = !odd;
  }
  return odd;
}

export function toBoundary(ring: Ring, x: number, y: number): number {
  let least = Infinity;
  for (let i = 0; i < ring.length; i++) {
    const [ax, ay] = ring[i];
    const [bx, by] = ring[(i + 1) % ring.length];
    const square = (bx - ax) ** 2 + (by - ay) ** 2;
    const s = Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square));
    least = Math.min(least, Math.hypot(x - ax - s * (bx - ax), y - ay - s * (by - ay)));
  }
  return least;
}

/** Signed distance to a ring, positive outside. */
export function outsideBy(ring: Ring, x: number, y: number): number {
  const distance = toBoundary(ring, x, y);
  return inside(ring, x, y) ? -distance : distance;
}

/** The shot's plan, sampled once: at sample k the distances to walls and obstacles. */
export class Oracle {
  readonly ux: number;
  readonly uy: number;
  readonly px: number;
  readonly py: number;
  readonly ballHeight: number;
  readonly #wall: Float64Array;
  readonly #things: Float64Array[];

  constructor(readonly shot: OracleShot) {
    const { scene, table, pose, stroke, cue, x, y, phi } = shot;
    this.px = pose.x + x * Math.cos(pose.angle) - y * Math.sin(pose.angle);
    this.py = pose.y + x * Math.sin(pose.angle) + y * Math.cos(pose.angle);
    this.ux = Math.cos(pose.angle + phi);
    this.uy = Math.sin(pose.angle + phi);
    this.ballHeight = table.bedHeight + table.ballDiameter / 2;
    const longest = table.ballDiameter / 2 + stroke.backswing + cue.length;
    const count = Math.ceil(longest / STEP) + 2;
    this.#wall = new Float64Array(count);
    this.#things = scene.obstacles.map(() => new Float64Array(count));
    for (let k = 0; k < count; k++) {
      const qx = this.px + k * STEP * this.ux;
      const qy = this.py + k * STEP * this.uy;
      this.#wall[k] = -outsideBy(scene.outline, qx, qy);
      scene.obstacles.forEach((o, i) => {
        this.#things[i][k] = Math.min(...o.parts.map((part) => outsideBy(part, qx, qy)));
      });
    }
  }

  /** Does the cue at elevation theta come too near to anything in the room? */
  free(theta: number, backswing: number, ease: number): boolean {
    const { scene, stroke, cue, table } = this.shot;
    const cos = Math.cos(theta);
    const a = stroke.margin - ease;
    const end = (table.ballDiameter / 2 + backswing + cue.length - ease) * cos;
    for (let k = 0; ; k++) {
      const t = Math.min(k * STEP, end);
      const z = this.ballHeight + stroke.tipOffset / cos + t * Math.tan(theta);
      const upper = z + a / cos;
      const lower = z - a / cos;
      if (this.#wall[k] < a) return false;
      for (let i = 0; i < scene.obstacles.length; i++) {
        const { from, to } = scene.obstacles[i];
        if (this.#things[i][k] < a && upper > from && lower < to) return false;
      }
      for (const face of scene.ceiling) {
        const height =
          face.height + face.slopeX * (this.px + t * this.ux) + face.slopeY * (this.py + t * this.uy);
        if (upper > height) return false;
      }
      if (t >= end) return true;
    }
  }

  /** theta_rail by halving: the least elevation at which the cue's lower side clears the three points of the rail. */
  railElevation(): number {
    const { table, stroke, cue, x, y, phi } = this.shot;
    const r = table.ballDiameter / 2;
    const exit = (grow: number, limitX = Infinity, limitY = Infinity): number => {
      const halfX = Math.min(table.field.length / 2 + grow, limitX);
      const halfY = Math.min(table.field.width / 2 + grow, limitY);
      let low = 0;
      let high = 20_000;
      for (let i = 0; i < 80; i++) {
        const t = (low + high) / 2;
        const out = Math.abs(x + t * Math.cos(phi)) > halfX || Math.abs(y + t * Math.sin(phi)) > halfY;
        if (out) high = t;
        else low = t;
      }
      return low;
    };
    const outerX = table.outer.length / 2;
    const outerY = table.outer.width / 2;
    const points = [
      [exit(0), table.noseHeight],
      [exit(50, outerX, outerY), table.railHeight],
      [exit(1e6, outerX, outerY), table.railHeight],
    ].filter(([t]) => t < r + stroke.backswing + cue.length);
    const clears = (theta: number): boolean =>
      points.every(([t, h]) => {
        const along = Math.max(0, Math.min(cue.length, t - r));
        const radius = cue.tipRadius + ((cue.buttRadius - cue.tipRadius) * along) / cue.length;
        // Height of the cue's lower side over the cloth at t, against the point's.
        const lower = r + (stroke.tipOffset - radius) / Math.cos(theta) + t * Math.tan(theta);
        return lower >= h;
      });
    if (clears(0)) return 0;
    let low = 0;
    let high = Math.PI / 2 - 1e-9;
    for (let i = 0; i < 60; i++) {
      const theta = (low + high) / 2;
      if (clears(theta)) high = theta;
      else low = theta;
    }
    return high;
  }

  /** Greatest room to spare of the player's disc in the standing window, to within `gap` mm, negative: none; cut short once it is known to be >= 0. */
  standingSlack(gap: number): number {
    const { scene, table, pose, cue, x, y, phi } = this.shot;
    const outer: Ring = [
      [-table.outer.length / 2, -table.outer.width / 2],
      [table.outer.length / 2, -table.outer.width / 2],
      [table.outer.length / 2, table.outer.width / 2],
      [-table.outer.length / 2, table.outer.width / 2],
    ];
    const cos = Math.cos(pose.angle);
    const sin = Math.sin(pose.angle);
    const slack = (qx: number, qy: number): number => {
      let least = -outsideBy(scene.outline, qx, qy) - 230;
      const dx = qx - pose.x;
      const dy = qy - pose.y;
      least = Math.min(least, outsideBy(outer, cos * dx + sin * dy, cos * dy - sin * dx) - 230);
      for (const o of scene.obstacles) {
        if (o.from < 1900) for (const part of o.parts) least = Math.min(least, outsideBy(part, qx, qy) - 230);
      }
      for (const f of scene.ceiling) {
        const slope = Math.hypot(f.slopeX, f.slopeY);
        const over = f.height + f.slopeX * qx + f.slopeY * qy - 1500;
        least = Math.min(least, slope === 0 ? (over < 0 ? -Infinity : Infinity) : over / slope - 230);
      }
      return least;
    };
    let rim = 0;
    while (
      Math.abs(x + rim * Math.cos(phi)) <= table.outer.length / 2 &&
      Math.abs(y + rim * Math.sin(phi)) <= table.outer.width / 2
    )
      rim += 0.01;
    return greatestInWindow(
      (t, side) => slack(this.px + t * this.ux - side * this.uy, this.py + t * this.uy + side * this.ux),
      0.45 * cue.length,
      Math.max(cue.length, rim + 460),
      350,
      gap,
    );
  }
}

/** Greatest value of a function that changes by at most the distance moved, over a window, by halving; stops at the first value >= 0. */
export function greatestInWindow(
  f: (t: number, side: number) => number,
  from: number,
  to: number,
  half: number,
  gap: number,
): number {
  let best = -Infinity;
  let boxes = [[(from + to) / 2, 0, (to - from) / 2, half]];
  while (boxes.length > 0) {
    const next: number[][] = [];
    for (const [t, side, a, b] of boxes) {
      const value = f(t, side);
      const radius = Math.hypot(a, b);
      if (value > best) best = value;
      if (best >= 0) return best;
      if (value + radius < 0 || radius < gap) continue;
      if (a > b) next.push([t - a / 2, side, a / 2, b], [t + a / 2, side, a / 2, b]);
      else next.push([t, side - b / 2, a, b / 2], [t, side + b / 2, a, b / 2]);
    }
    boxes = next;
  }
  return best;
}
