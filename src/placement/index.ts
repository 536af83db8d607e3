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
  type ThingDistance,
} from './clearance-at.js';
export { type CushionGap, type CushionGaps, cushionGaps } from './cushion-gaps.js';
export { findPlacement } from './find-placement.js';
export { placeTable, REACHES, type TableOptions, type TablePlace } from './place-table.js';
export type { PlacementOptions, PlacementProblem, PlacementResult } from './placement-problem.js';
export { FRAME_SLACK } from './search-scene.js';
export { settle } from './settle.js';
export { squareTurns } from './square-turns.js';
