import { el, setText } from './dom.js';
import type { JudgedShot } from './judge.js';
import { swatch } from './patterns.js';
import type { ProbeStrings } from './strings.js';

type Fact = keyof ProbeStrings['facts'];
const FACTS: readonly Fact[] = ['elevation', 'rail', 'meets', 'distance', 'clears', 'player'];

/** A screen reader is told when nothing has moved for so long, ms. */
const QUIET = 400;

/** The answer in words and numbers, at once for the eye and after a pause for the ear. */
export class AnswerPanel {
  readonly element: HTMLElement;
  readonly #strings: ProbeStrings;
  readonly #word: HTMLElement = el('strong', { class: 'probe-class' });
  readonly #means: HTMLElement = el('span', { class: 'probe-means' });
  readonly #badge: HTMLElement;
  readonly #values: Readonly<Record<Fact, HTMLElement>>;
  readonly #spoken: HTMLElement = el('p', { class: 'probe-hidden', role: 'status', 'aria-live': 'polite' });
  #timer = 0;

  constructor(strings: ProbeStrings) {
    this.#strings = strings;
    const value = () => el('dd');
    this.#values = {
      elevation: value(),
      rail: value(),
      meets: value(),
      clears: value(),
      distance: value(),
      player: value(),
    };
    this.#badge = el('p', { class: 'probe-badge' });
    const facts = el('dl', { class: 'probe-facts' });
    for (const fact of FACTS)
      facts.append(el('div', {}, el('dt', {}, strings.facts[fact]), this.#values[fact]));
    this.element = el('div', { class: 'probe-answer' }, this.#badge, facts, this.#spoken);
  }

  draw(judged: JudgedShot): void {
    const { facts: _, ...strings } = this.#strings;
    const { class: kind, elevation, railElevation, meets, line, canStand } = judged;
    if (this.#badge.dataset.class !== kind) {
      this.#badge.dataset.class = kind;
      const fill = kind === 'open' ? null : kind === 'cramped' ? 'crampedMany' : 'blockedMany';
      setText(this.#word, strings.classes[kind]);
      setText(this.#means, strings.classMeans[kind]);
      this.#badge.replaceChildren(swatch('probe-plan', fill), this.#word, this.#means);
    }
    const angle = (degrees: number | null) =>
      degrees === null ? strings.noElevation : strings.degrees(degrees);
    const names = (list: readonly string[]) => (list.length === 0 ? strings.nothing : list.join(', '));
    const how = { over: strings.over, under: strings.under, short: strings.shortOf };
    const say = (fact: Fact, text: string): void => setText(this.#values[fact], text);
    say('elevation', angle(elevation));
    say('rail', angle(railElevation));
    say('meets', names(meets));
    say('clears', elevation === null ? strings.nothing : names(line.clears.map((c) => how[c.how](c.name))));
    const { first } = line;
    say(
      'distance',
      first === null
        ? strings.nothing
        : strings.distanceTo(first.at, first.name, first.at - judged.drawnBack),
    );
    say('player', canStand ? strings.stands : strings.noStanding);
    this.#speakLater(judged);
  }

  #speakLater({ shot, class: kind, elevation, meets, canStand }: JudgedShot): void {
    window.clearTimeout(this.#timer);
    this.#timer = window.setTimeout(() => {
      const { x, y, direction } = shot;
      setText(
        this.#spoken,
        this.#strings.summary({ class: kind, x, y, direction, elevation, meets, canStand }),
      );
    }, QUIET);
  }
}
