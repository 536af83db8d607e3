import type { PlanPose, PlanShape } from '../src/delivery/plan-shape.js';
import type { PlanSolid, PlanSpace } from '../src/delivery/plan-space.js';

/** How many of the nearest samples each one is joined to. */
const NEIGHBOURS = 12;
/** No point of the shape moves more than this between two checks of a straight way, mm. */
const STEP = 15;
/** Samples that are drawn for one that is kept, at most. */
const DRAWS = 50;

/**
 * Peer: a sampled roadmap (Kavraki, Svestka, Latombe and Overmars 1996). Random free poses from a fixed seed, each joined to its nearest ones by straight
 * ways that are checked at close steps; then a look whether start and goal hang together. Written for reading, by the textbook. Finding a way
 * shows that there is one (up to the steps between the checks); finding none shows nothing.
 */
export function roadmapPlan(
  space: PlanSpace,
  shape: PlanShape,
  start: PlanPose,
  goal: PlanPose,
  samples: number,
): { readonly found: boolean; readonly poses: readonly PlanPose[]; readonly checks: number } {
  const { halfLength, halfWidth, radius } = shape;
  const reach = Math.hypot(halfLength, halfWidth) + radius;
  let checks = 0;
  let seed = 1;
  const random = (): number => {
    // A linear congruential generator (Numerical Recipes).
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return seed / 2 ** 32;
  };
  const isFree = (pose: PlanPose): boolean => {
    checks++;
    return space.solids.every((solid) => !meets(solid, shape, pose));
  };
  /** The shorter way round: headings count modulo half a turn. */
  const turnBetween = (a: PlanPose, b: PlanPose): number => {
    const turn = (b.heading - a.heading) % Math.PI;
    return turn > Math.PI / 2 ? turn - Math.PI : turn < -Math.PI / 2 ? turn + Math.PI : turn;
  };
  const distance = (a: PlanPose, b: PlanPose): number =>
    Math.hypot(b.x - a.x, b.y - a.y, reach * turnBetween(a, b));
  const isClearBetween = (a: PlanPose, b: PlanPose): boolean => {
    const turn = turnBetween(a, b);
    const count = Math.ceil((Math.hypot(b.x - a.x, b.y - a.y) + reach * Math.abs(turn)) / STEP);
    for (let k = 1; k < count; k++) {
      const t = k / count;
      if (!isFree({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y), heading: a.heading + t * turn }))
        return false;
    }
    return true;
  };

  const poses = [start, goal];
  if (!isFree(start) || !isFree(goal)) return { found: false, poses: [], checks };
  for (let draw = 0; draw < samples * DRAWS && poses.length < samples + 2; draw++) {
    const pose = {
      x: space.x0 + random() * (space.x1 - space.x0),
      y: space.y0 + random() * (space.y1 - space.y0),
      heading: random() * Math.PI,
    };
    if (isFree(pose)) poses.push(pose);
  }

  // Groups that hang together, and how each pose was reached from the start.
  const joined = poses.map((): number[] => []);
  for (let i = 0; i < poses.length; i++) {
    const nearest = poses
      .map((pose, k) => ({ k, away: distance(poses[i], pose) }))
      .filter(({ k }) => k !== i)
      .sort((a, b) => a.away - b.away)
      .slice(0, NEIGHBOURS);
    for (const { k } of nearest) {
      if (joined[i].includes(k) || !isClearBetween(poses[i], poses[k])) continue;
      joined[i].push(k);
      joined[k].push(i);
    }
  }
  const from = new Map<number, number>([[0, -1]]);
  const queue = [0];
  for (const i of queue) {
    for (const k of joined[i]) {
      if (from.has(k)) continue;
      from.set(k, i);
      queue.push(k);
    }
  }
  if (!from.has(1)) return { found: false, poses: [], checks };
  const way: PlanPose[] = [];
  for (let i = 1; i >= 0; i = from.get(i) ?? -1) way.push(poses[i]);
  return { found: true, poses: way.reverse(), checks };
}

/** Rectangle and convex solid by separating axes; a disc round the rectangle counts through its sides and the solid's faces only. */
function meets(solid: PlanSolid, { halfLength, halfWidth, radius }: PlanShape, pose: PlanPose): boolean {
  const [cos, sin] = [Math.cos(pose.heading), Math.sin(pose.heading)];
  for (const { nx, ny, offset } of solid.faces) {
    const support =
      halfLength * Math.abs(nx * cos + ny * sin) + halfWidth * Math.abs(ny * cos - nx * sin) + radius;
    if (nx * pose.x + ny * pose.y - offset > support) return false;
  }
  if (solid.corners.length === 0) return true;
  for (const [ux, uy, half] of [
    [cos, sin, halfLength],
    [-sin, cos, halfWidth],
  ]) {
    const along = solid.corners.map(([x, y]) => ux * (x - pose.x) + uy * (y - pose.y));
    if (Math.min(...along) > half + radius || Math.max(...along) < -half - radius) return false;
  }
  return true;
}
