import {
  type ArrangementInput,
  assessFit,
  type CompareInput,
  compareTables,
  type FitInput,
  type FitReport,
  InputError,
  type TableInput,
} from 'elbowroom';
import type { Job, Reply, Step } from './messages.js';

/**
 * The program of the worker: one question after the other. The library does not return before it has an answer, so a question that is
 * not wanted any more is ended from outside, with the worker.
 */

/** Steps are told so often, ms: as fast as one can read them. The first place that is found is told at once. */
const PAUSE = 80;

let told = 0;
let found = false;

self.addEventListener('message', ({ data: job }: MessageEvent<Job>) => {
  found = false;
  try {
    if (job.kind === 'fit') reply({ kind: 'report', report: assess(job.input) });
    else {
      // One by one, so that what is there can be shown.
      for (const table of job.tables) {
        for (const row of compareTables(comparing(job.input, table)).rows) reply({ kind: 'row', row });
      }
      reply({ kind: 'compared' });
    }
  } catch (error) {
    if (error instanceof InputError) reply({ kind: 'refused', problems: error.problems });
    else reply({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
  }
});

function assess(input: FitInput): FitReport {
  const search = {
    ...input.search,
    onProgress: ({ value, upperBound }: { readonly value: number; readonly upperBound: number }) =>
      tell({ kind: 'searching', value, upperBound }),
  };
  const { furnishings, arrangement } = input;
  if (furnishings === undefined || furnishings.length === 0) return assessFit({ ...input, search });
  const effort = arrangement?.effort ?? 0;
  const arranging: ArrangementInput = {
    ...arrangement,
    onProgress: ({ layouts, placed }) => tell({ kind: 'arranging', layouts, effort, placed }),
  };
  return assessFit({ ...input, search, arrangement: arranging });
}

function comparing(input: FitInput, table: string | TableInput): CompareInput {
  const { room, cues, stroke, search, furnishings, arrangement } = input;
  return {
    room,
    tables: [table],
    ...(cues === undefined ? {} : { cues }),
    ...(stroke === undefined ? {} : { stroke }),
    ...(search === undefined ? {} : { search }),
    ...(furnishings === undefined ? {} : { furnishings }),
    ...(arrangement === undefined ? {} : { arrangement }),
  };
}

/** Tells a step, and that the search is to go on. */
function tell(step: Step): true {
  const now = performance.now();
  const first = !found && step.kind === 'searching' && step.value > 0;
  if (first || now - told >= PAUSE) {
    told = now;
    found ||= first;
    reply({ kind: 'step', step });
  }
  return true;
}

function reply(message: Reply): void {
  self.postMessage(message);
}
