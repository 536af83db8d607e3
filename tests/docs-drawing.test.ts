import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assessFit } from '../src/assess-fit.js';
import { checkFitInput } from '../src/check-fit-input.js';
import type { FitInput } from '../src/fit-input.js';
import { renderPlan } from '../src/render-plan.js';

const EXAMPLES = new URL('../docs/examples/', import.meta.url);

const isQuestion = (value: unknown): value is FitInput => checkFitInput(value).length === 0;

describe('the drawings of the examples', () => {
  it.each(['garden-room', 'games-room'])(
    'are what the code draws of the question beside them: %s',
    (name) => {
      const question: unknown = JSON.parse(readFileSync(new URL(`${name}.json`, EXAMPLES), 'utf8'));
      if (!isQuestion(question)) throw new Error('The example is no question.');
      // `npx tsx src/cli.ts docs/examples/NAME.json --svg docs/examples/NAME.svg` draws it anew.
      const drawn = renderPlan(question, assessFit(question));
      expect(readFileSync(new URL(`${name}.svg`, EXAMPLES), 'utf8')).toBe(drawn);
    },
  );
});
