import type { TableSpec } from '../equipment/equipment-types.js';
import type { Placement, Ring } from '../geometry/types.js';
import type { Scene } from '../room/scene.js';
import type { StrokeSettings } from '../stroke/stroke-settings.js';
import type { Cushion, Gap, Span } from './fit-report.js';

/** The four cushions with the direction out over each of them, in the table's frame. */
export const CUSHIONS: readonly { readonly cushion: Cushion; readonly x: number; readonly y: number }[] = [
  { cushion: 'endA', x: 1, y: 0 },
  { cushion: 'sideA', x: 0, y: 1 },
  { cushion: 'endB', x: -1, y: 0 },
  { cushion: 'sideB', x: 0, y: -1 },
];

/**
 * Room behind each cushion: from the nose, square off it, to the first thing that a level cue meets anywhere along the
 * cushion. Distances are exact for the given footprints; a thing that overlaps the field gives 0. Where nothing is met
 * inside the room the gap ends at a wall, since the outline is closed.
 */
export function gapsAt(
  scene: Scene,
  table: TableSpec,
  stroke: StrokeSettings,
  pose: Placement,
): readonly Gap[] {
  const level = table.bedHeight + table.ballDiameter / 2 + stroke.tipOffset;
  const cos = Math.cos(pose.angle);
  const sin = Math.sin(pose.angle);
  return CUSHIONS.map(({ cushion, x, y }) => {
    const outX = cos * x - sin * y;
    const outY = sin * x + cos * y;
    const half = (x === 0 ? table.field.length : table.field.width) / 2;
    const nose = (x === 0 ? table.field.width : table.field.length) / 2;
    let distance = Number.POSITIVE_INFINITY;
    let to = '';
    const look = (ring: Ring, name: (edge: number) => string): void => {
      ring.forEach((a, i) => {
        const found = firstInStrip(a, ring[(i + 1) % ring.length], pose, outX, outY, half);
        if (found - nose < distance && found > -nose) {
          distance = found - nose;
          to = name(i);
        }
      });
    };
    look(scene.outline, (edge) => scene.wallNames[edge]);
    for (const obstacle of scene.obstacles) {
      const met = obstacle.to + stroke.margin > level && obstacle.from - stroke.margin < level;
      if (met) look(obstacle.ring, () => obstacle.name);
    }
    return { cushion, distance: Math.max(0, distance), to };
  });
}

/** Least coordinate along `out`, from the field's centre, of the part of segment ab that lies in the strip |across| <= half and ahead of the centre; Infinity if none. */
function firstInStrip(
  a: readonly [number, number],
  b: readonly [number, number],
  pose: Placement,
  outX: number,
  outY: number,
  half: number,
): number {
  const a0 = (a[0] - pose.x) * outX + (a[1] - pose.y) * outY;
  const b0 = (b[0] - pose.x) * outX + (b[1] - pose.y) * outY;
  const a1 = (a[1] - pose.y) * outX - (a[0] - pose.x) * outY;
  const b1 = (b[1] - pose.y) * outX - (b[0] - pose.x) * outY;
  if (Math.min(a1, b1) > half || Math.max(a1, b1) < -half) return Number.POSITIVE_INFINITY;
  // Clip the segment to the strip; along an edge parallel to the strip both ends stay.
  const clip = (limit: number): number => (limit - a1) / (b1 - a1);
  const parallel = a1 === b1;
  const s0 = parallel ? 0 : Math.max(0, Math.min(clip(-half), clip(half)));
  const s1 = parallel ? 1 : Math.min(1, Math.max(clip(-half), clip(half)));
  const first = Math.min(a0 + s0 * (b0 - a0), a0 + s1 * (b0 - a0));
  const last = Math.max(a0 + s0 * (b0 - a0), a0 + s1 * (b0 - a0));
  if (last < 0) return Number.POSITIVE_INFINITY;
  return Math.max(0, first);
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
