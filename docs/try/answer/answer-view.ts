import type { FitInput, FitReport, SentenceUnits } from 'elbowroom';
import { el, setText } from '../probe/dom.js';
import type { Step } from '../reckon/messages.js';
import type { Strings } from '../strings.js';
import { DrawingView } from './drawing-view.js';
import { Numbers } from './numbers.js';
import { sentencesOf } from './sentences-view.js';
import { summaryOf } from './summary-view.js';

/** The answer: progress while it is reckoned, then the summary, the drawing and the sentences. */
export class AnswerView {
  readonly element: HTMLElement;
  /** The answer in words, long as it is, for a place with more room. */
  readonly sentences: HTMLElement;
  readonly #strings: Strings;
  readonly #waiting: HTMLElement;
  readonly #stale: HTMLElement;
  readonly #running: HTMLElement;
  readonly #step = el('p', { class: 'step' });
  readonly #progress: HTMLProgressElement;
  readonly #status = el('p', { class: 'status', role: 'status' });
  readonly #body = el('div', { class: 'answer-body', hidden: true });
  readonly #summary = el('div');
  readonly #sentences = el('div', { class: 'sentences-body' });
  readonly #drawing: DrawingView;
  readonly #units: HTMLSelectElement;
  #shown: { readonly input: FitInput; readonly report: FitReport } | null = null;

  constructor(strings: Strings, onStop: () => void, onUnits: () => void) {
    const words = strings.answer;
    this.#strings = strings;
    this.#waiting = el('p', { class: 'note' }, words.waiting);
    this.#stale = el('p', { class: 'stale', hidden: true }, words.stale);
    this.#progress = el('progress', { 'aria-label': words.progress });
    const stop = el('button', { type: 'button' }, words.stop);
    stop.addEventListener('click', onStop);
    this.#running = el('div', { class: 'running', hidden: true }, this.#progress, stop, this.#step);
    this.#units = el(
      'select',
      { id: 'units' },
      ...Object.entries(words.unitNames).map(([value, name]) => el('option', { value }, name)),
    );
    this.#units.value = 'cm';
    this.#units.addEventListener('change', () => {
      this.#draw();
      onUnits();
    });
    this.#drawing = new DrawingView(strings);
    const units = el(
      'div',
      { class: 'field units' },
      el('label', { class: 'label', for: 'units' }, words.units),
      this.#units,
    );
    this.#body.append(this.#summary, this.#drawing.element);
    this.sentences = el(
      'section',
      { class: 'sentences', 'aria-labelledby': 'sentences-heading', hidden: true },
      el('h2', { id: 'sentences-heading' }, words.sentences),
      this.#sentences,
    );
    this.element = el(
      'section',
      { class: 'answer', id: 'answer', 'aria-labelledby': 'answer-heading', tabindex: -1 },
      el('div', { class: 'answer-head' }, el('h2', { id: 'answer-heading' }, words.heading), units),
      this.#status,
      this.#running,
      this.#waiting,
      this.#stale,
      this.#body,
    );
  }

  get units(): SentenceUnits {
    const { value } = this.#units;
    return value === 'mm' || value === 'ftin' ? value : 'cm';
  }

  /** On a phone the answer lies below the form: whoever asks for it is taken there. */
  reveal(): void {
    const { top } = this.element.getBoundingClientRect();
    if (top < 0 || top > window.innerHeight / 2) this.element.scrollIntoView();
  }

  /** The readings are others than those of the answer. */
  outdate(): void {
    this.#stale.hidden = this.#shown === null;
    this.sentences.classList.toggle('outdated', this.#shown !== null);
  }

  start(): void {
    this.#running.hidden = false;
    this.#progress.removeAttribute('value');
    setText(this.#step, this.#strings.answer.start);
  }

  step(step: Step): void {
    const words = this.#strings.answer;
    const numbers = new Numbers(this.units, this.#strings);
    if (step.kind === 'arranging') {
      if (step.effort > 0) this.#progress.value = Math.min(1, step.layouts / step.effort);
      setText(this.#step, words.arranging(step.layouts, step.placed));
      return;
    }
    const { value, upperBound } = step;
    if (upperBound > 0) this.#progress.value = Math.max(0, Math.min(1, value / upperBound));
    setText(
      this.#step,
      value > 0 ? words.searching(numbers.down(value), numbers.up(upperBound)) : words.start,
    );
  }

  /** There is no answer, for a reason. */
  end(words: string): void {
    this.#running.hidden = true;
    this.#status.className = 'status';
    setText(this.#status, words);
  }

  show(input: FitInput, report: FitReport): void {
    const words = this.#strings.answer;
    this.#shown = { input, report };
    this.#waiting.hidden = true;
    this.#stale.hidden = true;
    this.#body.hidden = false;
    this.sentences.hidden = false;
    this.sentences.classList.remove('outdated');
    this.#draw();
    const verdict = `${words.verdicts[report.verdict]}: ${words.means[report.verdict]}`;
    this.end(words.done(verdict));
    // The summary shows what this says.
    this.#status.className = 'spoken';
  }

  #draw(): void {
    if (this.#shown === null) return;
    const { input, report } = this.#shown;
    const numbers = new Numbers(this.units, this.#strings);
    this.#summary.replaceChildren(summaryOf(input, report, numbers, this.#strings));
    this.#sentences.replaceChildren(...sentencesOf(report, this.units));
    this.#drawing.show(input, report, this.units);
  }
}
