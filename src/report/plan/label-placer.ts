import { type Area, type Box, lengthInside, lies, overlap, type Segment } from './boxes.js';
import { LineGrid } from './line-grid.js';

/** Cost of a millimetre of leader. */
const LEADER = 0.7;

/** One place that a label could take. */
export interface Candidate {
  readonly box: Box;
  /** A line from the box to what it names, where it stands apart from it. */
  readonly leader?: Segment;
  /** What this place costs by itself, in mm of line covered; the better place goes first. */
  readonly cost: number;
}

/**
 * Finds places for labels, one after another: on the sheet, off every label placed before, and covering as little of what is
 * drawn as may be. Greedy and without chance: the same labels in the same order come to stand in the same places.
 */
export class LabelPlacer {
  readonly #area: Area;
  readonly #taken: Box[] = [];
  readonly #leaders: Segment[] = [];
  readonly #lines: LineGrid;

  constructor(area: Area) {
    this.#area = area;
    this.#lines = new LineGrid(area);
  }

  /** Lines that labels should rather not cover: a weight of 1 for thin ones, more for thick. */
  avoid(segments: Iterable<Segment>, weight: number): void {
    for (const segment of segments) this.#lines.add({ segment, weight });
  }

  /** Keeps a box free of labels. */
  take(box: Box): void {
    this.#taken.push(box);
  }

  /** Whether a box could be taken as things stand. */
  isFree(box: Box): boolean {
    return (
      lies(box, this.#area) &&
      !this.#taken.some((other) => overlap(other, box)) &&
      !this.#leaders.some((leader) => lengthInside(box, leader) > 0)
    );
  }

  /** Takes the cheapest of the free candidates, the first of equals; null where none is free or all cost more than `most`. */
  place(candidates: Iterable<Candidate>, most: number = Number.POSITIVE_INFINITY): Candidate | null {
    let best: Candidate | null = null;
    let least = most;
    for (const candidate of candidates) {
      const { box, leader, cost } = candidate;
      if (cost >= least || !this.isFree(box)) continue;
      if (leader !== undefined && this.#taken.some((other) => lengthInside(other, leader) > 0)) continue;
      const led = leader === undefined ? 0 : LEADER * lengthOf(leader) + this.#crossed(leader);
      const total = cost + led + this.#covered(box, least - cost - led);
      if (total >= least) continue;
      best = candidate;
      least = total;
    }
    if (best === null) return null;
    this.#taken.push(best.box);
    if (best.leader !== undefined) this.#leaders.push(best.leader);
    return best;
  }

  /** What a leader crosses counts, but little. */
  #crossed(leader: Segment): number {
    const [[ax, ay], [bx, by]] = leader;
    let sum = 0;
    this.#lines.near(
      Math.min(ax, bx),
      Math.min(ay, by),
      Math.max(ax, bx),
      Math.max(ay, by),
      ({ segment, weight }) => {
        if (meet(leader, segment)) sum += weight;
        return true;
      },
    );
    return sum;
  }

  #covered(box: Box, enough: number): number {
    const far = Math.hypot(box.width, box.height) / 2;
    let sum = 0;
    this.#lines.near(box.x - far, box.y - far, box.x + far, box.y + far, ({ segment, weight }) => {
      sum += weight * lengthInside(box, segment);
      return sum < enough;
    });
    return sum;
  }
}

function lengthOf([a, b]: Segment): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

/** Whether two segments cross, both well inside. */
function meet([a, b]: Segment, [c, d]: Segment): boolean {
  const side = (
    p: readonly [number, number],
    q: readonly [number, number],
    r: readonly [number, number],
  ): number => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}
