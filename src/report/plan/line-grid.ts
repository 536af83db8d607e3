import type { Area, Segment } from './boxes.js';

/** A line that labels should rather not cover. */
export interface WeighedLine {
  readonly segment: Segment;
  readonly weight: number;
}

/** Side of a cell, mm. */
const CELL = 8;

/** Lines by the cells of a grid that their boxes touch, so that a room of thousands of corners is not looked through for every label. */
export class LineGrid {
  readonly #area: Area;
  readonly #columns: number;
  readonly #rows: number;
  readonly #cells = new Map<number, number[]>();
  readonly #lines: WeighedLine[] = [];
  /** The question that last met each line. */
  readonly #met: number[] = [];
  #question = 0;

  constructor(area: Area) {
    this.#area = area;
    this.#columns = Math.max(1, Math.ceil((area.right - area.left) / CELL));
    this.#rows = Math.max(1, Math.ceil((area.bottom - area.top) / CELL));
  }

  add(line: WeighedLine): void {
    const index = this.#lines.push(line) - 1;
    this.#met.push(0);
    const [[ax, ay], [bx, by]] = line.segment;
    this.#each(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by), (cell) => {
      const list = this.#cells.get(cell);
      if (list === undefined) this.#cells.set(cell, [index]);
      else list.push(index);
    });
  }

  /** Every line that may come into a box by its corners, and perhaps some others, each once; stops when `visit` returns false. */
  near(
    left: number,
    top: number,
    right: number,
    bottom: number,
    visit: (line: WeighedLine) => boolean,
  ): void {
    this.#question++;
    let going = true;
    this.#each(left, top, right, bottom, (cell) => {
      if (!going) return;
      for (const index of this.#cells.get(cell) ?? []) {
        if (this.#met[index] === this.#question) continue;
        this.#met[index] = this.#question;
        going = visit(this.#lines[index]);
        if (!going) return;
      }
    });
  }

  /** Cells at the edge stand for all that lies beyond it. */
  #each(left: number, top: number, right: number, bottom: number, visit: (cell: number) => void): void {
    const column = (x: number): number =>
      Math.min(this.#columns - 1, Math.max(0, Math.floor((x - this.#area.left) / CELL)));
    const row = (y: number): number =>
      Math.min(this.#rows - 1, Math.max(0, Math.floor((y - this.#area.top) / CELL)));
    for (let j = row(top); j <= row(bottom); j++)
      for (let i = column(left); i <= column(right); i++) visit(j * this.#columns + i);
  }
}
