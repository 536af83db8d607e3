import { round, svg } from './dom.js';
import { boxAround, type PlanView, type Point } from './plan-geometry.js';
import type { ProbeModel } from './probe-model.js';

/** Names in the plan, and room for them. Boxes in px, y down. */

export interface LabelBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const LINE_HEIGHT = 15;
/** Mean width of a character of the plan's text, px. */
const CHARACTER = 6.4;

/** Of a line of text below its base line, and above it, px. */
const BELOW = 4;
const ABOVE = 11;

function labelBox(name: string, [x, y]: Point, { width, height }: PlanView): LabelBox {
  const half = (name.length * CHARACTER) / 2;
  const middle = Math.min(Math.max(x, half + 3), Math.max(half + 3, width - half - 3));
  const base = Math.min(Math.max(y, LINE_HEIGHT), height - 6);
  return { left: middle - half, right: middle + half, top: base - ABOVE, bottom: base + BELOW };
}

function apart(a: LabelBox, b: LabelBox): boolean {
  return a.left > b.right || a.right < b.left || a.top > b.bottom || a.bottom < b.top;
}

/**
 * Names in the plan: first those that forbid the stroke, then the things of the room as far as they do not run into what stands
 * there already.
 */
export function drawNames(
  model: ProbeModel,
  view: PlanView,
  met: readonly { readonly name: string; readonly places: readonly Point[] }[],
  keepOff: readonly LabelBox[],
): SVGGElement {
  const group = svg('g', { 'aria-hidden': 'true' });
  const taken: LabelBox[] = [...keepOff];
  /** Puts a name at the first of some places where nothing is; one that must be told goes to the first place anyway. */
  const put = (name: string, places: readonly Point[], must: boolean): void => {
    const boxes = places.map((place) => labelBox(name, place, view));
    const free = boxes.find((box) => taken.every((other) => apart(box, other)));
    const box = free ?? (must ? boxes[0] : undefined);
    if (box === undefined) return;
    taken.push(box);
    const x = round((box.left + box.right) / 2);
    const y = round(box.bottom - BELOW);
    group.append(svg('text', { x, y, class: must ? 'probe-name probe-name-met' : 'probe-name' }, name));
  };
  const named = new Set<string>();
  for (const { name, places } of met) {
    named.add(name);
    put(name, places, true);
  }
  for (const { name, ring } of model.scene.obstacles) {
    if (named.has(name)) continue;
    const { left, right, low, high } = boxAround(ring);
    const [x, top] = view.toPixel([(left + right) / 2, high]);
    const [, bottom] = view.toPixel([right, low]);
    // In the thing where it is high enough, else below or above it.
    const inside: Point = [x, (top + bottom) / 2 + 4];
    const outside: readonly Point[] = [
      [x, bottom + LINE_HEIGHT],
      [x, top - 6],
    ];
    put(name, bottom - top > LINE_HEIGHT + 3 ? [inside, ...outside] : outside, false);
  }
  return group;
}
