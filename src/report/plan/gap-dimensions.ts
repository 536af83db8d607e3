import type { TableSpec } from '../../equipment/equipment-types.js';
import type { Point, Ring } from '../../geometry/types.js';
import type { Scene } from '../../room/scene.js';
import type { Cushion, Gap } from '../fit-report.js';
import { plainName, sayCushion } from '../sentences.js';
import { drawDimension } from './dimension.js';
import type { Draft } from './draft.js';
import { halfCushion, offCushion, type TableFrame } from './table-frame.js';
import { WORDS } from './words.js';

/** Off the middle of the cushion where there is a choice, so that centre lines stay free: a share of its half length. */
const ASIDE = 0.36;
/** and this far from the ends of what is nearest, where witness lines stand, mm in the room. */
const EDGE = 150;
/** The report's distance and the one found here are the same, mm. */
const SAME = 0.01;

/** What is behind each cushion: from the nose to the first thing, square off it, where it is nearest. */
export function drawGaps(
  draft: Draft,
  gaps: readonly Gap[],
  scene: Scene,
  table: TableSpec,
  frame: TableFrame,
  turn: number,
): void {
  for (const gap of gaps) {
    const note = WORDS.gapNote(
      sayCushion(gap.cushion, turn),
      plainName(gap.to),
      draft.lengths.bare(gap.distance),
    );
    const along = nearestAlong(gap, scene, table, frame);
    if (along === null || gap.distance === 0) {
      draft.legend.note(note, null);
      continue;
    }
    const from = draft.view.at(frame.behind(gap.cushion, table, 0, along));
    const to = draft.view.at(frame.behind(gap.cushion, table, gap.distance, along));
    drawDimension(draft, { from, to, line: [from, to], length: gap.distance, note, part: 'gap' });
  }
}

/** Where along a cushion the thing that its gap names is nearest; null where it is not found at that distance. */
function nearestAlong(
  { cushion, distance, to }: Gap,
  scene: Scene,
  table: TableSpec,
  frame: TableFrame,
): number | null {
  const half = halfCushion(cushion, table);
  const wanted = ASIDE * half;
  let best: number | null = null;
  const consider = (a: Point, b: Point): void => {
    for (const [low, high] of nearStretch(cushion, table, frame.back(a), frame.back(b), half, distance)) {
      const edge = Math.min(EDGE, (high - low) / 4);
      const along = Math.min(high - edge, Math.max(low + edge, wanted));
      if (best === null || Math.abs(along - wanted) < Math.abs(best - wanted)) best = along;
    }
  };
  scene.outline.forEach((a, i) => {
    if (scene.wallNames[i] === to) consider(a, scene.outline[(i + 1) % scene.outline.length]);
  });
  for (const { name, ring } of scene.obstacles) if (name === to) eachEdge(ring, consider);
  return best;
}

/** The part of an edge that lies `distance` behind the cushion, as a stretch along it. */
function nearStretch(
  cushion: Cushion,
  table: TableSpec,
  a: Point,
  b: Point,
  half: number,
  distance: number,
): readonly (readonly [number, number])[] {
  const from = offCushion(cushion, table, a);
  const to = offCushion(cushion, table, b);
  const run = to.along - from.along;
  const low = Math.max(-half, Math.min(from.along, to.along));
  const high = Math.min(half, Math.max(from.along, to.along));
  if (low > high) return [];
  const outAt = (along: number): number =>
    run === 0 ? Math.min(from.out, to.out) : from.out + ((to.out - from.out) * (along - from.along)) / run;
  const nearLow = Math.abs(outAt(low) - distance) < SAME;
  const nearHigh = Math.abs(outAt(high) - distance) < SAME;
  if (nearLow && nearHigh) return [[low, high]];
  return nearLow ? [[low, low]] : nearHigh ? [[high, high]] : [];
}

function eachEdge(ring: Ring, visit: (a: Point, b: Point) => void): void {
  ring.forEach((a, i) => {
    visit(a, ring[(i + 1) % ring.length]);
  });
}
