import { deepFreeze } from './deep-freeze.js';
import type { FurnishingSpec } from './furnishing-types.js';
import { games } from './furnishings-games.js';
import type { FurnishingId } from './furnishings-ids.js';
import { roomPieces } from './furnishings-room.js';

/**
 * Other pieces of a games room by id; lengths in mm, mass in kg (null: not known before it is weighed). Each entry's `source` says of its
 * figures whether they are published (and where), second-hand, or common practice without a source.
 *
 * Only darts, table tennis and the height of the lamp have published figures. For table football, upright cabinets, pinball and music
 * machines no reliable standard exists, and furniture comes in every size: those are common sizes, so measure your own and give the
 * footprint and height beside the kind. The lamp's underside stands here for a bed of the default height; beside a table it is as far above
 * that table's bed.
 */
export const FURNISHINGS: { readonly [id in FurnishingId]: FurnishingSpec } =
  /* @__PURE__ */ listFurnishings();

function listFurnishings(): { readonly [id in FurnishingId]: FurnishingSpec } {
  return deepFreeze({ ...games(), ...roomPieces() });
}
