/*
 * The only importer of @flatten-js/core, whose well-worn closest-point code gives the witness segments that a report
 * prints and a plan draws. It is kept from everything else, for these reasons:
 * - its tolerance (1e-6) is absolute and shared with the host program, which may set it: it is never set here, and the rings go
 *   in near the origin in a unit (metres, mostly) of which it is a thousandth of a millimetre, whatever it is;
 * - its distance is to the boundary, so a thing inside another is told apart first, by our own exact predicate;
 * - its boolean operations and relations can be wrong without a word: they are not used (see regions.ts);
 * - NaN comes through in silence: it is refused at the door;
 * - it is some ten times slower than a plain loop: no search calls it.
 */
import { Point as FlatPoint, Polygon, Segment, Utils } from '@flatten-js/core';
import { pointInRing } from './predicates.js';
import { checkPoint, checkRing } from './region.js';
import { boundingBox } from './ring.js';
import type { Point, Ring } from './types.js';

/** The two ends of a shortest line between two things, mm. */
export interface ClosestPoints {
  /** Length of that line; 0 when the things touch or overlap. */
  readonly distance: number;
  /** A point of the first thing. */
  readonly onA: Point;
  /** A point of the second thing; the same point when they touch or overlap. */
  readonly onB: Point;
}

/** What goes in: from an origin, mm, with so many of the package's units to the millimetre. */
interface Frame {
  readonly x: number;
  readonly y: number;
  readonly perMm: number;
}

/** Its tolerance is 1 / 1000 mm where there are so many tolerances in a millimetre: */
const TOLERANCES_PER_MM = 1000;
/** in metres, as long as nobody has made it coarser. */
const METRES = 1e-3;

/**
 * Where two polygons come closest, for reports and drawings, mm.
 *
 * Behaviour: polygons are filled, so one inside the other is at distance 0. Apart, `onA` and `onB` are the ends of one
 * shortest line (of several, when edges run parallel). The direction of the rings is free.
 *
 * Not conservative: gaps up to 0.001 mm may count as touching, and the distance may be off by 0.001 mm to either side. A
 * certificate must not rest on it.
 *
 * @throws RegionError for a ring of fewer than three corners, or coordinates that are not finite or beyond 10 km.
 */
export function closestPoints(ringA: Ring, ringB: Ring): ClosestPoints {
  checkRing(ringA);
  checkRing(ringB);
  const shared = cornerInside(ringA, ringB) ?? cornerInside(ringB, ringA);
  if (shared !== null) return { distance: 0, onA: shared, onB: shared };
  const frame = frameOf(ringA);
  return witness(toPolygon(ringA, frame).distanceTo(toPolygon(ringB, frame)), frame);
}

/**
 * Where a filled polygon (A) and a segment (B), such as a wall, come closest, mm. A segment that lies in the polygon is at
 * distance 0. Errs and throws as {@link closestPoints} does.
 */
export function ringToSegment(ring: Ring, from: Point, to: Point): ClosestPoints {
  checkRing(ring);
  checkPoint(from);
  checkPoint(to);
  if (pointInRing(ring, from[0], from[1]) >= 0) return { distance: 0, onA: from, onB: from };
  const frame = frameOf(ring);
  const polygon = toPolygon(ring, frame);
  const a = toFlat(from, frame);
  // A segment without length would have no direction.
  const other = from[0] === to[0] && from[1] === to[1] ? a : new Segment(a, toFlat(to, frame));
  return witness(polygon.distanceTo(other), frame);
}

/**
 * Where a point (A) comes closest to a filled polygon (B), mm. A point in the polygon or on its boundary is at distance 0, its
 * own closest point. Errs and throws as {@link closestPoints} does.
 */
export function pointToRing(point: Point, ring: Ring): ClosestPoints {
  checkPoint(point);
  checkRing(ring);
  if (pointInRing(ring, point[0], point[1]) >= 0) return { distance: 0, onA: point, onB: point };
  const frame = frameOf(ring);
  const { distance, onB } = witness(toFlat(point, frame).distanceTo(toPolygon(ring, frame)), frame);
  return { distance, onA: point, onB };
}

/** The first corner of `inner` when it lies in `outer` or on it: one is enough unless boundaries meet. */
function cornerInside(outer: Ring, inner: Ring): Point | null {
  const [corner] = inner;
  return pointInRing(outer, corner[0], corner[1]) >= 0 ? corner : null;
}

/** About the middle of the ring's box. */
function frameOf(ring: Ring): Frame {
  const box = boundingBox(ring);
  const perMm = Math.max(METRES, Utils.getTolerance() * TOLERANCES_PER_MM);
  return { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2, perMm };
}

function toFlat([x, y]: Point, frame: Frame): FlatPoint {
  return new FlatPoint((x - frame.x) * frame.perMm, (y - frame.y) * frame.perMm);
}

function toPolygon(ring: Ring, frame: Frame): Polygon {
  return new Polygon(ring.map((corner) => toFlat(corner, frame)));
}

function witness([, line]: [number, Segment], { x, y, perMm }: Frame): ClosestPoints {
  const onA: Point = [line.ps.x / perMm + x, line.ps.y / perMm + y];
  const onB: Point = [line.pe.x / perMm + x, line.pe.y / perMm + y];
  // Measured between the points that are drawn, so that the number and the line agree.
  return { distance: Math.hypot(onB[0] - onA[0], onB[1] - onA[1]), onA, onB };
}
