import { pointInRing, type Sign } from '../geometry/predicates.js';
import type { Scene } from './scene.js';

/** Where a point lies by the room's outline, exactly: 1 inside, 0 on a wall, -1 outside. Obstacles are not looked at. */
export function pointInRoom(scene: Scene, x: number, y: number): Sign {
  return pointInRing(scene.outline, x, y);
}
