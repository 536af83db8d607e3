import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { freeFloor } from '../../src/geometry/free-floor.js';
import { regionArea } from '../../src/geometry/region.js';
import { REGION_GRID } from '../../src/geometry/regions.js';
import { circleRing, perimeter, rectangleRing, signedArea } from '../../src/geometry/ring.js';
import * as clipper from '../helpers/clipper2.js';
import { countCells, latticeRing, rectanglesArbitrary, turnedRings } from '../helpers/lattice.js';
import { openRooms } from '../helpers/open-rooms.js';

const room = latticeRing([0, 0, 6000, 4000]);

describe('free floor', () => {
  it('is the room less what stands in it', () => {
    const floor = freeFloor(room, [latticeRing([1000, 1000, 2000, 1000]), latticeRing([0, 3500, 500, 500])]);
    expect(regionArea(floor)).toBe(6000 * 4000 - 2000 * 1000 - 500 * 500);
    expect(floor).toHaveLength(1);
    expect(floor[0].holes).toHaveLength(1);
  });

  it('is the room itself when nothing does, or nothing in it', () => {
    expect(regionArea(freeFloor(room, []))).toBe(24_000_000);
    expect(regionArea(freeFloor(room, [latticeRing([7000, 0, 500, 500])]))).toBe(24_000_000);
  });

  it('is empty when a footprint covers it, and in two when one parts it', () => {
    expect(freeFloor(room, [latticeRing([-100, -100, 7000, 5000])])).toEqual([]);
    expect(freeFloor(room, [latticeRing([2000, -100, 100, 5000])])).toHaveLength(2);
  });

  it('counts overlapping footprints once', () => {
    const overlapping = [latticeRing([1000, 1000, 1000, 1000]), latticeRing([1500, 1000, 1000, 1000])];
    expect(regionArea(freeFloor(room, overlapping))).toBe(24_000_000 - 1_500_000);
  });

  it('is as large as the cells that nothing covers, at every angle', () => {
    const turn = fc.double({ min: 0, max: 6.28, noNaN: true });
    fc.assert(
      fc.property(rectanglesArbitrary({ min: 2, max: 10 }), turn, (rectangles, angle) => {
        const [outline, ...footprints] = turnedRings(rectangles, angle);
        const truth = countCells(rectangles, ([inside, ...covered]) => inside && !covered.includes(true));
        const bound =
          4 * REGION_GRID * [outline, ...footprints].reduce((sum, ring) => sum + perimeter(ring), 0);
        expect(Math.abs(regionArea(freeFloor(outline, footprints)) - truth)).toBeLessThanOrEqual(bound);
      }),
      { seed: 20251128, numRuns: 100 },
    );
  });

  it('agrees with clipper2 in every measured room with a table and a column', () => {
    for (const { pts } of openRooms) {
      const xs = pts.map(([x]) => x);
      const ys = pts.map(([, y]) => y);
      const middle = [
        (Math.min(...xs) + Math.max(...xs)) / 2,
        (Math.min(...ys) + Math.max(...ys)) / 2,
      ] as const;
      const things = [
        rectangleRing(middle, 2794, 1524, pts.length),
        circleRing([middle[0] + 900, middle[1]], 400),
      ];
      const truth = clipper.areaOf(clipper.differenceOf(clipper.unionOf([pts]), clipper.unionOf(things)));
      const bound = 4 * REGION_GRID * [pts, ...things].reduce((sum, ring) => sum + perimeter(ring), 0);
      const free = regionArea(freeFloor(pts, things));
      expect(Math.abs(free - truth)).toBeLessThanOrEqual(bound);
      expect(free).toBeLessThanOrEqual(signedArea(pts) + bound);
    }
  });
});
