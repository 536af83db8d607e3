import { type BoxFrame, extentOf, greatestDot, LENGTH_SLACK, leastDot, seePoint } from './box-bounds.js';
import type { PartArrays } from './stroke-scene.js';

/** Bounds of t0 and t1 of one grown convex piece over a box of shots, mm. */
export interface PartSpan {
  /** For every ray that meets the piece: t0 >= entryLo and t1 <= exitHi. */
  entryLo: number;
  exitHi: number;
  /** Every ray meets it, and then t0 <= entryHi and t1 >= exitLo. */
  sure: boolean;
  entryHi: number;
  exitLo: number;
}

export function partSpan(): PartSpan {
  return { entryLo: 0, exitHi: 0, sure: false, entryHi: 0, exitLo: 0 };
}

/**
 * Bounds for piece `part` grown by m. Returns false when no ray of the box meets it within `reach`; `span` is then
 * meaningless.
 *
 * Two kinds of bounds are combined. Each side's line moved out by m is entered or left at a known distance (interval
 * Cyrus-Beck): good for wide boxes, but its corners are mitred. And a first hit lies on a side moved out by m or on a corner's disc,
 * each bounded on its own: exact as the box shrinks, also where a ray grazes a rounded corner.
 */
export function boundPart(
  frame: BoxFrame,
  parts: PartArrays,
  part: number,
  growth: number,
  reach: number,
  span: PartSpan,
): boolean {
  const { along, across } = frame;
  const around = parts.radius[part] + growth;
  seePoint(frame, parts.centerX[part], parts.centerY[part]);
  if (across.lo >= around || across.hi <= -around) return false;
  if (along.hi <= -around || along.lo - around >= reach) return false;

  const { edges } = parts;
  // By lines:
  let lineEntry = 0;
  let lineExit = Infinity;
  let insideMaybe = true;
  // by sides and corners, of which at least one must be met:
  let entryLo = Infinity;
  let entryHi = 0;
  let exitLo = Infinity;
  let exitHi = -Infinity;
  // for the sure side: some corner surely not left of the grown ray, some surely not right of it, all ahead.
  let someRight = false;
  let someLeft = false;
  let nearestAlong = Infinity;

  for (let i = parts.start[part]; i < parts.start[part + 1]; i++) {
    const nx = -edges.nx[i];
    const ny = -edges.ny[i];
    const outside = nx * (frame.u - edges.ax[i]) + ny * (frame.v - edges.ay[i]) - growth;
    const extent = extentOf(frame, nx, ny) + LENGTH_SLACK;
    const c = nx * frame.cos + ny * frame.sin;
    const s = nx * frame.sin - ny * frame.cos;
    const least = leastDot(frame, c, s);
    const most = greatestDot(frame, c, s);
    if (outside - extent >= 0) {
      if (least >= 0) return false;
      insideMaybe = false;
      lineEntry = Math.max(lineEntry, (outside - extent) / -least);
    }
    if (least > 0) {
      if (extent - outside < 0) return false;
      lineExit = Math.min(lineExit, (extent - outside) / least);
    }
    if (lineEntry > lineExit || lineEntry >= reach) return false;

    // The corner's disc.
    seePoint(frame, edges.ax[i], edges.ay[i]);
    if (across.hi < growth) someRight = true;
    if (across.lo > -growth) someLeft = true;
    nearestAlong = Math.min(nearestAlong, along.lo);
    const nearest = across.lo > 0 ? across.lo : across.hi < 0 ? -across.hi : 0;
    if (nearest < growth) {
      const half = Math.sqrt(growth * growth - nearest * nearest);
      if (along.hi + half >= 0) {
        const farthest = Math.max(across.hi, -across.lo);
        const sureHalf = farthest < growth ? Math.sqrt(growth * growth - farthest * farthest) : 0;
        entryLo = Math.min(entryLo, along.lo - half);
        entryHi = Math.max(entryHi, along.hi - sureHalf);
        exitLo = Math.min(exitLo, along.lo + sureHalf);
        exitHi = Math.max(exitHi, along.hi + half);
      }
    }

    // The side moved out by m.
    seePoint(frame, edges.ax[i] + growth * nx, edges.ay[i] + growth * ny);
    const aLo = along.lo;
    const aHi = along.hi;
    const aRight = across.lo;
    const aLeft = across.hi;
    seePoint(frame, edges.bx[i] + growth * nx, edges.by[i] + growth * ny);
    if ((aRight > 0 && across.lo > 0) || (aLeft < 0 && across.hi < 0)) continue;
    const sideLo = Math.min(aLo, along.lo);
    const sideHi = Math.max(aHi, along.hi);
    if (sideHi < 0) continue;
    if (least <= 0 && outside + extent >= 0) {
      const lo = least < 0 ? Math.max(0, outside - extent) / -least : 0;
      const hi = most < 0 ? (outside + extent) / -most : Infinity;
      entryLo = Math.min(entryLo, Math.max(sideLo, lo));
      entryHi = Math.max(entryHi, Math.min(sideHi, hi));
    }
    if (most >= 0) {
      const lo = most > 0 ? Math.max(0, -outside - extent) / most : 0;
      const hi = least > 0 ? (extent - outside) / least : Infinity;
      exitLo = Math.min(exitLo, Math.max(sideLo, lo));
      exitHi = Math.max(exitHi, Math.min(sideHi, hi));
    }
  }

  span.entryLo = insideMaybe ? 0 : Math.max(0, lineEntry, entryLo);
  span.exitHi = Math.min(lineExit, exitHi);
  if (span.entryLo > span.exitHi || span.entryLo >= reach) return false;
  span.sure = someRight && someLeft && nearestAlong >= growth;
  span.entryHi = entryHi;
  span.exitLo = exitLo;
  return true;
}
