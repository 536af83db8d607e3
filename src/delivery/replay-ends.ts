import { FRAME, farthestAlong, placeBox } from './box-distance-frame.js';
import type { Motion, MotionPose } from './motion.js';
import type { Passage } from './passages.js';

/** mm: a box that stands exactly on the line counts as beyond it. */
const EASE = 1e-6;

/**
 * Whether the first pose lies wholly on the near side:
 * - gate and lift: before the wall, y <= 0;
 * - corner: within the first corridor, y <= width: whatever clears its walls there can be drawn straight back along it, for ever;
 * - stair: before the first step, x <= 0; where the level at the foot has an end wall, only its centre must (it may be too shallow for more);
 * - landing and winder: on the flight below, y <= 0 and x <= width;
 * - corridor: anywhere.
 */
export function startsNear(passage: Passage, motion: Motion): boolean {
  const box = placed(motion, motion.poses[0]);
  switch (passage.kind) {
    case 'doorway':
    case 'opening':
    case 'lift':
      return most(box, 0, 1) <= EASE;
    case 'corridor':
      return true;
    case 'corner':
      return most(box, 0, 1) <= passage.width + EASE;
    case 'stair':
      return (passage.bottom.depth === Infinity ? most(box, 1, 0) : box[0]) <= EASE;
    case 'quarter-landing':
    case 'half-landing':
    case 'winder':
      return most(box, 0, 1) <= EASE && most(box, 1, 0) <= passage.width + EASE;
  }
}

/**
 * Whether the last pose lies wholly on the far side:
 * - gate: behind the wall, y >= depth; lift: within the car, y >= door.depth;
 * - corner: within the second corridor, x sin g - y cos g <= widthAfter, and so free to go on along it;
 * - stair: beyond the last step, x >= run; where the level at the head has an end wall, only its centre must; an endless flight has no far side;
 * - quarter landing and winder: on the flight above, x >= breadth (or width); half landing: on the flight above, y <= 0 and x >= width + well;
 * - corridor: anywhere.
 */
export function endsFar(passage: Passage, motion: Motion): boolean {
  const box = placed(motion, motion.poses[motion.poses.length - 1]);
  switch (passage.kind) {
    case 'doorway':
    case 'opening':
      return least(box, 0, 1) >= passage.depth - EASE;
    case 'lift':
      return least(box, 0, 1) >= passage.door.depth - EASE;
    case 'corridor':
      return true;
    case 'corner': {
      const { angle, widthAfter } = passage;
      return most(box, Math.sin(angle), -Math.cos(angle)) <= widthAfter + EASE;
    }
    case 'stair':
      if (passage.run === Infinity) return true;
      return (passage.top.depth === Infinity ? least(box, 1, 0) : box[0]) >= passage.run - EASE;
    case 'quarter-landing':
      return least(box, 1, 0) >= passage.breadth - EASE;
    case 'winder':
      return least(box, 1, 0) >= passage.width - EASE;
    case 'half-landing':
      return most(box, 0, 1) <= EASE && least(box, 1, 0) >= passage.width + passage.well - EASE;
  }
}

function placed({ along, across, up }: Motion, pose: MotionPose): Float64Array {
  const box = new Float64Array(FRAME);
  placeBox(box, 0, along, across, up, pose);
  return box;
}

/** Greatest and least nx x + ny y over the box. */
function most(box: Float64Array, nx: number, ny: number): number {
  return farthestAlong(box, 0, nx, ny, 0);
}

function least(box: Float64Array, nx: number, ny: number): number {
  return -most(box, -nx, -ny);
}
