import type { TableSpec } from '../equipment/equipment-types.js';
import type { Placement } from '../geometry/types.js';
import type { Scene, SceneObstacle } from '../room/scene.js';
import { clearanceAt } from './clearance-at.js';
import { playerProblem, railTop } from './problem-for.js';

/**
 * Width of floor all round the frame that is free for players to stand on, mm: distance from the frame to everything that leaves
 * no room to stand, negative where such a thing overlaps the frame. A lamp or a beam wholly over the frame takes nobody's floor:
 * a disc that keeps off the frame keeps off it as well.
 */
export function playerStrip(scene: Scene, table: TableSpec, pose: Placement, grow = 0): number {
  const overFrame = hangsOver(table, pose);
  const obstacles = scene.obstacles.filter((o) => o.from - grow < railTop(table) || !overFrame(o));
  return clearanceAt(playerProblem({ ...scene, obstacles }, table, grow), pose).clearance;
}

function hangsOver(table: TableSpec, pose: Placement): (obstacle: SceneObstacle) => boolean {
  const cos = Math.cos(pose.angle);
  const sin = Math.sin(pose.angle);
  return ({ ring }) =>
    ring.every(([x, y]) => {
      const dx = x - pose.x;
      const dy = y - pose.y;
      const along = Math.abs(cos * dx + sin * dy);
      const across = Math.abs(cos * dy - sin * dx);
      return 2 * along <= table.outer.length && 2 * across <= table.outer.width;
    });
}
