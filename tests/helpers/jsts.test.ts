import { describe, expect, it } from 'vitest';
import * as jts from './jsts.js';

// Pencil-and-paper values, so that the oracle itself is known to be called rightly.
describe('the JTS oracle', () => {
  const square = jts.polygon([
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
  ]);
  const shifted = jts.polygon([
    [5, 5],
    [15, 5],
    [15, 15],
    [5, 15],
  ]);

  it('measures areas and perimeters, holes taken off', () => {
    const hole = [
      [2, 2],
      [2, 4],
      [4, 4],
      [4, 2],
    ] as const;
    const holed = jts.polygon(
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ],
      [hole],
    );
    expect(jts.area(square)).toBe(100);
    expect(jts.area(holed)).toBe(96);
    expect(jts.perimeter(square)).toBe(40);
    expect(jts.perimeter(jts.segment([0, 0], [3, 4]))).toBe(5);
  });

  it('says why a ring is not valid, and where', () => {
    const bow = jts.validity(
      jts.polygon([
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ]),
    );
    expect(bow).toEqual({ valid: false, reason: 'Self-intersection', where: [5, 5] });
    expect(jts.isValid(square)).toBe(true);
  });

  it('overlays', () => {
    expect(jts.area(jts.intersection(square, shifted))).toBe(25);
    expect(jts.area(jts.union([square, shifted]))).toBe(175);
    expect(jts.area(jts.union([]))).toBe(0);
    expect(jts.area(jts.difference(square, shifted))).toBe(75);
    expect(jts.area(jts.symmetricDifference(square, shifted))).toBe(150);
  });

  it('relates', () => {
    expect(jts.distance(square, jts.point([13, 14]))).toBe(5);
    expect(jts.nearestPoints(square, jts.point([13, 14]))).toEqual([
      [10, 10],
      [13, 14],
    ]);
    expect(jts.contains(square, jts.point([5, 5]))).toBe(true);
    expect(jts.contains(square, jts.point([10, 5]))).toBe(false);
    expect(jts.covers(square, jts.point([10, 5]))).toBe(true);
    expect(jts.intersects(square, shifted)).toBe(true);
  });

  it('grows a square by rounded corners, from the inside', () => {
    const grown = jts.area(jts.buffer(square, 3, 32));
    const exact = 100 + 4 * 30 + Math.PI * 9;
    expect(grown).toBeLessThan(exact);
    expect(grown).toBeGreaterThan(exact - 0.02);
  });
});
