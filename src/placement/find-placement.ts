import type { Placement } from '../geometry/types.js';
import type { PlacementOptions, PlacementProblem, PlacementResult } from './placement-problem.js';
import type { FoundPose } from './pose-probe.js';
import { searchPlaces } from './search.js';
import { type SearchScene, searchScene } from './search-scene.js';
import { squareTurns } from './square-turns.js';

/**
 * The place with the most clearance where the frame stands free, with an upper bound that is proved up to rounding (1e-6 mm):
 * branch and bound over position and turn. Touching counts as standing free, and so does an overlap of 1e-6 mm. The search
 * ends once `upperBound - value` is at most `gap` (0.0001 mm at least).
 *
 * - Nowhere to stand: pose null, value 0; upperBound 0 then is the proof.
 * - With a `floor`: pose null says that no place has more clearance than `upperBound`, which is the floor plus the gap at most.
 * - `turns: 'square'`: everything said holds for turns square to a wall (see `squareTurns`).
 * - Stopped by `maxBoxes`, by `onProgress` or at boxes as small as rounding: `stopped`, and the bounds are valid all the same.
 *
 * The pose is the search's own; `placeTable` settles it where a customer would expect it.
 */
export function findPlacement(problem: PlacementProblem, options: PlacementOptions): PlacementResult {
  const scene = searchScene(problem);
  const { onProgress } = options;
  const { found, upperBound, boxes, stopped } = searchPlaces(scene, {
    turns: options.turns === 'square' ? ascending(squareTurns(problem.outline)) : null,
    gap: options.gap,
    maxBoxes: options.maxBoxes,
    floor: options.floor ?? 0,
    target: options.target ?? Number.POSITIVE_INFINITY,
    ceiling: Number.POSITIVE_INFINITY,
    onProgress: (value, bound, count) => onProgress?.({ value, upperBound: bound, boxes: count }),
  });
  const pose = found === null ? null : callersPose(scene, found);
  return { pose, value: found === null ? 0 : found.value, upperBound, boxes, stopped };
}

export function ascending(turns: readonly number[]): number[] {
  return turns.toSorted((a, b) => a - b);
}

/** A pose of the scene in the caller's terms: its coordinates, its length, angle in [0, pi). */
export function callersPose(scene: SearchScene, found: FoundPose): Placement {
  const angle = scene.swapped ? found.angle + Math.PI / 2 : found.angle;
  return { x: found.x + scene.centerX, y: found.y + scene.centerY, angle: halfTurn(angle) };
}

/** An angle this little (radians) short of a half turn is none: it moves nothing by more than 1e-7 mm. */
const NO_TURN = 1e-12;

function halfTurn(angle: number): number {
  const turn = angle - Math.floor(angle / Math.PI) * Math.PI;
  return turn < Math.PI - NO_TURN ? turn : 0;
}
