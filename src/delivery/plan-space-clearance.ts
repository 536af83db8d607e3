import { SAME_LENGTH } from '../geometry/steady.js';
import type { PlanPose, PlanShape } from './plan-shape.js';
import type { PlanSolid, PlanSpace } from './plan-space.js';

/**
 * How far the shape in this pose is from the nearest solid, mm: never more than the distance, and equal to it where a side of one faces
 * the other; negative: so far the two overlap.
 */
export function planClearance(space: PlanSpace, shape: PlanShape, pose: PlanPose): number {
  return Math.min(...space.solids.map((solid) => apart(solid, shape, pose)));
}

/** The pose with the least clearance among many taken evenly from a way, `samples` between each two poses. */
export function tightestPose(
  space: PlanSpace,
  shape: PlanShape,
  poses: readonly PlanPose[],
  samples: number,
): PlanPose {
  let tightest = poses[0];
  let least = planClearance(space, shape, tightest);
  for (let i = 1; i < poses.length; i++) {
    for (let k = 1; k <= samples; k++) {
      const pose = poseBetween(poses[i - 1], poses[i], k / samples);
      const clearance = planClearance(space, shape, pose);
      // The first of those that are as tight but for rounding.
      if (clearance >= least - SAME_LENGTH) continue;
      least = clearance;
      tightest = pose;
    }
  }
  return tightest;
}

/** The pose at a share of the way from a to b. */
export function poseBetween(a: PlanPose, b: PlanPose, share: number): PlanPose {
  return {
    x: a.x + share * (b.x - a.x),
    y: a.y + share * (b.y - a.y),
    heading: a.heading + share * (b.heading - a.heading),
  };
}

/** The widest gap along any face's normal and any side of the rectangle. */
function apart(solid: PlanSolid, { halfLength, halfWidth, radius }: PlanShape, pose: PlanPose): number {
  const [cos, sin] = [Math.cos(pose.heading), Math.sin(pose.heading)];
  let gap = Number.NEGATIVE_INFINITY;
  for (const { nx, ny, offset } of solid.faces) {
    const support = halfLength * Math.abs(nx * cos + ny * sin) + halfWidth * Math.abs(ny * cos - nx * sin);
    gap = Math.max(gap, nx * pose.x + ny * pose.y - offset - support);
  }
  if (solid.corners.length === 0) return gap - radius;
  const along = solid.corners.map(([x, y]) => (x - pose.x) * cos + (y - pose.y) * sin);
  const across = solid.corners.map(([x, y]) => (y - pose.y) * cos - (x - pose.x) * sin);
  return (
    Math.max(
      gap,
      Math.min(...along) - halfLength,
      -Math.max(...along) - halfLength,
      Math.min(...across) - halfWidth,
      -Math.max(...across) - halfWidth,
    ) - radius
  );
}
