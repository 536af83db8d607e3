import { SAME_LENGTH } from '../geometry/steady.js';
import type { Motion, MotionPose } from './motion.js';
import type { StairPlane } from './stair-cells.js';
import type { StairFamily } from './stair-holds.js';
import { type FreeHeight, freeHeight, profileSpare, type Slab } from './stair-profile.js';
import type { TiltCell } from './stair-search.js';
import { slideBreaks, type TiltPlace } from './stair-way.js';

/** A pose in the upright plane. */
export interface PlanePose {
  readonly x: number;
  readonly z: number;
  readonly tilt: number;
}

/**
 * The poses of a plain way: everywhere half of the least spare over the floor, so that as much is left under the ceiling. Along a slide the
 * floor's bound of z is convex and the ceiling's concave between the breaks, so that what holds at the breaks holds between them.
 */
export function posesOfWay(
  { profile }: StairPlane,
  family: StairFamily,
  places: readonly TiltPlace[],
  spare: number,
): PlanePose[] {
  const slab: Slab = { halfAlong: family.along / 2, halfUp: family.up / 2 };
  const scratch: FreeHeight = { lo: 0, hi: 0, walls: 0 };
  const at = ({ tilt, x }: TiltPlace): PlanePose => {
    freeHeight(profile, slab, 0, x, tilt, scratch);
    return { x, tilt, z: scratch.lo + spare / 2 };
  };
  const between = (a: PlanePose, b: PlanePose, share: number): PlanePose => {
    const mix = (m: number, n: number): number => m + share * (n - m);
    return { x: mix(a.x, b.x), tilt: mix(a.tilt, b.tilt), z: mix(a.z, b.z) };
  };
  const isFree = (a: PlanePose, b: PlanePose): boolean => {
    let before = Number.NaN;
    for (let k = 0; k <= 8; k++) {
      const { x, tilt, z } = between(a, b, k / 8);
      freeHeight(profile, slab, 0, x, tilt, scratch);
      const under = z - scratch.lo;
      if (Math.min(under, scratch.hi - z) < spare / 4) return false;
      // More room than it changes by from one eighth to the next: no bend of the floor's bound in between uses it up.
      if (Math.abs(under - before) >= Math.min(under, before)) return false;
      before = under;
    }
    return true;
  };
  const poses: PlanePose[] = [];
  // In a turn the height that runs evenly between two poses may come too near: then there are more of them.
  const turnTo = (a: PlanePose, b: PlanePose, depth: number): void => {
    if (depth === 0 || isFree(a, b)) {
      poses.push(b);
      return;
    }
    const middle = at(between(a, b, 0.5));
    turnTo(a, middle, depth - 1);
    turnTo(middle, b, depth - 1);
  };
  places.forEach((place, i) => {
    const before = places[i - 1];
    const next = at(place);
    if (before === undefined) poses.push(next);
    else if (before.tilt !== place.tilt) turnTo(at(before), next, spare > 0 ? 10 : 0);
    else {
      for (const x of slideBreaks(profile, slab, before, place)) poses.push(at({ tilt: place.tilt, x }));
      poses.push(next);
    }
  });
  return poses;
}

/**
 * The poses of a way of cells, each of them free all over for the slab grown by the cell: within a cell at one height, and from one height to the
 * next where two cells meet, where both hold and so all between.
 */
export function posesOfCells(
  { profile }: StairPlane,
  family: StairFamily,
  way: readonly TiltCell[],
  spare: number,
): PlanePose[] {
  const reach = Math.hypot(family.along, family.up) / 2;
  const scratch: FreeHeight = { lo: 0, hi: 0, walls: 0 };
  const heights = way.map(({ x, tilt, halfX, halfTilt }) => {
    const off = halfX + reach * halfTilt;
    const grown = { halfAlong: family.along / 2 + off, halfUp: family.up / 2 + off };
    freeHeight(profile, grown, 0, x, tilt, scratch);
    return scratch.lo + spare / 2;
  });
  const poses: PlanePose[] = [];
  let turns = 0;
  way.forEach((cell, i) => {
    const before = way[i - 1];
    if (before === undefined) {
      poses.push({ x: cell.x - cell.halfX, z: heights[i], tilt: cell.tilt });
    } else {
      // Tilts run on: after half a turn the slab is the same.
      const last = before.tilt + turns * Math.PI;
      turns = Math.round((last - cell.tilt) / Math.PI);
      const next = cell.tilt + turns * Math.PI;
      const tilt = meet(last, before.halfTilt, next, cell.halfTilt);
      const x = meet(before.x, before.halfX, cell.x, cell.halfX);
      poses.push({ x, z: heights[i - 1], tilt }, { x, z: heights[i], tilt });
    }
    poses.push({ x: cell.x, z: heights[i], tilt: cell.tilt + turns * Math.PI });
  });
  const end = way[way.length - 1];
  if (end !== undefined) {
    poses.push({ x: end.x + end.halfX, z: heights[way.length - 1], tilt: end.tilt + turns * Math.PI });
  }
  return poses;
}

/** The pose with the least spare. */
export function tightestPose(
  { profile }: StairPlane,
  family: StairFamily,
  poses: readonly PlanePose[],
): PlanePose | null {
  const slab: Slab = { halfAlong: family.along / 2, halfUp: family.up / 2 };
  const scratch: FreeHeight = { lo: 0, hi: 0, walls: 0 };
  let tightest: PlanePose | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const pose of poses) {
    const spare = profileSpare(profile, slab, 0, pose.x, pose.tilt, scratch);
    // The first of those that are as tight but for rounding.
    if (spare >= least - SAME_LENGTH) continue;
    least = spare;
    tightest = pose;
  }
  return tightest;
}

/** A point that lies in both a +- halfA and b +- halfB: in the middle of what they share. */
function meet(a: number, halfA: number, b: number, halfB: number): number {
  return (Math.max(a - halfA, b - halfB) + Math.min(a + halfA, b + halfB)) / 2;
}

/** In the frame of the stair: the part of the flight that was cut out (see stairProfile) put back, in the middle of the width. */
export function stairMotion(
  { along, across, up }: StairFamily,
  poses: readonly PlanePose[],
  { profile }: StairPlane,
  cut: number,
  width: number,
): Motion {
  const middle = profile.run / 2;
  const led: PlanePose[] = [];
  const put = (pose: PlanePose, upper: boolean): void => {
    led.push(upper ? { ...pose, x: pose.x + cut, z: pose.z + cut * profile.tan } : pose);
  };
  poses.forEach((pose, i) => {
    const before = poses[i - 1];
    if (cut > 0 && before !== undefined && before.x > middle !== pose.x > middle) {
      const share = (middle - before.x) / (pose.x - before.x);
      const mix = (a: number, b: number): number => a + share * (b - a);
      const half = { x: middle, z: mix(before.z, pose.z), tilt: mix(before.tilt, pose.tilt) };
      put(half, before.x > middle);
      put(half, pose.x > middle);
    }
    put(pose, pose.x > middle);
  });
  const full = led.map(({ x, z, tilt }): MotionPose => ({ x, y: width / 2, z, heading: 0, tilt, roll: 0 }));
  return { along, across, up, poses: full };
}
