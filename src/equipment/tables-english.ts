import type { TableSpec } from './equipment-types.js';

export type EnglishTableId =
  | 'english-7ft-play'
  | 'english-7ft'
  | 'blackball-7ft'
  | 'english-6ft-play'
  | 'english-6ft';

const WEPF = 'WEPF World Eightball specification, second-hand';
const TRADE = 'the British trade standard (BAPTO and BACTA)';
const REST = `Ball: the cue ball, 47.6 mm (object balls 50.8 mm), ${WEPF}. Bed height: middle of a table height of 800 to 850 mm (same), read as the top of the rail. Nose height: 63.5 % of the object ball, as in pool, no source. Rail height: common practice, no source. Legs: from memory. Usual cue: an encyclopaedia on cues (57 to 59 in)`;
const OUTER = `Outer size: derived, field and 1 ft (${TRADE})`;

/** What English pool tables share. The ball is the one that is struck. */
const ENGLISH = {
  game: 'English pool',
  bedHeight: 787,
  noseHeight: 32.3,
  railHeight: 38,
  ballDiameter: 47.6,
  usualCue: 1447.8,
  mass: null,
  legs: 4,
} as const;

/**
 * English pool and blackball. "7 ft" is the play field in one usage and the outside in the other, a foot less to play on;
 * so is "6 ft".
 */
export function englishTables(): { readonly [id in EnglishTableId]: TableSpec } {
  return {
    'english-7ft-play': {
      ...ENGLISH,
      id: 'english-7ft-play',
      name: 'English pool 7 ft (7 x 3 1/2 ft to play on)',
      field: { length: 2133.6, width: 1066.8 },
      outer: { length: 2438.4, width: 1371.6 },
      source: `Field: 7 ft x 3 ft 6 in, the largest of the ${WEPF}. ${OUTER}. ${REST}.`,
    },
    'english-7ft': {
      ...ENGLISH,
      id: 'english-7ft',
      name: 'English pool 7 ft (7 x 4 ft outside)',
      field: { length: 1828.8, width: 914.4 },
      outer: { length: 2133.6, width: 1219.2 },
      source: `Outer size: 7 x 4 ft, ${TRADE}. Field: derived, 1 ft less each way (same, within 2 in). ${REST}.`,
    },
    'blackball-7ft': {
      ...ENGLISH,
      id: 'blackball-7ft',
      name: 'Blackball 7 ft (French federation)',
      field: { length: 1851, width: 935 },
      outer: { length: 2156, width: 1240 },
      bedHeight: 762,
      ballDiameter: 48,
      source: `Field: 1851 x 935 mm, a French club quoting its federation, second-hand. ${OUTER}. Ball: the cue ball, 48 mm (object balls 50.8 mm), same. Bed height: middle of a table height of 750 to 850 mm (same), read as the top of the rail. Nose height: 63.5 % of the object ball, as in pool, no source. Rail height: common practice, no source. Legs: from memory. Usual cue: an encyclopaedia on cues (57 to 59 in).`,
    },
    'english-6ft-play': {
      ...ENGLISH,
      id: 'english-6ft-play',
      name: 'English pool 6 ft (6 x 3 ft to play on)',
      field: { length: 1828.8, width: 914.4 },
      outer: { length: 2133.6, width: 1219.2 },
      source: `Field: 6 x 3 ft, the smallest of the ${WEPF}. ${OUTER}. ${REST}.`,
    },
    'english-6ft': {
      ...ENGLISH,
      id: 'english-6ft',
      name: 'English pool 6 ft (6 ft outside)',
      field: { length: 1524, width: 762 },
      outer: { length: 1828.8, width: 1066.8 },
      source: `Outer length: 6 ft, ${TRADE}. Field length: derived, 1 ft less (same); width: half of it (same: about). Outer width: derived, field and 1 ft; the standard prints 3 ft, which would leave a field of less than half its length. ${REST}.`,
    },
  };
}
