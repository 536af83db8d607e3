import type { Hold } from './carried.js';
import { planLength } from './holds.js';
import type { StairTurn } from './landing-space.js';
import type { PlanPose } from './plan-shape.js';

/**
 * How a box goes round in plan. `turn`: lengthwise up the flight, turned to the right with its corners on both outer walls, lengthwise away
 * (on a half landing twice). `slide`: never turned, heading up the flight below; `sideways`: never turned, heading along the flight
 * above (quarter) or across (half).
 */
export type PlanWayKind = 'turn' | 'slide' | 'sideways';

/** mm: how closely the least spare along a turn is narrowed down. */
const CLOSE = 0.05;

/**
 * By how much the walls of the turn can close in before the way no longer goes through, in plan, within CLOSE below the truth.
 *
 * Quarter: what lies inside of the corner is {x >= width, y <= 0} and {x >= breadth, y <= depth - widthAfter}; both, and so the two together, hold every
 * point to the right of and below any of their own. So touching both outer walls is best at every heading (see corner-spare.ts), and the spare there
 * is the lesser one against each wedge: with s, c of the heading and the wedge's corner a and b off the outer walls,
 * max(a - ex, b - ey, (s a + c b - P s c - A) / (s + c)).
 *
 * Half: what lies below y = 0 lies in one flight only, so that in between the box lies wholly on the landing; until then it goes round
 * the corner of the flight below and the landing's depth, and after that round the one of the depth and the flight above.
 */
export function planSpare(turn: StairTurn, hold: Hold, kind: PlanWayKind): number {
  return spareWith(cornerLow, turn, hold, kind);
}

/** The same by a few headings and a closer look at the worst of them: quick, not proved. */
export function guessPlanSpare(turn: StairTurn, hold: Hold, kind: PlanWayKind): number {
  return spareWith(cornerGuess, turn, hold, kind);
}

function spareWith(
  cornerLow: (p: number, a: number, wedges: readonly Wedge[]) => number,
  turn: StairTurn,
  hold: Hold,
  kind: PlanWayKind,
): number {
  const p = planLength(hold);
  const a = hold.across;
  const { width, widthAfter, depth, breadth } = turn;
  if (turn.kind === 'half-landing') {
    const room = (breadth - (kind === 'slide' ? a : p)) / 2;
    if (kind === 'slide') return Math.min(width - a, widthAfter - a, depth - p, room);
    if (kind === 'sideways') return Math.min(width - p, widthAfter - p, depth - a, room);
    const widest = (breadth - reachAcross(p, a)) / 2;
    const legs = Math.min(cornerLow(p, a, [[width, depth]]), cornerLow(p, a, [[widthAfter, depth]]));
    return Math.min(width - a, widthAfter - a, depth - a, legs, room, widest);
  }
  if (kind === 'slide') return Math.min(width - a, widthAfter - p);
  if (kind === 'sideways') return Math.min(width - p, widthAfter - a);
  const wedges: Wedge[] = [
    [width, depth],
    [breadth, widthAfter],
  ];
  return Math.min(width - a, widthAfter - a, cornerLow(p, a, wedges));
}

/** Distances of an inner corner from the two outer walls. */
type Wedge = readonly [number, number];

/** The widest a rectangle p x a is across while it turns by a quarter. */
function reachAcross(p: number, a: number): number {
  return Math.hypot(p, a);
}

/** No heading between the two flights leaves less spare than this. */
function cornerLow(p: number, a: number, wedges: readonly Wedge[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const wedge of wedges) {
    // Steeper than the spare ever is in the heading, over its three forms.
    const steep = 2 * (Math.abs(wedge[0]) + Math.abs(wedge[1]) + p + a);
    const narrow = (from: number, to: number, depth: number): void => {
      const mid = (from + to) / 2;
      const spare = wedgeSpare(p, a, wedge, mid);
      least = Math.min(least, spare);
      if (spare - (steep * (to - from)) / 2 >= least - CLOSE || depth > 30) return;
      narrow(from, mid, depth + 1);
      narrow(mid, to, depth + 1);
    };
    narrow(0, Math.PI / 2, 0);
  }
  return least - CLOSE;
}

function cornerGuess(p: number, a: number, wedges: readonly Wedge[]): number {
  const count = 16;
  let least = Number.POSITIVE_INFINITY;
  for (const wedge of wedges) {
    let worst = 0;
    let here = Number.POSITIVE_INFINITY;
    for (let i = 0; i <= count; i++) {
      const spare = wedgeSpare(p, a, wedge, (Math.PI / 2) * (i / count));
      if (spare >= here) continue;
      here = spare;
      worst = i;
    }
    let middle = (Math.PI / 2) * (worst / count);
    for (let step = Math.PI / 4 / count; step > 1e-4; step /= 2) {
      const before = wedgeSpare(p, a, wedge, Math.max(0, middle - step));
      const after = wedgeSpare(p, a, wedge, Math.min(Math.PI / 2, middle + step));
      if (before < here && before <= after) middle = Math.max(0, middle - step);
      else if (after < here) middle = Math.min(Math.PI / 2, middle + step);
      here = Math.min(here, before, after);
    }
    least = Math.min(least, here);
  }
  return least;
}

function wedgeSpare(p: number, a: number, [wa, wb]: Wedge, heading: number): number {
  const s = Math.sin(heading);
  const c = Math.cos(heading);
  const byWalls = Math.max(wa - p * c - a * s, wb - p * s - a * c);
  return Math.max(byWalls, (s * wa + c * wb - p * s * c - a) / (s + c));
}

/**
 * The poses of a way in plan, `offX` and `offY` off the outer walls; between two of them everything runs evenly. Wholly on the flight below
 * at first, wholly on the flight above at last. A quarter turn has `steps` parts; on the stretches without a turn there is a pose
 * wherever the height that is free may have a break.
 */
export function planWay(
  turn: StairTurn,
  hold: Hold,
  kind: PlanWayKind,
  offX: number,
  offY: number,
  steps: number,
): PlanPose[] {
  const p = planLength(hold);
  const a = hold.across;
  const { depth, breadth } = turn;
  const half = turn.kind === 'half-landing';
  const first = kind === 'sideways' ? 0 : Math.PI / 2;
  const place = (heading: number, right: boolean): PlanPose => {
    const s = Math.abs(Math.sin(heading));
    const c = Math.abs(Math.cos(heading));
    const x = offX + (p * c + a * s) / 2;
    return { x: right ? breadth - x : x, y: depth - offY - (p * s + a * c) / 2, heading };
  };
  const poses: PlanPose[] = [];
  const rounds = kind === 'turn' ? steps : 0;
  const corner = (from: number, to: number, right: boolean): void => {
    for (let i = 0; i <= rounds; i++) {
      poses.push(place(rounds === 0 ? from : from + ((to - from) * i) / rounds, right));
    }
  };
  const entry = place(first, false);
  poses.push({ ...entry, y: -(kind === 'sideways' ? a : p) / 2 - 1 });
  corner(first, kind === 'turn' ? 0 : first, false);
  if (half) {
    corner(kind === 'turn' ? 0 : first, kind === 'turn' ? -Math.PI / 2 : first, true);
    const end = poses[poses.length - 1];
    poses.push({ ...end, y: -(kind === 'sideways' ? a : p) / 2 - 1 });
  } else {
    const end = poses[poses.length - 1];
    poses.push({ ...end, x: breadth + (kind === 'slide' ? a : p) / 2 + 1 });
  }
  return withBreaks(turn, hold, poses);
}

/** Adds poses wherever, on a stretch without turning, an edge of one of the box's faces passes an edge of a floor. */
function withBreaks(turn: StairTurn, hold: Hold, poses: readonly PlanPose[]): PlanPose[] {
  const { along, across, up, tilt } = hold;
  const p = planLength(hold) / 2;
  const q = (along * Math.cos(tilt) - up * Math.sin(tilt)) / 2;
  const lengthwise = [p, -p, q, -q];
  const crosswise = [across / 2, -across / 2];
  const full: PlanPose[] = [];
  poses.forEach((pose, i) => {
    const before = poses[i - 1];
    if (before !== undefined && before.heading === pose.heading) {
      const isUp = Math.abs(Math.sin(pose.heading)) > 0.5;
      const shares = [
        ...sharesAt(before.y, pose.y, 0, isUp ? lengthwise : crosswise),
        ...sharesAt(before.x, pose.x, turn.breadth, isUp ? crosswise : lengthwise),
      ];
      shares.sort((m, n) => m - n);
      const length = Math.hypot(pose.x - before.x, pose.y - before.y);
      let last = 0;
      for (const share of shares) {
        // Of breaks in one place one is enough.
        if ((share - last) * length < HAIR / 2) continue;
        last = share;
        const mix = (m: number, n: number): number => m + share * (n - m);
        full.push({ x: mix(before.x, pose.x), y: mix(before.y, pose.y), heading: pose.heading });
      }
    }
    full.push(pose);
  });
  return full;
}

/** mm. */
const HAIR = 1e-6;

/** Shares of the way from `from` to `to` at which the centre plus one of the offsets passes `edge`; a hair to either side, for steps. */
function sharesAt(from: number, to: number, edge: number, offsets: readonly number[]): number[] {
  if (from === to) return [];
  return offsets
    .flatMap((offset) => [edge - offset - HAIR, edge - offset + HAIR].map((at) => (at - from) / (to - from)))
    .filter((share) => share > 0 && share < 1);
}
