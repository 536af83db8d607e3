import {
  assessFit,
  checkFitInput,
  describeFit,
  type FitInput,
  type FitReport,
  renderPlan,
} from '../../src/index.js';
import { answerOrRefusal, insistPlain, insistProblems, insistWords } from './plain.js';

/** What holds of every report, whatever was asked. */
function checkReport(report: FitReport): void {
  insistPlain(report);
  const { clearance, cues } = report;
  if (clearance.value > clearance.upperBound + 1e-6) throw new Error('More clearance than its bound.');
  for (const { shares, verdict } of cues) {
    const sum = shares.open + shares.cramped + shares.blocked;
    if (Math.abs(sum - 1) > 1e-9) throw new Error(`The shares add up to ${sum}.`);
    if (verdict === 'clear' && shares.open !== 1) throw new Error('Clear, but not every shot is open.');
  }
  if (report.pose === null && report.verdict !== 'none') throw new Error('A verdict without a place.');
}

/** Asks about an input in every way that takes one: refused by all of them alike, or answered in plain data and in words. */
export function fitsAndWords(input: FitInput, words: 'mm' | 'cm' | 'ftin'): void {
  const problems = checkFitInput(input);
  insistPlain(problems);
  if (problems.length > 0) insistProblems(problems);
  const report = answerOrRefusal(() => assessFit(input));
  if ((report === null) !== problems.length > 0) throw new Error('The check and the answer disagree.');
  if (report === null) return;
  checkReport(report);
  insistWords(describeFit(report, { units: words }));
  insistWords(renderPlan(input, report));
}
