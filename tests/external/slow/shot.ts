import type { TableSpec } from '../../../src/equipment/equipment-types.js';
import { depthIn, type Spot, spotToRing } from './plane.js';
import {
  CUSHION_DEPTH,
  discSlack,
  leaves,
  offFrame,
  railElevation,
  type SlowCue,
  type SlowPose,
  type SlowRoom,
  type SlowStroke,
} from './scene.js';

/** `unsure`: so near a threshold that steps of this size cannot tell. */
export type SlowClass = 'open' | 'cramped' | 'blocked' | 'unsure';

/** Step along the cue's axis, mm, and between elevations, radians. */
const STEP = 5;
const TURN = (0.25 * Math.PI) / 180;
/** Between places to stand, mm. */
const STAND_STEP = 25;

const STAND_RADIUS = 230;

interface Along {
  /** Plan distances from the ball's centre. */
  readonly t: readonly number[];
  /** How deep inside the walls the axis is there, and how far off each thing. */
  readonly depth: readonly number[];
  readonly off: readonly (readonly number[])[];
}

/**
 * The class of one shot by walking along the cue's axis in small steps at many elevations, with places to stand tried on a
 * grid. Each question is asked twice, strictly and leniently by more than the steps can miss; where the two differ the
 * class is `unsure`. Flat ceilings only. (u, v): the ball in the field's frame; phi from the table's long axis, radians.
 */
export function slowClass(
  scene: SlowRoom,
  table: TableSpec,
  stroke: SlowStroke,
  cue: SlowCue,
  pose: SlowPose,
  u: number,
  v: number,
  phi: number,
): SlowClass {
  const radius = table.ballDiameter / 2;
  const ux = Math.cos(phi);
  const uy = Math.sin(phi);
  const halfX = table.field.length / 2;
  const halfY = table.field.width / 2;
  const rimX = table.outer.length / 2;
  const rimY = table.outer.width / 2;
  const rim = leaves(rimX, rimY, u, v, ux, uy);
  const rail = railElevation(
    table,
    stroke,
    cue,
    leaves(halfX, halfY, u, v, ux, uy),
    leaves(Math.min(halfX + CUSHION_DEPTH, rimX), Math.min(halfY + CUSHION_DEPTH, rimY), u, v, ux, uy),
    rim,
  );
  if (rail > stroke.steepest) return rail > stroke.steepest + TURN ? 'blocked' : 'unsure';

  const cos = Math.cos(pose.angle);
  const sin = Math.sin(pose.angle);
  const toRoom = (a: number, b: number): Spot => [pose.x + a * cos - b * sin, pose.y + a * sin + b * cos];
  const stands = standing(scene, table, cue, toRoom, u, v, ux, uy, rim);
  if (stands === 'no') return 'blocked';

  const full = radius + stroke.backswing + cue.length;
  const short = radius + stroke.shortBackswing + cue.length;
  const along = walk(scene, toRoom, u, v, ux, uy, full);
  const free = (ell: number, theta: number, slack: number): boolean =>
    freeAt(scene, table, stroke, along, ell, theta, slack);
  // A walk of steps h comes within h / 2 of every point of the axis; the heights move less than that.
  const miss = STEP / 2 + 0.5;
  const openSurely = free(full, rail, miss);
  const openMaybe = free(full, rail, -miss);
  if (openSurely) return stands === 'yes' ? 'open' : 'unsure';
  if (openMaybe) return 'unsure';
  let surely = false;
  let maybe = false;
  // Between two elevations the butt end moves by half a turn's arc.
  const between = miss + (full * TURN) / 2;
  for (let theta = rail; ; theta += TURN) {
    const at = Math.min(theta, stroke.steepest);
    surely ||= free(short, at, miss);
    maybe ||= free(short, at, -between);
    if (surely || at >= stroke.steepest) break;
  }
  if (surely) return stands === 'yes' ? 'cramped' : 'unsure';
  return maybe ? 'unsure' : 'blocked';
}

function walk(
  scene: SlowRoom,
  toRoom: (a: number, b: number) => Spot,
  u: number,
  v: number,
  ux: number,
  uy: number,
  far: number,
): Along {
  const t: number[] = [];
  for (let s = 0; s < far; s += STEP) t.push(s);
  t.push(far);
  const spots = t.map((s) => toRoom(u + s * ux, v + s * uy));
  return {
    t,
    depth: spots.map((spot) => depthIn(scene.outline, spot)),
    off: scene.things.map((thing) => spots.map((spot) => spotToRing(spot, thing.ring))),
  };
}

/** Is the whole axis, out to the butt, clear of everything at this elevation, with `slack` (mm) to spare? */
function freeAt(
  scene: SlowRoom,
  table: TableSpec,
  stroke: SlowStroke,
  along: Along,
  ell: number,
  theta: number,
  slack: number,
): boolean {
  const reach = ell * Math.cos(theta);
  const up = stroke.margin / Math.cos(theta);
  const start = table.bedHeight + table.ballDiameter / 2 + stroke.over / Math.cos(theta);
  // The butt end may lie between two steps: asked strictly, the step beyond it counts too.
  const last = slack > 0 ? reach + STEP : reach;
  for (let i = 0; i < along.t.length; i++) {
    const t = along.t[i];
    if (t > last) break;
    const z = start + t * Math.tan(theta);
    if (along.depth[i] < stroke.margin + slack) return false;
    if (z + up + slack > scene.ceiling) return false;
    for (let k = 0; k < scene.things.length; k++) {
      if (along.off[k][i] >= stroke.margin + slack) continue;
      if (z - up - slack < scene.things[k].to && z + up + slack > scene.things[k].from) return false;
    }
  }
  const butt = start + reach * Math.tan(theta) + up;
  return butt + slack <= scene.ceiling;
}

function standing(
  scene: SlowRoom,
  table: TableSpec,
  cue: SlowCue,
  toRoom: (a: number, b: number) => Spot,
  u: number,
  v: number,
  ux: number,
  uy: number,
  rim: number,
): 'yes' | 'no' | 'unsure' {
  if (scene.ceiling < 1500) return 'no';
  const from = 0.45 * cue.length;
  const to = Math.max(cue.length, rim + 460);
  const columns = Math.ceil((to - from) / STAND_STEP);
  const rows = Math.ceil(700 / STAND_STEP);
  let best = Number.NEGATIVE_INFINITY;
  for (let i = 0; i <= columns; i++) {
    const t = from + ((to - from) * i) / columns;
    for (let j = 0; j <= rows; j++) {
      const aside = -350 + (700 * j) / rows;
      const a = u + t * ux - aside * uy;
      const b = v + t * uy + aside * ux;
      let slack = offFrame(table, a, b) - STAND_RADIUS;
      if (slack <= best) continue;
      slack = Math.min(slack, discSlack(scene, toRoom(a, b), STAND_RADIUS));
      if (slack > best) best = slack;
      if (best >= 0) return 'yes';
    }
  }
  // No place is farther from the grid than half its diagonal.
  return best < -STAND_STEP * Math.SQRT1_2 - 0.5 ? 'no' : 'unsure';
}
