import type { Carried } from './carried.js';
import { searchGate } from './cross-gate-search.js';
import type { Crossing } from './crossing.js';
import { crossGateStraight } from './gate.js';
import { narrowPassage } from './narrow-passage.js';
import type { Gate } from './passages.js';

/** A bracket narrower than this needs no search, mm. */
export const CLOSED = 0.2;
/** With so much to spare, mm, nobody asks how much it is exactly. */
export const AMPLE = 50;

/**
 * One box through a doorway or an opening. Straight through by closed forms; where that leaves the spare open (as a rule because a space is
 * shallower than the box is long), by subdivision of its poses in plan, for the ways in which it may be held and, for what stops any motion, for
 * the capsule in it.
 *
 * The motion starts wholly before the wall and ends wholly beyond it: lined up where there is room for that, along the wall where the floor
 * goes on to a side (a corridor), and anywhere free where the floor has an end on all sides.
 */
export function crossGate(gate: Gate, box: Carried, options: { readonly maxBoxes: number }): Crossing {
  const straight = crossGateStraight(gate, box);
  if (isSettled(straight, gate.tolerance)) return straight;
  const narrowed = (delta: number): Gate => ({ ...gate, ...narrowGate(gate, delta) });
  return searchGate(narrowed, box, { maxBoxes: options.maxBoxes, straight });
}

/** Whether closed forms say all that is of use. */
export function isSettled({ atLeast, atMost }: Crossing, tolerance: number): boolean {
  return atMost - atLeast <= CLOSED || atLeast >= Math.max(AMPLE, tolerance);
}

function narrowGate(gate: Gate, delta: number): Partial<Gate> {
  const narrow = narrowPassage(gate, delta);
  return narrow.kind === 'doorway' || narrow.kind === 'opening' ? narrow : gate;
}
