import type { MotionPose } from './motion.js';

/** A placed box as twelve numbers: its centre, then half its edges along, across and up as vectors. mm. */
export const FRAME = 12;

/** Writes where the box with edges along, across and up stands at a pose; the rotation is that of motion.ts. */
export function placeBox(
  frames: Float64Array,
  at: number,
  along: number,
  across: number,
  up: number,
  { x, y, z, heading, tilt, roll }: MotionPose,
): void {
  const [ch, sh] = [Math.cos(heading), Math.sin(heading)];
  const [ct, st] = [Math.cos(tilt), Math.sin(tilt)];
  const [cr, sr] = [Math.cos(roll), Math.sin(roll)];
  frames[at] = x;
  frames[at + 1] = y;
  frames[at + 2] = z;
  frames[at + 3] = (along / 2) * ch * ct;
  frames[at + 4] = (along / 2) * sh * ct;
  frames[at + 5] = (along / 2) * st;
  frames[at + 6] = (across / 2) * (-ch * st * sr - sh * cr);
  frames[at + 7] = (across / 2) * (-sh * st * sr + ch * cr);
  frames[at + 8] = (across / 2) * ct * sr;
  frames[at + 9] = (up / 2) * (-ch * st * cr + sh * sr);
  frames[at + 10] = (up / 2) * (-sh * st * cr - ch * sr);
  frames[at + 11] = (up / 2) * ct * cr;
}

/** How far the box reaches from its centre in direction n: the sum of |n.e| over its three half edges. */
export function reachAlong(f: Float64Array, at: number, nx: number, ny: number, nz: number): number {
  return (
    Math.abs(nx * f[at + 3] + ny * f[at + 4] + nz * f[at + 5]) +
    Math.abs(nx * f[at + 6] + ny * f[at + 7] + nz * f[at + 8]) +
    Math.abs(nx * f[at + 9] + ny * f[at + 10] + nz * f[at + 11])
  );
}

/** n.p at the point of the box that lies farthest in direction n. */
export function farthestAlong(f: Float64Array, at: number, nx: number, ny: number, nz: number): number {
  return nx * f[at] + ny * f[at + 1] + nz * f[at + 2] + reachAlong(f, at, nx, ny, nz);
}
