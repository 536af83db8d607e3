import { readCue, readCues } from '../equipment/check-cue.js';
import type { CueInput, CueSpec, TableSpec } from '../equipment/equipment-types.js';
import { InputError } from '../input-error.js';
import type { Length } from '../length/length.js';
import { ProblemList, readGuarded } from '../length/read-input.js';
import { readStroke } from './read-stroke.js';
import type { StrokeInput, StrokeSettings } from './stroke-settings.js';

/**
 * How a stroke is played as the parts of the library take it: mm and radians, every default filled in. `ballDiameter`, mm, is the
 * table's.
 *
 * @throws InputError with every problem.
 */
export function checkStroke(stroke: Partial<StrokeInput> | undefined, ballDiameter: number): StrokeSettings {
  return checked(stroke, (problems) => readStroke(stroke, 'stroke', ballDiameter / 2, problems, []));
}

/**
 * A cue as the parts of the library take it, mm; left out, it is the usual one of the table.
 *
 * @throws InputError with every problem.
 */
export function checkCue(cue: Length | CueInput | undefined, table: TableSpec): CueSpec {
  return checked(cue, (problems) =>
    cue === undefined
      ? (readCues(undefined, 'cue', table, problems, [])?.[0] ?? null)
      : readCue(cue, 'cue', problems, table.ballDiameter),
  );
}

function checked<T>(given: unknown, read: (problems: ProblemList) => T | null): T {
  const problems = new ProblemList();
  const value = readGuarded([given], problems, () => read(problems));
  if (value === null || problems.problems.length > 0) throw new InputError(problems.problems);
  return value;
}
