import { isOpenFloor, keepsFromEdge, WAY_SLACK, type WayPlan } from './free-way-plan.js';
import type { Point } from './types.js';

/**
 * Whether a disc of diameter `width` mm can follow the path with its centre: every segment keeps half the width from every edge, and the
 * first point is open floor; so then is the rest, since no segment meets an edge. Touching is free, up to {@link WAY_SLACK}. Inside and
 * crossing are decided exactly, distances in doubles. A path of one point is a disc that stays there; one of none is no path.
 */
export function keepsWidth(plan: WayPlan, path: readonly Point[], width: number): boolean {
  if (path.length === 0 || !isOpenFloor(plan, path[0][0], path[0][1])) return false;
  if (path.length === 1) return segmentKeeps(plan, path[0], path[0], width);
  for (let i = 1; i < path.length; i++) if (!segmentKeeps(plan, path[i - 1], path[i], width)) return false;
  return true;
}

/** The same for one segment, but for the open floor. */
export function segmentKeeps(plan: WayPlan, p: Point, q: Point, width: number): boolean {
  const distance = width / 2 - WAY_SLACK;
  for (let i = 0; i < plan.count; i++)
    if (!keepsFromEdge(plan, i, p[0], p[1], q[0], q[1], distance)) return false;
  return true;
}
