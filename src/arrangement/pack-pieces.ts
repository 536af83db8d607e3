import type { Choice } from './assign-pieces.js';
import { type Bits, countCommon, hasBit, keepBits } from './bits.js';
import type { Weigher } from './weigher.js';

/**
 * Looks for a choice with more pieces than `least` by trying everything, the piece with the fewest places left first, until `nodes` partial choices
 * were looked at. Pieces of one kind take their places in the order of the list, so that no choice is tried twice. Ways are left out of account.
 *
 * @param solo Candidates of each kind in the order in which they are tried.
 * @returns The choice with the most pieces, or null where none has more.
 */
export function packPieces(
  weigher: Weigher,
  solo: readonly (readonly number[])[],
  least: number,
  nodes: number,
): Choice | null {
  const { pool, kinds } = weigher.room;
  const rank: number[] = [];
  for (const list of solo)
    list.forEach((k, i) => {
      rank[k] = i;
    });
  /** How many of each kind are still to be placed. */
  const left = pool.kinds.map((_, kind) => kinds.filter((k) => k === kind).length);
  const taken: number[] = [];
  let best: readonly number[] | null = null;
  let most = least;
  let looked = 0;

  const search = (allowed: Bits, open: number): boolean => {
    looked++;
    if (taken.length > most) {
      most = taken.length;
      best = taken.slice();
      if (most === kinds.length) return true;
    }
    // The kind with the least choice beyond what it needs; none of it can be more than its candidates.
    let next = -1;
    let fewest = Infinity;
    let possible = taken.length;
    left.forEach((count, kind) => {
      if (count === 0) return;
      const choices = countCommon(allowed, pool.ofKind(kind));
      possible += Math.min(count, choices);
      if (choices > 0 && choices - count < fewest) {
        fewest = choices - count;
        next = kind;
      }
    });
    if (next < 0 || possible <= most || open === 0) return false;
    for (const k of solo[next]) {
      if (looked >= nodes) return true;
      if (!hasBit(allowed, k)) continue;
      const rest = allowed.slice();
      keepBits(rest, pool.together(k));
      // Another of this kind goes to a later place only.
      for (const earlier of solo[next]) {
        if (rank[earlier] > rank[k]) break;
        rest[earlier >> 5] &= ~(1 << (earlier & 31));
      }
      left[next]--;
      taken.push(k);
      const done = search(rest, open - 1);
      taken.pop();
      left[next]++;
      if (done) return true;
    }
    // Fewer of this kind, so that the others may all go in.
    const count = left[next];
    left[next] = 0;
    const done = search(allowed, open - count);
    left[next] = count;
    return done;
  };
  search(weigher.allowed.slice(), kinds.length);
  return best === null ? null : choiceOf(best, weigher);
}

function choiceOf(taken: readonly number[], { room: { pool, kinds } }: Weigher): Choice {
  const rest = [...taken];
  return kinds.map((kind) => {
    const at = rest.findIndex((k) => pool.list[k].kind === kind);
    return at < 0 ? -1 : rest.splice(at, 1)[0];
  });
}
