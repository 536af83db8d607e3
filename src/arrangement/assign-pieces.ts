import { type Bits, hasBit, keepBits, listBits } from './bits.js';
import type { Weigher } from './weigher.js';

/** Candidate of each movable piece; -1: it has no place. */
export type Choice = readonly number[];

/** Gains smaller than this are none. */
const GAIN = 1e-9;
/** Rounds of improvement. */
const MOST_ROUNDS = 6;

/** A choice and its estimated value. */
export interface Chosen {
  readonly choice: Choice;
  readonly value: number;
}

/**
 * Places for the movable pieces with the table at the weigher's place: the pieces one after another at the best place that is left, the bulkiest
 * first, then over and over one piece, or two together where `pairs`, taken out and put back at the best places.
 */
export function assignPieces(weigher: Weigher, start: Choice | null, pairs: boolean): Chosen {
  const solo = soloOrder(weigher);
  const first = start === null ? construct(weigher, solo) : weighed(weigher, start.slice());
  return improve(weigher, first, solo, pairs);
}

/** Takes out and puts back until nothing gains. */
export function improve(weigher: Weigher, from: Chosen, solo: SoloOrder, pairs: boolean): Chosen {
  let best = from;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const before = best.value;
    for (let i = 0; i < best.choice.length; i++) best = better(best, reinsert(weigher, best, [i], solo));
    if (pairs && best.value <= before + GAIN) {
      for (let i = 0; i < best.choice.length; i++) {
        for (let j = 0; j < i; j++) best = better(best, reinsert(weigher, best, [i, j], solo));
      }
    }
    if (best.value <= before + GAIN) break;
  }
  return best;
}

/** Candidates of each kind that keep off the table, those with which most play is left first. */
export type SoloOrder = readonly (readonly number[])[];

export function soloOrder(weigher: Weigher): SoloOrder {
  const { pool } = weigher.room;
  weigher.update();
  weigher.load([]);
  return pool.kinds.map((_, kind) => {
    const list = listBits(common([weigher.allowed, pool.ofKind(kind)]));
    const bound = new Map(list.map((k) => [k, weigher.boundWith(k)]));
    const of = (k: number): number => bound.get(k) ?? 0;
    return list.sort((a, b) => of(b) - of(a) || a - b);
  });
}

/** One after another, those with the fewest candidates first, and among these the bulkiest. */
function construct(weigher: Weigher, solo: SoloOrder): Chosen {
  const { pool, kinds } = weigher.room;
  const bulk = pool.kinds.map(
    ({ length, width, zones }) =>
      length * width + Math.max(0, ...zones.map((z) => (z.front + z.back) * length)),
  );
  const order = kinds.map((_, i) => i);
  order.sort(
    (a, b) => solo[kinds[a]].length - solo[kinds[b]].length || bulk[kinds[b]] - bulk[kinds[a]] || a - b,
  );
  let best = weighed(
    weigher,
    kinds.map(() => -1),
  );
  for (const i of order) best = better(best, reinsert(weigher, best, [i], solo));
  return best;
}

function weighed(weigher: Weigher, choice: Choice): Chosen {
  weigher.load(choice.filter((k) => k >= 0));
  return { choice, value: weigher.weigh() };
}

function better(a: Chosen, b: Chosen | null): Chosen {
  return b !== null && b.value > a.value + GAIN ? b : a;
}

/**
 * Takes out the pieces `out` (one or two) and finds the best places for them, the rest staying; null: there are none that gain. The best of all
 * candidates: what cannot beat the best known is left out by its bound.
 */
function reinsert(weigher: Weigher, from: Chosen, out: readonly number[], solo: SoloOrder): Chosen | null {
  const { pool, kinds } = weigher.room;
  const rest = from.choice.filter((k, i) => k >= 0 && !out.includes(i));
  weigher.load(rest);
  // Nothing that goes in can make up for more than what the pieces cost beside their own worth.
  if (weigher.boundWithout(out.length) <= from.value + GAIN) return null;
  const share = weigher.worthOfPiece();
  const allowed = common([weigher.allowed, ...rest.map((k) => pool.together(k))]);
  const [i, j] = out;
  let found: Chosen | null = null;
  let best = from.value;
  const take = (a: number, b: number): void => {
    const value = weigher.weigh();
    if (value <= best + GAIN) return;
    best = value;
    const choice = from.choice.slice();
    choice[i] = a;
    if (j !== undefined) choice[j] = b;
    found = { choice, value };
  };
  const firsts = ranked(weigher, solo[kinds[i]], allowed, best - (out.length - 1) * share);
  if (j === undefined) {
    for (const { k, score } of firsts) {
      if (score <= best + GAIN) break;
      weigher.push(k);
      take(k, -1);
      weigher.pop();
    }
    return found;
  }
  const seconds = ranked(weigher, solo[kinds[j]], allowed, best - share);
  for (const a of firsts) {
    if (a.score + share <= best + GAIN) break;
    weigher.push(a.k);
    const lost = a.score - weigher.weigh();
    if (a.score > best + GAIN) take(a.k, -1);
    if (a.score + share - lost <= best + GAIN) {
      weigher.pop();
      continue;
    }
    const row = pool.together(a.k);
    for (const b of seconds) {
      if (b.score + share - Math.max(0, b.lost) <= best + GAIN) {
        if (b.lost > 0) continue;
        break;
      }
      if (!hasBit(row, b.k) || weigher.boundWith(b.k) <= best + GAIN) continue;
      weigher.push(b.k);
      const score = weigher.score();
      if (score - lost > best + GAIN) {
        if (b.lost < 0) {
          weigher.load([...rest, b.k]);
          b.lost = Math.max(0, b.score - weigher.weigh());
          weigher.load([...rest, a.k, b.k]);
        }
        if (score - b.lost > best + GAIN) take(a.k, b.k);
      }
      weigher.pop();
    }
    weigher.pop();
  }
  return found;
}

/** A candidate beside what is in. */
interface Ranked {
  readonly k: number;
  readonly score: number;
  /** What ways that are cut off with it cost, whatever else goes in: more things never open a way. Negative: not asked yet. */
  lost: number;
}

/** The allowed ones of some candidates that are worth more than `least` beside what is in, best first. */
function ranked(weigher: Weigher, list: readonly number[], allowed: Bits, least: number): Ranked[] {
  const found: Ranked[] = [];
  for (const k of list) {
    if (!hasBit(allowed, k) || weigher.boundWith(k) <= least + GAIN) continue;
    weigher.push(k);
    const score = weigher.score();
    weigher.pop();
    if (score > least + GAIN) found.push({ k, score, lost: -1 });
  }
  return found.sort((a, b) => b.score - a.score || a.k - b.k);
}

function common(sets: readonly Bits[]): Bits {
  const bits = sets[0].slice();
  for (const set of sets) keepBits(bits, set);
  return bits;
}
