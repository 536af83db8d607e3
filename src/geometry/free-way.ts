import { keepsWidth } from './free-way-check.js';
import { type Arrivals, goTogether, type WayLayout, wayField, wayLayout } from './free-way-field.js';
import { WayMap } from './free-way-map.js';
import type { WayPlan } from './free-way-plan.js';
import { shortestPaths, straightened, type WayGoal } from './free-way-search.js';
import type { WayTarget } from './free-way-target.js';
import { type WidestWay, WidestWays } from './free-way-widest.js';
import { pointInRing } from './predicates.js';
import type { Point, Ring } from './types.js';

/** What is asked of the way between two targets, by their places in the list of targets. */
export interface WayPair {
  readonly from: number;
  readonly to: number;
  /** The widest way is looked for up to here, mm; at least the wanted width. */
  readonly most: number;
}

/** The answer for one pair. */
export interface FoundWay {
  /** There is a way of the wanted width, and `path` proves it; see {@link keepsWidth}. */
  readonly found: boolean;
  /** Where none was found: true if a closed line of things and gaps narrower than the way parts the two; see `Parting`. False: undecided. */
  readonly certain: boolean;
  /** Its middle line from the one target to the other; empty where none was found. */
  readonly path: readonly Point[];
  /** The widest way from `least` up to `most`; null where none is as wide as `least`. */
  readonly widest: WidestWay | null;
}

/** A way that is narrower by rounding only counts as found, so the search has gaps to look through a little wider than the way. mm. */
const GAPS_BEYOND = 250;

/** Distance between the points of the grid over which a path is searched first, mm; each time that none is found it is halved, so often. */
const SPACING = 100;
const HALVINGS = 3;

/** No grid has more points: in a large hall the first is as much coarser as that takes, and finer ones would take seconds. */
const MOST_POINTS = 400_000;

/**
 * Connected free floor of a width: for each pair of targets whether a disc of diameter `width` mm can go from one to the other, inside the
 * outline and off all blocked rings. Touching is free, so a gap exactly as wide as the way lets it through; rounding may take
 * 2 `WAY_SLACK` from it. That there is none is proved whatever the resolution, that there is one by its path; where one is there but
 * no path was found on the finest grid, the answer is not certain.
 *
 * @param outline Anticlockwise.
 * @param blocked Rings in either direction; they may overlap and reach beyond the outline.
 * @param least The widest way is not looked for below this, mm; at most `width`.
 */
export function findWays(
  outline: Ring,
  blocked: readonly Ring[],
  targets: readonly WayTarget[],
  pairs: readonly WayPair[],
  width: number,
  least: number,
): FoundWay[] {
  const most = Math.max(width, ...pairs.map((pair) => pair.most));
  const layout = wayLayout(wayField(outline, blocked, Math.max(most, width + GAPS_BEYOND)), []);
  const ways = new WidestWays(
    layout,
    targets,
    pairs.map(({ from, to }) => [from, to]),
  );
  const arrivals = ways.at(width);
  const paths = findPaths(layout, targets, pairs, arrivals);
  return pairs.map((pair, k) => {
    const path = paths[k];
    const there = ways.goes(k, width);
    return {
      found: path !== null,
      certain: path !== null || !there,
      path: path ?? [],
      widest: there
        ? ways.widest(k, width, Math.max(width, pair.most))
        : ways.widest(k, Math.min(least, width), width),
    };
  });
}

/** A proved path for each pair; null where there is none, and where none was found. */
function findPaths(
  layout: WayLayout,
  targets: readonly WayTarget[],
  pairs: readonly WayPair[],
  arrivals: Arrivals,
): (readonly Point[] | null)[] {
  const { plan, gaps } = layout;
  const { width, stretches } = arrivals;
  const paths = pairs.map(({ from, to }) => meetingPlace(targets, arrivals, from, to));
  let missing = pairs
    .map((_, k) => k)
    .filter((k) => paths[k] === null && goTogether(arrivals, pairs[k].from, pairs[k].to));
  for (const spacing of spacings(plan)) {
    if (missing.length === 0) break;
    const map = new WayMap(plan, gaps, stretches, width, spacing);
    for (const from of new Set(missing.map((k) => pairs[k].from))) {
      const asked = missing.filter((k) => pairs[k].from === from);
      const goals = asked.map((k) => goalOf(map, targets[pairs[k].to], arrivals, pairs[k].to));
      const starts = [...placesOf(map, arrivals, from)];
      shortestPaths(map, starts, goals).forEach((path, i) => {
        if (path === null) return;
        const straight = straightened(plan, path, width);
        if (keepsWidth(plan, straight, width)) paths[asked[i]] = straight;
      });
    }
    missing = missing.filter((k) => paths[k] === null);
  }
  return paths;
}

function spacings({ boxes }: WayPlan): number[] {
  const [minX, maxX, minY, maxY] = boxes;
  const least = Math.sqrt(((maxX - minX) * (maxY - minY)) / MOST_POINTS);
  const first = Math.max(SPACING, least);
  return Array.from({ length: HALVINGS + 1 }, (_, k) => first / 2 ** k).filter((s) => s >= least);
}

/** A place on a stretch of one target that is on the other's floor: the way has arrived before it starts. */
function meetingPlace(
  targets: readonly WayTarget[],
  { of, stretches }: Arrivals,
  a: number,
  b: number,
): readonly Point[] | null {
  for (const [one, other] of [
    [a, b],
    [b, a],
  ]) {
    for (const k of of[one]) {
      const [ax, ay, bx, by] = stretches[k];
      const [x, y] = [(ax + bx) / 2, (ay + by) / 2];
      if (targets[other].regions.some((ring) => pointInRing(ring, x, y) >= 0)) return [[x, y]];
    }
  }
  return null;
}

function placesOf(map: WayMap, { of }: Arrivals, target: number): Set<number> {
  const places = new Set<number>();
  for (const k of of[target]) map.onStretch(k, (place) => places.add(place));
  return places;
}

function goalOf(map: WayMap, { regions }: WayTarget, arrivals: Arrivals, index: number): WayGoal {
  return {
    places: placesOf(map, arrivals, index),
    holds: (x, y) => regions.some((ring) => pointInRing(ring, x, y) >= 0),
  };
}
