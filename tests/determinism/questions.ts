import type { FitInput } from '../../src/index.js';
import { FURNISHED_ROOMS, SMALL_TABLE } from '../helpers/external-furnished.js';
import { openRoomInput, openRooms } from '../helpers/open-rooms.js';

export interface Question {
  readonly name: string;
  readonly input: FitInput;
}

/** Rooms full of ties: square, twice as symmetric as their table, exactly as large as a cue asks for. */
const EVEN: readonly (readonly [number, number])[] = [
  [5000, 4000],
  [4400, 4400],
  [3000, 2400],
  [7000, 7000],
  // Half of the field, cue, backswing and margin on every side: 2 x (1473.2 + 150 + 20) and the field of 1981 x 991 mm.
  [5267.4, 4277.4],
];

export const EVEN_ROOMS: readonly Question[] = EVEN.map(([length, width]) => ({
  name: `${length} x ${width}`,
  input: {
    room: {
      outline: [
        [0, 0],
        [length, 0],
        [length, width],
        [0, width],
      ],
      ceiling: 2400,
      obstacles: [
        { name: 'left bench', footprint: { center: [250, width / 2], length: 400, width: 900 }, to: 450 },
        {
          name: 'right bench',
          footprint: { center: [length - 250, width / 2], length: 400, width: 900 },
          to: 450,
        },
        {
          name: 'shelf',
          footprint: { center: [length / 2, width - 100], length: 1000, width: 200 },
          from: 1500,
          to: 1800,
        },
        { name: 'post', footprint: { center: [length - 150, 150], diameter: 120 }, movable: true },
        { name: 'other post', footprint: { center: [150, 150], diameter: 120 }, movable: true },
      ],
    },
    table: SMALL_TABLE,
    cues: ['57 in', '48 in'],
  },
}));

export const FURNISHED: readonly Question[] = FURNISHED_ROOMS.map(({ name, room }) => ({
  name,
  input: { room, table: SMALL_TABLE, cues: ['57 in', '42 in'] },
}));

/** Every so many-th of the real rooms. */
export function realRooms(every: number, from: number): readonly Question[] {
  return openRooms
    .filter((_, i) => i % every === from)
    .map((open) => ({
      name: open.id,
      input: { room: openRoomInput(open), table: 'pool-7ft-bar', cues: ['57 in', '48 in'] },
    }));
}
