import { inSteps, SAME_LENGTH } from '../geometry/steady.js';
import type { Carried, Hold } from './carried.js';
import { type HoldFamily, heldHeight, holdAt, holdFamilies, type Interval, planLength } from './holds.js';

/** A figure known to lie between two others. */
export interface Bracket {
  readonly atLeast: number;
  readonly atMost: number;
}

export interface BestHold<T extends Bracket> extends Bracket {
  readonly hold: Hold;
  /** What `spareOf` said of that hold. */
  readonly plan: T;
}

/** Of the box's length: how close the two sides of a bracket are brought. 0.02 mm for 2 m. */
const TOLERANCE = 1e-5;
const MOST_STEPS = 60;
/** Plans whose areas (mm2) differ by less differ by rounding. */
const SAME_AREA = 1e-3;

/**
 * The hold with the most to spare under a flat height: the largest min(height - V, spare in plan), mm, over all allowed holds, bracketed. For any
 * passage that asks one height everywhere and otherwise only for room in plan. `spareOf` gets the plan length P(o) and the edge across;
 * its figure must not grow with either.
 *
 * Over an interval of tilts the best is at an end, or where the falling height - V(o) meets the rising spare of P(o) between e and pi / 2 - e
 * (see holds.ts): below e a smaller tilt is lower and shorter, above pi / 2 - e a larger one is. There the two are brought together by a
 * bisection that keeps one figure on either side, so the bracket is proved.
 */
export function bestHold<T extends Bracket>(
  box: Carried,
  height: number,
  spareOf: (planLength: number, across: number) => T,
): BestHold<T> | null {
  const found: { best: BestHold<T> | null } = { best: null };
  let atMost = Number.NEGATIVE_INFINITY;

  const look = (hold: Hold): T => {
    const plan = spareOf(planLength(hold), hold.across);
    const atLeast = Math.min(height - heldHeight(hold), plan.atLeast);
    // Holds that are as good but for rounding leave the first one be.
    if (atLeast > worth() + SAME_LENGTH) found.best = { atLeast, atMost: atLeast, hold, plan };
    return plan;
  };
  const worth = (): number => (found.best === null ? Number.NEGATIVE_INFINITY : found.best.atLeast);

  const families = holdFamilies(box);
  for (const hold of endHolds(families)) {
    const above = height - heldHeight(hold);
    // No better than what is known: its plan is of no interest.
    if (above > worth()) atMost = Math.max(atMost, Math.min(above, look(hold).atMost));
  }
  for (const family of families) {
    for (const interval of family.tilts) atMost = Math.max(atMost, meet(family, interval));
  }
  return found.best === null ? null : { ...found.best, atMost: Math.max(atMost, worth()) };

  /** The crossing within one interval: looks at holds and returns what none of them can exceed. */
  function meet(family: HoldFamily, [from, to]: Interval): number {
    const offset = Math.atan2(family.up, family.along);
    let low = Math.max(from, offset);
    let high = Math.min(to, Math.PI / 2 - offset);
    if (!(low < high)) return Number.NEGATIVE_INFINITY;
    const heightAt = (tilt: number): number => height - heldHeight({ ...family, tilt });
    let heightLow = heightAt(low);
    if (heightLow <= worth()) return worth();
    let planHigh = look(holdAt(family, high));
    let heightHigh = heightAt(high);
    if (planHigh.atMost <= worth() || heightHigh >= planHigh.atLeast)
      return Math.min(planHigh.atMost, heightLow);
    let planLow = look(holdAt(family, low));
    if (heightLow <= planLow.atMost) return Math.min(heightLow, planLow.atMost);
    const tolerance = TOLERANCE * box.l;
    // Regula falsi after Illinois: an end that stays twice in a row counts half.
    let gapLow = heightLow - planLow.atLeast;
    let gapHigh = heightHigh - planHigh.atLeast;
    let stayed = 0;
    for (let step = 0; step < MOST_STEPS; step++) {
      const ceiling = Math.min(heightLow, planHigh.atMost);
      if (ceiling <= worth() + tolerance) break;
      const share = Math.min(0.95, Math.max(0.05, gapLow / (gapLow - gapHigh)));
      const tilt = low + share * (high - low);
      const hold = holdAt(family, tilt);
      const plan = look(hold);
      const above = heightAt(tilt);
      const gap = above - plan.atLeast;
      if (gap > 0) {
        low = tilt;
        heightLow = above;
        planLow = plan;
        gapLow = gap;
        if (stayed === 1) gapHigh /= 2;
        stayed = 1;
      } else {
        high = tilt;
        heightHigh = above;
        planHigh = plan;
        gapHigh = gap;
        if (stayed === -1) gapLow /= 2;
        stayed = -1;
      }
    }
    return Math.min(heightLow, planHigh.atMost);
  }
}

/** The holds at the ends of all intervals, each once, the smallest plan first. */
function endHolds(families: readonly HoldFamily[]): readonly Hold[] {
  const holds: Hold[] = [];
  for (const family of families) {
    for (const interval of family.tilts) {
      for (const tilt of interval) {
        const hold = holdAt(family, tilt);
        if (!holds.some((other) => sameHold(hold, other))) holds.push(hold);
      }
    }
  }
  const size = (hold: Hold): number => inSteps(planLength(hold) * hold.across, SAME_AREA);
  return holds.sort((one, other) => size(one) - size(other));
}

function sameHold(one: Hold, other: Hold): boolean {
  return (
    one.along === other.along && one.across === other.across && one.up === other.up && one.tilt === other.tilt
  );
}
