import { type Area, cornersOf } from './boxes.js';
import { fitLines } from './character-widths.js';
import type { Candidate, LabelPlacer } from './label-placer.js';
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

/** A part of the key that stays together: an entry, or a note with or without a number. */
interface Row {
  readonly lines: readonly string[];
  readonly entry: Entry | null;
  readonly number: number | null;
}

const SIZE: number = TEXT.plain;
const PITCH: number = lineHeight(SIZE);
/** After an entry, mm. */
const AFTER = 0.6;
/** A continuation covers nothing that is drawn. */
const NOTHING = 1e-3;
/** Steps between the places that are tried for it, mm. */
const STEP = 4;

/** The key: samples of what is drawn and nothing else, and the words of labels that found no room on the plan. */
export class Legend {
  readonly #entries = new Map<string, Entry>();
  readonly #notes: { readonly text: string; readonly number: number | null }[] = [];
  #numbers = 0;
  #spilt = false;

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

  /** Draws as much as the area takes; what is left stands where {@link spill} found room for it, or is counted. */
  draw(pen: Pen, area: Area): void {
    const rows = this.#rows(area);
    const fitting = howMany(rows, area);
    pen.group('legend', () => {
      const y = writeRows(pen, area, WORDS.legend, rows.slice(0, fitting));
      if (fitting < rows.length && !this.#spilt && y + PITCH <= area.bottom - 1)
        writeLine(pen, area.left + PADDING, y, WORDS.more(rows.length - fitting));
    });
  }

  /**
   * Draws what does not go into the key's own area at an edge of the drawing, if there is room where nothing else is. To be called when all
   * else has its place.
   */
  spill(pen: Pen, area: Area, drawing: Area, placer: LabelPlacer): void {
    const rows = this.#rows(area);
    const rest = rows.slice(howMany(rows, area));
    if (rest.length === 0) return;
    const width = area.right - area.left;
    const height = 2 * PADDING + PITCH + rest.reduce((sum, row) => sum + heightOf(row), 0);
    const found = placer.place(alongEdges(drawing, width, height), NOTHING);
    if (found === null) return;
    this.#spilt = true;
    const { box } = found;
    const [left, top] = [box.x - width / 2, box.y - height / 2];
    pen.group('legend-continued', () => {
      pen.polygon(cornersOf(box), { stroke: 'ink' });
      writeRows(pen, { left, top, right: left + width, bottom: top + height }, WORDS.legendContinued, rest);
    });
  }

  #rows({ left, right }: Area): readonly Row[] {
    const wide = right - left - 2 * PADDING;
    const narrow = wide - SAMPLE.width - SAMPLE.gap;
    return [
      ...[...this.#entries.values()].map((entry) => ({
        lines: fitLines(entry.text, SIZE, narrow, MOST_LINES),
        entry,
        number: null,
      })),
      ...this.#notes.map(({ text, number }) => ({
        lines: fitLines(text, SIZE, number === null ? wide : narrow, MOST_LINES),
        entry: null,
        number,
      })),
    ];
  }
}

function heightOf({ lines, entry }: Row): number {
  return lines.length * PITCH + (entry === null ? 0 : AFTER);
}

/** How many rows go into an area, where a line is kept to say how many do not. */
function howMany(rows: readonly Row[], { top, bottom }: Area): number {
  let y = top + PADDING + PITCH;
  for (const [i, row] of rows.entries()) {
    const kept = i === rows.length - 1 ? 0 : PITCH;
    if (y + row.lines.length * PITCH + kept > bottom - 1) return i;
    y += heightOf(row);
  }
  return rows.length;
}

/** The title and rows from the top of an area down; gives back where they end. */
function writeRows(pen: Pen, area: Area, title: string, rows: readonly Row[]): number {
  const left = area.left + PADDING;
  const indented = left + SAMPLE.width + SAMPLE.gap;
  let y = area.top + PADDING;
  writeLine(pen, left, y, title);
  y += PITCH;
  for (const row of rows) {
    const { lines, entry, number } = row;
    if (entry !== null) drawSample(pen, left, y + PITCH / 2, entry.kind, entry.paint);
    if (number !== null) writeLine(pen, left, y, String(number));
    for (const [i, line] of lines.entries())
      writeLine(pen, entry === null && number === null ? left : indented, y + i * PITCH, line);
    y += heightOf(row);
  }
  return y;
}

/** A line of text by the upper left corner of its box. */
function writeLine(pen: Pen, x: number, y: number, line: string): void {
  pen.text(line, [x, y + PITCH / 2 + halfCapitals(SIZE)], 'start', SIZE);
}

/** Places for a box along the edges of an area, from the lower left corner on. */
function alongEdges({ left, top, right, bottom }: Area, width: number, height: number): readonly Candidate[] {
  const [lowX, highX] = [left + width / 2, right - width / 2];
  const [lowY, highY] = [top + height / 2, bottom - height / 2];
  if (lowX > highX || lowY > highY) return [];
  const at = (x: number, y: number): Candidate => ({ box: { x, y, width, height, angle: 0 }, cost: 0 });
  const found: Candidate[] = [];
  for (const y of [highY, lowY]) for (let x = lowX; x <= highX; x += STEP) found.push(at(x, y));
  for (const x of [lowX, highX]) for (let y = highY; y >= lowY; y -= STEP) found.push(at(x, y));
  return found;
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
