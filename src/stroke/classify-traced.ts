import { DEFAULTS } from '../equipment/defaults.js';
import { belowCeilingUpTo, forbiddenByPrism, type Reach, stopsShortFrom } from './forbidden-elevations.js';
import { canStand, standingFrom, standingTo } from './standing.js';
import type { StandingRoom } from './standing-room.js';
import type { ShotCode, StrokeCue, StrokeScene } from './stroke-scene.js';
import type { ShotTrace } from './trace-shot.js';

const UNKNOWN = 0;
const NO = 1;
const YES = 2;

/**
 * The class of a traced shot for one cue. One of these serves all shots of its scene and cue.
 *
 * The open stroke is tried at theta_rail by its conditions themselves, without angles; only a shot that fails is looked into
 * further: the elevations that the short stroke is forbidden, and the least that is left.
 */
export class StrokeClassifier {
  /** Tangents of theta_rail (Infinity: none will do) and, after {@link leastElevation}, of the elevation found. */
  tanRail = 0;
  tanElevation = 0;
  /** Room to stand for the shot that is being classified. */
  #standing = UNKNOWN;
  readonly #full: Reach;
  readonly #short: Reach;
  readonly #tanSteepest: number;
  readonly #lo: Float64Array;
  readonly #hi: Float64Array;
  readonly #interval = new Float64Array(2);

  constructor(
    readonly scene: StrokeScene,
    readonly cue: StrokeCue,
  ) {
    const { backswing, shortBackswing, margin, tipOffset, maxElevation } = scene.stroke;
    const reach = (swing: number): Reach => ({
      ell: scene.ballRadius + swing + cue.length,
      margin,
      tipOffset,
      steepest: maxElevation,
    });
    this.#full = reach(backswing);
    this.#short = reach(shortBackswing);
    this.#tanSteepest = Math.tan(maxElevation);
    this.#lo = new Float64Array(scene.parts.count + 1);
    this.#hi = new Float64Array(scene.parts.count + 1);
  }

  /** ell with the full backswing, mm: what {@link ShotTrace} has to look as far as. */
  get ell(): number {
    return this.#full.ell;
  }

  /** The class of the shot; `tanElevation` is then the tangent of its elevation, unless it is blocked. */
  classify(trace: ShotTrace, room: StandingRoom): ShotCode {
    this.#standing = UNKNOWN;
    this.#findRail(trace);
    if (this.railTooSteep) return 2;
    if (this.#freeAtRail(trace)) {
      this.tanElevation = this.tanRail;
      return this.stoodFor(trace, room) ? 0 : 2;
    }
    const theta = this.leastElevation(trace, 'short');
    if (theta < 0 || !this.stoodFor(trace, room)) return 2;
    this.tanElevation = Math.tan(theta);
    return 1;
  }

  /** Is there room to stand for the shot, whatever its elevation? */
  stands(trace: ShotTrace, room: StandingRoom): boolean {
    const { length } = this.cue;
    return canStand(
      this.scene,
      room,
      trace.px,
      trace.py,
      trace.ux,
      trace.uy,
      standingFrom(length),
      standingTo(length, trace.rim),
      DEFAULTS.standing.sideways,
    );
  }

  /** {@link stands} for the shot that was classified last, without asking twice. */
  stoodFor(trace: ShotTrace, room: StandingRoom): boolean {
    if (this.#standing === UNKNOWN) this.#standing = this.stands(trace, room) ? YES : NO;
    return this.#standing === YES;
  }

  /** tan(theta_rail), also kept in `tanRail`: see `railElevation`, of which this is the form without angles. */
  railTangent(trace: ShotTrace): number {
    this.#findRail(trace);
    return this.tanRail;
  }

  #findRail(trace: ShotTrace): void {
    const { noseRise, railRise } = this.scene;
    let tan = this.#tangentOver(trace.nose, noseRise);
    const crest = this.#tangentOver(trace.crest, railRise);
    if (crest > tan) tan = crest;
    const rim = this.#tangentOver(trace.rim, railRise);
    if (rim > tan) tan = rim;
    this.tanRail = tan;
  }

  /** Is theta_rail free with the full backswing? Asked of a trace whose `tanRail` is up to date. */
  openAtRail(trace: ShotTrace): boolean {
    return !this.railTooSteep && this.#freeAtRail(trace);
  }

  /** Is theta_rail beyond theta_max? */
  get railTooSteep(): boolean {
    return this.tanRail > this.#tanSteepest;
  }

  /** The least elevation in [theta_rail, theta_max] (radians) that nothing forbids with the given backswing; -1 for none. Needs `tanRail`. */
  leastElevation(trace: ShotTrace, backswing: 'full' | 'short'): number {
    if (this.railTooSteep) return -1;
    const reach = backswing === 'full' ? this.#full : this.#short;
    const { ell, steepest } = reach;
    const { ballHeight, parts } = this.scene;
    if (trace.wall < ell && trace.wall < ell * Math.cos(steepest)) return -1;
    const limit = Math.min(steepest, this.#ceilingLimit(reach, trace));
    let theta = Math.atan(this.tanRail);
    if (theta > limit) return -1;
    const lo = this.#lo;
    const hi = this.#hi;
    let count = 0;
    if (trace.wall < ell) {
      lo[0] = -1;
      hi[0] = stopsShortFrom(ell, trace.wall);
      count = 1;
    }
    for (let k = 0; k < trace.partCount; k++) {
      const part = trace.part[k];
      const from = parts.from[part] - ballHeight;
      const to = parts.to[part] - ballHeight;
      if (!forbiddenByPrism(reach, trace.t0[k], trace.t1[k], from, to, this.#interval)) continue;
      lo[count] = this.#interval[0];
      hi[count] = this.#interval[1];
      count++;
    }
    for (let moved = true; moved; ) {
      moved = false;
      for (let k = 0; k < count; k++) {
        if (lo[k] < theta && theta < hi[k]) {
          theta = hi[k];
          if (theta > limit) return -1;
          moved = true;
        }
      }
    }
    return theta;
  }

  /** Does the wall ahead keep the full stroke from elevation tan? */
  wallForbids(tan: number, trace: ShotTrace): boolean {
    const { ell } = this.#full;
    return trace.wall < ell && trace.wall < ell / Math.sqrt(1 + tan * tan);
  }

  /** Does the k-th part of the trace keep the full stroke from elevation tan? */
  partForbids(tan: number, trace: ShotTrace, k: number): boolean {
    const { ell, margin, tipOffset } = this.#full;
    const { ballHeight, parts } = this.scene;
    const t0 = trace.t0[k];
    // With q = sqrt(1 + tan^2) = 1 / cos(theta), every condition of the model is multiplied by it.
    const q = Math.sqrt(1 + tan * tan);
    if (t0 * q >= ell) return false;
    const to = parts.to[trace.part[k]] - ballHeight;
    const over = margin - tipOffset;
    if (t0 * tan - over * q >= to && this.#canPassOver(t0, to, over)) return false;
    const from = parts.from[trace.part[k]] - ballHeight;
    return (margin + tipOffset) * q + Math.min(trace.t1[k], ell / q) * tan > from;
  }

  /** Does ceiling face i keep the full stroke from elevation tan? */
  ceilingForbids(tan: number, trace: ShotTrace, i: number): boolean {
    const { ell, margin, tipOffset } = this.#full;
    const face = this.scene.ceiling[i];
    const slope = face.slopeX * trace.ux + face.slopeY * trace.uy;
    const height = face.height + face.slopeX * trace.px + face.slopeY * trace.py - this.scene.ballHeight;
    if (slope * this.#tanSteepest < -1) return Math.atan(tan) > belowCeilingUpTo(this.#full, height, slope);
    const q = Math.sqrt(1 + tan * tan);
    const needed = (margin + tipOffset) * q;
    return needed > height || needed + (ell / q) * (tan - slope) > height;
  }

  #freeAtRail(trace: ShotTrace): boolean {
    const tan = this.tanRail;
    if (this.wallForbids(tan, trace)) return false;
    for (let k = 0; k < trace.partCount; k++) if (this.partForbids(tan, trace, k)) return false;
    for (let i = 0; i < this.scene.ceiling.length; i++) if (this.ceilingForbids(tan, trace, i)) return false;
    return true;
  }

  #ceilingLimit(reach: Reach, trace: ShotTrace): number {
    const { ceiling, ballHeight } = this.scene;
    let limit = Infinity;
    for (let i = 0; i < ceiling.length; i++) {
      const { height, slopeX, slopeY } = ceiling[i];
      const above = height + slopeX * trace.px + slopeY * trace.py - ballHeight;
      const most = belowCeilingUpTo(reach, above, slopeX * trace.ux + slopeY * trace.uy);
      if (most < limit) limit = most;
    }
    return limit;
  }

  /** As in `passesOverFrom`: is passing over taken to be possible at all? */
  #canPassOver(t0: number, to: number, over: number): boolean {
    if (over <= 0) return true;
    const least = over * Math.sqrt(1 + this.#tanSteepest * this.#tanSteepest);
    return t0 * t0 + to * to >= least * least;
  }

  /**
   * Tangent of `elevationOver(t, rise, r - b)`, at least 0: with A = hypot(t, rise), gap = r - b and root = sqrt(A^2 - gap^2),
   * the sine and cosine of delta + asin(gap / A) are (rise root + t gap) / A^2 and (t root - rise gap) / A^2.
   */
  #tangentOver(t: number, rise: number): number {
    const { scene, cue } = this;
    if (t >= this.#full.ell) return 0;
    const share = (t - scene.ballRadius) / cue.length;
    const radius = cue.tipRadius + (cue.buttRadius - cue.tipRadius) * Math.min(1, Math.max(0, share));
    const gap = radius - scene.stroke.tipOffset;
    const square = t * t + rise * rise - gap * gap;
    if (square < 0) return gap > 0 ? Infinity : 0;
    const root = Math.sqrt(square);
    const sin = rise * root + t * gap;
    if (sin <= 0) return 0;
    const cos = t * root - rise * gap;
    return cos > 0 ? sin / cos : Infinity;
  }
}
