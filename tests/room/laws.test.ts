import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convexParts } from '../../src/geometry/convex-parts.js';
import { boundingBox, centroid, signedArea } from '../../src/geometry/ring.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import { ceilingAt } from '../../src/room/ceiling.js';
import type { Scene } from '../../src/room/scene.js';
import { skylineRings, starRings } from '../helpers/rings.js';
import { read, sceneOf } from './read.js';

const SEED = 71_006;

type Space = readonly [number, number, number];

/** A room in plain numbers, so that it can be moved and written in other ways. */
interface PlainRoom {
  readonly outline: Ring;
  readonly ceiling: readonly (readonly [Space, Space, Space])[];
  readonly obstacles: readonly {
    readonly name: string;
    readonly footprint: Ring;
    readonly from: number;
    readonly to: number;
  }[];
  readonly doors: readonly { readonly hinge: Point; readonly latch: Point; readonly opens: 'in' | 'out' }[];
}

/** Rooms with furniture in them, doors on their longest wall and a sloping ceiling. Whole millimetres. */
const rooms: fc.Arbitrary<PlainRoom> = fc
  .record({
    outline: fc.oneof(starRings(16), skylineRings(6)).filter((ring) => {
      const box = boundingBox(ring);
      return (
        box.maxX - box.minX >= 1500 &&
        2 * Math.abs(signedArea(ring)) > 400 * 4 * (box.maxX - box.minX + box.maxY - box.minY)
      );
    }),
    stones: fc.array(starRings(9, 900), { maxLength: 3 }),
    from: fc.integer({ min: 5, max: 900 }),
    height: fc.integer({ min: 5, max: 1500 }),
    inward: fc.boolean(),
    turned: fc.boolean(),
    rise: fc.integer({ min: 0, max: 300 }),
  })
  .map(({ outline, stones, from, height, inward, turned, rise }) => {
    const middles = convexParts(outline).map(centroid);
    const obstacles = stones.map((stone, i) => {
      const [mx, my] = middles[i % middles.length].map(Math.round);
      return {
        name: `stone ${i + 1}`,
        footprint: stone.map(([x, y]): Point => [x + mx, y + my]),
        from,
        to: from + height,
      };
    });
    const box = boundingBox(outline);
    const wide = box.maxX - box.minX;
    const z = 2400;
    const ceiling: PlainRoom['ceiling'] = [
      [
        [box.minX, box.minY, z],
        [box.maxX, box.minY, z + rise],
        [box.minX, box.minY + wide, z],
      ],
      [
        [box.minX, box.minY, z + 100],
        [box.maxX, box.minY, z + 100],
        [box.minX, box.minY + wide, z + 100 + rise],
      ],
    ];
    return { outline, obstacles, doors: doorsOn(outline, inward, turned), ceiling };
  });

/** One door on the longest wall, if that is long enough; its ends within half a millimetre of the wall. */
function doorsOn(outline: Ring, inward: boolean, turned: boolean): PlainRoom['doors'] {
  let best = { length: 0, a: outline[0], b: outline[0] };
  for (const [i, a] of outline.entries()) {
    const b = outline[(i + 1) % outline.length];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length > best.length) best = { length, a, b };
  }
  if (best.length < 1000) return [];
  const on = (mm: number): Point => [
    Math.round(best.a[0] + (mm / best.length) * (best.b[0] - best.a[0])),
    Math.round(best.a[1] + (mm / best.length) * (best.b[1] - best.a[1])),
  ];
  const [hinge, latch] = turned ? [on(900), on(100)] : [on(100), on(900)];
  return [{ hinge, latch, opens: inward ? 'in' : 'out' }];
}

function moved(room: PlainRoom, move: (p: Point) => Point): PlainRoom {
  const moveSpace = ([x, y, z]: Space): Space => [...move([x, y]), z] as const;
  return {
    outline: room.outline.map(move),
    obstacles: room.obstacles.map((o) => ({ ...o, footprint: o.footprint.map(move) })),
    doors: room.doors.map((d) => ({ ...d, hinge: move(d.hinge), latch: move(d.latch) })),
    ceiling: room.ceiling.map(([p, q, r]) => [moveSpace(p), moveSpace(q), moveSpace(r)] as const),
  };
}

/** The same corners of the ring, wherever it begins, within a rounding. */
function expectSameRing(actual: Ring, expected: Ring): void {
  expect(actual).toHaveLength(expected.length);
  const n = expected.length;
  const far = (shift: number): number =>
    Math.max(
      ...expected.map(([x, y], i) =>
        Math.hypot(actual[(i + shift) % n][0] - x, actual[(i + shift) % n][1] - y),
      ),
    );
  expect(Math.min(...expected.map((_, shift) => far(shift)))).toBeLessThan(1e-6);
}

/** What a move makes of the room must be what the move makes of the scene. `mirror`: the move turns left into right. */
function expectMovedScene(actual: Scene, before: Scene, move: (p: Point) => Point, mirror: boolean): void {
  const image = (ring: Ring): Ring => (mirror ? ring.map(move).reverse() : ring.map(move));
  expectSameRing(actual.outline, image(before.outline));
  expect(actual.obstacles.map((o) => [o.name, o.from, o.to])).toEqual(
    before.obstacles.map((o) => [o.name, o.from, o.to]),
  );
  for (const [i, obstacle] of actual.obstacles.entries()) {
    expectSameRing(obstacle.ring, image(before.obstacles[i].ring));
    const area = obstacle.parts.reduce((sum, part) => sum + signedArea(part), 0);
    expect(area).toBeCloseTo(signedArea(before.obstacles[i].ring), 2);
  }
  for (const [i, door] of actual.doors.entries()) {
    const { swing } = before.doors[i];
    expect(door.swing === null).toBe(swing === null);
    if (door.swing !== null && swing !== null) expectSameRing(door.swing, image(swing));
  }
  // Each wall has its old name: found again by its middle.
  const middles = (scene: Scene): Map<string, Point> =>
    new Map(
      scene.outline.map(([ax, ay], i) => {
        const [bx, by] = scene.outline[(i + 1) % scene.outline.length];
        return [scene.wallNames[i], [(ax + bx) / 2, (ay + by) / 2]];
      }),
    );
  const after = middles(actual);
  for (const [name, middle] of middles(before)) {
    const [x, y] = after.get(name) ?? [Number.NaN, Number.NaN];
    const [ex, ey] = move(middle);
    expect(Math.hypot(x - ex, y - ey)).toBeLessThan(1e-6);
  }
  for (const [x, y] of before.outline) {
    const [mx, my] = move([x, y]);
    expect(ceilingAt(actual, mx, my)).toBeCloseTo(ceilingAt(before, x, y), 6);
  }
}

describe('a room is the same room', () => {
  it('written in the other direction, from another corner, closed or not', () => {
    fc.assert(
      fc.property(rooms, fc.nat(), fc.boolean(), fc.boolean(), (room, turn, backwards, close) => {
        const before = sceneOf(room);
        const rewrite = (ring: Ring): Ring => {
          const at = turn % ring.length;
          const corners = [...ring.slice(at), ...ring.slice(0, at)];
          if (backwards) corners.reverse();
          return close ? [...corners, corners[0]] : corners;
        };
        const outline = rewrite(room.outline);
        const after = sceneOf({
          ...room,
          outline,
          obstacles: room.obstacles.map((o) => ({ ...o, footprint: rewrite(o.footprint) })),
        });
        expect({ ...after, wallNames: [] }).toEqual({ ...before, wallNames: [] });
        // `wall N` starts at the caller's corner N and runs on in the caller's order.
        for (const [i, name] of after.wallNames.entries()) {
          const ends = [after.outline[i], after.outline[(i + 1) % after.outline.length]];
          const start = outline[Number(name.slice(5)) - 1];
          expect(ends[backwards ? 1 : 0]).toEqual(start);
        }
      }),
      { seed: SEED, numRuns: 150 },
    );
  });

  it('with its numbers written as text, in metres and centimetres', () => {
    fc.assert(
      fc.property(rooms, (room) => {
        const write = (mm: number): string => (mm % 2 === 0 ? `${mm / 1000} m` : `${mm / 10} cm`);
        const after = read({
          outline: room.outline.map((p) => p.map(write)),
          ceiling: room.ceiling.map((face) => face.map((p) => p.map(write))),
          obstacles: room.obstacles.map((o) => ({
            name: o.name,
            from: write(o.from),
            to: write(o.to),
            footprint: o.footprint.map((p) => p.map(write)),
          })),
          doors: room.doors.map((d) => ({ ...d, hinge: d.hinge.map(write), latch: d.latch.map(write) })),
        });
        expect(after).toEqual(read(room));
      }),
      { seed: SEED, numRuns: 100 },
    );
  });

  it('moved and turned', () => {
    const shift = fc.integer({ min: -1_000_000, max: 1_000_000 });
    fc.assert(
      fc.property(rooms, fc.double({ min: 0, max: 7, noNaN: true }), shift, shift, (room, angle, dx, dy) => {
        const move = ([x, y]: Point): Point => [
          Math.cos(angle) * x - Math.sin(angle) * y + dx,
          Math.sin(angle) * x + Math.cos(angle) * y + dy,
        ];
        expectMovedScene(sceneOf(moved(room, move)), sceneOf(room), move, false);
      }),
      { seed: SEED, numRuns: 150 },
    );
  });

  it('in the mirror', () => {
    fc.assert(
      fc.property(rooms, (room) => {
        const move = ([x, y]: Point): Point => [-x, y];
        expectMovedScene(sceneOf(moved(room, move)), sceneOf(room), move, true);
      }),
      { seed: SEED, numRuns: 100 },
    );
  });

  it('with corners repeated and put on its walls', () => {
    const extra = fc.array(fc.tuple(fc.nat(), fc.constantFrom(0, 0.25, 0.5, 1)), { maxLength: 6 });
    fc.assert(
      fc.property(rooms, extra, (room, points) => {
        const outline: Point[] = [...room.outline];
        for (const [where, t] of points) {
          const i = where % outline.length;
          const [ax, ay] = outline[i];
          const [bx, by] = outline[(i + 1) % outline.length];
          outline.splice(i + 1, 0, [ax + t * (bx - ax), ay + t * (by - ay)]);
        }
        const after = sceneOf({ ...room, outline });
        const before = sceneOf(room);
        expect({ ...after, wallNames: [] }).toEqual({ ...before, wallNames: [] });
        for (const [i, name] of after.wallNames.entries()) {
          expect(outline[Number(name.slice(5)) - 1]).toEqual(after.outline[i]);
        }
      }),
      { seed: SEED, numRuns: 150 },
    );
  });
});

describe('a bad room stays bad', () => {
  it('however it is turned, also where it only touches itself', () => {
    const bad: readonly Ring[] = [
      [
        [0, 0],
        [5000, 4000],
        [5000, 0],
        [0, 4000],
      ],
      [
        [0, 0],
        [5000, 0],
        [5000, 4000],
        [2500, 0],
        [0, 4000],
      ],
      [
        [0, 0],
        [5000, 0],
        [2500, 2000],
        [5000, 4000],
        [0, 4000],
        [2500, 2000],
      ],
      [
        [0, 0],
        [5000, 0],
        [5000, 2000],
        [3000, 2100],
        [5000, 2000],
        [5000, 4000],
        [0, 4000],
      ],
      [
        [0, 0],
        [5000, 0],
        [9000, 0],
        [5000, 0],
        [5000, 4000],
        [0, 4000],
      ],
      [
        [0, 0],
        [5000, 0],
        [2000, 0],
      ],
    ];
    fc.assert(
      fc.property(fc.constantFrom(...bad), fc.double({ min: 0, max: 7, noNaN: true }), (ring, angle) => {
        const outline = ring.map(([x, y]) => [
          Math.cos(angle) * x - Math.sin(angle) * y,
          Math.sin(angle) * x + Math.cos(angle) * y,
        ]);
        const codes = (value: unknown): Set<string> =>
          new Set(read({ outline: value }).problems.map((p) => p.code.replace(/crosses|touches/, 'meets')));
        expect(codes(outline)).toEqual(codes(ring));
        expect(codes(outline).size).toBe(1);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });
});

describe('any JSON at all', () => {
  it('gives a scene or problems, and never an exception', () => {
    const wild = fc.oneof(
      fc.json().map((text): unknown => JSON.parse(text)),
      fc.record(
        {
          outline: fc.anything(),
          ceiling: fc.anything(),
          obstacles: fc.array(
            fc.record(
              { name: fc.anything(), footprint: fc.anything(), from: fc.anything(), to: fc.anything() },
              { requiredKeys: [] },
            ),
          ),
          doors: fc.array(
            fc.record(
              { hinge: fc.anything(), latch: fc.anything(), opens: fc.constantFrom('in', 'out', 7) },
              { requiredKeys: [] },
            ),
          ),
          tolerance: fc.anything(),
        },
        { requiredKeys: [] },
      ),
    );
    fc.assert(
      fc.property(wild, (value) => {
        const { scene, problems } = read(value);
        expect(scene === null).toBe(problems.length > 0);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it('of numbers of every size for corners gives a scene or problems', () => {
    const number = fc.oneof(
      fc.double(),
      fc.double({ min: -5000, max: 5000 }),
      fc.integer({ min: -3, max: 3 }).map((k) => k * 1000),
    );
    const corners = fc.array(fc.tuple(number, number), { maxLength: 8 });
    const shape = fc.oneof(
      corners,
      fc.record({ center: fc.tuple(number, number), length: number, width: number, turn: number }),
      fc.record({ center: fc.tuple(number, number), diameter: number }),
    );
    fc.assert(
      fc.property(corners, shape, (outline, footprint) => {
        for (const room of [
          { outline },
          {
            outline: [
              [-4000, -4000],
              [4000, -4000],
              [0, 4000],
            ],
            obstacles: [{ name: 'thing', footprint }],
          },
        ]) {
          const { scene, problems } = read(room);
          expect(scene === null).toBe(problems.length > 0);
          for (const obstacle of scene?.obstacles ?? []) {
            const area = obstacle.parts.reduce((sum, part) => sum + signedArea(part), 0);
            expect(area / signedArea(obstacle.ring)).toBeCloseTo(1, 6);
          }
        }
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });
});
