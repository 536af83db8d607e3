import type { FurnishingSpec } from '../equipment/furnishing-types.js';
import type { Placement } from '../geometry/types.js';
import type { ArrangementProgress } from './furnishing-input.js';

/** A checked piece. Names differ from one another and from those of the room's things. */
export interface CheckedPiece extends FurnishingSpec {
  /** Middle of the bounding rectangle and turn, radians in [0, 2 pi); null: to be found. */
  readonly pose: Placement | null;
}

/** Checked `furnishings` and `arrangement`: plain numbers, nothing optional. */
export interface CheckedArrangement {
  /** Never empty; in the order of the input. */
  readonly pieces: readonly CheckedPiece[];
  /** Width of the clear ways, mm. */
  readonly way: number;
  readonly effort: number;
  readonly onProgress: ((progress: ArrangementProgress) => boolean | undefined) | null;
}
