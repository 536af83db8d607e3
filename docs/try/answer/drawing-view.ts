import {
  type FitInput,
  type FitReport,
  InputError,
  type PlanOptions,
  renderPlan,
  type SentenceUnits,
} from 'elbowroom';
import { el, setText } from '../probe/dom.js';
import { download } from '../sharing/download.js';
import type { Strings } from '../strings.js';
import { drawingInto } from './svg-drawing.js';

const SCALES = [20, 50, 100, 200] as const;
const SHEETS = { A4: 'A4', A3: 'A3' } as const;

/** The drawing to scale, with the choice of scale and sheet, and its way to paper. */
export class DrawingView {
  readonly element: HTMLElement;
  readonly #strings: Strings;
  readonly #host = el('div', { class: 'drawing-sheet' });
  readonly #view: HTMLElement;
  readonly #scale: HTMLSelectElement;
  readonly #sheet: HTMLSelectElement;
  readonly #problem: HTMLElement;
  readonly #paper = el('style');
  #shown: { readonly input: FitInput; readonly report: FitReport; readonly units: SentenceUnits } | null =
    null;
  #svg = '';

  constructor(strings: Strings) {
    const words = strings.drawing;
    this.#strings = strings;
    this.#scale = el(
      'select',
      { id: 'drawing-scale' },
      el('option', { value: '' }, words.best),
      ...SCALES.map((scale) => el('option', { value: scale }, words.scaleOf(scale))),
    );
    this.#sheet = el(
      'select',
      { id: 'drawing-size' },
      el('option', { value: '' }, words.anySheet),
      ...Object.keys(SHEETS).map((name) => el('option', { value: name }, name)),
    );
    this.#problem = el('p', { class: 'error', id: 'drawing-problem', role: 'alert' });
    for (const select of [this.#scale, this.#sheet]) select.addEventListener('change', () => this.#draw());
    const print = el('button', { type: 'button' }, words.print);
    print.addEventListener('click', () => window.print());
    const save = el('button', { type: 'button' }, words.save);
    save.addEventListener('click', () => download(this.#svg, words.file, 'image/svg+xml'));
    const large = el('input', { type: 'checkbox', id: 'drawing-large' });
    large.addEventListener('change', () => this.#host.classList.toggle('paper-size', large.checked));
    const tools = el(
      'div',
      { class: 'tools' },
      el(
        'div',
        { class: 'field' },
        el('label', { class: 'label', for: 'drawing-scale' }, words.scale),
        this.#scale,
      ),
      el(
        'div',
        { class: 'field' },
        el('label', { class: 'label', for: 'drawing-size' }, words.sheet),
        this.#sheet,
      ),
      el('label', { class: 'check', for: 'drawing-large' }, large, ' ', words.paperSize),
      print,
      save,
    );
    const scrolling = { class: 'drawing-view', role: 'region', 'aria-label': words.label, tabindex: 0 };
    this.#view = el('div', scrolling, this.#host);
    this.element = el(
      'section',
      { class: 'drawing', 'aria-labelledby': 'drawing-heading' },
      el('h3', { id: 'drawing-heading' }, words.heading),
      tools,
      this.#problem,
      this.#view,
      el('p', { class: 'note' }, words.printNote),
    );
    document.head.append(this.#paper);
  }

  show(input: FitInput, report: FitReport, units: SentenceUnits): void {
    this.#shown = { input, report, units };
    this.#draw();
  }

  #draw(): void {
    if (this.#shown === null) return;
    const { input, report, units } = this.#shown;
    const refused = this.#render(input, report, units);
    // Another drawing than what was asked for would pass for it.
    this.#view.hidden = refused !== null;
    setText(this.#problem, refused ?? '');
    if (refused === null) this.#scale.removeAttribute('aria-invalid');
    else this.#scale.setAttribute('aria-invalid', 'true');
    this.#scale.setAttribute('aria-describedby', this.#problem.id);
  }

  /** Why it cannot be drawn so, or null. */
  #render(input: FitInput, report: FitReport, units: SentenceUnits): string | null {
    try {
      const svg = renderPlan(input, report, this.#options(units));
      if (!drawingInto(this.#host, svg)) return this.#strings.drawing.refused;
      this.#svg = svg;
      const [, width = '297', height = '210'] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg) ?? [];
      this.#setPaper(width, height);
      return null;
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      return error.problems.map(({ message }) => message).join(' ');
    }
  }

  #options(unit: SentenceUnits): PlanOptions {
    const sheet = this.#sheet.value;
    return {
      unit,
      ...(this.#scale.value === '' ? {} : { scale: Number(this.#scale.value) }),
      ...(sheet === 'A4' || sheet === 'A3' ? { sheet } : {}),
    };
  }

  /** Paper of the drawing's own size without a margin, which the drawing has itself, so that a millimetre stays one. */
  #setPaper(width: string, height: string): void {
    this.#paper.textContent =
      `.paper-size { width: ${width}mm; }` +
      `@page drawing { size: ${width}mm ${height}mm; margin: 0; }` +
      `@media print { .drawing-sheet { width: ${width}mm; height: ${height}mm; } }`;
  }
}
