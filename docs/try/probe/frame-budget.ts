/** How many shots are tried for the map, and in how many cells they are counted. */
export interface SamplePlan {
  readonly columns: number;
  readonly rows: number;
  readonly shots: number;
}

/** Shots in each cell at least: the library draws its sample eight times over to tell its error. */
export const SHOTS_IN_CELL = 8;

const plan = (columns: number, rows: number, inCell: number = SHOTS_IN_CELL): SamplePlan => ({
  columns,
  rows,
  shots: columns * rows * inCell,
});

/**
 * What may be drawn within a frame, from coarse to fine. Twice as many shots in the finest would tell less, not more: in some grids the
 * library's replicates differ by more than their number gains.
 */
export const FRAME_PLANS: readonly SamplePlan[] = [
  plan(8, 4),
  plan(12, 6),
  plan(16, 8),
  plan(24, 12),
  plan(32, 16),
];

/** What the map is refined to when nothing moves, step by step; each replaces the one before. */
export const FINE_PLANS: readonly SamplePlan[] = [
  plan(24, 12, 24),
  plan(32, 16, 40),
  plan(32, 16, 96),
  plan(32, 16, 288),
];

/** Of those, what is not too much where no worker does it. */
export const MODEST_PLANS: readonly SamplePlan[] = FINE_PLANS.slice(0, 2);

/** Part of a frame of 16 ms that the sample may take, ms; the rest is for the shot, the page and the painting. */
export const SAMPLE_BUDGET = 6;

/** How much one new measurement counts against the ones before. */
const NEWEST = 0.3;
const FORGET = 0.9;
/** The next finer sample is taken when it would take no more than this share of the budget, so that the choice does not flicker. */
const ROOM_TO_GROW = 0.7;

/** Chooses the sample for the next frame by what the last ones took. */
export class FrameBudget {
  readonly #budget: number;
  #perShot: number | null = null;
  #chosen = 2;

  constructor(budget: number = SAMPLE_BUDGET) {
    this.#budget = budget;
  }

  /** Tells that a sample of so many shots took so long. */
  took(shots: number, milliseconds: number): void {
    if (!(shots > 0 && milliseconds >= 0)) return;
    const now = milliseconds / shots;
    this.#perShot = this.#perShot === null ? now : NEWEST * now + (1 - NEWEST) * this.#perShot;
  }

  /** The sample for the next frame. */
  next(): SamplePlan {
    const { length } = FRAME_PLANS;
    while (this.#chosen > 0 && this.#time(this.#chosen) > this.#budget) this.#chosen--;
    if (
      this.#perShot !== null &&
      this.#chosen + 1 < length &&
      this.#time(this.#chosen + 1) <= ROOM_TO_GROW * this.#budget
    )
      this.#chosen++;
    return FRAME_PLANS[this.#chosen] ?? plan(8, 4);
  }

  #time(index: number): number {
    return (this.#perShot ?? 0) * (FRAME_PLANS[index]?.shots ?? 0);
  }
}

/** Work that is done in the frame while it is quick, and put off until nothing moves once it was slow. */
export class Estimate {
  #milliseconds = 0;

  took(milliseconds: number): void {
    this.#milliseconds = NEWEST * milliseconds + (1 - NEWEST) * this.#milliseconds;
  }

  /** Is it expected to fit? Each time that it does not, a little of the bad opinion is forgotten, so that it is tried again. */
  within(milliseconds: number): boolean {
    if (this.#milliseconds <= milliseconds) return true;
    this.#milliseconds *= FORGET;
    return false;
  }
}
