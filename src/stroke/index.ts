/**
 * Single shots, and all shots of a table in a room, for those who script this part alone. Works on a checked room and table (see
 * `checkRoom` and `TABLES` of the main entry, or write them down as their types say), in millimetres and radians.
 * `prepareStrokes` brings both into the table's own frame: origin at the centre of the play field, +x along the table. The main
 * entry's `classifyShot` answers for one shot from unchecked input, its `proveShots` for all of them at once; `checkCue` and
 * `checkStroke` read what a customer wrote.
 *
 * @packageDocumentation
 */
export type { CueInput, CueSpec, FieldSize, Source, TableSpec } from '../equipment/equipment-types.js';
export type { EdgeArrays } from '../geometry/edge-arrays.js';
export type { Placement, Point, Ring } from '../geometry/types.js';
export type { Length, LengthUnit } from '../length/length.js';
export type { Scene, SceneCeilingFace, SceneDoor, SceneObstacle, SceneReserved } from '../room/scene.js';
export { type AnsweredShot, answerShot, type ShotClass } from './answer-shot.js';
export { checkCue, checkStroke } from './check-stroke.js';
export { type CushionLengths, type CushionName, cushionProfiles } from './cushion-profile.js';
export { prepareStrokes, withStroke } from './prepare-strokes.js';
export { type RailDistances, railDistances, railElevation, steepestRail } from './rail-elevation.js';
export {
  type CueTally,
  type HoldBack,
  type ShotGrid,
  type ShotShareOptions,
  type ShotSpot,
  type ShotTally,
  shotShares,
} from './shot-shares.js';
export { canStand, STANDING_ASIDE, standingFrom, standingRoom, standingTo } from './standing.js';
export type { StandingRoom } from './standing-room.js';
export type { PartArrays, StanceArrays, StrokeCue, StrokeScene } from './stroke-scene.js';
export type { StrokeInput, StrokeSettings } from './stroke-settings.js';
