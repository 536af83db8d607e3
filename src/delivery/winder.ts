import type { Carried } from './carried.js';
import type { Crossing } from './crossing.js';
import { crossTurn } from './landing.js';
import { turnOfWinder } from './landing-space.js';
import type { Winder } from './passages.js';

/**
 * A box on steps that wind round a corner, held at one tilt: as a quarter landing of the narrowest width (see crossLanding). What passes does so
 * with the corner filled up to `climb` under the ceiling over its lowest step; for what does not, the whole climb counts as free.
 */
export function crossWinder(
  winder: Winder,
  box: Carried,
  { maxBoxes }: { readonly maxBoxes: number },
): Crossing {
  return crossTurn(turnOfWinder(winder), box, winder.tolerance, maxBoxes);
}
