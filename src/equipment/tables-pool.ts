import type { TableSpec } from './equipment-types.js';

export type PoolTableId =
  | 'pool-9ft'
  | 'pool-8ft-wpa'
  | 'pool-8ft-dbu'
  | 'pool-8ft-home'
  | 'pool-7ft-bar'
  | 'pool-7ft-bar-small'
  | 'heyball-9ft';

const WPA = 'WPA Recommended Equipment Specifications (2001)';
const DBU = 'DBU Materialnormen Pool';
const RAILS = `Outer size: derived, field and twice a rail of 5 in (${WPA}, s. 6: 4 to 7 1/2 in)`;
const WPA_HEIGHTS = `Bed height: middle of 29 1/4 to 31 in, nose height: 63.5 % of the ball (${WPA}, s. 2 and 7)`;
const PLAIN =
  'Rail height: common practice, no source. Legs: from memory. Usual cue: middle of 57 to 59 in, an encyclopaedia on cues';
const BALL = `Ball: ${WPA}, s. 16`;

/** What pool tables share; the figures' sources stand in each entry. */
const POOL = {
  game: 'pool',
  bedHeight: 765,
  noseHeight: 36.3,
  railHeight: 42,
  ballDiameter: 57.15,
  usualCue: 1473.2,
  mass: null,
  legs: 4,
} as const;

/** Pool and its close kin, heyball. */
export function poolTables(): { readonly [id in PoolTableId]: TableSpec } {
  return {
    'pool-9ft': {
      ...POOL,
      id: 'pool-9ft',
      name: 'Pool 9 ft',
      field: { length: 2540, width: 1270 },
      outer: { length: 2794, width: 1524 },
      mass: 350,
      source: `Field: ${WPA}, s. 5 (100 x 50 in); ${DBU}, s. 1.1 (2540 x 1270 mm). ${RAILS}. ${WPA_HEIGHTS}. ${BALL}. Mass: the least that the DBU asks, second-hand. ${PLAIN}.`,
    },
    'pool-8ft-wpa': {
      ...POOL,
      id: 'pool-8ft-wpa',
      name: 'Pool 8 ft (tournament size, "pro 8")',
      field: { length: 2336.8, width: 1168.4 },
      outer: { length: 2590.8, width: 1422.4 },
      source: `Field: ${WPA}, s. 5 (92 x 46 in). ${RAILS}. ${WPA_HEIGHTS}. ${BALL}. ${PLAIN}.`,
    },
    'pool-8ft-dbu': {
      ...POOL,
      id: 'pool-8ft-dbu',
      name: 'Pool 8 ft (German federation)',
      field: { length: 2240, width: 1120 },
      outer: { length: 2494, width: 1374 },
      bedHeight: 790,
      noseHeight: 36,
      mass: 300,
      source: `Field: ${DBU}, s. 1.1 (2240 x 1120 mm). Outer size: derived, field and twice a rail of 127 mm (${DBU}, s. 1.3: rail top 100 mm or wider). Bed height: about the middle of 750 to 850 mm, nose height: 36 mm (${DBU}, s. 1.2 and 1.3). ${BALL}. Mass: the least that the DBU asks, second-hand. ${PLAIN}.`,
    },
    'pool-8ft-home': {
      ...POOL,
      id: 'pool-8ft-home',
      name: 'Pool 8 ft (home and bar)',
      field: { length: 2235.2, width: 1117.6 },
      outer: { length: 2489.2, width: 1371.6 },
      source: `Field: 88 x 44 in, common practice, from memory. ${RAILS}. ${WPA_HEIGHTS}. ${BALL}. ${PLAIN}.`,
    },
    'pool-7ft-bar': {
      ...POOL,
      id: 'pool-7ft-bar',
      name: 'Pool 7 ft (bar and home)',
      field: { length: 1981.2, width: 990.6 },
      outer: { length: 2235.2, width: 1244.6 },
      source: `Field: 78 x 39 in, common practice, from memory; the WPA publishes no 7 ft table. ${RAILS}. ${WPA_HEIGHTS}. ${BALL}. ${PLAIN}.`,
    },
    'pool-7ft-bar-small': {
      ...POOL,
      id: 'pool-7ft-bar-small',
      name: 'Pool 7 ft (bar, smaller field)',
      field: { length: 1930.4, width: 965.2 },
      outer: { length: 2184.4, width: 1219.2 },
      source: `Field: 76 x 38 in, common practice, from memory; the WPA publishes no 7 ft table. ${RAILS}. ${WPA_HEIGHTS}. ${BALL}. ${PLAIN}.`,
    },
    'heyball-9ft': {
      ...POOL,
      id: 'heyball-9ft',
      name: 'Heyball (Chinese eight-ball) 9 ft',
      game: 'heyball',
      field: { length: 2540, width: 1270 },
      outer: { length: 2830, width: 1550 },
      bedHeight: 790,
      legs: null,
      source:
        'Field (2540 x 1270 mm), outer size and ball: from memory. Heights: as for pool, common practice, no source. Usual cue: as for pool.',
    },
  };
}
