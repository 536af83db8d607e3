import { type Box, cornersOf } from './boxes.js';
import { ASCENT, CAP_HEIGHT, DESCENT, textWidth } from './character-widths.js';
import { escapeXml, num, type PaperPoint, pathOf } from './svg.js';
import type { Paint, Palette, Pattern } from './theme.js';

/** Sizes of text, mm: capitals of 2.5 mm (ISO 3098) for everything, larger for the answer. */
export const TEXT = { plain: 3.5, large: 4.6 } as const;

/** Height of one line of text with its air, mm. */
export function lineHeight(size: number): number {
  return size * (ASCENT + DESCENT);
}

/** A box just large enough for lines of text, with its middle at (x, y). */
export function textBox(
  lines: readonly string[],
  x: number,
  y: number,
  angle = 0,
  size: number = TEXT.plain,
): Box {
  const width = Math.max(...lines.map((line) => textWidth(line, size)));
  return { x, y, width, height: lines.length * lineHeight(size), angle };
}

/** Writes the elements of a drawing, in the order in which they lie over each other. */
export class Pen {
  readonly patterns: Set<Pattern> = new Set();
  readonly #palette: Palette;
  readonly #parts: string[] = [];

  constructor(palette: Palette) {
    this.#palette = palette;
  }

  /** A group of elements; `part` names it for style sheets and tests. */
  group(part: string, draw: () => void, attributes = ''): void {
    this.#parts.push(`<g data-part="${part}"${attributes}>`);
    draw();
    this.#parts.push('</g>');
  }

  polyline(points: readonly PaperPoint[], paint: Paint, more = ''): void {
    this.path(pathOf(points), paint, more);
  }

  polygon(points: readonly PaperPoint[], paint: Paint, more = ''): void {
    this.path(pathOf(points, true), paint, more);
  }

  path(data: string, paint: Paint, more = ''): void {
    for (const value of [paint.fill, paint.stroke])
      if (typeof value === 'object') this.patterns.add(value.pattern);
    this.#parts.push(`<path d="${data}"${this.#palette.attributes(paint)}${more}/>`);
  }

  circle([x, y]: PaperPoint, radius: number, paint: Paint): void {
    this.#parts.push(
      `<circle cx="${num(x)}" cy="${num(y)}" r="${num(radius)}"${this.#palette.attributes(paint)}/>`,
    );
  }

  /** Blanks a box, so that text in it stands clear of lines. */
  blank(box: Box): void {
    this.polygon(cornersOf(box), { fill: 'paper' });
  }

  /** Lines of text in a box made by {@link textBox}, each in its middle. */
  textIn(box: Box, lines: readonly string[], size: number = TEXT.plain): void {
    const top = box.y - (lines.length * lineHeight(size)) / 2;
    lines.forEach((line, i) => {
      const middle = top + (i + 0.5) * lineHeight(size);
      // The baseline lies so that ascent and descent fill the line's height.
      const dy = middle + ((ASCENT - DESCENT) / 2) * size - box.y;
      const x = box.x - dy * Math.sin(box.angle);
      const y = box.y + dy * Math.cos(box.angle);
      this.text(line, [x, y], 'middle', size, box.angle);
    });
  }

  /** One line of text from, around or up to a point of its baseline; `angle` clockwise, radians. */
  text(
    line: string,
    [x, y]: PaperPoint,
    anchor: 'start' | 'middle' | 'end',
    size: number = TEXT.plain,
    angle = 0,
  ): void {
    const at = `x="${num(x, 3)}" y="${num(y, 3)}"`;
    const turn =
      angle === 0 ? '' : ` transform="rotate(${num((angle * 180) / Math.PI, 4)} ${num(x, 3)} ${num(y, 3)})"`;
    const anchored = anchor === 'start' ? '' : ` text-anchor="${anchor}"`;
    this.#parts.push(
      `<text ${at} font-size="${num(size)}"${anchored}${turn}${this.#palette.attributes({ fill: 'ink' })}>${escapeXml(line)}</text>`,
    );
  }

  toString(): string {
    return this.#parts.join('');
  }
}

/** Half the height of capitals: from the middle of a line of figures to its baseline. */
export function halfCapitals(size: number = TEXT.plain): number {
  return (CAP_HEIGHT * size) / 2;
}
