import type { Carried, Hold } from './carried.js';
import { holdFamilies, planLength, planShapeOf } from './holds.js';
import { guessPlanSpare, type PlanWayKind, planWay } from './landing-plan.js';
import { narrowTurn, type StairTurn, turnSpace } from './landing-space.js';
import type { Motion, MotionPose } from './motion.js';
import type { PlanPose } from './plan-shape.js';
import { block, face, halfPlane, type PlanEnd, type PlanSolid, type PlanSpace } from './plan-space.js';
import { SlopeFloor } from './slope-floor.js';
import { findPath } from './subdivide.js';

/** A motion round a turn, with the cut of all clear readings under which there still is one. */
export interface FoundTurnWay {
  readonly hold: Hold;
  readonly spare: number;
  readonly motion: Motion;
}

export interface TurnSearchOptions {
  readonly maxBoxes: number;
  /** What the readings may be off by: a way is sought that allows for it, but one that does not will do. */
  readonly tolerance: number;
  /** Tried first. */
  readonly first: Hold;
  /** No way has more spare. */
  readonly atMost: number;
}

/** Holds tried besides the first and those next to it. */
const HOLDS = 5;
/** Tilts next to the first that are tried, radians. */
const NEXT = [0.015, -0.015, 0.035, -0.035];
/** Tilts lie this far apart, radians; those tried, twice as far. */
const TILT_STEP = Math.PI / 60;
/** Most boxes of poses altogether, and for one search: a landing should not take much longer than the other passages. */
const MOST_BOXES = 20_000;
const MOST_AT_ONCE = 8_000;
/** Boxes of poses are split down to this, mm. */
const RESOLUTION = 2;
/**
 * mm: the floor of a winder rises in steps, over which boxes of poses are judged too kindly. Within this of a step the higher floor counts; if what
 * was found cannot be followed, more.
 */
const OFF_STEPS = [2, 12, 40];
/** Parts of a quarter turn when holds are compared. */
const PARTS = 5;
/** Spare without which no way is sought, mm: half of it is left on every side. */
const LEAST = 0.5;
const KINDS: readonly PlanWayKind[] = ['turn', 'slide', 'sideways'];

/**
 * A way round a turn of a stair for a box held at one tilt that need not keep to the outer walls (see landing-way.ts): the poses in plan are
 * searched by boxes for a few promising tilts, with the height left over the floor as a further condition. Whatever is returned was followed
 * once more in the turn as given and in the narrowed one, heights and all; `null` says nothing.
 */
export function searchTurn(turn: StairTurn, box: Carried, options: TurnSearchOptions): FoundTurnWay | null {
  const { tolerance, first, atMost } = options;
  if (atMost < LEAST) return null;
  let left = Math.min(options.maxBoxes, MOST_BOXES);
  const tries = [first, ...promisingHolds(turn, box, first)];
  /** A way for one of the holds from number `from` on, and its number. */
  const attempt = (delta: number, from: number): (FoundTurnWay & { readonly number: number }) | null => {
    for (let i = from; i < tries.length && left > 0; i++) {
      const { boxes, motion } = wayAt(turn, tries[i], delta, Math.min(left, MOST_AT_ONCE));
      left -= boxes;
      if (motion !== null) return { hold: tries[i], spare: delta, motion, number: i };
    }
    return null;
  };
  const least = attempt(LEAST, 0);
  if (least === null || tolerance <= LEAST || tolerance > atMost) return least;
  return attempt(tolerance, least.number) ?? least;
}

interface Promising {
  readonly hold: Hold;
  /** Least height left along the best of the ways by the outer walls, mm. */
  readonly height: number;
}

/** Holds with room in plan, those that leave most height by the outer walls before the others; then some next to the first. */
function promisingHolds(turn: StairTurn, box: Carried, first: Hold): Hold[] {
  const promises: Promising[] = [];
  const next: Hold[] = [];
  for (const { along, across, up, tilts } of holdFamilies(box)) {
    for (const [from, to] of tilts) {
      const count = Math.max(1, Math.ceil((to - from) / TILT_STEP));
      const all = Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
      if (turn.pitch > from && turn.pitch < to) all.push(turn.pitch);
      for (const tilt of new Set(all)) {
        const hold = { along, across, up, tilt };
        const height = promise(turn, hold);
        if (height > Number.NEGATIVE_INFINITY) promises.push({ hold, height });
      }
      if (along !== first.along || across !== first.across) continue;
      for (const tilt of NEXT.map((by) => first.tilt + by)) {
        if (tilt >= from && tilt <= to) next.push({ ...first, tilt });
      }
    }
  }
  promises.sort((a, b) => b.height - a.height);
  const chosen: Hold[] = [];
  const near = (a: Hold, b: Hold): boolean =>
    a.along === b.along && a.across === b.across && Math.abs(a.tilt - b.tilt) < 1.5 * TILT_STEP;
  for (const { hold } of promises) {
    if (chosen.length === HOLDS) break;
    const again = near(hold, first) || chosen.some((other) => near(hold, other));
    if (!again) chosen.push(hold);
  }
  return [...chosen, ...next];
}

/** -Infinity where there is no room in plan. */
function promise(turn: StairTurn, hold: Hold): number {
  let best = Number.NEGATIVE_INFINITY;
  const heights = new SlopeFloor(turnSpace(turn), hold);
  const along = (outline: Hold, kind: PlanWayKind, turned: readonly number[]): void => {
    const plan = guessPlanSpare(turn, outline, kind);
    if (plan < 0 && turn.kind !== 'half-landing') return;
    for (const off of plan > 0 ? [0, plan / 2, plan] : [0]) {
      const poses = planWay(turn, outline, kind, off, off, PARTS);
      for (const by of turned) {
        let least = plan < 0 ? plan : Number.POSITIVE_INFINITY;
        for (const { x, y, heading } of poses) {
          least = Math.min(least, heights.height(x, y, heading + by));
          if (least <= best) break;
        }
        best = Math.max(best, least);
      }
    }
  };
  for (const kind of KINDS) along(hold, kind, [0]);
  // With its edge across up the flight, the front to either side.
  const crosswise = { along: hold.across, across: planLength(hold), up: 0, tilt: 0 };
  along(crosswise, 'turn', [Math.PI / 2, -Math.PI / 2]);
  return best;
}

/** Through the turn narrowed by delta, and moved to the middle through the turn as given. */
function wayAt(
  turn: StairTurn,
  hold: Hold,
  delta: number,
  maxBoxes: number,
): { readonly boxes: number; readonly motion: Motion | null } {
  const narrow = searched(turn, delta);
  const shape = planShapeOf(hold);
  const reach = Math.hypot(shape.halfLength, shape.halfWidth);
  const { space, near, far } = turnInPlan(narrow, reach, delta + 1);
  const steep = 2 * Math.tan(turn.pitch);
  let used = 0;
  for (const off of narrow.climb > 0 ? OFF_STEPS : [0]) {
    const heights = new SlopeFloor(turnSpace(narrow, off), hold);
    const { poses, boxes } = findPath(space, shape, near, far, {
      maxBoxes: maxBoxes - used,
      resolution: RESOLUTION,
      slack: {
        slack: (x, y, heading) => heights.height(x, y, heading),
        perMm: steep,
        perRadian: steep * reach,
      },
    });
    used += boxes;
    if (poses.length === 0) break;
    const centred = poses.map(({ x, y, heading }) => ({ x: x + delta / 2, y: y + delta / 2, heading }));
    const raisedPoses = raised(narrow, hold, poses) && raised(turn, hold, centred);
    if (raisedPoses === null) continue;
    const { along, across, up } = hold;
    return { boxes: used, motion: { along, across, up, poses: raisedPoses } };
  }
  return { boxes: used, motion: null };
}

/**
 * No wider than the turn narrowed by delta, and such that all of it, moved by delta / 2 along x and y, lies delta / 2 within the walls as given: of a
 * half landing, whose second flight narrowing moves by delta, the well counts as so much wider.
 */
function searched(turn: StairTurn, delta: number): StairTurn {
  const narrow = narrowTurn(turn, delta);
  if (turn.kind !== 'half-landing') return narrow;
  return { ...narrow, well: narrow.well + delta, widthAfter: narrow.widthAfter - delta };
}

/**
 * The walls; the box starts and ends anywhere on the flights, `beyond` from the turn. Wholly on a flight it may slide along as it is, so no way needs
 * more of the flights than it covers.
 */
function turnInPlan(
  turn: StairTurn,
  reach: number,
  beyond: number,
): { readonly space: PlanSpace; readonly near: PlanEnd; readonly far: PlanEnd } {
  const { kind, width, widthAfter, depth, breadth, well } = turn;
  const end = Number.POSITIVE_INFINITY;
  const window = { x0: 0, y0: -reach - beyond - 1, y1: depth };
  const below = face(0, -1, beyond);
  const outer = [halfPlane(1, 0, 0), halfPlane(0, -1, -depth)];
  if (kind === 'half-landing') {
    const solids = [...outer, halfPlane(-1, 0, -breadth), block(width, -end, width + well, 0)];
    return {
      space: { ...window, solids, x1: breadth },
      near: [[below, face(-1, 0, -width)]],
      far: [[below, face(1, 0, width + well)]],
    };
  }
  const solids: PlanSolid[] = [...outer, block(width, -end, end, 0)];
  if (breadth > width || depth > widthAfter) solids.push(block(breadth, -end, end, depth - widthAfter));
  return {
    space: { ...window, solids, x1: breadth + reach + beyond + 1 },
    near: [[below]],
    far: [[face(1, 0, breadth + beyond)]],
  };
}

/** How often a stretch is halved to follow its heights, and to add poses to it. */
const FOLLOWED = 6;
const ADDED = 10;
/** mm: the height at a pose is such that it is free everywhere about, as far as one of these. */
const ABOUT = [64, 32, 16, 8, 4, 2, 1, 0.5, 0];

/**
 * The poses with heights, and more of them in between, so that z running evenly stays free; null where that does not come out. Proof: in half a
 * stretch no point of the box moves farther in plan than half of the shift and the turn together; with the floors as high
 * and the ceilings as low as they come within that, z in the middle is free by more than it changes until the ends.
 */
function raised(turn: StairTurn, hold: Hold, poses: readonly PlanPose[]): MotionPose[] | null {
  const reach = Math.hypot(planLength(hold), hold.across) / 2;
  const spaces = new Map<number, SlopeFloor>();
  const within = (off: number): SlopeFloor => {
    const known = spaces.get(off) ?? new SlopeFloor(turnSpace(turn, off), hold);
    spaces.set(off, known);
    return known;
  };
  const lift = (pose: PlanPose): MotionPose => {
    const full = within(0).height(pose.x, pose.y, pose.heading);
    const off = ABOUT.find((some) => within(some).height(pose.x, pose.y, pose.heading) >= full / 2) ?? 0;
    const around = within(off);
    around.height(pose.x, pose.y, pose.heading);
    const { x, y, heading } = pose;
    return { x, y, heading, z: (around.lo + around.hi) / 2, tilt: hold.tilt, roll: 0 };
  };
  const moved = (a: MotionPose, b: MotionPose): number =>
    Math.hypot(b.x - a.x, b.y - a.y) / 2 + (reach * Math.abs(b.heading - a.heading)) / 2;
  const isFree = (a: MotionPose, b: MotionPose, depth: number): boolean => {
    const mid = middleOf(a, b);
    const off = 2 ** Math.ceil(Math.log2(Math.max(moved(a, b), 1e-3)));
    const climbs = Math.abs(b.z - a.z) / 2;
    const around = within(off);
    around.height(mid.x, mid.y, mid.heading);
    if (mid.z - climbs > around.lo && mid.z + climbs < around.hi) return true;
    if (depth === FOLLOWED) return false;
    const exact = within(0);
    exact.height(mid.x, mid.y, mid.heading);
    if (mid.z <= exact.lo || mid.z >= exact.hi) return false;
    return isFree(a, mid, depth + 1) && isFree(mid, b, depth + 1);
  };
  const kept: MotionPose[] = [];
  const add = (a: MotionPose, b: MotionPose, depth: number): boolean => {
    if (isFree(a, b, 0)) {
      kept.push(b);
      return true;
    }
    if (depth === ADDED) return false;
    const mid = lift(middleOf(a, b));
    return add(a, mid, depth + 1) && add(mid, b, depth + 1);
  };
  const lifted = poses.map(lift);
  for (let i = 0; i < lifted.length; i++) {
    if (i === 0) kept.push(lifted[0]);
    else if (!add(lifted[i - 1], lifted[i], 0)) return null;
  }
  return kept;
}

function middleOf(a: MotionPose, b: MotionPose): MotionPose {
  return {
    ...a,
    x: (a.x + b.x) / 2,
    y: (a.y + b.y) / 2,
    z: (a.z + b.z) / 2,
    heading: (a.heading + b.heading) / 2,
  };
}
