import { SAME_LENGTH } from '../geometry/steady.js';
import type { Hold } from './carried.js';
import { planLength } from './holds.js';
import { planWay } from './landing-plan.js';
import { type StairTurn, turnSpace } from './landing-space.js';
import type { TurnWay } from './landing-way.js';
import type { PlanPose } from './plan-shape.js';
import { SlopeFloor } from './slope-floor.js';

/** Parts of a quarter turn: where shares are compared (at a step what is free jumps, so they must lie close), and where the way does not pass anyway. */
const COARSE = 64;
const FAILED = 64;
/** mm: poses nearer to each other stand on either side of a step. */
const HAIR = 1e-5;

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
const SHARES = [0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.99];

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
  const free = freePoses(turn, way, best, spare < 0 ? FAILED : stepsFor(hold, spare));
  let tightest = 0;
  const poses = free.map(({ x, y, heading }, i): Poised => {
    let { lo, hi } = free[i];
    // The first of those that are as tight but for rounding.
    if (hi - lo < free[tightest].hi - free[tightest].lo - SAME_LENGTH) tightest = i;
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
 * More poses in the turns wherever the height between two of them, which runs evenly, may come to a floor or a ceiling: unless at every eighth of the
 * way there is more room to either than it changes by from one to the next, so that no bend in between uses it up.
 */
function keptFree(heights: SlopeFloor, poses: readonly Poised[]): Poised[] {
  const between = (a: Poised, b: Poised, share: number): Poised => {
    const mix = (m: number, n: number): number => m + share * (n - m);
    return { x: mix(a.x, b.x), y: mix(a.y, b.y), heading: mix(a.heading, b.heading), z: mix(a.z, b.z) };
  };
  const isFree = (a: Poised, b: Poised): boolean => {
    const rooms = Array.from({ length: 9 }, (_, k) => {
      const { x, y, heading, z } = between(a, b, k / 8);
      heights.height(x, y, heading);
      return { under: z - heights.lo, over: heights.hi - z };
    });
    return rooms.every(({ under, over }, k) => {
      const before = rooms[k - 1];
      if (before === undefined) return true;
      return (
        Math.min(under, before.under) > Math.abs(under - before.under) &&
        Math.min(over, before.over) > Math.abs(over - before.over)
      );
    });
  };
  const kept: Poised[] = [];
  const add = (a: Poised, b: Poised, depth: number): void => {
    if (depth === DEEPEST || isFree(a, b)) {
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

/** How often a part of a turn is halved. */
const DEEPEST = 8;

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
