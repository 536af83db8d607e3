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
export function bestTurnWay(
  turn: StairTurn,
  box: Carried,
  most: number = Number.POSITIVE_INFINITY,
): TurnWay | null {
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
