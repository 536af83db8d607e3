/** What was found for the passage narrowed by some delta. */
export interface Decision<Proof> {
  readonly answer: 'path' | 'no' | 'undecided';
  /** For `path`: whatever shows it. */
  readonly proof: Proof | null;
  /** What the decision cost. */
  readonly boxes: number;
}

export interface SpareBracket<Proof> {
  /** A way is known in the passage narrowed by this much; `-Infinity`: none was found. */
  readonly atLeast: number;
  /** There is none once it is narrowed by more than this; `Infinity`: not known. */
  readonly atMost: number;
  /** The way for `atLeast`; null where that was known beforehand or nothing was found. */
  readonly proof: Proof | null;
  readonly boxes: number;
}

export interface BracketOptions {
  /** First step away from 0, mm: how far off a reading may be. */
  readonly tolerance: number;
  /** Most boxes for all decisions together. */
  readonly maxBoxes: number;
  /** Known beforehand, say from a closed form. */
  readonly atLeast?: number;
  readonly atMost?: number;
  /** How narrow the bracket need be, mm, for a spare within some 100 mm of 0; default 8. */
  readonly width?: number;
  /** Most decisions; default 12. */
  readonly steps?: number;
}

const WIDTH = 8;
const STEPS = 12;
/**
 * mm: `no` at delta says that there is no way at delta itself, hence a little less than delta is already too much. Solids are found in the way
 * with a margin ten times as large, so this much is proved.
 */
const MARGIN = 1e-7;
/** Far from 0 the bracket may be as wide as this share of the figure. */
const SHARE = 0.08;
/** First step where the tolerance is smaller, mm. */
const LEAST_STEP = 5;
/** Farthest from 0 that is worth a look, mm: nobody moves a wall by more. */
const FARTHEST = 4000;

/**
 * Brackets the spare of a passage (see crossing.ts) by decisions at chosen deltas, each of which must hold for all smaller (`path`) or greater
 * (`no`) ones as well. 0 is decided first, then a step of the tolerance from there, then steps four times as wide until the answer
 * turns; then the bracket is halved while boxes last. Where a decision comes out undecided, what lies on either side of it is tried.
 */
export function bracketSpare<Proof>(
  decide: (delta: number, maxBoxes: number) => Decision<Proof>,
  options: BracketOptions,
): SpareBracket<Proof> {
  const { tolerance, maxBoxes, width = WIDTH, steps = STEPS } = options;
  let atLeast = options.atLeast ?? Number.NEGATIVE_INFINITY;
  let atMost = options.atMost ?? Number.POSITIVE_INFINITY;
  let proof: Proof | null = null;
  let boxes = 0;
  // Deltas that came out undecided span this; empty at first.
  let openFrom = Number.POSITIVE_INFINITY;
  let openTo = Number.NEGATIVE_INFINITY;

  const ask = (delta: number): void => {
    const decision = decide(delta, maxBoxes - boxes);
    boxes += decision.boxes;
    if (decision.answer === 'path') {
      atLeast = delta;
      proof = decision.proof;
    } else if (decision.answer === 'no') {
      atMost = delta - MARGIN;
    } else {
      openFrom = Math.min(openFrom, delta);
      openTo = Math.max(openTo, delta);
    }
  };

  if (atLeast < 0 && atMost >= 0) ask(0);
  let stride = Math.max(tolerance, LEAST_STEP);
  let lower = false;
  for (let step = 1; step < steps && boxes < maxBoxes; step++) {
    // What is not settled yet: one gap, or one on either side of the deltas that came out undecided.
    const open = openFrom <= openTo;
    const [gapBelow, gapAbove] = open ? [openFrom - atLeast, atMost - openTo] : [atMost - atLeast, 0];
    const enough = Math.max(width, SHARE * Math.max(atLeast, -atMost));
    if (gapBelow <= (open ? enough / 2 : enough) && gapAbove <= enough / 2) break;
    lower = gapBelow === gapAbove ? !lower : gapBelow > gapAbove;
    const from = lower ? atLeast : openTo;
    const to = lower && open ? openFrom : atMost;
    // Halve the gap, but go no farther from 0 than a stride at a time: 0 lies in no gap.
    const middle = (from + to) / 2;
    const delta = from >= 0 ? Math.min(from + stride, middle) : Math.max(to - stride, middle);
    if (Math.abs(delta) > FARTHEST) break;
    if (delta !== middle) stride *= 4;
    ask(delta);
  }
  return { atLeast, atMost, proof, boxes };
}
