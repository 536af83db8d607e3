import { DEFAULTS } from '../equipment/defaults.js';
import type { Ring } from '../geometry/types.js';
import { lowCeilingRings } from '../room/ceiling.js';
import type { Scene } from '../room/scene.js';
import type { PlacedPiece } from './piece-place.js';

/** Something that a walker has to go round. */
export interface WalkBlock {
  readonly name: string;
  readonly ring: Ring;
}

/**
 * What blocks a walker besides the walls and the furnishings: obstacles that reach below the head height, and the floor under a
 * ceiling lower than that. Doors do not: their leaves are opened as one walks; nor do use zones.
 */
export function roomBlocks(scene: Scene): WalkBlock[] {
  const { headHeight } = DEFAULTS.standing;
  const blocks: WalkBlock[] = [];
  for (const { name, ring, from } of scene.obstacles) if (from < headHeight) blocks.push({ name, ring });
  for (const face of scene.ceiling) {
    for (const ring of lowCeilingRings({ ...scene, ceiling: [face] }, headHeight))
      blocks.push({ name: face.name, ring });
  }
  return blocks;
}

/** Pieces that reach below the head height. */
export function pieceBlocks(placed: readonly PlacedPiece[]): WalkBlock[] {
  return placed
    .filter(({ spec }) => spec.from < DEFAULTS.standing.headHeight)
    .map(({ spec, ring }) => ({ name: spec.name, ring }));
}
