import type { TapedRoom } from '../room/tape-report.js';
import type { FitReport, Limit, SurveyNote } from './fit-report.js';

/** What the readings of a room say of themselves, in short. */
export function surveyNote({ readings, unitDeviation, contradictory, suspect, next }: TapedRoom): SurveyNote {
  if (suspect === null) return { unitDeviation, contradictory, suspect, next };
  const kind = readings.find(({ name }) => name === suspect.reading)?.kind ?? 'distance';
  return { unitDeviation, contradictory, suspect: { ...suspect, kind }, next };
}

/** The report with what the survey of its room says: how sure it is at best, and which readings would make it surer. */
export function withSurvey(report: FitReport, survey: TapedRoom | null): FitReport {
  if (survey === null) return report;
  const limits = report.limits.map((limit): Limit => {
    const wall = limit.kind === 'wall' ? survey.walls.find(({ name }) => name === limit.name) : undefined;
    return wall === undefined ? limit : { ...limit, repeat: wall.repeat };
  });
  return { ...report, limits, confidence: survey.confidence, survey: surveyNote(survey) };
}
