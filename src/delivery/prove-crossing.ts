import type { Carried } from './carried.js';
import { type CrossOptions, crossPassage } from './cross-passage.js';
import type { Crossing } from './crossing.js';
import type { Motion } from './motion.js';
import type { Passage } from './passages.js';
import { replayPassage } from './replay.js';

/** A crossing whose motion was replayed: without one that holds, nothing is claimed to pass. */
export interface ProvedCrossing extends Crossing {
  /** No point of the box comes nearer to anything, mm; null where there is no motion through the passage as given. */
  readonly replayed: number | null;
}

/** Crosses a passage with a box. */
export type Cross = (passage: Passage, box: Carried) => ProvedCrossing;

/** Motions that come this near, mm, are not told from motions that touch: they prove nothing. */
const TOUCHES = 1e-6;

/** Crosses passages and replays what is found; alike boxes in one passage are reckoned once, since slates come in threes and fives. */
export function provedCross(options: CrossOptions): Cross {
  const known = new Map<Passage, Map<string, ProvedCrossing>>();
  return (passage, box) => {
    const ofPassage = known.get(passage) ?? new Map<string, ProvedCrossing>();
    known.set(passage, ofPassage);
    const key = JSON.stringify([box.l, box.w, box.h, box.held, box.tilt]);
    const found = ofPassage.get(key) ?? prove(passage, crossPassage(passage, box, options));
    ofPassage.set(key, found);
    return found;
  };
}

function prove(passage: Passage, crossing: Crossing): ProvedCrossing {
  if (crossing.atLeast < 0) return { ...crossing, motion: null, replayed: null };
  const replayed = crossing.motion === null ? null : replayThrough(passage, crossing.motion);
  if (replayed !== null) return { ...crossing, replayed };
  return { ...crossing, atLeast: Number.NEGATIVE_INFINITY, motion: null, replayed };
}

/** How near the motion comes to anything, mm; null where it touches, or does not lead from the near side to the far side. */
function replayThrough(passage: Passage, motion: Motion): number | null {
  const { clearance, startsNear, endsFar } = replayPassage(passage, motion);
  return clearance > TOUCHES && startsNear && endsFar ? clearance : null;
}
