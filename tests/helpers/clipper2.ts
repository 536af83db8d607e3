/**
 * A second opinion on areas: Clipper2 in its TypeScript port, an algorithm on whole numbers. Coordinates are rounded to
 * 1e-5 mm on the way in, so areas agree to perimeter * 1e-5 mm at best. Development only.
 */
import {
  areaPathsD,
  differenceD,
  EndType,
  FillRule,
  inflatePathsD,
  intersectD,
  JoinType,
  type PathsD,
  unionD,
} from 'clipper2-ts';
import type { Region } from '../../src/geometry/region.js';
import type { Ring } from '../../src/geometry/types.js';

const DECIMALS = 5;

/** Rings in either direction, each filled, together. */
export function unionOf(rings: readonly Ring[]): PathsD {
  return unionD(paths(rings), [], FillRule.NonZero, DECIMALS);
}

/** Each outline less its own holes, together. */
export function pathsOf(region: Region): PathsD {
  return joined(region.map(({ outer, holes }) => differenceOf(unionOf([outer]), unionOf(holes))));
}

/** Together. */
export function joined(shapes: readonly PathsD[]): PathsD {
  return unionD(shapes.flat(), [], FillRule.NonZero, DECIMALS);
}

export function intersectionOf(a: PathsD, b: PathsD): PathsD {
  return intersectD(a, b, FillRule.NonZero, DECIMALS);
}

export function differenceOf(a: PathsD, b: PathsD): PathsD {
  return differenceD(a, b, FillRule.NonZero, DECIMALS);
}

/** A ring grown by a disc, whose arcs are cut to within `sagitta` mm. */
export function grownOf(ring: Ring, by: number, sagitta: number): PathsD {
  return inflatePathsD(paths([ring]), by, JoinType.Round, EndType.Polygon, 2, DECIMALS, sagitta);
}

/** mm2 */
export function areaOf(shape: PathsD): number {
  return Math.abs(areaPathsD(shape));
}

function paths(rings: readonly Ring[]): PathsD {
  return rings.map((ring) => {
    const path = ring.map(([x, y]) => ({ x, y }));
    // Clipper fills by winding, so every ring has to run the same way to count as filled.
    return areaPathsD([path]) < 0 ? path.reverse() : path;
  });
}
