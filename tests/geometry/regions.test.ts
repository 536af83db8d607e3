import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Region, RegionError, type RegionErrorCode, regionArea } from '../../src/geometry/region.js';
import { intersect, REGION_GRID, split, subtract, unite } from '../../src/geometry/regions.js';
import {
  boundingBox,
  circleRing,
  mirrored,
  perimeter,
  rectangleRing,
  reversed,
  rotated,
  signedArea,
  translated,
} from '../../src/geometry/ring.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import * as clipper from '../helpers/clipper2.js';
import * as jts from '../helpers/jsts.js';
import { countCells, latticeRing, rectanglesArbitrary, turnedRings } from '../helpers/lattice.js';

const SEED = 20251125;

const square: Ring = latticeRing([0, 0, 1000, 1000]);
const shifted: Ring = latticeRing([500, 500, 1000, 1000]);

/** Most that the grid may change an area by: a strip of one step along every edge for the input and one for each round. */
function gridBound(rings: readonly Ring[]): number {
  const rounds = Math.max(1, Math.ceil(Math.log(rings.length) / Math.log(8)));
  return (rounds + 1) * REGION_GRID * rings.reduce((sum, ring) => sum + perimeter(ring), 0);
}

function codeOf(run: () => unknown): RegionErrorCode | null {
  try {
    run();
  } catch (error) {
    if (error instanceof RegionError) return error.code;
    throw error;
  }
  return null;
}

const angle = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });

/** A star-shaped ring of 3 to 12 corners, anticlockwise, not convex as a rule. */
const starRing: fc.Arbitrary<Ring> = fc
  .tuple(
    fc.array(fc.double({ min: 200, max: 2000, noNaN: true }), { minLength: 3, maxLength: 12 }),
    fc.double({ min: -1500, max: 1500, noNaN: true }),
    fc.double({ min: -1500, max: 1500, noNaN: true }),
    angle,
  )
  .map(([radii, x, y, turn]) =>
    radii.map((r, i): Point => {
      const a = turn + (2 * Math.PI * i) / radii.length;
      return [x + r * Math.cos(a), y + r * Math.sin(a)];
    }),
  );

describe('regions by hand', () => {
  it('unites two squares to one piece', () => {
    const region = unite([square, shifted]);
    expect(region).toHaveLength(1);
    expect(regionArea(region)).toBe(1_750_000);
  });

  it('intersects and subtracts them', () => {
    expect(regionArea(intersect(square, shifted))).toBe(250_000);
    expect(regionArea(subtract(square, [shifted]))).toBe(750_000);
    expect(boundingBox(intersect(square, shifted)[0].outer)).toEqual({
      minX: 500,
      minY: 500,
      maxX: 1000,
      maxY: 1000,
    });
  });

  it('cuts a hole, clockwise, in an outline that is anticlockwise', () => {
    const [piece, ...others] = subtract(square, [latticeRing([250, 250, 100, 100])]);
    expect(others).toEqual([]);
    expect(piece.holes).toHaveLength(1);
    expect(signedArea(piece.outer)).toBe(1_000_000);
    expect(signedArea(piece.holes[0])).toBe(-10_000);
  });

  it('leaves no piece where shapes only touch, and melts shared edges', () => {
    const beside = latticeRing([1000, 0, 500, 1000]);
    expect(intersect(square, beside)).toEqual([]);
    expect(unite([square, beside])).toHaveLength(1);
    expect(unite([square, beside])[0].outer).toHaveLength(4);
    expect(regionArea(unite([square, latticeRing([1000, 1000, 500, 500])]))).toBe(1_250_000);
  });

  it('takes regions where it takes rings, holes and all', () => {
    const framed = subtract(square, [latticeRing([250, 250, 500, 500])]);
    expect(regionArea(unite([framed, latticeRing([300, 300, 100, 100])]))).toBe(760_000);
    expect(regionArea(intersect(framed, latticeRing([0, 0, 500, 500])))).toBe(187_500);
    expect(regionArea(subtract(shifted, [framed]))).toBe(1_000_000 - 187_500);
  });

  it('knows the empty region', () => {
    expect(unite([])).toEqual([]);
    expect(unite([[], []])).toEqual([]);
    expect(intersect(square, [])).toEqual([]);
    expect(subtract([], [square])).toEqual([]);
    expect(subtract(square, [])).toEqual(unite([square]));
    expect(regionArea([])).toBe(0);
  });

  it('splits into parts that it also gives one by one', () => {
    const parts = split(square, [shifted]);
    expect(parts.inside).toEqual(intersect(square, shifted));
    expect(parts.outside).toEqual(subtract(square, [shifted]));
  });

  it('puts corners on the grid, far from the origin too', () => {
    const far = translated(rotated(square, 0.3), 4_000_000.4, -7_000_000.7);
    for (const { outer } of unite([far])) {
      for (const [x, y] of outer) {
        expect(Number.isInteger(x / REGION_GRID)).toBe(true);
        expect(Number.isInteger(y / REGION_GRID)).toBe(true);
      }
    }
  });

  it('gives no negative zero', () => {
    const around = rectangleRing([-0.0002, -0.0002], 1000, 1000);
    const region = subtract(around, [rectangleRing([250, 250], 500.0004, 500.0004)]);
    const zeros = region.flatMap(({ outer }) => outer.flat()).filter((value) => value === 0);
    expect(zeros.length).toBeGreaterThan(0);
    expect(zeros.every((value) => Object.is(value, 0))).toBe(true);
  });

  it('does not change its input', () => {
    const rings = [rotated(square, 0.3), rotated(shifted, 0.3)];
    const before = structuredClone(rings);
    unite(rings);
    split(rings[0], [rings[1]]);
    expect(rings).toEqual(before);
  });

  it('drops what is thinner than the grid tells apart, and no more', () => {
    expect(unite([latticeRing([0, 0, 1000, 0.0004])])).toEqual([]);
    expect(subtract(square, [latticeRing([0, 0, 1000, 1000 - REGION_GRID])])).toEqual([]);
    expect(subtract(square, [latticeRing([0, 0, 1000, 1000 - 3 * REGION_GRID])])).toHaveLength(1);
    const speck: Ring = [
      [0, 0],
      [0.0001, 0],
      [0, 0.0001],
    ];
    expect(unite([speck, square])).toEqual(unite([square]));
  });
});

describe('regions refuse', () => {
  const withCorner = (corner: Point): Ring => [[0, 0], [1000, 0], corner];

  it('what is not finite, everywhere', () => {
    for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
      for (const ring of [withCorner([bad, 1]), withCorner([1, bad])]) {
        expect(codeOf(() => unite([square, ring]))).toBe('not-finite');
        expect(codeOf(() => intersect(ring, square))).toBe('not-finite');
        expect(codeOf(() => subtract(square, [ring]))).toBe('not-finite');
        expect(codeOf(() => unite([[{ outer: square, holes: [ring] }]]))).toBe('not-finite');
      }
    }
  });

  it('coordinates beyond 10 km, rings of one or two corners, and too many corners', () => {
    expect(codeOf(() => unite([withCorner([0, 10_000_001])]))).toBe('too-far');
    expect(codeOf(() => unite([withCorner([0, 10_000_000])]))).toBe(null);
    expect(codeOf(() => unite([[[0, 0]]]))).toBe('too-few-corners');
    expect(
      codeOf(() =>
        unite([
          [
            [0, 0],
            [1, 0],
          ],
        ]),
      ),
    ).toBe('too-few-corners');
    const round = Array.from({ length: 10_001 }, (_, i): Point => {
      const a = (2 * Math.PI * i) / 10_001;
      return [1e6 * Math.cos(a), 1e6 * Math.sin(a)];
    });
    expect(codeOf(() => unite([round]))).toBe('too-many-corners');
  });

  it('rings that cross themselves and holes out of place, whose areas do not add up', () => {
    const bowTie: Ring = [
      [0, 0],
      [1000, 1000],
      [1000, 0],
      [0, 1000],
    ];
    const lopsided: Ring = [
      [0, 0],
      [1000, 1000],
      [1000, 0],
      [0, 300],
    ];
    const twice: Ring = [...square, ...square];
    for (const ring of [bowTie, lopsided, twice]) {
      expect(codeOf(() => unite([ring]))).toBe('unresolved');
      expect(codeOf(() => subtract(ring, [translated(square, 5000, 0)]))).toBe('unresolved');
    }
    const hole = latticeRing([100, 100, 200, 200]);
    expect(codeOf(() => unite([[{ outer: square, holes: [hole, translated(hole, 100, 0)] }]]))).toBe(
      'unresolved',
    );
    expect(codeOf(() => unite([[{ outer: square, holes: [translated(hole, 2000, 0)] }]]))).toBe('unresolved');
  });
});

describe('areas by counting cells of a lattice, at every angle', () => {
  const options = { seed: SEED, numRuns: 100 };

  it('of unions', () => {
    fc.assert(
      fc.property(rectanglesArbitrary({ min: 1, max: 12 }), angle, (rectangles, turn) => {
        const rings = turnedRings(rectangles, turn);
        const truth = countCells(rectangles, (within) => within.includes(true));
        expect(Math.abs(regionArea(unite(rings)) - truth)).toBeLessThanOrEqual(gridBound(rings));
      }),
      options,
    );
  });

  it('of intersections and differences', () => {
    fc.assert(
      fc.property(rectanglesArbitrary({ min: 2, max: 6 }), angle, (rectangles, turn) => {
        const rings = turnedRings(rectangles, turn);
        const [first, ...rest] = rings;
        const bound = 2 * gridBound(rings);
        const inside = countCells(rectangles, ([a, ...others]) => a && others.includes(true));
        const outside = countCells(rectangles, ([a, ...others]) => a && !others.includes(true));
        expect(Math.abs(regionArea(intersect(first, unite(rest))) - inside)).toBeLessThanOrEqual(bound);
        expect(Math.abs(regionArea(subtract(first, rest)) - outside)).toBeLessThanOrEqual(bound);
      }),
      options,
    );
  });
});

describe('laws of areas', () => {
  const options = { seed: SEED, numRuns: 100 };

  it('area(A or B) + area(A and B) = area(A) + area(B)', () => {
    fc.assert(
      fc.property(starRing, starRing, (a, b) => {
        const sum = regionArea(unite([a, b])) + regionArea(intersect(a, b));
        expect(Math.abs(sum - signedArea(a) - signedArea(b))).toBeLessThanOrEqual(2 * gridBound([a, b]));
      }),
      options,
    );
  });

  it('do not depend on order, direction, place, turn or mirror', () => {
    fc.assert(
      fc.property(fc.array(starRing, { minLength: 2, maxLength: 10 }), angle, (rings, turn) => {
        const area = regionArea(unite(rings));
        const bound = 2 * gridBound(rings);
        const same = (others: readonly Ring[]) =>
          expect(Math.abs(regionArea(unite(others)) - area)).toBeLessThanOrEqual(bound);
        same([...rings].reverse());
        same(rings.map(reversed));
        same(rings.map((ring) => translated(ring, 123_456.7, -76_543.2)));
        same(rings.map((ring) => rotated(ring, turn)));
        same(rings.map(mirrored));
      }),
      options,
    );
  });

  it('are steady: a result fed back in comes out as it went in', () => {
    fc.assert(
      fc.property(fc.array(starRing, { minLength: 1, maxLength: 6 }), (rings) => {
        const region = unite(rings);
        const again = unite([region]);
        expect(Math.abs(regionArea(again) - regionArea(region))).toBeLessThanOrEqual(gridBound(rings));
        expect(regionArea(subtract(region, [region]))).toBe(0);
      }),
      options,
    );
  });
});

describe('regions against two other libraries', () => {
  const options = { seed: SEED, numRuns: 100 };
  /** Clipper's whole numbers are 1e-5 mm apart. */
  const CLIPPER_STEP = 1e-5;

  it('clipper2: unions, intersections and differences of stars', () => {
    fc.assert(
      fc.property(fc.array(starRing, { minLength: 2, maxLength: 9 }), ([first, ...rest]) => {
        const rings = [first, ...rest];
        const bound = 2 * gridBound(rings) + CLIPPER_STEP * rings.reduce((sum, r) => sum + perimeter(r), 0);
        const near = (region: Region, truth: number) =>
          expect(Math.abs(regionArea(region) - truth)).toBeLessThanOrEqual(bound);
        const [a, b] = [clipper.unionOf([first]), clipper.unionOf(rest)];
        near(unite(rings), clipper.areaOf(clipper.unionOf(rings)));
        near(intersect(first, unite(rest)), clipper.areaOf(clipper.intersectionOf(a, b)));
        near(subtract(first, rest), clipper.areaOf(clipper.differenceOf(a, b)));
      }),
      options,
    );
  });

  it('JTS: unions and differences of discs', () => {
    const disc = fc
      .tuple(
        fc.integer({ min: -3000, max: 3000 }),
        fc.integer({ min: -3000, max: 3000 }),
        fc.integer({ min: 100, max: 3000 }),
      )
      .map(([x, y, diameter]) => circleRing([x, y], diameter));
    fc.assert(
      fc.property(disc, disc, (a, b) => {
        const bound = 2 * gridBound([a, b]);
        const [ja, jb] = [jts.polygon(a), jts.polygon(b)];
        expect(Math.abs(regionArea(unite([a, b])) - jts.area(jts.union([ja, jb])))).toBeLessThanOrEqual(
          bound,
        );
        expect(Math.abs(regionArea(subtract(a, [b])) - jts.area(jts.difference(ja, jb)))).toBeLessThanOrEqual(
          bound,
        );
      }),
      options,
    );
  });
});
