import { isFree, type ObstacleEdges } from './obstacle-edges.js';

/**
 * How far the supporting line of each edge stays out of free space on either side of the edge: no point of the line
 * between `lo[e]` and `hi[e]` (from the edge's first end, along its tangent) is free, so a corner whose foot lies there is
 * no further from a blocked point than from the line. Found edge by edge on first use.
 *
 * Proof: the edge itself has no free point, since footprints are closed and the outline is not part of the open free
 * space. From its end outwards the line changes between free and blocked only where it meets an edge of some ring; the
 * stretch up to the next meeting is blocked as a whole if its middle is. Nothing here needs the rings to be disjoint.
 */
export interface BlockedLines {
  readonly obstacles: ObstacleEdges;
  /** Free space is taken against the first `rings` rings. */
  readonly rings: number;
  /** NaN: not found yet. */
  readonly lo: Float64Array;
  readonly hi: Float64Array;
  /** 1: all free space lies left of the line (a wall on the convex hull of the outline). */
  readonly whole: Uint8Array;
}

/** Meetings closer together than this (mm) count as one, and a corner this near to a line lies on it. */
const MERGE = 1e-6;
const ON_LINE = 1e-9;
/** A shorter range is always a valid one, so the march may give up; only combs of hundreds of teeth ever get here. */
const MOST_STEPS = 64;

export function blockedLines(obstacles: ObstacleEdges, rings: number): BlockedLines {
  const count = obstacles.edges.count;
  const lo = new Float64Array(count).fill(Number.NaN);
  const hi = new Float64Array(count).fill(Number.NaN);
  const whole = new Uint8Array(count);
  const walls = obstacles.start[1];
  for (let e = 0; e < walls; e++) {
    if (!isHullWall(obstacles, e, walls)) continue;
    whole[e] = 1;
    lo[e] = Number.NEGATIVE_INFINITY;
    hi[e] = Number.POSITIVE_INFINITY;
  }
  return { obstacles, rings, lo, hi, whole };
}

/** Finds `lo[e]` and `hi[e]` if that has not been done. */
export function findBlockedLine(lines: BlockedLines, e: number): void {
  if (!Number.isNaN(lines.lo[e])) return;
  lines.lo[e] = march(lines, e, 0, -1);
  lines.hi[e] = march(lines, e, lines.obstacles.edges.length[e], 1);
}

// A line that is blocked from end to end is not enough for `whole`: a footprint that parts the room has free space behind it.
function isHullWall(obstacles: ObstacleEdges, e: number, walls: number): boolean {
  const { ax, ay, nx, ny } = obstacles.edges;
  const normalX = nx[e];
  const normalY = ny[e];
  const least = normalX * ax[e] + normalY * ay[e] - ON_LINE;
  for (let j = 0; j < walls; j++) if (normalX * ax[j] + normalY * ay[j] < least) return false;
  return true;
}

function march(lines: BlockedLines, e: number, from: number, towards: 1 | -1): number {
  const { edges } = lines.obstacles;
  let reached = from;
  for (let step = 0; step < MOST_STEPS; step++) {
    const next = nextMeeting(lines, e, reached, towards);
    if (next === towards * Number.POSITIVE_INFINITY) return next;
    const middle = (reached + next) / 2;
    const x = edges.ax[e] + edges.tx[e] * middle;
    const y = edges.ay[e] + edges.ty[e] * middle;
    if (isFree(lines.obstacles, lines.rings, x, y)) break;
    reached = next;
  }
  return reached;
}

/** The next place along the line of edge e, beyond `from`, where it meets an edge of the first rings. */
function nextMeeting(lines: BlockedLines, e: number, from: number, towards: 1 | -1): number {
  const { ax, ay, bx, by, tx, ty, nx, ny } = lines.obstacles.edges;
  const end = lines.obstacles.start[lines.rings];
  const x = ax[e];
  const y = ay[e];
  let next = Number.POSITIVE_INFINITY;
  for (let j = 0; j < end; j++) {
    const sideA = nx[e] * (ax[j] - x) + ny[e] * (ay[j] - y);
    const sideB = nx[e] * (bx[j] - x) + ny[e] * (by[j] - y);
    const aOnLine = Math.abs(sideA) < ON_LINE;
    if (!aOnLine && (sideA > 0 ? sideB > -ON_LINE : sideB < ON_LINE)) continue;
    const atA = tx[e] * (ax[j] - x) + ty[e] * (ay[j] - y);
    const atB = tx[e] * (bx[j] - x) + ty[e] * (by[j] - y);
    const at = aOnLine ? atA : atA + ((atB - atA) * sideA) / (sideA - sideB);
    const beyond = towards * (at - from);
    if (beyond > MERGE && beyond < next) next = beyond;
  }
  return from + towards * next;
}
