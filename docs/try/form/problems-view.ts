import type { InputProblem } from 'elbowroom';
import { isWithin, placeProblems } from '../document/place-problems.js';
import { el } from '../probe/dom.js';
import type { Strings } from '../strings.js';
import type { FormPlace } from './controls.js';

/** As many problems are listed in the summary; nobody mends more before looking again. */
const MOST_LINKS = 8;

/** Tells each problem beside the reading that caused it, and all of them in a summary that leads there. */
export class ProblemsView {
  readonly summary: HTMLElement;
  readonly #strings: Strings;
  readonly #touched = new Set<string>();
  #all = false;
  /** Paths of the controls that were there when problems were shown last. */
  #known: readonly string[] = [];
  #told: { readonly error: HTMLElement; readonly target: HTMLElement | null }[] = [];

  constructor(strings: Strings) {
    this.#strings = strings;
    this.summary = el('div', { class: 'problem-summary', id: 'problems', hidden: true });
  }

  /** A control was left: from now on its problems are told. */
  touch(path: string): void {
    this.#touched.add(path);
  }

  /** From now on every problem is told. */
  tellAll(): void {
    this.#all = true;
  }

  /** Only those of controls that were left are told, from the beginning. */
  forget(): void {
    this.#all = false;
    this.#touched.clear();
  }

  /** Rows have come or gone: what is new is empty, and nobody wants to be told that before anything could be written. */
  rowsChanged(): void {
    if (!this.#all) return;
    this.#all = false;
    for (const path of this.#known) this.#touched.add(path);
  }

  /** Shows the problems; returns the control of the first of them. */
  show(problems: readonly InputProblem[], places: readonly FormPlace[]): HTMLElement | null {
    for (const { error, target } of this.#told) untell(error, target);
    this.#told = [];
    this.#known = places.flatMap(({ path, control }) => (control ? [path] : []));
    const placed = placeProblems(problems, places);
    const links: HTMLElement[] = [];
    let first: HTMLElement | null = null;
    // In the order of the page, as somebody goes through it.
    for (const { problem, place: index } of placed.toSorted((a, b) => a.place - b.place)) {
      const place = places[index];
      if (!this.#isTold(problem.path, place)) continue;
      const target = place?.target() ?? null;
      if (place !== undefined) {
        tell(place, target, problem.message);
        this.#told.push({ error: place.error, target });
      }
      first ??= target;
      links.push(this.#link(problem, place, target));
    }
    this.summary.hidden = !this.#all || links.length === 0;
    this.summary.replaceChildren(
      el('h3', {}, this.#strings.problems.heading(links.length)),
      el('ul', {}, ...links.slice(0, MOST_LINKS)),
      ...(links.length > MOST_LINKS
        ? [el('p', {}, this.#strings.problems.more(links.length - MOST_LINKS))]
        : []),
    );
    return first;
  }

  #isTold(path: string, place: FormPlace | undefined): boolean {
    if (this.#all) return true;
    if (place === undefined) return false;
    return [...this.#touched].some(
      (touched) => touched === place.path || (!place.control && isWithin(touched, path)),
    );
  }

  #link(problem: InputProblem, place: FormPlace | undefined, target: HTMLElement | null): HTMLElement {
    if (target === null || place === undefined)
      return el('li', {}, `${this.#strings.problems.whole}: ${problem.message}`);
    const link = el('a', { href: `#${target.id}` }, problem.message);
    link.addEventListener('click', (event) => {
      // The fragment belongs to the room.
      event.preventDefault();
      reveal(target);
      target.focus();
    });
    return el('li', {}, link);
  }
}

/** Opens what the control is folded up in. */
export function reveal(target: HTMLElement): void {
  const details = target.closest('details');
  if (details !== null) details.open = true;
}

function tell({ error, control }: FormPlace, target: HTMLElement | null, message: string): void {
  error.hidden = false;
  error.append(el('span', {}, message), ' ');
  if (target === null) return;
  const ids = new Set((target.getAttribute('aria-describedby') ?? '').split(' ').filter((id) => id !== ''));
  target.setAttribute('aria-describedby', [...ids.add(error.id)].join(' '));
  const mayBeInvalid = !(target instanceof HTMLButtonElement) && target.getAttribute('type') !== 'radio';
  if (control && mayBeInvalid) target.setAttribute('aria-invalid', 'true');
}

function untell(error: HTMLElement, target: HTMLElement | null): void {
  error.hidden = true;
  error.replaceChildren();
  const ids = (target?.getAttribute('aria-describedby') ?? '').split(' ').filter((id) => id !== error.id);
  if (ids.some((id) => id !== '')) target?.setAttribute('aria-describedby', ids.join(' '));
  else target?.removeAttribute('aria-describedby');
  target?.removeAttribute('aria-invalid');
}
