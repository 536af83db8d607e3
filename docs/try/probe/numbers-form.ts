import { el } from './dom.js';
import type { Shot } from './shot.js';
import type { ProbeStrings } from './strings.js';

type Key = keyof Shot;
const KEYS: readonly Key[] = ['x', 'y', 'direction'];

/** The shot as three numbers. What somebody is typing is left alone until they are done. */
export class NumbersForm {
  readonly element: HTMLElement;
  readonly #inputs: Readonly<Record<Key, HTMLInputElement>>;
  #shot: Shot = { x: 0, y: 0, direction: 0 };

  constructor(strings: ProbeStrings, changed: (shot: Shot) => void) {
    const input = (key: Key): HTMLInputElement => {
      const made = el('input', { type: 'number', step: 'any', inputmode: 'decimal', name: `probe-${key}` });
      made.addEventListener('input', () => {
        if (made.value !== '' && Number.isFinite(made.valueAsNumber))
          changed({ ...this.#shot, [key]: made.valueAsNumber });
      });
      // Then what is out of range, or no number, gives way to what is shown.
      made.addEventListener('change', () => this.#write(key));
      return made;
    };
    this.#inputs = { x: input('x'), y: input('y'), direction: input('direction') };
    const labels = { x: strings.ballX, y: strings.ballY, direction: strings.direction };
    this.element = el(
      'fieldset',
      { class: 'probe-numbers' },
      el('legend', {}, strings.numbersLegend),
      el('p', { class: 'probe-help' }, strings.numbersHelp),
      ...KEYS.map((key) => el('label', {}, el('span', {}, labels[key]), this.#inputs[key])),
    );
  }

  /** Where the ball may lie. */
  setLimits(halfX: number, halfY: number): void {
    for (const [input, half] of [
      [this.#inputs.x, halfX],
      [this.#inputs.y, halfY],
    ] as const) {
      input.min = String(-half);
      input.max = String(half);
    }
  }

  show(shot: Shot): void {
    this.#shot = shot;
    for (const key of KEYS) if (this.#inputs[key] !== document.activeElement) this.#write(key);
  }

  #write(key: Key): void {
    this.#inputs[key].value = String(Number(this.#shot[key].toFixed(3)));
  }
}
