import { getAt, type Json, pathText } from '../document/json.js';
import { toText, YES } from '../document/lens.js';
import { el } from '../probe/dom.js';
import type { Strings } from '../strings.js';
import type { ChoicePart, FieldPart, Option } from './parts.js';

/** A control on the page, or the head of a row or list, and where its problems are told. */
export interface FormPlace {
  readonly path: string;
  readonly control: boolean;
  /** What the summary calls it. */
  readonly label: string;
  readonly error: HTMLElement;
  /** Where the focus goes. */
  readonly target: () => HTMLElement | null;
}

/** What a control tells the form. */
export interface ControlEvents {
  /** Another text; `done`: the control was left, or something was chosen. */
  readonly edited: (part: FieldPart, text: string, done: boolean) => void;
  readonly chosen: (part: ChoicePart, value: string) => void;
}

export interface Built {
  readonly element: HTMLElement;
  readonly place: FormPlace;
}

/** Value of the option behind which anything may be written. */
const OWN = '\u0000own';

export function buildField(
  part: FieldPart,
  input: Json,
  rowName: string,
  strings: Strings,
  on: ControlEvents,
): Built {
  const path = pathText(part.path);
  const id = `f:${path}`;
  const error = errorSlot(path);
  const text = toText(part.kind, getAt(input, part.path));
  const label = el('label', { for: id, class: 'label' }, part.label);
  if (part.optional && part.options === undefined && part.kind !== 'flag')
    label.append(' ', el('span', { class: 'optional' }, strings.form.optional));
  const { controls, target } = controlsOf(part, id, text, on, `${rowName} ${part.label}`.trim());
  const ordered = part.kind === 'flag' ? [...controls, label] : [label, ...controls];
  const element = el('div', { class: `field ${part.width} ${part.kind}` }, ...ordered, error);
  return { element, place: { path, control: true, label: part.label, error, target } };
}

interface Controls {
  readonly controls: readonly HTMLElement[];
  readonly target: () => HTMLElement;
}

function controlsOf(part: FieldPart, id: string, text: string, on: ControlEvents, spoken: string): Controls {
  if (part.kind === 'flag') {
    const box = el('input', { type: 'checkbox', id });
    box.checked = text === YES;
    box.addEventListener('change', () => on.edited(part, box.checked ? YES : '', true));
    return { controls: [box], target: () => box };
  }
  if (part.options === undefined) {
    const box = textBox(part, id, text, on);
    return { controls: [box], target: () => box };
  }
  const { options, own } = part;
  const known = options.some(({ value }) => value === text);
  // A word that is not among those known is shown as it is, so that nobody loses it by looking.
  const shown = known || own !== undefined ? options : [{ value: text, label: text }, ...options];
  if (own === undefined) {
    const select = selectOf(id, shown, text);
    select.addEventListener('change', () => on.edited(part, select.value, true));
    return { controls: [select], target: () => select };
  }
  const select = selectOf(id, [...shown, { value: OWN, label: own }], known ? text : OWN);
  const box = textBox(part, `o:${id.slice(2)}`, known ? '' : text, on);
  box.setAttribute('aria-label', `${spoken}, ${own}`);
  box.hidden = known;
  select.addEventListener('change', () => {
    box.hidden = select.value !== OWN;
    on.edited(part, box.hidden ? select.value : box.value, true);
    if (!box.hidden) box.focus();
  });
  return { controls: [select, box], target: () => (box.hidden ? select : box) };
}

function textBox(part: FieldPart, id: string, text: string, on: ControlEvents): HTMLInputElement {
  const box = el('input', {
    type: 'text',
    id,
    autocomplete: 'off',
    spellcheck: 'false',
    autocapitalize: 'off',
    inputmode: part.kind === 'number' ? 'decimal' : false,
  });
  box.value = text;
  box.addEventListener('input', () => on.edited(part, box.value, false));
  box.addEventListener('change', () => on.edited(part, box.value, true));
  return box;
}

export function buildChoice(part: ChoicePart, rowName: string, on: ControlEvents): Built {
  const path = pathText(part.path);
  const error = errorSlot(path);
  const id = `f:${path}:${part.id}`;
  const note = part.note === undefined ? [] : [el('p', { class: 'note', id: `n:${path}` }, part.note)];
  const place = (target: () => HTMLElement | null): FormPlace => ({
    path,
    control: true,
    label: `${rowName} ${part.label}`.trim(),
    error,
    target,
  });
  if (part.radios) {
    const radios = part.options.map(({ value, label }, i) => {
      const radio = el('input', { type: 'radio', name: id, id: `${id}:${i}`, value });
      radio.checked = value === part.value;
      radio.addEventListener('change', () => on.chosen(part, value));
      return el('label', { class: 'radio', for: radio.id }, radio, ' ', label);
    });
    const element = el(
      'fieldset',
      { class: 'choice' },
      el('legend', { class: 'label' }, part.label),
      ...radios,
      ...note,
      error,
    );
    return { element, place: place(() => element.querySelector('input:checked')) };
  }
  const select = selectOf(id, part.options, part.value);
  if (part.note !== undefined) select.setAttribute('aria-describedby', `n:${path}`);
  select.addEventListener('change', () => on.chosen(part, select.value));
  const label = el('label', { for: id, class: 'label' }, part.label);
  const element = el(
    'div',
    { class: `field ${part.id === 'table' ? 'whole' : 'medium'}` },
    label,
    select,
    ...note,
    error,
  );
  return { element, place: place(() => select) };
}

export function errorSlot(path: string): HTMLElement {
  const slot = el('p', { class: 'error', id: `e:${path}` });
  slot.hidden = true;
  return slot;
}

function selectOf(id: string, options: readonly Option[], value: string): HTMLSelectElement {
  const select = el('select', { id });
  const groups = new Map<string, HTMLOptGroupElement>();
  for (const option of options) {
    const item = el('option', { value: option.value }, option.label);
    const { group } = option;
    if (group === undefined) {
      select.append(item);
      continue;
    }
    const box = groups.get(group) ?? el('optgroup', { label: group });
    if (!groups.has(group)) select.append(box);
    groups.set(group, box);
    box.append(item);
  }
  select.value = value;
  return select;
}
