import type { TapedRoom } from '../room/tape-report.js';
import type { FitReport, Limit } from './fit-report.js';

/** The report with what the survey of its room says: how sure it is at best, and which readings would make it surer. */
export function withSurvey(report: FitReport, survey: TapedRoom | null): FitReport {
  if (survey === null) return report;
  const { confidence, unitDeviation, contradictory, suspect, next, walls } = survey;
  const limits = report.limits.map((limit): Limit => {
    const wall = limit.kind === 'wall' ? walls.find(({ name }) => name === limit.name) : undefined;
    return wall === undefined ? limit : { ...limit, repeat: wall.repeat };
  });
  return { ...report, limits, confidence, survey: { unitDeviation, contradictory, suspect, next } };
}
