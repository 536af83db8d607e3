import { DEFAULTS } from '../equipment/defaults.js';
import type { CueSpec, TableSpec } from '../equipment/equipment-types.js';
import { growRing } from '../geometry/grow-ring.js';
import { clipToHalfPlane, rectangleRing, signedArea } from '../geometry/ring.js';
import type { Placement, Ring } from '../geometry/types.js';
import { openReach } from '../placement/open-reach.js';
import { playSize } from '../placement/problem-for.js';
import type { StrokeSettings } from '../stroke/stroke-settings.js';
import type { SharedZone } from './arrangement-report.js';
import { tableRing } from './layout-rules.js';
import { heightsMeet } from './layout-rules-overlap.js';
import type { PlacedPiece, PlacedZone } from './piece-place.js';

/** A share of less than this is rounding of zones that touch. */
const LEAST_SHARE = 1e-6;

/**
 * Where cues and players of a table go: Q grown by rho, as far as a level stroke reaches from any ball, and the frame grown by the strip that
 * players need, unless that lies within. Convex, anticlockwise; they overlap. Round corners are tangent polygons, at most 1 mm larger. Walls and furniture, which may
 * cut the reach short, are left out of account.
 */
export function cueingFloor(
  table: TableSpec,
  stroke: StrokeSettings,
  cue: CueSpec,
  pose: Placement,
): readonly Ring[] {
  const { rho, strip } = openReach(table, stroke, cue);
  const { length, width } = playSize(table);
  const q = rectangleRing([pose.x, pose.y], length, width, pose.angle);
  const arcs = { arcs: 'circumscribed' } as const;
  const cues = growRing(q, rho, arcs);
  // Seen along any n, the frame reaches dx |nx| + dy |ny| <= hypot(dx, dy) beyond Q.
  const beyondQ = Math.hypot(table.outer.length - length, table.outer.width - width) / 2;
  return beyondQ + strip <= rho ? [cues] : [cues, growRing(tableRing(table, pose), strip, arcs)];
}

/**
 * What the zones of a layout share, zone after zone: with the table's cues and players, then with the zones of the other pieces in their
 * order. Only what may be shared counts; the rest is a problem of the layout.
 *
 * @param cueing As {@link cueingFloor} has it; empty without a table.
 */
export function sharedZones(placed: readonly PlacedPiece[], cueing: readonly Ring[]): readonly SharedZone[] {
  const shared: SharedZone[] = [];
  for (const piece of placed) {
    for (const zone of piece.zones) {
      const add = (other: string, covers: readonly Ring[]): void => {
        const share = coveredShare(zone.ring, covers);
        if (share < LEAST_SHARE) return;
        shared.push({ piece: piece.spec.name, zone: zone.spec.name, with: other, share });
      };
      add('cueing', cueingOver(zone, cueing));
      for (const other of placed) if (other !== piece) add(other.spec.name, zonesOver(zone, other));
    }
  }
  return shared;
}

/** 1 less the mean share of the zones that is shared with cues, players or zones of other pieces, 0..1; 1 where there are no zones. */
export function apartShare(placed: readonly PlacedPiece[], cueing: readonly Ring[]): number {
  let sum = 0;
  let count = 0;
  for (const piece of placed) {
    for (const zone of piece.zones) {
      const covers = [...cueingOver(zone, cueing)];
      for (const other of placed) if (other !== piece) covers.push(...zonesOver(zone, other));
      sum += coveredShare(zone.ring, covers);
      count++;
    }
  }
  return count === 0 ? 1 : 1 - sum / count;
}

function cueingOver({ spec }: PlacedZone, cueing: readonly Ring[]): readonly Ring[] {
  return spec.withCueing && spec.from < DEFAULTS.standing.headHeight ? cueing : [];
}

function zonesOver(zone: PlacedZone, { zones }: PlacedPiece): readonly Ring[] {
  const { spec } = zone;
  return zones
    .filter((z) => spec.withZones && z.spec.withZones && heightsMeet(spec, z.spec))
    .map(({ ring }) => ring);
}

/** Share of a convex anticlockwise ring that lies on at least one of the others, which are convex too, 0..1. Exact up to rounding. */
export function coveredShare(ring: Ring, covers: readonly Ring[]): number {
  return covers.length === 0 ? 0 : Math.min(1, coveredArea(ring, covers) / signedArea(ring));
}

/** Area of the part of a convex anticlockwise ring that lies on at least one of the others, which are convex too, mm2. Exact up to rounding. */
export function coveredArea(ring: Ring, covers: readonly Ring[]): number {
  let area = 0;
  let left: readonly Ring[] = [ring];
  // Round covers last: what is left of a zone beside one falls into many parts.
  for (const cover of [...covers].sort((a, b) => a.length - b.length)) {
    const outside: Ring[] = [];
    for (const part of left) area += cutOut(part, cover, outside);
    left = outside;
  }
  return area;
}

/**
 * Area of what a convex ring has in common with a convex cover. The rest goes to `outside` in convex parts that do not overlap: for each
 * edge of the cover what lies beyond it and within the edges before.
 */
function cutOut(ring: Ring, cover: Ring, outside: Ring[]): number {
  for (let i = 0; i < cover.length; i++) {
    if (sideOf(ring, cover, i) !== 'beyond') continue;
    outside.push(ring);
    return 0;
  }
  let inside = ring;
  for (let i = 0; i < cover.length && inside.length > 0; i++) {
    if (sideOf(inside, cover, i) === 'within') continue;
    const [px, py] = cover[i];
    const [qx, qy] = cover[i + 1 === cover.length ? 0 : i + 1];
    const nx = qy - py;
    const ny = px - qx;
    const d = nx * px + ny * py;
    const beyond = clipToHalfPlane(inside, -nx, -ny, -d);
    if (beyond.length > 0) outside.push(beyond);
    inside = clipToHalfPlane(inside, nx, ny, d);
  }
  return signedArea(inside);
}

/** On which side of an edge of the cover a ring lies; touching counts as either. */
function sideOf(ring: Ring, cover: Ring, i: number): 'within' | 'beyond' | 'both' {
  const p = cover[i];
  const q = cover[i + 1 === cover.length ? 0 : i + 1];
  const nx = q[1] - p[1];
  const ny = p[0] - q[0];
  const d = nx * p[0] + ny * p[1];
  let least = Infinity;
  let most = -Infinity;
  for (let k = 0; k < ring.length; k++) {
    const over = nx * ring[k][0] + ny * ring[k][1] - d;
    if (over < least) least = over;
    if (over > most) most = over;
  }
  return most <= 0 ? 'within' : least >= 0 ? 'beyond' : 'both';
}
