import type { Adjustment } from './tape-adjust.js';
import { rowCovariance } from './tape-adjust.js';

/** Baarda's limit for a standardised residual: one sound reading in a thousand goes beyond it. */
const SUSPECT_LIMIT = 3.29;
/** A reading is told apart from the worst one when it would have looked worse than it does in 99 of 100 surveys (one-sided). */
const APART = 2.326;

/** Residuals by their standard deviations; null where nothing checks the reading. Same sign as adjusted less read. */
export function standardizedResiduals({ rows, redundancy }: Adjustment): (number | null)[] {
  return Array.from(redundancy, (share, i) => (share > 0 ? 0 - rows.misfits[i] / Math.sqrt(share) : null));
}

/** The reading with the greatest standardised residual, when it is too great for chance, and those that it cannot be told apart from. */
export interface Suspicion {
  readonly index: number;
  /** What to add to the reading, over its deviation: the estimate of its slip, taken back. */
  readonly correction: number;
  readonly standardized: number;
  readonly orElse: readonly number[];
}

export function findSuspect(adjustment: Adjustment): Suspicion | null {
  const { rows, redundancy, covariance, xy } = adjustment;
  const standardized = standardizedResiduals(adjustment);
  const sizes = standardized.map((w) => Math.abs(w ?? 0));
  let index = 0;
  for (let i = 1; i < sizes.length; i++) if (sizes[i] > sizes[index]) index = i;
  const worst = standardized[index];
  if (worst === undefined || worst === null || sizes[index] <= SUSPECT_LIMIT) return null;

  const orElse: number[] = [];
  for (let i = 0; i < sizes.length; i++) {
    if (i === index || redundancy[i] === 0) continue;
    const together = rowCovariance(rows, index, i, covariance, xy.length);
    const sameSign = worst * (standardized[i] ?? 0) > 0 ? 1 : -1;
    const correlation = Math.min(1, (-sameSign * together) / Math.sqrt(redundancy[index] * redundancy[i]));
    // Were the slip in i, the worst would be expected at `correlation` times the size of i.
    const excess = sizes[index] - sizes[i] * correlation;
    if (excess < APART * Math.sqrt(2 * (1 - correlation)) + SAME * sizes[index]) orElse.push(i);
  }
  orElse.sort((a, b) => sizes[b] - sizes[a] || a - b);
  return {
    index,
    correction: -rows.misfits[index] / redundancy[index],
    standardized: worst,
    orElse,
  };
}

/** Standardised residuals that differ by a smaller share are equal: more than a fit is short of its end, less than a reading can tell. */
const SAME = 1e-4;
