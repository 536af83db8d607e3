import Ajv2020 from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrangementDefinitions } from '../../src/arrangement-schema.js';
import { checkFitInput } from '../../src/check-fit-input.js';
import { DEFAULTS } from '../../src/equipment/defaults.js';
import { FURNISHING_IDS } from '../../src/equipment/furnishings-ids.js';
import { fitInputSchema } from '../../src/fit-input-schema.js';
import { changed, isPlainObject, places, VALID_INPUTS } from '../helpers/fit-inputs.js';

const validate = new Ajv2020({ strict: true, allErrors: true }).compile(fitInputSchema);
const accepts = (input: unknown) => checkFitInput(input).length === 0;
const { furnished } = VALID_INPUTS;
const crate = { footprint: { length: 900, width: 600 }, height: 700 };
const asking = (furnishing: unknown) => ({ ...furnished, furnishings: [furnishing] });

/** Read by hand, and by a validator: two roads to one answer about the shape of a piece. */
describe('the schema and the check of pieces', () => {
  it.each(FURNISHING_IDS)('agree on a piece by its kind alone: %s', (kind) => {
    expect(accepts(asking({ kind }))).toBe(true);
    expect(validate(asking({ kind }))).toBe(true);
  });

  it.each<[string, unknown]>([
    ['an arrangement without pieces', { room: furnished?.room, table: 'pool-9ft', arrangement: {} }],
    ['thirteen pieces', { ...furnished, furnishings: new Array(13).fill({ kind: 'stool' }) }],
    ['a kind with blanks', asking({ kind: ' sofa ' })],
    ['a kind in capitals', asking({ kind: 'Sofa' })],
    ['a piece without a height', asking({ footprint: crate.footprint })],
    ['a piece without a footprint', asking({ height: 700 })],
    [
      'a footprint both round and square',
      asking({ ...crate, footprint: { length: 900, width: 1, diameter: 900 } }),
    ],
    [
      'a footprint of two corners',
      asking({
        ...crate,
        footprint: [
          [0, 0],
          [900, 0],
        ],
      }),
    ],
    [
      'too many corners',
      asking({ ...crate, footprint: Array.from({ length: 201 }, (_, i) => [10 * i, i * i]) }),
    ],
    ['no turns', asking({ ...crate, turns: [] })],
    ['a turn of more than 360 degrees', asking({ ...crate, turns: [361] })],
    ['a pose turned by more', asking({ ...crate, pose: { x: 1000, y: 1000, turn: -361 } })],
    ['too many turns', asking({ ...crate, turns: new Array(73).fill(0) })],
    ['too many zones', asking({ ...crate, zones: new Array(11).fill({ front: 600 }) })],
    ['an empty zone', asking({ ...crate, zones: [{}] })],
    ['sharing twice', asking({ ...crate, zones: [{ front: 600, shares: ['zones', 'zones'] }] })],
    ['sharing with doors', asking({ ...crate, zones: [{ front: 600, shares: ['doors'] }] })],
    ['a mass of nothing', asking({ ...crate, mass: 0 })],
    ['no effort', { ...furnished, arrangement: { effort: 0 } }],
    ['a broken effort', { ...furnished, arrangement: { effort: 1.5 } }],
    ['endless effort', { ...furnished, arrangement: { effort: 100_001 } }],
    ['progress, which is for programs', { ...furnished, arrangement: { onProgress: true } }],
  ])('both refuse %s', (_, input) => {
    expect(accepts(input)).toBe(false);
    expect(validate(input)).toBe(false);
  });

  it('agree that whatever the check accepts has the right shape', () => {
    const others = fc.constantFrom<unknown>(
      ...[
        0,
        1,
        90,
        361,
        600,
        900,
        2000,
        -500,
        1.5,
        Number.NaN,
        '2 m',
        '36 in',
        '90',
        'abc',
        '',
        ' ',
        ' sofa ',
      ],
      ...['sofa', 'darts', 'lamp', 'stool', 'wall', 'corner', 'free', 'hung', 'over-table', 'back', 'square'],
      ...['any', 'cueing', 'zones', null, true, false, [], {}, [0, 0], [90], ['cueing'], { front: 600 }],
      ...[{ kind: 'bar' }, { diameter: 600 }, { length: 900, width: 600 }, { x: 3000, y: 3000 }],
      ...[
        [{ front: 600 }],
        [{ back: 500, shares: [] }],
        [
          [0, 0],
          [900, 0],
          [0, 900],
        ],
      ],
    );
    const changes = fc.array(fc.tuple(fc.nat(), others, fc.boolean()), { minLength: 1, maxLength: 3 });
    const start = { furnishings: furnished?.furnishings, arrangement: furnished?.arrangement };
    let accepted = 0;
    fc.assert(
      fc.property(changes, (list) => {
        let asked: unknown = start;
        for (const [pick, other, leaveOut] of list) {
          const all = places(asked);
          const { path, value } = all[pick % all.length] ?? { path: [], value: asked };
          // Either something else in one place, or one property fewer.
          const keys = isPlainObject(value) ? Object.keys(value) : [];
          const less = keys.filter((_, i) => i !== pick % keys.length);
          asked = changed(asked, path, (old) =>
            leaveOut && isPlainObject(old) ? Object.fromEntries(less.map((key) => [key, old[key]])) : other,
          );
        }
        const input = {
          room: furnished?.room,
          table: furnished?.table,
          ...(isPlainObject(asked) ? asked : {}),
        };
        if (!accepts(input)) return;
        accepted++;
        expect(validate(input), JSON.stringify({ asked, errors: validate.errors })).toBe(true);
      }),
      { seed: 20251205, numRuns: 3000 },
    );
    // Enough of them are good inputs for this to say something.
    expect(accepted).toBeGreaterThan(150);
  });
});

describe('the definitions', () => {
  const definitions = arrangementDefinitions();
  const said = (part: string, key: string) => definitions[part]?.properties?.[key]?.default;

  it('say the defaults that are used', () => {
    const usual = DEFAULTS.arrangement;
    expect(said('arrangement', 'way')).toBe(usual.way);
    expect(said('arrangement', 'effort')).toBe(usual.effort);
    expect(said('useZone', 'to')).toBe(usual.zoneHeight);
    expect(said('useZone', 'front')).toBe(0);
  });

  it('know every kind', () => {
    expect(definitions.furnishing?.properties?.kind?.enum).toEqual(FURNISHING_IDS);
  });

  it('describe every property that is not described where it points to', () => {
    const nameless = Object.entries(definitions).flatMap(([name, { properties }]) =>
      Object.entries(properties ?? {})
        .filter(([, property]) => !('description' in property || '$ref' in property))
        .map(([key]) => `${name}.${key}`),
    );
    expect(nameless).toEqual([]);
  });
});
