import { describe, expect, it } from 'vitest';
import type { Ring } from '../../src/geometry/types.js';
import { findPlacement } from '../../src/placement/find-placement.js';
import { rectangleInRectangle } from './closed-forms.js';
import { problem, randomNumbers, rectangle, regular, turned } from './rooms.js';

/** A shape fits into a room at some turn exactly if the search finds a place for it: known results on containment. */

/** Does a length x width rectangle lie inside the outline with something to spare on every side? */
function fits(outline: Ring, length: number, width: number): boolean {
  const play = { length, width };
  const found = findPlacement(problem(outline, play, [], [], play), {
    gap: 0.001,
    maxBoxes: 200_000,
    turns: 'any',
    target: 1e-9,
  });
  expect(found.stopped).toBe(false);
  if (found.pose === null) expect(found.upperBound).toBe(0);
  return found.pose !== null;
}

/**
 * Carver, Amer. Math. Monthly 64 (1957); Wetzel, Mathematics Magazine 73 (2000) 204-211: a p x q rectangle (p >= q) fits into an
 * a x b one (a >= b) exactly if p <= a and q <= b, or p > a, q <= b and b >= (2pqa + (p^2 - q^2) sqrt(p^2 + q^2 - a^2)) / (p^2 + q^2).
 */
function leastWidth(p: number, q: number, a: number): number {
  return (2 * p * q * a + (p * p - q * q) * Math.sqrt(p * p + q * q - a * a)) / (p * p + q * q);
}

describe('rectangle in rectangle (Carver 1957, Wetzel 2000)', () => {
  it('refuses 9 x 4 in 8 x 6, where area, diagonal, perimeter and thickness all allow it (Wetzel)', () => {
    expect(fits(rectangle(0, 0, 8000, 6000), 9000, 4000)).toBe(false);
  });

  it('refuses 10 x 10 in 8 x 8 (a reader objects that the formula alone would allow it)', () => {
    expect(fits(rectangle(0, 0, 8000, 8000), 10000, 10000)).toBe(false);
  });

  it.each([
    [9, 8, 6, 1.060374],
    [10, 8, 7, 0.636979],
  ])('lets %f in %f x %f be %f wide at most', (p, a, b, q) => {
    const outline = turned(rectangle(0, 0, 1000 * a, 1000 * b), 0.7);
    expect(fits(outline, 1000 * p, 1000 * q - 0.5)).toBe(true);
    expect(fits(outline, 1000 * p, 1000 * q + 0.5)).toBe(false);
  });

  it.each([
    [5, 1, 4, 4.457487],
    [13, 1, 12, 6.874325],
    [10, 1, 9, 6.165757],
  ])('lets %f x %f into %f x b from b = %f on', (p, q, a, b) => {
    // The condition is the same with a and b exchanged, so b may exceed a.
    expect(leastWidth(p, q, a)).toBeCloseTo(b, 5);
    expect(fits(rectangle(0, 0, 1000 * a, 1000 * b + 0.5), 1000 * p, 1000 * q)).toBe(true);
    expect(fits(rectangle(0, 0, 1000 * a, 1000 * b - 0.5), 1000 * p, 1000 * q)).toBe(false);
  });

  it('agrees with the theorem on random sizes (seed 41)', () => {
    const random = randomNumbers(41);
    let tilted = 0;
    for (let k = 0; k < 150; k++) {
      const a = 3000 + 5000 * random();
      const b = a * (0.4 + 0.6 * random());
      const p = a * (0.8 + 0.45 * random());
      const q = p * (0.02 + 0.5 * random() * random());
      const square = p <= a && q <= b;
      const spare = square ? Math.min(a - p, b - q) : b - leastWidth(p, q, a);
      const expected = square || (p > a && q <= b && p * p + q * q > a * a && spare >= 0);
      // Not so near to the threshold that the theorem's own rounding decides.
      if (Math.abs(spare) < 0.01) continue;
      const touching = q > b && !square;
      expect([k, fits(rectangle(0, 0, a, b), p, q)]).toEqual([k, touching ? false : expected]);
      expect(rectangleInRectangle(a, b, p, q) > 0).toBe(touching ? false : expected);
      if (expected && !square) tilted++;
    }
    expect(tilted).toBeGreaterThan(10);
  });
});

const threeFourFive: Ring = [
  [0, 0],
  [4000, 0],
  [0, 3000],
];
const equilateral: Ring = [
  [0, 0],
  [1000, 0],
  [500, 500 * Math.sqrt(3)],
];
/** A regular polygon with sides of 1000. */
const sided = (n: number): Ring => turned(regular(n, 500 / Math.sin(Math.PI / n)), 0.3);

describe('largest squares and 2 : 1 rectangles (elementary geometry; classical values from memory, recomputed)', () => {
  it.each<[string, Ring, number, number]>([
    ['square in the 3-4-5 triangle, in its right angle: 12/7', threeFourFive, 1, 12 / 7],
    ['2 : 1 in the 3-4-5 triangle, on the hypotenuse: 60/49', threeFourFive, 2, 60 / 49],
    ['square in the unit equilateral triangle: 2 sqrt 3 - 3', equilateral, 1, 2 * Math.sqrt(3) - 3],
    ['2 : 1 in the unit equilateral triangle', equilateral, 2, 0.5 / (1 + 1 / Math.sqrt(3))],
    ['square in the unit regular hexagon: 3 - sqrt 3', sided(6), 1, 3 - Math.sqrt(3)],
    ['2 : 1 in the unit regular hexagon: sqrt(3) / 2', sided(6), 2, Math.sqrt(3) / 2],
    ['square in the unit regular octagon: on four of its corners', sided(8), 1, 1.847759],
    ['2 : 1 in the unit square: 1/2, square to its sides', sided(4), 2, 0.5],
  ])('%s', (_, outline, ratio, side) => {
    const short = 1000 * side;
    expect(fits(outline, ratio * (short - 0.05), short - 0.05)).toBe(true);
    expect(fits(outline, ratio * (short + 0.05), short + 0.05)).toBe(false);
  });
});
