import type { NextReading } from '../room/tape-report.js';
import { describeSurvey, sayBand, sayConfidence } from './describe-survey.js';
import type { CueResult, FitReport, Verdict } from './fit-report.js';
import { joinWords, plainName, type SentenceUnits, sayCue, sayPercentUp } from './sentences.js';

/** What each verdict means, in words that follow "the answer is" or "that makes it". */
export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  clear: 'clear (every shot can be played freely)',
  tight: 'tight (every shot can be played, some of them cramped)',
  partial: 'partial (some shots cannot be played)',
  none: 'none (the table cannot stand there)',
};

/** What the three classes of a shot mean. */
export const CLASS_WORDS: string =
  'Open: played with a full backswing, the cue no more raised than the cushion asks for. Cramped: only with a short backswing or a raised cue. ' +
  'Blocked: not at all, for want of room for the cue or for the player to stand. Every position of the ball and every direction counts alike.';

/** The answer, how sure it is, and what it hangs on: one sentence a string. */
export function describeAnswer(report: FitReport, units: SentenceUnits): readonly string[] {
  const wanted = report.cues[0];
  return [
    ...describeSurvey(report.survey, units),
    answer(report, wanted, units),
    ...certainty(report, wanted, units),
  ];
}

function answer(report: FitReport, wanted: CueResult | undefined, units: SentenceUnits): string {
  const table = `the table, ${plainName(report.table.name)},`;
  const cue = wanted === undefined ? 'the cue' : `the ${sayCue(wanted.length, units)} cue`;
  const measured = report.certain ? '' : ', as far as the measurements can tell';
  switch (report.verdict) {
    case 'clear':
      return `Yes${measured}: ${table} fits, and every shot can be played freely with ${cue}.`;
    case 'tight':
      return (
        `Yes, but tight${measured}: ${table} can stand here and every shot can be played with ${cue}, ` +
        'some of them only with a short backswing or a raised cue.'
      );
    case 'partial':
      return `Partly${measured}: ${table} can stand here, but ${blockedWords(wanted)} with ${cue}.`;
    case 'none':
      return report.pose === null
        ? `No${measured}: ${table} cannot stand anywhere in this room.`
        : `No${measured}: ${table} cannot stand at the place given.`;
  }
}

function blockedWords(wanted: CueResult | undefined): string {
  const blocked = wanted?.shares.blocked ?? 0;
  if (blocked <= 0) return 'some shots cannot be played';
  return blocked >= 1
    ? 'no shot can be played'
    : `about ${sayPercentUp(blocked)} of all shots cannot be played`;
}

function certainty(
  report: FitReport,
  wanted: CueResult | undefined,
  units: SentenceUnits,
): readonly string[] {
  const said: string[] = [];
  const { confidence } = report;
  if (report.certain && confidence !== undefined) {
    said.push(
      `It is sure: in at least ${sayConfidence(confidence)} no wrong answer would be called so, as long as furniture, doors and heights are within their tolerance.`,
    );
  } else if (report.certain) {
    said.push('It stays so even if every measurement is off by as much as the tolerance.');
  } else if (wanted?.proof === 'resolution') {
    said.push(
      'It is too close to decide: the question lies below the resolution of the computation, and the more careful of the two answers is given.',
    );
  } else if (confidence !== undefined) {
    said.push(
      'It is close: another measuring of this kind could well give another answer, and so could something else that is off by no more than its tolerance.',
    );
  } else {
    said.push(
      'It is close: measurements that are off by no more than the tolerance could change the answer.',
    );
  }
  const proof = wanted === undefined ? null : proofWords(wanted);
  if (proof !== null) {
    said.push(report.certain ? `This is ${proof}` : `For the measurements exactly as given this is ${proof}`);
  }
  const again = report.limits.filter((limit) => limit.measureAgain).map((limit) => plainName(limit.name));
  if (again.length > 0) {
    const which = again.length === 1 ? 'it' : 'them';
    said.push(`The answer hangs on ${joinWords([...new Set(again)])}: measure ${which} again.`);
  } else if (!report.certain && wanted?.proof !== 'resolution') {
    said.push('Measure the room again.');
  }
  const next = report.certain ? undefined : report.survey?.next[0];
  if (next !== undefined) {
    said.push(
      `The reading to take next is ${plainName(next.reading)}: of all it makes the walls surest${bandWords(next, units)}.`,
    );
  }
  return said;
}

function bandWords({ now, after: then }: NextReading, units: SentenceUnits): string {
  const [before, after] = [sayBand(now, units), sayBand(then, units)];
  return before === after ? '' : ` (the least sure one is known to ${before} now, to ${after} then)`;
}

/** How the verdict was reached. The word "proved" belongs to the four proofs alone. */
function proofWords(cue: CueResult): string | null {
  switch (cue.proof) {
    case 'distance':
      return 'proved by plain distance. Wherever a ball can lie, a level cue at full backswing ends short of everything it could meet.';
    case 'raised':
      return 'proved by plain distance. Wherever a ball can lie, a cue with a short backswing that is raised as far as an ordinary stroke allows ends short of everything it does not pass over or under.';
    case 'boxes':
      return 'proved for groups of shots that together hold every shot there is, not for a sample.';
    case 'shot':
      return cue.verdict === 'partial'
        ? 'proved by a shot that was found and that cannot be played.'
        : 'proved by a shot that was found and that cannot be played freely.';
    case 'standing':
    case 'resolution':
      return null;
  }
}
