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
  const { edges, start } = lines.obstacles;
  const { ax, ay } = edges;
  const x = ax[e];
  const y = ay[e];
  const nx = edges.nx[e];
  const ny = edges.ny[e];
  const tx = edges.tx[e];
  const ty = edges.ty[e];
  let nearest = Number.POSITIVE_INFINITY;
  for (let r = 0; r < lines.rings; r++) {
    // Each corner ends one edge and begins the next: its side of the line is found once.
    let p = start[r + 1] - 1;
    let sideP = nx * (ax[p] - x) + ny * (ay[p] - y);
    for (let q = start[r]; q < start[r + 1]; q++) {
      const sideQ = nx * (ax[q] - x) + ny * (ay[q] - y);
      const pOnLine = Math.abs(sideP) < ON_LINE;
      if (pOnLine || (sideP > 0 ? sideQ <= -ON_LINE : sideQ >= ON_LINE)) {
        const atP = tx * (ax[p] - x) + ty * (ay[p] - y);
        const atQ = tx * (ax[q] - x) + ty * (ay[q] - y);
        const at = pOnLine ? atP : atP + ((atQ - atP) * sideP) / (sideP - sideQ);
        const beyond = towards * (at - from);
        if (beyond > MERGE && beyond < nearest) nearest = beyond;
      }
      p = q;
      sideP = sideQ;
    }
  }
  return from + towards * nearest;
}
