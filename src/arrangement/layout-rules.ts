import { DEFAULTS } from '../equipment/defaults.js';
import type { TableSpec } from '../equipment/equipment-types.js';
import { rectangleRing } from '../geometry/ring.js';
import type { Placement, Ring } from '../geometry/types.js';
import { railTop } from '../placement/problem-for.js';
import { faceAt } from '../room/ceiling.js';
import type { Scene, SceneCeilingFace } from '../room/scene.js';
import type { PieceProblem } from './arrangement-report.js';
import {
  heightsMeet,
  overlapsConvex,
  partsDepth,
  partsOverlap,
  TOUCH_SLACK,
} from './layout-rules-overlap.js';
import { beyondWalls, insideWalls, prepareRoom, type RoomRules } from './layout-rules-room.js';
import { distanceFromStand, standsRight, turnedRight } from './layout-rules-stand.js';
import type { PlacedPiece, PlacedZone } from './piece-place.js';

export type { RoomRules } from './layout-rules-room.js';

/** What the report calls the table among other things. */
export const THE_TABLE = 'the table';

/** Told of each broken rule; returning true ends the look. The rest of the problem is worked out only by those who want it. */
type Found = (problem: () => PieceProblem) => boolean;

const STOP: Found = () => true;

/** Prepares what a room asks of every piece. `way`: width of the clear ways, mm; a strip of that depth stays free behind every doorway. */
export function roomRules(scene: Scene, way: number): RoomRules {
  return prepareRoom(scene, way);
}

/**
 * Whether a piece may stand there as far as the room goes: within the walls, off obstacles, door swings and doorways, under the ceiling,
 * at the wall or in the corner where it belongs, turned as it may be; and its use zones likewise. Touching is good, and so is an overlap of up
 * to {@link TOUCH_SLACK}. A lamp over the table is held against ceiling and obstacles only.
 */
export function fitsRoom(rules: RoomRules, piece: PlacedPiece): boolean {
  return !lookAtRoom(rules, piece, STOP);
}

/** The same with reasons, each thing in the way by its name; none: it fits. */
export function roomProblems(rules: RoomRules, piece: PlacedPiece): readonly PieceProblem[] {
  return listOf((found) => lookAtRoom(rules, piece, found));
}

/**
 * Whether two pieces may stand beside one another: bodies off bodies and off the other's use zones where their heights overlap, and
 * zones off zones unless both may be shared. Symmetric. Touching is good, and so is an overlap of up to {@link TOUCH_SLACK}.
 */
export function fitsBeside(a: PlacedPiece, b: PlacedPiece): boolean {
  return !lookBeside(a, b, STOP);
}

/** What is wrong with a piece beside another, seen from the first; none: they go together. */
export function besideProblems(piece: PlacedPiece, other: PlacedPiece): readonly PieceProblem[] {
  return listOf((found) => lookBeside(piece, other, found));
}

/** Whether a piece goes with a table that stands at `pose`: it and its zones keep off the table's outer rectangle unless they are over its rails. */
export function fitsTable(piece: PlacedPiece, table: TableSpec, pose: Placement): boolean {
  return !lookAtTable(piece, table, pose, STOP);
}

/** The same with reasons; none: it fits. */
export function tableProblems(
  piece: PlacedPiece,
  table: TableSpec,
  pose: Placement,
): readonly PieceProblem[] {
  return listOf((found) => lookAtTable(piece, table, pose, found));
}

function listOf(look: (found: Found) => boolean): readonly PieceProblem[] {
  const problems: PieceProblem[] = [];
  look((problem) => {
    problems.push(problem());
    return false;
  });
  return problems;
}

function lookAtRoom(rules: RoomRules, piece: PlacedPiece, found: Found): boolean {
  const { spec, parts } = piece;
  const { scene } = rules;
  const overTable = spec.stand === 'over-table';
  if (
    !overTable &&
    !parts.every((part) => insideWalls(rules, part)) &&
    found(() => outside(rules, parts, null))
  )
    return true;
  for (const obstacle of scene.obstacles) {
    if (!heightsMeet(spec, obstacle) || !partsOverlap(parts, obstacle.parts)) continue;
    if (found(() => overlap('overlap', obstacle.name, null, parts, obstacle.parts))) return true;
  }
  for (const face of scene.ceiling) {
    const missing = heightMissing(face, piece.ring, spec.to);
    if (missing > TOUCH_SLACK && found(() => problemOf('ceiling', face.name, null, missing))) return true;
  }
  if (overTable) return false;
  if (spec.from < DEFAULTS.arrangement.doorHeight) {
    for (const { name, rings } of rules.doors) {
      if (!partsOverlap(parts, rings)) continue;
      if (found(() => overlap('door', name, null, parts, rings))) return true;
    }
  }
  if (!standsRight(rules, piece) && found(() => noWall(rules, piece))) return true;
  if (!turnedRight(rules, piece) && found(() => problemOf('turn', null, null, null))) return true;
  return piece.zones.some((zone) => lookAtZone(rules, zone, found));
}

function lookAtZone(rules: RoomRules, { spec, ring }: PlacedZone, found: Found): boolean {
  const { scene } = rules;
  const { name } = spec;
  if (!insideWalls(rules, ring) && found(() => outside(rules, [ring], name))) return true;
  for (const obstacle of scene.obstacles) {
    if (!heightsMeet(spec, obstacle) || !partsOverlap([ring], obstacle.parts)) continue;
    if (found(() => overlap('zone-overlap', obstacle.name, name, [ring], obstacle.parts))) return true;
  }
  for (const face of scene.ceiling) {
    const missing = heightMissing(face, ring, spec.to);
    if (missing > TOUCH_SLACK && found(() => problemOf('zone-ceiling', face.name, name, missing)))
      return true;
  }
  if (!spec.offDoors || spec.from >= DEFAULTS.arrangement.doorHeight) return false;
  for (const door of rules.doors) {
    if (!partsOverlap([ring], door.rings)) continue;
    if (found(() => overlap('zone-door', door.name, name, [ring], door.rings))) return true;
  }
  return false;
}

function lookBeside(piece: PlacedPiece, other: PlacedPiece, found: Found): boolean {
  const { spec, parts, zones } = piece;
  const its = other.spec;
  if (heightsMeet(spec, its) && partsOverlap(parts, other.parts)) {
    if (found(() => overlap('overlap', its.name, null, parts, other.parts))) return true;
  }
  for (const zone of other.zones) {
    if (!heightsMeet(spec, zone.spec) || !anyOverlaps(parts, zone.ring)) continue;
    if (found(() => overlap('overlap', zoneName(its.name, zone.spec.name), null, parts, [zone.ring])))
      return true;
  }
  for (const zone of zones) {
    if (!heightsMeet(zone.spec, its) || !anyOverlaps(other.parts, zone.ring)) continue;
    if (found(() => overlap('zone-overlap', its.name, zone.spec.name, [zone.ring], other.parts))) return true;
  }
  for (const mine of zones) {
    for (const theirs of other.zones) {
      if (mine.spec.withZones && theirs.spec.withZones) continue;
      if (!heightsMeet(mine.spec, theirs.spec) || !overlapsConvex(mine.ring, theirs.ring)) continue;
      if (found(() => overlap('zone-shared', its.name, mine.spec.name, [mine.ring], [theirs.ring])))
        return true;
    }
  }
  return false;
}

function lookAtTable(
  { spec, parts, zones }: PlacedPiece,
  table: TableSpec,
  pose: Placement,
  found: Found,
): boolean {
  const top = railTop(table);
  const frame = tableRing(table, pose);
  if (spec.from < top && anyOverlaps(parts, frame)) {
    if (found(() => overlap('table', THE_TABLE, null, parts, [frame]))) return true;
  }
  for (const zone of zones) {
    if (zone.spec.from >= top || !overlapsConvex(zone.ring, frame)) continue;
    if (found(() => overlap('zone-table', THE_TABLE, zone.spec.name, [zone.ring], [frame]))) return true;
  }
  return false;
}

/** The table's outer rectangle at a pose, anticlockwise. */
export function tableRing({ outer }: TableSpec, { x, y, angle }: Placement): Ring {
  return rectangleRing([x, y], outer.length, outer.width, angle);
}

/** What the report calls a zone among other things. */
export function zoneName(piece: string, zone: string): string {
  return `${piece}: ${zone}`;
}

function anyOverlaps(parts: readonly Ring[], ring: Ring): boolean {
  for (const part of parts) if (overlapsConvex(part, ring)) return true;
  return false;
}

/** By how much a thing with its top at `to` is too high for a face; a flat face over a polygon is lowest at a corner. */
function heightMissing(face: SceneCeilingFace, ring: Ring, to: number): number {
  let missing = -Infinity;
  for (const [x, y] of ring) missing = Math.max(missing, to - faceAt(face, x, y));
  return missing;
}

function outside(rules: RoomRules, parts: readonly Ring[], zone: string | null): PieceProblem {
  const { wall, amount } = beyondWalls(rules, parts);
  const code = zone === null ? 'outside' : 'zone-outside';
  return wall < 0
    ? problemOf(code, null, zone, null)
    : problemOf(code, rules.scene.wallNames[wall], zone, amount);
}

function noWall(rules: RoomRules, piece: PlacedPiece): PieceProblem {
  const distance = distanceFromStand(rules, piece);
  return problemOf('no-wall', null, null, distance === Infinity ? null : distance);
}

function overlap(
  code: PieceProblem['code'],
  other: string,
  zone: string | null,
  a: readonly Ring[],
  b: readonly Ring[],
): PieceProblem {
  return problemOf(code, other, zone, partsDepth(a, b));
}

function problemOf(
  code: PieceProblem['code'],
  other: string | null,
  zone: string | null,
  amount: number | null,
): PieceProblem {
  return { code, with: other, zone, amount };
}
