import type { FitInput, FitReport } from 'elbowroom';
import type { ProbeStrings } from './strings.js';

/** The part of the page where one shot, and another cue or stroke, are tried. */
export interface Probe {
  /** Takes up another answer; the shot goes back to the middle of the table where it stands elsewhere. */
  show(input: FitInput, report: FitReport): void;
  /** There is no answer. */
  clear(): void;
}

export function mountProbe(root: HTMLElement, strings: ProbeStrings): Probe {
  return {
    show(_input, report) {
      const heading = document.createElement('h2');
      heading.textContent = strings.heading;
      const words = document.createElement('p');
      words.textContent = report.pose === null ? strings.noPlace : strings.note;
      root.replaceChildren(heading, words);
    },
    clear() {
      root.replaceChildren();
    },
  };
}
