import { rayInGrownConvex } from '../geometry/ray-convex.js';
import { type GrownOutline, grownOutline, rayToGrownOutline } from '../geometry/ray-outline.js';
import {
  depthInRing,
  distanceEdgeToBox,
  distanceToBox,
  distanceToEdge,
  reflexStarts,
} from '../geometry/shape-distance.js';
import { growthInPlan } from './prepare-strokes.js';
import type { StrokeScene } from './stroke-scene.js';

/** Rays that start this much too near to a wall (mm) still start free: touching is allowed, and rounding must not turn it into more. */
const TOUCHING = 1e-9;

/**
 * What one shot after another comes past in plan: filled by {@link ShotTrace.follow}, the same for all cues. Walls and parts beyond
 * `reach` (the greatest ell = R + s + L of the cues) of Q are left out once for all, and so are parts that lie under or hang over
 * every stroke.
 */
export class ShotTrace {
  /** The shot: ball (px, py) and unit vector (ux, uy) from it to the butt. */
  px = 0;
  py = 0;
  ux = 1;
  uy = 0;
  /** t_n, t_r, t_o: where the ray leaves nose, crest and rim. */
  nose = 0;
  crest = 0;
  rim = 0;
  /** Where the ray meets the first grown wall, `reach` or more if not before that; */
  wall = 0;
  /** and which, -1 for none. */
  wallEdge = -1;
  /** Parts whose grown footprints the ray crosses before that wall, with where it does: [t0, t1]. */
  partCount = 0;
  readonly part: Int32Array;
  readonly t0: Float64Array;
  readonly t1: Float64Array;

  readonly #walls: GrownOutline;
  readonly #everyWall: Int32Array;
  readonly #reflex: Uint8Array;
  readonly #startsFree: boolean;
  readonly #parts: Int32Array;
  readonly #margin: number;
  readonly #ray = new Float64Array(4);
  readonly #edge = new Int32Array(1);
  readonly #span = new Float64Array(2);

  constructor(
    readonly scene: StrokeScene,
    readonly reach: number,
  ) {
    const { walls, qx, qy } = scene;
    this.#margin = growthInPlan(scene);
    this.#reflex = reflexStarts(walls);
    const list: number[] = [];
    let clearance = Infinity;
    for (let i = 0; i < walls.count; i++) {
      const distance = distanceEdgeToBox(walls, i, qx, qy);
      clearance = Math.min(clearance, distance);
      if (distance < reach + this.#margin) list.push(i);
    }
    this.#everyWall = Int32Array.from({ length: walls.count }, (_, i) => i);
    const inRoom = depthInRing(walls, this.#reflex, this.#everyWall, 0, walls.count, 0, 0) >= 0;
    this.#startsFree = inRoom && clearance >= this.#margin;
    this.#walls = grownOutline(walls, this.#reflex, list, this.#margin);
    this.#parts = Int32Array.from(partsThatMatter(scene, reach, this.#margin));
    this.part = new Int32Array(this.#parts.length);
    this.t0 = new Float64Array(this.#parts.length);
    this.t1 = new Float64Array(this.#parts.length);
  }

  /** Follows the shot from the ball (px, py), in Q, along the unit vector (ux, uy). */
  follow(px: number, py: number, ux: number, uy: number): void {
    this.px = px;
    this.py = py;
    this.ux = ux;
    this.uy = uy;
    // Handed on in an array: numbers handed to a function one by one are boxed unless the engine takes it apart.
    this.#ray[0] = px;
    this.#ray[1] = py;
    this.#ray[2] = ux;
    this.#ray[3] = uy;
    this.#follow();
  }

  #follow(): void {
    const { scene, px, py, ux, uy } = this;
    const perX = 1 / Math.abs(ux);
    const perY = 1 / Math.abs(uy);
    const ahead = ux < 0 ? -px : px;
    const aside = uy < 0 ? -py : py;
    this.nose = Math.min((scene.noseX - ahead) * perX, (scene.noseY - aside) * perY);
    this.crest = Math.min((scene.crestX - ahead) * perX, (scene.crestY - aside) * perY);
    this.rim = Math.min((scene.rimX - ahead) * perX, (scene.rimY - aside) * perY);
    if (this.#startsFree || this.#startsClear()) {
      this.wall = rayToGrownOutline(this.#walls, this.#ray, this.reach, this.#edge);
      this.wallEdge = this.#edge[0];
    }
    this.#crossParts();
  }

  #crossParts(): void {
    const { px, py, ux, uy, wall } = this;
    const { parts } = this.scene;
    const margin = this.#margin;
    const span = this.#span;
    let count = 0;
    for (let k = 0; k < this.#parts.length; k++) {
      const part = this.#parts[k];
      const radius = parts.radius[part] + margin;
      const dx = parts.centerX[part] - px;
      const dy = parts.centerY[part] - py;
      const off = dx * uy - dy * ux;
      if (off >= radius || -off >= radius) continue;
      const along = dx * ux + dy * uy;
      if (along + radius <= 0 || along - radius >= wall) continue;
      const first = parts.start[part];
      if (!rayInGrownConvex(parts.edges, first, parts.start[part + 1], margin, this.#ray, span)) continue;
      if (span[0] >= wall) continue;
      this.part[count] = part;
      this.t0[count] = span[0];
      this.t1[count] = span[1];
      count++;
    }
    this.partCount = count;
  }

  /** For a Q that comes within the margin of a wall: does this ball keep it? If not, the nearest wall is met at 0. */
  #startsClear(): boolean {
    const { px, py } = this;
    const { walls } = this.scene;
    const depth = depthInRing(walls, this.#reflex, this.#everyWall, 0, walls.count, px, py);
    if (depth >= this.#margin - TOUCHING) return true;
    let nearest = Infinity;
    for (let i = 0; i < walls.count; i++) {
      const distance = distanceToEdge(walls, i, px, py);
      if (distance < nearest) {
        nearest = distance;
        this.wallEdge = i;
      }
    }
    this.wall = 0;
    return false;
  }
}

/**
 * Parts that some stroke of some shot can meet. Left out are those too far from Q, those so low that the cue passes over at every
 * elevation (to cos(theta_max) <= b - a, heights over the ball's centre), and those so high that the whole cue passes under.
 */
function partsThatMatter(scene: StrokeScene, reach: number, margin: number): number[] {
  const { parts, qx, qy, ballHeight, stroke } = scene;
  const cos = Math.cos(stroke.maxElevation);
  const over = stroke.margin - stroke.tipOffset;
  const highest = (stroke.margin + stroke.tipOffset) / cos + reach * Math.sin(stroke.maxElevation);
  const list: number[] = [];
  for (let k = 0; k < parts.count; k++) {
    if (distanceToBox(qx, qy, parts.centerX[k], parts.centerY[k]) - parts.radius[k] - margin >= reach)
      continue;
    const to = parts.to[k] - ballHeight;
    if (to < 0 && to * cos <= -over) continue;
    if (parts.from[k] - ballHeight >= highest) continue;
    list.push(k);
  }
  return list;
}
