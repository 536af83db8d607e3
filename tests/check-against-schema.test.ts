import Ajv2020 from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkFitInput } from '../src/check-fit-input.js';
import { fitInputSchema } from '../src/fit-input-schema.js';
import { ALL_MUTANTS, changed, places, VALID_INPUTS } from './helpers/fit-inputs.js';

const validate = new Ajv2020({ strict: true, allErrors: true }).compile(fitInputSchema);

/** The check is written by hand, the schema is read by a validator: two roads to one answer about the shape of an input. */
describe('the schema and the check of an input', () => {
  it.each(Object.entries(VALID_INPUTS))('agree on the %s example: no problem', (_, example) => {
    expect(checkFitInput(example)).toEqual([]);
  });

  it('agree on every mutant: at least one problem', () => {
    const through = ALL_MUTANTS.filter(({ input }) => checkFitInput(input).length === 0);
    expect(through.map(({ what }) => what)).toEqual([]);
  });

  it('agree that whatever the check accepts has the right shape', () => {
    const others = fc.constantFrom<unknown>(
      ...[
        0,
        1,
        12,
        100,
        2000,
        -500,
        1.5,
        Number.NaN,
        '2 m',
        '57 in',
        '48 in',
        '1/2',
        'abc',
        '',
        ' ',
        'in',
        'out',
      ],
      ...[
        'slides',
        'any',
        'square',
        'shots',
        'verdict',
        'pool-8ft',
        null,
        true,
        false,
        [],
        {},
        [0, 0],
        [0, 0, 0],
      ],
      ...[{ length: 1400 }, { length: 2540, width: 1270 }, { center: [3000, 3000], diameter: 100 }],
    );
    const changes = fc.array(fc.tuple(fc.nat(), others), { minLength: 1, maxLength: 2 });
    let accepted = 0;
    fc.assert(
      fc.property(fc.constantFrom(...Object.values(VALID_INPUTS)), changes, (example, list) => {
        let input: unknown = example;
        for (const [pick, other] of list) {
          const all = places(input);
          input = changed(input, all[pick % all.length].path, () => other);
        }
        if (checkFitInput(input).length > 0) return;
        accepted++;
        expect(validate(input), JSON.stringify({ input, errors: validate.errors })).toBe(true);
      }),
      { seed: 20251129, numRuns: 1500 },
    );
    // Enough of them are good inputs for this to say something.
    expect(accepted).toBeGreaterThan(100);
  });
});
