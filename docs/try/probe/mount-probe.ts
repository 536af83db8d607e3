import type { FitInput, FitReport } from 'elbowroom';
import { ProbeSession } from './probe-session.js';
import type { ProbeStrings } from './strings.js';

/** The part of the page where one shot, and another cue or stroke, are tried. It changes nothing outside of its element. */
export interface Probe {
  /** Takes up another answer. Sliders go back to what the input says; the shot stays where it is unless the table stands elsewhere. */
  show(input: FitInput, report: FitReport): void;
  /** There is no answer. */
  clear(): void;
}

export interface ProbeOptions {
  /** Starts the program `refine-worker.ts`, bundled by the page. Without it the finer reckoning is less fine, and done in idle time. */
  readonly startWorker?: () => Worker;
}

export function mountProbe(root: HTMLElement, strings: ProbeStrings, options: ProbeOptions = {}): Probe {
  const session = new ProbeSession(root, strings, options.startWorker ?? null);
  return {
    show: (input, report) => session.show(input, report),
    clear: () => session.clear(),
  };
}
