import type { SearchProgress } from '../fit-input.js';
import { type SentenceUnits, sayLength } from '../report/sentences.js';
import { NO_BREAK } from '../report/wrap.js';

/** A line on the terminal that tells how far a long search has come. */
export interface ProgressLine {
  readonly onProgress: (progress: SearchProgress) => boolean | undefined;
  /** Takes the line away again. */
  readonly clear: () => void;
}

/** Searches that end sooner than this many boxes show nothing. */
const QUIET = 5_000;
const STEP = 2_500;

/** `write` goes to a terminal. The line is written over itself. */
export function progressLine(write: (text: string) => void, units: SentenceUnits): ProgressLine {
  let next = QUIET;
  let shown = false;
  let last = 0;
  return {
    onProgress: ({ value, upperBound, boxes }) => {
      // A new search counts from the start again.
      if (boxes < last) next = QUIET;
      last = boxes;
      if (boxes < next) return undefined;
      next = boxes + STEP;
      shown = true;
      const found =
        value > 0 ? `${sayLength(value, units, 'down')} of clearance found` : 'no place found yet';
      const line = `Searching: ${boxes} boxes, ${found}, at most ${sayLength(upperBound, units, 'up')} possible`;
      write(`\r${line.replaceAll(NO_BREAK, ' ')}\u001b[K`);
      return undefined;
    },
    clear: () => {
      if (shown) write('\r\u001b[K');
      shown = false;
    },
  };
}
