import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULTS } from '../../src/equipment/defaults.js';
import { guidelinesFor, handlingOf, usualCarriers } from '../../src/equipment/handling.js';

const figure = (id: string, carriers: number) =>
  guidelinesFor(carriers).find((guideline) => guideline.id === id)?.perCarrier;

describe('guideline figures', () => {
  it('are the published ones (all from memory)', () => {
    // Revised NIOSH lifting equation: load constant 23 kg, printed as 51 lb; 1 lb is 0.45359237 kg.
    expect(figure('niosh', 1)).toBe(Math.round(51 * 0.45359237));
    // EN 1005-2: reference mass for the adult working population.
    expect(figure('en-1005-2', 1)).toBe(25);
    // HSE: 25 kg for men at its best place; two do two thirds of the sum of both, three do half of the sum.
    expect(figure('hse-team', 1)).toBe(25);
    expect(2 * (figure('hse-team', 2) ?? 0)).toBeCloseTo((2 / 3) * 2 * 25, 9);
    expect(3 * (figure('hse-team', 3) ?? 0)).toBeCloseTo((1 / 2) * 3 * 25, 9);
  });

  it('come lowest first, each with its source, and none speaks of safety', () => {
    for (let carriers = 1; carriers <= 8; carriers++) {
      const all = guidelinesFor(carriers);
      expect(all.map((g) => g.perCarrier)).toEqual(all.map((g) => g.perCarrier).sort((a, b) => a - b));
      for (const { name, source } of all) {
        expect(source).toMatch(/from memory/);
        expect(name).not.toMatch(/safe/i);
      }
    }
  });
});

describe('a mass in hands', () => {
  it('is shared out, and what is exceeded is named', () => {
    const two = handlingOf(48, 2);
    expect(two.massPerCarrier).toBe(24);
    expect(two.exceeded.map((g) => g.id)).toEqual(['hse-team', 'niosh']);
    expect(handlingOf(23, 1).exceeded).toEqual([]);
    expect(handlingOf(200, 4).exceeded.map((g) => g.id)).toEqual(['hse-team', 'niosh', 'en-1005-2']);
  });

  it('has as many carriers as keep the share at the default, up to the most', () => {
    const { carrierMass, mostCarriers } = DEFAULTS.delivery;
    expect(usualCarriers(1)).toBe(1);
    expect(usualCarriers(carrierMass)).toBe(1);
    expect(usualCarriers(carrierMass + 0.1)).toBe(2);
    expect(usualCarriers(1000)).toBe(mostCarriers);
    expect(handlingOf(96).carriers).toBe(4);
    expect(handlingOf(96, null)).toEqual(handlingOf(96, 4));
  });

  it('exceeds no less when it grows, and no more with another carrier by the plain figures', () => {
    const plain = (mass: number, carriers: number) =>
      handlingOf(mass, carriers).exceeded.filter((g) => g.id !== 'hse-team').length;
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 2000, noNaN: true }),
        fc.double({ min: 0, max: 500, noNaN: true }),
        fc.integer({ min: 1, max: 12 }),
        (mass, more, carriers) => {
          const light = handlingOf(mass, carriers);
          const heavy = handlingOf(mass + more, carriers);
          expect(heavy.exceeded.map((g) => g.id)).toEqual(
            expect.arrayContaining(light.exceeded.map((g) => g.id)),
          );
          expect(plain(mass, carriers + 1)).toBeLessThanOrEqual(plain(mass, carriers));
          expect(light.massPerCarrier * light.carriers).toBeCloseTo(mass, 6);
        },
      ),
      { seed: 20251125, numRuns: 300 },
    );
  });
});
