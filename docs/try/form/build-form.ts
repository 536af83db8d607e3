import { type Json, pathText } from '../document/json.js';
import { el } from '../probe/dom.js';
import type { Strings } from '../strings.js';
import { buildChoice, buildField, type ControlEvents, errorSlot, type FormPlace } from './controls.js';
import type { ListPart, Part, Row, Section } from './parts.js';

export interface FormEvents extends ControlEvents {
  readonly inserted: (list: ListPart, index: number, item: Json) => void;
  readonly removed: (list: ListPart, index: number) => void;
}

/** Elements of the whole form, with the places that problems can be told at, in the order of the page. */
export class FormBuilder {
  readonly places: FormPlace[] = [];
  readonly #input: Json;
  readonly #strings: Strings;
  readonly #on: FormEvents;

  constructor(input: Json, strings: Strings, on: FormEvents) {
    this.#input = input;
    this.#strings = strings;
    this.#on = on;
  }

  section(section: Section, number: number, open: boolean): HTMLElement {
    const headingId = `s:${section.id}`;
    const heading = el(
      'h3',
      { id: headingId, class: 'section-heading' },
      el('span', { class: 'section-number' }, String(number)),
      ' ',
      section.heading,
    );
    const content = [
      ...section.notes.map((text) => el('p', { class: 'note' }, text)),
      el('div', { class: 'parts' }, ...this.#parts(section.parts, '')),
    ];
    const attributes = { class: 'form-section', 'aria-labelledby': headingId, 'data-section': section.id };
    if (section.id !== 'stroke' && section.id !== 'furnishings')
      return el('section', attributes, heading, ...content);
    const details = el('details', {}, el('summary', {}, heading), ...content);
    details.open = open;
    return el('section', attributes, details);
  }

  #parts(parts: readonly Part[], rowName: string): HTMLElement[] {
    return parts.map((part) => this.#part(part, rowName));
  }

  #part(part: Part, rowName: string): HTMLElement {
    switch (part.part) {
      case 'field':
        return this.#placed(buildField(part, this.#input, rowName, this.#strings, this.#on));
      case 'choice':
        return this.#placed(buildChoice(part, rowName, this.#on));
      case 'list':
        return this.#list(part, rowName);
      case 'group':
        return el(
          'fieldset',
          { class: 'group' },
          el('legend', { class: 'label' }, part.heading),
          el('div', { class: 'parts' }, ...this.#parts(part.parts, `${rowName} ${part.heading}`.trim())),
        );
    }
  }

  #placed({ element, place }: { readonly element: HTMLElement; readonly place: FormPlace }): HTMLElement {
    this.places.push(place);
    return element;
  }

  #list(list: ListPart, within: string): HTMLElement {
    const path = pathText(list.path);
    const error = errorSlot(path);
    const box = el('div', { class: list.columns ? 'list columns' : 'list', 'data-list': path });
    this.places.push({
      path,
      control: false,
      label: list.heading === '' ? within : list.heading,
      error,
      target: () => box.querySelector('input, select, button'),
    });
    if (list.heading !== '') {
      box.setAttribute('role', 'group');
      box.setAttribute('aria-labelledby', `h:${path}`);
      box.append(el('h4', { id: `h:${path}` }, list.heading));
    }
    if (list.note !== undefined) box.append(el('p', { class: 'note' }, list.note));
    box.append(error);
    list.rows.forEach((row, i) => {
      box.append(this.#row(list, row, i, within));
    });
    if (list.more > 0) box.append(el('p', { class: 'note' }, this.#strings.form.moreRows(list.more)));
    const buttons = list.add.map(({ label, item }) => {
      const button = el('button', { type: 'button', class: 'add' }, label);
      button.addEventListener('click', () => this.#on.inserted(list, list.rows.length + list.more, item));
      return button;
    });
    box.append(el('div', { class: 'adding' }, ...buttons));
    return box;
  }

  #row(list: ListPart, row: Row, index: number, within: string): HTMLElement {
    const { form } = this.#strings;
    const path = pathText(row.path);
    const name = `${within} ${row.name}`.trim();
    const error = errorSlot(`${path}:row`);
    const nameId = `r:${path}`;
    const box = el('div', { class: 'row', role: 'group', 'aria-labelledby': nameId });
    this.places.push({
      path,
      control: false,
      label: row.name,
      error,
      target: () => box.querySelector('input:not([hidden]), select'),
    });
    const remove = el('button', { type: 'button', 'aria-label': form.remove(name) }, form.removeShort);
    remove.addEventListener('click', () => this.#on.removed(list, index));
    const buttons = [remove];
    const [first] = list.add;
    if (list.ordered && first !== undefined) {
      const insert = el('button', { type: 'button', 'aria-label': form.insert(name) }, form.insertShort);
      insert.addEventListener('click', () => this.#on.inserted(list, index, first.item));
      buttons.unshift(insert);
    }
    box.append(
      el('span', { class: 'row-name', id: nameId }, row.name.charAt(0).toUpperCase() + row.name.slice(1)),
      el('div', { class: 'parts' }, ...this.#parts(row.parts, name)),
      el('div', { class: 'row-buttons' }, ...buttons),
      error,
    );
    return box;
  }
}
