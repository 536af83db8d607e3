import type { TableSpec } from '../equipment/equipment-types.js';
import type { Placement, Ring } from '../geometry/types.js';
import { cushionGaps } from '../placement/cushion-gaps.js';
import type { Scene } from '../room/scene.js';
import type { StrokeSettings } from '../stroke/stroke-settings.js';
import type { Cushion, Gap, Span } from './fit-report.js';

const CUSHIONS: readonly Cushion[] = ['endA', 'sideA', 'endB', 'sideB'];

/**
 * Room behind each cushion: from the nose, square off it, to the first thing that a level cue meets anywhere along the
 * cushion. Distances are exact for the given footprints; a thing that overlaps the field gives 0. The pose's centre lies in
 * the room, so that every gap ends at a wall at last.
 */
export function gapsAt(
  scene: Scene,
  table: TableSpec,
  stroke: StrokeSettings,
  pose: Placement,
): readonly Gap[] {
  const level = table.bedHeight + table.ballDiameter / 2 + stroke.tipOffset;
  const met = scene.obstacles.filter((o) => o.to + stroke.margin > level && o.from - stroke.margin < level);
  const { outline } = scene;
  const tall = met.map((o) => o.ring);
  const gaps = cushionGaps({ play: table.field, frame: table.outer, outline, tall, low: [] }, pose);
  return CUSHIONS.map((cushion) => {
    const { distance, to } = gaps[cushion];
    const name = to === null ? '' : to.kind === 'wall' ? scene.wallNames[to.index] : met[to.index].name;
    return { cushion, distance: Math.max(0, distance), to: name };
  });
}

/**
 * The tape-measure arithmetic of the trade: the field and, at either end, cue + backswing + margin, against the field and
 * the two gaps that are there.
 */
export function spansAt(
  table: TableSpec,
  stroke: StrokeSettings,
  cueLength: number,
  gaps: readonly Gap[],
): { readonly along: Span; readonly across: Span } {
  const behind = cueLength + stroke.backswing + stroke.margin;
  const gap = (cushion: Cushion): number => gaps.find((g) => g.cushion === cushion)?.distance ?? 0;
  return {
    along: span(table.field.length + 2 * behind, table.field.length + gap('endA') + gap('endB')),
    across: span(table.field.width + 2 * behind, table.field.width + gap('sideA') + gap('sideB')),
  };
}

/** The same arithmetic for a room in which the table cannot stand: the room's extents along and across its longest wall. */
export function spansOfRoom(
  scene: Scene,
  table: TableSpec,
  stroke: StrokeSettings,
  cueLength: number,
): { readonly along: Span; readonly across: Span } {
  const behind = cueLength + stroke.backswing + stroke.margin;
  const [length, width] = extents(scene.outline);
  return {
    along: span(table.field.length + 2 * behind, length),
    across: span(table.field.width + 2 * behind, width),
  };
}

function span(needed: number, available: number): Span {
  return { needed, available, spare: available - needed };
}

/** Extents of a ring along and across its longest edge, the larger first. */
function extents(ring: Ring): readonly [number, number] {
  let longest = 0;
  let ux = 1;
  let uy = 0;
  ring.forEach(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length];
    const length = Math.hypot(bx - ax, by - ay);
    if (length > longest) {
      longest = length;
      ux = (bx - ax) / length;
      uy = (by - ay) / length;
    }
  });
  const along = ring.map(([x, y]) => x * ux + y * uy);
  const across = ring.map(([x, y]) => y * ux - x * uy);
  const a = Math.max(...along) - Math.min(...along);
  const b = Math.max(...across) - Math.min(...across);
  return a >= b ? [a, b] : [b, a];
}
