/**
 * A second opinion on planar geometry: JTS in its JavaScript port (jsts), whose code and ancestry are independent of ours.
 * This thin layer gives it types, because the port's own are mostly `any`. Development only.
 */
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import type Geometry from 'jsts/org/locationtech/jts/geom/Geometry.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js';
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import RelateOp from 'jsts/org/locationtech/jts/operation/relate/RelateOp.js';
import IsValidOp from 'jsts/org/locationtech/jts/operation/valid/IsValidOp.js';
import type { Point, Ring } from '../../src/geometry/types.js';

/** A geometry of JTS; make one with `polygon`, `point` or `segment`. */
export type JtsGeometry = Geometry;

const factory = new GeometryFactory();

/** Coordinates of a closed ring: JTS wants the first corner again at the end. */
function closed(ring: Ring): Coordinate[] {
  const coordinates = ring.map(([x, y]) => new Coordinate(x, y));
  const [first] = ring;
  if (first !== undefined) coordinates.push(new Coordinate(first[0], first[1]));
  return coordinates;
}

/** A polygon from its outer ring and its holes, each in either direction, not closed. */
export function polygon(ring: Ring, holes: readonly Ring[] = []): JtsGeometry {
  const shell: JtsGeometry = factory.createLinearRing(closed(ring));
  const inner: JtsGeometry[] = holes.map((hole): JtsGeometry => factory.createLinearRing(closed(hole)));
  return factory.createPolygon(shell, inner);
}

export function point([x, y]: Point): JtsGeometry {
  return factory.createPoint(new Coordinate(x, y));
}

export function segment(a: Point, b: Point): JtsGeometry {
  return factory.createLineString([new Coordinate(a[0], a[1]), new Coordinate(b[0], b[1])]);
}

/** Area, mm2, without sign; holes taken off. */
export function area(geometry: JtsGeometry): number {
  return geometry.getArea();
}

/** Length of a line, perimeter (holes included) of a polygon, mm. */
export function perimeter(geometry: JtsGeometry): number {
  return geometry.getLength();
}

export interface Validity {
  readonly valid: boolean;
  /** What JTS says, such as `Self-intersection`; empty when valid. */
  readonly reason: string;
  /** Where it says so; null when valid. */
  readonly where: Point | null;
}

/** Validity by the rules of the OGC: no crossing, no touching of itself, no spike. Repeated corners are allowed. */
export function validity(geometry: JtsGeometry): Validity {
  const operation = new IsValidOp(geometry);
  if (operation.isValid()) return { valid: true, reason: '', where: null };
  const error = operation.getValidationError();
  const where: Coordinate | null = error.getCoordinate();
  return { valid: false, reason: error.getMessage(), where: where === null ? null : [where.x, where.y] };
}

export function isValid(geometry: JtsGeometry): boolean {
  return validity(geometry).valid;
}

/** Least distance between two geometries, mm; 0 when they touch or overlap. */
export function distance(a: JtsGeometry, b: JtsGeometry): number {
  return DistanceOp.distance(a, b);
}

/** Nearest points, the first on `a`, the second on `b`. */
export function nearestPoints(a: JtsGeometry, b: JtsGeometry): readonly [Point, Point] {
  const [p, q]: Coordinate[] = DistanceOp.nearestPoints(a, b);
  return [
    [p.x, p.y],
    [q.x, q.y],
  ];
}

/**
 * Grown (or, with a negative distance, shrunk) by `by` mm. Round corners become chords between points of the true arc,
 * `quadrantSegments` to each quarter, so a convex grown shape is never larger than the true one.
 */
export function buffer(geometry: JtsGeometry, by: number, quadrantSegments = 16): JtsGeometry {
  return BufferOp.bufferOp(geometry, by, quadrantSegments);
}

/** No point of `b` lies outside `a`, and the insides meet. */
export function contains(a: JtsGeometry, b: JtsGeometry): boolean {
  return RelateOp.contains(a, b);
}

/** No point of `b` lies outside `a`. */
export function covers(a: JtsGeometry, b: JtsGeometry): boolean {
  return RelateOp.covers(a, b);
}

/** They share at least one point; touching counts. */
export function intersects(a: JtsGeometry, b: JtsGeometry): boolean {
  return RelateOp.intersects(a, b);
}

/** The union of all. The overlay is the classic floating one of JTS: compare areas, not corners. */
export function union(geometries: readonly JtsGeometry[]): JtsGeometry {
  const empty: JtsGeometry = factory.createGeometryCollection([]);
  let all: JtsGeometry | null = null;
  for (const geometry of geometries) all = all === null ? geometry : OverlayOp.union(all, geometry);
  return all ?? empty;
}

export function intersection(a: JtsGeometry, b: JtsGeometry): JtsGeometry {
  return OverlayOp.intersection(a, b);
}

export function difference(a: JtsGeometry, b: JtsGeometry): JtsGeometry {
  return OverlayOp.difference(a, b);
}

export function symmetricDifference(a: JtsGeometry, b: JtsGeometry): JtsGeometry {
  return OverlayOp.symDifference(a, b);
}
