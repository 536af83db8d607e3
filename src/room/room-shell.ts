import type { Point, Ring } from '../geometry/types.js';
import type { SceneCeilingFace } from './scene.js';

/** What is known of the room when its obstacles and doors are read; null where it could not be read. */
export interface RoomShell {
  readonly outline: Ring | null;
  readonly wallNames: readonly string[];
  /** As in the scene. */
  readonly wallTolerances: readonly number[] | null;
  readonly ceiling: readonly SceneCeilingFace[] | null;
  /** Of a room by tape readings: each wall's ends by the name of the corner it starts from; null for other rooms. */
  readonly wallLines: ReadonlyMap<string, readonly [Point, Point]> | null;
}
