import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cautionsForDelivery, type DeliveryFacts } from '../../src/delivery/delivery-cautions.js';
import type { Passage } from '../../src/delivery/passages.js';
import { guidelinesFor, handlingOf } from '../../src/equipment/handling.js';

/** Seed of every property here, so that each run is the same. */
const SEED = 20_261_141;

const KINDS: readonly Passage['kind'][] = [
  'doorway',
  'corridor',
  'corner',
  'stair',
  'quarter-landing',
  'half-landing',
  'winder',
  'lift',
  'opening',
];

const anyFacts: fc.Arbitrary<DeliveryFacts> = fc
  .record({
    kinds: fc.array(fc.constantFrom(...KINDS), { maxLength: 6 }),
    pieces: fc.array(
      fc.record({
        mass: fc.option(fc.double({ min: 0.1, max: 900, noNaN: true })),
        carriers: fc.option(fc.integer({ min: 1, max: 8 })),
      }),
      { maxLength: 4 },
    ),
  })
  .map(({ kinds, pieces }) => ({
    route: kinds.map((kind, i) => ({ kind, name: `${kind} number ${i}` })),
    pieces: pieces.map((piece, i) => ({ name: `piece ${i}`, ...piece })),
  }));

function holds(check: (facts: DeliveryFacts) => void): void {
  fc.assert(fc.property(anyFacts, check), { seed: SEED, numRuns: 200 });
}

const SLATES: DeliveryFacts = {
  route: [
    { kind: 'doorway', name: 'front door' },
    { kind: 'stair', name: 'cellar stairs' },
    { kind: 'lift', name: 'goods lift' },
    { kind: 'opening', name: 'balcony door' },
  ],
  pieces: [
    { name: 'slate', mass: 105, carriers: 4 },
    { name: 'rail', mass: 9, carriers: null },
    { name: 'cabinet', mass: null, carriers: null },
  ],
};
const told = (facts: DeliveryFacts, code: string): string =>
  cautionsForDelivery(facts)
    .filter((caution) => caution.code === code)
    .map(({ message }) => message)
    .join('\n');

describe('cautionsForDelivery', () => {
  it('never calls anything safe or without danger', () => {
    holds((facts) => {
      for (const { message, source } of cautionsForDelivery(facts)) {
        expect(`${message} ${source}`).not.toMatch(
          /safe|strong enough|will hold\b|can bear|no danger|harmless|no risk/i,
        );
      }
    });
  });

  it('gives every caution whole sentences and a source', () => {
    holds((facts) => {
      for (const { message, source } of cautionsForDelivery(facts)) {
        expect(message).toMatch(/^[A-Z].*\.$/s);
        expect(message).not.toMatch(/undefined|null|NaN|Infinity| {2}/);
        expect(source.length).toBeGreaterThan(5);
      }
    });
  });

  it('speaks of stairs, lifts and hoists where the way has them, by name, and of the rest always', () => {
    holds((facts) => {
      const codes = cautionsForDelivery(facts).map(({ code }) => code);
      for (const code of ['floor-protection', 'escape-route', 'fitters']) {
        expect(codes.filter((c) => c === code)).toHaveLength(1);
      }
      for (const [code, kinds] of [
        ['stairs', ['stair', 'quarter-landing', 'half-landing', 'winder']],
        ['lift', ['lift']],
        ['hoist', ['opening']],
      ] as const) {
        const named = facts.route.filter(({ kind }) => (kinds as readonly string[]).includes(kind));
        expect(codes.includes(code)).toBe(named.length > 0);
        for (const { name } of named) expect(told(facts, code)).toContain(name);
      }
    });
  });

  it('never says a share smaller than it is, and names every piece that is above a guideline figure', () => {
    holds((facts) => {
      const text = told(facts, 'handling');
      for (const { name, mass, carriers } of facts.pieces) {
        if (mass === null) {
          expect(text).toMatch(new RegExp(`Not known here is the weight of: [^.]*${name}`));
          continue;
        }
        const { massPerCarrier, exceeded } = handlingOf(mass, carriers);
        const said = new RegExp(`"${name}" (\\d+) kg \\((\\d+) kg, \\d+ carriers?\\)`).exec(text);
        if (exceeded.length > 0) expect(said).not.toBeNull();
        if (said !== null) {
          expect(Number(said[1])).toBeGreaterThanOrEqual(massPerCarrier);
          expect(Number(said[1])).toBeLessThan(massPerCarrier + 1);
          expect(Number(said[2])).toBeGreaterThanOrEqual(mass);
        }
        for (const { name: guideline } of exceeded) {
          const groups = text.split('; ').filter((part) => part.includes(`(${guideline}), by `));
          expect(groups.some((part) => part.includes(`"${name}"`))).toBe(true);
        }
      }
    });
  });

  it('sets the figures beside the shares, rounded down, each with its source', () => {
    const text = told(SLATES, 'handling');
    expect(text).toContain('"slate" 27 kg (105 kg, 4 carriers)');
    expect(text).not.toContain('"rail" 9 kg');
    const { source } = cautionsForDelivery(SLATES)[0] ?? { source: '' };
    for (const { name, perCarrier, source: figure } of guidelinesFor(4)) {
      const said = Number(/([\d.]+) kg \($/.exec(text.slice(0, text.indexOf(name)))?.[1]);
      expect(said).toBeLessThanOrEqual(perCarrier);
      expect(said).toBeGreaterThan(perCarrier - 0.11);
      expect(source).toContain(figure);
    }
  });

  it('says so where no share is above a figure, and that this shows nothing', () => {
    const text = told({ route: [], pieces: [{ name: 'leg', mass: 6, carriers: 1 }] }, 'handling');
    expect(text).toContain('"leg" 6 kg (6 kg, 1 carrier)');
    expect(text).toMatch(/No share is above .* does not show that nobody will be hurt\.$/);
  });

  it('sends everybody to the plate of the lift and tells the weight to set beside it', () => {
    expect(told(SLATES, 'lift')).toMatch(/rated load off the plate.*105 kg/);
    expect(told({ ...SLATES, pieces: [] }, 'lift')).not.toContain('heaviest');
  });

  it('keeps people from under the load', () => {
    expect(told(SLATES, 'stairs')).toMatch(/nobody stand or walk underneath/);
    expect(told(SLATES, 'hoist')).toMatch(/licensed lifting contractor.*nobody underneath/);
  });
});
