import { countedAsking, type DeliveryQuestion, type Miss, missesOf } from './advise-delivery-asking.js';
import {
  allowHold,
  type Help,
  lessHandRoom,
  otherPieces,
  takeDoorOff,
  tryChange,
  widen,
} from './advise-delivery-changes.js';
import type { Crossing } from './crossing.js';
import type { DeliveryAdvice, DeliveryOutcome } from './delivery-report.js';

/**
 * What would help, the best first. Each change was made and `cross` asked again: none is advised that was not seen to make the piece pass.
 * `other-way` stands for a passage in which none of them helps, with the outcome of the rest of the way (`widen` does not count as help, since
 * walls seldom move), and `measure-again` for readings that could change an outcome if they are off by their tolerance, with the outcome that
 * they could change it to. Where every piece passes there can be nothing but `measure-again`, and nothing is asked. `cross` is called
 * at most 120 times, at most 6 of them where no formula decides.
 */
export function adviseDelivery(question: DeliveryQuestion): readonly DeliveryAdvice[] {
  const again = measureAgain(question);
  const misses = missesOf(question);
  if (misses.length === 0) return again;
  const ask = countedAsking(question);
  const changed = [takeDoorOff, lessHandRoom, allowHold].flatMap((change) =>
    tryChange(change, misses, question.handRoom, ask),
  );
  const sets = otherPieces(question, misses, ask);
  const stuck = misses.filter((miss) => !changed.some((help) => help.miss === miss));
  const wider = tryChange(widen, stuck, question.handRoom, ask);
  const roundabout = sets.length > 0 ? [] : otherWay(question, stuck);
  const helps = [...changed, ...wider];
  const first = helps.filter((help) => settlesAll(help, helps, misses)).map(({ advice }) => advice);
  const rest = helps.map(({ advice }) => advice).filter((advice) => !first.includes(advice));
  return [...byTrouble([...first, ...sets]), ...byTrouble([...rest, ...roundabout, ...again])];
}

/** Whether the same kind of change to the same passage makes everything pass. */
function settlesAll({ advice }: Help, helps: readonly Help[], misses: readonly Miss[]): boolean {
  return misses.every((miss) =>
    helps.some(
      (help) =>
        help.miss === miss &&
        help.advice.kind === advice.kind &&
        (advice.kind === 'less-hand-room' || help.advice.passage === advice.passage),
    ),
  );
}

/** Kinds of advice, the least trouble first. */
const TROUBLE: readonly DeliveryAdvice['kind'][] = [
  'measure-again',
  'take-door-off',
  'less-hand-room',
  'allow-hold',
  'other-pieces',
  'widen',
  'other-way',
];

function byTrouble(found: readonly DeliveryAdvice[]): readonly DeliveryAdvice[] {
  // To measure again is the least trouble where it could turn a no into a yes, and the least use where it could not.
  const trouble = ({ kind, outcome }: DeliveryAdvice): number =>
    kind === 'measure-again' && outcome !== 'passes' ? TROUBLE.length : TROUBLE.indexOf(kind);
  return [...found].sort((p, q) => trouble(p) - trouble(q));
}

/** Every passage in which something sticks that nothing helps. */
function otherWay({ route, pieces }: DeliveryQuestion, stuck: readonly Miss[]): readonly DeliveryAdvice[] {
  const avoided = new Set(stuck.map(({ index }) => index));
  const rest = pieces.flatMap(({ crossings }) =>
    crossings.filter((_, index) => index < route.length && !avoided.has(index)).map(outcomeOf),
  );
  const outcome = (['blocked', 'undecided'] as const).find((word) => rest.includes(word)) ?? 'passes';
  return [...avoided].map((passage) => ({ kind: 'other-way', passage, outcome }) as const);
}

/** `passes`, `blocked` or `undecided`, as the bounds have it. */
function outcomeOf({ atLeast, atMost }: Crossing): DeliveryOutcome {
  if (atLeast >= 0) return 'passes';
  return atMost < 0 ? 'blocked' : 'undecided';
}

function measureAgain({ route, pieces }: DeliveryQuestion): readonly DeliveryAdvice[] {
  return pieces.flatMap(({ piece, crossings }) =>
    route.flatMap((passage, index): DeliveryAdvice[] => {
      const crossing = crossings[index];
      const outcome = crossing === undefined ? null : otherOutcome(crossing, passage.tolerance);
      return outcome === null ? [] : [{ kind: 'measure-again', passage: index, piece: piece.name, outcome }];
    }),
  );
}

/** The other outcome that readings off by so much could bring; null: none. */
function otherOutcome({ atLeast, atMost }: Crossing, tolerance: number): DeliveryOutcome | null {
  if (atLeast >= tolerance || atMost < -tolerance) return null;
  if (atLeast >= 0) return atMost < tolerance ? 'blocked' : 'undecided';
  if (atLeast >= -tolerance) return 'passes';
  if (atMost < 0) return 'undecided';
  return atMost < tolerance ? 'blocked' : null;
}
