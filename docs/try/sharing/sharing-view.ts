import type { Json } from '../document/json.js';
import { START } from '../document/start.js';
import { el, setText } from '../probe/dom.js';
import type { Strings } from '../strings.js';
import { download } from './download.js';
import { fromFragment, LIMITS, toFragment } from './fragment.js';
import { type Opened, openText } from './open-text.js';

/** Opens and saves rooms: as a file, and as a link that holds all of it. */
export class SharingView {
  readonly element: HTMLElement;
  readonly #strings: Strings;
  readonly #input: () => Json;
  readonly #load: (input: Json) => void;
  readonly #status = el('p', { class: 'status', role: 'status' });
  readonly #link = el('input', { type: 'text', id: 'link', readonly: true });
  readonly #linkField: HTMLElement;
  /** The fragment that this page wrote itself: nothing is to be opened from it. */
  #own = '';

  constructor(strings: Strings, input: () => Json, load: (input: Json) => void) {
    const words = strings.sharing;
    this.#strings = strings;
    this.#input = input;
    this.#load = load;
    const file = el('input', {
      type: 'file',
      id: 'open-file',
      accept: '.json,application/json',
      class: 'file',
    });
    file.addEventListener('change', () => {
      const [chosen] = file.files ?? [];
      // The same file may be opened again after it was changed.
      if (chosen !== undefined) void this.#openFile(chosen).then(() => (file.value = ''));
    });
    const label = words.linkLabel;
    this.#linkField = el(
      'div',
      { class: 'field whole', hidden: true },
      el('label', { class: 'label', for: 'link' }, label),
      this.#link,
    );
    this.element = el(
      'section',
      { class: 'sharing', 'aria-labelledby': 'sharing-heading' },
      el('h2', { id: 'sharing-heading' }, words.heading),
      el(
        'div',
        { class: 'tools' },
        el('div', { class: 'file-button' }, file, el('label', { for: 'open-file' }, words.open)),
        button(words.save, () => download(this.#text(), words.file, 'application/json')),
        button(words.link, () => void this.#makeLink()),
        button(words.startAgain, () => this.#startAgain()),
      ),
      this.#linkField,
      this.#status,
    );
    window.addEventListener('hashchange', () => void this.openLink());
    this.#link.addEventListener('focus', () => this.#link.select());
  }

  /** Opens the room of the page's own address, if that holds one. */
  async openLink(): Promise<boolean> {
    const { hash } = window.location;
    if (hash === this.#own) return false;
    const opened = await fromFragment(hash);
    if (opened === null) return false;
    return this.#take(opened, this.#strings.sharing.openedLink);
  }

  #text(): string {
    return `${JSON.stringify(this.#input(), null, 2)}\n`;
  }

  async #openFile(file: File): Promise<void> {
    const words = this.#strings.sharing;
    if (file.size > 4 * LIMITS.text) {
      setText(this.#status, words.why['too-large']);
      return;
    }
    try {
      this.#take(openText(await file.text(), LIMITS.text), words.opened(file.name));
    } catch {
      setText(this.#status, words.unreadable);
    }
  }

  #take(opened: Opened, said: string): boolean {
    setText(this.#status, opened.ok ? said : this.#strings.sharing.why[opened.why]);
    if (opened.ok) this.#load(opened.input);
    return opened.ok;
  }

  async #makeLink(): Promise<void> {
    const words = this.#strings.sharing;
    const fragment = await toFragment(this.#input());
    this.#own = fragment;
    window.history.replaceState(null, '', fragment);
    this.#link.value = window.location.href;
    this.#linkField.hidden = false;
    try {
      await navigator.clipboard.writeText(this.#link.value);
      setText(this.#status, words.linkCopied);
    } catch {
      // From the file system, or where it was not allowed.
      setText(this.#status, words.linkMade);
    }
  }

  #startAgain(): void {
    this.#linkField.hidden = true;
    window.history.replaceState(null, '', window.location.href.replace(/#.*$/, ''));
    this.#load(START);
    setText(this.#status, this.#strings.sharing.started);
  }
}

function button(label: string, pressed: () => void): HTMLButtonElement {
  const element = el('button', { type: 'button' }, label);
  element.addEventListener('click', pressed);
  return element;
}
