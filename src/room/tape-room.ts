import type { Length } from '../length/length.js';
import type { CeilingPlane, DoorInput, ObstacleInput, RoomInput } from './room-input.js';
import type { TapeSurvey } from './tape-input.js';

/** A door by where it is along a wall, as one reads it off a tape. */
export interface WallDoorInput {
  readonly name?: string;
  /** The corner from which the wall starts, in the order of the walk. */
  readonly wall: string;
  /** From that corner to where the opening begins, */
  readonly start: Length;
  /** and the width of the opening. */
  readonly width: Length;
  /** The end at which the leaf is hung, in the order of the walk. For a sliding door: the end it slides to. */
  readonly hinge: 'start' | 'end';
  readonly opens: 'in' | 'out' | 'slides';
}

/**
 * A room by tape readings instead of coordinates: see `roomFromTape` for what becomes of them. Its walls are called `wall A-B`
 * by their corners. What stands in it is placed in the adjusted plan: the first corner at [0, 0], and the first wall along +y
 * where the walk is clockwise (as by default), along +x where it is not.
 *
 * Each wall is as sure as the readings make it. `tolerance` is for the rest: furniture, doors, heights.
 */
export interface TapedRoomInput extends Omit<RoomInput, 'outline' | 'wallTolerances' | 'ceiling' | 'doors'> {
  readonly tape: TapeSurvey;
  /** Default: flat, at the least of the heights that were read; without any, no ceiling is considered, and the report says so. */
  readonly ceiling?: Length | readonly CeilingPlane[];
  readonly obstacles?: readonly ObstacleInput[];
  /** By points of the plan, or along a wall. */
  readonly doors?: readonly (DoorInput | WallDoorInput)[];
}
