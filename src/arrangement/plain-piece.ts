import { distanceToBox } from '../geometry/shape-distance.js';
import type { Placement } from '../geometry/types.js';
import { playSize } from '../placement/problem-for.js';
import { furnishedScene } from './furnished-scene.js';
import { plainlyClear } from './layout-value.js';
import type { PlacedPiece } from './piece-place.js';
import type { SearchRoom } from './search-room.js';
import type { Solids } from './shot-field.js';

/**
 * Do distances prove that every shot is open with the table here and these pieces in the room? Distances are the least over all pieces, so what
 * holds for each of them alone holds for them together. True without a table.
 */
export function isPlain(
  { question, reach }: SearchRoom,
  pose: Placement | null,
  pieces: readonly PlacedPiece[],
): boolean {
  const { scene, table, stroke } = question;
  if (table === null || pose === null || reach === null) return true;
  return plainlyClear(furnishedScene(scene, pieces, table), table, stroke, reach, pose);
}

/** A quick yes to the same of one piece, where the room alone is plain: the disc around it keeps both distances. */
export function isFarOff(
  { question, reach }: SearchRoom,
  pose: Placement | null,
  { x, y, radius }: Solids,
): boolean {
  const { table } = question;
  if (table === null || pose === null || reach === null) return true;
  const cos = Math.cos(pose.angle);
  const sin = Math.sin(pose.angle);
  const u = cos * (x - pose.x) + sin * (y - pose.y);
  const v = cos * (y - pose.y) - sin * (x - pose.x);
  const { length, width } = playSize(table);
  return (
    distanceToBox(length / 2, width / 2, u, v) - radius >= reach.rho &&
    distanceToBox(table.outer.length / 2, table.outer.width / 2, u, v) - radius >= reach.strip
  );
}
