import { DEFAULTS } from '../equipment/defaults.js';
import type { CueSpec, TableSpec } from '../equipment/equipment-types.js';
import { type EdgeArrays, edgeArrays } from '../geometry/edge-arrays.js';
import { rayInGrownConvex } from '../geometry/ray-convex.js';
import type { Placement, Ring } from '../geometry/types.js';
import type { Scene } from '../room/scene.js';
import { StrokeClassifier } from '../stroke/classify-traced.js';
import { belowCeilingUpTo, forbiddenByPrism, type Reach } from '../stroke/forbidden-elevations.js';
import { prepareStrokes } from '../stroke/prepare-strokes.js';
import { standingFrom, standingTo } from '../stroke/standing.js';
import type { StrokeSettings } from '../stroke/stroke-settings.js';
import { ShotTrace } from '../stroke/trace-shot.js';
import { type Bits, emptyBits, hasBit, setBit } from './bits.js';
import type { FloorGrid } from './floor-grid.js';
import type { PlacedPiece } from './piece-place.js';
import { SAMPLE_SHOTS, type SampleShots } from './play-sample.js';

/** What a piece would put in the way of cues: convex parts with their heights above the floor. */
export interface Solids {
  readonly edges: EdgeArrays;
  /** Edges of part k: from `start[k]` up to, not including, `start[k + 1]`. */
  readonly start: readonly number[];
  readonly from: readonly number[];
  readonly to: readonly number[];
  /** A disc around all of it. */
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** Body of a piece, and zones that keep cues off. */
export function solidsOf({ spec, parts, zones }: PlacedPiece): Solids {
  const rings: Ring[] = [...parts];
  const from = parts.map(() => spec.from);
  const to = parts.map(() => spec.to);
  for (const { ring, spec: zone } of zones) {
    if (zone.withCueing) continue;
    rings.push(ring);
    from.push(zone.from);
    to.push(zone.to);
  }
  const start = [0];
  for (const ring of rings) start.push(start[start.length - 1] + ring.length);
  const points = rings.flat();
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const x = (Math.min(...xs) + Math.max(...xs)) / 2;
  const y = (Math.min(...ys) + Math.max(...ys)) / 2;
  const radius = Math.max(...points.map(([px, py]) => Math.sqrt((px - x) ** 2 + (py - y) ** 2)));
  return { edges: edgeArrays(rings), start, from, to, x, y, radius };
}

/** Shots that a piece spoils, each for itself: that are no longer open, and no longer playable. */
export interface Spoiled {
  readonly open: Bits;
  readonly playable: Bits;
}

/**
 * The sample's shots from one place of the table in the room without the pieces that move, made ready for the question which of them a piece
 * spoils. Steers a search, never judges: pieces are looked at one by one, and standing room goes by cells of the floor.
 */
export class ShotField {
  /** Shots open, and playable, as far as the room goes; standing left out. */
  readonly open: Bits = emptyBits(SAMPLE_SHOTS);
  readonly playable: Bits = emptyBits(SAMPLE_SHOTS);
  /** Cells where the player of shot k may stand as far as the room goes: from `first[k]` up to, not including, `first[k + 1]`. */
  readonly first: Int32Array = new Int32Array(SAMPLE_SHOTS + 1);
  readonly cells: Int32Array;
  readonly #rays = new Float64Array(4 * SAMPLE_SHOTS);
  /** theta_rail, the least elevation of the short stroke, and the steepest that the ceiling leaves it. */
  readonly #rail = new Float64Array(SAMPLE_SHOTS);
  readonly #least = new Float64Array(SAMPLE_SHOTS);
  readonly #limit = new Float64Array(SAMPLE_SHOTS);
  readonly #full: Reach;
  readonly #short: Reach;
  readonly #ballHeight: number;
  readonly #ray = new Float64Array(4);
  readonly #span = new Float64Array(2);
  readonly #interval = new Float64Array(2);

  /** @param stand Cells where a player may stand as far as the room goes. */
  constructor(
    scene: Scene,
    table: TableSpec,
    stroke: StrokeSettings,
    cue: CueSpec,
    pose: Placement,
    shots: SampleShots,
    grid: FloorGrid,
    stand: Bits,
  ) {
    const strokes = prepareStrokes(scene, table, pose, stroke);
    const { backswing, shortBackswing, margin, tipOffset, maxElevation } = stroke;
    const reach = (swing: number): Reach => ({
      ell: strokes.ballRadius + swing + cue.length,
      margin,
      tipOffset,
      steepest: maxElevation,
    });
    this.#full = reach(backswing);
    this.#short = reach(shortBackswing);
    this.#ballHeight = strokes.ballHeight;
    const classifier = new StrokeClassifier(strokes, cue);
    const trace = new ShotTrace(strokes, classifier.ell);
    const cos = Math.cos(pose.angle);
    const sin = Math.sin(pose.angle);
    const cells = new Int32Array(3 * MOST_STANCES * SAMPLE_SHOTS);
    const standers = standCells(grid, stand, table, pose, cells);
    for (let k = 0; k < SAMPLE_SHOTS; k++) {
      const px = strokes.qx * shots.x[k];
      const py = strokes.qy * shots.y[k];
      const ux = shots.ux[k];
      const uy = shots.uy[k];
      trace.follow(px, py, ux, uy);
      classifier.railTangent(trace);
      if (classifier.openAtRail(trace)) setBit(this.open, k);
      this.#rail[k] = Math.atan(classifier.tanRail);
      this.#least[k] = classifier.leastElevation(trace, 'short');
      if (this.#least[k] >= 0 || hasBit(this.open, k)) setBit(this.playable, k);
      let limit = maxElevation;
      for (const face of strokes.ceiling) {
        const height = face.height + face.slopeX * px + face.slopeY * py - strokes.ballHeight;
        limit = Math.min(limit, belowCeilingUpTo(this.#short, height, face.slopeX * ux + face.slopeY * uy));
      }
      this.#limit[k] = limit;
      this.#rays[4 * k] = pose.x + cos * px - sin * py;
      this.#rays[4 * k + 1] = pose.y + sin * px + cos * py;
      this.#rays[4 * k + 2] = cos * ux - sin * uy;
      this.#rays[4 * k + 3] = sin * ux + cos * uy;
      this.first[k + 1] = standers(
        this.first[k],
        px,
        py,
        ux,
        uy,
        standingFrom(cue.length),
        standingTo(cue.length, trace.rim),
      );
    }
    this.cells = cells.slice(0, this.first[SAMPLE_SHOTS]);
  }

  /** Which shots the solids spoil. */
  spoiled(solids: Solids): Spoiled {
    const { margin, ell } = this.#full;
    const ray = this.#ray;
    const open = emptyBits(SAMPLE_SHOTS);
    const playable = emptyBits(SAMPLE_SHOTS);
    const radius = solids.radius + margin;
    for (let k = 0; k < SAMPLE_SHOTS; k++) {
      const dx = solids.x - this.#rays[4 * k];
      const dy = solids.y - this.#rays[4 * k + 1];
      const ux = this.#rays[4 * k + 2];
      const uy = this.#rays[4 * k + 3];
      const off = dx * uy - dy * ux;
      if (off >= radius || -off >= radius) continue;
      const along = dx * ux + dy * uy;
      if (along + radius <= 0 || along - radius >= ell) continue;
      for (let i = 0; i < 4; i++) ray[i] = this.#rays[4 * k + i];
      this.#meet(solids, k, open, playable);
    }
    return { open, playable };
  }

  #meet({ edges, start, from, to }: Solids, k: number, open: Bits, playable: Bits): void {
    const { margin } = this.#full;
    const span = this.#span;
    const interval = this.#interval;
    for (let part = 0; part < from.length; part++) {
      if (!rayInGrownConvex(edges, start[part], start[part + 1], margin, this.#ray, span)) continue;
      const low = from[part] - this.#ballHeight;
      const high = to[part] - this.#ballHeight;
      if (forbiddenByPrism(this.#full, span[0], span[1], low, high, interval)) {
        if (interval[0] < this.#rail[k] && this.#rail[k] < interval[1]) setBit(open, k);
      }
      if (forbiddenByPrism(this.#short, span[0], span[1], low, high, interval)) {
        const least = this.#least[k];
        if (interval[0] < least && least < interval[1] && interval[1] > this.#limit[k]) setBit(playable, k);
      }
    }
  }
}

/** How far a cell's middle may be off the floor for the player while the cell counts, as a share of the cell. */
export const HIDDEN_STAND = 0.35;

/** Most cells that are listed for one shot. */
const MOST_STANCES = 96;

/**
 * Lists, for a window of standing in the table's frame, the cells in it: every one, or every second or third of a large window. Returns how many
 * there are in the list then.
 */
function standCells(grid: FloorGrid, stand: Bits, table: TableSpec, pose: Placement, into: Int32Array) {
  const { cell, left, bottom, columns, rows } = grid;
  const { radius, sideways } = DEFAULTS.standing;
  const cos = Math.cos(pose.angle);
  const sin = Math.sin(pose.angle);
  const off = radius - HIDDEN_STAND * cell;
  const rimX = table.outer.length / 2;
  const rimY = table.outer.width / 2;
  return (
    start: number,
    px: number,
    py: number,
    ux: number,
    uy: number,
    from: number,
    to: number,
  ): number => {
    const middle = (from + to) / 2;
    const half = (to - from) / 2;
    const mu = px + middle * ux;
    const mv = py + middle * uy;
    const x = pose.x + cos * mu - sin * mv;
    const y = pose.y + sin * mu + cos * mv;
    const wx = cos * ux - sin * uy;
    const wy = sin * ux + cos * uy;
    const step = Math.max(1, Math.round(Math.sqrt((4 * half * sideways) / (cell * cell * MOST_STANCES))));
    const reachY = half * Math.abs(wy) + sideways * Math.abs(wx);
    const r0 = Math.max(0, Math.ceil((y - reachY - bottom) / cell - 0.5));
    const r1 = Math.min(rows - 1, Math.floor((y + reachY - bottom) / cell - 0.5));
    let count = start;
    for (let r = r0; r <= r1; r += step) {
      const dy = bottom + (r + 0.5) * cell - y;
      // Where |dx wx + dy wy| <= half and |dy wx - dx wy| <= sideways.
      let lo = -Infinity;
      let hi = Infinity;
      if (wx !== 0) {
        const reach = half / Math.abs(wx);
        lo = -dy * (wy / wx) - reach;
        hi = lo + 2 * reach;
      }
      if (wy !== 0) {
        const reach = sideways / Math.abs(wy);
        const other = dy * (wx / wy) - reach;
        lo = Math.max(lo, other);
        hi = Math.min(hi, other + 2 * reach);
      }
      const c0 = Math.max(0, Math.ceil((x + lo - left) / cell - 0.5));
      const c1 = Math.min(columns - 1, Math.floor((x + hi - left) / cell - 0.5));
      for (let c = c0; c <= c1; c += step) {
        const i = r * columns + c;
        if ((stand[i >> 5] & (1 << (i & 31))) === 0) continue;
        const gx = left + (c + 0.5) * cell - pose.x;
        const gy = y + dy - pose.y;
        const ox = Math.max(0, Math.abs(cos * gx + sin * gy) - rimX);
        const oy = Math.max(0, Math.abs(cos * gy - sin * gx) - rimY);
        if (ox * ox + oy * oy >= off * off && count < into.length) into[count++] = i;
      }
    }
    return count;
  };
}
