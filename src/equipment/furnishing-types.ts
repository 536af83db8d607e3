import type { Ring } from '../geometry/types.js';
import type { Source } from './equipment-types.js';

/**
 * Where a piece may stand: `wall`: with a side at a wall; `corner`: with its back and one end at two walls; `free`: anywhere on the
 * floor; `hung`: on a wall, its underside at a height; `over-table`: over the middle of the table's play field, turned with it.
 */
export type Stand = 'wall' | 'corner' | 'free' | 'hung' | 'over-table';

/**
 * Which way round a piece may stand: `back`: its back to the wall; `square`: any of its sides along a wall; `any`: every turn; or the
 * turns that are allowed, degrees anticlockwise.
 */
export type TurnRule = 'back' | 'square' | 'any' | readonly number[];

/** Floor that people need to use a piece: the footprint's bounding rectangle, let out on each side. mm. */
export interface UseZoneSpec {
  readonly name: string;
  readonly front: number;
  readonly back: number;
  readonly left: number;
  readonly right: number;
  /** Heights above the floor between which the zone is to be free. */
  readonly from: number;
  readonly to: number;
  /** May lie where the table's cues and players go, to be used by turns. Else cues and players keep off it. */
  readonly withCueing: boolean;
  /** May lie on another zone that may as well, to be used by turns. */
  readonly withZones: boolean;
  /** May not lie in the swing of a door, or across a doorway: someone could walk into a throw. */
  readonly offDoors: boolean;
}

/**
 * A piece of furniture or another game, mm. In its own frame its middle (of the bounding rectangle) is the origin, its length runs
 * along x, its back lies to -y and its front to +y; seen from the front, `left` is its +x side.
 */
export interface FurnishingSpec {
  /** Id in `FURNISHINGS`, or null for a piece given by measurements alone. */
  readonly kind: string | null;
  readonly name: string;
  /** Footprint in its own frame, anticlockwise. A circle is a polygon around it. */
  readonly ring: Ring;
  /** Bounding rectangle of the footprint: along its back, and from back to front. */
  readonly length: number;
  readonly width: number;
  /** Underside and top above the floor; `to` may not be infinite. */
  readonly from: number;
  readonly to: number;
  /** Kilograms; null where not known. */
  readonly mass: number | null;
  readonly stand: Stand;
  readonly turns: TurnRule;
  readonly zones: readonly UseZoneSpec[];
  /** Where the measurements come from. */
  readonly source: Source;
}
