import type { Carried, Hold } from './carried.js';
import { type Crossing, noWay } from './crossing.js';
import type { Motion, MotionPose } from './motion.js';
import type { Stair } from './passages.js';
import { stairBound, stairFamilyBound } from './stair-bounds.js';
import { type StairPlane, stairWays } from './stair-cells.js';
import { type StairFamily, stairFamilies } from './stair-holds.js';
import { type PlanePose, posesOfCells, posesOfWay, stairMotion, tightestPose } from './stair-motion.js';
import { stairProfile } from './stair-profile.js';
import { type WidestAnswer, widestWay } from './stair-search.js';
import { plainStairWay, type StairWay } from './stair-way.js';

/** Boxes of poses stand for about as much work as this share of cells of the plane of tilts. */
const CELLS_PER_BOX = 1 / 20;
/** mm: how closely the search narrows a spare down near the line. */
const WITHIN = 1;

/**
 * A box on a straight flight and the levels at its ends. Ways of holding it: one edge level and square to the walls, the other two in the
 * upright plane of the flight, tilted as they may be and changing on the way (lying along the flight, level, on end).
 *
 * At one place x and tilt the heights z that are free are an interval, so that a motion is a way in the plane of tilts and places along
 * which that interval is nowhere empty; its length is the pose's spare, since all that shrinks with the readings are ceilings
 * and end walls. Turned with a corner on both floors (or under both ceilings) a box is as far from the inner corner as it can be at that
 * tilt: both floors are the bounds of a translate of the cone that the ceilings bound, so that what is free anywhere at that tilt is free there.
 * That is the closed form; where levels or flight are short, or ceilings do not meet at the steps, it may fall short of the best,
 * and where it does not decide, the plane is searched.
 *
 * The flight is solid up to the line of the nosings for what passes; for what does not, corners may dip in between two of them.
 */
export function crossStair(stair: Stair, box: Carried, options: { readonly maxBoxes: number }): Crossing {
  const anyMotion = stairBound(stair, box);
  const tries = stairFamilies(box).map((family) => new FamilyOnStair(stair, family, anyMotion));
  tries.sort((a, b) => b.atMost - a.atMost);
  let best: FamilyOnStair | null = null;
  for (const one of tries) {
    if (best !== null && one.atMost <= best.atLeast) continue;
    one.takePlainWay();
    if (best === null || one.atLeast > best.atLeast) best = one;
  }
  if (best === null || best.atLeast < stair.tolerance) {
    const budget = Math.floor((options.maxBoxes * CELLS_PER_BOX) / Math.max(1, tries.length));
    for (const one of tries) {
      if (one.atMost < -stair.tolerance) continue;
      one.search(budget);
      if (best === null || one.atLeast > best.atLeast) best = one;
      if (best.atLeast >= stair.tolerance) break;
    }
  }
  if (best === null) return noWay('none', Number.NEGATIVE_INFINITY, anyMotion);
  const atMost = tries.reduce((most, one) => Math.max(most, one.atMost), best.atLeast);
  const { motion, narrowest } = best.motion();
  return {
    atLeast: best.atLeast,
    atMost,
    atMostAnyMotion: Math.max(anyMotion, atMost),
    hold: best.hold(),
    motion: best.atLeast >= 0 ? motion : null,
    narrowest,
    method: best.searched ? 'subdivision' : 'closed-form',
  };
}

class FamilyOnStair {
  atLeast = Number.NEGATIVE_INFINITY;
  atMost: number;
  searched = false;
  private readonly plane: StairPlane;
  private readonly cut: number;
  private plain: StairWay | null = null;
  private found: WidestAnswer | null = null;

  constructor(
    private readonly stair: Stair,
    private readonly family: StairFamily,
    anyMotion: number,
  ) {
    this.atMost = Math.min(anyMotion, stairFamilyBound(stair, family));
    const { profile, cut } = stairProfile(stair, Math.hypot(family.along, family.up) + 10);
    this.plane = { profile, pitch: stair.pitch, rise: 0, endless: stair.run === Number.POSITIVE_INFINITY };
    this.cut = cut;
  }

  private get sides(): number {
    return this.stair.width - this.family.across;
  }

  takePlainWay(): void {
    this.plain = plainStairWay(this.plane, this.family);
    if (this.plain !== null) this.atLeast = Math.min(this.sides, this.plain.spare);
  }

  /** Searches the plane: first for a way, then, where there is none, for the proof that there is none. */
  search(maxCells: number): void {
    const { tolerance, rise } = this.stair;
    const options = { maxCells, within: WITHIN, above: tolerance, below: -tolerance };
    const ways = widestWay(stairWays(this.plane, this.family), options);
    const atLeast = Math.min(this.sides, ways.atLeast);
    if (atLeast > this.atLeast) {
      this.found = ways;
      this.atLeast = atLeast;
      this.searched = true;
    }
    if (this.atLeast >= tolerance) return;
    const lowered = widestWay(stairWays({ ...this.plane, rise }, this.family), {
      ...options,
      above: Number.POSITIVE_INFINITY,
    });
    if (lowered.atMost < this.atMost) {
      this.atMost = lowered.atMost;
      this.searched = true;
    }
  }

  hold(): Hold {
    const { along, across, up } = this.family;
    return { along, across, up, tilt: this.flightTilt() };
  }

  /** The motion, and its pose of least spare. */
  motion(): { motion: Motion; narrowest: MotionPose | null } {
    const poses =
      this.found === null
        ? posesOfWay(this.plane, this.family, this.plain?.places ?? [], this.plain?.spare ?? 0)
        : posesOfCells(this.plane, this.family, this.found.way, this.found.atLeast);
    const tightest = tightestPose(this.plane, this.family, poses);
    const inFrame = (some: readonly PlanePose[]): Motion =>
      stairMotion(this.family, some, this.plane, this.cut, this.stair.width);
    return {
      motion: inFrame(poses),
      narrowest: tightest === null ? null : inFrame([tightest]).poses[0],
    };
  }

  /** The tilt half-way up the flight. */
  private flightTilt(): number {
    const places = this.found?.way ?? this.plain?.places ?? [];
    const middle = this.plane.profile.run / 2;
    return places.find(({ x }) => x >= middle)?.tilt ?? places[places.length - 1]?.tilt ?? 0;
  }
}
