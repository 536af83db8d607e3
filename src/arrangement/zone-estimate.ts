import { DEFAULTS } from '../equipment/defaults.js';
import type { TableSpec } from '../equipment/equipment-types.js';
import type { Placement, Point } from '../geometry/types.js';
import { playSize } from '../placement/problem-for.js';
import { heightsMeet } from './layout-rules-overlap.js';
import type { PlacedPiece, PlacedZone } from './piece-place.js';
import type { SearchRoom } from './search-room.js';
import { coveredShare } from './zone-sharing.js';

/** Points along and across a zone by which it is told how much of it lies where cues go. */
const ALONG = 5;
const ACROSS = 4;

/** About how much of a zone lies where cues and players of a table go, and counts as shared with them, 0..1. */
export function cueingShare(
  { question: { table }, reach }: SearchRoom,
  pose: Placement | null,
  zone: PlacedZone,
): number {
  const { withCueing, from } = zone.spec;
  if (table === null || pose === null || reach === null) return 0;
  if (!withCueing || from >= DEFAULTS.standing.headHeight) return 0;
  const [a, b, , d] = zone.ring;
  let inside = 0;
  for (let i = 0; i < ALONG; i++) {
    for (let j = 0; j < ACROSS; j++) {
      const s = (i + 0.5) / ALONG;
      const t = (j + 0.5) / ACROSS;
      const x = a[0] + s * (b[0] - a[0]) + t * (d[0] - a[0]);
      const y = a[1] + s * (b[1] - a[1]) + t * (d[1] - a[1]);
      if (inCueing(table, pose, reach, [x, y])) inside++;
    }
  }
  return inside / (ALONG * ACROSS);
}

/** Sum over the zones of two pieces of the shares that lie on zones of the other. */
export function zonesShared(a: PlacedPiece, b: PlacedPiece): number {
  let sum = 0;
  for (const mine of a.zones) {
    for (const theirs of b.zones) {
      if (!mine.spec.withZones || !theirs.spec.withZones || !heightsMeet(mine.spec, theirs.spec)) continue;
      sum += coveredShare(mine.ring, [theirs.ring]) + coveredShare(theirs.ring, [mine.ring]);
    }
  }
  return sum;
}

function inCueing(
  table: TableSpec,
  { x, y, angle }: Placement,
  { rho, strip }: { readonly rho: number; readonly strip: number },
  [px, py]: Point,
): boolean {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const along = Math.abs(cos * (px - x) + sin * (py - y));
  const across = Math.abs(cos * (py - y) - sin * (px - x));
  const q = playSize(table);
  const { outer } = table;
  return (
    within(along - q.length / 2, across - q.width / 2, rho) ||
    within(along - outer.length / 2, across - outer.width / 2, strip)
  );
}

function within(dx: number, dy: number, distance: number): boolean {
  const u = Math.max(0, dx);
  const v = Math.max(0, dy);
  return u * u + v * v <= distance * distance;
}
