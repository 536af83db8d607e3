import type { CheckedArrangement } from './arrangement/checked-arrangement.js';
import type { CheckedDelivery } from './delivery/read-delivery.js';
import type { CueSpec, TableSpec } from './equipment/equipment-types.js';
import type { SearchProgress } from './fit-input.js';
import type { Placement } from './geometry/types.js';
import type { Scene } from './room/scene.js';
import type { TapedRoom } from './room/tape-report.js';
import type { StrokeSettings } from './stroke/stroke-settings.js';

/** A checked {@link FitInput}: plain numbers, nothing optional. */
export interface FitQuestion {
  readonly scene: Scene;
  /** The survey that the room was made from; null for a room by its corners. */
  readonly survey: TapedRoom | null;
  readonly table: TableSpec;
  /** The wanted one first; never empty. */
  readonly cues: readonly CueSpec[];
  readonly pose: Placement | null;
  readonly stroke: StrokeSettings;
  readonly search: CheckedSearch;
  readonly detail: 'verdict' | 'shots';
  /** The way in; null where none was given. */
  readonly delivery: CheckedDelivery | null;
  /** Other pieces in the room; null where none were given. */
  readonly arrangement: CheckedArrangement | null;
  /** Every default that was used, as a sentence. */
  readonly assumptions: readonly string[];
}

export interface CheckedSearch {
  readonly turns: 'square' | 'any';
  /** mm */
  readonly gap: number;
  readonly maxBoxes: number;
  readonly onProgress: ((progress: SearchProgress) => boolean | undefined) | null;
}
