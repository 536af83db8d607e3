import { type Ask, type DeliveryQuestion, leastWhole, type Miss, passes } from './advise-delivery-asking.js';
import { type Carried, carriedWith, type Hold } from './carried.js';
import type { Crossing } from './crossing.js';
import type { HoldName } from './delivery-input.js';
import type { DeliveryAdvice } from './delivery-report.js';
import { narrowPassage } from './narrow-passage.js';
import type { Gate, Passage, Space } from './passages.js';

/** More than this, mm, cannot be had by taking off linings, skirtings and handrails. */
const MOST_WIDENING = 100;
/** Steps of a bisection where a formula answers. */
const HALVINGS = 8;
const HOLDS: readonly HoldName[] = ['on-edge', 'on-end', 'flat'];
const DEGREE = Math.PI / 180;
/** With every hold allowed, so far is every tilt from one of them (less the noise of the arithmetic). */
const EVERY_TILT = 45 * DEGREE - 1e-9;
/**
 * Where this many times the hand room is missing, the bare piece is not asked for: hand room r lies within r sqrt 3 of the piece on both sides,
 * 3.5 r in all, and steep headroom, measured upright, asks for up to four times that.
 */
const HAND_ROOM_GAIN = 14;

type Change = (
  miss: Miss,
  handRoom: number,
  ask: Ask,
) => Omit<DeliveryAdvice, 'passage' | 'piece' | 'outcome'> | null;

/** One change to the passage, the piece or the hand room, with the miss that it turns into a pass. */
export interface Help {
  readonly miss: Miss;
  readonly advice: DeliveryAdvice;
}

/** What `change` does for each of the misses where it does anything. */
export function tryChange(
  change: Change,
  misses: readonly Miss[],
  handRoom: number,
  ask: Ask,
): readonly Help[] {
  return misses.flatMap((miss) => {
    const found = change(miss, handRoom, ask);
    if (found === null) return [];
    const { index, piece } = miss;
    return [{ miss, advice: { ...found, passage: index, piece: piece.name, outcome: 'passes' } as const }];
  });
}

export const takeDoorOff: Change = ({ index, passage, piece, crossing }, handRoom, ask) => {
  if (passage.kind !== 'doorway' || !(passage.leaf > 0) || lacksMore(crossing, passage.leaf)) return null;
  const bare = withoutLeaf({ ...passage, kind: 'doorway' });
  return passes(ask(index, bare, carriedWith(piece, handRoom)))
    ? { kind: 'take-door-off', amount: passage.leaf }
    : null;
};

/** Known to lack more than so much, mm. Where no hold fits at all there may be no figure. */
function lacksMore({ atMost }: Crossing, mm: number): boolean {
  return Number.isFinite(atMost) && -atMost > mm;
}

/**
 * The doorway with its leaf off the hinges. Which side it hangs on is not known, so that the floor beside the opening counts from
 * the wider opening's edge on both.
 */
function withoutLeaf(gate: Gate): Gate {
  const { leaf, before, after } = gate;
  const beside = (space: Space): Space => ({
    ...space,
    left: Math.max(0, space.left - leaf),
    right: Math.max(0, space.right - leaf),
  });
  return { ...gate, width: gate.width + leaf, leaf: 0, before: beside(before), after: beside(after) };
}

/** A hold that is not allowed or, where none of them helps, a tilt further out of those that are. */
export const allowHold: Change = (miss, handRoom, ask) => {
  const { index, passage, piece, crossing } = miss;
  const box = carriedWith(piece, handRoom);
  if (crossing.atMostAnyMotion < 0) return null;
  const missing = HOLDS.filter((hold) => !box.held.includes(hold));
  if (missing.length === 0 && box.tilt >= EVERY_TILT) return null;
  // What fails with every hold and every tilt fails with one more.
  if (!passes(ask(index, passage, { ...box, held: HOLDS, tilt: Math.PI / 2 }))) return null;
  const hold = missing.find((one) => passes(ask(index, passage, { ...box, held: [...box.held, one] })));
  if (hold !== undefined) return { kind: 'allow-hold', hold };
  const tilt = leastTilt(miss, box, ask);
  return tilt === null ? null : { kind: 'allow-hold', tilt };
};

/** Whole degrees by which the box must be allowed to tilt; null where no tilt helps. */
function leastTilt({ index, passage, quick }: Miss, box: Carried, ask: Ask): number | null {
  const allowed = Math.floor(box.tilt / DEGREE);
  const tilted = (degrees: number) => ask(index, passage, { ...box, tilt: degrees * DEGREE });
  if (allowed >= 90) return null;
  const most = tilted(90);
  if (most === null || !passes(most)) return null;
  const used = most.hold === null ? 90 : Math.ceil(tiltOutOf(box, most.hold) / DEGREE - 1e-9);
  const enough = used > allowed && used < 90 && passes(tilted(used)) ? used : 90;
  return leastWhole(allowed, enough, quick ? HALVINGS : 0, (degrees) => passes(tilted(degrees)));
}

/** How far a hold is tilted out of the nearest of the box's own, radians; a right angle where it comes from none of them. */
function tiltOutOf(box: Carried, hold: Hold): number {
  const upright = { flat: box.h, 'on-edge': box.w, 'on-end': box.l };
  const tilts = box.held.flatMap((name) => [
    ...(upright[name] === hold.up ? [hold.tilt] : []),
    ...(upright[name] === hold.along ? [Math.PI / 2 - hold.tilt] : []),
  ]);
  return Math.min(Math.PI / 2, ...tilts);
}

/** The most hand room in whole mm with which the piece passes; 0: the bare piece does. */
export const lessHandRoom: Change = ({ index, passage, piece, crossing, quick }, handRoom, ask) => {
  if (!(handRoom > 0) || lacksMore(crossing, HAND_ROOM_GAIN * Math.ceil(handRoom))) return null;
  const given = Math.ceil(handRoom);
  // Counted in mm that are given up, so that the least number is the best.
  const without = (less: number): boolean => passes(ask(index, passage, carriedWith(piece, given - less)));
  if (!without(given)) return null;
  const less = leastWhole(0, given, quick ? HALVINGS : 2, without);
  return { kind: 'less-hand-room', amount: given - less };
};

/** By how many whole mm every clear measure of the passage would have to be larger; found by steps where no motion is known. */
export const widen: Change = ({ index, passage, piece, crossing, quick }, handRoom, ask) => {
  const box = carriedWith(piece, handRoom);
  if (lacksMore(crossing, MOST_WIDENING)) return null;
  const { atLeast, atMost } = crossing;
  const wider = (more: number): boolean => passes(ask(index, narrowPassage(passage, -more), box));
  // Where no hold fits under the ceiling there may be no figure at all.
  const short = Number.isFinite(atMost) ? Math.max(0, Math.ceil(-atMost) - 1) : 0;
  // A bracket's end holds to a tenth of a millimetre: a whole one more may be needed.
  const known = Math.max(1, Math.ceil(-atLeast));
  const tried = Number.isFinite(atLeast) ? [known, known + 1] : stepsFrom(short, quick);
  const enough = tried.find((more) => more <= MOST_WIDENING && wider(more));
  if (enough === undefined) return null;
  const fails = Number.isFinite(atLeast) ? enough - 1 : (tried[tried.indexOf(enough) - 1] ?? short);
  return { kind: 'widen', amount: leastWhole(fails, enough, quick ? HALVINGS : 0, wider) };
};

function stepsFrom(short: number, quick: boolean): readonly number[] {
  const steps = (quick ? [8, 16, 32, 64] : [MOST_WIDENING / 2]).map((step) => short + step);
  return [...steps, MOST_WIDENING];
}

/** The first other set of which every piece passes everything. */
export function otherPieces(
  { route, otherSets, handRoom }: DeliveryQuestion,
  misses: readonly Miss[],
  ask: Ask,
): readonly DeliveryAdvice[] {
  const indexed: readonly (readonly [number, Passage])[] = [...route.entries()];
  const stuck = new Set(misses.map(({ index }) => index));
  // Where the present pieces stick, other ones are most likely to stick as well.
  const hardFirst = [
    ...indexed.filter(([index]) => stuck.has(index)),
    ...indexed.filter(([index]) => !stuck.has(index)),
  ];
  const set = otherSets.find(({ pieces }) =>
    hardFirst.every(([index, passage]) =>
      pieces.every((piece) => passes(ask(index, passage, carriedWith(piece, handRoom)))),
    ),
  );
  return set === undefined ? [] : [{ kind: 'other-pieces', pieces: set.name, outcome: 'passes' }];
}
