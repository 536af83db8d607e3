import { insideAnyRing, isFree } from '../geometry/obstacle-edges.js';
import {
  createEdgeView,
  createTurnedRectangle,
  type EdgeView,
  type TurnedRectangle,
  viewEdge,
} from '../geometry/rectangle-distance.js';
import { edgeOf, isObjective, type SearchScene, TOUCHING } from './search-scene.js';

/** A pose in the scene's own terms (about the room's middle, angle of Q's longer side) and its clearance. */
export interface FoundPose {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  readonly value: number;
}

/** Exact clearances of single poses; one object serves a whole search. */
export interface PoseProbe {
  readonly scene: SearchScene;
  readonly play: TurnedRectangle;
  readonly frame: TurnedRectangle;
  readonly view: EdgeView;
  /** After a probe that failed by the frame alone: how deep the frame reaches into an edge, mm. Else 0. */
  overlap: number;
}

export function createPoseProbe(scene: SearchScene): PoseProbe {
  return {
    scene,
    play: createTurnedRectangle(scene.play.halfLength, scene.play.halfWidth),
    frame: createTurnedRectangle(scene.frame.halfLength, scene.frame.halfWidth),
    view: createEdgeView(),
    overlap: 0.5,
  };
}

/**
 * Clearance of a pose if it is more than `beat` (at least 0) and the frame stands free, else -Infinity. Exact for any pose as
 * long as `list[0..count)` holds every edge that Q or the frame comes nearer to than the result.
 */
export function probePose(
  probe: PoseProbe,
  list: Uint32Array,
  count: number,
  x: number,
  y: number,
  angle: number,
  beat: number,
): number {
  const { scene, play, frame, view } = probe;
  const { obstacles, tallRings, allRings } = scene;
  probe.overlap = 0;
  play.x = x;
  play.y = y;
  play.cos = Math.cos(angle);
  play.sin = Math.sin(angle);
  let clearance = Number.POSITIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    if (!isObjective(scene, list[i])) continue;
    viewEdge(view, play, obstacles.edges, edgeOf(scene, list[i]));
    if (view.separation < clearance) {
      clearance = view.separation;
      if (clearance <= beat) return Number.NEGATIVE_INFINITY;
    }
  }
  if (!isFree(obstacles, tallRings, x, y)) return Number.NEGATIVE_INFINITY;

  const ample = clearance >= scene.ample;
  if (ample && tallRings === allRings) return clearance;
  frame.x = x;
  frame.y = y;
  frame.cos = play.cos;
  frame.sin = play.sin;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    if (ample && isObjective(scene, list[i])) continue;
    viewEdge(view, frame, obstacles.edges, edgeOf(scene, list[i]));
    if (view.separation < least) least = view.separation;
  }
  if (least < -TOUCHING) {
    probe.overlap = -least;
    return Number.NEGATIVE_INFINITY;
  }
  return insideAnyRing(obstacles, tallRings, allRings, x, y) ? Number.NEGATIVE_INFINITY : clearance;
}
