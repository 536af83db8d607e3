import type { ArrangementInput, FurnishingInput } from './arrangement/furnishing-input.js';
import type { DeliveryInput } from './delivery/delivery-input.js';
import type { CueInput, TableInput } from './equipment/equipment-types.js';
import type { Length } from './length/length.js';
import type { RoomInput } from './room/room-input.js';
import type { TapedRoomInput } from './room/tape-room.js';
import type { StrokeInput } from './stroke/stroke-settings.js';

/** Where a table stands: centre of the play field and the anticlockwise angle of its long axis from +x, degrees. */
export interface PoseInput {
  readonly x: Length;
  readonly y: Length;
  /** Degrees; default 0. */
  readonly turn?: number;
}

/** Bounds of a running search, mm of clearance. */
export interface SearchProgress {
  /** Best clearance found so far; 0 while no place was found. */
  readonly value: number;
  /** No place has more clearance than this. */
  readonly upperBound: number;
  /** Boxes of poses looked at so far. */
  readonly boxes: number;
}

export interface SearchOptions {
  /** `'square'`: only turns parallel to a wall. `'any'` (default): every turn; a turn off square is taken only where it changes the verdict or gains more than 50 mm. */
  readonly turns?: 'square' | 'any';
  /** How close the found clearance must come to the proved upper bound; default 1 mm. */
  readonly gap?: Length;
  /** Most boxes of poses to look at; default 200,000. The bounds stay valid when it is reached. */
  readonly maxBoxes?: number;
  /** Called as the search goes; returning false stops it. The bounds stay valid. */
  readonly onProgress?: (progress: SearchProgress) => boolean | undefined;
}

/** One question: this room, this table, these cues. */
export interface FitInput {
  /** By its corners, or by tape readings. */
  readonly room: RoomInput | TapedRoomInput;
  /** An id from `TABLES`, or measurements. */
  readonly table: string | TableInput;
  /** The wanted one first; default: the usual cue of the game. */
  readonly cues?: readonly (Length | CueInput)[];
  /** Leave out to have the best place found. */
  readonly pose?: PoseInput;
  readonly stroke?: Partial<StrokeInput>;
  readonly search?: SearchOptions;
  /** `'shots'` adds the map of shares over the field; default `'verdict'`. */
  readonly detail?: 'verdict' | 'shots';
  /** The way in, passage by passage: whether the table's pieces can be carried to the room. */
  readonly delivery?: DeliveryInput;
  /** Other pieces that are to stand in the same room, at most 12. A place is found for the table and all of them together. */
  readonly furnishings?: readonly FurnishingInput[];
  /** How the pieces are arranged. */
  readonly arrangement?: ArrangementInput;
}
