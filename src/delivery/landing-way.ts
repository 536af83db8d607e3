import type { Carried, Hold } from './carried.js';
import { holdFamilies, planLength } from './holds.js';
import { guessPlanSpare, type PlanWayKind, planSpare, planWay } from './landing-plan.js';
import { narrowTurn, type StairTurn, turnSpace } from './landing-space.js';
import type { PlanPose } from './plan-shape.js';
import { SlopeFloor } from './slope-floor.js';
import { slopeHeight } from './stair-bounds.js';

/** A way round a turn of a stair, held at one tilt. */
export interface TurnWay {
  readonly hold: Hold;
  readonly kind: PlanWayKind;
  /** It goes through the turn narrowed by this, mm. */
  readonly spare: number;
  /** How far off the outer walls it is led in the turn so narrowed, mm. */
  readonly offX: number;
  readonly offY: number;
}

/** Parts of a quarter turn when ways are compared, and in the end. */
const COARSE = 16;
const FINE = 64;
/** Tilts tried first lie this far apart, radians; the best is refined. */
const TILT_STEP = Math.PI / 24;
/** mm: how closely a spare that height decides is found. */
const CLOSE = 0.05;
/** mm: the same while holds are compared. */
const ROUGH = 4;
/** mm: spares beyond this are not refined. */
const NEAR = 150;
/** mm: poses nearer to each other stand on either side of a step. */
const HAIR = 1e-5;
/** mm: nothing that is missing by more is looked into. */
const HOPELESS = 3000;

const KINDS: readonly PlanWayKind[] = ['turn', 'slide', 'sideways'];

/** What can be said at once of a hold and a way. */
interface Candidate {
  readonly hold: Hold;
  readonly kind: PlanWayKind;
  /** No more spare than this: the walls in plan, and the height over the flights. */
  readonly cap: number;
  readonly plan: number;
}

/**
 * The best way found, tilts tried in steps and, where it is near the line, the best one refined; `null` where no hold is allowed. Done as
 * soon as it has all but `most`, the most there can be.
 */
export function bestTurnWay(turn: StairTurn, box: Carried, most = Number.POSITIVE_INFINITY): TurnWay | null {
  const candidates: Candidate[] = [];
  for (const { along, across, up, tilts } of holdFamilies(box)) {
    for (const [from, to] of tilts) {
      for (const tilt of tiltsToTry(from, to, turn.pitch)) {
        for (const kind of KINDS) candidates.push(candidate(turn, { along, across, up, tilt }, kind));
      }
    }
  }
  candidates.sort((a, b) => b.cap - a.cap);
  let best: TurnWay | null = null;
  for (const one of candidates) {
    const floor: number = best === null ? Number.NEGATIVE_INFINITY : best.spare;
    if (one.cap <= floor + ROUGH || floor >= most - ROUGH) break;
    best = wayOf(turn, one, floor, ROUGH) ?? best;
  }
  if (best === null) return null;
  return proven(turn, Math.abs(best.spare) < NEAR ? refine(turn, box, best) : best);
}

function tiltsToTry(from: number, to: number, pitch: number): number[] {
  const tilts = [from, to];
  const count = Math.ceil((to - from) / TILT_STEP);
  for (let i = 1; i < count; i++) tilts.push(from + ((to - from) * i) / count);
  if (pitch > from && pitch < to) tilts.push(pitch);
  return [...new Set(tilts)];
}

function candidate(turn: StairTurn, hold: Hold, kind: PlanWayKind): Candidate {
  const plan = guessPlanSpare(turn, hold, kind);
  return { hold, kind, plan, cap: Math.min(plan, flightSpare(turn, hold, kind)) };
}

/** Height left over the two flights, for as long as they are. */
function flightSpare({ kind: turned, pitch, headroom }: StairTurn, hold: Hold, kind: PlanWayKind): number {
  const { along, across, up, tilt } = hold;
  const lengthwise = slopeHeight(along, up, pitch, tilt);
  const sideways = slopeHeight(along, up, 0, tilt) + across * Math.tan(pitch);
  if (kind === 'turn') return headroom - lengthwise;
  const half = turned === 'half-landing';
  if (kind === 'sideways') return headroom - (half ? sideways : Math.max(sideways, lengthwise));
  // Never turned, it goes up the second flight of a half landing with its back first.
  const after = half ? slopeHeight(along, up, -pitch, tilt) : sideways;
  return headroom - Math.max(lengthwise, after);
}

/** The widest spare of one candidate, if it is more than `floor`. */
function wayOf(
  turn: StairTurn,
  { hold, kind, cap, plan }: Candidate,
  floor: number,
  close: number,
): TurnWay | null {
  const at = (delta: number): TurnWay | null => {
    const space = narrowTurn(turn, delta);
    const heights = new SlopeFloor(turnSpace(space), hold);
    // What the walls leave in plan can be used to keep off them.
    const off = plan - delta;
    for (const [offX, offY] of [
      [0, 0],
      [off / 2, off / 2],
      [off, off],
      [off, 0],
      [0, off],
    ]) {
      const poses = planWay(space, hold, kind, offX, offY, COARSE);
      if (poses.every(({ x, y, heading }) => heights.height(x, y, heading) >= 0)) {
        return { hold, kind, spare: delta, offX, offY };
      }
      if (off < 1) break;
    }
    return null;
  };
  const whole = at(cap);
  if (whole !== null) return whole;
  let yes = Math.max(floor + close, cap - HOPELESS);
  let best = at(yes);
  if (best === null) return null;
  let no = cap;
  while (no - yes > close) {
    const mid = (yes + no) / 2;
    const way = at(mid);
    if (way === null) no = mid;
    else {
      yes = mid;
      best = way;
    }
  }
  return best;
}

/** Tilts ever nearer to the best one. */
function refine(turn: StairTurn, box: Carried, start: TurnWay): TurnWay {
  let best = start;
  const { along, across, up } = start.hold;
  const family = holdFamilies(box).find(
    (one) => one.along === along && one.across === across && one.up === up,
  );
  if (family === undefined) return best;
  for (let step = TILT_STEP / 2; step > 1e-4; step /= 2) {
    const middle = best.hold.tilt;
    for (const tilt of [middle - step, middle + step]) {
      if (!family.tilts.some(([from, to]) => tilt >= from && tilt <= to)) continue;
      const next = candidate(turn, { along, across, up, tilt }, best.kind);
      if (next.cap <= best.spare + CLOSE) continue;
      best = wayOf(turn, next, best.spare, CLOSE) ?? best;
    }
  }
  return best;
}

/**
 * The way with a spare that holds between its poses too; a little less than what was found. What is given up in plan is best used to keep as far
 * from the flights as before: their floors rise and fall with every mm.
 */
function proven(turn: StairTurn, way: TurnWay): TurnWay {
  const plan = planSpare(turn, way.hold, way.kind);
  for (let less = 0; less < HOPELESS; less = less === 0 ? CLOSE : 2 * less) {
    const spare = Math.min(plan, way.spare - less);
    const room = plan - spare;
    for (const share of [1, 0.5, 0]) {
      const offX = Math.min(way.offX + share * less, room);
      const offY = Math.min(way.offY + share * less, room);
      const narrowed = { ...way, spare, offX, offY };
      if (isFreeAllAlong(turn, narrowed)) return narrowed;
      if (less === 0) break;
    }
  }
  return { ...way, spare: Number.NEGATIVE_INFINITY };
}

/**
 * Whether the height is nowhere empty along the way, between its poses too. Without a turn it is concave between the poses. In a turn every point of
 * the box stays within some mm of where it is in the middle of a stretch: with the floors as high and the ceilings as low as they come within that,
 * what has height in the middle has it all along.
 */
function isFreeAllAlong(turn: StairTurn, { hold, kind, spare, offX, offY }: TurnWay): boolean {
  const space = narrowTurn(turn, spare);
  const reach = Math.hypot(planLength(hold), hold.across) / 2;
  const around: SlopeFloor[] = [];
  const heights = new SlopeFloor(turnSpace(space), hold);
  const poses = planWay(space, hold, kind, offX, offY, FINE);
  if (!poses.every(({ x, y, heading }) => heights.height(x, y, heading) >= 0)) return false;
  // In half a step of heading the centre moves by no more than sqrt 2 of this, and a point about it by no more than this.
  const halfStep = (reach * Math.PI) / 4 / FINE;
  const free = (a: PlanPose, b: PlanPose, depth: number): boolean => {
    const mid = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, heading: (a.heading + b.heading) / 2 };
    around[depth] ??= new SlopeFloor(turnSpace(space, (2.5 * halfStep) / 2 ** depth), hold);
    if (around[depth].height(mid.x, mid.y, mid.heading) >= 0) return true;
    if (depth >= 10 || heights.height(mid.x, mid.y, mid.heading) < 0) return false;
    return free(a, mid, depth + 1) && free(mid, b, depth + 1);
  };
  return poses.every((pose, i) => {
    const before = poses[i - 1];
    return before === undefined || before.heading === pose.heading || free(before, pose, 0);
  });
}

/** A pose in plan with what is free in height there. */
interface FreePose extends PlanPose {
  readonly lo: number;
  readonly hi: number;
}

/** A pose in plan at a height. */
export interface Poised extends PlanPose {
  readonly z: number;
}

/** Shares of the spare by which a way may keep off the outer walls: in the middle, or nearer to the inner ones where that leaves more height. */
const SHARES = [0.5, 0.6, 0.7, 0.8, 0.9];

/**
 * The poses of the way in the turn as given, its spare shared out between the sides, with the heights in the middle of what is free. Two poses
 * a hair apart stand on either side of a step: both get a height that is free at both.
 */
export function posesOfTurnWay(
  turn: StairTurn,
  way: TurnWay,
): { readonly poses: readonly Poised[]; readonly tightest: Poised } {
  const { hold, spare } = way;
  let best = SHARES[0];
  let most = Number.NEGATIVE_INFINITY;
  for (const share of spare > 0 ? SHARES : []) {
    const height = Math.min(...freePoses(turn, way, share, COARSE).map(({ lo, hi }) => hi - lo));
    const clear = Math.min(height / 2, (1 - share) * spare);
    if (clear <= most) continue;
    most = clear;
    best = share;
  }
  const free = freePoses(turn, way, best, spare < 0 ? FINE : stepsFor(hold, spare));
  let tightest = 0;
  const poses = free.map(({ x, y, heading }, i): Poised => {
    let { lo, hi } = free[i];
    if (hi - lo < free[tightest].hi - free[tightest].lo) tightest = i;
    for (const k of [i - 1, i + 1]) {
      const other = free[k];
      if (other === undefined || Math.hypot(other.x - x, other.y - y) > HAIR) continue;
      lo = Math.max(lo, other.lo);
      hi = Math.min(hi, other.hi);
    }
    return { x, y, heading, z: (lo + hi) / 2 };
  });
  const { x, y, heading, z } = poses[tightest];
  const heights = new SlopeFloor(turnSpace(turn), hold);
  return { poses: spare < 0 ? poses : keptFree(heights, poses), tightest: { x, y, heading, z } };
}

/**
 * More poses in the turns wherever the height between two of them, which runs evenly, would come nearer to a floor or a ceiling than an eighth of
 * what is free.
 */
function keptFree(heights: SlopeFloor, poses: readonly Poised[]): Poised[] {
  const between = (a: Poised, b: Poised, share: number): Poised => {
    const mix = (m: number, n: number): number => m + share * (n - m);
    return { x: mix(a.x, b.x), y: mix(a.y, b.y), heading: mix(a.heading, b.heading), z: mix(a.z, b.z) };
  };
  const isFree = ({ x, y, heading, z }: Poised): boolean => {
    const height = heights.height(x, y, heading);
    return Math.min(z - heights.lo, heights.hi - z) >= height / 8;
  };
  const kept: Poised[] = [];
  const add = (a: Poised, b: Poised, depth: number): void => {
    if (depth === 6 || EIGHTHS.every((share) => isFree(between(a, b, share)))) {
      kept.push(b);
      return;
    }
    const middle = between(a, b, 0.5);
    heights.height(middle.x, middle.y, middle.heading);
    const raised = { ...middle, z: (heights.lo + heights.hi) / 2 };
    add(a, raised, depth + 1);
    add(raised, b, depth + 1);
  };
  poses.forEach((pose, i) => {
    const before = poses[i - 1];
    if (before === undefined || before.heading === pose.heading) kept.push(pose);
    else add(before, pose, 0);
  });
  return kept;
}

const EIGHTHS = [0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875];

function freePoses(
  turn: StairTurn,
  { hold, kind, spare, offX, offY }: TurnWay,
  share: number,
  steps: number,
): FreePose[] {
  const heights = new SlopeFloor(turnSpace(turn), hold);
  const off = share * spare;
  return planWay(turn, hold, kind, offX + off, offY + off, steps).map((pose) => {
    heights.height(pose.x, pose.y, pose.heading);
    return { ...pose, lo: heights.lo, hi: heights.hi };
  });
}

/** Between two poses of a turn the corners bulge out by about reach turn^2 / 8: far less than the spare. */
function stepsFor(hold: Hold, spare: number): number {
  const reach = planLength(hold) + hold.across;
  return Math.min(1024, Math.max(24, Math.ceil(5 / Math.sqrt((2 * Math.max(spare, 0.01)) / reach))));
}
