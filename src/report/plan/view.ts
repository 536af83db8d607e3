import type { Point } from '../../geometry/types.js';
import type { Area, Segment } from './boxes.js';
import type { Content, Sheet } from './sheet.js';
import type { PaperPoint } from './svg.js';

/** From the room to paper: one scale, y turned over. */
export class View {
  /** 50 for 1:50. */
  readonly scale: number;
  readonly #x: number;
  readonly #y: number;

  /** `left` and `low` are the least x and y of the content; it comes to lie in the middle of the sheet's drawing. */
  constructor(sheet: Sheet, content: Content, left: number, low: number) {
    const { scale, drawing } = sheet;
    const { around } = content;
    const spareX = drawing.right - drawing.left - content.width / scale - around.left - around.right;
    const spareY = drawing.bottom - drawing.top - content.height / scale - around.top - around.bottom;
    this.scale = scale;
    this.#x = drawing.left + around.left + spareX / 2 - left / scale;
    this.#y = drawing.bottom - around.bottom - spareY / 2 + low / scale;
  }

  at([x, y]: Point): PaperPoint {
    return [this.#x + x / this.scale, this.#y - y / this.scale];
  }

  ring(points: readonly Point[]): readonly PaperPoint[] {
    return points.map((point) => this.at(point));
  }
}

/** The edges of a closed ring on paper. */
export function edgesOf(points: readonly PaperPoint[]): readonly Segment[] {
  return points.map((point, i): Segment => [point, points[(i + 1) % points.length]]);
}

/** The box around points. */
export function around(points: readonly PaperPoint[]): Area {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}
