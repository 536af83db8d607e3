import Ajv2020 from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PASSAGE_KEYS } from '../../src/delivery/read-passage.js';
import { deliveryDefinitions, deliverySchema } from '../../src/delivery-schema.js';
import { DEFAULTS } from '../../src/equipment/defaults.js';
import { changed, isPlainObject, type Path, places } from '../helpers/fit-inputs.js';
import { GOOD_WAYS, read } from './read-inputs.js';

const validate = new Ajv2020({ strict: true, allErrors: true }).compile(deliverySchema);
const accepts = (way: unknown) => read(way).problems.length === 0;

interface Mutant {
  readonly what: string;
  readonly way: unknown;
}

/** Properties that a passage or a part of it cannot do without, and the place where each can be left out. */
const OPTIONAL: Readonly<Record<string, (path: Path, owner: Record<string, unknown>) => boolean>> = {
  name: (path) => path[0] === 'route',
  depth: (path, owner) =>
    owner.kind !== 'lift' && !['before', 'after', 'bottom', 'top'].includes(String(path.at(-1))),
  width: () => false,
  length: () => false,
  thickness: () => false,
  // The height over a floor beside an opening or a flight.
  height: (path) => ['before', 'after', 'bottom', 'top'].includes(String(path.at(-1))),
  headroom: () => false,
  pitch: () => false,
  rise: () => false,
  going: () => false,
  kind: () => false,
  door: () => false,
  route: () => false,
};

/** Ways that are wrong in one place, by their shape alone. */
function mutants(name: string, way: unknown): Mutant[] {
  const found: Mutant[] = [];
  for (const { path, value } of places(way)) {
    const put = (what: string, next: unknown): void => {
      found.push({ what: `${name}: ${what} at ${path.join('.')}`, way: changed(way, path, () => next) });
    };
    put('null', null);
    put('a boolean', true);
    put('a strange object', { nonsense: 1 });
    put('an empty list', []);
    if (typeof value === 'string') put('an empty text', '');
    if (typeof value === 'number' || typeof value === 'string') put('a list', [value]);
    if (isPlainObject(value)) {
      put('an unknown property', { ...value, colour: 'green' });
      for (const key of Object.keys(value)) {
        const optional = OPTIONAL[key];
        if (optional === undefined || optional(path, value)) continue;
        put(`no ${key}`, Object.fromEntries(Object.entries(value).filter(([k]) => k !== key)));
      }
      if ('pitch' in value) put('a step besides the pitch', { ...value, rise: 200, going: 230 });
      if ('pitch' in value) put('a rise besides the pitch', { ...value, rise: 200 });
      if (typeof value.kind === 'string') {
        put('another kind', { ...value, kind: 'cellar' });
        // A property of some other kind.
        for (const key of new Set(Object.values(PASSAGE_KEYS).flat())) {
          const known: readonly string[] =
            Object.entries(PASSAGE_KEYS).find(([k]) => k === value.kind)?.[1] ?? [];
          if (!known.includes(key)) put(`a ${key} that is not its own`, { ...value, [key]: 900 });
        }
      }
    }
    const last = path.at(-1);
    if (last === 'turn' || last === 'pitch' || last === 'tilt') put('too many degrees', 176);
    if (last === 'count' || last === 'carriers') put('a broken number', 1.5);
    if (last === 'held') put('one hold twice', ['flat', 'flat']);
    if (path[2] === 'held') put('another hold', 'upright');
    if (last === 'detail') put('another word', 'all');
  }
  return found;
}

const ALL = Object.entries(GOOD_WAYS).flatMap(([name, way]) => mutants(name, way));

describe('the schema and the check of a way in', () => {
  it.each(Object.entries(GOOD_WAYS))('agree on the good way: %s', (_, way) => {
    expect(validate(way), JSON.stringify(validate.errors)).toBe(true);
    expect(accepts(way)).toBe(true);
  });

  it('agree on every mutant: both refuse it', () => {
    expect(ALL.length).toBeGreaterThan(700);
    expect(ALL.filter(({ way }) => accepts(way)).map(({ what }) => what)).toEqual([]);
    expect(ALL.filter(({ way }) => validate(way)).map(({ what }) => what)).toEqual([]);
  });

  it('agree that whatever the check accepts has the right shape', () => {
    const others = fc.constantFrom<unknown>(
      ...[0, 1, 12, 45, 90, 100, 900, 2000, -500, 1.5, Number.NaN, '2 m', '57 in', '90', 'abc', '', ' '],
      ...['doorway', 'corridor', 'corner', 'stair', 'winder', 'lift', 'opening', 'half-landing', 'flat'],
      ...['on-end', 'answer', 'motions', 'one-piece', 'three-piece', null, true, [], {}, ['flat']],
      ...[{ depth: 900 }, { width: 900, height: 2000 }, { kind: 'corridor', width: 900, height: 2000 }],
    );
    const changes = fc.array(fc.tuple(fc.nat(), others), { minLength: 1, maxLength: 2 });
    let accepted = 0;
    fc.assert(
      fc.property(fc.constantFrom(...Object.values(GOOD_WAYS)), changes, (example, list) => {
        let way: unknown = example;
        for (const [pick, other] of list) {
          const all = places(way);
          way = changed(way, all[pick % all.length].path, () => other);
        }
        if (!accepts(way)) return;
        accepted++;
        expect(validate(way), JSON.stringify({ way, errors: validate.errors })).toBe(true);
      }),
      { seed: 20251127, numRuns: 3000 },
    );
    // Enough of them are good ways for this to say something.
    expect(accepted).toBeGreaterThan(150);
  });

  it('know the same properties of each kind of passage', () => {
    const definitions = deliveryDefinitions();
    for (const [kind, keys] of Object.entries(PASSAGE_KEYS)) {
      const said = Object.keys(definitions[kind]?.properties ?? {});
      expect(said.sort()).toEqual([...keys, 'kind', 'name', 'tolerance'].sort());
    }
  });
});

describe('the schema', () => {
  const said = (part: string, key: string) => deliverySchema.$defs?.[part]?.properties?.[key]?.default;

  it('says the defaults that are used', () => {
    const usual = DEFAULTS.delivery;
    expect(said('delivery', 'handRoom')).toBe(usual.handRoom);
    expect(said('delivery', 'tolerance')).toBe(usual.tolerance);
    expect(said('delivery', 'maxBoxes')).toBe(usual.maxBoxes);
    expect(said('doorway', 'depth')).toBe(usual.wallDepth);
    expect(said('corner', 'turn')).toBe(usual.turn);
    expect(said('piece', 'tilt')).toBe(usual.tilt);
  });

  it('is plain JSON, and describes every property that is not described where it points to', () => {
    expect(JSON.parse(JSON.stringify(deliverySchema))).toEqual(deliverySchema);
    const nameless = Object.entries(deliverySchema.$defs ?? {}).flatMap(([name, { properties }]) =>
      Object.entries(properties ?? {})
        .filter(([, p]) => !('description' in p || '$ref' in p || 'const' in p))
        .map(([key]) => `${name}.${key}`),
    );
    expect(nameless).toEqual([]);
  });
});
