import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  besideProblems,
  fitsBeside,
  fitsRoom,
  fitsTable,
  roomProblems,
  roomRules,
  tableProblems,
} from '../../src/arrangement/layout-rules.js';
import { overlapDepth, overlapsConvex, TOUCH_SLACK } from '../../src/arrangement/layout-rules-overlap.js';
import { placePiece } from '../../src/arrangement/piece-place.js';
import type { FurnishingSpec } from '../../src/equipment/furnishing-types.js';
import { TABLES } from '../../src/equipment/tables.js';
import { convexParts } from '../../src/geometry/convex-parts.js';
import { circleRing, rectangleRing, translated } from '../../src/geometry/ring.js';
import type { Placement, Ring } from '../../src/geometry/types.js';
import type { Scene } from '../../src/room/scene.js';
import * as jts from '../helpers/jsts.js';
import { skylineRings, starRings } from '../helpers/rings.js';
import { doorIn, movedPose, movedScene, obstacleOf, poses, renamed, sceneOf, specs } from './layout-cases.js';

/** Overlaps of less area than this are too near to touching to be told by an area: the slack times a long side, mm2. */
const NEAR_TOUCHING = TOUCH_SLACK * 20_000;

/** Convex polygons: rectangles and round things, turned and moved. */
const convex: fc.Arbitrary<Ring> = fc
  .record({
    pose: poses(2500),
    length: fc.integer({ min: 5, max: 4000 }),
    width: fc.integer({ min: 5, max: 2000 }),
    round: fc.boolean(),
  })
  .map(({ pose: { x, y, angle }, length, width, round }) =>
    round ? circleRing([x, y], width) : rectangleRing([x, y], length, width, angle),
  );

/** Whether JTS finds more than touching; null: too near to tell. */
function jtsOverlap(a: readonly Ring[], b: readonly Ring[]): boolean | null {
  const area = jts.area(
    jts.intersection(jts.union(a.map((r) => jts.polygon(r))), jts.union(b.map((r) => jts.polygon(r)))),
  );
  return area > 0 && area < NEAR_TOUCHING ? null : area > 0;
}

/** The shortest shift that parts two convex polygons, tried in all directions at a quarter of a degree: never less than the true one. */
function slowDepth(a: Ring, b: Ring): number {
  let least = Infinity;
  for (let k = 0; k < 1440; k++) {
    const [nx, ny] = [Math.cos((k * Math.PI) / 720), Math.sin((k * Math.PI) / 720)];
    const reach = Math.max(...a.map(([x, y]) => nx * x + ny * y));
    const start = Math.min(...b.map(([x, y]) => nx * x + ny * y));
    least = Math.min(least, reach - start);
  }
  return Math.max(0, least);
}

describe('overlap of convex polygons', () => {
  it('is that of JTS', () => {
    fc.assert(
      fc.property(convex, convex, (a, b) => {
        const expected = jtsOverlap([a], [b]);
        fc.pre(expected !== null);
        expect(overlapsConvex(a, b)).toBe(expected);
        expect(overlapDepth(a, b) > TOUCH_SLACK).toBe(expected);
      }),
      { seed: 501, numRuns: 400 },
    );
  });

  it('is as deep as the shortest shift that parts them', () => {
    fc.assert(
      fc.property(convex, convex, (a, b) => {
        const depth = overlapDepth(a, b);
        const slow = slowDepth(a, b);
        expect(depth).toBeLessThanOrEqual(slow + 1e-9);
        // An eighth of a degree off, the depth changes by at most the spread of both times that angle.
        expect(depth).toBeGreaterThanOrEqual(slow - 12_000 * (Math.PI / 1440));
        expect(overlapDepth(b, a)).toBeCloseTo(depth, 7);
        // A shift of that length and no less parts them: tried along the edges of both.
        if (depth <= TOUCH_SLACK) return;
        const edges = [a, b].flatMap((ring, i) =>
          ring.map((p, k) => {
            const q = ring[(k + 1) % ring.length];
            const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
            const out = i === 0 ? 1 : -1;
            return [(out * (q[1] - p[1])) / length, (-out * (q[0] - p[0])) / length];
          }),
        );
        expect(edges.some(([nx, ny]) => !overlapsConvex(a, translated(b, nx * depth, ny * depth)))).toBe(
          true,
        );
        const short = depth - 2 * TOUCH_SLACK;
        expect(edges.every(([nx, ny]) => overlapsConvex(a, translated(b, nx * short, ny * short)))).toBe(
          true,
        );
      }),
      { seed: 502, numRuns: 200 },
    );
  });
});

/** A right-angled or star-shaped room with a pillar and a door in its longest wall. */
const rooms: fc.Arbitrary<Scene> = fc
  .record({
    outline: fc.oneof(skylineRings(6), starRings(14)),
    pillar: poses(3000),
    size: fc.integer({ min: 50, max: 900 }),
  })
  .map(({ outline, pillar, size }) => {
    const walls = outline.map((a, i) => ({ a, b: outline[(i + 1) % outline.length] }));
    const { a, b } = walls.reduce((best, wall) =>
      Math.hypot(wall.b[0] - wall.a[0], wall.b[1] - wall.a[1]) >
      Math.hypot(best.b[0] - best.a[0], best.b[1] - best.a[1])
        ? wall
        : best,
    );
    const at = (share: number) => [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])] as const;
    return sceneOf(outline, {
      obstacles: [
        obstacleOf('pillar', rectangleRing([pillar.x, pillar.y], size, size, pillar.angle), 0, 1000),
      ],
      doors: [doorIn('door', at(0.3), at(0.5))],
      ceiling: [
        { name: 'ceiling 1', height: 1800, slopeX: 0.1, slopeY: 0 },
        { name: 'ceiling 2', height: 2300, slopeX: 0, slopeY: -0.05 },
      ],
    });
  });

/** Poses that lie in the room more often than not. */
const inRooms = poses(2500);

describe('pieces in rooms of every form', () => {
  it('lie inside the walls, off obstacles and off doors where JTS says so', () => {
    const seen = { inside: 0, outside: 0, off: 0, on: 0 };
    fc.assert(
      fc.property(rooms, specs, inRooms, (scene, spec, pose) => {
        const rules = roomRules(scene, 600);
        const piece = placePiece(spec, pose);
        const problems = roomProblems(rules, piece);
        expect(fitsRoom(rules, piece)).toBe(problems.length === 0);

        const floor = jts.polygon(scene.outline);
        const things = [
          {
            ring: piece.ring,
            from: spec.from,
            to: spec.to,
            offDoors: true,
            code: '',
            name: null as string | null,
          },
          ...piece.zones.map(({ spec: z, ring }) => ({ ...z, ring, code: 'zone-', name: z.name })),
        ];
        for (const { ring, from, to, offDoors, code, name } of things) {
          const has = (what: string): boolean =>
            problems.some((p) => p.code === code + what && p.zone === name);
          const beyond = jts.area(jts.difference(jts.polygon(ring), floor));
          if (beyond === 0 || beyond > NEAR_TOUCHING) {
            expect(has('outside')).toBe(beyond > 0);
            seen[beyond > 0 ? 'outside' : 'inside']++;
          }
          const [pillar] = scene.obstacles;
          const parts = convexParts(ring);
          const hit = from < pillar.to && pillar.from < to ? jtsOverlap(parts, pillar.parts) : false;
          if (hit !== null) expect(has('overlap')).toBe(hit);
          if (hit !== null) seen[hit ? 'on' : 'off']++;
          const [door] = rules.doors;
          const across = offDoors && from < 2100 ? jtsOverlap(parts, door.rings) : false;
          if (across !== null) expect(has('door')).toBe(across);
          const low = scene.ceiling.some((f) =>
            ring.some(([x, y]) => f.height + f.slopeX * x + f.slopeY * y < to),
          );
          expect(has('ceiling')).toBe(low);
        }
      }),
      { seed: 503, numRuns: 250 },
    );
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(10);
  });

  it('meet the same problems when the room is turned and moved with them', () => {
    const table = TABLES['pool-7ft-bar'];
    fc.assert(
      fc.property(
        rooms,
        specs,
        specs,
        inRooms,
        inRooms,
        inRooms,
        poses(8000),
        (scene, s, t, p, q, at, motion) => {
          const { angle } = motion;
          const by = [motion.x, motion.y] as const;
          const other = renamed(t, 'other');
          const look = (room: Scene, one: Placement, two: Placement, frame: Placement) => {
            const a = placePiece(s, one);
            const b = placePiece(other, two);
            return [
              ...roomProblems(roomRules(room, 600), a),
              ...besideProblems(a, b),
              ...tableProblems(a, table, frame),
            ];
          };
          const here = look(scene, p, q, at);
          const moved = (pose: Placement): Placement => movedPose(pose, angle, by);
          const there = look(movedScene(scene, angle, by), moved(p), moved(q), moved(at));
          // Walls may be told apart by rounding where two are as near.
          expect(there.map(({ code, zone }) => [code, zone])).toEqual(
            here.map(({ code, zone }) => [code, zone]),
          );
          here.forEach(({ amount }, i) => {
            if (amount !== null) expect(there[i].amount).toBeCloseTo(amount, 5);
          });
        },
      ),
      { seed: 504, numRuns: 150 },
    );
  });

  it('never lose a problem by growing', () => {
    fc.assert(
      fc.property(
        rooms,
        specs,
        specs,
        inRooms,
        inRooms,
        fc.integer({ min: 1, max: 800 }),
        (scene, s, t, p, q, by) => {
          const grown: FurnishingSpec = {
            ...s,
            ring: s.ring.map(([x, y]) => [x * (1 + by / s.length), y * (1 + by / s.width)] as const),
            length: s.length + by,
            width: s.width + by,
            from: Math.max(0, s.from - by),
            to: s.to + by,
          };
          // An L grown about its middle leaves some of its floor: only rectangles hold what they were.
          fc.pre(s.ring.length === 4);
          const other = placePiece(renamed(t, 'other'), q);
          const table = TABLES['pool-7ft-bar'];
          const keys = (spec: FurnishingSpec): string[] => {
            const piece = placePiece(spec, p);
            const rules = roomRules(scene, 600);
            const all = [
              ...roomProblems(rules, piece).map((x) => ({
                ...x,
                with: x.code.endsWith('outside') ? null : x.with,
              })),
              ...besideProblems(piece, other),
              ...tableProblems(piece, table, q),
            ];
            return all.map((x) => `${x.code} ${x.with} ${x.zone}`);
          };
          expect(keys(grown)).toEqual(expect.arrayContaining(keys(s)));
        },
      ),
      { seed: 505, numRuns: 200 },
    );
  });
});

describe('two pieces', () => {
  it('fit beside one another either way round, and as JTS says', () => {
    const seen = { yes: 0, no: 0 };
    fc.assert(
      fc.property(specs, specs, inRooms, inRooms, (s, t, p, q) => {
        const a = placePiece(s, p);
        const b = placePiece(renamed(t, 'other'), q);
        const fits = fitsBeside(a, b);
        expect(fitsBeside(b, a)).toBe(fits);
        expect(besideProblems(a, b)).toHaveLength(fits ? 0 : besideProblems(b, a).length);
        expect(besideProblems(a, b).length === 0).toBe(fits);

        const meet = (x: { from: number; to: number }, y: { from: number; to: number }): boolean =>
          x.from < y.to && y.from < x.to;
        const pairs = [
          meet(s, t) ? jtsOverlap(a.parts, b.parts) : false,
          ...b.zones.map((z) => (meet(s, z.spec) ? jtsOverlap(a.parts, [z.ring]) : false)),
          ...a.zones.map((z) => (meet(t, z.spec) ? jtsOverlap(b.parts, [z.ring]) : false)),
          ...a.zones.flatMap((y) =>
            b.zones.map((z) =>
              meet(y.spec, z.spec) && !(y.spec.withZones && z.spec.withZones)
                ? jtsOverlap([y.ring], [z.ring])
                : false,
            ),
          ),
        ];
        if (pairs.includes(null)) return;
        expect(fits).toBe(!pairs.includes(true));
        seen[fits ? 'yes' : 'no']++;
      }),
      { seed: 506, numRuns: 300 },
    );
    expect(Math.min(seen.yes, seen.no)).toBeGreaterThan(50);
  });

  it('fit a table as JTS says', () => {
    const table = TABLES['pool-7ft-bar'];
    const rail = table.bedHeight + table.railHeight;
    fc.assert(
      fc.property(specs, inRooms, inRooms, (spec, pose, { x, y, angle }) => {
        const piece = placePiece(spec, pose);
        const frame = rectangleRing([x, y], table.outer.length, table.outer.width, angle);
        const pairs = [
          spec.from < rail ? jtsOverlap(piece.parts, [frame]) : false,
          ...piece.zones.map((z) => (z.spec.from < rail ? jtsOverlap([z.ring], [frame]) : false)),
        ];
        if (pairs.includes(null)) return;
        expect(fitsTable(piece, table, { x, y, angle })).toBe(!pairs.includes(true));
        expect(tableProblems(piece, table, { x, y, angle })).toHaveLength(pairs.filter((hit) => hit).length);
      }),
      { seed: 507, numRuns: 200 },
    );
  });
});
