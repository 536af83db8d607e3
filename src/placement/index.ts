/**
 * `elbowroom/placement`: where a table goes in a room, with bounds that are proved. Works on plain rings in millimetres and
 * angles in radians.
 */
export type { Placement, Point, Ring, Size } from '../geometry/types.js';
export {
  type ClearanceProbe,
  clearanceAt,
  clearanceProbe,
  distancesAt,
  type PlacedThing,
  type PoseClearance,
  STANDS_SLACK,
  type ThingDistance,
} from './clearance-at.js';
export { type CushionGap, type CushionGaps, cushionGaps } from './cushion-gaps.js';
export { findPlacement } from './find-placement.js';
export { placeTable, REACHES, type TableOptions, type TablePlace } from './place-table.js';
export type { PlacementOptions, PlacementProblem, PlacementResult } from './placement-problem.js';
export { settle } from './settle.js';
export { squareTurns } from './square-turns.js';
