import { describe, expect, it } from 'vitest';
import { clearanceAt } from '../../src/placement/clearance-at.js';
import { findPlacement } from '../../src/placement/find-placement.js';
import { CLOSED_FORMS } from './closed-forms.js';
import { problem, regular } from './rooms.js';

const options = { gap: 0.001, maxBoxes: 200_000, turns: 'any' } as const;

describe('rooms with a closed form', () => {
  it.each(CLOSED_FORMS.map((form) => [form.name, form] as const))(
    '%s',
    (_, { outline, tall, l, w, clearance }) => {
      const play = { length: l, width: w };
      const room = problem(outline, play, tall ?? [], [], play);
      const found = findPlacement(room, options);
      expect(found.stopped).toBe(false);
      expect(found.upperBound - found.value).toBeLessThanOrEqual(0.001 + 1e-9);
      expect(found.upperBound).toBeGreaterThanOrEqual(clearance - 1e-6);
      expect(Math.abs(found.value - clearance)).toBeLessThanOrEqual(0.002);
      if (found.pose === null) throw new Error('no pose');
      expect(clearanceAt(room, found.pose).clearance).toBeCloseTo(found.value, 8);
    },
  );

  it('F13 ring of two 180-gons, between the values for circles', () => {
    const [outer, inner, n] = [4200, 600, 180];
    const play = { length: 2177.8, width: 1060.8 };
    const ring = (ro: number, ri: number): number =>
      (ro ** 2 - (ri + play.width) ** 2 - play.length ** 2 / 4) / (2 * (ro + ri + play.width));
    // The outer polygon holds a circle this much smaller, the pillar's lies in one of its own radius.
    const apothem = outer * Math.cos(Math.PI / n);
    const room = problem(regular(n, outer), play, [regular(n, inner)], [], play);
    const found = findPlacement(room, { ...options, gap: 0.05 });
    expect(found.upperBound).toBeGreaterThanOrEqual(ring(apothem, inner));
    expect(found.value).toBeLessThanOrEqual(ring(outer, inner * Math.cos(Math.PI / n)));
  });
});
