import { describe, expect, it } from 'vitest';
import { BALLS } from '../../src/equipment/balls.js';
import { CUES } from '../../src/equipment/cues.js';
import { DEFAULTS } from '../../src/equipment/defaults.js';
import type { FieldSize } from '../../src/equipment/equipment-types.js';
import { TABLES, type TableId } from '../../src/equipment/tables.js';

const INCH = 25.4;
const FOOT = 12 * INCH;

const tables = Object.entries(TABLES);

describe('published sizes', () => {
  // WPA Recommended Equipment Specifications (2001), s. 5: 100 x 50 in and 92 x 46 in, nose to nose.
  // DBU Materialnormen Pool, s. 1.1: 2540 x 1270 and 2240 x 1120 mm.
  // WEPF World Eightball specification (second-hand): 7 ft x 3 ft 6 in and 6 ft x 3 ft between the cushions.
  // Official rules of snooker, s. 1: 11 ft 8 1/2 in x 5 ft 10 in, printed as 3569 x 1778 mm.
  // B&SCC rules, metric edition: 3500 x 1750 mm.
  // UMB rules, art. 2.1: 2840 x 1420 mm. DBU carom rules, s. 2: 2300 x 1150 and 2100 x 1050 mm.
  // International Committee of Pyramid (second-hand): 3550 x 1775 mm.
  it.each<[TableId, number, number]>([
    ['pool-9ft', 100 * INCH, 50 * INCH],
    ['pool-8ft-wpa', 92 * INCH, 46 * INCH],
    ['pool-8ft-dbu', 2240, 1120],
    ['english-7ft-play', 7 * FOOT, 3.5 * FOOT],
    ['english-6ft-play', 6 * FOOT, 3 * FOOT],
    ['snooker-12ft', 3569, 1778],
    ['snooker-12ft-metric', 3500, 1750],
    ['carom-match', 2840, 1420],
    ['carom-half-de', 2300, 1150],
    ['carom-small', 2100, 1050],
    ['pyramid-12ft', 3550, 1775],
  ])('%s has a field of %d x %d mm', (id, length, width) => {
    expect(TABLES[id].field.length).toBeCloseTo(length, 6);
    expect(TABLES[id].field.width).toBeCloseTo(width, 6);
  });

  // Common practice, from memory: 88 x 44, 78 x 39 and 76 x 38 in.
  it.each<[TableId, number]>([
    ['pool-8ft-home', 88],
    ['pool-7ft-bar', 78],
    ['pool-7ft-bar-small', 76],
  ])('%s is %d in long (from memory)', (id, inches) => {
    expect(TABLES[id].field.length).toBeCloseTo(inches * INCH, 6);
    expect(TABLES[id].field.width).toBeCloseTo((inches / 2) * INCH, 6);
  });

  it('prints the snooker table in mm as its rules do, to the nearest mm', () => {
    // Official rules of snooker, s. 1.
    expect(Math.round(11 * FOOT + 8.5 * INCH)).toBe(TABLES['snooker-12ft'].field.length);
    expect(Math.round(5 * FOOT + 10 * INCH)).toBe(TABLES['snooker-12ft'].field.width);
  });

  it('has pool rails of 4 to 7 1/2 in', () => {
    // WPA Recommended Equipment Specifications (2001), s. 6.
    for (const id of [
      'pool-9ft',
      'pool-8ft-wpa',
      'pool-8ft-home',
      'pool-7ft-bar',
      'pool-7ft-bar-small',
    ] as const) {
      const { field, outer } = TABLES[id];
      for (const rail of [(outer.length - field.length) / 2, (outer.width - field.width) / 2]) {
        expect(rail).toBeGreaterThanOrEqual(4 * INCH);
        expect(rail).toBeLessThanOrEqual(7.5 * INCH);
      }
    }
  });

  it('has English pool tables whose field is 1 ft less than the outside, within 2 in', () => {
    // British trade standard (BAPTO and BACTA): outside 7 x 4 ft and 8 x 4 1/2 ft.
    expect(TABLES['english-7ft'].outer.length).toBeCloseTo(7 * FOOT, 6);
    expect(TABLES['english-7ft'].outer.width).toBeCloseTo(4 * FOOT, 6);
    expect(TABLES['english-7ft-play'].outer.length).toBeCloseTo(8 * FOOT, 6);
    expect(TABLES['english-7ft-play'].outer.width).toBeCloseTo(4.5 * FOOT, 6);
    for (const [, table] of tables.filter(([, t]) => t.game === 'English pool')) {
      expect(Math.abs(table.outer.length - table.field.length - FOOT)).toBeLessThanOrEqual(2 * INCH);
      expect(Math.abs(table.outer.width - table.field.width - FOOT)).toBeLessThanOrEqual(2 * INCH);
    }
  });

  it('has carom frames of 115 to 135 mm and a nose of 36 to 38 mm', () => {
    // UMB rules, art. 2: 125 +- 10 mm and 37 +- 1 mm.
    for (const [, { field, outer, noseHeight }] of tables.filter(([, t]) => t.game === 'carom')) {
      expect(Math.abs((outer.length - field.length) / 2 - 125)).toBeLessThanOrEqual(10);
      expect(Math.abs((outer.width - field.width) / 2 - 125)).toBeLessThanOrEqual(10);
      expect(Math.abs(noseHeight - 37)).toBeLessThanOrEqual(1);
    }
  });

  it('has heights within the published bands', () => {
    // WPA, s. 2: bed at 29 1/4 to 31 in; s. 7: nose at 62.5 to 64.5 % of the ball.
    const pool = TABLES['pool-9ft'];
    expect(pool.bedHeight).toBeGreaterThanOrEqual(29.25 * INCH);
    expect(pool.bedHeight).toBeLessThanOrEqual(31 * INCH);
    expect(pool.noseHeight / pool.ballDiameter).toBeGreaterThanOrEqual(0.625);
    expect(pool.noseHeight / pool.ballDiameter).toBeLessThanOrEqual(0.645);
    // DBU Materialnormen Pool, s. 1.2.
    const dbu = TABLES['pool-8ft-dbu'];
    expect(Math.abs(dbu.bedHeight - 800)).toBeLessThanOrEqual(50);
    // Official rules of snooker, s. 1: top of the rail at 864 +- 13 mm.
    const snooker = TABLES['snooker-12ft'];
    expect(Math.abs(snooker.bedHeight + snooker.railHeight - 864)).toBeLessThanOrEqual(13);
    // UMB rules, art. 2: 750 to 800 mm, read as the frame's top; the Norwegian federation reads it as the cloth.
    const carom = TABLES['carom-match'];
    expect(carom.bedHeight).toBeGreaterThanOrEqual(750);
    expect(carom.bedHeight + carom.railHeight).toBeLessThanOrEqual(800);
  });

  it('weighs at least what is asked', () => {
    // DBU, second-hand: 9 ft 350 kg, 8 ft 300 kg.
    expect(TABLES['pool-9ft'].mass).toBe(350);
    expect(TABLES['pool-8ft-dbu'].mass).toBe(300);
  });
});

describe('balls and cues', () => {
  it('has the published diameters', () => {
    // WPA Recommended Equipment Specifications (2001), s. 16: 2 1/4 in.
    expect(BALLS.pool.diameter).toBe(2.25 * INCH);
    // Official rules of snooker, s. 1.
    expect(BALLS.snooker.diameter).toBe(52.5);
    // WEPF, second-hand: 2 in and 1 7/8 in to the nearest 0.1 mm.
    expect(BALLS['english-object'].diameter).toBe(2 * INCH);
    expect(BALLS['english-cue'].diameter).toBeCloseTo(1.875 * INCH, 1);
    // A national federation, second-hand: 61 to 61.5 mm.
    expect(BALLS.carom.diameter).toBeGreaterThanOrEqual(61);
    expect(BALLS.carom.diameter).toBeLessThanOrEqual(61.5);
    // An encyclopaedia on Russian pyramid, second-hand.
    expect(BALLS.pyramid.diameter).toBe(68);
  });

  it('has cues of the length on their label, to the nearest cm too', () => {
    for (const [id, cue] of Object.entries(CUES)) {
      const inches = Number(/^cue-(\d+)in$/.exec(id)?.[1]);
      expect(cue.id).toBe(id);
      expect(cue.name).toBe(`${inches} in`);
      expect(cue.length).toBeCloseTo(inches * INCH, 6);
    }
    // Common practice, no source: what shops print beside the inches.
    expect(Math.round(CUES['cue-57in'].length / 10)).toBe(145);
    expect(Math.round(CUES['cue-48in'].length / 10)).toBe(122);
    expect(Math.round(CUES['cue-36in'].length / 10)).toBe(91);
  });

  it('knows which cues pool allows', () => {
    // WPA Recommended Equipment Specifications (2001), s. 17: at least 40 in.
    const short = Object.values(CUES).filter((cue) => cue.length < 40 * INCH);
    expect(short.map((cue) => cue.name)).toEqual(['36 in']);
  });

  it('says where every ball and cue comes from', () => {
    for (const [id, ball] of Object.entries(BALLS)) {
      expect(ball.id).toBe(id);
      expect(ball.source.length).toBeGreaterThan(20);
    }
    for (const { source, tipRadius, buttRadius } of Object.values(CUES)) {
      expect(source).toMatch(/no source|from memory/);
      expect(tipRadius).toBe(DEFAULTS.cue.tipRadius);
      expect(buttRadius).toBe(DEFAULTS.cue.buttRadius);
    }
  });
});

describe('every table', () => {
  it.each(tables)('%s hangs together', (id, table) => {
    const { field, outer } = table;
    expect(table.id).toBe(id);
    expect(table.name).not.toBe('');
    for (const key of ['length', 'width'] as const) {
      const rail = (outer[key] - field[key]) / 2;
      expect(rail).toBeGreaterThan(DEFAULTS.table.cushionDepth);
      expect(rail).toBeLessThan(200);
    }
    // Two squares, within 8 %.
    expect(Math.abs(field.length / field.width / 2 - 1)).toBeLessThan(0.08);
    expect(outer.length).toBeGreaterThan(outer.width);
    expect(table.ballDiameter).toBeLessThan(field.width / 10);
    // The nose meets a ball above its centre and below its top, and the rail's top is not under the nose.
    expect(table.noseHeight).toBeGreaterThan(table.ballDiameter / 2);
    expect(table.noseHeight).toBeLessThan(table.ballDiameter);
    expect(table.railHeight).toBeGreaterThanOrEqual(table.noseHeight);
    expect(table.bedHeight).toBeGreaterThan(700);
    expect(table.bedHeight).toBeLessThan(900);
    expect(table.usualCue).toBeGreaterThanOrEqual(54 * INCH);
    expect(table.usualCue).toBeLessThanOrEqual(64 * INCH);
    if (table.mass !== null) expect(table.mass).toBeGreaterThan(100);
    if (table.legs !== null) expect(table.legs).toBeGreaterThanOrEqual(4);
  });

  it.each(tables)('%s says where its figures come from', (_, table) => {
    expect(table.source).toMatch(/\.$/);
    for (const word of ['Field', 'Outer', 'height', 'ball', 'cue']) {
      expect(table.source.toLowerCase()).toContain(word.toLowerCase());
    }
    expect(table.source).toMatch(/no source|from memory/);
    if (table.mass !== null) expect(table.source).toContain('Mass:');
    if (table.legs !== null) expect(table.source).toContain('Legs:');
  });

  it('has a ball of the trade', () => {
    const diameters = Object.values(BALLS).map((ball) => ball.diameter);
    for (const [, table] of tables) expect(diameters).toContain(table.ballDiameter);
  });

  it('is labelled by more than its nominal size where that means several fields', () => {
    const sizes = new Map<string, FieldSize[]>();
    for (const [, { game, name, field }] of tables) {
      const label = `${game} ${/\d+ ft/.exec(name)?.[0] ?? name}`;
      sizes.set(label, [...(sizes.get(label) ?? []), field]);
    }
    expect(sizes.get('pool 8 ft')?.length).toBe(3);
    expect(sizes.get('pool 7 ft')?.length).toBe(2);
    expect(sizes.get('English pool 7 ft')?.length).toBe(3);
    expect(sizes.get('English pool 6 ft')?.length).toBe(2);
    const names = tables.map(([, t]) => t.name);
    expect(new Set(names).size).toBe(names.length);
  });

  it('cannot be changed by one user for all others', () => {
    expect(Object.isFrozen(TABLES)).toBe(true);
    for (const [, table] of tables) {
      expect(Object.isFrozen(table) && Object.isFrozen(table.field) && Object.isFrozen(table.outer)).toBe(
        true,
      );
    }
    for (const entry of [...Object.values(CUES), ...Object.values(BALLS)])
      expect(Object.isFrozen(entry)).toBe(true);
  });
});
