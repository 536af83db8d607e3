import { inSteps, SAME_LENGTH } from '../geometry/steady.js';
import type { Carried, Hold } from './carried.js';
import type { HoldName } from './delivery-input.js';
import { type HoldArc, holdArc } from './hold-report.js';

/** What a change of hold takes: free height, and a free circle in plan (its diameter), mm. */
export interface ChangeRoom {
  readonly height: number;
  readonly floor: number;
}

const QUARTER = Math.PI / 2;
/** Holds that differ by less, radians, are one. */
const SAME = 0.002;

/**
 * The room in which the box can be turned from one hold to the other on the spot, or null where they are one hold. It turns about
 * one level edge at a time, from one level way to the next; of the orders in which that can be done the one that needs least height
 * is taken, and of those the one with least floor.
 * Enough, not needed: a cleverer turn may do with less.
 */
export function changeRoom(box: Carried, from: Hold, to: Hold): ChangeRoom | null {
  const a = holdArc(box, from);
  const b = holdArc(box, to);
  const sameArc = a.from === b.from && a.to === b.to;
  if (sameArc && Math.abs(a.turn - b.turn) < SAME) return null;
  const ways: ChangeRoom[] = sameArc ? [swept(a, a.turn, b.turn)] : [];
  for (const [start, startTurn] of ends(a)) {
    for (const [goal, goalTurn] of ends(b)) {
      const rooms = [swept(a, a.turn, startTurn), swept(b, goalTurn, b.turn)];
      if (start !== goal) rooms.push(sweptBetween(box, start, goal));
      ways.push(rooms.reduce(larger));
    }
  }
  const best = ways.reduce((x, y) => (takesLess(y, x) ? y : x));
  const still = Math.abs(a.turn - nearestEnd(a.turn)) < SAME && Math.abs(b.turn - nearestEnd(b.turn)) < SAME;
  return still && levelName(a) === levelName(b) ? null : best;
}

function ends(arc: HoldArc): readonly (readonly [HoldName, number])[] {
  return [
    [arc.from, 0],
    [arc.to, QUARTER],
  ];
}

function nearestEnd(turn: number): number {
  return turn < QUARTER / 2 ? 0 : QUARTER;
}

function levelName(arc: HoldArc): HoldName {
  return nearestEnd(arc.turn) === 0 ? arc.from : arc.to;
}

/** What turning from one turn of an arc to another sweeps: height along sin + up cos, length in plan along cos + up sin, each greatest where the diagonal passes. */
function swept(arc: Pick<HoldArc, 'along' | 'up' | 'across'>, turn1: number, turn2: number): ChangeRoom {
  const { along, up, across } = arc;
  const least = Math.min(turn1, turn2);
  const most = Math.max(turn1, turn2);
  const within = (turn: number): number => Math.min(most, Math.max(least, turn));
  const tallest = within(Math.atan2(along, up));
  const longest = within(Math.atan2(up, along));
  const length = along * Math.cos(longest) + up * Math.sin(longest);
  return {
    height: along * Math.sin(tallest) + up * Math.cos(tallest),
    floor: Math.hypot(length, across),
  };
}

/** A quarter turn between two level ways, about the edge that stays level in both. */
function sweptBetween({ l, w, h }: Carried, a: HoldName, b: HoldName): ChangeRoom {
  const stays = a !== 'on-end' && b !== 'on-end' ? l : a !== 'on-edge' && b !== 'on-edge' ? w : h;
  const [along, up] = stays === l ? [w, h] : stays === w ? [l, h] : [l, w];
  return swept({ along, up, across: stays }, 0, QUARTER);
}

/** Heights that differ by rounding only are one. */
function takesLess(a: ChangeRoom, b: ChangeRoom): boolean {
  const rise = inSteps(a.height, SAME_LENGTH) - inSteps(b.height, SAME_LENGTH);
  return rise < 0 || (rise === 0 && a.floor < b.floor);
}

function larger(a: ChangeRoom, b: ChangeRoom): ChangeRoom {
  return { height: Math.max(a.height, b.height), floor: Math.max(a.floor, b.floor) };
}
