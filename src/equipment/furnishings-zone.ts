import { DEFAULTS } from './defaults.js';
import type { Source } from './equipment-types.js';
import type { FurnishingSpec, TurnRule, UseZoneSpec } from './furnishing-types.js';

/** What the kinds without a standard have for a source. */
export const UNSOURCED: Source = 'Sizes and use zones: common practice, no source; measure your own.';

/** What most kinds have in common: they stand on the floor with their back to a wall, and nobody knows their mass before they are weighed. */
export const AT_WALL = { from: 0, mass: null, stand: 'wall', turns: 'back' } as const;

/** As {@link AT_WALL}, for what stands free and square to the room. */
export const FREE = { from: 0, mass: null, stand: 'free', turns: 'square' } as const;

/** A zone up to the head height that is shared by turns with all that can be, let out on the sides that are named. */
export function useZone(name: string, sides: Partial<UseZoneSpec>): UseZoneSpec {
  return {
    name,
    front: 0,
    back: 0,
    left: 0,
    right: 0,
    from: 0,
    to: DEFAULTS.arrangement.zoneHeight,
    withCueing: true,
    withZones: true,
    offDoors: false,
    ...sides,
  };
}

/** Which way round a piece stands where nobody says it: see {@link FurnishingSpec.turns}. */
export function usualTurns(stand: FurnishingSpec['stand']): TurnRule {
  return stand === 'free' || stand === 'over-table' ? 'square' : 'back';
}
