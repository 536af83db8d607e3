import type { Hold } from './carried.js';
import type { Motion, MotionPose } from './motion.js';

/**
 * What is known of one box in one passage. The spare delta is the largest cut by which *every* clear measure of the passage (widths, heights,
 * headroom, depths of floors; see narrow-passage.ts) can shrink at once so that the box still passes; negative: so much is
 * missing from every one of them. It is bracketed: a motion proves `atLeast`, bounds prove the other two.
 */
export interface Crossing {
  /** A motion is known in the passage narrowed by this much; `-Infinity`: none was found. Passes: atLeast >= 0. */
  readonly atLeast: number;
  /** In the ways the piece may be held there is no motion once the passage is narrowed by more than this; `Infinity`: not known. */
  readonly atMost: number;
  /** Nor by any motion whatever, however it is held or twisted; >= atMost. */
  readonly atMostAnyMotion: number;
  /** How it is held in the motion, or would have to be for the least widening; null where no way is known. */
  readonly hold: Hold | null;
  /** Through the passage as given, where atLeast >= 0. */
  readonly motion: Motion | null;
  /** The tightest moment of the motion, or the moment that fails; null where not known. */
  readonly narrowest: MotionPose | null;
  /** What decided: a formula, the subdivision of poses into boxes, or nothing. */
  readonly method: 'closed-form' | 'subdivision' | 'none';
}

/** No motion was found: what the bounds say, and nothing else. */
export function noWay(method: Crossing['method'], atMost: number, atMostAnyMotion: number): Crossing {
  return {
    atLeast: Number.NEGATIVE_INFINITY,
    atMost,
    atMostAnyMotion,
    hold: null,
    motion: null,
    narrowest: null,
    method,
  };
}
