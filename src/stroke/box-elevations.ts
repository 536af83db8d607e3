/** Open intervals of elevations, and whether they leave a gap or cover a range. Kept in arrays that are filled anew for each box. */
export interface Intervals {
  count: number;
  readonly lo: Float64Array;
  readonly hi: Float64Array;
}

export function intervals(capacity: number): Intervals {
  return { count: 0, lo: new Float64Array(capacity), hi: new Float64Array(capacity) };
}

export function addInterval(set: Intervals, lo: number, hi: number): void {
  if (!(lo < hi)) return;
  set.lo[set.count] = lo;
  set.hi[set.count] = hi;
  set.count++;
}

/** The least elevation >= from outside all intervals; Infinity where there is none. */
export function firstFree(set: Intervals, from: number): number {
  let free = from;
  let moved = true;
  while (moved) {
    moved = false;
    for (let k = 0; k < set.count; k++) {
      // Open intervals: an end lies outside its own interval, though perhaps inside another.
      if (set.lo[k] < free && free < set.hi[k]) {
        free = set.hi[k];
        moved = true;
      }
    }
  }
  return free;
}
