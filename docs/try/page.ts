import refineProgram from 'worker:probe/refine-worker.ts';
import { checkFitInput, type FitInput } from 'elbowroom';
import { AnswerView } from './answer/answer-view.js';
import { ComparisonView } from './answer/comparison-view.js';
import { catalogues } from './catalogues.js';
import type { Json } from './document/json.js';
import { START } from './document/start.js';
import { FormView } from './form/form-view.js';
import { ProblemsView, reveal } from './form/problems-view.js';
import { el, setText } from './probe/dom.js';
import { mountProbe, type Probe } from './probe/mount-probe.js';
import { ENGLISH as PROBE_ENGLISH } from './probe/strings.js';
import { Reckoner, workerFrom } from './reckon/reckoner.js';
import { SharingView } from './sharing/sharing-view.js';
import { ENGLISH } from './strings.js';

/** Nothing was written for so long, ms: then it is reckoned anew. */
const PAUSE = 400;

const strings = ENGLISH;

/** The page: what is written in the form is checked at once, and reckoned in a worker. */
class Page {
  readonly #form: FormView;
  readonly #problems = new ProblemsView(strings);
  readonly #answer: AnswerView;
  readonly #comparison: ComparisonView;
  readonly #probe: Probe;
  readonly #reckoner = new Reckoner();
  readonly #live = el('input', { type: 'checkbox', id: 'live', checked: true });
  readonly #said = el('p', { class: 'spoken', role: 'status' });
  #timer = 0;
  /** What was reckoned last, or is being reckoned, as text. */
  #asked = '';

  constructor(main: HTMLElement) {
    const fields = el('div', { class: 'fields' });
    const known = catalogues();
    this.#answer = new AnswerView(
      strings,
      () => this.#stop(),
      () => this.#comparison.redraw(),
    );
    this.#form = new FormView(
      fields,
      strings,
      known,
      { changed: (path, done) => this.#changed(path, done), said: (words) => setText(this.#said, words) },
      START,
    );
    this.#comparison = new ComparisonView(
      strings,
      known.tables,
      () => (this.#check() ? goodInput(this.#form.input) : null),
      () => this.#answer.units,
    );
    const sharing = new SharingView(
      strings,
      () => this.#form.input,
      (input) => this.#load(input),
    );
    const probeRoot = el('div', { class: 'probe-root' });
    this.#probe = mountProbe(probeRoot, PROBE_ENGLISH, { startWorker: () => workerFrom(refineProgram) });
    main.replaceChildren(
      sharing.element,
      el('div', { class: 'columns-two' }, this.#formElement(fields), this.#answer.element),
      this.#answer.sentences,
      probeRoot,
      this.#comparison.element,
    );
    void sharing.openLink().then((opened) => {
      if (!opened) this.#reckon();
    });
  }

  #formElement(fields: HTMLElement): HTMLElement {
    const words = strings.form;
    const form = el(
      'form',
      { class: 'readings', 'aria-label': words.label, novalidate: true },
      el('h2', {}, words.heading),
      this.#problems.summary,
      this.#said,
      fields,
      el(
        'div',
        { class: 'reckon' },
        el('button', { type: 'submit', class: 'primary' }, words.reckon),
        el('label', { for: 'live', class: 'check' }, this.#live, ' ', words.live),
      ),
    );
    form.addEventListener('submit', (event) => {
      event.preventDefault();
      if (!this.#check()) return;
      this.#reckon();
      this.#answer.reveal();
    });
    return form;
  }

  #load(input: Json): void {
    this.#asked = '';
    this.#problems.forget();
    this.#form.load(input);
    // What somebody else wrote is told in full.
    this.#problems.tellAll();
    this.#problems.show(checkFitInput(input), this.#form.places);
  }

  #changed(path: string | null, done: boolean): void {
    if (path === null) this.#problems.rowsChanged();
    else if (done) this.#problems.touch(path);
    const problems = checkFitInput(this.#form.input);
    if (done) this.#problems.show(problems, this.#form.places);
    if (JSON.stringify(this.#form.input) !== this.#asked) {
      // Overtaken, which nobody needs to be told.
      this.#reckoner.stop();
      this.#answer.end('');
      this.#asked = '';
      this.#answer.outdate();
    }
    window.clearTimeout(this.#timer);
    if (problems.length === 0 && this.#live.checked)
      this.#timer = window.setTimeout(() => this.#reckon(), done ? 0 : PAUSE);
  }

  /** Whether the input is good. Where it is not, everything that is wrong is told and the focus goes to the first of it. */
  #check(): boolean {
    const problems = checkFitInput(this.#form.input);
    this.#problems.tellAll();
    const first = this.#problems.show(problems, this.#form.places);
    setText(this.#said, problems.length === 0 ? '' : strings.problems.count(problems.length));
    if (first !== null) reveal(first);
    (first ?? (problems.length === 0 ? null : this.#problems.summary))?.focus();
    return problems.length === 0;
  }

  #reckon(): void {
    window.clearTimeout(this.#timer);
    const input = goodInput(this.#form.input);
    const asked = JSON.stringify(this.#form.input);
    if (input === null || asked === this.#asked) return;
    this.#asked = asked;
    this.#problems.show([], this.#form.places);
    this.#answer.start();
    this.#reckoner.ask({ kind: 'fit', input }, (reply) => {
      if (reply.kind === 'step') this.#answer.step(reply.step);
      else if (reply.kind === 'report') {
        this.#answer.show(input, reply.report);
        this.#probe.show(input, reply.report);
      } else if (reply.kind === 'failed') this.#answer.end(strings.answer.failed(reply.message));
      else if (reply.kind === 'refused') this.#problems.show(reply.problems, this.#form.places);
    });
  }

  #stop(): void {
    if (!this.#reckoner.busy) return;
    this.#reckoner.stop();
    this.#asked = '';
    this.#answer.end(strings.answer.stopped);
  }
}

/** The input as it is asked: with the map of shots, which the drawing shows. Null where it is not good. */
function goodInput(input: unknown): FitInput | null {
  return isGood(input) ? { ...input, detail: 'shots' } : null;
}

function isGood(input: unknown): input is FitInput {
  return checkFitInput(input).length === 0;
}

const main = document.querySelector('main');
if (main !== null) new Page(main);
