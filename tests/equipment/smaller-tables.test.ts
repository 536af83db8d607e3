import { describe, expect, it } from 'vitest';
import type { TableSpec } from '../../src/equipment/equipment-types.js';
import { sameGameSmaller } from '../../src/equipment/smaller-tables.js';
import { TABLES } from '../../src/equipment/tables.js';

function ids(table: TableSpec): (string | null)[] {
  return sameGameSmaller(table).map((t) => t.id);
}

describe('sameGameSmaller', () => {
  it('goes down a game, the largest first, one table a size', () => {
    expect(ids(TABLES['snooker-12ft'])).toEqual([
      'snooker-12ft-metric',
      'snooker-10ft',
      'snooker-9ft',
      'snooker-8ft',
      'snooker-7ft',
      'snooker-6ft',
    ]);
    expect(ids(TABLES['pool-9ft'])).toEqual([
      'pool-8ft-wpa',
      'pool-8ft-dbu',
      'pool-7ft-bar',
      'pool-7ft-bar-small',
    ]);
    expect(ids(TABLES['english-7ft-play'])).toEqual(['blackball-7ft', 'english-7ft', 'english-6ft']);
    expect(ids(TABLES['snooker-6ft'])).toEqual([]);
  });

  it('takes pool for the close kin of heyball, but not English pool or snooker', () => {
    expect(ids(TABLES['heyball-9ft'])).toEqual(ids(TABLES['pool-9ft']));
    for (const table of sameGameSmaller(TABLES['heyball-9ft'])) expect(table.game).toBe('pool');
  });

  it('has only fields that are smaller both ways, for every table', () => {
    for (const table of Object.values(TABLES)) {
      let last = table.field;
      for (const { field } of sameGameSmaller(table)) {
        expect(field.length).toBeLessThan(table.field.length);
        expect(field.width).toBeLessThan(table.field.width);
        expect(field.length * field.width).toBeLessThan(last.length * last.width);
        last = field;
      }
    }
  });

  it('knows a measured table by its game, or else by its ball', () => {
    const measured = { ...TABLES['pool-9ft'], id: null };
    expect(ids({ ...measured, game: 'Snooker' })[0]).toBe('snooker-8ft');
    expect(ids({ ...measured, game: 'blackball' })).toEqual(ids({ ...measured, game: 'English pool' }));
    expect(ids({ ...measured, game: 'any' })).toEqual(ids(TABLES['pool-9ft']));
    expect(ids({ ...measured, game: 'any', ballDiameter: 61 })).toEqual(['carom-half-de', 'carom-small']);
    expect(ids({ ...measured, game: 'any', ballDiameter: 90 })).toEqual([]);
  });
});
