import { assessQuestion } from './assess-fit.js';
import { fitQuestion } from './check-fit-input.js';
import type { CueInput, TableInput } from './equipment/equipment-types.js';
import { TABLES } from './equipment/tables.js';
import type { FitInput, SearchOptions } from './fit-input.js';
import { InputError, type InputProblem } from './input-error.js';
import type { Length } from './length/length.js';
import type { ComparisonRow, TableComparison } from './report/comparison.js';
import { surveyNote } from './report/survey-note.js';
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
}

/**
 * One row a table, in the order asked for: the best place, its clearance, and what each cue can do there.
 *
 * @throws InputError for bad input; problems of a table carry its place in `tables`.
 */
export function compareTables(input: CompareInput): TableComparison {
  const { tables = Object.keys(TABLES), ...rest } = input;
  const problems: InputProblem[] = [];
  const questions = tables.flatMap((table, i) => {
    try {
      const asked: FitInput = { ...rest, table };
      return [fitQuestion(asked)];
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      for (const p of error.problems) {
        const path = p.path.replace(/^table(?=$|[.[])/, `tables[${i}]`);
        // What is wrong with the room or the cues is wrong for every table alike.
        if (!problems.some((known) => known.path === path && known.code === p.code))
          problems.push({ ...p, path });
      }
      return [];
    }
  });
  if (problems.length > 0) throw new InputError(problems);
  if (questions.length === 0) {
    throw new InputError([
      { path: 'tables', code: 'no-tables', message: 'The list of tables is empty; name at least one.' },
    ]);
  }
  const rows = questions.map((question): ComparisonRow => {
    const { table, pose, clearance, cues } = assessQuestion(question);
    return {
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
  });
  const [{ survey }] = questions;
  const comparison: TableComparison = { schema: 'elbowroom/comparison@1', rows };
  return survey === null
    ? comparison
    : { ...comparison, confidence: survey.confidence, survey: surveyNote(survey) };
}
