import { describe, expect, it } from 'vitest';
import { TABLES } from '../../src/index.js';
import { tableLoad } from '../../src/report/floor-loads.js';

/**
 * Masses and pressures as derived in our notes on published standards [derived], from the least masses of the DBU [second-hand:
 * 350 kg for 9 ft, 300 kg for 8 ft], up to 1500 kg for full-size snooker [second-hand] and an assumed 900 kg for a match carom
 * table [from memory]. kN and kN/m2, printed to the second decimal.
 *
 * The notes do not say which outside they spread the mass over. Where a published outside exists the printed pressure has to
 * come out over it; for pool there is only a range of rail widths (WPA, s. 6: 4 to 7 1/2 in [seen]), and the printed
 * pressure has to lie in the range that follows.
 */
interface Row {
  readonly name: string;
  readonly mass: number;
  readonly legs: number;
  readonly pressure: number;
  readonly perLeg: number;
  /** N/mm2 under one leg on 50 x 50 mm. */
  readonly contact: number;
  /** Least and greatest outside, mm. */
  readonly outside: readonly [readonly [number, number], readonly [number, number]];
}

const POOL_9: Row['outside'] = [
  [2743.2, 1473.2],
  [2921, 1651],
];
/** DBU field 2240 x 1120 mm [seen] with rails of 4 to 7 1/2 in. */
const POOL_8: Row['outside'] = [
  [2443.2, 1323.2],
  [2621, 1501],
];
/** French usage [second-hand]. */
const CAROM: Row['outside'] = [
  [3100, 1677.5],
  [3100, 1677.5],
];
/** One stated size [second-hand]. */
const SNOOKER: Row['outside'] = [
  [3850, 2060],
  [3850, 2060],
];

const ROWS: readonly Row[] = [
  { name: 'pool 9 ft', mass: 350, legs: 4, pressure: 0.8, perLeg: 0.86, contact: 0.34, outside: POOL_9 },
  {
    name: 'pool 9 ft, heavier',
    mass: 450,
    legs: 4,
    pressure: 1.03,
    perLeg: 1.1,
    contact: 0.44,
    outside: POOL_9,
  },
  { name: 'pool 8 ft', mass: 300, legs: 4, pressure: 0.85, perLeg: 0.74, contact: 0.29, outside: POOL_8 },
  { name: 'carom match', mass: 900, legs: 4, pressure: 1.7, perLeg: 2.21, contact: 0.88, outside: CAROM },
  {
    name: 'snooker 12 ft',
    mass: 1500,
    legs: 8,
    pressure: 1.85,
    perLeg: 1.84,
    contact: 0.74,
    outside: SNOOKER,
  },
];

describe.each(ROWS)(
  '$name of $mass kg on $legs legs',
  ({ mass, legs, pressure, perLeg, contact, outside }) => {
    const [small, large] = outside.map(([length, width]) => tableLoad(mass, legs, length, width));

    it('presses as the notes say', () => {
      // Half a unit of the last printed digit either way.
      expect(large.pressure).toBeLessThanOrEqual(pressure + 0.005);
      expect(small.pressure).toBeGreaterThanOrEqual(pressure - 0.005);
    });

    it('stands on its legs as the notes say', () => {
      expect(small.perLeg).toBeCloseTo(perLeg, 2);
      expect(((small.perLeg ?? 0) * 1000) / (50 * 50)).toBeCloseTo(contact, 2);
    });
  },
);

it('spreads the least mass of a 9 ft table over the outside in the catalogue', () => {
  // 350 kg x 9.80665 m/s2 over 2.794 x 1.524 m is 0.8061 kN/m2 by hand. The notes print 0.80, which asks for an outside of
  // 4.264 to 4.317 m2 (such as 2.80 x 1.53 m); the catalogue's has 4.258 m2. They are 0.75 % apart.
  const { mass, legs, outer } = TABLES['pool-9ft'];
  const { pressure } = tableLoad(mass ?? 0, legs, outer.length, outer.width);
  expect(pressure).toBeCloseTo(0.8061, 4);
});
