import { renderShot } from 'elbowroom/plan';
import { el } from './dom.js';
import { cueFor, type ProbeModel, type Settings, strokeFor } from './probe-model.js';
import type { Shot } from './shot.js';
import type { ProbeStrings } from './strings.js';

/** Parts of the sheet that the page says in its own words. */
const SHEET_PARTS: ReadonlySet<string> = new Set(['sheet', 'frame', 'legend', 'title-block', 'scale-bar']);
/** Paper left around the drawing, mm on the sheet. */
const AROUND = 3;

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
    let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
    for (const part of picture.children) {
      if (!(part instanceof SVGGElement) || SHEET_PARTS.has(part.dataset.part ?? '')) continue;
      const { x, y, width, height } = part.getBBox();
      left = Math.min(left, x);
      top = Math.min(top, y);
      right = Math.max(right, x + width);
      bottom = Math.max(bottom, y + height);
    }
    if (!(left < right)) return;
    const box = [left - AROUND, top - AROUND, right - left + 2 * AROUND, bottom - top + 2 * AROUND];
    picture.setAttribute('viewBox', box.map((value) => value.toFixed(2)).join(' '));
    picture.removeAttribute('width');
    picture.removeAttribute('height');
  }
}
