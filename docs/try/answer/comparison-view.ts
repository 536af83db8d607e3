import type { ComparisonCue, ComparisonRow, FitInput, SentenceUnits } from 'elbowroom';
import type { CatalogueTable } from '../form/shape-table.js';
import { el, setText } from '../probe/dom.js';
import { Reckoner } from '../reckon/reckoner.js';
import type { Strings } from '../strings.js';
import { Numbers } from './numbers.js';

/** Which tables take which cues in the room, one row a table and cue, as they are reckoned. */
export class ComparisonView {
  readonly element: HTMLElement;
  readonly #strings: Strings;
  readonly #tables: readonly CatalogueTable[];
  readonly #asked: () => FitInput | null;
  readonly #units: () => SentenceUnits;
  readonly #reckoner = new Reckoner();
  readonly #which: HTMLSelectElement;
  readonly #stop: HTMLButtonElement;
  readonly #progress: HTMLProgressElement;
  readonly #status = el('p', { class: 'status', role: 'status' });
  readonly #result = el('div');
  #rows: ComparisonRow[] = [];

  constructor(
    strings: Strings,
    tables: readonly CatalogueTable[],
    asked: () => FitInput | null,
    units: () => SentenceUnits,
  ) {
    const words = strings.comparison;
    this.#strings = strings;
    this.#tables = tables;
    this.#asked = asked;
    this.#units = units;
    const games = [...new Set(tables.map(({ game }) => game))];
    this.#which = el(
      'select',
      { id: 'comparison-which' },
      el('option', { value: '' }, words.all),
      ...games.map((game) => el('option', { value: game }, game)),
    );
    const compare = el('button', { type: 'button' }, words.compare);
    compare.addEventListener('click', () => this.#compare());
    this.#stop = el('button', { type: 'button', hidden: true }, strings.answer.stop);
    this.#stop.addEventListener('click', () => this.#end(words.stopped));
    this.#progress = el('progress', { 'aria-label': words.progress, hidden: true });
    const label = el('label', { class: 'label', for: 'comparison-which' }, words.which);
    this.element = el(
      'section',
      { class: 'comparison', 'aria-labelledby': 'comparison-heading' },
      el('h2', { id: 'comparison-heading' }, words.heading),
      el('p', { class: 'note' }, words.note),
      el(
        'div',
        { class: 'tools' },
        el('div', { class: 'field' }, label, this.#which),
        compare,
        this.#stop,
        this.#progress,
      ),
      this.#status,
      this.#result,
    );
  }

  /** In other units. */
  redraw(): void {
    if (this.#rows.length > 0) this.#draw();
  }

  #compare(): void {
    const input = this.#asked();
    const words = this.#strings.comparison;
    if (input === null) {
      this.#end(words.problems);
      return;
    }
    const game = this.#which.value;
    const ids = this.#tables.filter((table) => game === '' || table.game === game).map(({ id }) => id);
    const tables = typeof input.table === 'string' ? ids : [input.table, ...ids];
    this.#rows = [];
    this.#stop.hidden = false;
    this.#progress.hidden = false;
    this.#progress.max = tables.length;
    this.#progress.value = 0;
    setText(this.#status, '');
    this.#reckoner.ask({ kind: 'compare', input, tables }, (reply) => {
      if (reply.kind === 'row') {
        this.#rows.push(reply.row);
        this.#progress.value = this.#rows.length;
        this.#draw();
      } else if (reply.kind === 'compared') this.#end(words.done(this.#rows.length));
      else if (reply.kind === 'failed') this.#end(this.#strings.answer.failed(reply.message));
      else if (reply.kind === 'refused') this.#end(reply.problems.map(({ message }) => message).join(' '));
    });
  }

  #end(words: string): void {
    this.#reckoner.stop();
    this.#stop.hidden = true;
    this.#progress.hidden = true;
    setText(this.#status, words);
  }

  #draw(): void {
    const words = this.#strings.comparison;
    const { verdict, open, cramped, blocked, longestCue, cue } = this.#strings.answer;
    const numbers = new Numbers(this.#units(), this.#strings);
    const headings = [words.table, cue, verdict, open, cramped, blocked, longestCue];
    const table = el(
      'table',
      {},
      el('caption', {}, words.caption(this.#rows[0]?.cues.length ?? 1)),
      el('thead', {}, el('tr', {}, ...headings.map((text) => el('th', { scope: 'col' }, text)))),
      ...this.#rows.map((row) => this.#group(row, numbers)),
    );
    const view = { class: 'scrolling', role: 'region', 'aria-label': words.label, tabindex: 0 };
    const old = this.#result.firstElementChild;
    // The same region stays, so that it keeps its focus and how far it was scrolled.
    if (old === null) this.#result.append(el('div', view, table));
    else old.replaceChildren(table);
  }

  #group(row: ComparisonRow, numbers: Numbers): HTMLElement {
    const { size, placedPieces } = this.#strings.answer;
    const { name, field } = row.table;
    const { pieces } = row;
    const beside =
      pieces === undefined ? [] : [el('span', { class: 'size' }, placedPieces(pieces.placed, pieces.asked))];
    const rows = row.cues.map((cue, i) => {
      const first = i === 0;
      const span = { rowspan: row.cues.length };
      const head = el(
        'th',
        { scope: 'rowgroup', ...span },
        name,
        ' ',
        el('span', { class: 'size' }, size(numbers.near(field.length), numbers.near(field.width))),
        ...beside,
      );
      const longest = row.longestCue > 0 ? numbers.down(row.longestCue) : '–';
      return el(
        'tr',
        {},
        ...(first ? [head] : []),
        ...this.#cells(cue, numbers),
        ...(first ? [el('td', { class: 'figure', ...span }, longest)] : []),
      );
    });
    return el('tbody', {}, ...rows);
  }

  #cells({ length, verdict, certain, shares }: ComparisonCue, numbers: Numbers): HTMLElement[] {
    const { verdicts, unsure } = this.#strings.answer;
    const said = numbers.shares(shares, verdict);
    const figures = verdict === 'none' ? ['–', '–', '–'] : [said.open, said.cramped, said.blocked];
    return [
      el('td', { class: 'figure' }, numbers.near(length)),
      el('td', { 'data-verdict': verdict }, certain ? verdicts[verdict] : unsure(verdicts[verdict])),
      ...figures.map((text) => el('td', { class: 'figure' }, text)),
    ];
  }
}
