/**
 * `elbowroom/delivery`: whether a table's pieces can be carried in. `assessDelivery` answers the whole way; the rest are its parts, in
 * millimetres and radians.
 */
export { assessDelivery } from './assess-delivery.js';
export type { Carried, Hold, Piece } from './carried.js';
export { type CrossOptions, crossPassage } from './cross-passage.js';
export type { Crossing } from './crossing.js';
export type * from './delivery-input.js';
export type * from './delivery-report.js';
export type { Motion, MotionPose } from './motion.js';
export { narrowPassage } from './narrow-passage.js';
export type * from './passages.js';
export { type PassageReplay, type Replay, type ReplayOptions, replayPassage } from './replay.js';
