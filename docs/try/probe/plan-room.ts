import type { SceneDoor } from 'elbowroom/stroke';
import { pathOf, round, svg } from './dom.js';
import { patternFill } from './patterns.js';
import { fieldToRoom, type PlanView, type Point, rectangleAt } from './plan-geometry.js';
import type { ProbeModel } from './probe-model.js';

/** The plan's part that stays while shots are tried: room, things and table, in drawing-office lines. */

/** Thickness that walls are drawn with, mm; nobody measured it. */
export const WALL = 150;

export function drawRoom(model: ProbeModel, view: PlanView, axis: string, ids: string): SVGGElement {
  const { scene, strokes, pose } = model;
  const ring = (points: readonly Point[]) => pathOf(points.map(view.toPixel), true);
  const outline = ring(scene.outline);
  const group = svg('g');
  group.append(
    svg('path', {
      d: outline,
      fill: 'none',
      stroke: patternFill(ids, 'cut'),
      'stroke-width': round(2 * WALL * view.scale),
      'stroke-linejoin': 'miter',
    }),
    svg('path', { d: outline, class: 'probe-paper probe-thick' }),
  );
  for (const door of scene.doors) group.append(drawDoor(door, view));
  const cueHeight = strokes.ballHeight;
  for (const { name, ring: footprint, from, to } of scene.obstacles) {
    // What a level cue can meet is drawn as cut; what hangs over it, dashed.
    const overhead = from >= cueHeight;
    const cut = !overhead && to > cueHeight;
    group.append(
      svg('path', {
        d: ring(footprint),
        class: cut ? 'probe-thick' : `probe-thin${overhead ? ' probe-dashed' : ''}`,
        fill: cut ? patternFill(ids, 'cut') : 'none',
        'data-thing': name,
      }),
    );
  }
  group.append(
    svg('path', { d: ring(rectangleAt(pose, strokes.rimX, strokes.rimY)), class: 'probe-paper probe-thick' }),
    svg('path', {
      d: ring(rectangleAt(pose, strokes.noseX, strokes.noseY)),
      class: 'probe-cloth probe-thin probe-field',
    }),
    drawAxes(model, view, axis),
  );
  return group;
}

function drawAxes({ pose, strokes: { rimX, rimY } }: ProbeModel, view: PlanView, axis: string): SVGGElement {
  const at = (x: number, y: number) => view.toPixel(fieldToRoom(pose, [x, y]));
  const beyond = 14 / view.scale;
  const head = 6 / view.scale;
  const tip = rimX + 2 * beyond;
  const label = at(tip - beyond / 2, -beyond);
  return svg(
    'g',
    { class: 'probe-axes' },
    svg('path', {
      d: pathOf([at(-rimX - beyond, 0), at(tip, 0)], false),
      class: 'probe-fine probe-chain',
    }),
    svg('path', {
      d: pathOf([at(0, -rimY - beyond), at(0, rimY + beyond)], false),
      class: 'probe-fine probe-chain',
    }),
    svg('text', { x: round(label[0]), y: round(label[1] + 4), class: 'probe-axis' }, axis),
    svg('path', {
      d: pathOf([at(tip - head, head / 2), at(tip, 0), at(tip - head, -head / 2)], false),
      class: 'probe-fine',
    }),
  );
}

/** The leaf open with the arc that it sweeps, or two lines for one that slides; where it opens out, the opening alone. */
function drawDoor({ hinge, latch, opens, swing }: SceneDoor, view: PlanView): SVGGElement {
  const a = view.toPixel(hinge);
  const b = view.toPixel(latch);
  const group = svg(
    'g',
    {},
    svg('path', { d: pathOf([a, b], false), class: 'probe-opening' }),
    svg('path', {
      d: pathOf([a, b], false),
      class: `probe-thin${opens === 'slides' ? ' probe-dashed' : ''}`,
    }),
  );
  if (swing !== null) {
    const corner = swing.find((point) => isLeafEnd(point, hinge, latch));
    const c = corner === undefined ? undefined : view.toPixel(corner);
    if (c !== undefined) {
      const radius = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const sweep = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0 ? 1 : 0;
      const arc = `A${round(radius)} ${round(radius)} 0 0 ${sweep} ${round(c[0])} ${round(c[1])}`;
      group.append(
        svg('path', { d: `${pathOf([b], false)}${arc}`, class: 'probe-thin' }),
        svg('path', { d: pathOf([a, c], false), class: 'probe-thin' }),
      );
    }
  }
  return group;
}

/** The corner of the swept quarter circle that lies square off the closed leaf, as far from the hinge as the latch. */
function isLeafEnd(point: Point, hinge: Point, latch: Point): boolean {
  const [dx, dy] = [latch[0] - hinge[0], latch[1] - hinge[1]];
  const [px, py] = [point[0] - hinge[0], point[1] - hinge[1]];
  const size = dx * dx + dy * dy;
  return Math.abs(dx * px + dy * py) < 1e-6 * size && Math.abs(px * px + py * py - size) < 1e-3 * size;
}
