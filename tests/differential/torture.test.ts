import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { convexParts } from '../../src/geometry/convex-parts.js';
import { orientation, pointInRing } from '../../src/geometry/predicates.js';
import { type Region, RegionError, regionArea, type Shape } from '../../src/geometry/region.js';
import { intersect, REGION_GRID, subtract, unite } from '../../src/geometry/regions.js';
import { boundingBox, perimeter, reversed, ringDirection, signedArea } from '../../src/geometry/ring.js';
import { isSimple } from '../../src/geometry/simple-ring.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import { checkRoom, InputError } from '../../src/index.js';
import * as clipper from '../helpers/clipper2.js';

/**
 * Polygons that broke other libraries (sources and licences in tests/fixtures/torture/NOTICE.md): what is valid is told by others, areas by
 * Clipper2 and by the results that the sources give. Cases of boolean operations from polygon-clipping's and martinez' own trackers are in
 * tests/geometry/regions-fixtures.test.ts, awkward outlines of rooms in tests/room/open-rooms.test.ts.
 */
type Polygons = readonly (readonly Ring[])[];
type Operation = 'union' | 'intersection' | 'difference';

interface Named {
  readonly name: string;
}

function load<T>(name: string): T {
  const file: T = JSON.parse(
    readFileSync(new URL(`../fixtures/torture/${name}.json`, import.meta.url), 'utf8'),
  );
  return file;
}

const jts = load<{
  valid: (Named & { polygons: Polygons; valid: boolean })[];
  overlay: (Named & {
    operation: Operation;
    a: Polygons;
    b: Polygons;
    expect: Polygons | null;
    fixed: number | null;
  })[];
  points: (Named & {
    op: 'intersects' | 'contains' | 'covers';
    polygons: Polygons;
    point: Point;
    expect: boolean;
  })[];
}>('jts');
const earcut = load<{ cases: (Named & { geos: string; rings: Ring[] })[] }>('earcut');
const clipper2 = load<{
  cases: (Named & { subjects: Ring[]; clips: Ring[]; operation: Operation; area: number })[];
}>('clipper2');

/** Without the corner that closes it, and without corners that repeat the one before. */
function tidy(ring: Ring): Ring {
  return ring.filter(([x, y], i) => {
    const [px, py] = ring[(i + ring.length - 1) % ring.length];
    return x !== px || y !== py;
  });
}

/** The numbers have no unit: moved to the origin and scaled by a power of two, to rooms of about 10 m. */
function toRooms(all: readonly Ring[]): (ring: Ring) => Ring {
  const { minX, minY, maxX, maxY } = boundingBox(all.flat());
  const scale = 2 ** Math.round(Math.log2(10_000 / Math.max(maxX - minX, maxY - minY)));
  return (ring) => tidy(ring).map(([x, y]): Point => [(x - minX) * scale, (y - minY) * scale]);
}

function shapeOf(polygons: Polygons, convert: (ring: Ring) => Ring): Region {
  return polygons
    .filter(([outer]) => outer !== undefined)
    .map(([outer, ...holes]) => ({
      outer: convert(outer),
      // Well-known text may have empty ones.
      holes: holes.filter((hole) => hole.length > 0).map(convert),
    }));
}

function ringsOf(region: Region): readonly Ring[] {
  return region.flatMap(({ outer, holes }) => [outer, ...holes]);
}

function run(operation: Operation, a: Shape, b: Shape): Region {
  if (operation === 'union') return unite([a, b]);
  return operation === 'intersection' ? intersect(a, b) : subtract(a, [b]);
}

function attempt<T>(work: () => T): T | null {
  try {
    return work();
  } catch (error) {
    expect(error).toBeInstanceOf(RegionError);
    return null;
  }
}

describe('polygons of JTS', () => {
  const single = jts.valid.filter(({ polygons }) => polygons.length === 1 && polygons[0].length === 1);

  it('are told simple just where they are valid', () => {
    expect(single.length).toBeGreaterThan(80);
    for (const { name, polygons, valid } of single)
      expect([name, isSimple(tidy(polygons[0][0]))]).toEqual([name, valid]);
  });

  it('keep their area when they are valid, and are refused or cleaned when not', () => {
    let kept = 0;
    for (const { name, polygons, valid } of jts.valid) {
      const shape = shapeOf(polygons, toRooms(polygons.flat()));
      const united = attempt(() => unite([shape]));
      if (!valid) continue;
      kept++;
      const bound = 4 * REGION_GRID * ringsOf(shape).reduce((sum, ring) => sum + perimeter(ring), 0);
      expect(Math.abs(regionArea(united ?? []) - regionArea(shape)), name).toBeLessThanOrEqual(bound);
    }
    expect(kept).toBeGreaterThan(90);
  });

  it.each(jts.points.map((c) => [`${c.name} ${c.op}`, c] as const))('hold the point: %s', (_, c) => {
    const where = (rings: readonly Ring[]): number => {
      const [outer, ...holes] = rings.map((ring) => pointInRing(tidy(ring), c.point[0], c.point[1]));
      if (outer <= 0) return outer;
      return Math.min(outer, ...holes.map((inHole) => -inHole));
    };
    const best = Math.max(...c.polygons.map(where));
    // What they expect is true of decimals: as doubles, the point lies inside by 4e-17, and that is what is asked here.
    const ofDecimals = c.name === 'TestRobustRelateFloat 0';
    expect(c.op === 'contains' ? best > 0 : best >= 0).toBe(ofDecimals ? !c.expect : c.expect);
  });

  it.each(jts.overlay.map((c) => [`${c.name} ${c.operation}`, c] as const))('combine: %s', (_, c) => {
    const rings = [...c.a.flat(), ...c.b.flat()];
    if (rings.length === 0) return;
    const convert = toRooms(rings);
    const [a, b] = [shapeOf(c.a, convert), shapeOf(c.b, convert)];
    const region = attempt(() => run(c.operation, a, b));
    const good = [...ringsOf(a), ...ringsOf(b)].every((ring) => ring.length >= 3 && isSimple(ring));
    if (region === null) {
      // Refused only where a ring is no ring, or crosses or touches itself.
      expect(good).toBe(false);
      return;
    }
    if (!good) return;
    const [one, other] = [clipper.pathsOf(a), clipper.pathsOf(b)];
    const byClipper =
      c.operation === 'union'
        ? clipper.areaOf(clipper.joined([one, other]))
        : c.operation === 'intersection'
          ? clipper.areaOf(clipper.intersectionOf(one, other))
          : clipper.areaOf(clipper.differenceOf(one, other));
    const bound =
      4 * REGION_GRID * [...ringsOf(a), ...ringsOf(b)].reduce((sum, ring) => sum + perimeter(ring), 0);
    expect(Math.abs(regionArea(region) - byClipper)).toBeLessThanOrEqual(bound);
    // A result on a fixed grid of theirs is another one, and those of the failures are what came out, not what should.
    if (c.expect !== null && c.fixed === null && !c.name.startsWith('TestOverlayFailure')) {
      expect(Math.abs(regionArea(region) - regionArea(shapeOf(c.expect, convert)))).toBeLessThanOrEqual(
        bound,
      );
    }
  });
});

describe('polygons of earcut', () => {
  it.each(earcut.cases.map((c) => [c.name, c] as const))(
    '%s: simple where it is valid, split into convex parts, read as a room',
    (_, c) => {
      const convert = toRooms(c.rings);
      const rings = c.rings.map(convert);
      const valid = c.geos === 'Valid Geometry';
      if (valid) for (const ring of rings) expect(isSimple(ring)).toBe(true);
      if (c.geos.startsWith('Ring Self-intersection')) expect(rings.every(isSimple)).toBe(false);
      for (const ring of rings) {
        if (!isSimple(ring)) continue;
        const anticlockwise = ringDirection(ring) > 0 ? ring : reversed(ring);
        const parts = convexParts(anticlockwise);
        const area = parts.reduce((sum, part) => sum + signedArea(part), 0);
        expect(Math.abs(area - signedArea(anticlockwise))).toBeLessThanOrEqual(
          1e-6 * signedArea(anticlockwise),
        );
        for (const part of parts)
          for (const [i, corner] of part.entries())
            expect(
              orientation(corner, part[(i + 1) % part.length], part[(i + 2) % part.length]),
            ).toBeGreaterThanOrEqual(0);
      }
      const [outline] = rings;
      try {
        const room = checkRoom({ outline });
        // Corners within a millimetre of a straight wall may be left out.
        expect(Math.abs(signedArea(room.outline) - Math.abs(signedArea(outline)))).toBeLessThanOrEqual(
          perimeter(outline),
        );
      } catch (error) {
        expect(error).toBeInstanceOf(InputError);
      }
      attempt(() =>
        unite([{ outer: outline, holes: rings.slice(1) }].map(({ outer, holes }) => [{ outer, holes }])),
      );
    },
  );
});

describe('polygons of Clipper2', () => {
  it.each(clipper2.cases.map((c) => [`${c.name} ${c.operation}`, c] as const))(
    'have the area that they should have: %s',
    (_, c) => {
      const convert = toRooms([...c.subjects, ...c.clips]);
      const [subjects, clips] = [c.subjects.map(convert), c.clips.map(convert)];
      const rings = [...subjects, ...clips];
      const region = attempt(() => {
        const subject = unite(subjects);
        return clips.length === 0 ? subject : run(c.operation, subject, unite(clips));
      });
      const simple = rings.every((ring) => ring.length >= 3 && isSimple(ring));
      if (region === null) {
        expect(simple).toBe(false);
        return;
      }
      if (!simple || clips.length === 0) return;
      const { minX, minY, maxX, maxY } = boundingBox([...c.subjects, ...c.clips].flat());
      const scale = 2 ** Math.round(Math.log2(10_000 / Math.max(maxX - minX, maxY - minY)));
      const bound = 4 * REGION_GRID * rings.reduce((sum, ring) => sum + perimeter(ring), 0);
      // They round every corner of a result to whole numbers: half a unit along its outline.
      const theirs = 0.75 * scale * rings.reduce((sum, ring) => sum + perimeter(ring), 0);
      expect(Math.abs(regionArea(region) - c.area * scale * scale)).toBeLessThanOrEqual(bound + theirs);
    },
  );
});
