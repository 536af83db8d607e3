import type { Motion, MotionPose } from './motion.js';
import type { Passage } from './passages.js';
import { endsFar, startsNear } from './replay-ends.js';
import { Sweep } from './replay-sweep.js';
import { passageSolids } from './solids.js';
import type { ConvexSolid } from './solids-convex.js';

export interface ReplayOptions {
  /**
   * How closely the clearance is narrowed down, mm; default 0.1. It is narrowed to a tenth of itself where that is less, but never
   * beyond 0.0001 mm.
   */
  readonly finest?: number;
}

export interface Replay {
  /** No point of the box comes nearer to a solid than this, mm, at any moment of the motion. 0 or less: it may touch. `Infinity`: there is no solid. */
  readonly clearance: number;
  /** The moment at which it was nearest of all that were looked at: the index of the pose before it, and the share of the way to the next. */
  readonly at: { readonly step: number; readonly share: number };
  readonly pose: MotionPose;
  /** Name of the solid that is nearest there. */
  readonly nearest: string;
  /** How many stretches of the motion were looked at. */
  readonly steps: number;
}

export interface PassageReplay extends Replay {
  /** The first pose lies wholly on the near side of the passage, and the last wholly on the far side. */
  readonly startsNear: boolean;
  readonly endsFar: boolean;
}

/**
 * Follows a box through a motion among solids, between its poses too. `clearance` is a proved lower bound of the distance over the
 * whole motion, not the least of samples: it is short of the true least distance by no more than `finest` (see the options). Where a pose touches
 * or goes in, `clearance` is 0 or less (how far one would have to move to be clear along the best face, at the worst of the given poses
 * if one of them touches) and `pose` shows it. Rounding, below 1e-6 mm for motions within 50 m of the origin, is not allowed for; a pose
 * farther out, or not finite, counts as touching (`-Infinity`).
 * @throws RangeError for a motion without poses
 */
export function replayMotion(
  motion: Motion,
  solids: readonly ConvexSolid[],
  { finest = 0.1 }: ReplayOptions = {},
): Replay {
  if (motion.poses.length === 0) throw new RangeError('A motion needs at least one pose.');
  const sweep = new Sweep(motion, solids, finest);
  sweep.run();
  const { clearance, step, share, nearest, steps } = sweep;
  return {
    clearance,
    at: { step, share },
    pose: poseBetween(motion.poses, step, share),
    nearest: solids[nearest]?.name ?? '',
    steps,
  };
}

/**
 * Replays a motion in a passage. With a `clearance` above 0, `startsNear` and `endsFar` it is a proof that the box can be brought
 * through the solids of `passageSolids` without touching them; what each end asks is told in replay-ends.ts.
 */
export function replayPassage(passage: Passage, motion: Motion, options: ReplayOptions = {}): PassageReplay {
  return {
    ...replayMotion(motion, passageSolids(passage), options),
    startsNear: startsNear(passage, motion),
    endsFar: endsFar(passage, motion),
  };
}

function poseBetween(poses: readonly MotionPose[], step: number, share: number): MotionPose {
  const from = poses[step];
  const to = share === 0 ? from : poses[step + 1];
  const mix = (a: number, b: number): number => (share === 0 ? a : a + share * (b - a));
  return {
    x: mix(from.x, to.x),
    y: mix(from.y, to.y),
    z: mix(from.z, to.z),
    heading: mix(from.heading, to.heading),
    tilt: mix(from.tilt, to.tilt),
    roll: mix(from.roll, to.roll),
  };
}
