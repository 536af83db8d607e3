import { circleRing, rectangleRing } from '../geometry/ring.js';
import { DEFAULTS } from './defaults.js';
import type { FurnishingSpec } from './furnishing-types.js';
import type { FurnishingId } from './furnishings-ids.js';
import { AT_WALL, FREE, UNSOURCED, useZone } from './furnishings-zone.js';

export type RoomPieceId = Extract<
  FurnishingId,
  'bar' | 'stool' | 'sofa' | 'cupboard' | 'cue-rack' | 'score-board' | 'lamp'
>;

/**
 * Underside of a lamp above the bed, mm: WPA Recommended Equipment Specifications, s. 15, for a fitting that can be moved aside (40 in). It
 * meets the others too: at least 0.80 m (DBU Materialnormen Snooker, s. 3.1) and 825.5 mm (WEPF, second-hand). One that is fixed hangs at
 * 1.65 m (WPA).
 */
export const LAMP_OVER_BED = 1016;

/** Furniture, and what hangs on the walls and over the table. */
export function roomPieces(): { readonly [id in RoomPieceId]: FurnishingSpec } {
  const lamp = DEFAULTS.table.bedHeight + LAMP_OVER_BED;
  return {
    bar: {
      ...FREE,
      kind: 'bar',
      name: 'bar',
      ring: rectangleRing([0, 0], 1800, 600),
      length: 1800,
      width: 600,
      to: 1100,
      zones: [
        // Its stools stand there all evening.
        useZone('guests', { front: 900, withCueing: false, withZones: false }),
        useZone('host', { back: 900 }),
      ],
      source: `${UNSOURCED} That seats keep cues off: WPA Recommended Equipment Specifications count a chair as an obstacle.`,
    },
    stool: {
      ...FREE,
      turns: 'any',
      kind: 'stool',
      name: 'stool',
      ring: circleRing([0, 0], 400),
      length: 400,
      width: 400,
      to: 750,
      zones: [useZone('guest', { front: 400 })],
      source: UNSOURCED,
    },
    sofa: {
      ...AT_WALL,
      kind: 'sofa',
      name: 'sofa',
      ring: rectangleRing([0, 0], 2000, 900),
      length: 2000,
      width: 900,
      to: 850,
      zones: [useZone('legs', { front: 600 })],
      source: UNSOURCED,
    },
    cupboard: {
      ...AT_WALL,
      kind: 'cupboard',
      name: 'cupboard',
      ring: rectangleRing([0, 0], 1000, 500),
      length: 1000,
      width: 500,
      to: 2000,
      // A leaf of half its length, and whoever opens it.
      zones: [useZone('doors', { front: 900 })],
      source: UNSOURCED,
    },
    'cue-rack': {
      ...AT_WALL,
      stand: 'hung',
      kind: 'cue-rack',
      name: 'cue rack',
      ring: rectangleRing([0, 0], 700, 150),
      length: 700,
      width: 150,
      from: 200,
      to: 1800,
      zones: [useZone('player', { front: 600 })],
      source: UNSOURCED,
    },
    'score-board': {
      ...AT_WALL,
      stand: 'hung',
      kind: 'score-board',
      name: 'score board',
      ring: rectangleRing([0, 0], 900, 50),
      length: 900,
      width: 50,
      from: 1200,
      to: 1900,
      zones: [useZone('marker', { front: 600 })],
      source: UNSOURCED,
    },
    lamp: {
      ...FREE,
      stand: 'over-table',
      kind: 'lamp',
      name: 'lamp over the table',
      ring: rectangleRing([0, 0], 1400, 400),
      length: 1400,
      width: 400,
      from: lamp,
      to: lamp + 300,
      zones: [],
      source:
        'Underside 1.016 m (40 in) above the bed, the least for a fitting that can be moved aside: WPA Recommended Equipment Specifications, s. 15 (a fixed one: 1.65 m). It is more than the 0.80 m of DBU Materialnormen Snooker, s. 3.1, and the 825.5 mm of the WEPF (second-hand). Size: common practice, no source; measure your own.',
    },
  };
}
