import { deepFreeze } from './deep-freeze.js';
import type { TableSpec } from './equipment-types.js';
import { type CaromTableId, caromTables } from './tables-carom.js';
import { type EnglishTableId, englishTables } from './tables-english.js';
import { type PoolTableId, poolTables } from './tables-pool.js';
import { type PyramidTableId, pyramidTables } from './tables-pyramid.js';
import { type SnookerTableId, snookerTables } from './tables-snooker.js';

export type TableId = PoolTableId | EnglishTableId | SnookerTableId | CaromTableId | PyramidTableId;

/**
 * The tables of the trade by id, the largest of each game first; lengths in mm, mass in kg. Each entry's `source` says of
 * every figure whether it is published (and where), second-hand, derived, from memory, or common practice without a source.
 *
 * The feet in an id or a name are a label and nothing is computed from them. Where one label means several fields there are
 * several entries: 8 ft pool is 2337 (WPA), 2240 (DBU) or 2235 mm (home and bar) long; 7 ft English pool is 7 x 3 1/2 ft
 * to play on (`english-7ft-play`) or 7 x 4 ft outside (`english-7ft`), and 6 ft likewise; a carom half-match is 2540 mm in
 * French usage (`carom-half-fr`) and 2300 mm in German (`carom-half-de`). When in doubt measure the field, nose to nose.
 * A mass may be the least that a federation asks; where it is null it is not known.
 */
export const TABLES: { readonly [id in TableId]: TableSpec } = /* @__PURE__ */ listTables();

function listTables(): { readonly [id in TableId]: TableSpec } {
  return deepFreeze({
    ...poolTables(),
    ...englishTables(),
    ...snookerTables(),
    ...caromTables(),
    ...pyramidTables(),
  });
}
