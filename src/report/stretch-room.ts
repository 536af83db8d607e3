import { convexParts } from '../geometry/convex-parts.js';
import type { Placement, Point, Ring } from '../geometry/types.js';
import type { Scene } from '../room/scene.js';

/**
 * The room made longer by so much along and across a table: cut through the table's centre along its axes, the quarters
 * moved apart by half of it each way, the walls that were cut lengthened. The table keeps its place. Things that stand in
 * the cut move with the side their middle lies on, whole. Ceiling faces stay as they are over the table and simply go on.
 */
export function stretchRoom(scene: Scene, pose: Placement, along: number, across: number): Scene {
  const ux = Math.cos(pose.angle);
  const uy = Math.sin(pose.angle);
  const shift = ([x, y]: Point): Point => {
    const u = (x - pose.x) * ux + (y - pose.y) * uy;
    const v = (y - pose.y) * ux - (x - pose.x) * uy;
    const du = (Math.sign(u) * along) / 2;
    const dv = (Math.sign(v) * across) / 2;
    return [du * ux - dv * uy, du * uy + dv * ux];
  };
  const moved = (point: Point, by: Point): Point => [point[0] + by[0], point[1] + by[1]];
  const whole = (ring: Ring): Ring => {
    const by = shift(middle(ring));
    return ring.map((p) => moved(p, by));
  };
  return {
    ...scene,
    outline: scene.outline.map((p) => moved(p, shift(p))),
    obstacles: scene.obstacles.map((o) => {
      const ring = whole(o.ring);
      return { ...o, ring, parts: convexParts(ring) };
    }),
    doors: scene.doors.map((d) => {
      const by = shift([(d.hinge[0] + d.latch[0]) / 2, (d.hinge[1] + d.latch[1]) / 2]);
      return {
        ...d,
        hinge: moved(d.hinge, by),
        latch: moved(d.latch, by),
        swing: d.swing === null ? null : d.swing.map((p) => moved(p, by)),
      };
    }),
    reserved: scene.reserved.map((r) => ({ ...r, ring: whole(r.ring) })),
  };
}

/** Mean of the corners. */
export function middle(ring: Ring): Point {
  let x = 0;
  let y = 0;
  for (const [px, py] of ring) {
    x += px;
    y += py;
  }
  return [x / ring.length, y / ring.length];
}
