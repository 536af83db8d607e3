import { pathOf, round, svg } from './dom.js';
import type { JudgedShot } from './judge.js';
import { patternFill } from './patterns.js';
import type { PlanView, Point } from './plan-geometry.js';
import { drawNames } from './plan-room.js';
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
  const word = at((judged.tip + judged.butt) / 2, 0);
  group.append(drawNames(model, view, marks.names, [[bx, by], word, at(judged.butt, 0), [hx, hy]]));
  group.append(
    svg(
      'text',
      { ...besideCue(word, direction), class: `probe-word probe-word-${kind}` },
      strings.classes[kind],
    ),
  );
  return group;
}

/** Text beside the middle of the cue: above a flat one, to the right of a steep one. */
function besideCue([x, y]: Point, [ux, uy]: Point): Readonly<Record<string, string | number>> {
  const steep = Math.abs(uy) > Math.abs(ux);
  return steep
    ? { x: round(x + 10), y: round(y + 4), 'text-anchor': 'start' }
    : { x: round(x), y: round(y - 12), 'text-anchor': 'middle' };
}

function drawMet(
  { scene }: ProbeModel,
  view: PlanView,
  { meets, line, ball, direction }: JudgedShot,
): { readonly group: SVGGElement; readonly names: { readonly name: string; readonly at: Point }[] } {
  const group = svg('g', { 'data-part': 'met' });
  const names: { name: string; at: Point }[] = [];
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
    names.push({ name, at: [x + 24 * direction[0], y - 24 * direction[1] + 4] });
  }
  return { group, names };
}
