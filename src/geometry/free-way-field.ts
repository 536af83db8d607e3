import { compareGaps, type Gap, gapsBetween } from './free-way-gaps.js';
import { Parting } from './free-way-parting.js';
import { WAY_SLACK, type WayPlan, wayPlan } from './free-way-plan.js';
import { arrivalLines, freeStretches, type Line, type WayTarget } from './free-way-target.js';
import { pointInRing } from './predicates.js';
import type { Ring } from './types.js';

/** What does not change from one layout to the next, prepared by {@link wayField}. */
export interface WayField {
  readonly outline: Ring;
  readonly fixed: readonly Ring[];
  /** Gaps among walls and fixed rings, up to `most`. */
  readonly gaps: readonly Gap[];
  /** Ways may be up to this wide, mm. */
  readonly most: number;
}

/** Prepares walls and things that stay where they are, for ways of up to `most` mm. */
export function wayField(outline: Ring, fixed: readonly Ring[], most: number): WayField {
  return { outline, fixed, gaps: gapsBetween(wayPlan(outline, fixed), most), most };
}

/** One layout: all edges, and the gaps narrower than the field's widest way. */
export interface WayLayout {
  readonly plan: WayPlan;
  /** In no order. */
  readonly gaps: readonly Gap[];
  readonly most: number;
}

export function wayLayout({ outline, fixed, gaps, most }: WayField, moving: readonly Ring[]): WayLayout {
  const plan = wayPlan(outline, [...fixed, ...moving]);
  return { plan, gaps: [...gaps, ...gapsBetween(plan, most, fixed.length + 1)], most };
}

/** Where a disc of one width can arrive at targets, and which of the places it can go between. */
export interface Arrivals {
  readonly width: number;
  /** Stretches of centres: each is free as a whole. */
  readonly stretches: readonly Line[];
  /** By target: its stretches, and those of other targets whose middle lies in one of its regions. */
  readonly of: readonly (readonly number[])[];
  /** By stretch: those with the same number go together. */
  readonly labels: Int32Array;
}

/**
 * Which targets a disc of diameter `width` can go between, proved either way; see {@link Parting}. Gaps may be off by rounding, so a way may be
 * narrower by 2 {@link WAY_SLACK}; none that is as wide as asked is missed.
 *
 * Of two targets that are both regions, a pocket of free centres that lies wholly inside both is not looked for.
 *
 * @throws RangeError for a width beyond what the layout was prepared for.
 */
export function arrivalsAt(layout: WayLayout, targets: readonly WayTarget[], width: number): Arrivals {
  if (width > layout.most)
    throw new RangeError(`Prepared for ways of up to ${layout.most} mm, not ${width}.`);
  const { stretches, of } = placesAt(layout.plan, targets, width);
  const parting = partingOf(layout.plan, stretches);
  for (const gap of layout.gaps) if (isTooNarrow(gap, width)) parting.add(gap);
  return { width, stretches, of, labels: parting.labels };
}

/** Whether a disc can go from one target to the other. */
export function goTogether({ of, labels }: Pick<Arrivals, 'of' | 'labels'>, a: number, b: number): boolean {
  for (const i of of[a]) for (const j of of[b]) if (labels[i] === labels[j]) return true;
  return false;
}

/**
 * For each pair of targets the gap that, as the disc grows from diameter `width` to the layout's most, is the first to part all places of one
 * from all of the other that it can go between at `width`; null where they are parted at `width`, or still together at the end.
 */
export function firstPartingGaps(
  layout: WayLayout,
  targets: readonly WayTarget[],
  pairs: readonly (readonly [number, number])[],
  width: number,
): (Gap | null)[] {
  const { stretches, of } = placesAt(layout.plan, targets, width);
  const parting = partingOf(layout.plan, stretches);
  const { labels } = parting;
  const wider: Gap[] = [];
  for (const gap of layout.gaps) {
    if (isTooNarrow(gap, width)) parting.add(gap);
    else wider.push(gap);
  }
  wider.sort(compareGaps);
  const found: (Gap | null)[] = pairs.map(() => null);
  let together = pairs.map((_, k) => k).filter((k) => goTogether({ of, labels }, ...pairs[k]));
  for (const gap of wider) {
    if (together.length === 0) break;
    if (!parting.add(gap)) continue;
    together = together.filter((k) => {
      if (goTogether({ of, labels }, ...pairs[k])) return true;
      found[k] = gap;
      return false;
    });
  }
  return found;
}

export function isTooNarrow(gap: Gap, width: number): boolean {
  return gap.length < width - 2 * WAY_SLACK;
}

function placesAt(
  plan: WayPlan,
  targets: readonly WayTarget[],
  width: number,
): { readonly stretches: Line[]; readonly of: number[][] } {
  const stretches: Line[] = [];
  const of = targets.map((target) => {
    const own: number[] = [];
    for (const line of arrivalLines(plan, target, width)) {
      for (const stretch of freeStretches(plan, line, width)) own.push(stretches.push(stretch) - 1);
    }
    return own;
  });
  targets.forEach(({ regions }, t) => {
    if (regions.length === 0) return;
    const own = new Set(of[t]);
    stretches.forEach((stretch, k) => {
      if (!own.has(k) && regions.some((ring) => pointInRing(ring, ...middle(stretch)) >= 0)) of[t].push(k);
    });
  });
  return { stretches, of };
}

function partingOf(plan: WayPlan, stretches: readonly Line[]): Parting {
  const middles = stretches.map(middle);
  return new Parting(
    plan,
    middles.map(([x]) => x),
    middles.map(([, y]) => y),
  );
}

function middle([ax, ay, bx, by]: Line): [number, number] {
  return [(ax + bx) / 2, (ay + by) / 2];
}
