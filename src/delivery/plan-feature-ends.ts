import type { HeadingTable } from './plan-feature-flat.js';
import type { PoseSpan } from './plan-feature-span.js';
import type { PlanPose, PlanShape } from './plan-shape.js';
import type { PlanZone } from './plan-space.js';

/** mm: a pose counts as in a zone this little outside; a box of poses counts as touching it ten times as far off. */
const EPS = 1e-7;

/** Whether some pose of the span about (x, y) may lie in one of the zones with the whole shape. Exact for a zone with one bound. */
export function mayLieIn(
  zones: readonly PlanZone[],
  shape: PlanShape,
  span: PoseSpan,
  x: number,
  y: number,
): boolean {
  return zones.some((zone) =>
    zone.every(({ nx, ny, offset }) => {
      span.support(nx, ny);
      return nx * x + ny * y + span.reach(nx, ny) - span.least - shape.radius >= offset - 10 * EPS;
    }),
  );
}

/**
 * A pose of the box (the span about (x, y), headings from entry i to entry k) that lies in one of the zones; null: none of those that were
 * tried. In a zone with one bound along an axis the best of them is the best of the box.
 */
export function poseInZones(
  zones: readonly PlanZone[],
  shape: PlanShape,
  span: PoseSpan,
  { cos, sin, turn, steps }: HeadingTable,
  { x, y }: PlanPose,
  i: number,
  k: number,
): PlanPose | null {
  for (const zone of zones) {
    const towardsX = Math.sign(zone.reduce((sum, { nx }) => sum + nx, 0));
    const towardsY = Math.sign(zone.reduce((sum, { ny }) => sum + ny, 0));
    for (const share of [0, 1]) {
      const px = x + share * towardsX * span.hx;
      const py = y + share * towardsY * span.hy;
      for (const entry of [(i + k) / 2, i, k]) {
        if (liesIn(zone, shape, px, py, cos[entry], sin[entry]))
          return { x: px, y: py, heading: (entry * turn) / steps };
      }
    }
  }
  return null;
}

function liesIn(
  zone: PlanZone,
  { halfLength, halfWidth, radius }: PlanShape,
  x: number,
  y: number,
  cos: number,
  sin: number,
): boolean {
  return zone.every(({ nx, ny, offset }) => {
    const support = halfLength * Math.abs(nx * cos + ny * sin) + halfWidth * Math.abs(ny * cos - nx * sin);
    return nx * x + ny * y - support - radius >= offset - EPS;
  });
}
