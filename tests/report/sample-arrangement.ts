import fc from 'fast-check';
import type {
  ArrangementReport,
  ClearWay,
  PieceGap,
  PieceProblem,
  PieceReport,
  SharedZone,
} from '../../src/arrangement/arrangement-report.js';
import { type PlacedPiece, placePiece } from '../../src/arrangement/piece-place.js';
import { assessFit } from '../../src/assess-fit.js';
import type { FurnishingSpec } from '../../src/equipment/furnishing-types.js';
import { FURNISHINGS } from '../../src/equipment/furnishings.js';
import type { FurnishingId } from '../../src/equipment/furnishings-ids.js';
import type { FitInput } from '../../src/fit-input.js';
import { rectangleRing } from '../../src/geometry/ring.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import type { FitReport } from '../../src/report/fit-report.js';
import type { ObstacleInput, RoomInput } from '../../src/room/room-input.js';

/** A piece of a sample: where it stands, or null with what holds it back. */
export interface SamplePiece {
  readonly kind: FurnishingId;
  readonly name?: string;
  /** x, y in mm and the turn in degrees. */
  readonly at: readonly [number, number, number] | null;
  readonly problems?: readonly PieceProblem[];
}

/** A room with pieces that stand where somebody put them, for tests of words and drawings; invented. */
export interface ArrangedSample {
  readonly input: FitInput;
  readonly report: FitReport;
  readonly arrangement: ArrangementReport;
  readonly placed: readonly PlacedPiece[];
}

const WAY = 600;
/** Steps of the grid on which ways are looked for, mm. */
const GRID = 100;

/**
 * The report of a room with pieces at given places, all of it worked out slowly and plainly here, for the search itself is tested elsewhere:
 * gaps by rays, sharing by points on a grid, ways by the nearest free points of a grid. The table is judged among the bodies.
 */
export function arrangedSample(
  room: RoomInput,
  table: string,
  pieces: readonly SamplePiece[],
  more: Partial<FitInput> = {},
): ArrangedSample {
  const specs = pieces.map(({ kind, name }): FurnishingSpec => {
    const spec = FURNISHINGS[kind];
    return { ...spec, name: name ?? spec.name };
  });
  const standing = specs.map((spec, i): PlacedPiece | null => {
    const at = pieces[i].at;
    return at === null ? null : placePiece(spec, { x: at[0], y: at[1], angle: (at[2] * Math.PI) / 180 });
  });
  const placed = standing.filter((piece) => piece !== null);
  const bodies = placed.map(
    ({ spec, ring }): ObstacleInput => ({
      name: spec.name,
      footprint: ring,
      from: spec.from,
      to: spec.to,
      movable: true,
    }),
  );
  const { obstacles = [] } = room;
  const bare: FitInput = { room, table, ...more };
  const judged = assessFit({ ...bare, room: { ...room, obstacles: [...obstacles, ...bodies] } });
  const things = thingsOf(room, placed, judged);
  const reports = specs.map((spec, i): PieceReport => {
    const { at, problems = [] } = pieces[i];
    const piece = standing[i];
    return {
      name: spec.name,
      kind: spec.kind,
      pose: at === null ? null : { x: at[0], y: at[1], turn: at[2] },
      given: false,
      fits: at !== null && problems.length === 0,
      problems,
      ring: piece?.ring ?? [],
      from: spec.from,
      to: spec.to,
      gaps: piece === null ? [] : gapsOf(piece, things),
      zones: (piece?.zones ?? []).map(({ spec: zone, ring }) => ({
        name: zone.name,
        ring,
        from: zone.from,
        to: zone.to,
      })),
    };
  });
  const ways = waysOf(room, things, placed, judged);
  const arrangement: ArrangementReport = {
    complete: reports.every(({ fits }) => fits) && ways.every(({ found }) => found),
    pieces: reports,
    ways,
    sharing: sharingOf(placed, judged),
    value: { value: 1000, upperBound: 1105, placed: 1, play: 0, apart: 0 },
    bounds: { floor: { needed: 9.81, available: 40.26 }, wall: { needed: 6320, available: 21_480 } },
    advice: [],
    layouts: 200,
    stopped: false,
  };
  const furnishings = pieces.map(({ kind, name }) => (name === undefined ? { kind } : { kind, name }));
  return { input: { ...bare, furnishings }, report: { ...judged, arrangement }, arrangement, placed };
}

/** What may be in the way of something: an edge ring with heights. */
interface Thing {
  readonly name: string;
  readonly ring: Ring;
  readonly from: number;
  readonly to: number;
}

function thingsOf(room: RoomInput, placed: readonly PlacedPiece[], report: FitReport): readonly Thing[] {
  const corners = room.outline.map(([x, y]): Point => [Number(x), Number(y)]);
  const walls = corners.map((a, i): Thing => {
    return { name: `wall ${i + 1}`, ring: [a, corners[(i + 1) % corners.length]], from: 0, to: 1e6 };
  });
  const { table, pose } = report;
  const { length, width } = table.outer;
  const top = table.bedHeight + table.railHeight;
  const angle = ((pose?.turn ?? 0) * Math.PI) / 180;
  return [
    ...walls,
    ...placed.map(({ spec, ring }) => ({ name: spec.name, ring, from: spec.from, to: spec.to })),
    ...(pose === null
      ? []
      : [
          {
            name: 'the table',
            ring: rectangleRing([pose.x, pose.y], length, width, angle),
            from: 0,
            to: top,
          },
        ]),
  ];
}

function gapsOf({ spec, pose }: PlacedPiece, things: readonly Thing[]): readonly PieceGap[] {
  const { length, width } = spec;
  const cos = Math.cos(pose.angle);
  const sin = Math.sin(pose.angle);
  const at = (u: number, v: number): Point => [pose.x + cos * u - sin * v, pose.y + sin * u + cos * v];
  const sides = [
    ['front', 0, 1],
    ['back', 0, -1],
    ['left', 1, 0],
    ['right', -1, 0],
  ] as const;
  return sides.flatMap(([side, du, dv]): readonly PieceGap[] => {
    let best: PieceGap | null = null;
    for (let share = -0.49; share < 0.5; share += 0.07) {
      const from = at((du / 2) * length + share * dv * length, (dv / 2) * width + share * du * width);
      const direction: Point = [cos * du - sin * dv, sin * du + cos * dv];
      for (const { name, ring, from: low, to: high } of things) {
        if (name === spec.name || low >= spec.to || high <= spec.from) continue;
        ring.forEach((a, i) => {
          const distance = alongRay(from, direction, a, ring[(i + 1) % ring.length]);
          if (distance !== null && (best === null || distance < best.distance))
            best = { side, distance, to: name };
        });
      }
    }
    return best === null ? [] : [best];
  });
}

/** How far along a ray an edge is; null where it misses. */
function alongRay([x, y]: Point, [dx, dy]: Point, a: Point, b: Point): number | null {
  const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
  const cross = dx * ey - dy * ex;
  if (Math.abs(cross) < 1e-9) return null;
  const t = ((a[0] - x) * ey - (a[1] - y) * ex) / cross;
  const s = ((a[0] - x) * dy - (a[1] - y) * dx) / cross;
  return t < -1e-6 || s < 0 || s > 1 ? null : Math.max(0, t);
}

function inRing(ring: Ring, x: number, y: number): boolean {
  let inside = false;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length];
    if (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) inside = !inside;
  });
  return inside;
}

function toEdge(x: number, y: number, [ax, ay]: Point, [bx, by]: Point): number {
  const [ex, ey] = [bx - ax, by - ay];
  const share = Math.min(1, Math.max(0, ((x - ax) * ex + (y - ay) * ey) / (ex * ex + ey * ey)));
  return Math.hypot(x - ax - share * ex, y - ay - share * ey);
}

function sharingOf(placed: readonly PlacedPiece[], { table, pose, cues }: FitReport): readonly SharedZone[] {
  const reach = (cues[0]?.length ?? 0) + 200;
  return placed.flatMap((piece) =>
    piece.zones.flatMap((zone) => {
      const [a, b, , d] = zone.ring;
      const points: Point[] = [];
      for (let i = 0.5; i < 20; i++)
        for (let j = 0.5; j < 20; j++)
          points.push([
            a[0] + ((b[0] - a[0]) * i + (d[0] - a[0]) * j) / 20,
            a[1] + ((b[1] - a[1]) * i + (d[1] - a[1]) * j) / 20,
          ]);
      const shareOf = (holds: (x: number, y: number) => boolean): number =>
        points.filter(([x, y]) => holds(x, y)).length / points.length;
      const found: SharedZone[] = [];
      const add = (other: string, share: number): void => {
        if (share > 0) found.push({ piece: piece.spec.name, zone: zone.spec.name, with: other, share });
      };
      if (pose !== null && zone.spec.withCueing) {
        const field = rectangleRing(
          [pose.x, pose.y],
          table.field.length,
          table.field.width,
          (pose.turn * Math.PI) / 180,
        );
        add(
          'cueing',
          shareOf((x, y) => field.some((p, i) => toEdge(x, y, p, field[(i + 1) % 4]) < reach)),
        );
      }
      for (const other of placed) {
        if (other === piece) continue;
        add(
          other.spec.name,
          shareOf((x, y) => other.zones.some(({ ring }) => inRing(ring, x, y))),
        );
      }
      return found;
    }),
  );
}

/** From each door to the table and to each piece, over free points of a grid: the shortest of them, each with its straight runs. */
function waysOf(
  room: RoomInput,
  things: readonly Thing[],
  placed: readonly PlacedPiece[],
  report: FitReport,
): readonly ClearWay[] {
  const outline = room.outline.map(([x, y]): Point => [Number(x), Number(y)]);
  const low = things.filter(({ from }) => from < 2000);
  const free = (x: number, y: number): boolean =>
    inRing(outline, x, y) &&
    low.every(
      ({ ring }) =>
        (ring.length < 3 || !inRing(ring, x, y)) &&
        ring.every((a, i) => toEdge(x, y, a, ring[(i + 1) % ring.length]) >= WAY / 2),
    );
  const targets = [
    ...(report.pose === null ? [] : [{ name: 'the table', ring: things[things.length - 1].ring }]),
    // Nobody walks to a lamp.
    ...placed
      .filter(({ spec }) => spec.stand !== 'over-table')
      .map(({ spec, ring }) => ({ name: spec.name, ring })),
  ];
  return (room.doors ?? []).flatMap(({ name = 'door', hinge, latch }) => {
    const middle: Point = [
      (Number(hinge[0]) + Number(latch[0])) / 2,
      (Number(hinge[1]) + Number(latch[1])) / 2,
    ];
    const from = reachedFrom(middle, free);
    return targets.map(({ name: to, ring }): ClearWay => {
      let end: string | null = null;
      let least = Number.POSITIVE_INFINITY;
      for (const key of from.keys()) {
        const [x, y] = key.split(' ').map(Number);
        const distance = Math.min(...ring.map((a, i) => toEdge(x, y, a, ring[(i + 1) % ring.length])));
        if (distance > WAY / 2 + 1.5 * GRID || distance >= least) continue;
        end = key;
        least = distance;
      }
      const path = end === null ? [] : pathTo(end, from);
      return {
        from: name,
        to,
        width: WAY,
        found: end !== null,
        certain: true,
        path,
        widest: end === null ? 480 : 714,
        between: end === null ? [to, 'wall 1'] : [to, 'the table'],
      };
    });
  });
}

/** Every free point of the grid that a walk from a point gets to, with the one before it. */
function reachedFrom(start: Point, free: (x: number, y: number) => boolean): Map<string, string | null> {
  const reached = new Map<string, string | null>();
  const queue: Point[] = [];
  const snap = (value: number): number => Math.round(value / GRID) * GRID;
  for (let i = -5; i <= 5; i++)
    for (let j = -5; j <= 5; j++) queue.push([snap(start[0]) + i * GRID, snap(start[1]) + j * GRID]);
  queue.sort(
    (a, b) => Math.hypot(a[0] - start[0], a[1] - start[1]) - Math.hypot(b[0] - start[0], b[1] - start[1]),
  );
  const first = queue.find(([x, y]) => free(x, y));
  if (first === undefined) return reached;
  reached.set(first.join(' '), null);
  const open: Point[] = [first];
  const steps = [-1, 0, 1].flatMap((i) => [-1, 0, 1].map((j): Point => [i * GRID, j * GRID]));
  steps.sort((a, b) => Math.hypot(...a) - Math.hypot(...b));
  for (let head = 0; head < open.length; head++) {
    const [x, y] = open[head];
    for (const [dx, dy] of steps) {
      const next: Point = [x + dx, y + dy];
      if (reached.has(next.join(' ')) || !free(next[0], next[1])) continue;
      reached.set(next.join(' '), `${x} ${y}`);
      open.push(next);
    }
  }
  return reached;
}

function pathTo(end: string, reached: ReadonlyMap<string, string | null>): readonly Point[] {
  const points: Point[] = [];
  for (let at: string | null | undefined = end; typeof at === 'string'; at = reached.get(at)) {
    const [x, y] = at.split(' ').map(Number);
    points.unshift([x, y]);
  }
  // Straight runs lose their inner points.
  return points.filter(([x, y], i) => {
    if (i === 0 || i === points.length - 1) return true;
    const [before, after] = [points[i - 1], points[i + 1]];
    return (x - before[0]) * (after[1] - y) !== (y - before[1]) * (after[0] - x);
  });
}

/** Sizes of rooms, pieces and places are invented. */
const rectangle = (width: number, depth: number): [number, number][] => [
  [0, 0],
  [width, 0],
  [width, depth],
  [0, depth],
];

/** A hall with a table and twelve pieces. */
export function crowdedSample(): ArrangedSample {
  const room: RoomInput = {
    outline: rectangle(9600, 7200),
    ceiling: 2600,
    doors: [
      { name: 'hall door', hinge: [9600, 5600], latch: [9600, 6500], opens: 'out' },
      { name: 'garden door', hinge: [0, 5300], latch: [0, 6200], opens: 'in' },
    ],
    obstacles: [
      {
        name: 'radiator',
        footprint: [
          [3200, 7090],
          [4800, 7090],
          [4800, 7200],
          [3200, 7200],
        ],
        from: 150,
        to: 750,
      },
    ],
  };
  return arrangedSample(
    room,
    'pool-8ft-home',
    [
      { kind: 'darts', at: [9575, 1200, 90] },
      { kind: 'bar', at: [1800, 1200, 0] },
      { kind: 'stool', name: 'stool 1', at: [3300, 500, 0] },
      { kind: 'stool', name: 'stool 2', at: [5200, 6700, 180] },
      { kind: 'sofa', at: [6500, 6750, 180] },
      { kind: 'upright-cabinet', at: [400, 2900, 270] },
      { kind: 'pinball', at: [700, 3900, 270] },
      { kind: 'music-machine', at: [9250, 4500, 90] },
      { kind: 'cupboard', at: [2000, 6950, 180] },
      { kind: 'cue-rack', at: [4700, 75, 0] },
      { kind: 'score-board', at: [5900, 25, 0] },
      { kind: 'lamp', at: [5600, 3700, 0] },
    ],
    { pose: { x: 5600, y: 3700, turn: 0 }, detail: 'shots' },
  );
}

/** A small room with a piece too many. */
export function smallSample(): ArrangedSample {
  const room: RoomInput = {
    outline: rectangle(5200, 4300),
    ceiling: 2400,
    doors: [{ name: 'door', hinge: [400, 0], latch: [1200, 0], opens: 'in' }],
  };
  return arrangedSample(room, 'pool-7ft-bar', [
    { kind: 'cue-rack', at: [2600, 75, 0] },
    { kind: 'stool', at: [4800, 3900, 135] },
    {
      kind: 'sofa',
      at: null,
      problems: [
        { code: 'table', with: 'the table', zone: null, amount: null },
        { code: 'zone-table', with: 'the table', zone: 'legs', amount: null },
      ],
    },
  ]);
}

/** A room with a corner cut off and a wall that is not square: pieces at turns of their own. */
export function turnedSample(): ArrangedSample {
  const room: RoomInput = {
    outline: [
      [0, 0],
      [8200, 0],
      [8200, 4200],
      [6200, 6200],
      [0, 6200],
    ],
    doors: [{ name: 'door', hinge: [0, 4700], latch: [0, 5500], opens: 'slides' }],
  };
  const far = 450 / Math.SQRT2;
  return arrangedSample(
    room,
    'pool-7ft-bar',
    [
      { kind: 'sofa', at: [7200 - far, 5200 - far, 135] },
      { kind: 'stool', at: [1000, 900, 33] },
      {
        kind: 'table-football',
        at: [1200, 2600, 74],
        problems: [{ code: 'turn', with: null, zone: null, amount: null }],
      },
    ],
    { pose: { x: 4400, y: 2700, turn: 90 } },
  );
}

const length = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const share = fc.double({ min: 0.001, max: 1, noNaN: true });
const thing = fc.constantFrom('wall 1', 'wall 2', 'radiator', 'bar', 'the table');
const problem: fc.Arbitrary<PieceProblem> = fc.record({
  code: fc.constantFrom(
    'outside',
    'overlap',
    'table',
    'door',
    'ceiling',
    'no-wall',
    'turn',
    'zone-outside',
    'zone-overlap',
    'zone-table',
    'zone-door',
    'zone-ceiling',
    'zone-shared',
    'no-way',
    'no-place',
  ),
  with: fc.option(thing),
  zone: fc.option(fc.constantFrom('legs', 'throw lane')),
  amount: fc.option(length(0.01, 2000)),
});

const way: fc.Arbitrary<ClearWay> = fc
  .record({
    from: fc.constantFrom('hall door', 'garden door'),
    to: fc.constantFrom('the table', 'sofa', 'bar'),
    width: length(300, 1200),
    off: length(-500, 500),
    none: fc.boolean(),
    certain: fc.boolean(),
    between: fc.array(thing, { maxLength: 2 }),
  })
  .map(({ off, none, certain, ...rest }) => {
    const found = off >= 0;
    return {
      ...rest,
      found,
      certain: found || certain,
      path: [],
      widest: !found && none ? null : Math.max(100, rest.width + off),
    };
  });

const piece = (name: string): fc.Arbitrary<PieceReport> =>
  fc
    .record({
      placed: fc.boolean(),
      given: fc.boolean(),
      x: length(-9000, 9000),
      y: length(-9000, 9000),
      turn: fc.oneof(fc.constantFrom(0, 90, 180, 270), length(0, 359.99)),
      problems: fc.array(problem, { maxLength: 4 }),
      from: fc.constantFrom(0, 1504.5),
      zoned: fc.boolean(),
      gaps: fc.uniqueArray(
        fc.record({
          side: fc.constantFrom<PieceGap['side'][]>('front', 'back', 'left', 'right'),
          distance: length(0, 6000),
          to: fc.constantFrom('wall-1', 'sofa', 'radiator'),
        }),
        { selector: ({ side }) => side, maxLength: 4 },
      ),
    })
    .map(({ placed, given, x, y, turn, problems, from, zoned, gaps }) => ({
      name,
      kind: null,
      pose: placed ? { x, y, turn } : null,
      given: placed && given,
      fits: placed && problems.length === 0,
      problems,
      ring: [],
      from,
      to: from + 800,
      gaps: placed ? gaps : [],
      zones: zoned ? [{ name: 'legs', ring: [], from: 0, to: 2000 }] : [],
    }));

/** Any arrangement that the types allow; its geometry is empty and its numbers need not agree with one another. */
export const anyArrangement: fc.Arbitrary<ArrangementReport> = fc
  .record({
    pieces: fc
      .integer({ min: 1, max: 9 })
      .chain((n) => fc.tuple(...Array.from({ length: n }, (_, i) => piece(`piece${i + 1}`)))),
    ways: fc.array(way, { maxLength: 6 }),
    sharing: fc.array(
      fc.record({
        piece: fc.constantFrom('darts', 'sofa'),
        zone: fc.constantFrom('legs', 'lane'),
        with: fc.constantFrom('cueing', 'bar', 'stool'),
        share,
      }),
      { maxLength: 6 },
    ),
    floor: fc.record({ needed: length(0, 60), available: length(0, 60) }),
    wall: fc.record({ needed: fc.oneof(fc.constant(0), length(1, 30_000)), available: length(0, 30_000) }),
    advice: fc.array(
      fc.record(
        {
          kind: fc.constantFrom<('leave-out' | 'shift')[]>('leave-out', 'shift'),
          piece: fc.constantFrom('sofa', 'bar'),
          verdict: fc.constantFrom<FitReport['verdict'][]>('clear', 'tight', 'partial'),
          gain: fc.double({ min: 0, max: 1, noNaN: true }),
          places: fc.subarray(['stool', 'cupboard']),
          pose: fc.record({ x: length(-9000, 9000), y: length(-9000, 9000), turn: length(0, 359.99) }),
          amount: length(1, 4000),
        },
        { requiredKeys: ['kind', 'piece', 'verdict', 'gain', 'places'] },
      ),
      { maxLength: 3 },
    ),
    layouts: fc.integer({ min: 1, max: 400 }),
    stopped: fc.boolean(),
  })
  .map(({ pieces, ways, sharing, floor, wall, advice, layouts, stopped }) => ({
    complete: pieces.every(({ fits }) => fits) && ways.every(({ found }) => found),
    pieces,
    ways,
    sharing,
    value: { value: 0, upperBound: 1105, placed: 0, play: 0, apart: 0 },
    bounds: { floor, wall },
    advice,
    layouts,
    stopped,
  }));
