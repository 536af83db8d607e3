/**
 * Plain planar geometry: rings, exact side decisions, regions and their boolean operations, closest points and grown shapes.
 * It knows nothing of tables or rooms; the rest of the library stands on it.
 *
 * Conventions of every function here, unless it says otherwise:
 * - Millimetres, x to the right and y up, angles in radians anticlockwise. Everything is plain data and nothing is changed.
 * - A {@link Ring} is a list of corners, anticlockwise, the first not repeated at the end. A {@link Region} has anticlockwise
 *   outlines and clockwise holes.
 * - Exact: {@link orientation} and the other predicates give the sign of exact arithmetic on the given doubles.
 * - Rounded: {@link unite} and the other operations on regions work on a grid of 2^-10 mm, and {@link closestPoints} may be
 *   off by 0.001 mm. They are for areas, drawings and reports. No verdict of the library rests on them.
 * - What cannot be answered is an error, {@link RegionError}, and never a guess.
 *
 * @example The floor that is left beside a table, and what the cues of a player reach of it
 * ```ts
 * import { freeFloor, reachInRoom, rectangleRing, regionArea } from 'elbowroom/geometry';
 *
 * const room = rectangleRing([2500, 2000], 5000, 4000);
 * const table = rectangleRing([2500, 2000], 2540, 1270);
 * const floor = freeFloor(room, [table]);
 * console.log(regionArea(floor) / 1e6); // 16.7742 m2
 *
 * const { outside } = reachInRoom(room, table, 1473, { arcs: 'circumscribed' });
 * console.log(outside.length); // 4: each wall cuts the reach off
 * ```
 *
 * @module
 */
export { convexParts } from './convex-parts.js';
export { type EdgeArrays, edgeArrays } from './edge-arrays.js';
export { freeFloor } from './free-floor.js';
export { type ArcOptions, grownArea, grownPerimeter, growRing } from './grow-ring.js';
export { type ClosestPoints, closestPoints, pointToRing, ringToSegment } from './measure.js';
export {
  onSegment,
  orientation,
  pointInRing,
  type SegmentContact,
  type Sign,
  segmentContact,
  segmentMeetsConvexInside,
  segmentsCross,
  segmentsMeet,
  turnsOnlyLeft,
} from './predicates.js';
export { growParts, reachInRoom } from './reach-region.js';
export {
  type Region,
  RegionError,
  type RegionErrorCode,
  type RegionPolygon,
  regionArea,
  type Shape,
} from './region.js';
export { intersect, REGION_GRID, type RegionSplit, split, subtract, unite } from './regions.js';
export {
  type Box,
  boundingBox,
  CIRCLE_EXCESS,
  CIRCLE_SIDES,
  centroid,
  circleExcess,
  circleRing,
  clipToHalfPlane,
  distanceToSegment,
  mirrored,
  perimeter,
  rectangleRing,
  reversed,
  ringDirection,
  rotated,
  signedArea,
  translated,
} from './ring.js';
export { findSelfContacts, isSimple, type SelfContact } from './simple-ring.js';
export type { Placement, Point, Ring, Size } from './types.js';
