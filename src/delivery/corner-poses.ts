import { type CornerPlan, type CornerSpare, squareHeadings } from './corner-spare.js';
import type { PlanPose, PlanShape } from './plan-shape.js';

/**
 * Where a shape stands that keeps `gap` mm from both outer walls of a corner at a heading (see corner-spare.ts for the frame). With half
 * of spare(alpha) as the gap it is in the middle of the slack: at least as far from the inner corner as well.
 */
export function cornerCentre(
  { angle }: Pick<CornerPlan, 'angle'>,
  { halfLength, halfWidth, radius }: PlanShape,
  heading: number,
  gap: number,
): { readonly x: number; readonly y: number } {
  const fromFirst = acrossWall(heading) + gap;
  const fromSecond = acrossWall(heading - angle) + gap;
  return { x: (fromSecond + fromFirst * Math.cos(angle)) / Math.sin(angle), y: fromFirst };

  function acrossWall(turn: number): number {
    return halfLength * Math.abs(Math.sin(turn)) + halfWidth * Math.abs(Math.cos(turn)) + radius;
  }
}

/** Share of the spare that straight lines between poses may use up. */
const SHARE_OF_GAP = 0.2;
const MOST_TURNS = 400;
const FEWEST_TURNS = 8;

/**
 * The motion that proves a spare >= 0: from a pose in corridor one wholly beyond the inner corner, round, to one in corridor two. Between two poses
 * centre and heading run evenly. It keeps at least 0.3 of `spare.atLeast` from every wall (half, less what the straight lines take); with next to nothing
 * to spare it may touch, to within 0.002 mm for what a house holds.
 *
 * c0(alpha) bulges away from the outer walls between headings square to a wall, so a straight line between two of its points comes nearer to
 * those walls by at most reach step^2 / 8 and no nearer to the inner corner (see the cones in corner-spare.ts). Headings square to a wall are always poses.
 */
export function cornerPoses(corner: CornerPlan, shape: PlanShape, spare: CornerSpare): readonly PlanPose[] {
  const { width, widthAfter, angle } = corner;
  const { from, to } = spare;
  const gap = Math.max(0, spare.atLeast) / 2;
  const reach = Math.hypot(shape.halfLength, shape.halfWidth);
  const poses: PlanPose[] = [];
  const add = (heading: number): void => {
    poses.push({ ...cornerCentre(corner, shape, heading, gap), heading });
  };
  const step = Math.min(
    Math.PI / 2 / FEWEST_TURNS,
    Math.max(Math.PI / 2 / MOST_TURNS, Math.sqrt((8 * SHARE_OF_GAP * 2 * gap) / reach)),
  );
  const stops = headingsBetween(angle, from, to);
  add(from);
  for (let i = 1; i < stops.length; i++) {
    const start = stops[i - 1] ?? from;
    const end = stops[i] ?? to;
    const count = Math.ceil(Math.abs(end - start) / step);
    for (let k = 1; k <= count; k++) add(k === count ? end : start + ((end - start) * k) / count);
  }

  // Out of the corner: as far along either outer wall as both the inner corner and O lie, with the shape's own reach to spare.
  const inner = (one: number, other: number): number =>
    Math.max(0, (other + one * Math.cos(angle)) / Math.sin(angle)) + reach + shape.radius + 1;
  const first = poses[0];
  const last = poses[poses.length - 1];
  if (first === undefined || last === undefined) return poses;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const out = Math.max(0, inner(width, widthAfter) - first.x);
  const away = Math.max(0, inner(widthAfter, width) - (last.x * c + last.y * s));
  return [
    { ...first, x: first.x + out },
    ...poses,
    { x: last.x + away * c, y: last.y + away * s, heading: last.heading },
  ];
}

function headingsBetween(angle: number, from: number, to: number): number[] {
  if (from === to) return [from];
  const low = Math.min(from, to);
  const high = Math.max(from, to);
  const apart = 1e-9;
  const inner = squareHeadings(angle, low, high).filter((x) => x > low + apart && x < high - apart);
  const stops = [low, ...inner, high];
  return from < to ? stops : stops.reverse();
}
