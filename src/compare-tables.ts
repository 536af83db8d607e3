import type { ArrangementInput, FurnishingInput } from './arrangement/furnishing-input.js';
import { assessQuestion } from './assess-fit.js';
import { readFitInput } from './check-fit-input.js';
import type { CueInput, TableInput } from './equipment/equipment-types.js';
import { TABLES } from './equipment/tables.js';
import type { SearchOptions } from './fit-input.js';
import type { FitQuestion } from './fit-question.js';
import { InputError } from './input-error.js';
import type { Length } from './length/length.js';
import { ProblemList, readGuarded, readObject } from './length/read-input.js';
import type { ComparisonRow, TableComparison } from './report/comparison.js';
import { surveyNote } from './report/survey-note.js';
import { readList } from './room/read-corners.js';
import type { RoomInput } from './room/room-input.js';
import type { TapedRoomInput } from './room/tape-room.js';
import type { StrokeInput } from './stroke/stroke-settings.js';

/** Which tables take which cues in one room. */
export interface CompareInput {
  readonly room: RoomInput | TapedRoomInput;
  /** Ids from `TABLES`, or measurements; default: the whole catalogue. */
  readonly tables?: readonly (string | TableInput)[];
  /** Default: the usual cue of each table's game. */
  readonly cues?: readonly (Length | CueInput)[];
  readonly stroke?: Partial<StrokeInput>;
  readonly search?: SearchOptions;
  /** Other pieces that are to stand in the room beside each of the tables. */
  readonly furnishings?: readonly FurnishingInput[];
  readonly arrangement?: ArrangementInput;
}

/**
 * One row a table, in the order asked for: the best place, its clearance, and what each cue can do there.
 *
 * @throws InputError for bad input; problems of a table carry its place in `tables`.
 */
export function compareTables(input: CompareInput): TableComparison {
  const problems = new ProblemList();
  const questions = readGuarded([input], problems, () => readQuestions(input, problems));
  if (questions === null || problems.problems.length > 0) throw new InputError(problems.problems);
  const rows = questions.map((question): ComparisonRow => {
    const { table, pose, clearance, cues, arrangement } = assessQuestion(question);
    const row = {
      table,
      pose,
      clearance,
      cues: cues.map(({ name, length, verdict, certain, shares, shareError }) => ({
        name,
        length,
        verdict,
        certain,
        shares,
        shareError,
      })),
      longestCue: pose === null ? 0 : clearance.longestCue,
    };
    if (arrangement === undefined) return row;
    const { pieces } = arrangement;
    return { ...row, pieces: { asked: pieces.length, placed: pieces.filter(({ fits }) => fits).length } };
  });
  const [{ survey }] = questions;
  const comparison: TableComparison = { schema: 'elbowroom/comparison@1', rows };
  return survey === null
    ? comparison
    : { ...comparison, confidence: survey.confidence, survey: surveyNote(survey) };
}

/** More tables than this are no comparison. */
const MOST_TABLES = 1000;

/** One checked question a table, or null with every problem. */
function readQuestions(input: unknown, problems: ProblemList): readonly FitQuestion[] | null {
  const fields = readObject(
    input,
    '',
    ['room', 'tables', 'cues', 'stroke', 'search', 'furnishings', 'arrangement'],
    problems,
  );
  if (fields === null) return null;
  const { tables: given = Object.keys(TABLES), ...rest }: Record<string, unknown> =
    Object.fromEntries(fields);
  const tables = readList(given, 'tables', 'tables', MOST_TABLES, problems);
  if (tables === null) return null;
  if (tables.length === 0)
    return problems.add('tables', 'no-tables', 'The list of tables is empty; name at least one.');
  const known = new Set<string>();
  return tables.flatMap((table, i) => {
    const found = new ProblemList();
    const question = readFitInput({ ...rest, table }, found);
    for (const p of found.problems) {
      const path = p.path.replace(/^table(?=$|[.[])/, `tables[${i}]`);
      // What is wrong with the room or the cues is wrong for every table alike.
      const key = `${path} ${p.code}`;
      if (known.has(key)) continue;
      known.add(key);
      problems.add(path, p.code, p.message);
    }
    return question === null ? [] : [question];
  });
}
