import type { Carried, Hold } from './carried.js';
import type { HoldName } from './delivery-input.js';
import { reportHold } from './hold-report.js';
import { type Passage, STAIR_KINDS } from './passages.js';
import type { Cross, ProvedCrossing } from './prove-crossing.js';

/**
 * The crossing as carriers would choose it: held as in the passage before (at first: in the first way that the piece allows), as long as it
 * passes so with the tolerance to spare; only else in the way that leaves most room. A piece that has to be held otherwise at every
 * corner is not carried, it is juggled.
 */
export function crossAsCarried(
  passage: Passage,
  box: Carried,
  before: Hold | null,
  cross: Cross,
): ProvedCrossing {
  const way = before === null ? box.held[0] : reportHold(box, before).base;
  if (way !== undefined && box.held.includes(way)) {
    const kept = cross(passage, heldIn(box, way, passage));
    if (kept.atLeast >= passage.tolerance) return kept;
  }
  return cross(passage, box);
}

/** Held in this level way alone; on stairs it may be tilted out of it, since the flight itself is. */
function heldIn(box: Carried, way: HoldName, { kind }: Passage): Carried {
  return { ...box, held: [way], tilt: STAIR_KINDS.includes(kind) ? box.tilt : 0 };
}
