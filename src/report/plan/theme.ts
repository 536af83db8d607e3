import { num } from './svg.js';

/** Light or dark for good, or as the reader's screen is (and light on paper). */
export type PlanTheme = 'auto' | 'light' | 'dark';

/**
 * The colours of a drawing. Each is a CSS variable `--er-<name>` that a page may set; without one these apply. Ink on paper keeps a
 * contrast of at least 7 to 1, whatever carries meaning at least 4.5 to 1, and cramped and blocked are a pair that the colour-blind tell
 * apart (and have patterns of their own besides).
 */
export type Colour = 'ink' | 'fine' | 'paper' | 'cloth' | 'cramped' | 'blocked' | 'limit' | 'zone' | 'way';

export const COLOURS: Readonly<Record<'light' | 'dark', Readonly<Record<Colour, string>>>> = {
  light: {
    ink: '#131a22',
    fine: '#414b57',
    paper: '#ffffff',
    cloth: '#eef2f0',
    cramped: '#00619a',
    blocked: '#b34a00',
    limit: '#8f2d0c',
    zone: '#75408c',
    way: '#2c6b2a',
  },
  dark: {
    ink: '#eef2f6',
    fine: '#b9c3ce',
    paper: '#11161c',
    cloth: '#1d2723',
    cramped: '#6cbcf0',
    blocked: '#f29a55',
    limit: '#ffb79a',
    zone: '#d3a8e8',
    way: '#93d08c',
  },
};

const NAMES = ['ink', 'fine', 'paper', 'cloth', 'cramped', 'blocked', 'limit', 'zone', 'way'] as const;

/** In drawings of other pieces alone. */
const RARE: readonly Colour[] = ['zone', 'way'];

/** Line widths, mm: the line group 0.5 of ISO 128, with its text of 2.5 mm capitals; hatching is finer still. */
export const LINE = { thick: 0.5, thin: 0.25, hatch: 0.13 } as const;

/**
 * Line types of ISO 128-2 for thin lines: dashed (02) for what is hidden or overhead, long-dashed dotted (04) for axes, long-dashed
 * double-dotted (05) for what frames an area or a height and is no edge, long-dashed double-short-dashed (09) for the middles of ways.
 */
export const DASHES = {
  solid: '',
  dashed: '3 0.75',
  chain: '6 0.75 0.25 0.75',
  doubleChain: '6 0.75 0.25 0.75 0.25 0.75',
  doubleShort: '6 0.75 1.5 0.75 1.5 0.75',
} as const;

export type Dashes = keyof typeof DASHES;

/** Patterns that stand beside colours. The plain ones are cut matter; `some` and `many` are shares of the shots; zones are floor in use. */
export const PATTERNS = [
  'cut',
  'ground',
  'cramped-some',
  'cramped-many',
  'blocked-some',
  'blocked-many',
  'zone',
  'zone-shared',
] as const;
export type Pattern = (typeof PATTERNS)[number];

/** How a thing is drawn. */
export interface Paint {
  readonly stroke?: Colour | { readonly pattern: Pattern };
  /** Default: not filled. */
  readonly fill?: Colour | { readonly pattern: Pattern };
  /** mm; default thin. */
  readonly width?: number;
  readonly dashes?: Dashes;
}

/** Colours as attributes, for programs that know no CSS variables, and as classes that the style sheet turns into variables. */
export class Palette {
  readonly #id: string;
  readonly #theme: PlanTheme;
  readonly #plain: Readonly<Record<Colour, string>>;
  /** Colours that not every drawing has, as far as this one was seen to use them. */
  readonly #rare = new Set<Colour>();

  constructor(id: string, theme: PlanTheme) {
    this.#id = id;
    this.#theme = theme;
    this.#plain = COLOURS[theme === 'dark' ? 'dark' : 'light'];
  }

  /** Class of the drawing as a whole. */
  get rootClass(): string {
    return `er-drawing er-${this.#theme}`;
  }

  /** Attributes of an element, with a space before each. */
  attributes(paint: Paint): string {
    const { stroke, fill, width = LINE.thin, dashes = 'solid' } = paint;
    const classes: string[] = [];
    let rest = '';
    for (const [key, value] of [
      ['fill', fill],
      ['stroke', stroke],
    ] as const) {
      if (typeof value === 'string') {
        classes.push(`er-${key}-${value}`);
        if (RARE.includes(value)) this.#rare.add(value);
      }
      if (value !== undefined) rest += ` ${key}="${this.#value(value)}"`;
      else if (key === 'fill') rest += ' fill="none"';
    }
    if (stroke !== undefined) rest += ` stroke-width="${num(width)}"`;
    if (dashes !== 'solid') rest += ` stroke-dasharray="${DASHES[dashes]}"`;
    return `${classes.length === 0 ? '' : ` class="${classes.join(' ')}"`}${rest}`;
  }

  #value(value: Colour | { readonly pattern: Pattern }): string {
    return typeof value === 'string' ? this.#plain[value] : `url(#${this.#id}-${value.pattern})`;
  }

  /**
   * The style sheet. Its rules stand in `@supports`, so that a program without variables passes over them and takes the
   * attributes; they name only classes below `.er-drawing`, so that a drawing put into a page changes nothing of the page. To be asked for
   * when everything is drawn.
   */
  style(): string {
    const names = NAMES.filter((name) => !RARE.includes(name) || this.#rare.has(name));
    const set = (mode: 'light' | 'dark'): string =>
      names.map((name) => `--er-own-${name}:${COLOURS[mode][name]}`).join(';');
    const own =
      this.#theme === 'auto'
        ? `.er-auto{${set('light')}}@media screen and (prefers-color-scheme:dark){.er-auto{${set('dark')}}}`
        : `.er-${this.#theme}{${set(this.#theme)}}`;
    const rules = names.map((name) => {
      const value = `var(--er-${name},var(--er-own-${name}))`;
      return `.er-drawing .er-fill-${name}{fill:${value}}.er-drawing .er-stroke-${name}{stroke:${value}}`;
    });
    return `<style>@supports (color:var(--er-ink)){${own}${rules.join('')}}</style>`;
  }

  /** The definitions of some patterns. */
  patterns(used: Iterable<Pattern>): string {
    return [...used].map((name) => this.#pattern(name)).join('');
  }

  #pattern(name: Pattern): string {
    if (name === 'zone' || name === 'zone-shared') return this.#dots(name);
    const { step, colour, width, crossed } = HATCHES[name];
    const cross = crossed ? `M0 0V${step}` : '';
    const turn = name === 'ground' ? -45 : 45;
    return (
      `<pattern id="${this.#id}-${name}" width="${step}" height="${step}" patternUnits="userSpaceOnUse" patternTransform="rotate(${turn})">` +
      `<path d="M0 ${step / 2}H${step}${cross}"${this.attributes({ stroke: colour, width })}/></pattern>`
    );
  }

  /** Short level strokes in rows, every other row set off by half a step: so short that they are dots, or longer. */
  #dots(name: keyof typeof DOTS): string {
    const { step, length, width } = DOTS[name];
    const stroke = (x: number, y: number): string => `M${num(x - length / 2)} ${num(y)}h${num(length)}`;
    const data = stroke(step / 4, step / 4) + stroke((3 * step) / 4, (3 * step) / 4);
    return (
      `<pattern id="${this.#id}-${name}" width="${step}" height="${step}" patternUnits="userSpaceOnUse">` +
      `<path d="${data}"${this.attributes({ stroke: 'zone', width })}/></pattern>`
    );
  }
}

/** mm: rows lie half a step apart; `length` of the strokes. */
const DOTS = {
  zone: { step: 3, length: 0.3, width: 0.3 },
  'zone-shared': { step: 3, length: 1.3, width: 0.2 },
} as const;

interface Hatch {
  /** Between lines, mm. */
  readonly step: number;
  readonly colour: Colour;
  readonly width: number;
  /** Both ways. */
  readonly crossed: boolean;
}

const HATCHES: Readonly<Record<Exclude<Pattern, keyof typeof DOTS>, Hatch>> = {
  cut: { step: 1, colour: 'ink', width: LINE.hatch, crossed: false },
  ground: { step: 1.5, colour: 'ink', width: LINE.hatch, crossed: false },
  'cramped-some': { step: 1.5, colour: 'cramped', width: 0.18, crossed: false },
  'cramped-many': { step: 0.8, colour: 'cramped', width: 0.25, crossed: false },
  'blocked-some': { step: 1.5, colour: 'blocked', width: 0.18, crossed: true },
  'blocked-many': { step: 0.8, colour: 'blocked', width: 0.25, crossed: true },
};
