import { type BlockedLines, findBlockedLine } from '../geometry/blocked-lines.js';
import type { EdgeView } from '../geometry/rectangle-distance.js';
import { addRow, type FeatureRows } from './feature-rows.js';
import type { BoxRectangle, PoseBox } from './pose-box.js';

/** From this half turn on a quarter turn fits into the box: more than one kink of H may lie in it. */
const WIDE = Math.PI / 4;
/** Distances below this (mm) are not divided by. */
const TOO_NEAR = 1;
/** Chords over a smaller share of the box than this are left out. */
const SLIVER = 1e-6;

/**
 * Rows for the line of one edge. Let w = n.c - d - H be the least signed distance of the rectangle from the line (H its
 * support), reached at a corner q.
 *
 * Whole wall: clearance <= w wherever the corner's foot lies on the blocked part of the line and w >= -2 inner, or the centre
 * is on the free side with its own foot on the blocked part. Proof: if w >= 0 the foot is a blocked point at distance w. If
 * w < 0 then the way from q along n (which stays in the rectangle for at least its shorter side, 2 inner), or the way from q to
 * the centre, crosses the line at a blocked point, so the rectangle does not stand free. On a whole line (a hull wall) free
 * space lies on one side only, and w < 0 is never free.
 *
 * Part of a wall: where the foot may leave the blocked part by `out`, the distance to the end of that part is
 * hypot(w, out) <= w + out^2 / (2 w).
 */
export function addWallRows(
  rows: FeatureRows,
  box: PoseBox,
  rectangle: BoxRectangle,
  lines: BlockedLines,
  e: number,
  view: EdgeView,
): void {
  const { nx, ny, tx, ty } = lines.obstacles.edges;
  box.shiftN = Math.abs(nx[e]) * box.dx + Math.abs(ny[e]) * box.dy;
  // Every row lies above w, so none can bind where w stays large.
  const lowest = view.side - view.support - box.shiftN - rectangle.swing;
  if (lowest >= rows.enough) return;
  box.shiftT = Math.abs(tx[e]) * box.dx + Math.abs(ty[e]) * box.dy;
  if (lines.whole[e] === 1 || footStays(box, rectangle, lines, e, view)) {
    addSupportRows(rows, box, rectangle, lines, e, view);
  } else {
    addPartRow(rows, box, rectangle, lines, e, view);
  }
}

/** Do the feet of all corners that may be nearest stay on the blocked part, and is the rectangle never behind it? */
function footStays(
  box: PoseBox,
  rectangle: BoxRectangle,
  lines: BlockedLines,
  e: number,
  view: EdgeView,
): boolean {
  const lowest = view.side - view.support - box.shiftN - rectangle.swing;
  const mayBeBehind = lowest < -2 * rectangle.inner;
  if (mayBeBehind && view.side - box.shiftN <= 0) return false;

  // Feet of the nearest corner at the middle of the box, and of its neighbours where the box turns them nearest.
  const kx = (view.ty >= 0 ? rectangle.halfLength : -rectangle.halfLength) * view.tx;
  const ky = (view.tx >= 0 ? -rectangle.halfWidth : rectangle.halfWidth) * view.ty;
  let first = kx + ky;
  let last = first;
  if (box.turn >= WIDE) {
    last = Math.abs(kx) + Math.abs(ky);
    first = -last;
  } else {
    if (Math.abs(view.ty) <= box.sinTurn) {
      first = Math.min(first, ky - kx);
      last = Math.max(last, ky - kx);
    }
    if (Math.abs(view.tx) <= box.sinTurn) {
      first = Math.min(first, kx - ky);
      last = Math.max(last, kx - ky);
    }
  }
  findBlockedLine(lines, e);
  const lo = lines.lo[e];
  const hi = lines.hi[e];
  const motion = box.shiftT + rectangle.swing;
  if (view.foot + first - motion < lo || view.foot + last + motion > hi) return false;
  return !mayBeBehind || (view.foot - box.shiftT >= lo && view.foot + box.shiftT <= hi);
}

/**
 * Rows for w = n.c - d - H(angle), which is linear in the position. Between its kinks (n along a side of the rectangle) H is
 * concave, so -H is convex there and its chord lies above it, exactly on it at the ends of the box.
 */
function addSupportRows(
  rows: FeatureRows,
  box: PoseBox,
  rectangle: BoxRectangle,
  lines: BlockedLines,
  e: number,
  view: EdgeView,
): void {
  const { halfLength, halfWidth } = rectangle;
  const nx = lines.obstacles.edges.nx[e];
  const ny = lines.obstacles.edges.ny[e];
  const bx = nx * box.dx;
  const by = ny * box.dy;
  const fromU = nx * box.fromCos + ny * box.fromSin;
  const fromV = ny * box.fromCos - nx * box.fromSin;
  const toU = nx * box.toCos + ny * box.toSin;
  const toV = ny * box.toCos - nx * box.toSin;
  const fromH = halfLength * Math.abs(fromU) + halfWidth * Math.abs(fromV);
  const toH = halfLength * Math.abs(toU) + halfWidth * Math.abs(toV);
  const acrossKink = fromU > 0 !== toU > 0;
  const alongKink = fromV > 0 !== toV > 0;

  if (box.turn >= WIDE) {
    let least = Math.min(fromH, toH);
    if (acrossKink || box.turn >= 2 * WIDE) least = Math.min(least, halfWidth);
    if (alongKink || box.turn >= 2 * WIDE) least = Math.min(least, halfLength);
    addRow(rows, view.side - least, bx, by, 0);
    return;
  }
  if (acrossKink && alongKink) {
    addRow(rows, view.side - rectangle.inner, bx, by, 0);
    return;
  }
  if (acrossKink || alongKink) {
    // One kink inside, at share k of the half turn: n across the length (H = halfWidth) or along it (H = halfLength).
    const kinkH = acrossKink ? halfWidth : halfLength;
    const nU = -view.ty;
    const nV = view.tx;
    const offset = acrossKink
      ? Math.asin(Math.max(-1, Math.min(1, nU))) * (nV >= 0 ? -1 : 1)
      : Math.asin(Math.max(-1, Math.min(1, nV))) * (nU >= 0 ? 1 : -1);
    const k = Math.max(-1, Math.min(1, offset / box.turn));
    const before = 1 + k;
    const after = 1 - k;
    const slopeBefore = before > SLIVER ? (fromH - kinkH) / before : Number.POSITIVE_INFINITY;
    const slopeAfter = after > SLIVER ? (kinkH - toH) / after : Number.NEGATIVE_INFINITY;
    // Two chords that meet at the kink are an upper bound only if they bend down there; else the long chord is.
    if (slopeBefore >= slopeAfter) {
      if (before > SLIVER) addRow(rows, view.side - kinkH - slopeBefore * k, bx, by, slopeBefore);
      if (after > SLIVER) addRow(rows, view.side - kinkH - slopeAfter * k, bx, by, slopeAfter);
      return;
    }
  }
  addRow(rows, view.side - (fromH + toH) / 2, bx, by, (fromH - toH) / 2);
}

/** Row for a wall whose end the corner's foot may pass. The corner is the nearest one at the middle of the box. */
function addPartRow(
  rows: FeatureRows,
  box: PoseBox,
  rectangle: BoxRectangle,
  lines: BlockedLines,
  e: number,
  view: EdgeView,
): void {
  const { nx, ny } = lines.obstacles.edges;
  // The corner k from the centre: n.k = -H, t.k along the wall. A turn by t moves it by n.Jk sin t + H (1 - cos t) along n.
  const kx = view.ty >= 0 ? rectangle.halfLength : -rectangle.halfLength;
  const ky = view.tx >= 0 ? -rectangle.halfWidth : rectangle.halfWidth;
  const alongWall = kx * view.tx + ky * view.ty;
  const w = view.side - view.support;
  const least = w - box.shiftN - Math.abs(alongWall) * box.sinTurn;
  if (!(least > TOO_NEAR)) return;
  findBlockedLine(lines, e);
  const motion = box.shiftT + view.support * box.sinTurn + Math.abs(alongWall) * box.versTurn;
  const foot = view.foot + alongWall;
  const out = Math.max(0, foot + motion - lines.hi[e], lines.lo[e] - foot + motion);
  if (out >= least) return;
  const remainder =
    view.support * box.versTurn + (out * out) / (2 * least) + Math.abs(alongWall) * box.lagTurn;
  const slope = view.ty * ky + view.tx * kx;
  addRow(rows, w + remainder, nx[e] * box.dx, ny[e] * box.dy, slope * box.turn);
}
