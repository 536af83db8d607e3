import fc from 'fast-check';
import type { CueInput, TableInput } from '../../src/equipment/equipment-types.js';
import type { FitInput } from '../../src/fit-input.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import type { Length } from '../../src/length/length.js';
import type { DoorInput, ObstacleInput, RoomInput } from '../../src/room/room-input.js';
import type { TapedRoomInput } from '../../src/room/tape-room.js';
import type { StrokeInput } from '../../src/stroke/stroke-settings.js';
import { pieces } from './pieces.js';
import { angle, mostly, outline } from './shapes.js';
import { survey } from './surveys.js';
import { way } from './ways.js';

/** A share of the room's box, mostly inside. */
const share = mostly(fc.double({ min: 0.05, max: 0.95, noNaN: true }), fc.constantFrom(0, 1, -0.1, 1.1));
const degrees = angle.map((radians) => (radians * 180) / Math.PI);

interface Spot {
  readonly at: (x: number, y: number) => Point;
  readonly wall: (
    pick: number,
    along: number,
  ) => { readonly from: Point; readonly to: Point; readonly point: Point };
}

/** Places in a room, by shares of its box and by its walls: -1 is the longest, -2 the next. */
function spotsOf(ring: Ring): Spot {
  const xs = ring.map(([x]) => x);
  const ys = ring.map(([, y]) => y);
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const whole: Ring =
    ring.length > 1
      ? ring
      : [
          [0, 0],
          [1000, 0],
        ];
  const lengthOf = (i: number): number => {
    const [a, b] = [whole[i], whole[(i + 1) % whole.length]];
    return Math.hypot(b[0] - a[0], b[1] - a[1]);
  };
  const byLength = whole.map((_, i) => i).sort((i, j) => lengthOf(j) - lengthOf(i));
  return {
    at: (x, y) => (ring.length === 0 ? [0, 0] : [minX + x * (maxX - minX), minY + y * (maxY - minY)]),
    wall: (pick, along) => {
      const i = pick < 0 ? byLength[(-1 - pick) % whole.length] : pick % whole.length;
      const from = whole[i];
      const to = whole[(i + 1) % whole.length];
      return { from, to, point: [from[0] + along * (to[0] - from[0]), from[1] + along * (to[1] - from[1])] };
    },
  };
}

type Maker<T> = (spot: Spot, index: number) => T;

const height: fc.Arbitrary<Length> = fc.oneof(
  fc.constantFrom<Length>(0, 5, 400, 700, 815, 900, '1.2 m', 1900, 2000, 2400, 1e-6),
  fc.integer({ min: 0, max: 2600 }),
);

const heights: fc.Arbitrary<Pick<ObstacleInput, 'from' | 'to' | 'movable'>> = mostly(
  fc
    .tuple(fc.integer({ min: 0, max: 1900 }), fc.integer({ min: 5, max: 1500 }), fc.nat(3), fc.boolean())
    .map(([from, tall, which, movable]) => {
      const ends = which === 0 ? {} : which === 1 ? { to: tall } : { from, to: from + tall };
      return { ...ends, movable };
    }),
  fc.record({ from: height, to: height, movable: fc.boolean() }, { requiredKeys: [] }),
);

/** Rectangles, discs and polygons: anywhere, flush with a wall, or with a corner in a corner. */
const obstacle: fc.Arbitrary<Maker<ObstacleInput>> = fc
  .tuple(
    mostly(
      fc.constantFrom('rectangle', 'disc', 'triangle', 'flush', 'in the corner'),
      fc.constant('bow-tie'),
    ),
    fc.tuple(share, share, fc.nat(30), share),
    fc.tuple(fc.integer({ min: 10, max: 2500 }), fc.integer({ min: 10, max: 1500 })),
    fc.oneof(fc.constant(0), degrees),
    heights,
  )
  .map(([kind, [sx, sy, pick, along], [length, width], turn, rest]) => (spot, index) => {
    const base = { name: `thing ${index + 1}`, ...rest };
    const [x, y] = spot.at(sx, sy);
    if (kind === 'rectangle') return { ...base, footprint: { center: [x, y], length, width, turn } };
    if (kind === 'disc') return { ...base, footprint: { center: [x, y], diameter: width } };
    if (kind === 'triangle')
      return {
        ...base,
        footprint: [
          [x, y],
          [x + length, y],
          [x, y + width],
        ],
      };
    if (kind === 'bow-tie')
      return {
        ...base,
        footprint: [
          [x, y],
          [x + length, y + width],
          [x + length, y],
          [x, y + width],
        ],
      };
    const { from, to, point: start } = spot.wall(pick, kind === 'flush' ? along : 0);
    const far = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
    const ux = (to[0] - from[0]) / far;
    const uy = (to[1] - from[1]) / far;
    const [ax, ay] = start;
    const footprint: Point[] = [
      [ax, ay],
      [ax + length * ux, ay + length * uy],
      [ax + length * ux - width * uy, ay + length * uy + width * ux],
      [ax - width * uy, ay + width * ux],
    ];
    return { ...base, footprint };
  });

const door: fc.Arbitrary<Maker<DoorInput>> = fc
  .tuple(
    fc.nat(30),
    share,
    fc.integer({ min: 600, max: 1200 }),
    fc.boolean(),
    fc.constantFrom('in', 'out', 'slides'),
  )
  .map(([pick, along, asked, turned, opens]) => (spot) => {
    // In one of the longest walls, where it has room.
    const { from, to } = spot.wall(-1 - (pick % 3), 0);
    const far = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
    const width = Math.min(asked, far);
    const start = (along * (far - width)) / far;
    const hinge: Point = [from[0] + start * (to[0] - from[0]), from[1] + start * (to[1] - from[1])];
    const latch: Point = [
      hinge[0] + (width * (to[0] - from[0])) / far,
      hinge[1] + (width * (to[1] - from[1])) / far,
    ];
    return turned ? { hinge: latch, latch: hinge, opens } : { hinge, latch, opens };
  });

const slope = mostly(fc.integer({ min: 1500, max: 4000 }), fc.constant(0));

const ceiling: fc.Arbitrary<Maker<RoomInput['ceiling']>> = fc.oneof(
  { weight: 4, arbitrary: fc.constant(() => undefined) },
  {
    weight: 3,
    arbitrary: fc
      .oneof(fc.integer({ min: 900, max: 3500 }), fc.constantFrom('2.4 m', 2000))
      .map((flat) => () => flat),
  },
  {
    weight: 2,
    arbitrary: fc.array(fc.tuple(slope, slope, slope), { minLength: 1, maxLength: 3 }).map(
      (faces): Maker<RoomInput['ceiling']> =>
        (spot) =>
          faces.map(([a, b, c]) => [
            [...spot.at(0, 0), a],
            [...spot.at(1, 0), b],
            [...spot.at(0, 1), c],
          ]),
    ),
  },
);

function room(most: number): fc.Arbitrary<{ readonly room: RoomInput; readonly spot: Spot }> {
  return fc
    .record({
      ring: outline,
      ceiling,
      obstacles: fc.array(obstacle, { maxLength: most }),
      doors: fc.array(door, { maxLength: 2 }),
      tolerance: fc.oneof(
        { weight: 3, arbitrary: fc.constant(undefined) },
        { weight: 1, arbitrary: fc.constantFrom<Length>(0, '2 cm', 50, 200) },
      ),
    })
    .map(({ ring, ceiling: made, obstacles, doors, tolerance }) => {
      const spot = spotsOf(ring);
      const over = made(spot, 0);
      return {
        spot,
        room: {
          outline: ring,
          ...(over === undefined ? {} : { ceiling: over }),
          ...(obstacles.length === 0 ? {} : { obstacles: obstacles.map((make, i) => make(spot, i)) }),
          ...(doors.length === 0 ? {} : { doors: doors.map((make, i) => make(spot, i)) }),
          ...(tolerance === undefined ? {} : { tolerance }),
        },
      };
    });
}

const tapedRoom: fc.Arbitrary<{ readonly room: TapedRoomInput; readonly spot: Spot }> = survey.map(
  (tape) => ({
    room: { tape },
    spot: spotsOf([
      [0, 0],
      [4000, 0],
      [4000, 3000],
    ]),
  }),
);

/** Rooms as a customer gives them, with up to `most` obstacles. */
export function anyRoom(most = 5): fc.Arbitrary<RoomInput | TapedRoomInput> {
  return fc
    .oneof({ weight: 6, arbitrary: room(most) }, { weight: 1, arbitrary: tapedRoom })
    .map((made) => made.room);
}

const measured: fc.Arbitrary<TableInput> = fc
  .tuple(
    fc.integer({ min: 300, max: 4000 }),
    mostly(fc.double({ min: 0.5, max: 1, noNaN: true }), fc.constantFrom(0.2, 1.2)),
    fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 300 })),
    fc.record(
      {
        bedHeight: fc.integer({ min: 300, max: 1500 }),
        noseHeight: mostly(fc.integer({ min: 5, max: 37 }), fc.constant(120)),
        railHeight: mostly(fc.integer({ min: 38, max: 200 }), fc.constant(5)),
        ballDiameter: mostly(fc.integer({ min: 40, max: 70 }), fc.constantFrom(15, 200)),
        mass: fc.integer({ min: 1, max: 5000 }),
      },
      { requiredKeys: [] },
    ),
  )
  .map(([length, ratio, [alongRail, acrossRail], rest]) => ({
    field: { length, width: length * ratio },
    outer: { length: length + 2 * alongRail, width: length * ratio + 2 * acrossRail },
    ...rest,
  }));

export const table: fc.Arbitrary<string | TableInput> = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.constantFrom('pool-7ft-bar', 'pool-9ft', 'snooker-12ft', 'carom-match', 'english-6ft'),
  },
  {
    weight: 2,
    arbitrary: fc.constant<TableInput>({
      field: { length: 1000, width: 500 },
      outer: { length: 1150, width: 650 },
    }),
  },
  { weight: 2, arbitrary: measured },
);

export const cue: fc.Arbitrary<Length | CueInput> = fc.oneof(
  fc.constantFrom<Length>('57 in', '48 in', 1450, 900),
  fc.integer({ min: 300, max: 3000 }),
  fc.record(
    {
      length: fc.integer({ min: 300, max: 3000 }),
      tipDiameter: mostly(fc.integer({ min: 2, max: 20 }), fc.constant(30)),
      buttDiameter: mostly(fc.integer({ min: 20, max: 80 }), fc.constant(5)),
    },
    { requiredKeys: ['length'] },
  ),
);

export const stroke: fc.Arbitrary<Partial<StrokeInput>> = fc.record(
  {
    backswing: mostly(fc.integer({ min: 100, max: 400 }), fc.constantFrom(0, 1000)),
    shortBackswing: mostly(fc.integer({ min: 0, max: 100 }), fc.constant(200)),
    margin: fc.constantFrom<Length>(0, 20, '5 cm', 300, 1e-9),
    tipOffset: fc.constantFrom<Length>(0, 5, 14),
    maxElevation: fc.oneof(fc.constantFrom(0, 60, 1e-9), fc.double({ min: 0, max: 60, noNaN: true })),
  },
  { requiredKeys: [] },
);

const search = fc.record(
  {
    turns: fc.constantFrom('square' as const, 'any' as const),
    gap: fc.constantFrom<Length>(1, 0.001, 1000, '1 cm'),
    maxBoxes: fc.constantFrom(1, 2, 50, 300),
  },
  { requiredKeys: ['maxBoxes'] },
);

export interface FitSize {
  /** Most obstacles. */
  readonly obstacles: number;
  /** Other pieces in the room as well, and the way in. */
  readonly extras: boolean;
}

/** Whole questions, good and bad, with few boxes to search. */
export function anyFit({ obstacles, extras }: FitSize): fc.Arbitrary<FitInput> {
  const seldom = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
    fc.oneof({ weight: 3, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary });
  const never = fc.constant(undefined);
  return fc
    .record({
      made: fc.oneof({ weight: 7, arbitrary: room(obstacles) }, { weight: 1, arbitrary: tapedRoom }),
      table,
      cues: seldom(fc.array(cue, { minLength: 1, maxLength: 3 })),
      pose: fc.oneof(never, fc.tuple(share, share, fc.oneof(fc.constant(0), degrees))),
      stroke: seldom(stroke),
      search,
      detail: fc.constantFrom(undefined, undefined, undefined, 'verdict' as const, 'shots' as const),
      delivery: extras ? seldom(way) : never,
      pieces: extras ? fc.option(pieces, { freq: 2, nil: undefined }) : never,
    })
    .map(({ made, pose, pieces: asked, ...rest }) => {
      const [x, y] = pose == null ? [0, 0] : made.spot.at(pose[0], pose[1]);
      const all = {
        room: made.room,
        ...rest,
        pose: pose == null ? undefined : { x, y, turn: pose[2] },
        ...asked?.(made.spot.at),
      };
      // A property that is left out is not one that is undefined.
      const { table, search } = rest;
      return { room: made.room, table, search, ...given(all) };
    });
}

/** The properties that are there. */
function given<T extends object>(value: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  const out: { [K in keyof T]?: Exclude<T[K], undefined> } = {};
  for (const key of Object.keys(value)) {
    const item: unknown = Reflect.get(value, key);
    if (item !== undefined) Reflect.set(out, key, item);
  }
  return out;
}
