import { el, svg } from './dom.js';
import type { ProbeStrings } from './strings.js';

/** What the lines in the plan mean. */
export function planKey(strings: ProbeStrings): HTMLElement {
  const sample = (...children: readonly SVGElement[]) =>
    svg(
      'svg',
      { class: 'probe-swatch', viewBox: '0 0 26 16', width: 26, height: 16, 'aria-hidden': 'true' },
      ...children,
    );
  const entries: readonly (readonly [SVGSVGElement, string])[] = [
    [
      sample(svg('path', { d: 'M1 7H25V10L1 9Z', class: 'probe-cue', fill: 'var(--p-ink)' })),
      strings.planKey.cue,
    ],
    [sample(svg('path', { d: 'M1 5H25V11H1', class: 'probe-backswing' })), strings.planKey.backswing],
    [sample(svg('circle', { cx: 13, cy: 8, r: 6.5, class: 'probe-player' })), strings.planKey.player],
    [
      sample(svg('rect', { x: 1, y: 1.5, width: 24, height: 13, class: 'probe-window' })),
      strings.planKey.window,
    ],
    [sample(svg('path', { d: 'M1 8H25', class: 'probe-met' })), strings.planKey.met],
  ];
  const list = el('ul', { class: 'probe-key', 'aria-label': strings.keyHeading });
  for (const [picture, words] of entries) list.append(el('li', {}, picture, words));
  return list;
}
