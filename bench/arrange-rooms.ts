import type { ArrangeQuestion } from '../src/arrangement/arrange-question.js';
import { fitQuestion } from '../src/check-fit-input.js';
import type { FitInput } from '../src/fit-input.js';
import { signedArea } from '../src/geometry/ring.js';
import { findPlace } from '../src/placement/find-place.js';
import type { RoomInput } from '../src/room/room-input.js';
import { checkedRoom } from '../tests/helpers/external-rooms.js';
import { openRooms } from '../tests/helpers/open-rooms.js';

/** What goes into the rooms of the bench: a 7 ft table for a cue of 57 in, and six pieces of the catalogue. */
export const TABLE = 'pool-7ft-bar';
export const CUES: NonNullable<FitInput['cues']> = ['57 in'];
export const PIECES: readonly { readonly kind: string }[] = [
  'darts',
  'sofa',
  'cupboard',
  'cue-rack',
  'bar',
  'music-machine',
].map((kind) => ({ kind }));

export interface BenchRoom {
  readonly name: string;
  readonly room: RoomInput;
}

/** Two rooms of 40 m2, made up. */
export const FORTY: readonly BenchRoom[] = [
  {
    name: '7.2 x 5.6 m',
    room: {
      outline: [
        [0, 0],
        [7200, 0],
        [7200, 5600],
        [0, 5600],
      ],
      ceiling: 2500,
      doors: [{ hinge: [0, 5000], latch: [0, 4100], opens: 'in' }],
    },
  },
  {
    name: 'L of 40 m2',
    room: {
      outline: [
        [0, 0],
        [7600, 0],
        [7600, 4600],
        [4200, 4600],
        [4200, 5900],
        [0, 5900],
      ],
      ceiling: 2500,
      doors: [
        { hinge: [0, 5000], latch: [0, 4100], opens: 'in' },
        { hinge: [7600, 1000], latch: [7600, 1900], opens: 'out' },
      ],
    },
  },
];

const ROOMS = 10;
/** Areas, m2. */
const AREA = { least: 25, most: 60 } as const;

/**
 * Ten real rooms, by a rule and not by hand: of each building in tests/fixtures/rooms (sources and licences in the notice there) the first room of
 * 25 to 60 m2 that has a door and in which the table can stand, until there are ten. Outlines, heights, fixtures and doors as the data have them;
 * which way a door opens is ours, in and out by turns, for the data do not say.
 */
export function realRooms(): readonly BenchRoom[] {
  const rooms: BenchRoom[] = [];
  const buildings = new Set<string>();
  for (const open of openRooms) {
    if (rooms.length === ROOMS) break;
    if (buildings.has(open.bld) || open.area_m2 < AREA.least || open.area_m2 > AREA.most) continue;
    const { id, input, problems } = checkedRoom(open, TABLE);
    if (problems.length > 0 || (input.doors ?? []).length === 0) continue;
    const { scene, table, stroke, cues, search } = fitQuestion({ room: input, table: TABLE, cues: CUES });
    const { gap, maxBoxes, turns } = search;
    if (findPlace({ scene, table, stroke, cues, search: { gap, maxBoxes, turns } }).pose === null) continue;
    buildings.add(open.bld);
    rooms.push({ name: id, room: input });
  }
  return rooms;
}

/** The question that `assessFit` puts to the search. */
export function questionOf(room: RoomInput): ArrangeQuestion {
  const asked = fitQuestion({ room, table: TABLE, cues: CUES, furnishings: PIECES });
  const { scene, table, stroke, cues, pose, arrangement, search } = asked;
  if (arrangement === null) throw new Error('There are pieces.');
  return { scene, table, stroke, cue: cues[0], pose, arrangement, search };
}

/** Area of a room's outline, m2. */
export function areaOf({ scene }: ArrangeQuestion): number {
  return signedArea(scene.outline) / 1e6;
}
