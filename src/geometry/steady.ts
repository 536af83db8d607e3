/**
 * A measure in whole steps, to compare by. Measures that are the same but for rounding then compare as the same, so that the
 * order of a list or the choice among equals does not hang on last bits, in which engines differ. Round numbers lie in the middle
 * of a step.
 */
export function inSteps(value: number, step: number): number {
  return Math.round(value / step);
}

/** Lengths (mm) and shares that differ by less than this differ by rounding. */
export const SAME_LENGTH = 1e-6;
export const SAME_SHARE = 1e-9;
