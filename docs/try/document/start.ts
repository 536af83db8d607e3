import type { Json } from './json.js';

/** What the page opens with: a plain room with one thing in it, to be written over. */
export const START: Json = {
  room: {
    outline: [
      ['0 m', '0 m'],
      ['5.6 m', '0 m'],
      ['5.6 m', '4.3 m'],
      ['0 m', '4.3 m'],
    ],
    ceiling: '2.4 m',
    obstacles: [
      {
        name: 'the sideboard',
        footprint: { center: ['2.8 m', '22 cm'], length: '1.6 m', width: '44 cm' },
        to: '78 cm',
        movable: true,
      },
    ],
    doors: [{ name: 'the hall door', hinge: ['0 m', '4 m'], latch: ['0 m', '3.2 m'], opens: 'in' }],
    tolerance: '10 mm',
  },
  table: 'pool-8ft-home',
  cues: ['58 in', '52 in'],
};

/** What a room by tape readings begins with. */
export const START_TAPE: Json = {
  walls: [{ length: '4.3 m' }, { length: '5.6 m' }, { length: '4.3 m' }, { length: '5.6 m' }],
  diagonals: [{ from: 'A', to: 'C', length: '7.06 m' }],
  heights: ['2.4 m'],
};

/** What a room by its corners begins with, where it began by tape. */
export const START_OUTLINE: Json = [
  ['0 m', '0 m'],
  ['5.6 m', '0 m'],
  ['5.6 m', '4.3 m'],
  ['0 m', '4.3 m'],
];
