import { Point, Polygon, Segment } from '@flatten-js/core';
import type { Placement, Ring, Size } from '../../src/geometry/types.js';
import type { PlacementProblem } from '../../src/placement/placement-problem.js';
import { type GridResult, refineGrid } from './refine-grid.js';

/** Peer: a refined grid of poses, each measured with the distances of @flatten-js/core. */
export function gridSearch(problem: PlacementProblem, wanted: number): GridResult {
  const room = toPolygon(problem.outline);
  const things = problem.tall.map(toPolygon);
  const edges = [problem.outline, ...problem.tall].flatMap((ring) =>
    ring.map((corner, i) => {
      const next = ring[(i + 1) % ring.length];
      return new Segment(new Point(corner[0], corner[1]), new Point(next[0], next[1]));
    }),
  );
  return refineGrid(
    problem.outline,
    (pose, beat) => {
      const middle = new Point(pose.x, pose.y);
      if (!room.contains(middle) || things.some((thing) => thing.contains(middle))) return null;
      const table = toPolygon(cornersOf(problem.play, pose));
      let least = Number.POSITIVE_INFINITY;
      for (const edge of edges) {
        least = Math.min(least, table.distanceTo(edge)[0]);
        if (least <= beat) return null;
      }
      return least;
    },
    wanted,
  );
}

export function cornersOf(size: Size, { x, y, angle }: Placement): Ring {
  const [ux, uy] = [(size.length / 2) * Math.cos(angle), (size.length / 2) * Math.sin(angle)];
  const [vx, vy] = [(-size.width / 2) * Math.sin(angle), (size.width / 2) * Math.cos(angle)];
  return [
    [x - ux - vx, y - uy - vy],
    [x + ux - vx, y + uy - vy],
    [x + ux + vx, y + uy + vy],
    [x - ux + vx, y - uy + vy],
  ];
}

function toPolygon(ring: Ring): Polygon {
  return new Polygon(ring.map(([x, y]) => new Point(x, y)));
}
