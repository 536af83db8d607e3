import type { TableSpec } from './equipment-types.js';

export type CaromTableId = 'carom-match' | 'carom-half-fr' | 'carom-half-de' | 'carom-small';

const UMB = 'UMB rules, art. 2';
const DBU = 'DBU carom rules, s. 2';
const FRAME = 'Outer size: derived, field and twice a frame of 125 mm';
const REST = `Nose height: 37 mm, ${UMB}. Bed height: 750 mm, which meets both readings of 750 to 800 mm, to the top of the frame (${UMB}; ${DBU}) or to the cloth (the Norwegian federation). Rail height: common practice, no source. Ball: 61 to 61.5 mm, second-hand. Usual cue: 54 to 56 in, from memory`;

/** What carom tables share. */
const CAROM = {
  game: 'carom',
  bedHeight: 750,
  noseHeight: 37,
  railHeight: 42,
  ballDiameter: 61.5,
  usualCue: 1422.4,
  mass: null,
  legs: null,
} as const;

/** Carom. "Half-match" is 2.54 m in French usage and 2.30 m in German. */
export function caromTables(): { readonly [id in CaromTableId]: TableSpec } {
  return {
    'carom-match': {
      ...CAROM,
      id: 'carom-match',
      name: 'Carom, match table',
      field: { length: 2840, width: 1420 },
      outer: { length: 3090, width: 1670 },
      source: `Field: 2840 x 1420 mm, ${UMB}.1. ${FRAME} (${UMB}). ${REST}.`,
    },
    'carom-half-fr': {
      ...CAROM,
      id: 'carom-half-fr',
      name: 'Carom, half-match (French usage)',
      field: { length: 2540, width: 1270 },
      outer: { length: 2800, width: 1527.5 },
      source: `Outer size: 2.80 x 1.5275 m, a French article on carom, second-hand. Field: derived, less the 0.26 m of the match table there. ${REST}.`,
    },
    'carom-half-de': {
      ...CAROM,
      id: 'carom-half-de',
      name: 'Carom, half-match (German usage)',
      field: { length: 2300, width: 1150 },
      outer: { length: 2550, width: 1400 },
      source: `Field: 2300 x 1150 mm, ${DBU}. ${FRAME} (${DBU}). ${REST}.`,
    },
    'carom-small': {
      ...CAROM,
      id: 'carom-small',
      name: 'Carom, small table (German federation)',
      field: { length: 2100, width: 1050 },
      outer: { length: 2350, width: 1300 },
      source: `Field: 2100 x 1050 mm, ${DBU}. ${FRAME} (${DBU}). ${REST}.`,
    },
  };
}
