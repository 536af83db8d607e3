import type { Hold } from '../../src/delivery/carried.js';
import type { Motion, MotionPose } from '../../src/delivery/motion.js';

export type Point3 = readonly [x: number, y: number, z: number];

/** The eight corners of a box at a pose, by plain rotations: Rz(heading) Ry(-tilt) Rx(roll). */
export function boxCorners({ along, across, up }: Omit<Motion, 'poses'>, pose: MotionPose): Point3[] {
  const corners: Point3[] = [];
  for (const i of [-1, 1]) {
    for (const j of [-1, 1]) {
      for (const k of [-1, 1]) {
        let [x, y, z] = [(i * along) / 2, (j * across) / 2, (k * up) / 2];
        [y, z] = [
          y * Math.cos(pose.roll) - z * Math.sin(pose.roll),
          y * Math.sin(pose.roll) + z * Math.cos(pose.roll),
        ];
        [x, z] = [
          x * Math.cos(pose.tilt) - z * Math.sin(pose.tilt),
          x * Math.sin(pose.tilt) + z * Math.cos(pose.tilt),
        ];
        [x, y] = [
          x * Math.cos(pose.heading) - y * Math.sin(pose.heading),
          x * Math.sin(pose.heading) + y * Math.cos(pose.heading),
        ];
        corners.push([x + pose.x, y + pose.y, z + pose.z]);
      }
    }
  }
  return corners;
}

/** How far a list of points reaches along an axis (0, 1, 2). */
export function extent(points: readonly Point3[], axis: 0 | 1 | 2): readonly [low: number, high: number] {
  const list = points.map((p) => p[axis]);
  return [Math.min(...list), Math.max(...list)];
}

export function width(points: readonly Point3[], axis: 0 | 1 | 2): number {
  const [low, high] = extent(points, axis);
  return high - low;
}

export function atRest(hold: Hold, heading = 0): MotionPose {
  return { x: 0, y: 0, z: 0, heading, tilt: hold.tilt, roll: 0 };
}

/** The poses of a motion and `between` more on every stretch. */
export function samplePoses({ poses }: Motion, between: number): MotionPose[] {
  const samples: MotionPose[] = [];
  poses.forEach((pose, i) => {
    const next = poses[i + 1];
    if (next === undefined) samples.push(pose);
    else {
      for (let k = 0; k <= between; k++) {
        const t = k / (between + 1);
        const mix = (a: number, b: number): number => a + t * (b - a);
        samples.push({
          x: mix(pose.x, next.x),
          y: mix(pose.y, next.y),
          z: mix(pose.z, next.z),
          heading: mix(pose.heading, next.heading),
          tilt: mix(pose.tilt, next.tilt),
          roll: mix(pose.roll, next.roll),
        });
      }
    }
  });
  return samples;
}

/** Corners of the convex hull in plan, anticlockwise (Andrew's chain). */
export function planHull(points: readonly Point3[]): (readonly [number, number])[] {
  const sorted = points.map((p) => [p[0], p[1]] as const).sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  const chain = (list: readonly (readonly [number, number])[]): (readonly [number, number])[] => {
    const out: (readonly [number, number])[] = [];
    for (const p of list) {
      for (;;) {
        const a = out[out.length - 2];
        const b = out[out.length - 1];
        if (a === undefined || b === undefined) break;
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 1e-6) break;
        out.pop();
      }
      out.push(p);
    }
    return out.slice(0, -1);
  };
  return [...chain(sorted), ...chain([...sorted].reverse())];
}
