import { el, pathOf, round, setAttributes, setText, svg } from './dom.js';
import { patternDefs, patternFill, swatch } from './patterns.js';
import type { ProbeModel } from './probe-model.js';
import type { Shot } from './shot.js';
import { CELL_CLASSES, type CellClass, type MapGrid, mapPaths } from './shot-map.js';
import type { ProbeStrings } from './strings.js';

export interface Shares {
  readonly open: number;
  readonly cramped: number;
  readonly blocked: number;
  /** Each is within this of the true one; 0: proved. */
  readonly error: number;
}

export interface MapState {
  readonly shots: number;
  /** Shots tried so far of all that will be; null: nothing more is to come. */
  readonly progress: { readonly done: number; readonly total: number } | null;
  /** Who tried them: the page's answer, the frame in which a slider moved, or the finer sample after it. */
  readonly source: 'report' | 'frame' | 'sample';
}

const KINDS = ['open', 'cramped', 'blocked'] as const;
const BAR = { height: 18, patterns: { open: null, cramped: 'crampedMany', blocked: 'blockedMany' } } as const;
const IDS = 'probe-map';

/** The map of all shots over the field, with their shares: a picture to read, redrawn while a slider moves. */
export class MapFigure {
  readonly element: HTMLElement;
  readonly #strings: ProbeStrings;
  readonly #picture: SVGSVGElement = svg('svg', { class: 'probe-map', role: 'img' });
  readonly #frame: SVGGElement = svg('g');
  readonly #layers: Readonly<Record<CellClass, SVGPathElement>>;
  readonly #mark: SVGGElement = svg('g', { class: 'probe-map-mark' });
  readonly #holder: HTMLElement;
  readonly #bar: Readonly<Record<(typeof KINDS)[number], HTMLElement>>;
  readonly #shares: Readonly<Record<(typeof KINDS)[number], HTMLElement>>;
  readonly #state: HTMLElement = el('span');
  /** For the ear, when the fine map has replaced the coarse one. */
  readonly #spoken: HTMLElement = el('p', { class: 'probe-hidden', role: 'status', 'aria-live': 'polite' });
  readonly #progress: HTMLProgressElement;
  #model: ProbeModel | null = null;
  #grid: MapGrid | null = null;
  #shot: Shot | null = null;
  #size = { width: 0, height: 0 };

  constructor(strings: ProbeStrings) {
    this.#strings = strings;
    const layer = (kind: CellClass) => svg('path', { fill: patternFill(IDS, kind), 'data-class': kind });
    this.#layers = {
      crampedSome: layer('crampedSome'),
      crampedMany: layer('crampedMany'),
      blockedSome: layer('blockedSome'),
      blockedMany: layer('blockedMany'),
    };
    this.#picture.append(
      svg('title', {}, strings.mapLabel),
      patternDefs(IDS),
      this.#frame,
      ...CELL_CLASSES.map((kind) => this.#layers[kind]),
      this.#mark,
    );
    this.#holder = el('div', { class: 'probe-map-holder' }, this.#picture);
    this.#progress = el('progress', { 'aria-label': strings.progressLabel, max: 1, value: 0 });
    const value = () => el('dd');
    this.#shares = { open: value(), cramped: value(), blocked: value() };
    const segment = (kind: string) => el('span', { class: `probe-bar-${kind}` });
    this.#bar = { open: segment('open'), cramped: segment('cramped'), blocked: segment('blocked') };
    const shares = el('dl', { class: 'probe-shares', 'aria-label': strings.sharesLabel });
    for (const kind of KINDS)
      shares.append(
        el(
          'div',
          {},
          el('dt', {}, swatch(IDS, BAR.patterns[kind]), strings.classes[kind]),
          this.#shares[kind],
        ),
      );
    this.element = el(
      'figure',
      { class: 'probe-map-figure' },
      el('figcaption', {}, strings.mapTitle),
      shares,
      el('div', { class: 'probe-bar', 'aria-hidden': 'true' }, ...KINDS.map((kind) => this.#bar[kind])),
      this.#holder,
      el('p', { class: 'probe-row probe-map-state' }, this.#progress, this.#state),
      keyOf(strings),
      this.#spoken,
    );
    new ResizeObserver(() => {
      if (this.#holder.clientWidth !== this.#size.width) this.#layOut();
    }).observe(this.#holder);
  }

  setModel(model: ProbeModel): void {
    this.#model = model;
    this.#grid = null;
    this.#layOut();
  }

  draw(grid: MapGrid | null, shares: Shares, state: MapState): void {
    this.#grid = grid;
    this.#drawGrid();
    for (const kind of KINDS) {
      const percent = 100 * shares[kind];
      setText(this.#shares[kind], this.#strings.share(percent, 100 * shares.error));
      this.#bar[kind].style.flexGrow = String(shares[kind]);
    }
    const { shots, progress, source } = state;
    this.#progress.hidden = progress === null;
    if (progress !== null) Object.assign(this.#progress, { max: progress.total, value: progress.done });
    setText(this.#state, this.#say(state));
    this.element.dataset.state =
      progress !== null
        ? source === 'frame'
          ? 'coarse'
          : 'refining'
        : source === 'report'
          ? 'report'
          : 'fine';
    if (this.element.dataset.state === 'fine') setText(this.#spoken, this.#sharesInWords(shares, shots));
  }

  #say({ shots, progress, source }: MapState): string {
    const { coarse, refining, fine, asAbove } = this.#strings;
    if (source === 'report') return asAbove(shots);
    if (progress === null) return fine(shots);
    return source === 'frame' ? coarse(shots) : refining(shots);
  }

  #sharesInWords(shares: Shares, shots: number): string {
    const { classes, share, fine } = this.#strings;
    const words = KINDS.map((kind) => `${classes[kind]} ${share(100 * shares[kind], 100 * shares.error)}`);
    return `${words.join(', ')}. ${fine(shots)}`;
  }

  /** Where the ball of the probe lies, and where its cue points. */
  mark(shot: Shot): void {
    this.#shot = shot;
    this.#drawMark();
  }

  #layOut(): void {
    const model = this.#model;
    if (model === null) return;
    const { rimX, rimY, noseX, noseY } = model.strokes;
    const width = Math.max(200, this.#holder.clientWidth);
    const scale = width / (2 * rimX + 2 * MARGIN);
    const height = scale * (2 * rimY + 2 * MARGIN);
    this.#size = { width: this.#holder.clientWidth, height };
    setAttributes(this.#picture, { viewBox: `0 0 ${width} ${round(height)}`, width, height: round(height) });
    const box = (halfX: number, halfY: number) => ({
      x: round(width / 2 - scale * halfX),
      y: round(height / 2 - scale * halfY),
      width: round(2 * scale * halfX),
      height: round(2 * scale * halfY),
    });
    this.#frame.replaceChildren(
      svg('rect', { ...box(rimX, rimY), class: 'probe-paper probe-thick' }),
      svg('rect', { ...box(noseX, noseY), class: 'probe-cloth probe-thin' }),
      this.#axis(width, height / 2),
    );
    const { halfX, halfY } = model.area;
    const corner = box(halfX, halfY);
    for (const kind of CELL_CLASSES)
      setAttributes(this.#layers[kind], { transform: `translate(${corner.x} ${corner.y})` });
    this.#drawGrid();
    this.#drawMark();
  }

  /** The arrow of the table's length, right of the rail. */
  #axis(width: number, y: number): SVGGElement {
    const end = width - 2;
    const start = end - Math.max(10, 0.8 * MARGIN * this.#scale);
    const head = [
      [end - 5, y - 3],
      [end, y],
      [end - 5, y + 3],
    ] as const;
    return svg(
      'g',
      { class: 'probe-axes' },
      svg('path', {
        d: `${pathOf([[start, y], head[1]], false)}${pathOf(head, false)}`,
        class: 'probe-fine',
      }),
      svg('text', { x: round((start + end) / 2), y: round(y - 8), class: 'probe-axis' }, this.#strings.axis),
    );
  }

  get #scale(): number {
    const { rimX = 1 } = this.#model?.strokes ?? {};
    return Math.max(200, this.#size.width) / (2 * rimX + 2 * MARGIN);
  }

  #drawGrid(): void {
    const { halfX, halfY } = this.#model?.area ?? { halfX: 0, halfY: 0 };
    const paths =
      this.#grid === null ? null : mapPaths(this.#grid, 2 * halfX * this.#scale, 2 * halfY * this.#scale);
    for (const kind of CELL_CLASSES) this.#layers[kind].setAttribute('d', paths?.[kind] ?? '');
  }

  #drawMark(): void {
    if (this.#shot === null || this.#model === null) return;
    const { x, y, direction } = this.#shot;
    const scale = this.#scale;
    const at = [Math.max(200, this.#size.width) / 2 + scale * x, this.#size.height / 2 - scale * y] as const;
    const phi = (direction * Math.PI) / 180;
    const end = [at[0] + 22 * Math.cos(phi), at[1] - 22 * Math.sin(phi)] as const;
    this.#mark.replaceChildren(
      svg('path', { d: pathOf([at, end], false), class: 'probe-halo' }),
      svg('path', { d: pathOf([at, end], false), class: 'probe-mark-line' }),
      svg('circle', { cx: round(at[0]), cy: round(at[1]), r: 5, class: 'probe-ball' }),
    );
  }
}

/** Around the table, mm. */
const MARGIN = 130;

function keyOf(strings: ProbeStrings): HTMLElement {
  const list = el('ul', { class: 'probe-key', 'aria-label': strings.keyHeading });
  list.append(el('li', {}, swatch(IDS, null), strings.key.open));
  for (const kind of CELL_CLASSES) list.append(el('li', {}, swatch(IDS, kind), strings.key[kind]));
  return list;
}
