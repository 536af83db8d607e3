import type { Placement, Ring, Size } from '../geometry/types.js';

/**
 * Where can a table stand, and where has it the most room to cue? Two rectangles share the centre and the turn:
 * `play` (Q, the rectangle of ball centres) wants distance to walls and tall things, `frame` (the outer rectangle) must not
 * overlap anything that stands on the floor.
 */
export interface PlacementProblem {
  readonly play: Size;
  readonly frame: Size;
  /** Outline of the room, anticlockwise. */
  readonly outline: Ring;
  /** Footprints that a level cue meets, anticlockwise. They may overlap one another and the walls. */
  readonly tall: readonly Ring[];
  /** Footprints that only the frame must keep off: low furniture, door swings, floor under a low ceiling. Anticlockwise. */
  readonly low: readonly Ring[];
}

export interface PlacementOptions {
  /** Wanted difference between upper bound and value, mm. */
  readonly gap: number;
  readonly maxBoxes: number;
  /** `'square'`: only turns parallel or perpendicular to a wall. */
  readonly turns: 'square' | 'any';
  /** Only places with more clearance than this are of interest (mm); the upper bound is then at least this. Default 0. */
  readonly floor?: number;
  /** The search ends as soon as a place with at least this clearance (mm) is found: for a quick yes. Default: none. */
  readonly target?: number;
  /** Returning false stops the search; the bounds stay valid. */
  readonly onProgress?: (progress: {
    value: number;
    upperBound: number;
    boxes: number;
  }) => boolean | undefined;
}

export interface PlacementResult {
  /** The best place found, or null: none has more clearance than the floor. */
  readonly pose: Placement | null;
  /** Its clearance: distance from Q to walls and tall things, mm; 0 without a pose. */
  readonly value: number;
  /** No place where the frame stands free has more clearance than this, mm. */
  readonly upperBound: number;
  readonly boxes: number;
  /** True: `maxBoxes` or `onProgress` ended the search before the gap was reached. The bounds are valid all the same. */
  readonly stopped: boolean;
}
