import { segmentKeeps } from './free-way-check.js';
import type { WayMap } from './free-way-map.js';
import type { WayPlan } from './free-way-plan.js';
import type { Point } from './types.js';

/** What a search goes to: places, or floor on which it has arrived. */
export interface WayGoal {
  readonly places: ReadonlySet<number>;
  readonly holds: (x: number, y: number) => boolean;
}

/**
 * The shortest path over a map from any of the starts to each goal, or null where the map has none: all by one search (Dijkstra 1959) that
 * ends with the last goal. Of places at the same distance the one with the lower number comes first.
 */
export function shortestPaths(
  map: WayMap,
  starts: readonly number[],
  goals: readonly WayGoal[],
): (Point[] | null)[] {
  const distance = new Float64Array(map.count).fill(Infinity);
  const before = new Int32Array(map.count).fill(-1);
  const done = new Uint8Array(map.count);
  const queue = new PlaceQueue();
  for (const place of starts) {
    if (map.clearance(place) < 0) continue;
    distance[place] = 0;
    queue.push(0, place);
  }
  const paths: (Point[] | null)[] = goals.map(() => null);
  let missing = goals.length;
  for (let place = queue.pop(); place >= 0 && missing > 0; place = queue.pop()) {
    if (done[place] === 1) continue;
    done[place] = 1;
    for (let g = 0; g < goals.length; g++) {
      if (paths[g] !== null) continue;
      if (!goals[g].places.has(place) && !goals[g].holds(map.x[place], map.y[place])) continue;
      paths[g] = trace(map, before, place);
      missing--;
    }
    const here = distance[place];
    map.steps(place, (to, length) => {
      if (done[to] === 1 || here + length >= distance[to]) return;
      distance[to] = here + length;
      before[to] = place;
      queue.push(distance[to], to);
    });
  }
  return paths;
}

function trace(map: WayMap, before: Int32Array, end: number): Point[] {
  const path: Point[] = [];
  for (let place = end; place >= 0; place = before[place]) path.push([map.x[place], map.y[place]]);
  return path.reverse();
}

/** The same way with fewer corners: from each corner on straight to one as far along as leaves room. */
export function straightened(plan: WayPlan, path: readonly Point[], width: number): Point[] {
  if (path.length < 3) return [...path];
  const kept: Point[] = [path[0]];
  const last = path.length - 1;
  for (let i = 0; i < last; ) {
    // The next point is good; look twice as far each time, then between the last good and the first bad one.
    let good = i + 1;
    let bad = last + 1;
    for (let step = 2; good < last; step *= 2) {
      const to = Math.min(last, i + step);
      if (!segmentKeeps(plan, path[i], path[to], width)) {
        bad = to;
        break;
      }
      good = to;
    }
    while (bad - good > 1) {
      const middle = (good + bad) >> 1;
      if (segmentKeeps(plan, path[i], path[middle], width)) good = middle;
      else bad = middle;
    }
    kept.push(path[good]);
    i = good;
  }
  return kept;
}

/** Places by distance, the nearest first, of equals the one with the lower number: a heap. */
class PlaceQueue {
  private readonly keys: number[] = [];
  private readonly places: number[] = [];

  push(key: number, place: number): void {
    const { keys, places } = this;
    let i = keys.length;
    keys.push(key);
    places.push(place);
    while (i > 0) {
      const up = (i - 1) >> 1;
      if (!comesFirst(key, place, keys[up], places[up])) break;
      keys[i] = keys[up];
      places[i] = places[up];
      i = up;
    }
    keys[i] = key;
    places[i] = place;
  }

  /** -1: empty. */
  pop(): number {
    const { keys, places } = this;
    const first = places[0];
    const key = keys.pop();
    const place = places.pop();
    if (key === undefined || place === undefined) return -1;
    const n = keys.length;
    if (n === 0) return place;
    let i = 0;
    for (;;) {
      let down = 2 * i + 1;
      if (down >= n) break;
      if (down + 1 < n && comesFirst(keys[down + 1], places[down + 1], keys[down], places[down])) down++;
      if (!comesFirst(keys[down], places[down], key, place)) break;
      keys[i] = keys[down];
      places[i] = places[down];
      i = down;
    }
    keys[i] = key;
    places[i] = place;
    return first;
  }
}

function comesFirst(key: number, place: number, otherKey: number, otherPlace: number): boolean {
  return key < otherKey || (key === otherKey && place < otherPlace);
}
