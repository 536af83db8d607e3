import { insertAt, type Json, pathText, removeAt } from '../document/json.js';
import { keptParts } from '../document/kept.js';
import { edit } from '../document/lens.js';
import { el, setText } from '../probe/dom.js';
import type { Strings } from '../strings.js';
import { FormBuilder, type FormEvents } from './build-form.js';
import type { FormPlace } from './controls.js';
import { allParts, formShape, shownPaths } from './form-shape.js';
import type { ChoicePart, FieldPart, FormState, ListPart, Section } from './parts.js';
import type { Catalogues } from './shape-table.js';

export interface FormListener {
  /** The input is another one. `path`: only one control was changed; null: whatever else. `done`: and it was left. */
  readonly changed: (path: string | null, done: boolean) => void;
  /** For those who do not see the page. */
  readonly said: (words: string) => void;
}

/** The form: an input written down as controls. It is made anew when rows come and go; what is written in a control changes the input alone. */
export class FormView {
  #state: FormState;
  #places: readonly FormPlace[] = [];
  readonly #root: HTMLElement;
  readonly #strings: Strings;
  readonly #catalogues: Catalogues;
  readonly #listener: FormListener;
  readonly #open = new Map<string, boolean>();
  readonly #kept: HTMLElement;

  constructor(
    root: HTMLElement,
    strings: Strings,
    catalogues: Catalogues,
    listener: FormListener,
    input: Json,
  ) {
    this.#root = root;
    this.#strings = strings;
    this.#catalogues = catalogues;
    this.#listener = listener;
    this.#kept = el('p', { class: 'note' });
    this.#state = { input, otherRoom: undefined };
    this.#render();
  }

  get input(): Json {
    return this.#state.input;
  }

  get places(): readonly FormPlace[] {
    return this.#places;
  }

  /** Another input altogether. */
  load(input: Json): void {
    this.#open.clear();
    this.#state = { input, otherRoom: undefined };
    this.#render();
    this.#listener.changed(null, true);
  }

  #render(): void {
    for (const details of this.#root.querySelectorAll('details')) {
      const id = details.closest('[data-section]')?.getAttribute('data-section');
      if (typeof id === 'string') this.#open.set(id, details.open);
    }
    const { input } = this.#state;
    const builder = new FormBuilder(input, this.#strings, this.#events());
    const sections = this.#sections();
    const elements = sections.map((section, i) =>
      builder.section(section, i + 1, this.#open.get(section.id) === true || !section.folded),
    );
    const kept = keptParts(input, [...shownPaths(sections), 'detail']);
    setText(this.#kept, kept.length === 0 ? '' : this.#strings.form.kept(kept));
    this.#root.replaceChildren(...elements, this.#kept);
    this.#places = builder.places;
  }

  #events(): FormEvents {
    return {
      edited: (part, text, done) => this.#edited(part, text, done),
      chosen: (part, value) => this.#chosen(part, value),
      inserted: (list, index, item) => this.#inserted(list, index, item),
      removed: (list, index) => this.#removed(list, index),
    };
  }

  #edited(part: FieldPart, text: string, done: boolean): void {
    const input = edit(this.#state.input, part.path, part.kind, text, part.optional);
    this.#state = { ...this.#state, input };
    this.#listener.changed(pathText(part.path), done);
  }

  #chosen(part: ChoicePart, value: string): void {
    const before = skeletonOf(this.#sections());
    this.#state = part.choose(this.#state, value);
    const sections = this.#sections();
    // Whoever types to choose goes on typing: the control must stay the same one.
    if (skeletonOf(sections) === before) writeNotes(sections);
    else {
      this.#render();
      const path = pathText(part.path);
      this.#places
        .find((place) => place.control && place.path === path)
        ?.target()
        ?.focus();
    }
    this.#listener.changed(null, true);
  }

  #sections(): Section[] {
    return formShape(this.#state.input, this.#strings, this.#catalogues);
  }

  #inserted(list: ListPart, index: number, item: Json): void {
    this.#state = { ...this.#state, input: insertAt(this.#state.input, list.path, index, item) };
    this.#render();
    this.#focusRow(list, index);
    this.#listener.changed(null, true);
  }

  #removed(list: ListPart, index: number): void {
    const { input } = this.#state;
    const last = list.rows.length + list.more === 1 && list.optional;
    const left = last ? removeAt(input, list.path) : removeAt(input, [...list.path, index]);
    this.#state = { ...this.#state, input: left };
    this.#render();
    this.#focusRow(list, Math.min(index, list.rows.length - 2));
    this.#listener.said(this.#strings.form.removed(list.rows[index]?.name ?? ''));
    this.#listener.changed(null, true);
  }

  /** To the first control of a row, or of the list where there is no such row. */
  #focusRow(list: ListPart, index: number): void {
    const row = pathText([...list.path, index]);
    const whole = pathText(list.path);
    const heads = this.#places.filter(({ control }) => !control);
    const place = heads.find(({ path }) => path === row) ?? heads.find(({ path }) => path === whole);
    place?.target()?.focus();
  }
}

/** Which controls there are, whatever is written in them. */
function skeletonOf(sections: readonly Section[]): string {
  return JSON.stringify(
    allParts(sections).map((part) => {
      if (part.part === 'group') return part.heading;
      return [part.part, part.path, part.part === 'choice' && part.note !== undefined];
    }),
  );
}

function writeNotes(sections: readonly Section[]): void {
  for (const part of allParts(sections)) {
    if (part.part !== 'choice' || part.note === undefined) continue;
    const note = document.getElementById(`n:${pathText(part.path)}`);
    if (note !== null) setText(note, part.note);
  }
}
