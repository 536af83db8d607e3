import {
  insideAnyRing,
  insideRing,
  isFree,
  type ObstacleEdges,
  obstacleEdges,
} from '../geometry/obstacle-edges.js';
import {
  createEdgeView,
  createTurnedRectangle,
  type TurnedRectangle,
  viewEdge,
} from '../geometry/rectangle-distance.js';
import { rectangleWitness } from '../geometry/rectangle-witness.js';
import type { Placement, Point, Size } from '../geometry/types.js';
import type { PlacementProblem } from './placement-problem.js';
import { FRAME_SLACK } from './search-scene.js';

/** The frame is measured as this much smaller on every side (mm): twice what the search allows, so what it found stands. */
export const STANDS_SLACK: number = 2 * FRAME_SLACK;

/** A wall (`index` is the outline's edge from corner `index` on) or a footprint of the problem's `tall` or `low`. */
export interface PlacedThing {
  readonly kind: 'wall' | 'tall' | 'low';
  readonly index: number;
}

export interface PoseClearance {
  /**
   * Distance from Q to walls and tall things, mm. Touching: 0. Negative where Q overlaps one or lies outside the room: the
   * deepest overlap with any one edge, or with the thing that Q wholly lies in; a figure to compare poses by, not the way out.
   */
  readonly clearance: number;
  /** The frame overlaps no wall and no footprint. Touching is allowed, and so is an overlap of {@link STANDS_SLACK}. */
  readonly stands: boolean;
  /** What the clearance is to. */
  readonly nearest: PlacedThing;
  /** What the frame overlaps, each once: walls by their edges, then footprints. Empty where it stands. */
  readonly hits: readonly PlacedThing[];
}

/** One thing as Q sees it. */
export interface ThingDistance extends PlacedThing {
  /** mm; 0 where they touch, negative where they overlap (see {@link PoseClearance}). */
  readonly distance: number;
  /** The two ends of a shortest line: on Q, on the thing; null where they overlap. */
  readonly witness: readonly [Point, Point] | null;
}

/** Exact measurements of many poses in one room. */
export interface ClearanceProbe {
  /** As `clearance` of {@link PoseClearance}. */
  readonly clearance: (pose: Placement) => number;
  /** As `stands` of {@link PoseClearance}. */
  readonly stands: (pose: Placement) => boolean;
}

/** Prepares a room for measuring many poses, each in time linear in its corners. */
export function clearanceProbe(problem: PlacementProblem): ClearanceProbe {
  const measure = measurer(problem);
  return {
    clearance: (pose) => measure.signed(measure.playAt(pose)),
    stands: (pose) => measure.isOff(measure.frameAt(pose)),
  };
}

/** Measures one pose exactly, up to rounding (about 1e-9 mm). The pose may be anywhere, in the room or not. */
export function clearanceAt(problem: PlacementProblem, pose: Placement): PoseClearance {
  const measure = measurer(problem);
  const play = measure.playAt(pose);
  const nearest = nearestOf(things(problem, measure.obstacles, play, 'tall'));
  const frame = measure.frameAt(pose);
  const stands = measure.isOff(frame);
  return {
    clearance: nearest.distance,
    stands,
    nearest: { kind: nearest.kind, index: nearest.index },
    hits: stands
      ? []
      : things(problem, measure.obstacles, frame, 'low')
          .filter(({ distance }) => distance <= 0)
          .map(({ kind, index }) => ({ kind, index })),
  };
}

/** Every wall and tall footprint as Q sees it, in the order of the problem, with the nearest points. */
export function distancesAt(problem: PlacementProblem, pose: Placement): readonly ThingDistance[] {
  const measure = measurer(problem);
  const play = measure.playAt(pose);
  return things(problem, measure.obstacles, play, 'tall').map(({ kind, index, distance, edge }) => {
    const witness = distance > 0 ? rectangleWitness(play, measure.obstacles.edges, edge) : null;
    return { kind, index, distance, witness };
  });
}

interface Measurer {
  readonly obstacles: ObstacleEdges;
  readonly playAt: (pose: Placement) => TurnedRectangle;
  readonly frameAt: (pose: Placement) => TurnedRectangle;
  /** Signed clearance of Q. */
  readonly signed: (play: TurnedRectangle) => number;
  /** Does the frame keep off everything? */
  readonly isOff: (frame: TurnedRectangle) => boolean;
}

function measurer(problem: PlacementProblem): Measurer {
  const obstacles = obstacleEdges(problem.outline, [...problem.tall, ...problem.low]);
  const tallRings = 1 + problem.tall.length;
  const allRings = tallRings + problem.low.length;
  const view = createEdgeView();
  const play = rectangleOf(problem.play, 0);
  const frame = rectangleOf(problem.frame, STANDS_SLACK);
  const least = (rectangle: TurnedRectangle, end: number, enough: number): number => {
    let distance = Number.POSITIVE_INFINITY;
    for (let e = 0; e < end && distance > enough; e++) {
      viewEdge(view, rectangle, obstacles.edges, e);
      if (view.separation < distance) distance = view.separation;
    }
    return distance;
  };
  return {
    obstacles,
    playAt: (pose) => moveTo(play, pose),
    frameAt: (pose) => moveTo(frame, pose),
    signed: (rectangle) => {
      const distance = least(rectangle, obstacles.start[tallRings], 0);
      if (distance > 0 && isFree(obstacles, tallRings, rectangle.x, rectangle.y)) return distance;
      return nearestOf(things(problem, obstacles, rectangle, 'tall')).distance;
    },
    isOff: (rectangle) =>
      least(rectangle, obstacles.start[allRings], 0) > 0 &&
      isFree(obstacles, allRings, rectangle.x, rectangle.y),
  };
}

/** Signed distances, walls edge by edge, footprints ring by ring, up to those of the given kind. */
function things(
  problem: PlacementProblem,
  obstacles: ObstacleEdges,
  rectangle: TurnedRectangle,
  upTo: 'tall' | 'low',
): readonly (PlacedThing & { readonly distance: number; readonly edge: number })[] {
  const view = createEdgeView();
  const found: (PlacedThing & { distance: number; edge: number })[] = [];
  const outside = !insideRing(obstacles, 0, rectangle.x, rectangle.y);
  for (let e = 0; e < problem.outline.length; e++) {
    viewEdge(view, rectangle, obstacles.edges, e);
    found.push({ kind: 'wall', index: e, distance: view.separation, edge: e });
  }
  if (outside && found.every(({ distance }) => distance > 0)) {
    const nearest = nearestOf(found);
    nearest.distance = whollyIn(rectangle, nearest.distance);
  }
  const rings = 1 + problem.tall.length + (upTo === 'low' ? problem.low.length : 0);
  for (let r = 1; r < rings; r++) {
    const kind = r <= problem.tall.length ? 'tall' : 'low';
    const index = kind === 'tall' ? r - 1 : r - 1 - problem.tall.length;
    let distance = Number.POSITIVE_INFINITY;
    let edge = obstacles.start[r];
    for (let e = obstacles.start[r]; e < obstacles.start[r + 1]; e++) {
      viewEdge(view, rectangle, obstacles.edges, e);
      if (view.separation < distance) {
        distance = view.separation;
        edge = e;
      }
    }
    const inside = distance > 0 && insideAnyRing(obstacles, r, r + 1, rectangle.x, rectangle.y);
    found.push({ kind, index, distance: inside ? whollyIn(rectangle, distance) : distance, edge });
  }
  return found;
}

function nearestOf<T extends { readonly distance: number }>(found: readonly T[]): T {
  return found.reduce((a, b) => (b.distance < a.distance ? b : a));
}

/** A rectangle that lies wholly in a thing, `distance` from its boundary, has that and its own width to go at least. */
function whollyIn(rectangle: TurnedRectangle, distance: number): number {
  return -(distance + 2 * Math.min(rectangle.halfLength, rectangle.halfWidth));
}

function rectangleOf(size: Size, slack: number): TurnedRectangle {
  return createTurnedRectangle(size.length / 2 - slack, size.width / 2 - slack);
}

function moveTo(rectangle: TurnedRectangle, pose: Placement): TurnedRectangle {
  rectangle.x = pose.x;
  rectangle.y = pose.y;
  rectangle.cos = Math.cos(pose.angle);
  rectangle.sin = Math.sin(pose.angle);
  return rectangle;
}
