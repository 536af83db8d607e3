import type { Area } from './boxes.js';
import { fitLines } from './character-widths.js';
import { halfCapitals, lineHeight, type Pen, TEXT } from './pen.js';
import { num } from './svg.js';
import type { Paint } from './theme.js';
import { WORDS } from './words.js';

interface Entry {
  readonly text: string;
  readonly paint: Paint;
  readonly kind: Sample;
}

/** How a sample looks: a patch, a stroke, or one of the sketches below. */
export type Sample = 'area' | 'line' | keyof typeof SKETCHES;

const SAMPLE = { width: 11, height: 3.6, gap: 2.5 } as const;
/** Path data around (0, 0), the middle of the sample. */
const SKETCHES = {
  door: 'M-3 1.8V-1.8A3.6 3.6 0 0 1 .6 1.8',
  ajar: 'M-2.5 1.2L1.4 -1.2A4.6 4.6 0 0 1 2.1 1.2',
  slide: 'M-4 -.4H2M-2 .5H4',
  front: 'M-1.1 .9H1.1L0 -.8Z',
} as const;
const PADDING = 3;
const MOST_LINES = 3;

/** The key: samples of what is drawn and nothing else, and the words of labels that found no room on the plan. */
export class Legend {
  readonly #entries = new Map<string, Entry>();
  readonly #notes: { readonly text: string; readonly number: number | null }[] = [];
  #numbers = 0;

  /** Explains how something is drawn, once. */
  explain(text: string, kind: Sample, paint: Paint): void {
    this.#entries.set(text, { text, kind, paint });
  }

  /** The number that the next numbered note gets. */
  nextNumber(): number {
    this.#numbers++;
    return this.#numbers;
  }

  /** Adds a note and gives its number back. */
  note<N extends number | null>(text: string, number: N): N {
    this.#notes.push({ text, number });
    return number;
  }

  /** Draws as much as the area takes; says how many are left out. */
  draw(pen: Pen, area: Area): void {
    const size = TEXT.plain;
    const pitch = lineHeight(size);
    const left = area.left + PADDING;
    const textLeft = left + SAMPLE.width + SAMPLE.gap;
    const width = area.right - PADDING - textLeft;
    let y = area.top + PADDING;
    const fits = (lines: number): boolean => y + lines * pitch <= area.bottom - 1;
    const write = (lines: readonly string[], x: number): void => {
      for (const line of lines) {
        pen.text(line, [x, y + pitch / 2 + halfCapitals(size)], 'start', size);
        y += pitch;
      }
    };
    pen.group('legend', () => {
      write([WORDS.legend], left);
      const entries = [...this.#entries.values()].map(({ text, kind, paint }) => ({
        lines: fitLines(text, size, width, MOST_LINES),
        left: textLeft,
        after: 0.6,
        sample: () => drawSample(pen, left, y + pitch / 2, kind, paint),
      }));
      const notes = this.#notes.map(({ text, number }) => ({
        lines: fitLines(text, size, number === null ? area.right - PADDING - left : width, MOST_LINES),
        left: number === null ? left : textLeft,
        after: 0,
        sample: () => {
          if (number !== null)
            pen.text(String(number), [left, y + pitch / 2 + halfCapitals(size)], 'start', size);
        },
      }));
      const all = [...entries, ...notes];
      for (const [i, { lines, left: at, after, sample }] of all.entries()) {
        const rest = all.length - i;
        // A line is kept for what has to be said where not all of it goes.
        if (!fits(lines.length + (rest === 1 ? 0 : 1))) {
          if (fits(1)) write([WORDS.more(rest)], left);
          break;
        }
        sample();
        write(lines, at);
        y += after;
      }
    });
  }
}

function drawSample(pen: Pen, x: number, y: number, kind: Sample, paint: Paint): void {
  const { width, height } = SAMPLE;
  if (kind === 'line') {
    pen.polyline(
      [
        [x, y],
        [x + width, y],
      ],
      paint,
    );
    return;
  }
  if (kind !== 'area') {
    pen.path(SKETCHES[kind], paint, ` transform="translate(${num(x + width / 2)} ${num(y)})"`);
    return;
  }
  const top = y - height / 2;
  pen.polygon(
    [
      [x, top],
      [x + width, top],
      [x + width, top + height],
      [x, top + height],
    ],
    paint,
  );
}
