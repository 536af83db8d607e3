import type { Point, Ring } from '../../geometry/types.js';
import type { LengthUnit } from '../../length/length.js';
import type { SceneCeilingFace } from '../../room/scene.js';
import { alongLine } from './dimension.js';
import { type Draft, label } from './draft.js';
import { LINE, type Paint } from './theme.js';
import { WORDS } from './words.js';

/** Steps between lines of equal height, mm, finest first. */
const METRIC = [100, 200, 500, 1000, 2000, 5000] as const;
const FOOT = 304.8;
const IMPERIAL = [FOOT / 2, FOOT, 2 * FOOT, 5 * FOOT, 10 * FOOT] as const;
const MOST_LEVELS = 8;
const MOST_TRIED = 60;
/** Shorter ones go without their height, mm on paper. */
const SHORTEST = 6;

/** Lines of equal height of a sloping ceiling, at even heights. Flat ones have none. */
export function drawContours(draft: Draft, ceiling: readonly SceneCeilingFace[], outline: Ring): void {
  const { pen, view, placer, legend, lengths } = draft;
  const paint: Paint = { stroke: 'fine', width: LINE.thin, dashes: 'doubleChain' };
  for (const { height, from, to } of contours(ceiling, outline, lengths.unit)) {
    const a = view.at(from);
    const b = view.at(to);
    pen.group('contour', () => pen.polyline([a, b], paint));
    placer.avoid([[a, b]], 0.5);
    legend.explain(WORDS.contour, 'line', paint);
    if (Math.hypot(b[0] - a[0], b[1] - a[1]) < SHORTEST) continue;
    const text = lengths.bare(height);
    label(draft, 'contour-text', [text], alongLine(a, b), `${WORDS.contour}: ${text}`);
  }
}

/** The lowest place of the ceiling, which lies over a corner of the room; null without a ceiling. */
export function lowestCeiling(ceiling: readonly SceneCeilingFace[], outline: Ring): number | null {
  if (ceiling.length === 0) return null;
  return extreme(ceiling, outline, Math.min);
}

interface Contour {
  readonly height: number;
  readonly from: Point;
  readonly to: Point;
}

/** With the finest steps that do not crowd the plan. */
function contours(ceiling: readonly SceneCeilingFace[], outline: Ring, unit: LengthUnit): readonly Contour[] {
  const sloping = ceiling.filter(({ slopeX, slopeY }) => Math.hypot(slopeX, slopeY) > 0);
  const low = lowestCeiling(ceiling, outline);
  if (low === null || sloping.length === 0) return [];
  // No place is higher than the highest of the faces; which of these heights the ceiling has, the lines say.
  const high = extreme(ceiling, outline, Math.max);
  let found: Contour[] = [];
  for (const step of unit === 'in' || unit === 'ftin' ? IMPERIAL : METRIC) {
    if ((high - low) / step > MOST_TRIED) continue;
    found = [];
    let levels = 0;
    for (let k = Math.ceil(low / step); k * step <= high; k++) {
      const height = k * step;
      const lines = sloping.flatMap((face) => levelLine(face, height, ceiling, outline));
      for (const [from, to] of lines) found.push({ height, from, to });
      if (lines.length > 0) levels++;
    }
    if (levels <= MOST_LEVELS) break;
  }
  return found;
}

/** Where a face that governs has a height: stretches of a straight line. */
function levelLine(
  face: SceneCeilingFace,
  height: number,
  ceiling: readonly SceneCeilingFace[],
  outline: Ring,
): readonly (readonly [Point, Point])[] {
  const slope = Math.hypot(face.slopeX, face.slopeY);
  const nx = face.slopeX / slope;
  const ny = face.slopeY / slope;
  const off = (height - face.height) / slope;
  const at = (t: number): Point => [nx * off - ny * t, ny * off + nx * t];
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  for (const other of ceiling) {
    if (other === face) continue;
    // other - height along the line: start + rise t, which must not be negative.
    const start = faceAt(other, at(0)) - height;
    const rise = nx * other.slopeY - ny * other.slopeX;
    if (rise > 0) low = Math.max(low, -start / rise);
    else if (rise < 0) high = Math.min(high, -start / rise);
    else if (start < 0) return [];
  }
  const crossings: number[] = [];
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length];
    const offA = nx * a[0] + ny * a[1] - off;
    const offB = nx * b[0] + ny * b[1] - off;
    if (offA < 0 === offB < 0) return;
    const share = offA / (offA - offB);
    const tA = nx * a[1] - ny * a[0];
    const tB = nx * b[1] - ny * b[0];
    crossings.push(tA + share * (tB - tA));
  });
  crossings.sort((a, b) => a - b);
  const found: (readonly [Point, Point])[] = [];
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    const from = Math.max(low, crossings[i]);
    const to = Math.min(high, crossings[i + 1]);
    if (to > from) found.push([at(from), at(to)]);
  }
  return found;
}

function extreme(
  ceiling: readonly SceneCeilingFace[],
  outline: Ring,
  choose: (a: number, b: number) => number,
): number {
  let best = faceAt(ceiling[0], outline[0]);
  for (const face of ceiling) for (const corner of outline) best = choose(best, faceAt(face, corner));
  return best;
}

function faceAt({ height, slopeX, slopeY }: SceneCeilingFace, [x, y]: Point): number {
  return height + slopeX * x + slopeY * y;
}
