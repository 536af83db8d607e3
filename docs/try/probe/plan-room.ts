import type { SceneDoor } from 'elbowroom/stroke';
import { pathOf, round, svg } from './dom.js';
import { patternFill } from './patterns.js';
import { boxAround, fieldToRoom, type PlanView, type Point, rectangleAt } from './plan-geometry.js';
import type { ProbeModel } from './probe-model.js';

/** The plan's part that stays while shots are tried: room, things and table, in drawing-office lines. */

/** Thickness that walls are drawn with, mm; nobody measured it. */
export const WALL = 150;

export function drawRoom(model: ProbeModel, view: PlanView, ids: string): SVGGElement {
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
    drawAxes(model, view),
  );
  return group;
}

function drawAxes({ pose, strokes: { rimX, rimY } }: ProbeModel, view: PlanView): SVGGElement {
  const at = (x: number, y: number) => view.toPixel(fieldToRoom(pose, [x, y]));
  const beyond = 14 / view.scale;
  const head = 6 / view.scale;
  const tip = rimX + 2 * beyond;
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

interface LabelBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const LINE_HEIGHT = 15;
/** Mean width of a character of the plan's text, px. */
const CHARACTER = 6.4;

/**
 * Names in the plan: first those that forbid the stroke, then the things of the room as far as they do not run into what stands
 * there already.
 */
export function drawNames(
  model: ProbeModel,
  view: PlanView,
  met: readonly { readonly name: string; readonly at: Point }[],
  keepOff: readonly Point[],
): SVGGElement {
  const group = svg('g', { 'aria-hidden': 'true' });
  const taken: LabelBox[] = keepOff.map(([x, y]) => ({
    left: x - 4,
    right: x + 4,
    top: y - 4,
    bottom: y + 4,
  }));
  const put = (name: string, [x, y]: Point, must: boolean): void => {
    const half = (name.length * CHARACTER) / 2;
    const at: Point = [
      Math.min(Math.max(x, half + 3), Math.max(half + 3, view.width - half - 3)),
      Math.min(Math.max(y, LINE_HEIGHT), view.height - 6),
    ];
    const box = { left: at[0] - half, right: at[0] + half, top: at[1] - 11, bottom: at[1] + 4 };
    const free = taken.every(
      (other) =>
        box.left > other.right || box.right < other.left || box.top > other.bottom || box.bottom < other.top,
    );
    if (!free && !must) return;
    taken.push(box);
    group.append(
      svg(
        'text',
        { x: round(at[0]), y: round(at[1]), class: must ? 'probe-name probe-name-met' : 'probe-name' },
        name,
      ),
    );
  };
  const named = new Set<string>();
  for (const { name, at } of met) {
    named.add(name);
    put(name, at, true);
  }
  for (const { name, ring } of model.scene.obstacles) {
    if (named.has(name)) continue;
    const { left, right, low, high } = boxAround(ring);
    const [x, y] = view.toPixel([(left + right) / 2, (low + high) / 2]);
    put(name, [x, y + 4], false);
  }
  return group;
}
