import type { EdgeView } from '../geometry/rectangle-distance.js';
import { addRow, type FeatureRows } from './feature-rows.js';
import type { BoxRectangle, PoseBox } from './pose-box.js';

/** Distances below this (mm) are not divided by. */
const TOO_NEAR = 1;
/** Half turn (radians) from which on the row of the inscribed disc is worth its place. */
const DISC_TURN = 0.2;

/**
 * Rows for a blocked point v, the first end of the edge in view: no clearance exceeds the distance from v to the rectangle.
 *
 * With q the rectangle's point nearest to v, n the unit vector from v to q, r = q from the centre and J the quarter turn,
 * that distance grows at the rate n by shifting and n.Jr by turning. What is left over is the smaller of two remainders, one
 * for q carried along rigidly (`carriedRemainder`), one for v facing a side of the rectangle (`sideRemainder`).
 */
export function addCornerRows(
  rows: FeatureRows,
  box: PoseBox,
  rectangle: BoxRectangle,
  view: EdgeView,
): void {
  const { halfLength, halfWidth } = rectangle;
  const { ax, ay } = view;
  const pastX = Math.abs(ax) - halfLength;
  const pastY = Math.abs(ay) - halfWidth;
  const atCorner = pastX > 0 && pastY > 0;
  const facesEnd = pastX > pastY;
  const qx = atCorner || facesEnd ? (ax >= 0 ? halfLength : -halfLength) : ax;
  const qy = atCorner || !facesEnd ? (ay >= 0 ? halfWidth : -halfWidth) : ay;
  const distance = atCorner ? Math.sqrt(pastX * pastX + pastY * pastY) : Math.max(pastX, pastY);
  // Every row lies above the distance, so none can bind where it stays large.
  if (distance - rectangle.reach >= rows.enough) return;

  // Facing a side, n is square to it even where v touches it or lies inside.
  if (!atCorner || distance > TOO_NEAR) {
    const nx = atCorner ? (qx - ax) / distance : facesEnd ? (ax >= 0 ? -1 : 1) : 0;
    const ny = atCorner ? (qy - ay) / distance : facesEnd ? 0 : ay >= 0 ? -1 : 1;
    const planX = nx * box.cos - ny * box.sin;
    const planY = nx * box.sin + ny * box.cos;
    const shiftN = Math.abs(planX) * box.dx + Math.abs(planY) * box.dy;
    const shiftT = Math.abs(planY) * box.dx + Math.abs(planX) * box.dy;
    const rN = nx * qx + ny * qy;
    const rT = nx * qy - ny * qx;
    let remainder = carriedRemainder(box, distance, shiftN, shiftT, rN, rT);
    if (!atCorner) {
      const far = facesEnd ? Math.abs(ax) : Math.abs(ay);
      const along = facesEnd ? Math.abs(ay) : Math.abs(ax);
      const halfAcross = facesEnd ? halfLength : halfWidth;
      const halfAlong = facesEnd ? halfWidth : halfLength;
      remainder = Math.min(remainder, sideRemainder(box, far, along, halfAcross, halfAlong, shiftN, shiftT));
    }
    // n.Jr = -rT.
    if (remainder < Number.POSITIVE_INFINITY) {
      addRow(rows, distance + remainder, planX * box.dx, planY * box.dy, -rT * box.turn);
    }
  }
  if (box.turn > DISC_TURN) addDiscRow(rows, box, rectangle, view);
}

/**
 * The distance of two points is at most w + p^2 / (2 w), w > 0 its part along n and p its part across. Turning by t moves q by
 * Jr sin t - r (1 - cos t), of which t n.Jr is in the row.
 */
function carriedRemainder(
  box: PoseBox,
  distance: number,
  shiftN: number,
  shiftT: number,
  rN: number,
  rT: number,
): number {
  const least = distance - shiftN - Math.abs(rT) * box.sinTurn - Math.max(rN, 0) * box.versTurn;
  if (!(least > TOO_NEAR)) return Number.POSITIVE_INFINITY;
  const across = shiftT + Math.abs(rN) * box.sinTurn + Math.abs(rT) * box.versTurn;
  return Math.max(-rN, 0) * box.versTurn + (across * across) / (2 * least) + Math.abs(rT) * box.lagTurn;
}

/**
 * In the rectangle's turned frame v lies at cos t (far - c) + sin t (along - c') across the side and no further than
 * |along| + |c'| + sin t (far + |c|) along it, (c, c') the shift. Where the box keeps v from the opposite side, a rectangle
 * off v has v beyond this one: distance <= w + out^2 / (2 w), `out` the overshoot over the side's end. Without overshoot w
 * may be anything, touching and overlap included.
 */
function sideRemainder(
  box: PoseBox,
  far: number,
  along: number,
  halfAcross: number,
  halfAlong: number,
  shiftN: number,
  shiftT: number,
): number {
  const nearest = far - shiftN - along * box.sinTurn - far * box.versTurn - shiftT * box.sinTurn;
  if (nearest < -halfAcross) return Number.POSITIVE_INFINITY;
  let remainder = shiftT * box.sinTurn + along * box.lagTurn + Math.max(shiftN - far, 0) * box.versTurn;
  const out = along + shiftT + (far + shiftN) * box.sinTurn - halfAlong;
  if (out > 0) {
    const least = nearest - halfAcross;
    if (!(least > TOO_NEAR)) return Number.POSITIVE_INFINITY;
    remainder += (out * out) / (2 * least);
  }
  return remainder;
}

/** The disc of radius `inner` about the centre is in the rectangle at every turn: clearance <= |centre - v| - inner. */
function addDiscRow(rows: FeatureRows, box: PoseBox, rectangle: BoxRectangle, view: EdgeView): void {
  const distance = Math.sqrt(view.ax * view.ax + view.ay * view.ay);
  if (!(distance > TOO_NEAR)) return;
  const nx = -view.ax / distance;
  const ny = -view.ay / distance;
  const planX = nx * box.cos - ny * box.sin;
  const planY = nx * box.sin + ny * box.cos;
  const shiftT = Math.abs(planY) * box.dx + Math.abs(planX) * box.dy;
  const least = distance - Math.abs(planX) * box.dx - Math.abs(planY) * box.dy;
  if (!(least > TOO_NEAR)) return;
  const remainder = (shiftT * shiftT) / (2 * least);
  addRow(rows, distance - rectangle.inner + remainder, planX * box.dx, planY * box.dy, 0);
}
