import { BOUND_SLACK, type BoxBounds, boundBox, createBoxBounds } from './box-bounds.js';
import { type BoxLp, createBoxLp, solveBoxLp } from './box-lp.js';
import { popBox, pushBox, type WaitingBox } from './box-queue.js';
import { polish } from './polish.js';
import { setPoseBox } from './pose-box.js';
import { createPoseProbe, type FoundPose, type PoseProbe, probePose } from './pose-probe.js';
import { roomBound, type SearchScene } from './search-scene.js';
import { halfGroup, nearestTurn, turnGroups } from './turn-groups.js';

/** What to look for, in the scene's own terms. */
export interface SearchGoal {
  /** Turns to look at, radians in [0, pi), ascending; null: every turn. */
  readonly turns: readonly number[] | null;
  readonly gap: number;
  readonly maxBoxes: number;
  /** Only clearances above this are of interest, mm, at least 0. */
  readonly floor: number;
  /** The search ends once a clearance of at least this is found, mm. */
  readonly target: number;
  /** Known before: no pose with one of the turns has more clearance, mm. */
  readonly ceiling: number;
  readonly onProgress: (value: number, upperBound: number, boxes: number) => boolean | undefined;
}

export interface SearchOutcome {
  /** In the scene's own frame: about the room's middle, angle of Q's longer side; null: none above the floor. */
  readonly found: FoundPose | null;
  readonly upperBound: number;
  readonly boxes: number;
  /** The search ended before its bounds met. */
  readonly stopped: boolean;
}

/** Boxes between two calls of `onProgress`. */
const PROGRESS_EVERY = 256;
/** Incumbents that are polished; more of them gain nothing, since the boxes lead to the optimum anyway. */
const MOST_POLISHES = 4;
/** A value this near to its bound (mm) needs no polish at the end. */
const POLISHED = 1e-3;
/** A box that moves no point further than this (mm) is not split: below it everything is rounding. */
const LEAST_REACH = 1e-5;
/** Smallest gap, mm: below it bounds are rounding. */
const LEAST_GAP = 1e-4;
/** Share of the gap (of 1 mm at most) that the frame's rows are moved in by, so that a point that meets them stands free. */
const RESERVE_SHARE = 0.05;
/** Constraints within this (mm) of the nearest go to the front of a list. */
const FRONT_DEPTH = 100;
/** How often a point of the linear program that fails by the frame alone is tried again further in. */
const MOST_RETRIES = 2;

interface Search {
  readonly scene: SearchScene;
  readonly turns: readonly number[] | null;
  readonly gap: number;
  readonly bounds: BoxBounds;
  readonly lp: BoxLp;
  readonly probe: PoseProbe;
  readonly heap: WaitingBox[];
  best: FoundPose | null;
  /** Clearance of the best pose, or the floor. */
  value: number;
  /** Largest bound of the boxes that were given up as not worth a closer look. */
  givenUp: number;
  polishes: number;
  age: number;
}

/**
 * Best-first branch and bound over boxes of poses. `upperBound` holds for every pose (with one of `turns`) where the frame
 * stands free, whenever and why ever the search ends.
 */
export function searchPlaces(scene: SearchScene, goal: SearchGoal): SearchOutcome {
  const search = startSearch(scene, goal);
  let boxes = 0;
  let stopped = false;
  let top = 0;
  for (;;) {
    const box = popBox(search.heap);
    top = 0;
    if (box === undefined) break;
    if (box.bound <= cutOf(search)) {
      // So are all that wait behind it.
      giveUp(search, box.bound);
      break;
    }
    top = box.bound;
    if (search.best !== null && search.value >= goal.target) break;
    if (boxes >= goal.maxBoxes) {
      stopped = true;
      break;
    }
    boxes++;
    if (!lookAt(search, box)) stopped = true;
    if (
      boxes % PROGRESS_EVERY === 0 &&
      goal.onProgress(foundValue(search), boundOf(search, top), boxes) === false
    ) {
      stopped = true;
      break;
    }
  }
  const upperBound = boundOf(search, top);
  if (upperBound - search.value > POLISHED) polishBest(search);
  goal.onProgress(foundValue(search), upperBound, boxes);
  return { found: search.best, upperBound, boxes, stopped };
}

function startSearch(scene: SearchScene, goal: SearchGoal): Search {
  const search: Search = {
    scene,
    turns: goal.turns,
    gap: Math.max(goal.gap, LEAST_GAP),
    bounds: createBoxBounds(scene),
    lp: createBoxLp(),
    probe: createPoseProbe(scene),
    heap: [],
    best: null,
    value: Math.max(goal.floor, 0),
    givenUp: 0,
    polishes: 0,
    age: 0,
  };
  const bound = Math.min(roomBound(scene), goal.ceiling) + BOUND_SLACK;
  const list = Uint32Array.from({ length: scene.looseCount }, (_, item) => item);
  for (const [angle, turn] of goal.turns === null ? [[Math.PI / 2, Math.PI / 2]] : turnGroups(goal.turns)) {
    const extent = [0, 0, angle, scene.halfX, scene.halfY, turn];
    pushBox(search.heap, { bound, extent, list, full: false, age: search.age++ });
  }
  return search;
}

/**
 * Boxes with a bound up to this are given up. The gap is given away only against a place found or a floor: while it is open
 * whether there is any place at all, only boxes where there is none are.
 */
function cutOf(search: Search): number {
  if (search.best === null && search.value === 0) return search.scene.least;
  return Math.max(search.value + search.gap, search.scene.least);
}

function foundValue(search: Search): number {
  return search.best === null ? 0 : search.value;
}

function boundOf(search: Search, top: number): number {
  return Math.max(search.value, search.givenUp, top);
}

function giveUp(search: Search, bound: number): void {
  // Where the frame stands free the clearance is at least `least`: a lower bound tells that it stands nowhere in the box.
  if (bound > search.scene.least && bound > search.givenUp) search.givenUp = bound;
}

/** Bounds a box, tries its most promising pose and splits it. False: the box is too small to be split. */
function lookAt(search: Search, waiting: WaitingBox): boolean {
  const { scene, bounds, lp } = search;
  const { box, rows } = bounds;
  const [x, y, angle, dx, dy, turn] = waiting.extent;
  // The frame's own constraints against walls and tall things follow from Q's wherever the clearance is ample.
  const full = waiting.full || (waiting.bound < scene.ample && search.value < scene.ample);
  const list = full && !waiting.full ? withFrame(scene, waiting.list) : waiting.list;

  setPoseBox(box, x, y, angle, dx, dy, turn);
  const cut = cutOf(search);
  let bound = boundBox(bounds, list, list.length, waiting.bound, cut, 0);
  if (bound > cut) {
    solveBoxLp(lp, rows, cut - BOUND_SLACK);
    bound = Math.min(bound, lp.bound + BOUND_SLACK);
  }
  if (bound <= cut) {
    giveUp(search, bound);
    return true;
  }
  const reach = box.play.reach;
  const kept = keepNear(list, bounds.nearest, bound);
  if (tryPoint(search, list)) {
    if (search.polishes < MOST_POLISHES) polishBest(search);
    if (bound <= cutOf(search)) {
      giveUp(search, bound);
      return true;
    }
  }
  if (reach < LEAST_REACH) {
    giveUp(search, bound);
    return false;
  }
  const byTurn = scene.play.radius * turn;
  const axis = dx >= dy && dx >= byTurn ? 0 : dy >= byTurn ? 1 : 2;
  for (const towards of [-1, 1]) {
    const extent = [x, y, angle, dx, dy, turn];
    extent[axis + 3] /= 2;
    extent[axis] += towards * extent[axis + 3];
    if (axis === 2 && search.turns !== null) {
      const group = halfGroup(search.turns, angle, turn, towards > 0);
      if (group === null) continue;
      [extent[2], extent[5]] = group;
    }
    pushBox(search.heap, { bound, extent, list: kept, full, age: search.age++ });
  }
  return true;
}

/** Evaluates the point of the box's linear program; takes it if it beats what was found. */
function tryPoint(search: Search, list: Uint32Array): boolean {
  const { bounds, lp, probe, turns } = search;
  const { box, rows } = bounds;
  for (let attempt = 0; attempt <= MOST_RETRIES; attempt++) {
    const x = box.x + lp.s0 * box.dx;
    const y = box.y + lp.s1 * box.dy;
    const wanted = box.angle + lp.s2 * box.turn;
    const angle = turns === null ? wanted : nearestTurn(turns, wanted);
    const value = probePose(probe, list, list.length, x, y, angle, search.value);
    if (value > search.value) {
      search.best = { x, y, angle, value };
      search.value = value;
      return true;
    }
    // The rows over-estimate by the box's size squared. Where only the frame is in the way, move its rows in by what was missing.
    if (probe.overlap === 0 || probe.overlap > box.frame.reach) return false;
    const missing = probe.overlap + reserveOf(search);
    for (let k = 0; k < rows.count; k++) if (rows.tau[k] === 0) rows.a[k] -= missing;
    solveBoxLp(lp, rows, search.value);
    if (lp.bound <= search.value) return false;
  }
  return false;
}

function reserveOf(search: Search): number {
  return RESERVE_SHARE * Math.min(search.gap, 1);
}

function polishBest(search: Search): void {
  const { scene, bounds, lp, probe, best, turns } = search;
  if (best === null) return;
  search.polishes++;
  search.best = polish(scene, bounds, lp, probe, best, turns === null, reserveOf(search));
  search.value = search.best.value;
}

/**
 * The constraints that the rectangle may come near enough to in the box, those about the nearest edge first: they are the
 * likeliest to settle the halves of the box at a glance.
 */
function keepNear(list: Uint32Array, nearest: Float64Array, bound: number): Uint32Array {
  let count = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < list.length; i++) {
    if (nearest[i] > bound) continue;
    count++;
    if (nearest[i] < least && nearest[i] > Number.NEGATIVE_INFINITY) least = nearest[i];
  }
  const kept = new Uint32Array(count);
  const front = least + FRONT_DEPTH;
  let k = 0;
  for (let i = 0; i < list.length; i++) if (nearest[i] <= bound && nearest[i] <= front) kept[k++] = list[i];
  for (let i = 0; i < list.length; i++) if (nearest[i] <= bound && nearest[i] > front) kept[k++] = list[i];
  return kept;
}

/** The list with the frame's constraints against all walls and tall things added. */
function withFrame(scene: SearchScene, list: Uint32Array): Uint32Array {
  const full = new Uint32Array(list.length + scene.tallEdges);
  full.set(list);
  for (let e = 0; e < scene.tallEdges; e++) full[list.length + e] = scene.looseCount + e;
  return full;
}
