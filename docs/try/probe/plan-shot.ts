import { pathOf, round, svg } from './dom.js';
import type { JudgedShot } from './judge.js';
import { patternFill } from './patterns.js';
import type { PlanView, Point } from './plan-geometry.js';
import { drawNames, type LabelBox } from './plan-names.js';
import type { ProbeModel } from './probe-model.js';
import type { ProbeStrings } from './strings.js';

/** The shot in the plan: cue, backswing, ball, player, and what forbids the open stroke. */

/** A cue is drawn at least so thick, px, or nobody sees it. */
const LEAST = { tip: 2, butt: 6 } as const;

export function drawShotInPlan(
  model: ProbeModel,
  view: PlanView,
  judged: JudgedShot,
  strings: ProbeStrings,
  ids: string,
): SVGGElement {
  const { ball, direction, class: kind } = judged;
  const [ux, uy] = direction;
  const at = (along: number, aside: number): Point =>
    view.toPixel([ball[0] + along * ux - aside * uy, ball[1] + along * uy + aside * ux]);
  const group = svg('g', { class: `probe-shot probe-is-${kind}` });

  const { from, to, half } = judged.window;
  group.append(
    svg('path', {
      d: pathOf([at(from, -half), at(to, -half), at(to, half), at(from, half)], true),
      class: 'probe-window',
    }),
  );
  if (judged.player !== null) {
    const [x, y] = view.toPixel(judged.player);
    const r = judged.playerRadius * view.scale;
    group.append(
      svg('circle', {
        cx: round(x),
        cy: round(y),
        r: round(r),
        class: 'probe-player',
        'data-part': 'player',
      }),
    );
  }
  const marks = drawMet(model, view, judged);
  group.append(marks.group);

  const tip = Math.max(LEAST.tip / view.scale, 10) / 2;
  const butt = Math.max(LEAST.butt / view.scale, 30) / 2;
  const fill =
    kind === 'open' ? 'var(--p-ink)' : patternFill(ids, kind === 'cramped' ? 'crampedMany' : 'blockedMany');
  group.append(
    svg('path', {
      d: pathOf(
        [
          at(judged.butt, butt),
          at(judged.drawnBack, butt),
          at(judged.drawnBack, -butt),
          at(judged.butt, -butt),
        ],
        false,
      ),
      class: 'probe-backswing',
    }),
    svg('path', {
      d: pathOf(
        [at(judged.tip, tip), at(judged.butt, butt), at(judged.butt, -butt), at(judged.tip, -tip)],
        true,
      ),
      class: 'probe-cue',
      fill,
      'data-part': 'cue',
    }),
  );
  const [bx, by] = view.toPixel(ball);
  const radius = Math.max(model.strokes.ballRadius * view.scale, 5);
  group.append(
    svg('circle', {
      cx: round(bx),
      cy: round(by),
      r: round(radius),
      class: 'probe-ball',
      'data-part': 'ball',
    }),
  );
  const [hx, hy] = at(judged.drawnBack, 0);
  group.append(
    svg('circle', { cx: round(hx), cy: round(hy), r: 22, class: 'probe-grip-room' }),
    svg('circle', { cx: round(hx), cy: round(hy), r: 6, class: 'probe-grip', 'data-part': 'grip' }),
  );
  // The class in words beside the cue, where colours do not tell it.
  const word = strings.classes[kind];
  const place = besideCue(at((judged.tip + judged.butt) / 2, 0), direction, word);
  const cue = [0, 0.25, 0.5, 0.75, 1].map((share) =>
    around(at(judged.tip + share * (judged.drawnBack - judged.tip), 0), 5),
  );
  group.append(
    drawNames(model, view, marks.names, [...cue, around([hx, hy], 8), place.box]),
    svg('text', { x: place.x, y: place.y, class: `probe-word probe-word-${kind}` }, word),
  );
  return group;
}

function around([x, y]: Point, by: number): LabelBox {
  return { left: x - by, right: x + by, top: y - by, bottom: y + by };
}

/** Text beside the middle of the cue: above a flat one, to the right of a steep one. */
function besideCue(
  [x, y]: Point,
  [ux, uy]: Point,
  word: string,
): { readonly x: number; readonly y: number; readonly box: LabelBox } {
  const half = 4 * word.length;
  const [tx, ty] = Math.abs(uy) > Math.abs(ux) ? [x + half + 10, y + 4] : [x, y - 14];
  return {
    x: round(tx),
    y: round(ty),
    box: { left: tx - half, right: tx + half, top: ty - 12, bottom: ty + 4 },
  };
}

function drawMet(
  { scene }: ProbeModel,
  view: PlanView,
  { meets, line, ball, direction }: JudgedShot,
): {
  readonly group: SVGGElement;
  readonly names: { readonly name: string; readonly places: readonly Point[] }[];
} {
  const group = svg('g', { 'data-part': 'met' });
  const names: { name: string; places: readonly Point[] }[] = [];
  const { outline, wallNames, obstacles } = scene;
  outline.forEach((corner, i) => {
    const name = wallNames[i];
    if (name === undefined || !meets.includes(name)) return;
    const next = outline[(i + 1) % outline.length] ?? corner;
    group.append(
      svg('path', { d: pathOf([view.toPixel(corner), view.toPixel(next)], false), class: 'probe-met' }),
    );
  });
  for (const { name, ring } of obstacles) {
    if (!meets.includes(name)) continue;
    group.append(svg('path', { d: pathOf(ring.map(view.toPixel), true), class: 'probe-met' }));
  }
  for (const { name, at } of line.met) {
    const [x, y] = view.toPixel([ball[0] + at * direction[0], ball[1] + at * direction[1]]);
    const s = 5;
    group.append(
      svg('path', {
        d: `M${round(x - s)} ${round(y - s)}L${round(x + s)} ${round(y + s)}M${round(x - s)} ${round(y + s)}L${round(x + s)} ${round(y - s)}`,
        class: 'probe-met',
      }),
    );
    const [ux, uy] = direction;
    const beyond: Point = [x + 24 * ux, y - 24 * uy + 4];
    const beside = (by: number): Point => [x - 30 * ux + by * uy, y + 30 * uy + by * ux + 4];
    names.push({ name, places: [beyond, beside(26), beside(-26), beside(44), beside(-44)] });
  }
  return { group, names };
}
