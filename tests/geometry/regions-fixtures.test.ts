import { readFileSync } from 'node:fs';
import polygonClipping from 'polygon-clipping';
import { describe, expect, it } from 'vitest';
import { type Region, RegionError, regionArea, type Shape } from '../../src/geometry/region.js';
import { intersect, REGION_GRID, subtract, unite } from '../../src/geometry/regions.js';
import { boundingBox, perimeter } from '../../src/geometry/ring.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import * as clipper from '../helpers/clipper2.js';
import { countCells, type LatticeRectangle } from '../helpers/lattice.js';

/** Coordinates as the fixtures have them: polygons, rings, corners; the first corner again at the end, mostly. */
type Shapes = Point[][][];

interface BooleanCase {
  readonly name: string;
  readonly args: readonly Shapes[];
  readonly expect?: Readonly<Record<string, Shapes>>;
}

interface RectangleCase {
  readonly name: string;
  readonly operations: readonly Operation[];
  readonly throws: string | null;
  readonly rectangles: readonly LatticeRectangle[];
  readonly rings: readonly Ring[];
}

type Operation = 'union' | 'intersection' | 'difference' | 'reverse difference';

function load<T>(name: string): T {
  const file: T = JSON.parse(
    readFileSync(new URL(`../fixtures/booleans/${name}.json`, import.meta.url), 'utf8'),
  );
  return file;
}

function run(operation: Operation, shapes: readonly Shape[]): Region {
  const [first, ...rest] = shapes;
  if (operation === 'union') return unite(shapes);
  if (operation === 'intersection')
    return rest.reduce<Region>((left, shape) => intersect(left, shape), unite([first]));
  if (operation === 'difference') return subtract(first, rest);
  return subtract(unite(rest), [first]);
}

/** Every result of the files in our words; `all` stands for each operation, and the exclusive or is not ours to give. */
function expectations(c: BooleanCase): { operation: Operation; result: Shapes | null }[] {
  const three: Operation[] = ['union', 'intersection', 'difference'];
  if (c.expect === undefined || Object.keys(c.expect).length === 0) {
    return three.map((operation) => ({ operation, result: null }));
  }
  return Object.entries(c.expect).flatMap(([key, result]) => {
    if (key === 'all') return three.map((operation) => ({ operation, result }));
    if (key === 'diff') return [{ operation: 'difference', result }];
    if (key === 'diff_ba') return [{ operation: 'reverse difference', result }];
    for (const operation of three) if (operation === key) return [{ operation, result }];
    return [];
  });
}

/** The cases have no unit: each is moved to the origin and scaled by a power of two, to rooms of about 10 m. */
function toMillimetres(c: BooleanCase): (shapes: Shapes) => Region {
  const { minX, minY, maxX, maxY } = boundingBox(c.args.flat(3));
  const scale = 2 ** Math.round(Math.log2(10_000 / Math.max(maxX - minX, maxY - minY)));
  const ring = (corners: Point[]): Ring => {
    const moved = corners.map(([x, y]): Point => [(x - minX) * scale, (y - minY) * scale]);
    const [first] = moved;
    const last = moved.at(-1);
    const closed = moved.length > 1 && last !== undefined && first[0] === last[0] && first[1] === last[1];
    return closed ? moved.slice(0, -1) : moved;
  };
  return (shapes) => shapes.map(([outer, ...holes]) => ({ outer: ring(outer), holes: holes.map(ring) }));
}

function outlineLength(regions: readonly Region[]): number {
  const rings = regions.flat().flatMap(({ outer, holes }) => [outer, ...holes]);
  return rings.reduce((sum, ring) => sum + perimeter(ring), 0);
}

/** Input that is no region by our rules. It is refused, or else the result is that of the other projects, who repair it. */
const INVALID: Readonly<Record<string, string>> = {
  'broken-issue-75': 'both rings cross themselves',
  'clean-poly-with-interior-ring-overlapping-exterior': 'a hole reaches out of its outline',
  'clean-poly-with-interior-ring-splitting-exterior': 'a hole reaches out of its outline',
  'clean-poly-with-interior-ring-touching-exterior': 'a hole lies outside its outline',
  'clean-poly-with-interior-rings-overlapping': 'two holes overlap',
  'coincident-with-invalid-segments': 'two holes overlap, another lies across its outline',
  'issue-36': 'the first ring crosses itself',
  'issue-68-1': 'the second ring crosses itself',
  'issue-78': 'the first ring crosses itself',
  'non-zero-rule-not-even-odd': 'the ring crosses itself',
  'right-sweep-events-change-ordering': 'the second ring crosses itself',
  'rings-with-no-area': 'rings of one and two corners',
  daef_cross_selfintersecting: 'a ring crosses itself, and holes lie outside their outlines',
  daef_polygonwithholes_holed: 'one hole lies in another',
  hourglasses: 'rings that cross themselves, without area in sum',
  issue96: 'a hole that is not in its outline',
};

/** Pieces of one shape that overlap are united here; this case means what two of them share to be empty. */
const EVEN_ODD = new Set(['issue71']);

describe.each(['polygon-clipping', 'martinez-rust'])('the boolean cases of %s', (file) => {
  const { cases } = load<{ cases: BooleanCase[] }>(file);

  it.each(cases.map((c) => [c.name, c] as const))('%s', (name, c) => {
    const convert = toMillimetres(c);
    const args = c.args.map(convert);
    const bound = 4 * REGION_GRID * outlineLength(args);
    for (const { operation, result } of expectations(c)) {
      const region = attempt(() => run(operation, args));
      if (region === null) {
        expect(INVALID).toHaveProperty(name);
        continue;
      }
      const area = regionArea(region);
      const [first, ...rest] = args.map(clipper.pathsOf);
      const byClipper =
        operation === 'union'
          ? clipper.areaOf(clipper.joined([first, ...rest]))
          : operation === 'intersection'
            ? clipper.areaOf(rest.reduce(clipper.intersectionOf, first))
            : operation === 'difference'
              ? clipper.areaOf(clipper.differenceOf(first, clipper.joined(rest)))
              : clipper.areaOf(clipper.differenceOf(clipper.joined(rest), first));
      expect(Math.abs(area - byClipper)).toBeLessThanOrEqual(bound);
      if (result !== null && !EVEN_ODD.has(name)) {
        expect(Math.abs(area - regionArea(convert(result)))).toBeLessThanOrEqual(bound);
      }
    }
  });

  it.each(cases.filter((c) => c.args.length === 2).map((c) => [c.name, c] as const))(
    'area identity: %s',
    (name, c) => {
      const [a, b] = c.args.map(toMillimetres(c));
      const regions = attempt(() => [unite([a, b]), intersect(a, b), unite([a]), unite([b])]);
      if (regions === null) {
        expect(INVALID).toHaveProperty(name);
        return;
      }
      const [either, both, left, right] = regions.map(regionArea);
      expect(Math.abs(either + both - left - right)).toBeLessThanOrEqual(
        4 * REGION_GRID * outlineLength([a, b]),
      );
    },
  );
});

/**
 * Failures of the kinds reported to its tracker: #139 and #91 (`Unable to complete output ring`), #115 (`Unable to find
 * segment`); #91 itself is among its own cases above. These inputs are generated, for want of the reports' own.
 */
describe('what polygon-clipping cannot do with raw doubles', () => {
  const { cases } = load<{ cases: RectangleCase[] }>('rotated-rectangles');
  const cover = (within: readonly boolean[]) => within.includes(true);
  const rest = ([first, ...others]: readonly boolean[]) => first && !others.includes(true);
  const all = cases.flatMap((c) => c.operations.map((operation) => [c.name, operation, c] as const));

  it.each(all)(
    '%s: the area of the %s is that of the counted cells',
    (_, operation, { rings, rectangles }) => {
      const truth = countCells(rectangles, operation === 'union' ? cover : rest);
      const bound = 4 * REGION_GRID * rings.reduce((sum, ring) => sum + perimeter(ring), 0);
      expect(Math.abs(regionArea(run(operation, rings)) - truth)).toBeLessThanOrEqual(bound);
    },
  );

  // The reason why regions.ts is more than one call: it falls away with these failures.
  it.each(all.filter(([, , c]) => c.throws !== null))('%s: the raw %s still fails', (_, operation, c) => {
    const raw = () => rawArea(operation, c.rings);
    if (c.throws !== null && c.throws !== '') {
      expect(raw).toThrow(c.throws);
    } else {
      const truth = countCells(c.rectangles, operation === 'union' ? cover : rest);
      expect(Math.abs(raw() / truth - 1)).toBeGreaterThan(0.01);
    }
  });

  it('returns from the union that never returns', () => {
    const { area, rings } = load<{ area: number; rings: Point[][] }>('never-returns');
    const inMillimetres = rings.map((ring) => ring.map(([x, y]): Point => [x * 1000, y * 1000]));
    // Seven digits after the point are given.
    expect(regionArea(unite(inMillimetres)) / 1e6).toBeCloseTo(area, 6);
  });
});

/** The result, or null when it was refused. */
function attempt<T>(run: () => T): T | null {
  try {
    return run();
  } catch (error) {
    expect(error).toBeInstanceOf(RegionError);
    return null;
  }
}

/** One call of the bare dependency. */
function rawArea(operation: Operation, rings: readonly Ring[]): number {
  const [first, ...rest] = rings.map((ring) => [ring.map(([x, y]): [number, number] => [x, y])]);
  const result =
    operation === 'union'
      ? polygonClipping.union(first, ...rest)
      : polygonClipping.difference(first, ...rest);
  return regionArea(result.map(([outer, ...holes]) => ({ outer, holes })));
}
