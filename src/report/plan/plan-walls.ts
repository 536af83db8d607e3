import type { Point, Ring } from '../../geometry/types.js';
import type { SceneDoor } from '../../room/scene.js';
import type { Segment } from './boxes.js';
import type { Draft } from './draft.js';
import { num, type PaperPoint } from './svg.js';
import { LINE } from './theme.js';
import { edgesOf } from './view.js';
import { WORDS } from './words.js';

/** How thick walls are drawn, mm on paper: nobody measured it. */
export const WALL_BAND = 2.5;
/** A door that opens out is drawn this far open, so that the plan need not show the next room. */
const AJAR = Math.PI / 6;

/**
 * The walls as a hatched band outside the outline, thick where they are cut. The band is a broad stroke with the room's
 * floor laid over its inner half, so it holds for every outline.
 */
export function drawWalls({ pen, view, placer, legend }: Draft, outline: Ring): void {
  const ring = view.ring(outline);
  const mitred = ' stroke-linejoin="miter" stroke-miterlimit="2"';
  pen.group('walls', () => {
    pen.polygon(ring, { stroke: 'fine', width: 2 * WALL_BAND + 2 * LINE.hatch }, mitred);
    pen.polygon(ring, { stroke: 'paper', width: 2 * WALL_BAND }, mitred);
    pen.polygon(ring, { stroke: { pattern: 'cut' }, width: 2 * WALL_BAND }, mitred);
    pen.polygon(ring, { fill: 'paper', stroke: 'ink', width: LINE.thick }, ' data-part="outline"');
  });
  placer.avoid(edgesOf(ring), 8);
  // The middle of the band as well: text over hatching is hard to read.
  placer.avoid(
    edgesOf(ring).map(([a, b]) => outwards(a, b, WALL_BAND / 2)),
    4,
  );
  legend.explain(WORDS.walls, 'area', { fill: { pattern: 'cut' } });
}

/** A wall's line moved out of the room, which lies on the left of every wall. */
function outwards(a: PaperPoint, b: PaperPoint, by: number): Segment {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const dx = long === 0 ? 0 : (-(b[1] - a[1]) * by) / long;
  const dy = long === 0 ? 0 : ((b[0] - a[0]) * by) / long;
  return [
    [a[0] + dx, a[1] + dy],
    [b[0] + dx, b[1] + dy],
  ];
}

/** How far a door that opens out goes beyond its wall: the points that the plan has to hold, mm. */
export function doorPoints(door: SceneDoor, outline: Ring): readonly Point[] {
  if (door.opens !== 'out') return [];
  return [leafEnd(door, inwards(door, outline))];
}

/** Openings, leaves and the way of the leaf. */
export function drawDoors(draft: Draft, doors: readonly SceneDoor[], outline: Ring): void {
  const { pen, view, placer, legend } = draft;
  for (const door of doors) {
    const inward = inwards(door, outline);
    const hinge = view.at(door.hinge);
    const latch = view.at(door.latch);
    const into: PaperPoint = [inward[0], -inward[1]];
    const at = ([x, y]: PaperPoint, depth: number): PaperPoint => [x - into[0] * depth, y - into[1] * depth];
    const outside = WALL_BAND + LINE.thin;
    pen.group('door', () => {
      pen.polygon([at(hinge, -LINE.thick), at(latch, -LINE.thick), at(latch, outside), at(hinge, outside)], {
        fill: 'paper',
      });
      for (const jamb of [hinge, latch])
        pen.polyline([at(jamb, 0), at(jamb, WALL_BAND)], { stroke: 'ink', width: LINE.thick });
      if (door.opens === 'slides') {
        for (const depth of [0.8, 1.5]) pen.polyline([at(hinge, depth), at(latch, depth)], { stroke: 'ink' });
        return;
      }
      const end = view.at(leafEnd(door, inward));
      pen.polyline([hinge, end], { stroke: 'ink', width: LINE.thick });
      pen.path(arc(hinge, end, latch), { stroke: 'ink' }, ' data-part="swing"');
      placer.avoid(
        [
          [hinge, end],
          [end, latch],
        ],
        2,
      );
    });
    legend.explain(WORDS.doors[door.opens], SAMPLES[door.opens], { stroke: 'ink' });
  }
}

const SAMPLES = { in: 'door', out: 'ajar', slides: 'slide' } as const;

/** Unit vector into the room, square to the door: the left of the wall whose middle is nearest to the door's line. */
function inwards({ hinge, latch }: SceneDoor, outline: Ring): Point {
  const dx = latch[0] - hinge[0];
  const dy = latch[1] - hinge[1];
  const width = Math.hypot(dx, dy);
  const mx = (hinge[0] + latch[0]) / 2;
  const my = (hinge[1] + latch[1]) / 2;
  let least = Number.POSITIVE_INFINITY;
  let left = true;
  outline.forEach(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length];
    const ex = bx - ax;
    const ey = by - ay;
    const share = Math.min(1, Math.max(0, ((mx - ax) * ex + (my - ay) * ey) / (ex * ex + ey * ey)));
    const distance = Math.hypot(mx - ax - share * ex, my - ay - share * ey);
    if (distance >= least) return;
    least = distance;
    left = ex * dx + ey * dy >= 0;
  });
  const sign = left ? 1 : -1;
  return [(-sign * dy) / width, (sign * dx) / width];
}

/** Where the leaf's free edge is when it stands open, as drawn. */
function leafEnd({ hinge, latch, opens }: SceneDoor, inward: Point): Point {
  const dx = latch[0] - hinge[0];
  const dy = latch[1] - hinge[1];
  const width = Math.hypot(dx, dy);
  if (opens === 'in') return [hinge[0] + inward[0] * width, hinge[1] + inward[1] * width];
  const along = Math.cos(AJAR);
  const out = Math.sin(AJAR) * width;
  return [hinge[0] + dx * along - inward[0] * out, hinge[1] + dy * along - inward[1] * out];
}

/** The arc around a middle from one point to another at the same distance, the shorter way. */
function arc(middle: PaperPoint, from: PaperPoint, to: PaperPoint): string {
  const radius = Math.hypot(from[0] - middle[0], from[1] - middle[1]);
  const turn = (from[0] - middle[0]) * (to[1] - middle[1]) - (from[1] - middle[1]) * (to[0] - middle[0]);
  return `M${num(from[0])} ${num(from[1])}A${num(radius)} ${num(radius)} 0 0 ${turn > 0 ? 1 : 0} ${num(to[0])} ${num(to[1])}`;
}
