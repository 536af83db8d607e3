import type { Ring } from '../geometry/types.js';
import type { SceneCeilingFace } from './scene.js';

/** What is known of the room when its obstacles and doors are read; null where it could not be read. */
export interface RoomShell {
  readonly outline: Ring | null;
  readonly wallNames: readonly string[];
  /** As in the scene. */
  readonly wallTolerances: readonly number[] | null;
  readonly ceiling: readonly SceneCeilingFace[] | null;
}
