/** A small pen for the figures of the guides: model millimetres in, SVG text out, always on white paper. */
export class FigurePen {
  readonly #parts: string[] = [];

  /** `scale`: pixels a millimetre; (left, top) in the model is the corner of the picture, y upwards. */
  constructor(
    readonly width: number,
    readonly height: number,
    readonly scale: number,
    readonly left: number,
    readonly top: number,
  ) {}

  x(mm: number): string {
    return String(Number(((mm - this.left) * this.scale).toFixed(2)));
  }

  y(mm: number): string {
    return String(Number(((this.top - mm) * this.scale).toFixed(2)));
  }

  line(points: readonly (readonly [number, number])[], style: string, closed = false): void {
    const path = points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${this.x(x)} ${this.y(y)}`).join('');
    this.#parts.push(`<path d="${path}${closed ? 'Z' : ''}" ${style}/>`);
  }

  circle([x, y]: readonly [number, number], radius: number, style: string): void {
    const r = Number((radius * this.scale).toFixed(2));
    this.#parts.push(`<circle cx="${this.x(x)}" cy="${this.y(y)}" r="${r}" ${style}/>`);
  }

  text(
    [x, y]: readonly [number, number],
    words: string,
    anchor: 'start' | 'middle' | 'end' = 'middle',
  ): void {
    this.#parts.push(`<text x="${this.x(x)}" y="${this.y(y)}" text-anchor="${anchor}">${words}</text>`);
  }

  /** A length between two points with ticks, and its words in the middle, moved by `off` millimetres upwards. */
  dimension(
    a: readonly [number, number],
    b: readonly [number, number],
    words: string,
    off: number,
    anchor: 'start' | 'middle' | 'end' = 'middle',
  ): void {
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const nx = (-(b[1] - a[1]) / length) * (5 / this.scale);
    const ny = ((b[0] - a[0]) / length) * (5 / this.scale);
    this.line([a, b], FINE);
    for (const [x, y] of [a, b]) {
      this.line(
        [
          [x + nx, y + ny],
          [x - nx, y - ny],
        ],
        FINE,
      );
    }
    this.text([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2 + off], words, anchor);
  }

  write(title: string, description: string): string {
    return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${this.width} ${this.height}" width="${this.width}" height="${this.height}" role="img" font-family="Helvetica, Arial, sans-serif" font-size="13" fill="#1a1a1a"><title>${title}</title><desc>${description}</desc><rect width="100%" height="100%" fill="#ffffff"/>${this.#parts.join('')}</svg>\n`;
  }
}

export const FINE = 'fill="none" stroke="#1a1a1a" stroke-width="0.8"';
export const THICK = 'fill="none" stroke="#1a1a1a" stroke-width="2"';
export const AXIS = 'fill="none" stroke="#1a1a1a" stroke-width="0.8" stroke-dasharray="14 3 3 3"';
export const DASHED = 'fill="none" stroke="#1a1a1a" stroke-width="0.8" stroke-dasharray="6 4"';
export const SOLID = 'fill="#d9d9d9" stroke="#1a1a1a" stroke-width="1.2"';
export const LIGHT = 'fill="#efefef" stroke="#1a1a1a" stroke-width="0.8"';
