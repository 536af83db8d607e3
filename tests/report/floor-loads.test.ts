import { describe, expect, it } from 'vitest';
import { FLOOR_LOADS, tableLoad } from '../../src/report/floor-loads.js';

describe('tableLoad', () => {
  // Derived by hand: 350 kg (least mass of a 9 ft table, DBU, second-hand) over 2.794 x 1.524 m, on four legs.
  it('shares a pool table of 350 kg out over footprint and legs', () => {
    const load = tableLoad(350, 4, 2794, 1524);
    expect(load.total).toBeCloseTo(3.4323, 4);
    expect(load.pressure).toBeCloseTo(0.806, 3);
    expect(load.perLeg).toBeCloseTo(0.8581, 4);
    expect(load.perDiagonalLeg).toBeCloseTo(1.7162, 4);
  });

  it('has no diagonal pair on a table of eight legs', () => {
    const load = tableLoad(1500, 8, 3850, 2060);
    expect(load.perLeg).toBeCloseTo(14.70998 / 8, 5);
    expect(load.perDiagonalLeg).toBeNull();
  });

  it('says nothing about legs that are not known', () => {
    const load = tableLoad(300, null, 2500, 1400);
    expect(load.perLeg).toBeNull();
    expect(load.perDiagonalLeg).toBeNull();
  });
});

describe('FLOOR_LOADS', () => {
  // 40 and 75 psf in kN/m2: 1 lbf/ft2 = 4.4482216152605 N / 0.09290304 m2 (international foot and pound).
  const psf = (value: number): number => (value * 4.4482216152605) / 0.09290304 / 1000;

  it('converts the American figures as named', () => {
    const american = FLOOR_LOADS.filter((load) => load.name.includes('psf'));
    expect(american).toHaveLength(2);
    for (const load of american) {
      const pounds = Number(/\((\d+) psf\)/.exec(load.name)?.[1]);
      expect(load.area[0]).toBeCloseTo(psf(pounds), 2);
    }
  });

  it('keeps every range in order', () => {
    for (const { area, point } of FLOOR_LOADS) {
      expect(area[0]).toBeLessThanOrEqual(area[1]);
      if (point !== null) expect(point[0]).toBeLessThanOrEqual(point[1]);
    }
  });
});
