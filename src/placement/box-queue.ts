/** A box of poses that waits for its turn. */
export interface WaitingBox {
  /** No pose of it has more clearance, mm. */
  readonly bound: number;
  /** Middle and half widths: x, y, angle, dx, dy, turn. */
  readonly extent: readonly number[];
  /** The constraints that may still matter in it; boxes that were split together share one list. */
  readonly list: Uint32Array;
  /** The list holds the frame's constraints against walls and tall things too. */
  readonly full: boolean;
  /** Number of boxes that were there before it: the oldest goes first among equals, so that the order is always the same. */
  readonly age: number;
}

/** Adds a box to the heap. */
export function pushBox(heap: WaitingBox[], box: WaitingBox): void {
  let at = heap.length;
  heap.push(box);
  while (at > 0) {
    const parent = (at - 1) >> 1;
    if (!goesBefore(box, heap[parent])) break;
    heap[at] = heap[parent];
    at = parent;
  }
  heap[at] = box;
}

/** Takes the box with the greatest bound. */
export function popBox(heap: WaitingBox[]): WaitingBox | undefined {
  const top = heap[0];
  const last = heap.pop();
  if (last === undefined || heap.length === 0) return top;
  let at = 0;
  for (;;) {
    let child = 2 * at + 1;
    if (child >= heap.length) break;
    if (child + 1 < heap.length && goesBefore(heap[child + 1], heap[child])) child++;
    if (!goesBefore(heap[child], last)) break;
    heap[at] = heap[child];
    at = child;
  }
  heap[at] = last;
  return top;
}

function goesBefore(a: WaitingBox, b: WaitingBox): boolean {
  return a.bound > b.bound || (a.bound === b.bound && a.age < b.age);
}
