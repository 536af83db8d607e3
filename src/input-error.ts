/** One defect of an input: where it is, a stable code, and words that a customer can act on. */
export interface InputProblem {
  /** Path into the input, such as `room.obstacles[2].footprint[5]`. Empty for the input as a whole. */
  readonly path: string;
  /** Stable code, such as `outline-crosses-itself`. New codes may be added in a minor version. */
  readonly code: string;
  /** A sentence that says what is wrong and what to do about it. */
  readonly message: string;
}

/**
 * Thrown for bad input. Lists every problem that was found, not only the first; the message is the problems' own
 * sentences, one a line. Nothing is repaired or dropped in silence.
 */
export class InputError extends Error {
  readonly problems: readonly InputProblem[];

  constructor(problems: readonly InputProblem[]) {
    super(summarizeProblems(problems));
    this.name = 'InputError';
    this.problems = problems;
  }
}

/** The problems as text, one a line, each with its path. The command line and `InputError` show the same text. */
export function summarizeProblems(problems: readonly InputProblem[]): string {
  return problems.map((p) => (p.path === '' ? p.message : `${p.path}: ${p.message}`)).join('\n');
}
