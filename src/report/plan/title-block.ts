import type { Area } from './boxes.js';
import { fitLines } from './character-widths.js';
import type { Lengths } from './lengths.js';
import { halfCapitals, lineHeight, type Pen, TEXT } from './pen.js';
import { LINE } from './theme.js';

/** What the title block says. */
export interface Title {
  readonly answer: string;
  /** How sure the answer is; empty where that says nothing. */
  readonly certainty: string;
  readonly rows: readonly (readonly [label: string, value: string])[];
  /** 50 for 1:50. */
  readonly scale: number;
}

const PADDING = 3;
const LABELS = 22;
/** Scale bar: how long at most, how high, and how far its foot is from the block's, mm. */
const BAR = { longest: 62, height: 1.6, foot: 4 } as const;

/** The block in the sheet's lower right: the answer, what it is about, and a scale bar. */
export function drawTitle(pen: Pen, area: Area, title: Title, lengths: Lengths): void {
  const left = area.left + PADDING;
  const width = area.right - area.left - 2 * PADDING;
  const bar = area.bottom - BAR.foot - BAR.height;
  const last = bar - lineHeight(TEXT.plain) - 1.5;
  let y = area.top + PADDING - 1;
  const write = (lines: readonly string[], x: number, size: number): void => {
    for (const line of lines) {
      pen.text(line, [x, y + lineHeight(size) / 2 + halfCapitals(size)], 'start', size);
      y += lineHeight(size);
    }
  };
  pen.group('title-block', () => {
    write(fitLines(title.answer, TEXT.large, width, 3), left, TEXT.large);
    y += 0.8;
    if (title.certainty !== '') write(fitLines(title.certainty, TEXT.plain, width, 3), left, TEXT.plain);
    y += 0.8;
    for (const [label, value] of title.rows) {
      const lines = fitLines(value, TEXT.plain, width - LABELS, 2);
      if (y + lines.length * lineHeight(TEXT.plain) > last) break;
      const top = y;
      write([label], left, TEXT.plain);
      y = top;
      write(lines, left + LABELS, TEXT.plain);
      pen.polyline(
        [
          [left, top],
          [left + width, top],
        ],
        { stroke: 'fine', width: LINE.hatch },
      );
      y += 0.2;
    }
  });
  pen.group('scale-bar', () => drawScaleBar(pen, left, bar, title.scale, lengths));
}

const METRIC = [
  10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000, 100_000, 200_000, 500_000,
] as const;
const FOOT = 304.8;
const IMPERIAL: readonly number[] = [1 / 12, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000].map(
  (feet) => feet * FOOT,
);

function drawScaleBar(pen: Pen, x: number, y: number, scale: number, lengths: Lengths): void {
  const imperial = lengths.unit === 'in' || lengths.unit === 'ftin';
  const steps = imperial ? IMPERIAL : METRIC;
  const long = steps.filter((step) => step / scale <= BAR.longest).at(-1) ?? steps[0];
  const parts = 5;
  const each = long / scale / parts;
  for (let i = 0; i < parts; i++) {
    pen.polygon(
      [
        [x + i * each, y],
        [x + (i + 1) * each, y],
        [x + (i + 1) * each, y + BAR.height],
        [x + i * each, y + BAR.height],
      ],
      i % 2 === 0 ? { fill: 'ink', stroke: 'ink' } : { fill: 'paper', stroke: 'ink' },
      i === 0 ? ` data-length="${long / parts}"` : '',
    );
  }
  const baseline = y - 1.2;
  pen.text('0', [x, baseline], 'start');
  pen.text(lengths.full(long), [x + long / scale, baseline], parts * each < 30 ? 'start' : 'end');
}
