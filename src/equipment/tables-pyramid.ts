import type { TableSpec } from './equipment-types.js';

export type PyramidTableId = 'pyramid-12ft' | 'pyramid-10ft' | 'pyramid-9ft' | 'pyramid-8ft' | 'pyramid-7ft';

const ENCYCLOPAEDIA = 'an encyclopaedia on Russian pyramid, second-hand';
const PYRAMID_REST = `Outer size: derived, field and twice a rail of 150 mm, no source. Bed height: 820 mm, an article quoting the Russian federation, second-hand. Nose height: 63.5 % of the ball, as in pool, no source. Rail height: common practice, no source. Ball: 68 mm, ${ENCYCLOPAEDIA}. Usual cue: about 1.6 m, from memory`;

/** What pyramid tables share. */
const PYRAMID = {
  game: 'pyramid',
  bedHeight: 820,
  noseHeight: 43.2,
  railHeight: 48,
  ballDiameter: 68,
  usualCue: 1600.2,
  mass: null,
  legs: null,
} as const;

/** Russian pyramid. */
export function pyramidTables(): { readonly [id in PyramidTableId]: TableSpec } {
  return {
    'pyramid-12ft': {
      ...PYRAMID,
      id: 'pyramid-12ft',
      name: 'Pyramid 12 ft',
      field: { length: 3550, width: 1775 },
      outer: { length: 3850, width: 2075 },
      source: `Field: 3550 x 1775 mm, technical requirements of the International Committee of Pyramid, second-hand. ${PYRAMID_REST}.`,
    },
    'pyramid-10ft': {
      ...PYRAMID,
      id: 'pyramid-10ft',
      name: 'Pyramid 10 ft',
      field: { length: 2950, width: 1470 },
      outer: { length: 3250, width: 1770 },
      source: `Field: 2950 x 1470 mm, ${ENCYCLOPAEDIA}. ${PYRAMID_REST}.`,
    },
    'pyramid-9ft': {
      ...PYRAMID,
      id: 'pyramid-9ft',
      name: 'Pyramid 9 ft',
      field: { length: 2540, width: 1270 },
      outer: { length: 2840, width: 1570 },
      source: `Field: 2540 x 1270 mm, ${ENCYCLOPAEDIA}. ${PYRAMID_REST}.`,
    },
    'pyramid-8ft': {
      ...PYRAMID,
      id: 'pyramid-8ft',
      name: 'Pyramid 8 ft',
      field: { length: 2240, width: 1120 },
      outer: { length: 2540, width: 1420 },
      source: `Field: 2240 x 1120 mm, ${ENCYCLOPAEDIA}. ${PYRAMID_REST}.`,
    },
    'pyramid-7ft': {
      ...PYRAMID,
      id: 'pyramid-7ft',
      name: 'Pyramid 7 ft',
      field: { length: 1980, width: 990 },
      outer: { length: 2280, width: 1290 },
      source: `Field: 1980 x 990 mm, ${ENCYCLOPAEDIA}. ${PYRAMID_REST}.`,
    },
  };
}
