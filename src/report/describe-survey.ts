import type { Limit, SurveyNote } from './fit-report.js';
import { joinWords, plainName, type SentenceUnits, sayDegrees, sayLength } from './sentences.js';

/** What comes before any answer: readings that contradict each other, and the one that is probably wrong. */
export function describeSurvey(survey: SurveyNote | undefined, units: SentenceUnits): readonly string[] {
  if (survey === undefined) return [];
  const { contradictory, suspect, unitDeviation } = survey;
  const said: string[] = [];
  if (contradictory) {
    const times = unitDeviation === null ? '' : `, by about ${unitDeviation.toFixed(1)} times what is usual`;
    said.push(`First of all: the readings of this room contradict each other${times}.`);
  }
  if (suspect !== null) said.push(suspectWords(suspect, units));
  if (contradictory) {
    said.push(
      'The answer below counts every reading as it was given, and takes the walls to be so much less sure. Measure again before you rely on it.',
    );
  }
  return said;
}

/** The reading that is probably wrong, and what it should have been. */
export function suspectWords(suspect: NonNullable<SurveyNote['suspect']>, units: SentenceUnits): string {
  const say = (value: number): string =>
    suspect.kind === 'corner' ? sayDegrees(value) : sayReading(value, units);
  const { reading, read, expected, orElse } = suspect;
  const others =
    orElse.length === 0
      ? ''
      : ` It may as well be ${joinWords(orElse.map(plainName), 'or')}: the readings cannot tell.`;
  return `One reading is probably wrong: ${plainName(reading)}, given as ${say(read)}; by all the others it would be about ${say(expected)}.${others}`;
}

/** `95 of 100 measurings of this kind`. */
export function sayConfidence(confidence: number): string {
  return `${Math.floor(confidence * 100 + 1e-9)} of 100 measurings of this kind`;
}

/** Which readings to repeat to know a wall better: a sentence with a space before it, or nothing. */
export function sayRepeats({ repeat }: Limit, units: SentenceUnits): string {
  if (repeat === undefined || repeat.length === 0) return '';
  const readings = repeat.map(
    ({ reading, band }) => `${plainName(reading)} (then known to ${sayBand(band, units)})`,
  );
  return ` What helps most is to repeat ${joinWords(readings, 'or')}.`;
}

/** A reading is said to the millimetre, since that is what it was read to. */
export function sayReading(mm: number, units: SentenceUnits): string {
  return sayLength(mm, units === 'ftin' ? 'ftin' : 'mm');
}

/** How far off something may be: rounded up. */
export function sayBand(mm: number, units: SentenceUnits): string {
  return sayLength(mm, units === 'ftin' ? 'ftin' : 'mm', 'up');
}
