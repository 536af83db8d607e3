import { depthInRing, reflexStarts } from '../geometry/shape-distance.js';
import {
  ANGLE_SLACK,
  type BoxFrame,
  boxFrame,
  extentOf,
  greatestDot,
  LENGTH_SLACK,
  leastDot,
  type Range,
  type ShotBox,
  setBox,
} from './box-bounds.js';
import { addInterval, firstFree, type Intervals, intervals } from './box-elevations.js';
import { boundPart, type PartSpan, partSpan } from './box-parts.js';
import { boundRail, type RailRange, railRange } from './box-rail.js';
import { allBallsStartFree, liesUnderEveryCue } from './box-scene.js';
import { standsNowhere, standsThroughout } from './box-standing.js';
import { boundWalls } from './box-walls.js';
import {
  belowCeilingUpTo,
  passesOverFrom,
  passesUnderUpTo,
  type Reach,
  stopsShortFrom,
} from './forbidden-elevations.js';
import { growthInPlan } from './prepare-strokes.js';
import { elevationOver } from './rail-elevation.js';
import type { StandingRoom } from './standing-room.js';
import type { StrokeCue, StrokeScene } from './stroke-scene.js';

// Facts about all shots of a box: bits of one number. A box inside another inherits them.
/** theta_rail is feasible with the full backswing. */
export const OPEN_ELEVATION = 1;
/** Some elevation from theta_rail up is feasible with the short backswing; so it is for shots with the fact above. */
export const PLAYABLE_ELEVATION = 2;
export const ROOM_TO_STAND = 4;
/** And the opposites, again of every shot of the box. */
export const NO_OPEN_ELEVATION = 8;
export const NO_PLAYABLE_ELEVATION = 16;
export const NO_ROOM_TO_STAND = 32;
export const EVERY_FACT = 63;

const ELEVATION_FACTS = OPEN_ELEVATION | PLAYABLE_ELEVATION | NO_OPEN_ELEVATION | NO_PLAYABLE_ELEVATION;

/** Where a {@link BoxJudge} keeps the walls and parts that matter in a box, and how many there are. */
export interface BoxLists {
  readonly slot: number;
  readonly walls: number;
  readonly parts: number;
}

/**
 * Judges boxes of shots for one scene and cue. Symbols: ell = R + s + L with the full backswing, ell' = R + s' + L with the short
 * one. Bounds over the box give theta_rail in [theta.lo, theta.hi] and, for every obstacle, one interval of elevations that holds
 * whatever it forbids to any shot of the box (possible) and one that it forbids to every shot (certain).
 *
 * - Every theta_rail is feasible with ell if [theta.lo, theta.hi] meets no possible interval.
 * - Every shot has a feasible elevation with ell' if one elevation >= theta.hi lies outside all possible intervals. Open shots
 *   have one too (theta_rail: a shorter cue meets less), so this is all that playable asks of elevations.
 * - No theta_rail is feasible if certain intervals cover [theta.lo, theta.hi], and no shot has any feasible elevation if they
 *   cover [theta.lo, theta_max].
 */
export class BoxJudge {
  /** Which of the facts that the last {@link judge} was asked for it proved, */
  facts = 0;
  /** by how much (radians; negative: failed) all shots have an open or a playable elevation: a guide for searches, */
  openSpare = 0;
  playableSpare = 0;
  /** and how many walls and parts it listed as still mattering in the box. */
  wallCount = 0;
  partCount = 0;

  /** Slot k of the lists begins at k times the number of all walls or parts. */
  readonly #wallList: Int32Array;
  readonly #partList: Int32Array;

  readonly #reflex: Uint8Array;
  readonly #growth: number;
  /** Every ball of Q is in the room and a margin away from every wall. */
  readonly #startsFree: boolean;
  readonly #everyWall: Int32Array;
  readonly #full: Reach;
  readonly #short: Reach;
  /** Heights of parts over the ball's centre, */
  readonly #from: Float64Array;
  readonly #to: Float64Array;
  /** and up to which elevation the whole cue stays below a part, whatever t1 is. */
  readonly #fullUnder: Float64Array;
  readonly #shortUnder: Float64Array;

  readonly #frame: BoxFrame = boxFrame();
  readonly #rail: RailRange = railRange();
  readonly #wall: Range = { lo: 0, hi: 0 };
  readonly #span: PartSpan = partSpan();
  readonly #shortPossible: Intervals;
  readonly #fullCertain: Intervals;
  readonly #shortCertain: Intervals;

  /** A judge with lists for `slots` boxes. */
  constructor(
    readonly scene: StrokeScene,
    readonly room: StandingRoom,
    readonly cue: StrokeCue,
    slots: number,
  ) {
    const { walls, parts, stroke, ballHeight } = scene;
    this.#wallList = new Int32Array(slots * walls.count);
    this.#partList = new Int32Array(slots * parts.count);
    this.#reflex = reflexStarts(walls);
    this.#growth = growthInPlan(scene);
    this.#everyWall = Int32Array.from({ length: walls.count }, (_, i) => i);
    this.#startsFree = allBallsStartFree(scene);
    const limits = {
      margin: stroke.margin,
      tipOffset: stroke.tipOffset,
      steepest: stroke.maxElevation,
    };
    const length = scene.ballRadius + cue.length;
    this.#full = { ell: length + stroke.backswing, ...limits };
    this.#short = { ell: length + stroke.shortBackswing, ...limits };
    this.#from = parts.from.map((height) => height - ballHeight);
    this.#to = parts.to.map((height) => height - ballHeight);
    this.#fullUnder = this.#from.map((from) => passesUnderUpTo(this.#full, Infinity, from));
    this.#shortUnder = this.#from.map((from) => passesUnderUpTo(this.#short, Infinity, from));
    this.#shortPossible = intervals(parts.count + 1);
    this.#fullCertain = intervals(parts.count + 1);
    this.#shortCertain = intervals(parts.count + 1);
  }

  /** Lists all walls, and all parts that can matter to any shot, in slot 0. */
  listAll(): BoxLists {
    const { walls, parts } = this.scene;
    this.#wallList.set(this.#everyWall);
    let count = 0;
    for (let k = 0; k < parts.count; k++) {
      if (!liesUnderEveryCue(this.scene, this.cue, k)) this.#partList[count++] = k;
    }
    return { slot: 0, walls: walls.count, parts: count };
  }

  /**
   * Judges a box (balls in Q) for the facts in `wanted`. Only the walls and parts in `lists` are looked at; those that matter in the
   * box are listed in slot `nextSlot`, for boxes inside it: their counts are {@link wallCount} and {@link partCount}.
   */
  judge(box: ShotBox, wanted: number, lists: BoxLists, nextSlot: number): void {
    const frame = this.#frame;
    setBox(frame, box);
    boundRail(frame, this.scene, this.cue, this.#rail);
    this.facts = 0;
    this.openSpare = 0;
    this.playableSpare = 0;
    this.wallCount = 0;
    this.partCount = 0;
    if ((wanted & ELEVATION_FACTS) !== 0) this.#judgeElevations(wanted, lists, nextSlot);
    const { scene, room, cue } = this;
    const { rim } = this.#rail;
    if ((wanted & ROOM_TO_STAND) !== 0 && standsThroughout(frame, scene, room, cue.length, rim)) {
      this.facts |= ROOM_TO_STAND;
    } else if ((wanted & NO_ROOM_TO_STAND) !== 0 && standsNowhere(frame, scene, room, cue.length, rim)) {
      this.facts |= NO_ROOM_TO_STAND;
    }
  }

  #judgeElevations(wanted: number, { slot, walls, parts }: BoxLists, nextSlot: number): void {
    const { theta } = this.#rail;
    const steepest = this.#full.steepest;
    const fullCeiling = this.#ceilingLimit(this.#full, -1);
    const shortCeiling = this.#ceilingLimit(this.#short, -1);

    this.#boundWalls(slot, walls, nextSlot);
    const fullWall = forbiddenByWall(this.#full.ell, this.#wall.lo, ANGLE_SLACK);
    const shortWall = forbiddenByWall(this.#short.ell, this.#wall.lo, ANGLE_SLACK);

    const negative = (wanted & (NO_OPEN_ELEVATION | NO_PLAYABLE_ELEVATION)) !== 0;
    this.#shortPossible.count = 0;
    this.#fullCertain.count = 0;
    this.#shortCertain.count = 0;
    let openSpare = Math.min(steepest - theta.hi, fullCeiling - theta.hi, theta.lo - fullWall);
    addInterval(this.#shortPossible, -1, shortWall);
    const partCapacity = this.scene.parts.count;
    const list = this.#partList;
    let kept = nextSlot * partCapacity;
    const end = slot * partCapacity + parts;
    for (let k = slot * partCapacity; k < end; k++) {
      const part = list[k];
      const span = this.#span;
      if (!boundPart(this.#frame, this.scene.parts, part, this.#growth, this.#full.ell, span)) continue;
      const over = passesOverFrom(this.#full, span.entryLo, this.#to[part]);
      const hi = Math.min(over, stopsShortFrom(this.#full.ell, span.entryLo)) + ANGLE_SLACK;
      if (hi <= theta.lo) continue;
      const byEnd = this.#underEnd(part, span.exitHi);
      const lo = Math.max(byEnd, this.#fullUnder[part]) - ANGLE_SLACK;
      if (lo >= steepest) continue;
      list[kept++] = part;
      openSpare = Math.min(openSpare, Math.max(theta.lo - hi, lo - theta.hi));
      if (span.entryLo < this.#short.ell) {
        const shortHi = Math.min(over, stopsShortFrom(this.#short.ell, span.entryLo)) + ANGLE_SLACK;
        addInterval(this.#shortPossible, Math.max(byEnd, this.#shortUnder[part]) - ANGLE_SLACK, shortHi);
      }
      if (negative && span.sure) this.#addCertain(part, span);
    }
    this.partCount = kept - nextSlot * partCapacity;

    this.openSpare = openSpare;
    if ((wanted & OPEN_ELEVATION) !== 0 && openSpare >= 0) this.facts |= OPEN_ELEVATION;
    const free = firstFree(this.#shortPossible, theta.hi);
    this.playableSpare = Math.min(steepest, shortCeiling) - free;
    if ((wanted & PLAYABLE_ELEVATION) !== 0 && this.playableSpare >= 0) this.facts |= PLAYABLE_ELEVATION;
    if (negative) this.#judgeNone(wanted);
  }

  /** The facts that certain intervals prove. */
  #judgeNone(wanted: number): void {
    const { theta } = this.#rail;
    const steepest = this.#full.steepest;
    addInterval(this.#fullCertain, -1, forbiddenByWall(this.#full.ell, this.#wall.hi, -ANGLE_SLACK));
    addInterval(this.#shortCertain, -1, forbiddenByWall(this.#short.ell, this.#wall.hi, -ANGLE_SLACK));
    if ((wanted & NO_OPEN_ELEVATION) !== 0) {
      const limit = Math.min(theta.hi, steepest, this.#ceilingLimit(this.#full, 1));
      if (firstFree(this.#fullCertain, theta.lo) > limit) this.facts |= NO_OPEN_ELEVATION;
    }
    if ((wanted & NO_PLAYABLE_ELEVATION) !== 0) {
      const limit = Math.min(steepest, this.#ceilingLimit(this.#short, 1));
      if (firstFree(this.#shortCertain, theta.lo) > limit) this.facts |= NO_PLAYABLE_ELEVATION;
    }
  }

  #addCertain(part: number, span: PartSpan): void {
    const entry = Math.max(0, span.entryHi);
    if (entry >= this.#full.ell) return;
    const over = passesOverFrom(this.#full, entry, this.#to[part]);
    const byEnd = this.#underEnd(part, Math.max(0, span.exitLo));
    const hi = Math.min(over, stopsShortFrom(this.#full.ell, entry)) - ANGLE_SLACK;
    addInterval(this.#fullCertain, Math.max(byEnd, this.#fullUnder[part]) + ANGLE_SLACK, hi);
    if (entry >= this.#short.ell) return;
    const shortHi = Math.min(over, stopsShortFrom(this.#short.ell, entry)) - ANGLE_SLACK;
    addInterval(this.#shortCertain, Math.max(byEnd, this.#shortUnder[part]) + ANGLE_SLACK, shortHi);
  }

  /** Up to which elevation the cue has passed under a part where that ends, t1; -1 where it does not at any. */
  #underEnd(part: number, t1: number): number {
    const gap = this.#full.margin + this.#full.tipOffset;
    const from = this.#from[part];
    return from < gap ? -1 : elevationOver(t1, from, -gap);
  }

  /**
   * Bounds where the ceiling ends the feasible elevations, for the least (`side` -1) or most favourable (1) shot of the box: never too
   * high for the least favourable, never too low for the other.
   */
  #ceilingLimit(reach: Reach, side: -1 | 1): number {
    const { ceiling, ballHeight } = this.scene;
    const frame = this.#frame;
    let limit = Infinity;
    for (const { height, slopeX, slopeY } of ceiling) {
      const slope = Math.hypot(slopeX, slopeY);
      const over = height + slopeX * frame.u + slopeY * frame.v - ballHeight;
      const extent = extentOf(frame, slopeX, slopeY) + LENGTH_SLACK;
      let along = 0;
      if (slope > 0) {
        const c = (slopeX * frame.cos + slopeY * frame.sin) / slope;
        const s = (slopeX * frame.sin - slopeY * frame.cos) / slope;
        along = slope * (side < 0 ? leastDot(frame, c, s) : greatestDot(frame, c, s));
      }
      const upTo = belowCeilingUpTo(reach, over + side * extent, along) + side * ANGLE_SLACK;
      if (upTo < limit) limit = upTo;
    }
    return limit;
  }

  /** Sets the bounds of t0 for walls, and lists those that matter. */
  #boundWalls(slot: number, count: number, nextSlot: number): void {
    const { walls } = this.scene;
    const frame = this.#frame;
    const wall = this.#wall;
    const ell = this.#full.ell;
    const start = slot * walls.count;
    const next = nextSlot * walls.count;
    const list = this.#wallList;
    this.wallCount =
      boundWalls(frame, walls, this.#reflex, this.#growth, ell, list, start, start + count, next, wall) -
      next;
    if (this.#startsFree) return;
    const depth = depthInRing(walls, this.#reflex, this.#everyWall, 0, walls.count, frame.u, frame.v);
    const away = Math.hypot(frame.halfU, frame.halfV) + LENGTH_SLACK;
    if (depth - away < this.#growth) wall.lo = 0;
    if (depth + away < this.#growth) wall.hi = 0;
  }
}

/** Up to which elevation a wall met at t0 forbids a stroke; -1: none. */
function forbiddenByWall(ell: number, t0: number, slack: number): number {
  return t0 < ell ? stopsShortFrom(ell, t0) + slack : -1;
}
