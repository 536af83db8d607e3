import type { CompareInput } from '../compare-tables.js';
import type { TableSpec } from '../equipment/equipment-types.js';
import type { FitInput } from '../fit-input.js';
import type { InputError, InputProblem } from '../input-error.js';
import type { TableComparison } from '../report/comparison.js';
import type { DescribeOptions } from '../report/describe-fit.js';
import type { FitReport } from '../report/fit-report.js';
import type { TapeSurvey } from '../room/tape-input.js';
import type { TapedRoom } from '../room/tape-report.js';

/** What the program touches of the world outside, so that a test can stand in for it. */
export interface CliIo {
  /** The bytes of a file; rejects with an error that has a `code`, as Node's does. */
  readonly readFile: (path: string) => Promise<Uint8Array>;
  /** Writes a file, over one that is there; rejects like `readFile`. */
  readonly writeFile: (path: string, text: string) => Promise<void>;
  readonly readStdin: () => Promise<Uint8Array>;
  /** Whether a person sits before standard input or standard error. */
  readonly stdinIsTty: boolean;
  readonly stderrIsTty: boolean;
  readonly writeOut: (text: string) => void;
  readonly writeError: (text: string) => void;
  readonly version: () => Promise<string>;
  /** Print the stack of an unexpected error. */
  readonly debug: boolean;
}

/** The part of the library that the program calls. */
export interface Library {
  readonly assessFit: (input: FitInput) => FitReport;
  readonly compareTables: (question: CompareInput) => TableComparison;
  readonly checkFitInput: (input: unknown) => readonly InputProblem[];
  readonly roomFromTape: (survey: TapeSurvey) => TapedRoom;
  readonly describeTapedRoom: (room: TapedRoom, options?: DescribeOptions) => string;
  readonly renderPlan: (input: FitInput, report: FitReport) => string;
  readonly describeFit: (report: FitReport, options?: DescribeOptions) => string;
  readonly describeComparison: (comparison: TableComparison, options?: DescribeOptions) => string;
  /** The class of the library's own errors of bad input. */
  readonly InputError: typeof InputError;
  /** The catalogue. */
  readonly tables: readonly TableSpec[];
}

/** How the program ends. */
export const EXIT = {
  /** The table can stand in the room (clear, tight or partial), or some table of a comparison can. */
  fits: 0,
  /** It cannot stand there (none), a piece of it does not go in, or no table of a comparison can stand. */
  noFit: 1,
  /** The input or the command line is wrong. */
  badInput: 2,
  /** An error of the program itself (EX_SOFTWARE of sysexits.h). */
  internal: 70,
} as const;
