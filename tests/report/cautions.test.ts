import { describe, expect, it } from 'vitest';
import type { TableSpec } from '../../src/equipment/equipment-types.js';
import { type CautionFacts, cautionsFor } from '../../src/report/cautions.js';
import { FLOOR_LOADS, tableLoad } from '../../src/report/floor-loads.js';

const TABLE: TableSpec = {
  id: null,
  name: 'Test table',
  game: 'pool',
  field: { length: 2540, width: 1270 },
  outer: { length: 2794, width: 1524 },
  bedHeight: 790,
  noseHeight: 36,
  railHeight: 42,
  ballDiameter: 57.15,
  usualCue: 1448,
  mass: 350,
  legs: 4,
  source: 'measured',
};
const FACTS: CautionFacts = { doors: [], overheadNames: [], ceilingKnown: true };

const TABLES: readonly TableSpec[] = [
  TABLE,
  { ...TABLE, mass: null },
  { ...TABLE, legs: null },
  { ...TABLE, mass: 1500, legs: 8, outer: { length: 3850, width: 2060 } },
  { ...TABLE, mass: 3 },
];
const ROOMS: readonly CautionFacts[] = [
  FACTS,
  { doors: [{ name: 'the garden door', opens: 'in' }], overheadNames: ['lamp'], ceilingKnown: false },
  {
    doors: [
      { name: 'the hall door', opens: 'out' },
      { name: 'the patio door', opens: 'slides' },
    ],
    overheadNames: [],
    ceilingKnown: true,
    deliveryChecked: true,
  },
];
const EVERY = TABLES.flatMap((table) =>
  ROOMS.map((facts) => ({ table, facts, cautions: cautionsFor(table, facts) })),
);
const messages = (table: TableSpec, facts: CautionFacts, code: string): string =>
  cautionsFor(table, facts)
    .filter((c) => c.code === code)
    .map((c) => c.message)
    .join('\n');

describe('cautionsFor', () => {
  it('never calls a floor, a lift or anything else safe', () => {
    for (const { cautions } of EVERY) {
      for (const { message } of cautions)
        expect(message).not.toMatch(/\bsafe|strong enough|will hold|can bear|no danger/i);
    }
  });

  it('gives every caution a whole sentence and a source', () => {
    for (const { cautions } of EVERY) {
      for (const { message, source } of cautions) {
        expect(message).toMatch(/^[A-Z].*\.$/s);
        expect(message).not.toMatch(/undefined|null|NaN|Infinity/);
        expect(source.length).toBeGreaterThan(5);
      }
    }
  });

  it('always speaks of the floor, lifting, lamps, the escape route and electrics', () => {
    for (const { cautions } of EVERY) {
      const codes = cautions.map((c) => c.code);
      for (const code of ['floor-load', 'lifting', 'lamp', 'escape-route', 'electrics'])
        expect(codes).toContain(code);
    }
  });

  it('never says a load smaller than it is, and by less than a tenth too large', () => {
    for (const { table } of EVERY) {
      if (table.mass === null) continue;
      const load = tableLoad(table.mass, table.legs, table.outer.length, table.outer.width);
      const text = messages(table, FACTS, 'floor-load');
      const said = (pattern: RegExp): number => Number(pattern.exec(text)?.[1]);
      const pairs: [number, number | null][] = [
        [said(/a load of about ([\d.]+) kN/), load.total],
        [said(/about ([\d.]+) kN\/m2 on average/), load.pressure],
        [said(/legs carries about ([\d.]+) kN/), load.perLeg],
        [said(/about ([\d.]+) kN each/), load.perDiagonalLeg],
      ];
      for (const [number, exact] of pairs) {
        if (exact === null) {
          expect(number).toBeNaN();
        } else {
          expect(number).toBeGreaterThanOrEqual(exact - 1e-9);
          expect(number).toBeLessThanOrEqual(exact * 1.1);
        }
      }
    }
  });

  it('says that a mass is not known instead of computing with one', () => {
    const text = messages({ ...TABLE, mass: null }, FACTS, 'floor-load');
    expect(text).toContain('not known');
    expect(text).not.toMatch(/load of about/);
  });

  it('sets every published figure beside it, each with its standing', () => {
    const text = messages(TABLE, FACTS, 'floor-load');
    for (const load of FLOOR_LOADS) {
      expect(text).toContain(load.name);
      expect(text.slice(text.indexOf(load.name))).toMatch(new RegExp(`^[^;]*${load.standing}`));
    }
  });

  it('warns of each door that opens in and of no other', () => {
    const [, opensIn, others] = ROOMS;
    if (opensIn === undefined || others === undefined) throw new Error('rooms missing');
    expect(messages(TABLE, opensIn, 'door')).toContain('the garden door');
    expect(messages(TABLE, others, 'door')).toBe('');
    expect(messages(TABLE, FACTS, 'door')).toContain('No door was given');
  });

  it('names what hangs overhead and says when no ceiling was counted', () => {
    const [, dim] = ROOMS;
    if (dim === undefined) throw new Error('room missing');
    expect(messages(TABLE, dim, 'lamp')).toMatch(/lamp\..*No ceiling was given/s);
    expect(messages(TABLE, FACTS, 'lamp')).toContain('No lamp was given');
    expect(messages(TABLE, FACTS, 'lamp')).not.toContain('No ceiling');
  });

  // WPA Recommended Equipment Specifications, s. 15: 40 in and 65 in; 25.4 mm an inch.
  it('converts the lamp heights rightly', () => {
    expect(40 * 25.4).toBe(1016);
    expect(65 * 25.4).toBeCloseTo(1651, 9);
    expect(messages(TABLE, FACTS, 'lamp')).toMatch(/1\.016 m \(40 in\).*1\.65 m \(65 in\)/);
  });

  it('speaks of the way in unless it was checked', () => {
    for (const { facts, cautions } of EVERY) {
      expect(cautions.some((c) => c.code === 'delivery')).toBe(facts.deliveryChecked !== true);
    }
  });
});
