import type { Carried, Hold } from './carried.js';
import type { HoldName } from './delivery-input.js';
import type { PlanShape } from './plan-shape.js';

/**
 * Every hold keeps one edge of the box level ("across") and turns the other two in their upright plane by the tilt o: along over up at
 * o = 0, up over along at o = pi / 2. So there are three families, one for each edge that may stay level:
 *
 * - across = w: flat (o = 0) to on end;
 * - across = h: on edge (o = 0) to on end;
 * - across = l, "leaned": flat (o = 0) to on edge.
 *
 * In all of them along >= up. With R = hypot(along, up) and e = atan(up / along) in (0, pi / 4]:
 * P(o) = R cos(o - e) in plan, V(o) = R sin(o + e) upright. Both are concave in o, so over an interval of tilts each is least at one of its ends.
 */
export interface HoldFamily {
  readonly along: number;
  readonly across: number;
  readonly up: number;
  /** Allowed tilts: disjoint intervals within [0, pi / 2], ascending. May be empty. */
  readonly tilts: readonly Interval[];
}

/** Closed, from <= to. */
export type Interval = readonly [from: number, to: number];

/** What is called equal in angles, radians: 1e-11 of a turn moves no end of a box by more than 1e-7 mm. */
const ANGLE_SLACK = 1e-11;
const UPRIGHT = Math.PI / 2;

/** What a hold covers in plan along its heading, mm: along cos o + up sin o. */
export function planLength(hold: Hold): number {
  if (hold.tilt === 0) return hold.along;
  return hold.along * Math.cos(hold.tilt) + hold.up * Math.sin(hold.tilt);
}

/** How high a hold reaches above its lowest point, mm: along sin o + up cos o. */
export function heldHeight(hold: Hold): number {
  if (hold.tilt === 0) return hold.up;
  return hold.along * Math.sin(hold.tilt) + hold.up * Math.cos(hold.tilt);
}

/** The plan of a hold. Its `halfLength` runs along the heading, also where it is the shorter side. */
export function planShapeOf(hold: Hold): PlanShape {
  return { halfLength: planLength(hold) / 2, halfWidth: hold.across / 2, radius: 0 };
}

/**
 * The three families with the tilts that are allowed: a hold is allowed if the upright is within `tilt` of the edge that is upright in
 * one of the `held` ways (flat: h, on edge: w, on end: l).
 */
export function holdFamilies(box: Carried): readonly HoldFamily[] {
  const { l, w, h } = box;
  return [
    { along: l, across: w, up: h, tilts: allowedTilts(box, 'flat', 'on-end', 'on-edge') },
    { along: l, across: h, up: w, tilts: allowedTilts(box, 'on-edge', 'on-end', 'flat') },
    { along: w, across: l, up: h, tilts: allowedTilts(box, 'flat', 'on-edge', 'on-end') },
  ];
}

/** `atNought`: the level way at o = 0; `atUpright`: at o = pi / 2; `apart`: the one that is a right angle away from the whole family. */
function allowedTilts(
  { held, tilt }: Carried,
  atNought: HoldName,
  atUpright: HoldName,
  apart: HoldName,
): readonly Interval[] {
  const fromNought = held.includes(atNought);
  const fromUpright = held.includes(atUpright);
  if (held.includes(apart) && tilt >= UPRIGHT - ANGLE_SLACK) return [[0, UPRIGHT]];
  if (fromNought && fromUpright)
    return 2 * tilt >= UPRIGHT - ANGLE_SLACK
      ? [[0, UPRIGHT]]
      : [
          [0, tilt],
          [UPRIGHT - tilt, UPRIGHT],
        ];
  if (fromNought) return [[0, Math.min(tilt, UPRIGHT)]];
  if (fromUpright) return [[Math.max(0, UPRIGHT - tilt), UPRIGHT]];
  return [];
}

/** The hold of a family at a tilt. A level one is written with tilt 0 and its longer plan side along. */
export function holdAt({ along, across, up }: Omit<HoldFamily, 'tilts'>, tilt: number): Hold {
  if (tilt > ANGLE_SLACK && tilt < UPRIGHT - ANGLE_SLACK) return { along, across, up, tilt };
  const upright = tilt <= ANGLE_SLACK ? up : along;
  const level = tilt <= ANGLE_SLACK ? along : up;
  return { along: Math.max(level, across), across: Math.min(level, across), up: upright, tilt: 0 };
}

/**
 * The tilts of an interval at which V(o) <= height: at most two intervals, since V rises from `up` to R and falls again to `along`. The limits are
 * asin(height / R) - e and its mirror pi - asin(height / R) - e.
 */
export function tiltsUnder(
  { along, up }: Pick<HoldFamily, 'along' | 'up'>,
  [from, to]: Interval,
  height: number,
): readonly Interval[] {
  const reach = Math.hypot(along, up);
  if (height >= reach) return [[from, to]];
  const under: Interval[] = [];
  if (height < up) return under;
  const turn = Math.asin(height / reach);
  const offset = Math.atan2(up, along);
  // Stepping back by a rounding keeps V(o) <= height; the ends 0 and pi / 2 are exact by themselves.
  const rising = height === up ? 0 : Math.max(0, turn - offset - ANGLE_SLACK);
  if (rising >= from) under.push([from, Math.min(to, rising)]);
  if (height < along) return under;
  const falling = height === along ? UPRIGHT : Math.min(UPRIGHT, Math.PI - turn - offset + ANGLE_SLACK);
  if (falling <= to) under.push([Math.max(from, falling), to]);
  return under;
}

/**
 * The holds that are worth trying under one flat height, mm: allowed, no higher than that, and none that covers another's plan as well. Any other
 * allowed hold under that height covers in plan what one of these covers (P is concave in o). In the order flat, on edge, on end,
 * leaned, tilted; empty where no hold is low enough.
 */
export function holdsUnder(box: Carried, height: number): readonly Hold[] {
  const found: Hold[] = [];
  for (const family of holdFamilies(box)) {
    for (const interval of family.tilts) {
      for (const [from, to] of tiltsUnder(family, interval, height)) {
        const first = holdAt(family, from);
        const last = holdAt(family, to);
        found.push(planArea(last) < planArea(first) ? last : first);
      }
    }
  }
  const best: Hold[] = [];
  for (const hold of found.sort((one, other) => holdRank(box, one) - holdRank(box, other))) {
    if (best.some((kept) => covers(hold, kept))) continue;
    for (let i = best.length - 1; i >= 0; i--) {
      const kept = best[i];
      if (kept !== undefined && covers(kept, hold)) best.splice(i, 1);
    }
    best.push(hold);
  }
  return best;
}

/** The lowest that a box may be held, mm. */
export function leastHeight(box: Carried): number {
  let least = Number.POSITIVE_INFINITY;
  for (const family of holdFamilies(box)) {
    for (const [from, to] of family.tilts)
      least = Math.min(least, heldHeight(holdAt(family, from)), heldHeight(holdAt(family, to)));
  }
  return least;
}

function planArea(hold: Hold): number {
  return planLength(hold) * hold.across;
}

/** Whether the plan of one, turned by a quarter if that helps, covers the plan of the other. */
function covers(one: Hold, other: Hold): boolean {
  const [a, b] = [planLength(one), one.across];
  const [p, q] = [planLength(other), other.across];
  return Math.max(a, b) >= Math.max(p, q) && Math.min(a, b) >= Math.min(p, q);
}

/** Order of ways: flat 0, on edge 1, on end 2, leaned 3, tilted 4. */
export function holdRank({ l, w, h }: Carried, hold: Hold): number {
  if (hold.tilt > 0) return hold.across === l && hold.along === w ? 3 : 4;
  if (hold.up === h) return 0;
  return hold.up === w ? 1 : 2;
}
