import { insideAnyRing, isFree } from '../geometry/obstacle-edges.js';
import { createEdgeView, type EdgeView, viewEdge } from '../geometry/rectangle-distance.js';
import { addCornerRows } from './corner-feature.js';
import { clearRows, createFeatureRows, type FeatureRows, startRows } from './feature-rows.js';
import { createPoseBox, type PoseBox } from './pose-box.js';
import { edgeOf, isObjective, type SearchScene } from './search-scene.js';
import { addWallRows } from './wall-feature.js';

/**
 * Added to every upper bound, mm. The sums behind a bound carry absolute errors of about 1e-9 mm (lengths up to 1e5 mm, a
 * handful of operations, pivots of a 4 x 4 basis); three digits to spare.
 */
export const BOUND_SLACK = 1e-6;

/** Bounds over one box of poses; one object serves a whole search. */
export interface BoxBounds {
  readonly scene: SearchScene;
  readonly box: PoseBox;
  readonly rows: FeatureRows;
  readonly view: EdgeView;
  /**
   * By place in the list: Q comes no nearer than this to the edge anywhere in the box. For the frame: Infinity where it
   * cannot meet the edge, -Infinity where it may.
   */
  readonly nearest: Float64Array;
}

export function createBoxBounds(scene: SearchScene): BoxBounds {
  return {
    scene,
    box: createPoseBox(scene.play, scene.frame),
    rows: createFeatureRows(scene.fullCount),
    view: createEdgeView(),
    nearest: new Float64Array(scene.fullCount),
  };
}

/**
 * Fills `rows` and `nearest` for the box in `bounds.box` from the constraints `list[0..count)` and returns an upper bound of
 * the clearance over all its poses where the table stands free, at most `known`; -Infinity: there is none. Stops early, with
 * `rows` and `nearest` incomplete, once the bound is at most `cut`. `reserve` moves the frame's rows in.
 *
 * Besides the rows: distances change by no more than `reach`, and the inscribed discs must stay where there is space for them.
 * Only constraints that may matter in the box need to be in the list. For the discs: if the middle of the box lies outside
 * free space, then on the way to a free middle in the box an edge is crossed, and that edge is in the list, because nothing
 * that the rectangle can meet in the box is ever left out.
 */
export function boundBox(
  bounds: BoxBounds,
  list: Uint32Array,
  count: number,
  known: number,
  cut: number,
  reserve: number,
): number {
  const { scene, box, rows, view, nearest } = bounds;
  const { obstacles, playLines, frameLines } = scene;
  const { play, frame } = box;
  clearRows(rows, known, reserve);
  const enough = cut - BOUND_SLACK;
  let meetsQ = Number.POSITIVE_INFINITY;
  let offPlay = Number.POSITIVE_INFINITY;
  let offFrame = Number.POSITIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    const item = list[i];
    const objective = isObjective(scene, item);
    const e = edgeOf(scene, item);
    const rectangle = objective ? play : frame;
    viewEdge(view, rectangle.at, obstacles.edges, e);
    const { side, foot, length, separation } = view;
    const past = foot < 0 ? foot : foot > length ? foot - length : 0;
    const off = side * side + past * past;
    if (objective) {
      nearest[i] = separation - rectangle.reach;
      if (separation < meetsQ) meetsQ = separation;
      if (off < offPlay) offPlay = off;
      if (meetsQ + rectangle.reach <= enough) return meetsQ + rectangle.reach + BOUND_SLACK;
      startRows(rows, 1);
    } else {
      nearest[i] = separation >= rectangle.reach ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
      if (separation + rectangle.reach < 0) return Number.NEGATIVE_INFINITY;
      if (off < offFrame) offFrame = off;
      startRows(rows, 0);
    }
    addWallRows(rows, box, rectangle, objective ? playLines : frameLines, e, view);
    if (obstacles.corner[e] === 1) addCornerRows(rows, box, rectangle, view);
    if (rows.lowest <= enough) return rows.lowest + BOUND_SLACK;
  }
  const shift = Math.hypot(box.dx, box.dy);
  if (Math.sqrt(offFrame) + shift < frame.inner) return Number.NEGATIVE_INFINITY;
  const { tallRings, allRings } = scene;
  if (
    shift < Math.sqrt(offFrame) + frame.inner &&
    tallRings < allRings &&
    insideAnyRing(obstacles, tallRings, allRings, box.x, box.y)
  ) {
    return Number.NEGATIVE_INFINITY;
  }
  const room = isFree(obstacles, tallRings, box.x, box.y) ? Math.sqrt(offPlay) : -Math.sqrt(offPlay);
  const bound = Math.min(rows.lowest, meetsQ + play.reach, room + shift - play.inner);
  return Math.min(known, bound + BOUND_SLACK);
}
