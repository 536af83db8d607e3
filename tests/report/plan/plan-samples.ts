import type { FitInput } from '../../../src/fit-input.js';

/** Rooms with one of everything that a plan draws; invented. */
const GAME_ROOM: FitInput = {
  room: {
    outline: [
      [0, 0],
      [6400, 0],
      [6400, 4200],
      [5200, 4200],
      [5200, 5100],
      [0, 5100],
    ],
    ceiling: 2400,
    obstacles: [
      { name: 'sofa', footprint: { center: [960, 4670], length: 1900, width: 850 }, to: 820, movable: true },
      {
        name: 'radiator',
        footprint: [
          [6400, 1200],
          [6400, 2200],
          [6290, 2200],
          [6290, 1200],
        ],
        from: 150,
        to: 750,
      },
      {
        name: 'chimney breast',
        footprint: [
          [2200, 0],
          [3600, 0],
          [3600, 350],
          [2200, 350],
        ],
      },
      { name: 'lamp', footprint: { center: [3100, 2550], length: 1200, width: 300 }, from: 1850, to: 2100 },
      { name: 'column', footprint: { center: [300, 1900], diameter: 300 } },
    ],
    doors: [
      { name: 'hall door', hinge: [6400, 3200], latch: [6400, 4000], opens: 'out' },
      { name: 'garden door', hinge: [0, 2600], latch: [0, 3400], opens: 'in' },
      { name: 'cellar door', hinge: [300, 0], latch: [1500, 0], opens: 'slides' },
    ],
  },
  table: 'pool-7ft-bar',
  cues: ['57 in'],
  detail: 'shots',
};

const rectangle = (width: number, depth: number): [number, number][] => [
  [0, 0],
  [width, 0],
  [width, depth],
  [0, depth],
];

export const SAMPLES: Readonly<Record<string, FitInput>> = {
  gameRoom: GAME_ROOM,
  attic: {
    room: {
      outline: rectangle(7000, 5600),
      ceiling: [
        [
          [0, 0, 1200],
          [7000, 0, 1200],
          [0, 2000, 2900],
        ],
        [
          [0, 5600, 1200],
          [7000, 5600, 1200],
          [0, 3600, 2900],
        ],
      ],
    },
    table: 'pool-8ft-home',
  },
  snookerHall: {
    room: {
      outline: [
        [0, 0],
        [7500, 0],
        [8200, 700],
        [8200, 6000],
        [0, 6000],
      ],
    },
    table: 'snooker-12ft',
  },
  cell: { room: { outline: rectangle(2600, 2000) }, table: 'pool-9ft' },
  standsInTheWay: {
    room: {
      outline: rectangle(6000, 5000),
      obstacles: [{ name: 'pillar', footprint: { center: [3000, 2400], diameter: 400 } }],
    },
    table: 'pool-8ft-home',
    pose: { x: 3200, y: 2500, turn: 30 },
  },
  tooTight: {
    room: { outline: rectangle(3600, 2500), ceiling: 2300 },
    table: 'pool-7ft-bar',
    detail: 'shots',
  },
  turned: {
    room: { outline: rectangle(6500, 5500) },
    table: 'pool-8ft-home',
    pose: { x: 3200, y: 2700, turn: 33 },
    detail: 'shots',
  },
  hall: { room: { outline: rectangle(60_000, 40_000) }, table: 'pool-9ft' },
};

/** Names that try to leave their text: markup, quotes, entities, controls, halves of pairs, marks, endless words, wide signs. */
export const HOSTILE_NAMES: readonly string[] = [
  '</text><script>alert(1)</script>',
  `"><rect width='9'/> & &amp; &#0; ]]>`,
  '<!-- \u202eedispu nwod\u202c -->',
  `bell\u0007 tab\t half \ud800 more \ufffe end`,
  `zalgo${'\u0301\u0302\u0303'.repeat(30)}`,
  'W'.repeat(180),
  '\u6e38\u620f\u684c\u5b50 '.repeat(20),
  '\u{1f3b1}'.repeat(60),
  '\ufdfd'.repeat(9),
];
