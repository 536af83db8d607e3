import type { TableSpec } from './equipment-types.js';

export type SnookerTableId =
  | 'snooker-12ft'
  | 'snooker-12ft-metric'
  | 'snooker-10ft'
  | 'snooker-9ft'
  | 'snooker-8ft'
  | 'snooker-7ft'
  | 'snooker-6ft';

const RULES = 'Official rules of snooker, s. 1 (equipment), in the German text of the DBU';
const BALL = `Ball: 52.5 mm, ${RULES}`;
const HEIGHTS = `Bed height: the top of the rail at 864 mm (${RULES}) less the rail's height. Rail and nose height: common practice, no source. Usual cue: 57 to 58 in, an encyclopaedia on cues`;
const SMALL = `no governing body publishes this size. Outer size: derived, with rails as wide as those of the full size, no source. Ball: 52.5 mm; smaller tables often come with smaller balls, from memory. ${HEIGHTS}`;

/** What snooker tables share. */
const SNOOKER = {
  game: 'snooker',
  bedHeight: 826,
  noseHeight: 33.3,
  railHeight: 38,
  ballDiameter: 52.5,
  usualCue: 1447.8,
  mass: null,
  legs: null,
} as const;

/** Snooker and English billiards. */
export function snookerTables(): { readonly [id in SnookerTableId]: TableSpec } {
  return {
    'snooker-12ft': {
      ...SNOOKER,
      id: 'snooker-12ft',
      name: 'Snooker 12 ft (full size)',
      field: { length: 3569, width: 1778 },
      outer: { length: 3850, width: 2060 },
      mass: 1500,
      legs: 8,
      source: `Field: 11 ft 8 1/2 in x 5 ft 10 in (3569 x 1778 mm), ${RULES}. Outer size: one stated size, second-hand. ${BALL}. ${HEIGHTS}. Mass: up to about 1500 kg, encyclopaedias, second-hand. Legs: from memory.`,
    },
    'snooker-12ft-metric': {
      ...SNOOKER,
      id: 'snooker-12ft-metric',
      name: 'Snooker, metric (3.5 m, now rare)',
      field: { length: 3500, width: 1750 },
      outer: { length: 3780, width: 2030 },
      source: `Field: 3500 x 1750 mm, rules of the B&SCC, metric edition. Outer size: derived, with rails as wide as those of the full size, no source. ${BALL}. ${HEIGHTS}.`,
    },
    'snooker-10ft': {
      ...SNOOKER,
      id: 'snooker-10ft',
      name: 'Snooker 10 ft',
      field: { length: 2940, width: 1470 },
      outer: { length: 3220, width: 1750 },
      source: `Field: a trade figure, from memory; ${SMALL}.`,
    },
    'snooker-9ft': {
      ...SNOOKER,
      id: 'snooker-9ft',
      name: 'Snooker 9 ft',
      field: { length: 2640, width: 1320 },
      outer: { length: 2920, width: 1600 },
      source: `Field: a trade figure, from memory; ${SMALL}.`,
    },
    'snooker-8ft': {
      ...SNOOKER,
      id: 'snooker-8ft',
      name: 'Snooker 8 ft',
      field: { length: 2340, width: 1170 },
      outer: { length: 2620, width: 1450 },
      source: `Field: a trade figure, from memory; ${SMALL}.`,
    },
    'snooker-7ft': {
      ...SNOOKER,
      id: 'snooker-7ft',
      name: 'Snooker 7 ft',
      field: { length: 2030, width: 1010 },
      outer: { length: 2310, width: 1290 },
      source: `Field: a trade figure, from memory; ${SMALL}.`,
    },
    'snooker-6ft': {
      ...SNOOKER,
      id: 'snooker-6ft',
      name: 'Snooker 6 ft',
      field: { length: 1750, width: 870 },
      outer: { length: 2030, width: 1150 },
      source: `Field: a trade figure, from memory; ${SMALL}.`,
    },
  };
}
