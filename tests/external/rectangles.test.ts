import { describe, expect, it } from 'vitest';
import type { Ring } from '../../src/geometry/types.js';
import { findPlacement, placeTable } from '../../src/placement/index.js';

/**
 * Classical theorems on what fits where, put to the search for a place: the rectangle is frame and field at once, its walls the
 * container, at 1000 mm to the theorem's unit.
 */
const UNIT = 1000;

interface Answer {
  readonly fits: boolean;
  /** Whether it was proved that nothing fits. */
  readonly proved: boolean;
}

/** Does p x q, in units, go into the container (corners in units) beside what stands there? */
function ask(container: Ring, p: number, q: number, standing: readonly Ring[] = []): Answer {
  const scale = (ring: Ring): Ring => ring.map(([x, y]) => [x * UNIT, y * UNIT]);
  const size = { length: p * UNIT, width: q * UNIT };
  const result = findPlacement(
    { play: size, frame: size, outline: scale(container), tall: standing.map(scale), low: [] },
    { gap: 0.01, maxBoxes: 500_000, turns: 'any' },
  );
  return { fits: result.pose !== null, proved: !result.stopped && result.upperBound === 0 };
}

const rectangle = (a: number, b: number, x = 0, y = 0): Ring => [
  [x, y],
  [x + a, y],
  [x + a, y + b],
  [x, y + b],
];

const YES = { fits: true, proved: false };
const NO = { fits: false, proved: true };

/** The largest square, or rectangle twice as long as wide, by its width: halved down to `within` units. */
function largest(container: Ring, aspect: number, most: number, within: number): number {
  let low = 0;
  let high = most;
  while (high - low > within) {
    const width = (low + high) / 2;
    if (ask(container, aspect * width, width).fits) low = width;
    else high = width;
  }
  return (low + high) / 2;
}

describe('rectangle in rectangle', () => {
  /**
   * Carver 1957 (AMM 64) and Wetzel, "Rectangles in Rectangles", Math. Mag. 73(3), 2000 [paper and necessary conditions seen,
   * formula from memory, numbers derived]: for p > a, p x q goes into a x b iff q <= b and
   * b >= (2 p q a + (p^2 - q^2) sqrt(p^2 + q^2 - a^2)) / (p^2 + q^2).
   */
  const carver = (p: number, q: number, a: number): number =>
    (2 * p * q * a + (p * p - q * q) * Math.sqrt(p * p + q * q - a * a)) / (p * p + q * q);

  it('keeps 9 x 4 out of 8 x 6, though area, diagonal, perimeter and thickness all would do', () => {
    // It needs b >= 9.787594, more than a, while the theorem has a for the longer side: turned, it goes in from b = 9 on.
    expect(carver(9, 4, 8)).toBeCloseTo(9.787594, 6);
    expect(ask(rectangle(8, 6), 9, 4)).toEqual(NO);
    expect(ask(rectangle(8, 9 - 1e-3), 9, 4)).toEqual(NO);
    expect(ask(rectangle(8, 9 + 1e-3), 9, 4)).toEqual(YES);
  });

  it('keeps 10 x 10 out of 8 x 8, where the formula without q <= b would say yes', () => {
    expect(carver(10, 10, 8)).toBeCloseTo(8, 12);
    expect(ask(rectangle(8, 8), 10, 10)).toEqual(NO);
  });

  it.each([
    { p: 5, q: 1, a: 4, b: 4.457487 },
    { p: 13, q: 1, a: 12, b: 6.874325 },
    { p: 10, q: 1, a: 9, b: 6.165757 },
  ])('$p x $q goes into $a x b from b = $b on', ({ p, q, a, b }) => {
    expect(carver(p, q, a)).toBeCloseTo(b, 6);
    expect(ask(rectangle(a, b + 1e-3), p, q)).toEqual(YES);
    expect(ask(rectangle(a, b - 1e-3), p, q)).toEqual(NO);
  });

  it.each([
    { p: 9, a: 8, b: 6, q: 1.060374 },
    { p: 10, a: 8, b: 7, q: 0.636979 },
  ])('$p x q goes into $a x $b up to q = $q', ({ p, a, b, q }) => {
    expect(ask(rectangle(a, b), p, q - 1e-3)).toEqual(YES);
    expect(ask(rectangle(a, b), p, q + 1e-3)).toEqual(NO);
  });

  it('grants the sufficient shortcut: q <= b and p + q <= hypot(a, b)', () => {
    // Wetzel [seen].
    for (const [p, q, a, b] of [
      [9, 0.9, 8, 6],
      [11, 1.9, 12, 5],
      [6, 1, 5, 5],
    ]) {
      expect(p + q).toBeLessThanOrEqual(Math.hypot(a, b));
      expect(ask(rectangle(a, b), p, q)).toEqual(YES);
    }
  });
});

describe('squares and two-by-ones in triangles and regular polygons', () => {
  const regular = (n: number): Ring => {
    const r = 0.5 / Math.sin(Math.PI / n);
    return Array.from({ length: n }, (_, i) => [
      r * Math.cos((2 * Math.PI * i) / n),
      r * Math.sin((2 * Math.PI * i) / n),
    ]);
  };
  const right: Ring = [
    [0, 0],
    [4, 0],
    [0, 3],
  ];
  const WITHIN = 2e-5;

  it.each([
    // Classical [from memory], verified [derived].
    { name: 'square in the 3-4-5 triangle', container: right, aspect: 1, width: 12 / 7 },
    { name: '2:1 in the 3-4-5 triangle, on its hypotenuse', container: right, aspect: 2, width: 60 / 49 },
    {
      name: 'square in the equilateral triangle',
      container: regular(3),
      aspect: 1,
      width: 2 * Math.sqrt(3) - 3,
    },
    { name: '2:1 in the equilateral triangle', container: regular(3), aspect: 2, width: 0.316987 },
    { name: 'square in the hexagon', container: regular(6), aspect: 1, width: 3 - Math.sqrt(3) },
    { name: '2:1 in the hexagon', container: regular(6), aspect: 2, width: Math.sqrt(3) / 2 },
    { name: 'square in the octagon', container: regular(8), aspect: 1, width: 1.847759 },
    { name: '2:1 in the square, along its side', container: rectangle(1, 1), aspect: 2, width: 0.5 },
  ])('the largest $name', ({ container, aspect, width }) => {
    expect(Math.abs(largest(container, aspect, 3, WITHIN) - width)).toBeLessThan(WITHIN + 1e-6);
  });
});

describe('unit squares in a square', () => {
  /**
   * E. Friedman, "Packing unit squares in squares", EJC DS7 [seen]: five need a side of 2 + 1/sqrt 2 (Gobel 1979), ten need
   * 3 + 1/sqrt 2 (Stromquist 2003). With all but the middle one where the known layouts have them, the last finds a place in a
   * square larger by a thousandth and none in one smaller by a thousandth.
   */
  const five = (s: number): Ring[] => [
    rectangle(1, 1, 0, 0),
    rectangle(1, 1, s - 1, 0),
    rectangle(1, 1, s - 1, s - 1),
    rectangle(1, 1, 0, s - 1),
  ];
  /** The layout of five in the upper right, and five more along two sides. */
  const ten = (s: number): Ring[] => [
    ...five(s - 1).map((ring): Ring => ring.map(([x, y]) => [x + 1, y + 1])),
    ...[0, 1, 2].map((x) => rectangle(1, 1, x, 0)),
    ...[1, 2].map((y) => rectangle(1, 1, 0, y)),
  ];

  it.each([
    { n: 5, layout: five, side: 2 + Math.SQRT1_2 },
    { n: 10, layout: ten, side: 3 + Math.SQRT1_2 },
  ])('the last of $n finds a place from side $side on', ({ n, layout, side }) => {
    const more = side + 1e-3;
    const less = side - 1e-3;
    expect(layout(side)).toHaveLength(n - 1);
    expect(ask(rectangle(more, more), 1, 1, layout(more))).toEqual(YES);
    expect(ask(rectangle(less, less), 1, 1, layout(less))).toEqual(NO);
  });

  it('finds the turn of 45 degrees for the fifth', () => {
    const side = (2 + Math.SQRT1_2 + 1e-3) * UNIT;
    const size = { length: UNIT, width: UNIT };
    const standing = five(side / UNIT).map((ring): Ring => ring.map(([x, y]) => [x * UNIT, y * UNIT]));
    const place = placeTable(
      { play: size, frame: size, outline: rectangle(side, side), tall: standing, low: [] },
      { gap: 0.01, maxBoxes: 500_000, turns: 'any', enough: [] },
    );
    const turn = ((place.pose?.angle ?? 0) * 180) / Math.PI;
    expect(Math.abs((turn % 90) - 45)).toBeLessThan(0.2);
    expect(place.square).toBe(false);
  });
});
