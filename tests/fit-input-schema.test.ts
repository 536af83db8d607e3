import { readFileSync } from 'node:fs';
import Ajv2020 from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { DEFAULTS } from '../src/equipment/defaults.js';
import { fitInputSchema } from '../src/fit-input-schema.js';
import { ALL_MUTANTS, isPlainObject, VALID_INPUTS } from './helpers/fit-inputs.js';

const validate = new Ajv2020({ strict: true, allErrors: true }).compile(fitInputSchema);

describe('the schema of an input', () => {
  it.each(Object.entries(VALID_INPUTS))('accepts the %s example', (_, example) => {
    expect(validate(example), JSON.stringify(validate.errors)).toBe(true);
  });

  it('makes mutants of every kind', () => {
    expect(ALL_MUTANTS.length).toBeGreaterThan(500);
  });

  it('refuses every mutant', () => {
    expect(ALL_MUTANTS.filter(({ input }) => validate(input)).map(({ what }) => what)).toEqual([]);
  });

  it('does not know the functions that JSON cannot hold, and says so', () => {
    expect(validate({ ...VALID_INPUTS.least, search: { onProgress: 'stop' } })).toBe(false);
    expect(validate({ ...VALID_INPUTS.furnished, arrangement: { onProgress: 'stop' } })).toBe(false);
    expect(fitInputSchema.description).toContain('search.onProgress and arrangement.onProgress');
  });

  it('says the defaults that are used', () => {
    const said = (part: string, key: string) => fitInputSchema.$defs?.[part]?.properties?.[key]?.default;
    expect(said('room', 'tolerance')).toBe(DEFAULTS.room.tolerance);
    expect(said('stroke', 'backswing')).toBe(DEFAULTS.stroke.backswing);
    expect(said('stroke', 'shortBackswing')).toBe(DEFAULTS.stroke.shortBackswing);
    expect(said('stroke', 'margin')).toBe(DEFAULTS.stroke.margin);
    expect(said('stroke', 'maxElevation')).toBe(DEFAULTS.stroke.maxElevation);
    expect(said('table', 'bedHeight')).toBe(DEFAULTS.table.bedHeight);
    expect(said('table', 'ballDiameter')).toBe(DEFAULTS.table.ballDiameter);
    expect(said('cue', 'buttDiameter')).toBe(2 * DEFAULTS.cue.buttRadius);
    expect(said('search', 'maxBoxes')).toBe(DEFAULTS.search.maxBoxes);
    expect(said('arrangement', 'way')).toBe(DEFAULTS.arrangement.way);
  });

  it('describes every property that is not described where it points to', () => {
    const nameless: string[] = [];
    const { $defs } = fitInputSchema;
    for (const [name, definition] of Object.entries($defs ?? {})) {
      if (!isPlainObject(definition.properties)) continue;
      for (const [key, property] of Object.entries(definition.properties)) {
        if (!isPlainObject(property)) nameless.push(`${name}.${key}`);
        else if (
          !('description' in property || '$ref' in property || 'enum' in property || 'items' in property)
        ) {
          nameless.push(`${name}.${key}`);
        }
      }
    }
    expect(nameless).toEqual([]);
  });

  it('is plain JSON', () => {
    expect(JSON.parse(JSON.stringify(fitInputSchema))).toEqual(fitInputSchema);
  });

  it.each(['garden-room', 'tape-room'])('accepts the inputs of the documentation: %s', (name) => {
    const file: unknown = JSON.parse(
      readFileSync(new URL(`../docs/examples/${name}.json`, import.meta.url), 'utf8'),
    );
    expect(validate(file), JSON.stringify(validate.errors)).toBe(true);
  });
});
