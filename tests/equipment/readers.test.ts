import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCues } from '../../src/equipment/check-cue.js';
import { readTable } from '../../src/equipment/check-table.js';
import { TABLES } from '../../src/equipment/tables.js';
import { ProblemList } from '../../src/length/read-input.js';
import { readStroke } from '../../src/stroke/read-stroke.js';

const SEED = 20253;

/** What a stranger may send: right words with wrong values, and anything at all. */
const lengths = fc.oneof(
  fc.double(),
  fc.integer({ min: 1, max: 3000 }),
  fc.constantFrom('9 ft', '57 in', '1,234 m', '', '4.5 m', null, '5'),
  fc.anything(),
);
const sizes = fc.oneof(fc.record({ length: lengths, width: lengths }, { requiredKeys: [] }), fc.anything());
const tables = fc.oneof(
  fc.constantFrom(...Object.keys(TABLES)),
  fc.anything(),
  fc.record(
    {
      name: fc.anything(),
      game: fc.anything(),
      field: sizes,
      outer: sizes,
      bedHeight: lengths,
      noseHeight: lengths,
      railHeight: lengths,
      ballDiameter: lengths,
      mass: lengths,
    },
    { requiredKeys: [] },
  ),
);
const cues = fc.oneof(
  fc.anything(),
  fc.array(
    fc.oneof(
      lengths,
      fc.record({ length: lengths, tipDiameter: lengths, buttDiameter: lengths }, { requiredKeys: [] }),
    ),
  ),
);
const strokes = fc.oneof(
  fc.anything(),
  fc.record(
    {
      backswing: lengths,
      shortBackswing: lengths,
      margin: lengths,
      tipOffset: lengths,
      maxElevation: lengths,
    },
    { requiredKeys: [] },
  ),
);

function isSentence(text: string): boolean {
  return /^[A-Z].*\.$/s.test(text) && text.length < 600;
}

/** No number in it is NaN or infinite. */
function allFinite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  return typeof value !== 'object' || value === null || Object.values(value).every(allFinite);
}

/** Runs a reader; whatever comes in, the answer is either whole or explained. */
function check(read: (problems: ProblemList, assumptions: string[]) => unknown): void {
  const list = new ProblemList();
  const assumptions: string[] = [];
  const answer = read(list, assumptions);
  expect(answer === null).toBe(list.problems.length > 0);
  for (const problem of list.problems) {
    expect(problem.path.startsWith('here')).toBe(true);
    expect(problem.code).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect(isSentence(problem.message)).toBe(true);
  }
  for (const sentence of assumptions) expect(isSentence(sentence)).toBe(true);
  if (answer !== null) expect(allFinite(answer)).toBe(true);
}

describe('the readers of equipment', () => {
  it('answer anything with a whole table or with reasons', () => {
    fc.assert(
      fc.property(tables, (value) => check((p, a) => readTable(value, 'here', p, a))),
      { seed: SEED, numRuns: 1000 },
    );
  });

  it('answer anything with whole cues or with reasons', () => {
    fc.assert(
      fc.property(cues, (value) => check((p, a) => readCues(value, 'here', TABLES['pool-9ft'], p, a))),
      { seed: SEED, numRuns: 1000 },
    );
  });

  it('answer anything with a whole stroke or with reasons', () => {
    fc.assert(
      fc.property(strokes, (value) => check((p, a) => readStroke(value, 'here', 28.575, p, a))),
      {
        seed: SEED,
        numRuns: 1000,
      },
    );
  });

  it('take every good table, and give its measurements back', () => {
    const good = fc.record({
      width: fc.double({ min: 700, max: 1900, noNaN: true }),
      rail: fc.double({ min: 60, max: 290, noNaN: true }),
      bedHeight: fc.double({ min: 600, max: 950, noNaN: true }),
    });
    fc.assert(
      fc.property(good, ({ width, rail, bedHeight }) => {
        const field = { length: 2 * width, width };
        const outer = { length: 2 * width + 2 * rail, width: width + 2 * rail };
        const list = new ProblemList();
        const table = readTable({ field, outer, bedHeight }, 'here', list, []);
        expect(list.problems).toEqual([]);
        expect(table).toMatchObject({ field, outer, bedHeight });
      }),
      { seed: SEED },
    );
  });
});
