import type { ArrangeQuestion } from '../../src/arrangement/arrange-question.js';
import type { ArrangementInput, FurnishingInput } from '../../src/arrangement/furnishing-input.js';
import { fitQuestion } from '../../src/check-fit-input.js';
import type { FitInput } from '../../src/fit-input.js';
import type { Point } from '../../src/geometry/types.js';
import type { DoorInput, RoomInput } from '../../src/room/room-input.js';

/** Questions for the joint search, from seeded chance: rooms with a nook, doors and a post, and pieces of the catalogue and of our own. */

export interface ArrangeCase {
  readonly room: RoomInput;
  readonly furnishings: readonly FurnishingInput[];
  readonly pose?: NonNullable<FitInput['pose']>;
}

/** The question that `assessFit` puts to the search. */
export function questionOf(
  { room, furnishings, pose }: ArrangeCase,
  arrangement: ArrangementInput = {},
): ArrangeQuestion {
  const asked = fitQuestion({
    room,
    table: 'pool-7ft-bar',
    cues: ['57 in'],
    furnishings,
    arrangement,
    ...(pose === undefined ? {} : { pose }),
  });
  if (asked.arrangement === null) throw new Error('There are pieces.');
  const { scene, table, stroke, cues, search } = asked;
  return { scene, table, stroke, cue: cues[0], pose: asked.pose, arrangement: asked.arrangement, search };
}

/** Alike from left and right, so that a mirrored room needs no other pieces. */
const KINDS = ['sofa', 'bar', 'cupboard', 'pinball', 'stool', 'darts', 'table-football', 'cue-rack', 'lamp'];

const OWN: readonly FurnishingInput[] = [
  {
    name: 'chest',
    footprint: { length: 1400, width: 500 },
    height: 700,
    stands: 'wall',
    zones: [{ front: 600 }],
  },
  { name: 'side table', footprint: { diameter: 700 }, height: 550, turns: 'square', zones: [] },
  {
    name: 'corner shelf',
    footprint: { length: 600, width: 600 },
    height: 1900,
    stands: 'corner',
    zones: [{ front: 400 }],
  },
  { name: 'screen', footprint: { length: 1600, width: 120 }, height: 1700, turns: 'any', zones: [] },
];

/** Sides in whole mm, and one door at the least. */
export function someRoom(random: () => number, least: Point, most: Point): RoomInput {
  const whole = (from: number, to: number): number => Math.round(from + random() * (to - from));
  const [length, width] = [whole(least[0], most[0]), whole(least[1], most[1])];
  const [nookX, nookY] = [whole(500, 1500), whole(300, 1200)];
  const nook = random() < 0.5;
  const outline: readonly Point[] = nook
    ? [
        [0, 0],
        [length, 0],
        [length, width - nookY],
        [length - nookX, width - nookY],
        [length - nookX, width],
        [0, width],
      ]
    : [
        [0, 0],
        [length, 0],
        [length, width],
        [0, width],
      ];
  const at = whole(100, width - 1100);
  const doors: DoorInput[] = [{ hinge: [0, at], latch: [0, at + 900], opens: random() < 0.5 ? 'in' : 'out' }];
  if (random() < 0.3 && length > 3800) {
    const x = whole(1200, length - nookX - 1000);
    doors.push({ hinge: [x, width], latch: [x + 800, width], opens: 'slides' });
  }
  const [postX, postY] = [whole(600, length - 1600), whole(200, width - 1500)];
  const post = { name: 'post', footprint: { center: [postX, postY], length: 200, width: 160 } } as const;
  return { outline, doors, ceiling: 2600, ...(random() < 0.3 ? { obstacles: [post] } : {}) };
}

export function somePieces(random: () => number, count: number): readonly FurnishingInput[] {
  return Array.from({ length: count }, (_, i) => {
    const k = Math.floor(random() * (KINDS.length + OWN.length));
    const own = OWN[k - KINDS.length];
    return own === undefined
      ? { kind: KINDS[k], name: `${KINDS[k]} ${i}` }
      : { ...own, name: `${own.name} ${i}` };
  });
}

/** Seen in a mirror at the y axis. */
export function mirroredRoom({ outline, doors, obstacles, ...rest }: RoomInput): RoomInput {
  const flip = (p: readonly [unknown, unknown]): Point => [-Number(p[0]), Number(p[1])];
  return {
    ...rest,
    outline: outline.map(flip).reverse(),
    ...(doors === undefined
      ? {}
      : { doors: doors.map((d) => ({ ...d, hinge: flip(d.hinge), latch: flip(d.latch) })) }),
    ...(obstacles === undefined
      ? {}
      : {
          obstacles: obstacles.map(({ footprint, ...o }) => ({
            ...o,
            footprint: 'center' in footprint ? { ...footprint, center: flip(footprint.center) } : footprint,
          })),
        }),
  };
}

/** Turned anticlockwise by so many right angles, then moved. */
export function movedRoom(room: RoomInput, quarters: number, [dx, dy]: Point): RoomInput {
  const { outline, doors, obstacles, ...rest } = room;
  const move = (p: readonly [unknown, unknown]): Point => {
    let [x, y] = [Number(p[0]), Number(p[1])];
    for (let i = 0; i < quarters; i++) [x, y] = [-y, x];
    return [x + dx, y + dy];
  };
  return {
    ...rest,
    outline: outline.map(move),
    ...(doors === undefined
      ? {}
      : { doors: doors.map((d) => ({ ...d, hinge: move(d.hinge), latch: move(d.latch) })) }),
    ...(obstacles === undefined
      ? {}
      : {
          obstacles: obstacles.map(({ footprint, ...o }) => ({
            ...o,
            footprint:
              'center' in footprint
                ? { ...footprint, center: move(footprint.center), turn: 90 * quarters }
                : footprint,
          })),
        }),
  };
}
