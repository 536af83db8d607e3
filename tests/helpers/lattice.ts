/**
 * Rectangles on a lattice, whose unions, intersections and differences have areas that can be counted cell by cell: an
 * oracle without any geometry. Turned by a free angle they become the worst case of floating-point polygon code, with
 * the same areas.
 */
import fc from 'fast-check';
import { rotated } from '../../src/geometry/ring.js';
import type { Ring } from '../../src/geometry/types.js';

/** Lower left corner, length and width, mm; multiples of {@link CELL}. */
export type LatticeRectangle = readonly [x: number, y: number, length: number, width: number];

/** Side of a cell, mm. */
export const CELL = 50;

export function latticeRing([x, y, length, width]: LatticeRectangle): Ring {
  return [
    [x, y],
    [x + length, y],
    [x + length, y + width],
    [x, y + width],
  ];
}

/** Area of the cells whose membership of the rectangles passes the test, mm2. */
export function countCells(
  rectangles: readonly LatticeRectangle[],
  test: (within: readonly boolean[]) => boolean,
): number {
  const xs = rectangles.flatMap(([x, , length]) => [x, x + length]);
  const ys = rectangles.flatMap(([, y, , width]) => [y, y + width]);
  let cells = 0;
  for (let x = Math.min(...xs); x < Math.max(...xs); x += CELL) {
    for (let y = Math.min(...ys); y < Math.max(...ys); y += CELL) {
      const within = rectangles.map(
        ([rx, ry, length, width]) => rx <= x && x < rx + length && ry <= y && y < ry + width,
      );
      if (test(within)) cells++;
    }
  }
  return cells * CELL * CELL;
}

export function rectanglesArbitrary(count: { min: number; max: number }): fc.Arbitrary<LatticeRectangle[]> {
  const steps = (min: number, max: number) => fc.integer({ min, max }).map((n) => n * CELL);
  return fc.array(fc.tuple(steps(0, 30), steps(0, 30), steps(1, 40), steps(1, 40)), {
    minLength: count.min,
    maxLength: count.max,
  });
}

/** The rectangles as rings, turned together about the origin. */
export function turnedRings(rectangles: readonly LatticeRectangle[], angle: number): Ring[] {
  return rectangles.map((rectangle) => rotated(latticeRing(rectangle), angle));
}
