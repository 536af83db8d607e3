import { el, setText } from './dom.js';
import type { Settings } from './probe-model.js';
import { sliderRange } from './slider-range.js';
import type { ProbeStrings } from './strings.js';

type Key = keyof Settings;

/** What a slider offers at least, mm, and its step. */
const RANGES: Readonly<Record<Key, readonly [least: number, most: number, step: number]>> = {
  cueLength: [900, 1700, 10],
  backswing: [0, 400, 5],
  margin: [0, 100, 2],
};
const KEYS: readonly Key[] = ['cueLength', 'backswing', 'margin'];

/** Three sliders with their numbers, and the way back to what the input says. */
export class SliderPanel {
  readonly element: HTMLElement;
  readonly #inputs: Readonly<Record<Key, HTMLInputElement>>;
  readonly #outputs: Readonly<Record<Key, HTMLOutputElement>>;
  readonly #reset: HTMLButtonElement;
  readonly #state: HTMLElement = el('p', { class: 'probe-state', role: 'status' });
  readonly #strings: ProbeStrings;
  #asWritten: Settings = { cueLength: 0, backswing: 0, margin: 0 };

  constructor(strings: ProbeStrings, changed: () => void) {
    this.#strings = strings;
    const slider = (key: Key): HTMLInputElement => {
      const made = el('input', { type: 'range', id: `probe-${key}` });
      made.addEventListener('input', () => {
        this.#say();
        changed();
      });
      return made;
    };
    const output = (key: Key) => el('output', { for: `probe-${key}` });
    this.#inputs = {
      cueLength: slider('cueLength'),
      backswing: slider('backswing'),
      margin: slider('margin'),
    };
    this.#outputs = {
      cueLength: output('cueLength'),
      backswing: output('backswing'),
      margin: output('margin'),
    };
    this.#reset = el('button', { type: 'button', class: 'probe-reset' }, strings.reset);
    this.#reset.addEventListener('click', () => {
      this.#set(this.#asWritten);
      changed();
    });
    this.element = el(
      'div',
      { class: 'probe-sliders' },
      ...KEYS.map((key) =>
        el(
          'div',
          { class: 'probe-slider' },
          el('label', { for: `probe-${key}` }, strings[key]),
          this.#outputs[key],
          this.#inputs[key],
        ),
      ),
      el('div', { class: 'probe-row' }, this.#reset, this.#state),
    );
  }

  /** Back to what the input says, whose steps the sliders keep. */
  setWritten(settings: Settings): void {
    this.#asWritten = settings;
    for (const key of KEYS) {
      const { min, max, step } = sliderRange(settings[key], ...RANGES[key]);
      Object.assign(this.#inputs[key], { min: String(min), max: String(max), step: String(step) });
    }
    this.#set(settings);
  }

  get settings(): Settings {
    const value = (key: Key): number => {
      const shown = this.#inputs[key].valueAsNumber;
      // The slider rounds what it is given to its own step.
      return Math.abs(shown - this.#asWritten[key]) < 1e-3 ? this.#asWritten[key] : shown;
    };
    return { cueLength: value('cueLength'), backswing: value('backswing'), margin: value('margin') };
  }

  get isAsWritten(): boolean {
    const { settings } = this;
    return KEYS.every((key) => settings[key] === this.#asWritten[key]);
  }

  #set(settings: Settings): void {
    for (const key of KEYS) this.#inputs[key].value = String(settings[key]);
    this.#say();
  }

  #say(): void {
    const { settings, isAsWritten } = this;
    for (const key of KEYS) {
      const text = this.#strings.millimetres(settings[key]);
      setText(this.#outputs[key], text);
      this.#inputs[key].setAttribute('aria-valuetext', text);
    }
    this.#reset.disabled = isAsWritten;
    setText(this.#state, isAsWritten ? this.#strings.atReport : this.#strings.changed);
  }
}
