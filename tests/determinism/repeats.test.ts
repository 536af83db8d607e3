import { describe, expect, it } from 'vitest';
import { assessFit, describeFit, type FitInput, renderPlan, renderShot } from '../../src/index.js';
import { VALID_INPUTS } from '../helpers/fit-inputs.js';
import { EVEN_ROOMS, FURNISHED, type Question, realRooms } from './questions.js';

/** All that is said and drawn about an input, as text. */
function everything(input: FitInput): string {
  const report = assessFit(input);
  const shot = { ball: { x: 100, y: -50 }, direction: 200 };
  const drawn = report.pose === null ? '' : renderShot(input, report, shot);
  return [JSON.stringify(report), describeFit(report), renderPlan(input, report), drawn].join('\n');
}

const questions: readonly Question[] = [
  ...Object.entries(VALID_INPUTS).map(([name, input]) => ({ name, input })),
  ...FURNISHED.slice(0, 2),
  ...EVEN_ROOMS.slice(0, 2),
  ...realRooms(140, 9),
];

describe('the same question', () => {
  it('has the same answer to the byte, whatever was asked in between and in whatever order', () => {
    const first = questions.map(({ input }) => everything(input));
    const again = questions.map((_, i) => everything(questions[questions.length - 1 - i].input)).reverse();
    expect(again).toEqual(first);
  });

  it('has the same answer after a trip through JSON, and leaves the question as it was', () => {
    for (const { input } of questions.slice(0, 4)) {
      const before = JSON.stringify(input);
      const trip: FitInput = JSON.parse(before);
      expect(everything(trip)).toBe(everything(input));
      expect(JSON.stringify(input)).toBe(before);
    }
  });
});
