import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TABLES } from '../../src/equipment/tables.js';
import { changed, places, VALID_INPUTS } from '../helpers/fit-inputs.js';
import { pieceOf, read, SCENE } from './read-pieces.js';

const { furnishings, arrangement } = VALID_INPUTS.furnished ?? {};
const crate = { name: 'crate', footprint: { length: 900, width: 600 }, height: 700 };

/** Every problem has a path that starts as it should and words that fit on a few lines. */
function expectWords(result: ReturnType<typeof read>): void {
  for (const { path, message } of result.problems) {
    expect(path).toMatch(/^(furnishings|arrangement)/);
    expect(message.length).toBeGreaterThan(10);
    expect(message.length).toBeLessThan(600);
  }
}

describe('reading pieces from a stranger', () => {
  it('never throws, whatever it is given, and answers with pieces or with problems', () => {
    const strange = fc.anything({
      withBigInt: true,
      withSparseArray: true,
      withNullPrototype: true,
      withDate: true,
      withMap: true,
    });
    const one = fc.tuple(fc.nat(), strange).map(([pick, other]) => {
      const all = places(furnishings);
      return changed(furnishings, all[pick % all.length]?.path ?? [], () => other);
    });
    fc.assert(
      fc.property(
        fc.oneof(one, strange, fc.array(strange)),
        fc.oneof(fc.constant(arrangement), strange),
        fc.constantFrom(null, SCENE),
        fc.constantFrom(null, ...Object.values(TABLES)),
        (pieces, how, scene, table) => {
          const result = read(pieces, how, scene, table);
          const none = Array.isArray(pieces) ? pieces.length === 0 : pieces === undefined;
          expect(result.checked === null).toBe(result.problems.length > 0 || none);
          for (const { path } of result.problems) expect(path).toMatch(/^(furnishings|arrangement)/);
        },
      ),
      { seed: 20251203, numRuns: 1500 },
    );
  });

  it('asks no getter and calls nothing of the input', () => {
    let asked = 0;
    const trap = {
      get kind() {
        asked++;
        return 'sofa';
      },
      toString() {
        asked++;
        return 'sofa';
      },
    };
    const zone = Object.defineProperty({}, 'front', {
      enumerable: true,
      get: () => {
        asked++;
        return 600;
      },
    });
    const result = read([trap, { ...crate, zones: [zone] }, { kind: trap }, { ...crate, name: trap }]);
    expect(asked).toBe(0);
    expect(result.checked).toBeNull();
    expect(result.problems.map(({ code, path }) => `${code} @ ${path}`)).toEqual(
      expect.arrayContaining([
        'not-plain-data @ furnishings[0].kind',
        'not-plain-data @ furnishings[1].zones[0].front',
        'not-text @ furnishings[2].kind',
        'not-text @ furnishings[3].name',
      ]),
    );
  });

  it('takes nothing from a prototype, and no word of one for a kind', () => {
    const inherited = Object.create({ kind: 'sofa' });
    expect(read([inherited]).problems.map(({ code }) => code)).toEqual(['not-plain-data']);
    const trip: unknown = JSON.parse('[{"kind":"sofa","__proto__":{"name":"x"}}]');
    expect(read(trip).problems.map(({ path, code }) => `${code} @ ${path}`)).toEqual([
      'unknown-property @ furnishings[0].__proto__',
    ]);
    for (const kind of ['__proto__', 'constructor', 'toString', 'hasOwnProperty', '']) {
      expect(read([{ kind }]).problems.map(({ code }) => code)).toEqual(['unknown-kind']);
    }
    for (const word of ['__proto__', 'constructor']) {
      const codes = read([{ ...crate, stands: word, turns: word }]).problems.map(({ code }) => code);
      expect(codes).toEqual(['unknown-word', 'unknown-word']);
    }
    expect(
      pieceOf({ ...crate, name: '__proto__', zones: [{ name: 'constructor', front: 300 }] }),
    ).toMatchObject({
      name: '__proto__',
      zones: [{ name: 'constructor' }],
    });
  });

  it('gives endless text and lists few words', () => {
    const long = 'sofa'.repeat(250_000);
    const list = new Array(1e6).fill(0);
    for (const piece of [
      { kind: long },
      { ...crate, name: long },
      { ...crate, height: long },
      { ...crate, stands: long, turns: long },
      { ...crate, footprint: list },
      { ...crate, turns: list },
      { ...crate, zones: list },
      { ...crate, zones: [{ front: long, shares: list }] },
      { ...crate, pose: { x: long, y: 0 } },
    ]) {
      const result = read([piece]);
      expect(result.problems.length).toBeGreaterThan(0);
      expectWords(result);
    }
    expectWords(read(list, { way: long }));
    expect(read(list).problems).toHaveLength(1);
  });

  it('finds the holes of lists', () => {
    const holes = (length: number, filled: object) => Object.assign(new Array(length), filled);
    const codes = (piece: object) => read([piece]).problems.map(({ code, path }) => `${code} @ ${path}`);
    expect(codes({ ...crate, turns: holes(2, { 0: 90 }) })).toEqual([
      'missing-item @ furnishings[0].turns[1]',
    ]);
    expect(codes({ ...crate, zones: holes(2, { 1: { front: 600 } }) })).toEqual([
      'missing-item @ furnishings[0].zones[0]',
    ]);
    expect(codes({ ...crate, zones: [{ front: 600, shares: new Array(1) }] })).toEqual([
      'missing-item @ furnishings[0].zones[0].shares[0]',
    ]);
    expect(codes({ ...crate, footprint: holes(3, { 0: [0, 0], 2: [900, 0] }) })).toEqual([
      'missing-item @ furnishings[0].footprint[1]',
    ]);
  });
});

describe('reading pieces', () => {
  it('reads the same after a trip through JSON', () => {
    const trip: unknown = JSON.parse(JSON.stringify(furnishings));
    expect(read(trip, arrangement)).toEqual(read(furnishings, arrangement));
    expect(read(furnishings, arrangement).problems).toEqual([]);
  });

  it('reads -0 as 0, which JSON cannot tell apart', () => {
    const zero = (nought: number) => [
      {
        ...crate,
        footprint: [
          [nought, nought],
          [900, nought],
          [900, 600],
        ],
        from: nought,
        turns: [nought],
        zones: [{ front: 600, back: nought, from: nought }],
        pose: { x: nought, y: nought, turn: nought },
      },
    ];
    expect(read(zero(-0))).toEqual(read(zero(0)));
    expect(read(zero(0)).problems).toEqual([]);
  });

  it('reads text with a unit as the number of millimetres', () => {
    const unit = fc.constantFrom<readonly [string, number]>(['mm', 1], ['cm', 10], ['m', 1000], ['in', 25.4]);
    const size = fc.integer({ min: 400, max: 3000 });
    fc.assert(
      fc.property(unit, size, size, size, ([word, mm], length, width, height) => {
        const piece = (write: (value: number) => number | string) => ({
          footprint: { length: write(length), width: write(width) },
          height: write(height),
          from: write(width),
          zones: [{ front: write(height), to: write(4000) }],
          pose: { x: write(length), y: write(width) },
        });
        const text = pieceOf(piece((value) => `${(value / mm).toFixed(9)} ${word}`));
        const number = pieceOf(piece((value) => value));
        for (const key of ['length', 'width', 'from', 'to'] as const) {
          expect(text[key]).toBeCloseTo(number[key], 5);
        }
        expect(text.zones[0]?.front).toBeCloseTo(height, 5);
        expect(text.pose?.x).toBeCloseTo(length, 5);
      }),
      { seed: 20251204, numRuns: 200 },
    );
  });

  it('does not change what it is given, and shares nothing with it', () => {
    const turns = [90];
    const corner = [900, 600];
    const piece = { ...crate, footprint: [[0, 0], [900, 0], corner], turns };
    const before = JSON.stringify(piece);
    const checked = pieceOf(piece);
    expect(JSON.stringify(piece)).toBe(before);
    turns[0] = 0;
    corner[1] = 5;
    expect(checked.turns).toEqual([90]);
    expect(checked.width).toBe(600);
    expect(checked.ring).toEqual([
      [-450, -300],
      [450, -300],
      [450, 300],
    ]);
  });
});
