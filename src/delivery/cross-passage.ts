import type { Carried } from './carried.js';
import { crossCorner } from './corner.js';
import { crossCorridor } from './corridor.js';
import { crossGate } from './cross-gate.js';
import { crossLift } from './cross-lift.js';
import type { Crossing } from './crossing.js';
import { crossLanding } from './landing.js';
import type { Passage } from './passages.js';
import { crossStair } from './stair.js';
import { crossWinder } from './winder.js';

export interface CrossOptions {
  /** Most boxes of poses to look at where no closed form decides. */
  readonly maxBoxes: number;
}

/** One box in one passage, whatever its kind. */
export function crossPassage(passage: Passage, box: Carried, options: CrossOptions): Crossing {
  switch (passage.kind) {
    case 'doorway':
    case 'opening':
      return crossGate(passage, box, options);
    case 'corridor':
      return crossCorridor(passage, box);
    case 'corner':
      return crossCorner(passage, box);
    case 'stair':
      return crossStair(passage, box, options);
    case 'quarter-landing':
    case 'half-landing':
      return crossLanding(passage, box, options);
    case 'winder':
      return crossWinder(passage, box, options);
    case 'lift':
      return crossLift(passage, box, options);
  }
}
