import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  assessDelivery,
  assessFit,
  checkFitInput,
  classifyShot,
  describeFit,
  type FitReport,
  InputError,
  roomFromTape,
} from '../../src/index.js';
import { GOOD_WAYS } from '../delivery/read-inputs.js';
import { anyFit } from '../fuzz/fits.js';
import { survey } from '../fuzz/surveys.js';
import { randomNumbers } from '../placement/rooms.js';
import { differences } from './differences.js';
import { withNudgedMath } from './nudged-math.js';
import { EVEN_ROOMS, FURNISHED, type Question, realRooms } from './questions.js';

/** Where nothing is searched, numbers may differ by rounding only: mm, degrees, shares. */
const ROUNDING = 1e-6;
/**
 * A search for the best place ends as soon as its bounds are within 1 mm, and which of many places within that it ends at is a
 * matter of its path. mm: far less than the gap, and than what any text says.
 */
const WITHIN_GAP = 0.2;

/** The answer, or the refusal in words. */
function answer<T>(ask: () => T): T | string {
  try {
    return ask();
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
}

function onOtherEngine<T>(seed: number, ask: () => T): T | string {
  return withNudgedMath(randomNumbers(seed), () => answer(ask));
}

/** What must be the same on every engine, wherever within the gap the table was put. */
function verdictsOf({
  verdict,
  certain,
  cues,
  clearance,
  limits,
  gaps,
  advice,
  cautions,
  assumptions,
}: FitReport): unknown {
  return {
    verdict,
    certain,
    cues: cues.map(({ name, verdict: each, certain: sure, proof }) => ({ name, each, sure, proof })),
    nowhere: clearance.clearNowhere,
    limits: limits.map(({ name, kind, measureAgain }) => ({ name, kind, measureAgain })),
    gaps: gaps.map(({ to }) => to),
    advice: advice.map(({ kind, verdict: each }) => ({ kind, each })),
    cautions,
    assumptions,
  };
}

describe('an engine whose functions end in other last bits', () => {
  it('is there in the test, and gone after it', () => {
    const sines = (): number[] => Array.from({ length: 100 }, (_, i) => Math.sin(i));
    const before = sines();
    const nudged = withNudgedMath(randomNumbers(1), sines);
    expect(nudged.filter((sine, i) => sine !== before[i]).length).toBeGreaterThan(40);
    for (const [i, sine] of nudged.entries()) expect(Math.abs(sine - before[i])).toBeLessThan(2.3e-16);
    expect(sines()).toEqual(before);
    expect(() =>
      withNudgedMath(randomNumbers(1), () => {
        throw new RangeError('On the way.');
      }),
    ).toThrow(RangeError);
    expect(sines()).toEqual(before);
  });

  const searched: readonly Question[] = [...FURNISHED, ...EVEN_ROOMS, ...realRooms(31, 7)];

  it.each(searched)('finds a place as good, with the same verdicts, proofs and names: $name', ({ input }) => {
    const here = assessFit(input);
    for (const seed of [1, 2]) {
      const there = onOtherEngine(seed, () => assessFit(input));
      if (typeof there === 'string') throw new Error(there);
      expect(differences(verdictsOf(here), verdictsOf(there), 0)).toEqual([]);
      const { pose, clearance, spans } = here;
      const numbers = [pose, clearance, spans];
      expect(differences(numbers, [there.pose, there.clearance, there.spans], WITHIN_GAP)).toEqual([]);
    }
  });

  it('judges a given place the same, to rounding and in every word', () => {
    for (const { name, input } of searched) {
      const { pose } = assessFit(input);
      if (pose === null) continue;
      const asked = { ...input, pose };
      const here = assessFit(asked);
      const there = onOtherEngine(3, () => assessFit(asked));
      if (typeof there === 'string') throw new Error(there);
      // Advice for a smaller table and a longer room searches.
      const apart = differences({ ...here, advice: [] }, { ...there, advice: [] }, ROUNDING);
      expect(apart, name).toEqual([]);
      expect(describeFit({ ...there, advice: [] }), name).toBe(describeFit({ ...here, advice: [] }));
    }
  });

  it('refuses and answers the same of random questions with a place', () => {
    fc.assert(
      fc.property(anyFit({ obstacles: 4, extras: false }), fc.integer(), (input, seed) => {
        fc.pre(input.pose !== undefined && checkFitInput(input).length === 0);
        const here = assessFit(input);
        const there = onOtherEngine(seed, () => assessFit(input));
        if (typeof there === 'string') throw new Error(there);
        expect(differences(verdictsOf(here), verdictsOf(there), 0)).toEqual([]);
      }),
      { seed: 20251210, numRuns: 150 },
    );
  });

  it('classifies shots the same', () => {
    const random = randomNumbers(12);
    for (const { input } of [...FURNISHED, ...EVEN_ROOMS]) {
      const { pose, table } = assessFit({ ...input, search: { maxBoxes: 300 } });
      if (pose === null) continue;
      for (let k = 0; k < 60; k++) {
        // Frozen, square and anywhere: ties are at the cushions.
        const half = [
          (table.field.length - table.ballDiameter) / 2,
          (table.field.width - table.ballDiameter) / 2,
        ];
        const [x, y] = half.map(
          (most) => most * (k % 3 === 0 ? Math.sign(random() - 0.5) : 2 * random() - 1),
        );
        const direction = k % 2 === 0 ? 45 * Math.floor(8 * random()) : 360 * random();
        const ask = () =>
          classifyShot({ room: input.room, table: input.table, pose, ball: { x, y }, direction });
        expect(differences(answer(ask), onOtherEngine(k, ask), ROUNDING), `${x}, ${y}, ${direction}`).toEqual(
          [],
        );
      }
    }
  });

  it('adjusts surveys the same', () => {
    fc.assert(
      fc.property(survey, fc.integer(), (asked, seed) => {
        const ask = () => roomFromTape(asked);
        expect(differences(answer(ask), onOtherEngine(seed, ask), 1e-4)).toEqual([]);
      }),
      { seed: 20251211, numRuns: 120 },
    );
  });

  it('carries pieces the same, but for which of equally tight moments is named', () => {
    for (const way of Object.values(GOOD_WAYS)) {
      const ask = () => assessDelivery({ ...way, maxBoxes: 2000, detail: 'answer' }, 'pool-8ft-home');
      const here = answer(ask);
      const there = onOtherEngine(5, ask);
      const told = (report: unknown): unknown =>
        JSON.parse(JSON.stringify(report, (key, value: unknown) => (key === 'narrowest' ? null : value)));
      expect(differences(told(here), told(there), 1e-3)).toEqual([]);
    }
  });
});
