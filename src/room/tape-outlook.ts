import { pointInRing, segmentContact } from '../geometry/predicates.js';
import { distanceToSegment } from '../geometry/ring.js';
import { inSteps, SAME_LENGTH } from '../geometry/steady.js';
import type { Point } from '../geometry/types.js';
import type { WallEnd } from './tape-bands.js';
import { againName } from './tape-names.js';
import type { Candidate } from './tape-next.js';
import type { NextReading, TapedWall } from './tape-report.js';

/** A band that shrinks by less than this share is not worth a walk. */
const WORTHWHILE = 0.005;
/** Greatest bands that differ by less than this share are equal but for rounding. */
const SAME = 1e-9;

/**
 * What the bands would be with one more reading: one rank-one update of the covariance, no new adjustment, since how corners
 * depend on readings does not depend on what will be read. The factor is the one of now.
 */
export class Outlook {
  private readonly count: number;
  /** Row k: covariance of coordinate k with each end's displacement. */
  private readonly toEnds: Float64Array;
  private readonly variances: Float64Array;
  private readonly together: Float64Array;

  constructor(
    private readonly ends: readonly WallEnd[],
    private readonly covariance: Float64Array,
    private readonly size: number,
    private readonly factor: number,
  ) {
    const count = ends.length;
    this.count = count;
    this.toEnds = new Float64Array(size * count);
    for (let k = 0; k < size; k++) {
      for (let e = 0; e < count; e++) {
        const { corner, nx, ny } = ends[e];
        const at = k * size + 2 * corner;
        this.toEnds[k * count + e] = nx * covariance[at] + ny * covariance[at + 1];
      }
    }
    this.variances = Float64Array.from(ends, ({ corner, nx, ny }, e) => {
      const at = 2 * corner * count + e;
      return nx * this.toEnds[at] + ny * this.toEnds[at + count];
    });
    this.together = new Float64Array(count);
  }

  /** Half width of one wall's band now. */
  bandNow(wall: number): number {
    return this.factor * Math.sqrt(Math.max(this.variances[2 * wall], this.variances[2 * wall + 1], 0));
  }

  /** Variance of what the candidate will read, as far as it is known now, and its own. */
  spread({ columns, slopes, variance }: Candidate): number {
    let sum = variance;
    for (let p = 0; p < columns.length; p++) {
      const at = columns[p] * this.size;
      for (let q = 0; q < columns.length; q++)
        sum += slopes[p] * slopes[q] * this.covariance[at + columns[q]];
    }
    return sum;
  }

  /** Half width of one wall's band with the candidate. */
  band({ columns, slopes }: Candidate, spread: number, wall: number): number {
    let most = 0;
    for (let e = 2 * wall; e < 2 * wall + 2; e++) {
      let together = 0;
      for (let p = 0; p < columns.length; p++)
        together += slopes[p] * this.toEnds[columns[p] * this.count + e];
      most = Math.max(most, this.variances[e] - (together * together) / spread);
    }
    return this.factor * Math.sqrt(most);
  }

  /** The greatest band with the candidate, and the sum of the squares of all, which ranks candidates that leave the same. */
  whole(
    { columns, slopes }: Candidate,
    spread: number,
  ): { readonly greatest: number; readonly squareSum: number } {
    const { together, variances, count } = this;
    together.fill(0);
    for (let p = 0; p < columns.length; p++) {
      const row = columns[p] * count;
      for (let e = 0; e < count; e++) together[e] += slopes[p] * this.toEnds[row + e];
    }
    let greatest = 0;
    let sum = 0;
    for (let e = 0; e < this.ends.length; e += 2) {
      const left = Math.max(
        variances[e] - (together[e] * together[e]) / spread,
        variances[e + 1] - (together[e + 1] * together[e + 1]) / spread,
        0,
      );
      greatest = Math.max(greatest, left);
      sum += left;
    }
    return { greatest: this.factor * Math.sqrt(greatest), squareSum: this.factor * this.factor * sum };
  }
}

/** Those of the readings that narrow one wall's band most when they are repeated, best first. */
export function bestRepeats(
  repeats: readonly Candidate[],
  outlook: Outlook,
  wall: number,
  most: number,
): TapedWall['repeat'] {
  const now = outlook.bandNow(wall);
  return repeats
    .map((candidate) => ({ candidate, band: outlook.band(candidate, outlook.spread(candidate), wall) }))
    .filter(({ band }) => band < (1 - WORTHWHILE) * now)
    .sort((a, b) => inSteps(a.band, SAME_LENGTH) - inSteps(b.band, SAME_LENGTH))
    .slice(0, most)
    .map(({ candidate, band }) => ({ reading: candidate.name(), band }));
}

/**
 * The readings that leave the least greatest band, best first; diagonals only where one corner sees the other. What a candidate
 * leaves of the band that is greatest now is the least that it can leave at all, so only the promising ones are looked at
 * in full.
 */
export function bestNext(
  repeats: readonly Candidate[],
  others: readonly Candidate[],
  outlook: Outlook,
  ring: readonly Point[],
  most: number,
): NextReading[] {
  const bands = ring.map((_, wall) => outlook.bandNow(wall));
  const now = Math.max(...bands);
  const squareSum = bands.reduce((sum, band) => sum + band * band, 0);
  // The first of those that are as wide but for rounding.
  const worst = bands.findIndex((band) => band >= now * (1 - SAME));
  const promise = (again: boolean) => (candidate: Candidate) => {
    const spread = outlook.spread(candidate);
    return { candidate, again, spread, least: outlook.band(candidate, spread, worst) };
  };
  const promising = [...repeats.map(promise(true)), ...others.map(promise(false))].sort(
    (a, b) => inSteps(a.least, SAME_LENGTH) - inSteps(b.least, SAME_LENGTH),
  );
  const best: { name: string; greatest: number; squareSum: number }[] = [];
  for (const { candidate, again, spread, least } of promising) {
    const last = best.at(most - 1);
    if (last !== undefined && least > last.greatest * (1 + SAME)) break;
    const after = outlook.whole(candidate, spread);
    if (after.greatest >= (1 - WORTHWHILE) * now && after.squareSum >= (1 - WORTHWHILE) * squareSum) continue;
    if (last !== undefined && inOrder(after, last) >= 0) continue;
    if (candidate.sight !== null && !seesEachOther(ring, ...candidate.sight)) continue;
    const name = candidate.name();
    best.push({ name: again ? againName(name) : name, ...after });
    best.sort(inOrder);
    if (best.length > most) best.pop();
  }
  return best.map(({ name, greatest }) => ({ reading: name, now, after: greatest }));
}

function inOrder(
  a: { readonly greatest: number; readonly squareSum: number },
  b: { readonly greatest: number; readonly squareSum: number },
): number {
  const same = Math.abs(a.greatest - b.greatest) <= SAME * b.greatest;
  if (!same) return a.greatest - b.greatest;
  const rest = a.squareSum - b.squareSum;
  return Math.abs(rest) <= SAME * b.squareSum ? 0 : rest;
}

/** A tape that passes a corner nearer than this (mm) touches it: the corners are not known as well as that. */
const BESIDE = 1;

/** Whether a tape runs straight from one corner to the other without touching a wall. */
function seesEachOther(ring: readonly Point[], i: number, j: number): boolean {
  const n = ring.length;
  const [a, b] = [ring[i], ring[j]];
  for (let k = 0; k < n; k++) {
    const next = k + 1 === n ? 0 : k + 1;
    if (k !== i && k !== j && distanceToSegment(ring[k], a, b) < BESIDE) return false;
    if (k === i || k === j || next === i || next === j) continue;
    if (segmentContact(a, b, ring[k], ring[next]) !== 'apart') return false;
  }
  return pointInRing(ring, (a[0] + b[0]) / 2, (a[1] + b[1]) / 2) > 0;
}
