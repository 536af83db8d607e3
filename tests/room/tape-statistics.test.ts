import { describe, expect, it } from 'vitest';
import { innerCovariance, simultaneousFactor, wallEnds } from '../../src/room/tape-bands.js';
import { chiSquareTail, gaussRule, normalTail } from '../../src/room/tape-statistics.js';
import { normalNumbers } from './tape-simulate.js';

/** Integral of f from a to b by Simpson's rule. */
function simpson(f: (x: number) => number, a: number, b: number, steps = 20_000): number {
  const h = (b - a) / steps;
  let sum = f(a) + f(b);
  for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * f(a + i * h);
  return (sum * h) / 3;
}

describe('tails', () => {
  it.each([0, 0.3, 1, 1.959964, 2.5, 3.29, 4.5, 6])('normal beyond %d, against Simpson`s rule', (z) => {
    const expected = simpson((x) => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI), z, z + 12);
    expect(Math.abs(normalTail(z) / expected - 1)).toBeLessThan(1e-9);
    expect(normalTail(-z)).toBeCloseTo(1 - expected, 10);
  });

  // Quantiles as printed in any table of chi-square, from memory.
  it.each([
    [1, 3.841, 0.05],
    [1, 10.828, 0.001],
    [2, 5.991, 0.05],
    [3, 16.266, 0.001],
    [5, 20.515, 0.001],
    [10, 29.588, 0.001],
    [30, 59.703, 0.001],
    [100, 149.449, 0.001],
  ])('chi-square with %d degrees of freedom beyond %d', (degrees, value, chance) => {
    expect(Math.abs(chiSquareTail(value, degrees) / chance - 1)).toBeLessThan(2e-3);
  });

  it.each([2, 4, 5, 9])('chi-square with %d degrees of freedom, against Simpson`s rule', (degrees) => {
    const gamma: Record<number, number> = { 2: 1, 4: 1, 5: 1.329340388179137, 9: 11.631728396567448 };
    const density = (x: number): number =>
      (x ** (degrees / 2 - 1) * Math.exp(-x / 2)) / (2 ** (degrees / 2) * gamma[degrees]);
    for (const value of [0.5, 3, 12, 40]) {
      expect(Math.abs(chiSquareTail(value, degrees) / simpson(density, value, value + 200) - 1)).toBeLessThan(
        1e-7,
      );
    }
  });

  it('nothing is beyond less than nothing', () => {
    expect(chiSquareTail(0, 3)).toBe(1);
    expect(chiSquareTail(1e5, 3)).toBe(0);
  });
});

describe('Gauss`s rule', () => {
  it.each([4, 20])('with %d points is exact for powers below twice as many', (points) => {
    for (let power = 0; power < 2 * points; power++) {
      const sum = gaussRule(points).reduce((total, [node, weight]) => total + weight * node ** power, 0);
      expect(sum).toBeCloseTo(1 / (power + 1), 12);
    }
  });
});

describe('one factor for many bands', () => {
  const SQUARE = Float64Array.from([0, 0, 0, 5000, 4000, 5000, 4000, 0]);

  /** The factor of ends whose displacements are independent: each corner moves by 1 along x and along y. */
  it('for eight independent ends is a little over that of Sidak, and no more than the bound says', () => {
    const size = 8;
    const identity = new Float64Array(size * size);
    for (let k = 0; k < size; k++) identity[k * size + k] = 1;
    const ends = wallEnds(SQUARE);
    const k = simultaneousFactor(ends, new Float64Array(8).fill(1), identity, size, 0.95);
    // The two walls at a corner are square to one another: eight independent numbers, all of deviation 1.
    // Hunter takes off the seven pairs of the tree, of which one sign is counted.
    const bound = (q: number): number => 16 * normalTail(q) - 14 * normalTail(q) ** 2;
    expect(bound(k)).toBeLessThan(0.05 + 1e-12);
    expect(bound(k - 2e-5)).toBeGreaterThan(0.05);
    expect((1 - 2 * normalTail(k)) ** 8).toBeGreaterThan(0.95);
  });

  it('for ends that all move as one is that of one', () => {
    // Every corner moves by the same number along x, by nothing along y.
    const size = 8;
    const shift = new Float64Array(size * size);
    for (let i = 0; i < size; i += 2) for (let j = 0; j < size; j += 2) shift[i * size + j] = 1;
    const ends = wallEnds(SQUARE);
    const deviations = Float64Array.from(ends, ({ nx }) => Math.abs(nx));
    const k = simultaneousFactor(ends, deviations, shift, size, 0.95);
    // 1.95996 for 95 % of one normal number (tables); the cut correlation costs a little.
    expect(k).toBeGreaterThan(1.95996);
    expect(k).toBeLessThan(1.961);
  });

  it('is never too small: random covariances by simulation', () => {
    const normal = normalNumbers(3);
    const size = 8;
    for (let round = 0; round < 12; round++) {
      const rank = 2 + (round % 6);
      const root = Array.from({ length: size }, () => Array.from({ length: rank }, () => normal()));
      const covariance = new Float64Array(size * size);
      for (let i = 0; i < size; i++) {
        for (let j = 0; j < size; j++) {
          covariance[i * size + j] = root[i].reduce((sum, value, r) => sum + value * root[j][r], 0);
        }
      }
      const ends = wallEnds(SQUARE);
      const deviations = Float64Array.from(ends, ({ corner, nx, ny }) => {
        const [x, y] = [root[2 * corner], root[2 * corner + 1]];
        return Math.sqrt(x.reduce((sum, value, r) => sum + (nx * value + ny * y[r]) ** 2, 0));
      });
      const k = simultaneousFactor(ends, deviations, covariance, size, 0.95);
      const runs = 4000;
      let inside = 0;
      for (let run = 0; run < runs; run++) {
        const draw = Array.from({ length: rank }, () => normal());
        const moved = root.map((row) => row.reduce((sum, value, r) => sum + value * draw[r], 0));
        const all = ends.every(({ corner, nx, ny }, e) => {
          const most = k * Math.max(deviations[e], deviations[e ^ 1]);
          return Math.abs(nx * moved[2 * corner] + ny * moved[2 * corner + 1]) <= most;
        });
        if (all) inside++;
      }
      expect(inside / runs).toBeGreaterThan(0.95 - 3 * Math.sqrt((0.95 * 0.05) / runs));
    }
  });

  it('the datum`s share is gone: shifts and turns of the whole room have no variance', () => {
    const normal = normalNumbers(9);
    const size = 8;
    const root = Array.from({ length: size }, () => Array.from({ length: size }, () => normal()));
    const covariance = Float64Array.from({ length: size * size }, (_, at) => {
      const [i, j] = [Math.floor(at / size), at % size];
      return root[i].reduce((sum, value, r) => sum + value * root[j][r], 0);
    });
    const inner = innerCovariance(SQUARE, covariance);
    const variance = (direction: readonly number[]): number =>
      direction.reduce(
        (sum, a, i) => sum + direction.reduce((row, b, j) => row + a * b * inner[i * size + j], 0),
        0,
      );
    expect(variance([1, 0, 1, 0, 1, 0, 1, 0])).toBeCloseTo(0, 9);
    expect(variance([0, 1, 0, 1, 0, 1, 0, 1])).toBeCloseTo(0, 9);
    const turn = Array.from(SQUARE, (_, k) => (k % 2 === 0 ? -(SQUARE[k + 1] - 2500) : SQUARE[k - 1] - 2000));
    expect(variance(turn.map((value) => value / 1000))).toBeCloseTo(0, 9);
    // What is no move of the whole room is left: one diagonal longer, the other shorter.
    expect(variance([-1, -1, 1, -1, 1, 1, -1, 1])).toBeGreaterThan(0.01);
  });
});
