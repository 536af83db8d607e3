import { DEFAULTS } from '../equipment/defaults.js';
import type { TableSpec } from '../equipment/equipment-types.js';
import type { Scene, SceneObstacle, SceneReserved } from '../room/scene.js';
import { zoneName } from './layout-rules.js';
import type { PlacedPiece } from './piece-place.js';

/**
 * The room as the table, its cues and its players find it with the pieces in it. Bodies are obstacles, after the room's own, and so are
 * use zones that may not be shared with cueing. Those that may are reserved, since the table's frame keeps off them, unless they start at or
 * above its rails.
 *
 * @param table Its rails count; left out, those of the default table do.
 */
export function furnishedScene(
  scene: Scene,
  placed: readonly PlacedPiece[],
  table: Pick<TableSpec, 'bedHeight' | 'railHeight'> = DEFAULTS.table,
): Scene {
  const obstacles: SceneObstacle[] = [...scene.obstacles];
  const reserved: SceneReserved[] = [...scene.reserved];
  const top = table.bedHeight + table.railHeight;
  for (const { spec, ring, parts, zones } of placed) {
    obstacles.push({ name: spec.name, ring, parts, from: spec.from, to: spec.to, movable: true });
    for (const zone of zones) {
      const name = zoneName(spec.name, zone.spec.name);
      const { withCueing, from, to } = zone.spec;
      if (!withCueing) obstacles.push({ name, ring: zone.ring, parts: [zone.ring], from, to, movable: true });
      else if (from < top) reserved.push({ name, ring: zone.ring });
    }
  }
  return { ...scene, obstacles, reserved };
}
