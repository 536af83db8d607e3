import type { Motion, MotionPose } from '../../src/delivery/motion.js';
import type { Landing, Stair, Winder } from '../../src/delivery/passages.js';

/**
 * A slow replay that shares nothing with src: points all over the box's surface are carried along with many moments between each two
 * poses and held against the floor, the ceiling and the walls as passages.ts tells them. Returns the least room any point had, measured upright or level.
 */
export function leastRoom(passage: Stair | Landing | Winder, motion: Motion, moments = 6): number {
  const points = surface(motion);
  let least = Number.POSITIVE_INFINITY;
  motion.poses.forEach((pose, i) => {
    const before = motion.poses[i - 1] ?? pose;
    for (let k = 1; k <= moments; k++) {
      const moment = between(before, pose, k / moments);
      for (const point of points) least = Math.min(least, roomAt(passage, carried(point, moment)));
    }
  });
  return least;
}

type Spot = readonly [x: number, y: number, z: number];

function surface({ along, across, up }: Motion): Spot[] {
  const spots: Spot[] = [];
  const n = 10;
  for (let i = 0; i <= n; i++) {
    for (let k = 0; k <= n; k++) {
      for (const side of [0, n]) {
        for (const [a, b, c] of [
          [i, k, side],
          [i, side, k],
          [side, i, k],
        ]) {
          spots.push([(a / n - 0.5) * along, (b / n - 0.5) * across, (c / n - 0.5) * up]);
        }
      }
    }
  }
  return spots;
}

function between(a: MotionPose, b: MotionPose, share: number): MotionPose {
  const mix = (p: number, q: number): number => p + share * (q - p);
  return {
    x: mix(a.x, b.x),
    y: mix(a.y, b.y),
    z: mix(a.z, b.z),
    heading: mix(a.heading, b.heading),
    tilt: mix(a.tilt, b.tilt),
    roll: mix(a.roll, b.roll),
  };
}

/** Tilted with the front end up, then turned. */
function carried([a, b, c]: Spot, { x, y, z, heading, tilt }: MotionPose): Spot {
  const along = a * Math.cos(tilt) - c * Math.sin(tilt);
  const high = a * Math.sin(tilt) + c * Math.cos(tilt);
  return [
    x + along * Math.cos(heading) - b * Math.sin(heading),
    y + along * Math.sin(heading) + b * Math.cos(heading),
    z + high,
  ];
}

function roomAt(passage: Stair | Landing | Winder, [x, y, z]: Spot): number {
  const tan = Math.tan(passage.pitch);
  if (passage.kind === 'stair') {
    const { width, run, headroom, bottom, top } = passage;
    const walls = Math.min(y, width - y, x + bottom.depth, run + top.depth - x);
    const on = Math.min(Math.max(x, 0), run);
    const height = x < 0 ? bottom.height : x > run ? top.height : headroom;
    return Math.min(walls, z - on * tan, on * tan + height - z);
  }
  const { width, headroom } = passage;
  if (passage.kind === 'half-landing') {
    const { widthAfter, well, depth } = passage;
    const outer = width + well + widthAfter;
    if (y > 0) return Math.min(x, outer - x, depth - y, z, headroom - z);
    const below = x < width + well / 2;
    const walls = below ? Math.min(x, width - x) : Math.min(x - width - well, outer - x);
    const floor = below ? y * tan : -y * tan;
    return Math.min(walls, z - floor, floor + headroom - z);
  }
  const winds = passage.kind === 'winder';
  const breadth = winds ? width : passage.breadth;
  const depth = winds ? width : passage.depth;
  const widthAfter = winds ? width : passage.widthAfter;
  const climb = winds ? passage.climb : 0;
  if (y < 0) return Math.min(x, width - x, z - y * tan, headroom + y * tan - z);
  if (x < breadth) return Math.min(x, depth - y, z - climb, headroom - z);
  const floor = climb + (x - breadth) * tan;
  return Math.min(depth - y, y - (depth - widthAfter), z - floor, floor + headroom - z);
}
