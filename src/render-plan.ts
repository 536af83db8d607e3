import { fitQuestion } from './check-fit-input.js';
import type { FitInput } from './fit-input.js';
import type { FitQuestion } from './fit-question.js';
import { InputError } from './input-error.js';
import { ProblemList, readGuarded } from './length/read-input.js';
import type { FitReport } from './report/fit-report.js';
import { drawPlan } from './report/plan/draw-plan.js';
import { type PlanOptions, readPlanOptions } from './report/plan/plan-options.js';

/**
 * The plan of a room with its table as an SVG document, true to scale: walls, doors, obstacles with their heights, the table with the
 * reach of the wanted cue, where strokes are cramped or blocked, what limits it, other pieces with their use zones and the clear ways, with
 * dimensions.
 *
 * `report` is what `assessFit` answered to `input`; its map of shots (`detail: 'shots'`) is drawn on the field where it is there. The
 * same input gives the same bytes. Colours follow CSS variables (`--er-ink`, `--er-paper`, `--er-fine`, `--er-cloth`, `--er-cramped`,
 * `--er-blocked`, `--er-limit`, `--er-zone`, `--er-way`) and the reader's light or dark screen; programs that know no variables get the light ones.
 * Walls are drawn with a thickness that nobody measured; every other line lies where it is, to 0.01 mm.
 *
 * @throws InputError for bad input or options, for a report that answers another question, and for a scale that does not go on
 * the sheet.
 */
export function renderPlan(input: FitInput, report: FitReport, options: PlanOptions = {}): string {
  const question = fitQuestion(input);
  checkReport(report, question);
  const { scene, survey, table, cues, stroke } = question;
  return drawPlan(
    { scene, table, cue: cues[0], stroke, taped: survey !== null },
    report,
    readPlanOptions(options),
  );
}

/** Refuses what is no report, and one of another table, cue or other pieces, which is easily mixed up where several are compared. */
export function checkReport(report: FitReport, { table, cues, arrangement }: FitQuestion): void {
  const refuse = (path: string, code: string, message: string): never => {
    throw new InputError([{ path, code, message }]);
  };
  if (!isReport(report)) refuse('report', 'not-a-report', 'Expected a report as assessFit gives it.');
  const { field, outer } = report.table;
  const same = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;
  if (
    !same(field.length, table.field.length) ||
    !same(field.width, table.field.width) ||
    !same(outer.length, table.outer.length) ||
    !same(outer.width, table.outer.width)
  )
    refuse('report.table', 'another-question', 'The report is of another table than the input.');
  const [wanted] = report.cues;
  if (wanted === undefined || !same(wanted.length, cues[0].length))
    refuse('report.cues', 'another-question', 'The report is for another cue than the first of the input.');
  const pieces = report.arrangement?.pieces ?? [];
  const asked = arrangement?.pieces ?? [];
  if (pieces.length !== asked.length || pieces.some(({ name }, i) => name !== asked[i]?.name))
    refuse('report.arrangement', 'another-question', 'The report is of other pieces than the input.');
}

/** Whether it says so itself: nobody else's object is taken for one. What is looked at may throw, as a proxy does. */
function isReport(report: unknown): boolean {
  const problems = new ProblemList();
  const schema = readGuarded([report], problems, () =>
    typeof report === 'object' && report !== null ? Reflect.get(report, 'schema') : null,
  );
  return schema === 'elbowroom/fit-report@1';
}
