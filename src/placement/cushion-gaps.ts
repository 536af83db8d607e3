import { type EdgeArrays, edgeArrays } from '../geometry/edge-arrays.js';
import { SAME_LENGTH } from '../geometry/steady.js';
import type { Placement } from '../geometry/types.js';
import type { PlacedThing } from './clearance-at.js';
import type { PlacementProblem } from './placement-problem.js';

/** Room behind one side of Q, square off it. */
export interface CushionGap {
  /** From the side of Q to the first wall or tall thing behind it, over the side's whole length, mm; Infinity: nothing. */
  readonly distance: number;
  /** The wall's edge or the footprint; null: nothing. */
  readonly to: PlacedThing | null;
}

/** The four sides in the table's own frame: `endA` towards its +x, `sideA` towards its +y, `endB` and `sideB` opposite. */
export interface CushionGaps {
  readonly endA: CushionGap;
  readonly sideA: CushionGap;
  readonly endB: CushionGap;
  readonly sideB: CushionGap;
}

/**
 * The room behind each side of Q at a pose where Q overlaps nothing: the strip as wide as the side, out to the first wall or tall
 * thing in it. Exact up to rounding. From the cushion's nose it is a ball's radius less.
 */
export function cushionGaps(problem: PlacementProblem, pose: Placement): CushionGaps {
  const edges = edgeArrays([problem.outline, ...problem.tall]);
  const owners = ownersOf(problem);
  const cos = Math.cos(pose.angle);
  const sin = Math.sin(pose.angle);
  const halfLength = problem.play.length / 2;
  const halfWidth = problem.play.width / 2;
  const gap = (x: number, y: number, half: number, halfSide: number): CushionGap => {
    const { distance, edge } = firstBehind(edges, pose, x, y, halfSide);
    return { distance: distance - half, to: edge < 0 ? null : owners[edge] };
  };
  return {
    endA: gap(cos, sin, halfLength, halfWidth),
    sideA: gap(-sin, cos, halfWidth, halfLength),
    endB: gap(-cos, -sin, halfLength, halfWidth),
    sideB: gap(sin, -cos, halfWidth, halfLength),
  };
}

/** The nearest point of any edge in the strip of half width `half` that leaves the pose in direction (x, y). */
function firstBehind(
  edges: EdgeArrays,
  pose: Placement,
  x: number,
  y: number,
  half: number,
): { distance: number; edge: number } {
  let distance = Number.POSITIVE_INFINITY;
  let named = Number.POSITIVE_INFINITY;
  let edge = -1;
  for (let e = 0; e < edges.count; e++) {
    const aOut = (edges.ax[e] - pose.x) * x + (edges.ay[e] - pose.y) * y;
    const bOut = (edges.bx[e] - pose.x) * x + (edges.by[e] - pose.y) * y;
    const aAcross = (edges.ay[e] - pose.y) * x - (edges.ax[e] - pose.x) * y;
    const bAcross = (edges.by[e] - pose.y) * x - (edges.bx[e] - pose.x) * y;
    if (Math.max(aAcross, bAcross) <= -half || Math.min(aAcross, bAcross) >= half) continue;
    // The part of the edge within the strip, as shares of the way from a to b.
    const slope = bAcross - aAcross;
    const first = slope === 0 ? 0 : (-half - aAcross) / slope;
    const second = slope === 0 ? 1 : (half - aAcross) / slope;
    const from = Math.max(0, Math.min(first, second));
    const to = Math.min(1, Math.max(first, second));
    const out = Math.min(aOut + from * (bOut - aOut), aOut + to * (bOut - aOut));
    if (out < 0) continue;
    distance = Math.min(distance, out);
    // The first of those that are as near but for rounding gives the name.
    if (out < named - SAME_LENGTH) {
      named = out;
      edge = e;
    }
  }
  return { distance, edge };
}

function ownersOf(problem: PlacementProblem): PlacedThing[] {
  return [
    ...problem.outline.map((_, index): PlacedThing => ({ kind: 'wall', index })),
    ...problem.tall.flatMap((ring, index) => ring.map((): PlacedThing => ({ kind: 'tall', index }))),
  ];
}
