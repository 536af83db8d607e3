import { fitQuestion } from './check-fit-input.js';
import { readCue } from './equipment/check-cue.js';
import type { CueInput, CueSpec, TableSpec } from './equipment/equipment-types.js';
import type { FitInput } from './fit-input.js';
import type { Point } from './geometry/types.js';
import { InputError } from './input-error.js';
import type { Length } from './length/length.js';
import { ProblemList, readGuarded, readNumber, readObject } from './length/read-input.js';
import { checkReport } from './render-plan.js';
import type { FitReport } from './report/fit-report.js';
import { drawShot } from './report/plan/draw-shot.js';
import { type PlanOptions, readPlanOptions } from './report/plan/plan-options.js';
import { reportScene } from './report-scene.js';
import { answerShot } from './stroke/answer-shot.js';
import { checkBall } from './stroke/classify-shot.js';
import { prepareStrokes } from './stroke/prepare-strokes.js';
import { readCenter } from './stroke/read-pose.js';
import { standingRoom } from './stroke/standing.js';

/** One shot to be drawn, as `classifyShot` takes it. */
export interface ShotInput {
  /** Default: the wanted cue of the input. */
  readonly cue?: Length | CueInput;
  /** Where the ball's centre lies: from the middle of the field, x along the table. */
  readonly ball: { readonly x: Length; readonly y: Length };
  /** From the ball to the cue's butt, degrees anticlockwise from the table's long axis. */
  readonly direction: number;
}

/**
 * One shot from the side as an SVG document, true to scale: the upright plane through the ball and the cue, with table and rail, the
 * cue at the least elevation that is free (as `classifyShot` answers; where none is, at the one that the rail asks for), its
 * backswing, the things and the wall that the plane cuts, the ceiling and where the player can stand.
 *
 * The table and the other pieces stand where `report` has them. The same input gives the same bytes; colours are those of `renderPlan`.
 *
 * @throws InputError as `renderPlan` does, for a report without a place for the table, and for a ball that is not on it.
 */
export function renderShot(
  input: FitInput,
  report: FitReport,
  shot: ShotInput,
  options: PlanOptions = {},
): string {
  const question = fitQuestion(input);
  checkReport(report, question);
  const { table, cues, stroke } = question;
  const scene = reportScene(question, report);
  const { pose } = report;
  if (pose === null) {
    const message = 'The table has no place in this report, so there is no shot to draw.';
    throw new InputError([{ path: 'report.pose', code: 'no-place', message }]);
  }
  const { cue, ball, phi } = readShot(shot, table, cues[0]);
  const checked = readPlanOptions(options);
  const strokes = prepareStrokes(scene, table, { x: pose.x, y: pose.y, angle: inRadians(pose.turn) }, stroke);
  const answer = answerShot(strokes, standingRoom(strokes), cue, ball[0], ball[1], phi);
  return drawShot({ strokes, obstacles: scene.obstacles, table, cue, ball, phi, answer }, checked);
}

function readShot(
  shot: unknown,
  table: TableSpec,
  wanted: CueSpec,
): { cue: CueSpec; ball: Point; phi: number } {
  const problems = new ProblemList();
  const read = readGuarded([shot], problems, () => readShotFields(shot, table, wanted, problems));
  if (problems.problems.length > 0 || read === null) throw new InputError(problems.problems);
  return read;
}

function readShotFields(
  shot: unknown,
  table: TableSpec,
  wanted: CueSpec,
  problems: ProblemList,
): { cue: CueSpec; ball: Point; phi: number } | null {
  const fields = readObject(shot, 'shot', ['cue', 'ball', 'direction'], problems);
  const given = fields?.get('cue');
  const cue = given === undefined ? wanted : readCue(given, 'shot.cue', problems, table.ballDiameter);
  const place = fields === null ? null : readObject(fields.get('ball'), 'shot.ball', ['x', 'y'], problems);
  const ball = place === null ? null : readCenter(place, 'shot.ball', "ball's centre", problems);
  const limits = { what: 'direction of the shot' };
  const direction =
    fields === null
      ? null
      : readNumber(fields.get('direction'), 'shot.direction', limits, ' degrees', problems);
  if (ball !== null) checkBall(table, ball, 'shot.ball', problems);
  if (cue === null || ball === null || direction === null) return null;
  return { cue, ball, phi: inRadians(direction % 360) };
}

function inRadians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
