/**
 * Single shots, and all shots of a table in a room, for those who script this part alone. `classifyShot` takes input as
 * `assessFit` does; the rest works on a checked scene and table, in millimetres and radians. `prepareStrokes` brings both into the
 * table's own frame: origin at the centre of the play field, +x along the table.
 *
 * @packageDocumentation
 */
export type { CueInput, FieldSize, Source, TableInput, TableSpec } from '../equipment/equipment-types.js';
export type { EdgeArrays } from '../geometry/edge-arrays.js';
export type { Placement, Point, Ring } from '../geometry/types.js';
export { InputError, type InputProblem } from '../input-error.js';
export type { Length } from '../length/length.js';
export type * from '../room/room-input.js';
export type { Scene, SceneCeilingFace, SceneDoor, SceneObstacle } from '../room/scene.js';
export { type AnsweredShot, answerShot, type ShotClass } from './answer-shot.js';
export { type ClassifyInput, classifyShot, type ShotAnswer } from './classify-shot.js';
export { type CushionLengths, type CushionName, cushionProfiles } from './cushion-profile.js';
export { prepareStrokes } from './prepare-strokes.js';
export { type ProofOptions, proveShots, type ShotProof } from './prove-shots.js';
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
export { canStand, standingFrom, standingRoom, standingTo } from './standing.js';
export type { StandingRoom } from './standing-room.js';
export type { PartArrays, StanceArrays, StrokeCue, StrokeScene } from './stroke-scene.js';
export type { StrokeInput, StrokeSettings } from './stroke-settings.js';
