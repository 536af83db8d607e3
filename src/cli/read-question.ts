import type { FitInput, SearchProgress } from '../fit-input.js';
import type { InputProblem } from '../input-error.js';
import { findJsonProblem } from './json-problem.js';
import type { Flags } from './read-flags.js';

/** What the file and the flags ask, not yet checked. */
export interface RawQuestion {
  /** Shaped like a `FitInput` if nothing is wrong. */
  readonly input: Readonly<Record<string, unknown>>;
  /** Where in the input the file's own contents are, if it held a room or a survey alone: paths into the file begin without it. */
  readonly bare: '' | 'room' | 'room.tape';
  /** True: the file held a survey alone and nothing is asked but what room it makes; the table in the input is made up. */
  readonly surveyOnly: boolean;
}

export type QuestionRead =
  | { readonly ok: true; readonly question: RawQuestion }
  | { readonly ok: false; readonly message: string };

/**
 * Reads the JSON of a survey, of a room or of a whole question; the flags go before what it says. `source` is its name in
 * messages, `standIn` a table for where none is asked about.
 */
export function readQuestion(
  text: string,
  source: string,
  flags: Flags,
  standIn: string | null,
): QuestionRead {
  const wrong = findJsonProblem(text);
  if (wrong !== null) {
    const where = `line ${wrong.line}, column ${wrong.column}`;
    return { ok: false, message: `${source} is not JSON. ${upperFirst(where)}: ${wrong.message}` };
  }
  const value: unknown = JSON.parse(text);
  if (!isObject(value)) {
    return {
      ok: false,
      message: `${source} holds ${inWords(value)}; it should hold an object with a room in it.`,
    };
  }
  const bare = bareOf(value);
  const asked = bare === '' ? value : { room: bare === 'room' ? value : { tape: value } };
  const noTable = bare !== '' && flags.tables.length === 0 && !flags.compare;
  const surveyOnly =
    noTable && bare === 'room.tape' && flags.cues.length === 0 && !flags.shots && flags.svg === null;
  if (noTable && !surveyOnly) {
    const what = bare === 'room' ? 'a room' : 'the readings of a room';
    return {
      ok: false,
      message: `${source} holds ${what} and no table. Add --table and an id from the list that --tables prints, or --compare.`,
    };
  }
  const [table] = flags.tables;
  const input = {
    ...asked,
    ...(table === undefined ? {} : { table }),
    ...(surveyOnly ? { table: standIn } : {}),
    ...(flags.cues.length === 0 ? {} : { cues: flags.cues }),
    ...(flags.shots ? { detail: 'shots' } : {}),
  };
  return { ok: true, question: { input, bare, surveyOnly } };
}

/** What the file holds alone, by where that goes in a whole question. */
function bareOf(value: Readonly<Record<string, unknown>>): RawQuestion['bare'] {
  if (Object.hasOwn(value, 'room')) return '';
  if (Object.hasOwn(value, 'outline') || Object.hasOwn(value, 'tape')) return 'room';
  return Object.hasOwn(value, 'walls') ? 'room.tape' : '';
}

/** The input with a watcher of its search. */
export function watched(
  input: FitInput,
  onProgress: (progress: SearchProgress) => boolean | undefined,
): FitInput {
  return { ...input, search: { ...input.search, onProgress } };
}

/** The problems with paths that lead into the file or to the flag, whichever the trouble came from. */
export function pathsAsGiven(
  problems: readonly InputProblem[],
  question: RawQuestion,
  flags: Flags,
): readonly InputProblem[] {
  return problems.map((problem) => ({ ...problem, path: pathAsGiven(problem.path, question, flags) }));
}

function pathAsGiven(path: string, question: RawQuestion, flags: Flags): string {
  if (path === 'table' && flags.tables.length > 0) return '--table';
  const cue = /^cues\[(\d+)\]/.exec(path);
  if (cue !== null && flags.cues.length > 0) return `--cue ${flags.cues[Number(cue[1])] ?? ''}`;
  const { bare } = question;
  return bare !== '' && path.startsWith(bare) ? path.slice(bare.length).replace(/^\./, '') : path;
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function inWords(value: unknown): string {
  if (Array.isArray(value)) return 'a list';
  if (value === null) return 'null';
  return typeof value === 'string' ? 'a text' : `a ${typeof value}`;
}

function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
