import type { PoseJudge } from './plan-feature.js';
import type { PlanPose } from './plan-shape.js';

/** A box of free poses by its bounds. */
export interface PoseBounds {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  readonly from: number;
  readonly to: number;
}

/** Halvings of a straight way in the attempt to prove it free: a short cut that needs more is not worth it. */
const HALVINGS = 5;

/**
 * Poses through a row of free boxes each of which shares a face with the next: the start, the middle of every face that is passed, the
 * goal. Boxes are convex, so the straight way between two poses of one box stays in it. Headings run on: `turn` is added
 * or taken off where the row passes the end of the circle.
 */
export function posesThrough(
  row: readonly PoseBounds[],
  start: PlanPose,
  goal: PlanPose,
  turn: number,
): PlanPose[] {
  const poses: PlanPose[] = [inTurn(start, row[0], turn)];
  let shift = 0;
  for (let i = 1; i < row.length; i++) {
    const a = row[i - 1];
    let b = row[i];
    // The next box as it lies to this one, which lies where the poses have got to.
    const here = shifted(a, shift);
    b = shifted(b, shift);
    if (b.from > here.to + 1e-9) {
      shift -= turn;
      b = shifted(row[i], shift);
    } else if (b.to < here.from - 1e-9) {
      shift += turn;
      b = shifted(row[i], shift);
    }
    poses.push({
      x: middle(here.x0, here.x1, b.x0, b.x1),
      y: middle(here.y0, here.y1, b.y0, b.y1),
      heading: middle(here.from, here.to, b.from, b.to),
    });
  }
  poses.push(inTurn(goal, shifted(row[row.length - 1], shift), turn));
  return poses;
}

/**
 * The same way with fewer poses: leaves poses out where the straight way between those that are left is proved free by the judge. Two
 * poses that follow each other in `poses` are taken to be proved.
 */
export function shorten(poses: readonly PlanPose[], judge: PoseJudge): PlanPose[] {
  const kept = [poses[0]];
  const last = poses.length - 1;
  for (let i = 0; i < last; ) {
    // Reach out in doubled strides, then halve the stride that failed.
    let sure = i + 1;
    let stride = 2;
    while (i + stride <= last && judge.isFreeBetween(poses[i], poses[i + stride], HALVINGS)) {
      sure = i + stride;
      stride *= 2;
    }
    let failed = Math.min(i + stride, last + 1);
    if (i + stride > last && sure < last && judge.isFreeBetween(poses[i], poses[last], HALVINGS)) sure = last;
    while (failed - sure > 1) {
      const tried = (sure + failed) >> 1;
      if (judge.isFreeBetween(poses[i], poses[tried], HALVINGS)) sure = tried;
      else failed = tried;
    }
    kept.push(poses[sure]);
    i = sure;
  }
  return kept;
}

function middle(a0: number, a1: number, b0: number, b1: number): number {
  return (Math.max(a0, b0) + Math.min(a1, b1)) / 2;
}

function shifted(box: PoseBounds, by: number): PoseBounds {
  return by === 0 ? box : { ...box, from: box.from + by, to: box.to + by };
}

/** The pose with its heading moved by whole turns into the box. */
function inTurn(pose: PlanPose, box: PoseBounds, turn: number): PlanPose {
  const turns = Math.round(((box.from + box.to) / 2 - pose.heading) / turn);
  return turns === 0 ? pose : { ...pose, heading: pose.heading + turns * turn };
}
