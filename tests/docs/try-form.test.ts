import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { getAt, isList, type Json, leaves, pathText } from '../../docs/try/document/json.js';
import { keptParts } from '../../docs/try/document/kept.js';
import { edit, toText } from '../../docs/try/document/lens.js';
import { isWithin } from '../../docs/try/document/place-problems.js';
import { START } from '../../docs/try/document/start.js';
import { allFields, allParts, formShape, shownPaths } from '../../docs/try/form/form-shape.js';
import type { FieldPart, FormState, Section } from '../../docs/try/form/parts.js';
import { ENGLISH } from '../../docs/try/strings.js';
import { checkFitInput } from '../../src/check-fit-input.js';
import { ANYTHING, CATALOGUES, INPUT } from './try-inputs.js';

/** The form of the try-it page as data: an input is written down as texts, and the texts make the input again. */

const shape = (input: Json): Section[] => formShape(input, ENGLISH, CATALOGUES);
const textOf = (input: Json, { kind, path }: FieldPart): string => toText(kind, getAt(input, path));
const write = (input: Json, part: FieldPart, text: string): Json =>
  edit(input, part.path, part.kind, text, part.optional);

describe('the form and its input', () => {
  it('begins with a good input', () => {
    expect(checkFitInput(START)).toEqual([]);
  });

  it('changes nothing where the same is written again', () => {
    fc.assert(
      fc.property(fc.oneof(INPUT, ANYTHING), (input) => {
        for (const part of allFields(shape(input)))
          expect(write(input, part, textOf(input, part))).toBe(input);
      }),
      { seed: 1701, numRuns: 100 },
    );
  });

  it('shows what was written, and changes no other control', () => {
    const texts = fc.constantFrom('3.05 m', ` 10' 2" `, '45', 'A', 'rubbish');
    fc.assert(
      fc.property(INPUT, fc.nat(), texts, (input, pick, text) => {
        const fields = allFields(shape(input)).filter(({ kind }) => kind !== 'flag');
        const part = fields[pick % fields.length];
        if (part === undefined) throw new Error('There is always a field.');
        const written = write(input, part, text);
        expect(textOf(written, part)).toBe(text.trim());
        for (const other of fields) {
          if (pathText(other.path) === pathText(part.path)) continue;
          expect(textOf(written, other)).toBe(textOf(input, other));
        }
      }),
      { seed: 1702, numRuns: 120 },
    );
  });

  it('makes the input again from its texts alone', () => {
    fc.assert(
      fc.property(INPUT, (input) => {
        const fields = allFields(shape(input));
        const texts = fields.map((part) => textOf(input, part));
        // Something else is written everywhere first, so that nothing can simply have stayed.
        const other = fields.reduce((at, part) => write(at, part, part.kind === 'flag' ? '' : '9'), input);
        const again = fields.reduce((at, part, i) => write(at, part, texts[i] ?? ''), other);
        expect(again).toEqual(input);
      }),
      { seed: 1703, numRuns: 120 },
    );
  });

  it('leaves out what may be left out, once nothing is written there', () => {
    fc.assert(
      fc.property(INPUT, (input) => {
        const optional = allFields(shape(input)).filter((part) => part.optional);
        const bare = optional.reduce((at, part) => write(at, part, ''), input);
        for (const { path } of optional) expect(getAt(bare, path)).toBeUndefined();
        for (const key of ['stroke', 'pose']) expect(getAt(bare, [key])).toBeUndefined();
      }),
      { seed: 1704, numRuns: 100 },
    );
  });

  it('shows or names every part of an input', () => {
    fc.assert(
      fc.property(fc.oneof(INPUT, ANYTHING), (input) => {
        const shown = shownPaths(shape(input));
        const kept = keptParts(input, shown);
        for (const leaf of leaves(input).filter((path) => path.length > 0)) {
          const path = pathText(leaf);
          const known = [...shown, ...kept].some((part) => isWithin(path, part) || isWithin(part, path));
          expect(known, path).toBe(true);
        }
      }),
      { seed: 1705, numRuns: 100 },
    );
  });

  it('names what it cannot show', () => {
    const input: Json = {
      ...asObject(START),
      delivery: { route: [] },
      search: { gap: '1 mm', turns: 'any' },
    };
    expect(keptParts(input, shownPaths(shape(input)))).toEqual(['delivery', 'search.gap']);
    expect(keptParts(START, shownPaths(shape(START)))).toEqual([]);
  });

  it('keeps apart paths of different controls', () => {
    fc.assert(
      fc.property(INPUT, (input) => {
        const paths = allFields(shape(input)).map(({ path }) => pathText(path));
        expect(new Set(paths).size).toBe(paths.length);
      }),
      { seed: 1706, numRuns: 100 },
    );
  });
});

describe('choices that change the form', () => {
  const choose = (state: FormState, id: string, value: string): FormState => {
    const part = allParts(shape(state.input)).find((one) => one.part === 'choice' && one.id === id);
    if (part?.part !== 'choice') throw new Error(`There is no choice ${id}.`);
    return part.choose(state, value);
  };

  it('gives the room back when its way is changed twice', () => {
    fc.assert(
      fc.property(INPUT, (input) => {
        const state: FormState = { input, otherRoom: undefined };
        const taped = getAt(input, ['room', 'tape']) !== undefined;
        const there = choose(state, 'way', taped ? 'corners' : 'tape');
        expect(getAt(there.input, ['room', taped ? 'outline' : 'tape'])).toBeDefined();
        expect(getAt(there.input, ['room', 'obstacles'])).toEqual(getAt(input, ['room', 'obstacles']));
        expect(choose(there, 'way', taped ? 'tape' : 'corners').input).toEqual(input);
      }),
      { seed: 1707, numRuns: 100 },
    );
  });

  it('begins each way with a good room', () => {
    const taped = choose({ input: START, otherRoom: undefined }, 'way', 'tape');
    expect(checkFitInput(taped.input)).toEqual([]);
    const { input } = taped;
    const back = choose({ input, otherRoom: undefined }, 'way', 'corners');
    expect(checkFitInput(back.input)).toEqual([]);
  });

  it("begins one's own table with the measurements of the chosen one", () => {
    const { input } = choose({ input: START, otherRoom: undefined }, 'table', 'own');
    expect(getAt(input, ['table', 'field', 'length'])).toBe('2235.2 mm');
    expect(checkFitInput(input)).toEqual([]);
  });
});

describe('hostile inputs', () => {
  it('makes a form of anything, with lists no longer than one can look through', () => {
    fc.assert(
      fc.property(ANYTHING, (input) => {
        for (const part of allParts(shape(input)))
          if (part.part === 'list') {
            expect(part.rows.length).toBeLessThanOrEqual(60);
            const value = getAt(input, part.path);
            expect(part.rows.length + part.more).toBe(isList(value) ? value.length : 0);
          }
      }),
      { seed: 1708, numRuns: 120 },
    );
  });

  it('takes a key that objects have of themselves for what it is: a key', () => {
    const input: Json = JSON.parse(
      '{"__proto__": {"room": 1}, "room": {"__proto__": [1]}, "table": "constructor"}',
    );
    const fields = allFields(shape(input));
    const changed = fields.reduce((at, part) => write(at, part, 'x'), input);
    expect(JSON.stringify(changed)).toContain('"__proto__":{"room":1}');
    expect(Object.getPrototypeOf(changed)).toBe(Object.prototype);
  });
});

function asObject(value: Json): { readonly [key: string]: Json } {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) throw new Error('No object.');
  return Object.fromEntries(Object.entries(value));
}
