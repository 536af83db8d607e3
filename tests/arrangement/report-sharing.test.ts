import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placePiece } from '../../src/arrangement/piece-place.js';
import {
  apartShare,
  coveredArea,
  coveredShare,
  cueingFloor,
  sharedZones,
} from '../../src/arrangement/zone-sharing.js';
import { TABLES } from '../../src/equipment/tables.js';
import { circleRing, rectangleRing, signedArea } from '../../src/geometry/ring.js';
import type { Ring } from '../../src/geometry/types.js';
import { openReach } from '../../src/placement/open-reach.js';
import { playSize } from '../../src/placement/problem-for.js';
import * as jts from '../helpers/jsts.js';
import { box, poses, put, renamed, specs, zone } from './layout-cases.js';

const STROKE = { backswing: 150, shortBackswing: 45, margin: 20, tipOffset: 10, maxElevation: 0.35 };
const CUE = { name: '57 in', length: 1448, tipRadius: 5, buttRadius: 15 };
const TABLE = TABLES['pool-7ft-bar'];

const convex: fc.Arbitrary<Ring> = fc
  .record({
    pose: poses(1500),
    length: fc.integer({ min: 20, max: 3000 }),
    width: fc.integer({ min: 20, max: 2500 }),
    round: fc.boolean(),
  })
  .map(({ pose: { x, y, angle }, length, width, round }) =>
    round ? circleRing([x, y], width) : rectangleRing([x, y], length, width, angle),
  );

function jtsArea(ring: Ring, covers: readonly Ring[]): number {
  return jts.area(jts.intersection(jts.polygon(ring), jts.union(covers.map((cover) => jts.polygon(cover)))));
}

describe('what covers a zone', () => {
  it('is what JTS finds, however the covers overlap', () => {
    fc.assert(
      fc.property(convex, fc.array(convex, { minLength: 1, maxLength: 4 }), (ring, covers) => {
        expect(coveredArea(ring, covers)).toBeCloseTo(jtsArea(ring, covers), 1);
        expect(coveredArea(ring, [...covers].reverse())).toBeCloseTo(coveredArea(ring, covers), 1);
      }),
      { seed: 521, numRuns: 150 },
    );
  });

  it('is all of it under a cover that holds it, and nothing where they only touch', () => {
    const ring = rectangleRing([0, 0], 1000, 600);
    expect(coveredShare(ring, [rectangleRing([0, 0], 1000, 600)])).toBe(1);
    expect(coveredShare(ring, [rectangleRing([800, 0], 600, 600)])).toBe(0);
    expect(coveredShare(ring, [rectangleRing([500, 0], 1000, 600)])).toBeCloseTo(0.5, 12);
    expect(coveredShare(ring, [])).toBe(0);
  });
});

describe('the floor of cues and players', () => {
  it.each([
    ['a usual cue', CUE, 1],
    ['a short one, where players need more', { ...CUE, length: 300 }, 2],
  ])('is Q grown by rho with the strip for players, at most 1 mm larger: %s', (_, cue, count) => {
    const pose = { x: 300, y: -200, angle: 0.6 };
    const { rho, strip } = openReach(TABLE, STROKE, cue);
    const { length, width } = playSize(TABLE);
    const rings = cueingFloor(TABLE, STROKE, cue, pose);
    expect(rings).toHaveLength(count);
    const q = rectangleRing([pose.x, pose.y], length, width, pose.angle);
    const frame = rectangleRing([pose.x, pose.y], TABLE.outer.length, TABLE.outer.width, pose.angle);
    const expected = jts.union([
      jts.buffer(jts.polygon(q), rho, 64),
      jts.buffer(jts.polygon(frame), strip, 64),
    ]);
    const found = jts.union(rings.map((ring) => jts.polygon(ring)));
    expect(jts.covers(found, jts.buffer(expected, -0.001, 64))).toBe(true);
    expect(jts.covers(jts.buffer(expected, 1.5, 64), found)).toBe(true);
  });
});

describe('zones that are used by turns', () => {
  const lane = zone({ name: 'lane', front: 1000 });
  const a = put(box('a', 1000, 500, { zones: [lane] }), 0, 0);
  const b = put(box('b', 1000, 500, { zones: [zone({ name: 'seat', front: 1000 })] }), 0, 1750, 180);

  it('are told from both sides with the share of each', () => {
    // Lanes of 1000 x 1500 that overlap over 750 of the 1500: from y 500 to 1250.
    expect(sharedZones([a, b], [])).toEqual([
      { piece: 'a', zone: 'lane', with: 'b', share: expect.closeTo(0.5, 12) },
      { piece: 'b', zone: 'seat', with: 'a', share: expect.closeTo(0.5, 12) },
    ]);
    expect(apartShare([a, b], [])).toBeCloseTo(0.5, 12);
    expect(apartShare([a], [])).toBe(1);
    expect(apartShare([], [])).toBe(1);
  });

  it('count floor once that is shared twice', () => {
    const cueing = [rectangleRing([0, 1250], 2000, 1500)];
    expect(sharedZones([a, b], cueing)).toEqual([
      { piece: 'a', zone: 'lane', with: 'cueing', share: expect.closeTo(0.5, 12) },
      { piece: 'a', zone: 'lane', with: 'b', share: expect.closeTo(0.5, 12) },
      { piece: 'b', zone: 'seat', with: 'cueing', share: expect.closeTo(1, 12) },
      { piece: 'b', zone: 'seat', with: 'a', share: expect.closeTo(0.5, 12) },
    ]);
    expect(apartShare([a, b], cueing)).toBeCloseTo(0.25, 12);
  });

  it('are none that may not be shared, or lie at other heights', () => {
    const cueing = [rectangleRing([0, 0], 9000, 9000)];
    const alone = (more: Parameters<typeof zone>[0]) =>
      put(box('c', 1000, 500, { zones: [zone({ front: 1000, ...more })] }), 0, 1750, 180);
    expect(sharedZones([a, alone({ withZones: false })], [])).toEqual([]);
    expect(sharedZones([alone({ withCueing: false })], cueing)).toEqual([]);
    expect(sharedZones([a, alone({ from: 2000, to: 2300 })], [])).toEqual([]);
    expect(sharedZones([alone({ from: 1900, to: 2300 })], cueing)).toEqual([]);
  });

  it('cover what JTS finds in random layouts', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(specs, poses(2500)), { minLength: 1, maxLength: 4 }),
        poses(1500),
        (list, pose) => {
          const placed = list.map(([spec, at], i) => placePiece(renamed(spec, `piece ${i}`), at));
          const cueing = cueingFloor(TABLE, STROKE, CUE, pose);
          let sum = 0;
          let count = 0;
          for (const piece of placed) {
            for (const { spec, ring } of piece.zones) {
              const others = placed
                .filter((other) => other !== piece)
                .flatMap((other) => other.zones)
                .filter(
                  (z) => spec.withZones && z.spec.withZones && spec.from < z.spec.to && z.spec.from < spec.to,
                )
                .map((z) => z.ring);
              sum += jtsArea(ring, [...others, ...(spec.withCueing ? cueing : [])]) / signedArea(ring);
              count++;
            }
          }
          expect(apartShare(placed, cueing)).toBeCloseTo(count === 0 ? 1 : 1 - sum / count, 6);
        },
      ),
      { seed: 522, numRuns: 60 },
    );
  });
});
