import { renderShot } from 'elbowroom/plan';
import { el } from './dom.js';
import { cueFor, type ProbeModel, type Settings, strokeFor } from './probe-model.js';
import type { Shot } from './shot.js';
import { steadyBox } from './steady-box.js';
import type { ProbeStrings } from './strings.js';

/** Parts of the sheet that the page says in its own words. */
const SHEET_PARTS: ReadonlySet<string> = new Set(['sheet', 'frame', 'legend', 'title-block', 'scale-bar']);

/** The side elevation that the library draws, cut out of its sheet. */
export class ElevationFigure {
  readonly element: HTMLElement;
  readonly #strings: ProbeStrings;

  constructor(strings: ProbeStrings) {
    this.#strings = strings;
    this.element = el('div', {
      class: 'probe-elevation',
      role: 'group',
      tabindex: 0,
      'aria-label': strings.elevationLabel,
    });
  }

  draw(model: ProbeModel, settings: Settings, shot: Shot): void {
    const { backswing, shortBackswing, margin } = strokeFor(model, settings);
    const { length, tipRadius, buttRadius } = cueFor(model, settings);
    const input = { ...model.input, stroke: { ...model.input.stroke, backswing, shortBackswing, margin } };
    try {
      this.element.innerHTML = renderShot(
        input,
        model.report,
        {
          cue: { length, tipDiameter: 2 * tipRadius, buttDiameter: 2 * buttRadius },
          ball: { x: shot.x, y: shot.y },
          direction: shot.direction,
        },
        { sheet: 'A4', orientation: 'landscape', id: 'probe-elevation' },
      );
      this.#cutOut();
    } catch (error) {
      this.element.textContent = this.#strings.failed(error instanceof Error ? error.message : String(error));
    }
  }

  #cutOut(): void {
    const picture = this.element.querySelector('svg');
    if (picture === null) return;
    for (const part of picture.querySelectorAll<SVGElement>(':scope > [data-part]'))
      if (SHEET_PARTS.has(part.dataset.part ?? '')) part.remove();
    let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
    for (const part of picture.children) {
      if (!(part instanceof SVGGElement)) continue;
      const { x, y, width, height } = part.getBBox();
      left = Math.min(left, x);
      top = Math.min(top, y);
      right = Math.max(right, x + width);
      bottom = Math.max(bottom, y + height);
    }
    if (!(left < right)) return;
    const ball =
      picture.querySelector<SVGCircleElement>('[data-part="ball"] circle')?.cx.baseVal.value ?? left;
    const { x, y, width, height } = steadyBox({ left, top, right, bottom }, ball);
    picture.setAttribute('viewBox', [x, y, width, height].map((value) => value.toFixed(2)).join(' '));
    picture.removeAttribute('width');
    picture.removeAttribute('height');
  }
}
