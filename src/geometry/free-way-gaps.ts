import { squareToSegment, type WayPlan } from './free-way-plan.js';
import { orientationXY, segmentContact, turnsOnlyLeft } from './predicates.js';
import type { Point } from './types.js';

/** A shortest line between two edges: from a on one to b on the other. */
export interface Gap {
  readonly edgeA: number;
  readonly edgeB: number;
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  /** mm; 0 where the edges meet. */
  readonly length: number;
}

/** Distances that differ by no more count as equal when the middle of a stretch of shortest lines is looked for, mm. */
const SAME_LENGTH = 1e-7;

/**
 * The gaps shorter than `most` between edges of different rings, and between edges of one ring that is not convex and do not share a corner.
 * Of parallel edges it is the line in the middle of the stretch along which they face one another.
 *
 * @param fromRing Only gaps with at least one edge of this ring or a later one, for those who know the others.
 */
export function gapsBetween(plan: WayPlan, most: number, fromRing = 0): Gap[] {
  const { rings, first, boxes } = plan;
  const gaps: Gap[] = [];
  for (let s = fromRing; s < rings.length; s++) {
    for (let r = 0; r < s; r++) {
      if (boxesApart(boxes, r, s, most)) continue;
      for (let j = first[s]; j < first[s + 1]; j++) {
        for (let i = first[r]; i < first[r + 1]; i++) addGap(plan, i, j, most, gaps);
      }
    }
    // Within a convex ring every gap runs through the ring itself, and parts nothing that is outside.
    if (s > 0 && turnsOnlyLeft(rings[s])) continue;
    const n = rings[s].length;
    for (let j = 2; j < n; j++) {
      for (let i = j === n - 1 ? 1 : 0; i < j - 1; i++) addGap(plan, first[s] + i, first[s] + j, most, gaps);
    }
  }
  return gaps;
}

/** Order of gaps: the shortest first, then by edges, so that the order is the same every time. */
export function compareGaps(a: Gap, b: Gap): number {
  return a.length - b.length || a.edgeA - b.edgeA || a.edgeB - b.edgeB;
}

function boxesApart(boxes: Float64Array, r: number, s: number, most: number): boolean {
  const a = r * 4;
  const b = s * 4;
  return (
    boxes[a] - boxes[b + 1] >= most ||
    boxes[b] - boxes[a + 1] >= most ||
    boxes[a + 2] - boxes[b + 3] >= most ||
    boxes[b + 2] - boxes[a + 3] >= most
  );
}

function addGap({ ax, ay, bx, by }: WayPlan, i: number, j: number, most: number, gaps: Gap[]): void {
  const px = ax[i];
  const py = ay[i];
  const qx = bx[i];
  const qy = by[i];
  const ux = ax[j];
  const uy = ay[j];
  const vx = bx[j];
  const vy = by[j];
  const boxX = Math.max(Math.min(px, qx) - Math.max(ux, vx), Math.min(ux, vx) - Math.max(px, qx));
  const boxY = Math.max(Math.min(py, qy) - Math.max(uy, vy), Math.min(uy, vy) - Math.max(py, qy));
  if (boxX >= most || boxY >= most) return;
  if (boxX <= 0 && boxY <= 0) {
    const contact = segmentContact([px, py], [qx, qy], [ux, uy], [vx, vy]);
    if (contact !== 'apart') {
      const [x, y] = meetingPoint(px, py, qx, qy, ux, uy, vx, vy);
      gaps.push({ edgeA: i, edgeB: j, ax: x, ay: y, bx: x, by: y, length: 0 });
      return;
    }
  }
  // Apart, they are nearest at an end of one of them.
  const atP = squareToSegment(px, py, ux, uy, vx, vy);
  const atQ = squareToSegment(qx, qy, ux, uy, vx, vy);
  const atU = squareToSegment(ux, uy, px, py, qx, qy);
  const atV = squareToSegment(vx, vy, px, py, qx, qy);
  const least = Math.sqrt(Math.min(atP, atQ, atU, atV));
  if (least >= most) return;
  // The pairs of nearest points form a convex set, so the mean of such pairs is one.
  const enough = (least + SAME_LENGTH) ** 2;
  let n = 0;
  let sumAX = 0;
  let sumAY = 0;
  let sumBX = 0;
  let sumBY = 0;
  const add = (aX: number, aY: number, bX: number, bY: number): void => {
    n++;
    sumAX += aX;
    sumAY += aY;
    sumBX += bX;
    sumBY += bY;
  };
  if (atP <= enough) add(px, py, ...nearestOn(px, py, ux, uy, vx, vy));
  if (atQ <= enough) add(qx, qy, ...nearestOn(qx, qy, ux, uy, vx, vy));
  if (atU <= enough) add(...nearestOn(ux, uy, px, py, qx, qy), ux, uy);
  if (atV <= enough) add(...nearestOn(vx, vy, px, py, qx, qy), vx, vy);
  gaps.push({
    edgeA: i,
    edgeB: j,
    ax: sumAX / n,
    ay: sumAY / n,
    bx: sumBX / n,
    by: sumBY / n,
    length: least,
  });
}

/** The point of the segment from a to b that is nearest to p. */
function nearestOn(px: number, py: number, ax: number, ay: number, bx: number, by: number): Point {
  const dx = bx - ax;
  const dy = by - ay;
  const whole = dx * dx + dy * dy;
  if (whole === 0) return [ax, ay];
  const t = Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / whole));
  return t === 1 ? [bx, by] : [ax + t * dx, ay + t * dy];
}

/** A point that two segments share, up to rounding. */
function meetingPoint(
  px: number,
  py: number,
  qx: number,
  qy: number,
  ux: number,
  uy: number,
  vx: number,
  vy: number,
): Point {
  if (orientationXY(px, py, qx, qy, ux, uy) === 0 && inBox(px, py, qx, qy, ux, uy)) return [ux, uy];
  if (orientationXY(px, py, qx, qy, vx, vy) === 0 && inBox(px, py, qx, qy, vx, vy)) return [vx, vy];
  if (orientationXY(ux, uy, vx, vy, px, py) === 0 && inBox(ux, uy, vx, vy, px, py)) return [px, py];
  if (orientationXY(ux, uy, vx, vy, qx, qy) === 0 && inBox(ux, uy, vx, vy, qx, qy)) return [qx, qy];
  const dx = qx - px;
  const dy = qy - py;
  const ex = vx - ux;
  const ey = vy - uy;
  const t = Math.min(1, Math.max(0, ((ux - px) * ey - (uy - py) * ex) / (dx * ey - dy * ex)));
  return [px + t * dx, py + t * dy];
}

function inBox(ax: number, ay: number, bx: number, by: number, x: number, y: number): boolean {
  return Math.min(ax, bx) <= x && x <= Math.max(ax, bx) && Math.min(ay, by) <= y && y <= Math.max(ay, by);
}
