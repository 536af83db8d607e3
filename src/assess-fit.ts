import { assessRoom } from './assess-room.js';
import { fitQuestion } from './check-fit-input.js';
import { answerDelivery } from './delivery/assess-delivery.js';
import type { FitInput } from './fit-input.js';
import type { FitQuestion } from './fit-question.js';
import { furnishRoom } from './furnish-room.js';
import type { FitReport } from './report/fit-report.js';
import { withSurvey } from './report/survey-note.js';

/**
 * Does this table go into this room, and can people play on it there? Finds the best place (or judges the given one), proves
 * what can be proved, and says what holds the answer back and what would help.
 *
 * Synchronous and pure: the same input gives the same report on every platform, and nothing is read or written. A search that
 * is stopped or runs out of boxes still returns valid bounds and says so.
 *
 * @throws InputError for bad input, with every problem that was found.
 */
export function assessFit(input: FitInput): FitReport {
  return assessQuestion(fitQuestion(input));
}

/** The same for a question that was checked already. */
export function assessQuestion(question: FitQuestion): FitReport {
  const { arrangement, delivery, survey } = question;
  const inRoom = arrangement === null ? assessRoom(question) : furnishRoom(question, arrangement);
  const report = withSurvey(inRoom, survey);
  return delivery === null ? report : { ...report, delivery: answerDelivery(delivery) };
}
