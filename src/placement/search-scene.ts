import { type BlockedLines, blockedLines } from '../geometry/blocked-lines.js';
import { type ObstacleEdges, obstacleEdges } from '../geometry/obstacle-edges.js';
import type { Point, Ring } from '../geometry/types.js';
import type { PlacementProblem } from './placement-problem.js';

/**
 * The frame counts as this much smaller on every side (mm), so that touching is allowed and rounding does not decide.
 * Coordinates up to 1e5 mm carry absolute errors of about 1e-10 mm through these computations; four digits to spare.
 */
export const FRAME_SLACK = 1e-6;

/** Overlap (mm) with the smaller frame that is still rounding: the best place is often where that frame just touches. */
export const TOUCHING = 1e-8;

/** Half sides of one of the two rectangles, and what follows from them. */
export interface HalfSides {
  readonly halfLength: number;
  readonly halfWidth: number;
  /** D: half the diagonal. */
  readonly radius: number;
  /** The smaller half side: a disc of this radius about the centre lies in the rectangle at every turn. */
  readonly inner: number;
}

/**
 * A placement problem made ready for the search: the room about its own middle, play length >= play width, and everything
 * in one order that does not depend on the caller's, so that the same room always gives the same answer.
 *
 * Constraints are numbered: `play` (Q) against each edge of the outline and of the tall footprints, then the frame against
 * each edge of the low ones, then the frame against the edges of the first kind again (`edgeOf`, `isObjective`).
 */
export interface SearchScene {
  /** Outline, tall footprints, low footprints, in this order. */
  readonly obstacles: ObstacleEdges;
  /** The first rings, outline and tall, bound the objective; all of them bind the frame. */
  readonly tallRings: number;
  readonly allRings: number;
  /** Edges of outline and tall footprints; the number of constraints on Q. */
  readonly tallEdges: number;
  /** Constraints of Q and of the frame against low footprints. */
  readonly looseCount: number;
  /** All constraints. */
  readonly fullCount: number;
  /** Where the lines stay out of the free space of Q, and of the frame. */
  readonly playLines: BlockedLines;
  readonly frameLines: BlockedLines;
  readonly play: HalfSides;
  /** Smaller than the caller's by {@link FRAME_SLACK} on every side. */
  readonly frame: HalfSides;
  /** The caller's width is the longer side: its turn is ours plus a quarter. */
  readonly swapped: boolean;
  /**
   * Where the frame stands free, Q has at least this clearance: the frame's boundary lies outside Q by no less. 0 for a
   * frame that does not hold Q.
   */
  readonly least: number;
  /** Where Q has at least this clearance, walls and tall things leave the frame alone: no point of it is further from Q. */
  readonly ample: number;
  /** Middle of the room in the caller's coordinates, and half the room's box. */
  readonly centerX: number;
  readonly centerY: number;
  readonly halfX: number;
  readonly halfY: number;
}

export function searchScene(problem: PlacementProblem): SearchScene {
  const { outline } = problem;
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const minX = xs.reduce((a, b) => Math.min(a, b));
  const maxX = xs.reduce((a, b) => Math.max(a, b));
  const minY = ys.reduce((a, b) => Math.min(a, b));
  const maxY = ys.reduce((a, b) => Math.max(a, b));
  const centerX = (minX + maxX) / 2;
  const centerY = (minY + maxY) / 2;
  const about = (ring: Ring): Ring =>
    fromLeastCorner(ring.map(([x, y]): Point => [x - centerX, y - centerY]));

  const tall = problem.tall.map(about).sort(compareRings);
  const low = problem.low.map(about).sort(compareRings);
  const obstacles = obstacleEdges(about(outline), [...tall, ...low]);
  const tallRings = 1 + tall.length;
  const allRings = tallRings + low.length;
  const tallEdges = obstacles.start[tallRings];
  const looseCount = obstacles.edges.count;

  const swapped = problem.play.width > problem.play.length;
  const play = swapped ? turned(problem.play) : problem.play;
  const frame = swapped ? turned(problem.frame) : problem.frame;
  const beyondLength = (frame.length - play.length) / 2;
  const beyondWidth = (frame.width - play.width) / 2;
  return {
    obstacles,
    tallRings,
    allRings,
    tallEdges,
    looseCount,
    fullCount: looseCount + tallEdges,
    playLines: blockedLines(obstacles, tallRings),
    frameLines: blockedLines(obstacles, allRings),
    play: halfSides(play.length / 2, play.width / 2),
    frame: halfSides(frame.length / 2 - FRAME_SLACK, frame.width / 2 - FRAME_SLACK),
    swapped,
    least: Math.max(Math.min(beyondLength, beyondWidth) - FRAME_SLACK, 0),
    ample: Math.hypot(Math.max(beyondLength, 0), Math.max(beyondWidth, 0)),
    centerX,
    centerY,
    halfX: (maxX - minX) / 2,
    halfY: (maxY - minY) / 2,
  };
}

/** Is constraint `item` one of Q's, not of the frame? */
export function isObjective(scene: SearchScene, item: number): boolean {
  return item < scene.tallEdges;
}

/** The edge that constraint `item` is about. */
export function edgeOf(scene: SearchScene, item: number): number {
  return item < scene.looseCount ? item : item - scene.looseCount;
}

/** No pose at all has more clearance: a disc of radius clearance + inner lies in the room's box. */
export function roomBound(scene: SearchScene): number {
  return Math.min(scene.halfX, scene.halfY) - scene.play.inner;
}

function halfSides(halfLength: number, halfWidth: number): HalfSides {
  return {
    halfLength,
    halfWidth,
    radius: Math.hypot(halfLength, halfWidth),
    inner: Math.min(halfLength, halfWidth),
  };
}

function turned(size: { readonly length: number; readonly width: number }): {
  length: number;
  width: number;
} {
  return { length: size.width, width: size.length };
}

function fromLeastCorner(ring: Ring): Ring {
  let least = 0;
  for (let i = 1; i < ring.length; i++) if (comparePoints(ring[i], ring[least]) < 0) least = i;
  return [...ring.slice(least), ...ring.slice(0, least)];
}

function comparePoints(a: Point, b: Point): number {
  return a[0] - b[0] || a[1] - b[1];
}

function compareRings(a: Ring, b: Ring): number {
  for (let i = 0; i < a.length && i < b.length; i++) {
    const order = comparePoints(a[i], b[i]);
    if (order !== 0) return order;
  }
  return a.length - b.length;
}
