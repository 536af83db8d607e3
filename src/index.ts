/**
 * Does this table go into this room, and can people play on it there? `assessFit` answers the whole question; the rest are
 * its parts and words.
 *
 * @packageDocumentation
 */
export type * from './arrangement/arrangement-report.js';
export type * from './arrangement/furnishing-input.js';
export { assessFit } from './assess-fit.js';
export { checkFitInput, checkRoom } from './check-fit-input.js';
export { type CompareInput, compareTables } from './compare-tables.js';
export { assessDelivery } from './delivery/assess-delivery.js';
export type * from './delivery/delivery-input.js';
export type * from './delivery/delivery-report.js';
export { deliverySchema } from './delivery-schema.js';
export { BALLS, type BallId, type BallSpec } from './equipment/balls.js';
export { CUES, type CueEntry, type CueId } from './equipment/cues.js';
export type {
  CueInput,
  CueSpec,
  FieldSize,
  Source,
  TableInput,
  TableSpec,
} from './equipment/equipment-types.js';
export type { FurnishingSpec, Stand, TurnRule, UseZoneSpec } from './equipment/furnishing-types.js';
export { FURNISHINGS } from './equipment/furnishings.js';
export type { FurnishingId } from './equipment/furnishings-ids.js';
export { TABLES, type TableId } from './equipment/tables.js';
export type { CaromTableId } from './equipment/tables-carom.js';
export type { EnglishTableId } from './equipment/tables-english.js';
export type { PoolTableId } from './equipment/tables-pool.js';
export type { PyramidTableId } from './equipment/tables-pyramid.js';
export type { SnookerTableId } from './equipment/tables-snooker.js';
export type { FitInput, PoseInput, SearchOptions, SearchProgress } from './fit-input.js';
export { fitInputSchema } from './fit-input-schema.js';
export { InputError, type InputProblem, summarizeProblems } from './input-error.js';
export type { JsonSchema } from './json-schema.js';
export { type FormatLengthOptions, formatLength } from './length/format-length.js';
export type { Length, LengthUnit } from './length/length.js';
export { parseLength } from './length/parse-length.js';
export { renderPlan } from './render-plan.js';
export { renderShot, type ShotInput } from './render-shot.js';
export type { ComparisonCue, ComparisonRow, TableComparison } from './report/comparison.js';
export { describeComparison } from './report/describe-comparison.js';
export { type DescribeWayOptions, describeWay } from './report/describe-delivery.js';
export { type DescribeOptions, describeFit } from './report/describe-fit.js';
export { describeTapedRoom } from './report/describe-room.js';
export type * from './report/fit-report.js';
export type { PlanOptions, SheetName, SheetOrientation } from './report/plan/plan-options.js';
export type { PlanTheme } from './report/plan/theme.js';
export type { SentenceUnits } from './report/sentences.js';
export { roomFromTape } from './room/room-from-tape.js';
export type * from './room/room-input.js';
export type { Scene, SceneCeilingFace, SceneDoor, SceneObstacle, SceneReserved } from './room/scene.js';
export type * from './room/tape-input.js';
export type * from './room/tape-report.js';
export type * from './room/tape-room.js';
export { type ClassifyInput, classifyShot, type ShotAnswer } from './stroke/classify-shot.js';
export { type ProofOptions, proveShots, type ShotProof } from './stroke/prove-shots.js';
export type { StrokeInput } from './stroke/stroke-settings.js';
