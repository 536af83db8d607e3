import fc from 'fast-check';
import { changed, places, VALID_INPUTS } from '../helpers/fit-inputs.js';

/** What nobody should send: each made anew, so that no run sees what another has changed. */
const TRAPS: readonly (readonly [string, () => unknown])[] = [
  ['a proxy that throws at everything', () => throwingProxy({})],
  ['a list of a proxy that throws', () => [throwingProxy({})]],
  ['a proxy of a list that throws', () => throwingProxy([[0, 0]])],
  ['a proxy that was revoked', revokedProxy],
  ['a proxy that gives keys without end of their own', () => new Proxy({}, { ownKeys: () => ['a', 'b'] })],
  ['a proxy that says nothing but NaN', () => new Proxy({}, { get: () => Number.NaN, has: () => true })],
  [
    'a getter that throws',
    () => ({
      get room() {
        throw new Error('A trap.');
      },
    }),
  ],
  ['a getter in a list', () => Object.defineProperty([0, 0], 0, { get: () => 1, enumerable: true })],
  ['a getter in a list that throws', () => Object.defineProperty([0, 0], 1, { get: trap, enumerable: true })],
  ['a list that claims to be long', () => Object.assign([], { length: 4e9 })],
  ['a sparse list', () => Object.assign(new Array(5), { 2: [0, 0] })],
  ['a long sparse list', () => new Array(1_000_000)],
  [
    'an own __proto__',
    (): unknown =>
      JSON.parse('{"__proto__": {"polluted": true}, "constructor": {"prototype": {"polluted": true}}}'),
  ],
  [
    'an own __proto__ among good keys',
    (): unknown => JSON.parse('{"length": 1000, "width": 500, "__proto__": {"polluted": true}}'),
  ],
  ['words of Object.prototype', () => 'constructor'],
  ['__proto__ as a word', () => '__proto__'],
  ['toString as a word', () => 'toString'],
  ['an object without a prototype', () => Object.create(null)],
  ['an object with a strange prototype', () => Object.create({ outline: [] })],
  ['a function', () => trap],
  ['a class', () => class Room {}],
  ['a symbol', () => Symbol('room')],
  ['an object with a symbol', () => ({ [Symbol.iterator]: trap, [Symbol.toPrimitive]: trap })],
  ['an object that will be no text', () => ({ toString: trap, valueOf: trap, toJSON: trap })],
  ['a BigInt', () => 10n ** 400n],
  ['a date', () => new Date(Number.NaN)],
  ['a map', () => new Map([['outline', []]])],
  ['a boxed number', () => Object(1000)],
  ['a boxed text', () => Object('2 m')],
  ['a typed list', () => new Float64Array([1, 2])],
  ['a buffer', () => new ArrayBuffer(8)],
  ['an expression', () => /(a+)+$/],
  ['a promise', () => Promise.resolve(1)],
  ['itself', circle],
  ['a list of itself', circularList],
  ['deep lists', () => deep((inner) => [inner])],
  ['deep objects', () => deep((inner) => ({ outline: inner }))],
  ['endless text', () => 'a'.repeat(1_000_000)],
  ['an endless number', () => '9'.repeat(1_000_000)],
  ['an endless fraction', () => `${'1/'.repeat(300_000)}1 in`],
  ['endless space', () => ' '.repeat(1_000_000)],
  ['an endless key', () => ({ ['k'.repeat(1_000_000)]: 1 })],
  ['many keys', () => Object.fromEntries(Array.from({ length: 50_000 }, (_, i) => [`key ${i}`, i]))],
  ['many items', () => new Array(100_000).fill(0)],
  ['many corners', () => Array.from({ length: 20_000 }, (_, i) => [i, i])],
  ['text with odd signs', () => '\u0000\ud800\u202e</svg><script>\n'],
  ['NaN', () => Number.NaN],
  ['Infinity', () => Number.POSITIVE_INFINITY],
  ['-Infinity', () => Number.NEGATIVE_INFINITY],
  ['-0', () => -0],
  ['the least number', () => Number.MIN_VALUE],
  ['the greatest number', () => Number.MAX_VALUE],
];

function trap(): never {
  throw new Error('A trap.');
}

function throwingProxy(target: object): unknown {
  const names = [
    'get',
    'set',
    'has',
    'ownKeys',
    'getPrototypeOf',
    'getOwnPropertyDescriptor',
    'defineProperty',
    'isExtensible',
  ];
  return new Proxy(target, Object.fromEntries(names.map((name) => [name, trap])));
}

function revokedProxy(): unknown {
  const { proxy, revoke } = Proxy.revocable({}, {});
  revoke();
  return proxy;
}

function circle(): unknown {
  const self: Record<string, unknown> = {};
  self.room = self;
  self.outline = self;
  return self;
}

function circularList(): unknown {
  const self: unknown[] = [];
  self.push(self, self);
  return self;
}

function deep(wrap: (inner: unknown) => unknown): unknown {
  let inner: unknown = 0;
  for (let i = 0; i < 20_000; i++) inner = wrap(inner);
  return inner;
}

/** Something hostile with a name, so that a counterexample can be told. */
export interface Hostile {
  readonly what: string;
  readonly make: () => unknown;
  toString(): string;
}

function hostile(what: string, make: () => unknown): Hostile {
  // fast-check prints counterexamples by this.
  const named = { what, make, toString: () => what };
  return Object.defineProperty(named, fc.toStringMethod, { value: () => what });
}

/** Traps, and JSON of any shape. */
export const strange: fc.Arbitrary<Hostile> = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...TRAPS).map(([what, make]) => hostile(what, make)) },
  {
    weight: 1,
    arbitrary: fc.jsonValue({ maxDepth: 4 }).map((value) => hostile(JSON.stringify(value), () => value)),
  },
  {
    weight: 1,
    arbitrary: fc
      .anything({
        withBigInt: true,
        withSparseArray: true,
        withNullPrototype: true,
        withDate: true,
        withMap: true,
        withSet: true,
        withTypedArray: true,
        maxDepth: 3,
      })
      .map((value) => hostile(fc.stringify(value), () => value)),
  },
);

/** Something hostile itself, or in one or two places of something good. */
export function spoilt(good: readonly unknown[]): fc.Arbitrary<Hostile> {
  const inPlaces = fc
    .tuple(fc.constantFrom(...good), fc.array(fc.tuple(fc.nat(), strange), { minLength: 1, maxLength: 2 }))
    .map(([example, changes]) => {
      const spots: { path: readonly (string | number)[]; other: Hostile }[] = [];
      const all = places(example);
      for (const [pick, other] of changes) spots.push({ path: all[pick % all.length].path, other });
      const what = spots.map(({ path, other }) => `${path.join('.')}: ${other.what}`).join(', and ');
      return hostile(what, () =>
        // The deeper place first, so that the other still finds its own.
        spots
          .toSorted((a, b) => b.path.length - a.path.length)
          .reduce((value, { path, other }) => changed(value, path, other.make), example),
      );
    });
  return fc.oneof({ weight: 1, arbitrary: strange }, { weight: 5, arbitrary: inPlaces });
}

export const GOOD_FITS: readonly unknown[] = Object.values(VALID_INPUTS);
