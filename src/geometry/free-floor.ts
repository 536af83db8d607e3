import type { Region } from './region.js';
import { subtract } from './regions.js';
import type { Ring } from './types.js';

/**
 * The floor of a room that nothing stands on, mm: the outline less the footprints, which may overlap one another and the
 * walls. Empty when they cover it. For drawings and areas; rounds, errs and throws as {@link subtract} does.
 */
export function freeFloor(outline: Ring, footprints: readonly Ring[]): Region {
  return subtract(outline, footprints);
}
