import { rectangleRing } from '../geometry/ring.js';
import type { FurnishingSpec } from './furnishing-types.js';
import type { FurnishingId } from './furnishings-ids.js';
import { AT_WALL, FREE, UNSOURCED, useZone } from './furnishings-zone.js';

export type GameId = Extract<
  FurnishingId,
  'darts' | 'table-tennis' | 'table-football' | 'upright-cabinet' | 'pinball' | 'music-machine'
>;

/** Western Australia, Sports Dimensions Guide, darts (Darts Australia rules, 2015): board, bull above the floor, board's face to oche, oche. */
const DARTS = { board: 451, bull: 1730, oche: 2370, ocheLength: 915 } as const;

/** ITTF Technical Leaflet T1: the table and its surface above the floor. */
const TENNIS = { length: 2740, width: 1525, surface: 760 } as const;
/** Floor for a game of table tennis, recreation and coaching (second-hand). */
const TENNIS_FLOOR = { length: 8500, width: 4120 } as const;

/** Other games, and the machines that stand beside them. */
export function games(): { readonly [id in GameId]: FurnishingSpec } {
  const { board, bull, oche, ocheLength } = DARTS;
  return {
    darts: {
      kind: 'darts',
      name: 'darts board',
      ring: rectangleRing([0, 0], board, 50),
      length: board,
      width: 50,
      from: bull - board / 2,
      to: bull + board / 2,
      mass: null,
      stand: 'hung',
      turns: 'back',
      zones: [
        useZone('throw lane', {
          // From the board's face, which is the front of the piece, to the oche and behind it.
          front: oche + 600,
          left: (ocheLength - board) / 2,
          right: (ocheLength - board) / 2,
          offDoors: true,
        }),
      ],
      source:
        "Board 451 mm across, bull 1.73 m above the floor, oche 2.37 m from the board's face and 915 mm long: Western Australia, Sports Dimensions Guide, darts (Darts Australia rules, 2015). Thickness of the board on its bracket 50 mm and standing room of 600 mm behind the oche: common practice, no source. Tournament practice besides, not in these figures (the same guide): whoever waits stands at least 1.5 m behind the oche, and boards hang at least 3 m apart, bull to bull.",
    },
    'table-tennis': {
      ...FREE,
      kind: 'table-tennis',
      name: 'table tennis table',
      ring: rectangleRing([0, 0], TENNIS.length, TENNIS.width),
      length: TENNIS.length,
      width: TENNIS.width,
      to: TENNIS.surface,
      zones: [
        useZone('playing space', {
          front: (TENNIS_FLOOR.width - TENNIS.width) / 2,
          back: (TENNIS_FLOOR.width - TENNIS.width) / 2,
          left: (TENNIS_FLOOR.length - TENNIS.length) / 2,
          right: (TENNIS_FLOOR.length - TENNIS.length) / 2,
          to: 2300,
        }),
      ],
      source:
        'Table 2.74 x 1.525 m, surface 0.76 m above the floor, without its net: ITTF Technical Leaflet T1. Playing space of 8.5 x 4.12 m for recreation: second-hand. Headroom of 2.3 m: common practice, no source; lights are asked for at 3 m (second-hand), and matches ask for more of everything.',
    },
    'table-football': {
      ...FREE,
      kind: 'table-football',
      name: 'table football',
      ring: rectangleRing([0, 0], 1400, 750),
      length: 1400,
      width: 750,
      to: 900,
      // Both long sides, for players and for the rods that they pull out.
      zones: [useZone('players', { front: 900, back: 900 })],
      source: UNSOURCED,
    },
    'upright-cabinet': {
      ...AT_WALL,
      kind: 'upright-cabinet',
      name: 'upright cabinet',
      ring: rectangleRing([0, 0], 700, 800),
      length: 700,
      width: 800,
      to: 1800,
      zones: [useZone('player', { front: 800 })],
      source: UNSOURCED,
    },
    pinball: {
      ...AT_WALL,
      kind: 'pinball',
      name: 'pinball machine',
      ring: rectangleRing([0, 0], 700, 1400),
      length: 700,
      width: 1400,
      to: 1900,
      zones: [useZone('player', { front: 800 })],
      source: UNSOURCED,
    },
    'music-machine': {
      ...AT_WALL,
      kind: 'music-machine',
      name: 'music machine',
      ring: rectangleRing([0, 0], 900, 700),
      length: 900,
      width: 700,
      to: 1500,
      zones: [useZone('user', { front: 600 })],
      source: UNSOURCED,
    },
  };
}
