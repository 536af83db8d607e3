import type { Length } from '../length/length.js';

/** A point of the plan: x to the right, y up. */
export type PointInput = readonly [x: Length, y: Length];

/** A point of a ceiling: plan position and height above the floor. */
export type SpacePointInput = readonly [x: Length, y: Length, z: Length];

/**
 * A sloping face of the ceiling, by three of its points. Each face reaches across the whole room, and the lowest governs at
 * each place; what hangs low over a part of the room is an obstacle.
 */
export type CeilingPlane = readonly [SpacePointInput, SpacePointInput, SpacePointInput];

/** Corners in order (either direction, closed or not), or a rectangle or circle by its centre. */
export type Footprint =
  | readonly PointInput[]
  | {
      readonly center: PointInput;
      readonly length: Length;
      readonly width: Length;
      /** Anticlockwise angle of the length from +x, degrees; default 0. */
      readonly turn?: number;
    }
  | { readonly center: PointInput; readonly diameter: Length };

/** Anything that stands, hangs or juts out in the room: a vertical prism between two heights. */
export interface ObstacleInput {
  /** What the answer calls it. */
  readonly name: string;
  readonly footprint: Footprint;
  /** Underside above the floor; default 0. */
  readonly from?: Length;
  /** Top above the floor; default: up to the ceiling. */
  readonly to?: Length;
  /** Advice may suggest to move it; default false. */
  readonly movable?: boolean;
}

/**
 * A door in a wall, seen from the room. A leaf that opens in needs its swing free of furniture and tables; a cue
 * may cross it.
 */
export interface DoorInput {
  readonly name?: string;
  /** Where the leaf is hung, on a wall. For a sliding door: the end it slides to. */
  readonly hinge: PointInput;
  /** Where the leaf closes, on the same wall. */
  readonly latch: PointInput;
  readonly opens: 'in' | 'out' | 'slides';
}

/** The room as it was measured. */
export interface RoomInput {
  /** The inside faces of the walls, corner by corner, in either direction, closed or not. */
  readonly outline: readonly PointInput[];
  /** Height of a flat ceiling, or its sloping faces; default: no ceiling is considered, and the report says so. */
  readonly ceiling?: Length | readonly CeilingPlane[];
  readonly obstacles?: readonly ObstacleInput[];
  readonly doors?: readonly DoorInput[];
  /** How far off any of these measurements may be; default 10 mm. */
  readonly tolerance?: Length;
  /**
   * How far off each wall may be, square to itself, one for each wall of `outline` in the order of the list: replaces
   * `tolerance` for the walls. The whole wall, both its ends, lies so near to the line that is given for it.
   */
  readonly wallTolerances?: readonly Length[];
}
