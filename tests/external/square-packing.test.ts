import { describe, expect, it } from 'vitest';
import { arrange } from '../../src/arrangement/arrange.js';
import { fitQuestion } from '../../src/check-fit-input.js';
import type { FitInput } from '../../src/fit-input.js';
import { rectangleRing } from '../../src/geometry/ring.js';
import { area, difference, intersection, polygon } from '../helpers/jsts.js';

/**
 * Unit squares in a square, and rectangles in rectangles: how many pieces go in at all, known from outside. Pieces of 1.2 m that need no floor
 * round them, in a room without a table and without doors, so that nothing but the packing counts.
 *
 * Sources: E. Friedman, "Packing Unit Squares in Squares", Electronic Journal of Combinatorics, Dynamic Survey DS7 (seen): s(2) = s(3) = s(4) = 2
 * and s(5) = 2 + 1/sqrt 2 (Gobel 1979), s(6) = 3 (Kearney and Shiu 2002), s(7) = s(8) = 3 (Friedman 1999), s(9) = 3 (n a square) and s(10) = 3 + 1/sqrt 2
 * (Stromquist 2003). At most 12 pieces can be asked for.
 */
const HALF_DIAGONAL = Math.SQRT1_2;
const TIGHT: readonly (readonly [count: number, side: number])[] = [
  [1, 1],
  [2, 2],
  [3, 2],
  [4, 2],
  [5, 2 + HALF_DIAGONAL],
  [6, 3],
  [7, 3],
  [8, 3],
  [9, 3],
  [10, 3 + HALF_DIAGONAL],
];

/** Side of a unit square, mm: so that the least of the rooms is still a room. */
const UNIT = 1200;
/** Half a millimetre more than is needed: the room is given in plain numbers, and poses come with rounding. */
const EASE = 0.5;

/** Overlaps up to 0.01 mm deep are touches: mm2 along one side. */
const SLIVER = UNIT * 0.02;

interface Box {
  readonly length: number;
  readonly width: number;
}

/** Where these pieces go in a rectangular room: their footprints, and how many have a place that keeps all rules. */
function pack(room: Box, pieces: readonly Box[]) {
  const outline = [
    [0, 0],
    [room.length, 0],
    [room.length, room.width],
    [0, room.width],
  ] as const;
  const input: FitInput = {
    room: { outline },
    table: 'pool-7ft-bar',
    furnishings: pieces.map((footprint, i) => ({
      name: `box ${i + 1}`,
      footprint,
      height: 500,
      turns: 'any',
      zones: [],
    })),
    arrangement: { way: 300 },
  };
  const { scene, stroke, cues, arrangement, search } = fitQuestion(input);
  if (arrangement === null) throw new Error('There are pieces.');
  const { poses, value } = arrange({
    scene,
    table: null,
    stroke,
    cue: cues[0],
    pose: null,
    arrangement,
    search,
  });
  return { poses, placed: Math.round(value.placed * pieces.length), outline };
}

const squares = (count: number): readonly Box[] =>
  Array.from({ length: count }, () => ({ length: UNIT, width: UNIT }));

describe('unit squares in a square (Friedman, EJC DS7)', () => {
  it.each(TIGHT)('places %i of them at the least side, %f', (count, side) => {
    const room = { length: side * UNIT + EASE, width: side * UNIT + EASE };
    const { poses, placed, outline } = pack(room, squares(count));
    expect(placed).toBe(count);
    // An independent look at the layout: areas by JTS.
    const shapes = poses.flatMap((pose) =>
      pose === null ? [] : [polygon(rectangleRing([pose.x, pose.y], UNIT, UNIT, pose.angle))],
    );
    expect(shapes).toHaveLength(count);
    const walls = polygon(outline);
    for (const [i, shape] of shapes.entries()) {
      expect(area(difference(shape, walls))).toBeLessThan(SLIVER);
      for (const other of shapes.slice(i + 1)) expect(area(intersection(shape, other))).toBeLessThan(SLIVER);
    }
  });

  it.each(TIGHT)('never places %i of them a little below that', (count, side) => {
    for (const less of [1, 8]) {
      const { placed } = pack({ length: side * UNIT - less, width: side * UNIT - less }, squares(count));
      expect(placed).toBeLessThan(count);
    }
  });
});

/**
 * A p x q rectangle goes into an a x b one (p >= q, a >= b) if and only if p <= a and q <= b, or p > a and
 * b >= (2 p q a + (p^2 - q^2) sqrt(p^2 + q^2 - a^2)) / (p^2 + q^2): W. B. Carver, American Mathematical Monthly 64 (1957); J. E. Wetzel,
 * Mathematics Magazine 73 (2000). The search knows turns in steps, so it is asked for square fits only, and never for more than there is.
 */
describe('a rectangle in a rectangle (Carver 1957, Wetzel 2000)', () => {
  const goesIn = ({ length: p, width: q }: Box, { length: a, width: b }: Box): boolean => {
    if (p <= a && q <= b) return true;
    if (p <= a) return false;
    return b >= (2 * p * q * a + (p * p - q * q) * Math.sqrt(p * p + q * q - a * a)) / (p * p + q * q);
  };
  const room = { length: 5000, width: 4000 };

  it.each([
    { length: 5000, width: 4000 },
    { length: 4999, width: 1200 },
    { length: 4000, width: 3999 },
    { length: 800, width: 700 },
  ])('places $length x $width, which goes in square', (piece) => {
    expect(goesIn(piece, room)).toBe(true);
    expect(pack(room, [piece]).placed).toBe(1);
  });

  it.each([
    { length: 5001, width: 3999 },
    { length: 5600, width: 1200 },
    { length: 6000, width: 500 },
    { length: 4100, width: 4050 },
    { length: 6410, width: 60 },
  ])('never places $length x $width, which does not go in at any turn', (piece) => {
    expect(goesIn(piece, room)).toBe(false);
    expect(pack(room, [piece]).placed).toBe(0);
  });
});
