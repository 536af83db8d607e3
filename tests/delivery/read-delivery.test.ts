import { describe, expect, it } from 'vitest';
import { readDelivery } from '../../src/delivery/read-delivery.js';
import { DEFAULTS } from '../../src/equipment/defaults.js';
import { TABLES } from '../../src/equipment/tables.js';
import { ProblemList } from '../../src/length/read-input.js';
import { GOOD_WAYS, good, read } from './read-inputs.js';

const door = { kind: 'doorway', width: 800, height: 2000 };

describe('a way in', () => {
  it.each(Object.entries(GOOD_WAYS))('is read: %s', (_, way) => {
    expect(read(way).problems).toEqual([]);
    expect(good(way).route.map((passage) => passage.kind)).toEqual(way.route.map((passage) => passage.kind));
  });

  it('leaves nothing optional and nothing undefined', () => {
    const holes = (value: unknown): boolean =>
      value === undefined ||
      (typeof value === 'number' && Number.isNaN(value)) ||
      (typeof value === 'object' && value !== null && Object.values(value).some(holes));
    for (const way of Object.values(GOOD_WAYS)) expect(holes(good(way))).toBe(false);
    const { route } = good(GOOD_WAYS['usual set']);
    const keys = (i: number) => Object.keys(route[i] ?? {}).sort();
    expect(keys(7)).toEqual(
      ['after', 'before', 'depth', 'height', 'kind', 'leaf', 'name', 'sill', 'tolerance', 'width'].sort(),
    );
    expect(keys(1)).toEqual(keys(2));
  });

  it('comes in mm and radians', () => {
    const { route, handRoom, maxBoxes, detail } = good(GOOD_WAYS.full);
    expect(handRoom).toBe(20);
    expect([maxBoxes, detail]).toEqual([20_000, 'motions']);
    expect(route[0]).toEqual({
      kind: 'doorway',
      name: 'Front door',
      tolerance: 5,
      width: 830,
      height: 2000,
      depth: 200,
      sill: 0,
      leaf: 44,
      before: { depth: 1500, left: 300, right: 400, height: 2400 },
      after: { depth: 1200, left: 0, right: Number.POSITIVE_INFINITY, height: Number.POSITIVE_INFINITY },
    });
    expect(route[1]).toEqual({ kind: 'corridor', name: 'Hall', tolerance: 0, width: 1050, height: 2400 });
    const [, , corner, stair, steps, quarter, half, winder, lift, opening] = route;
    // The angle between the outer walls is what is left of a half turn.
    expect(corner?.kind === 'corner' && corner.angle).toBeCloseTo((105 / 180) * Math.PI, 12);
    expect(corner?.tolerance).toBe(8);
    expect(stair?.kind === 'stair' && stair.pitch).toBeCloseTo((42 / 180) * Math.PI, 12);
    expect(stair?.kind === 'stair' && stair.rise).toBe(DEFAULTS.delivery.stepRise);
    expect(steps?.kind === 'stair' && Math.tan(steps.pitch)).toBeCloseTo(200 / 230, 12);
    expect(steps).toMatchObject({ rise: 200, run: Number.POSITIVE_INFINITY });
    expect(quarter).toMatchObject({ width: 860, widthAfter: 900, depth: 950, breadth: 900, well: 0 });
    // The whole landing of a half turn: both flights and the well.
    expect(half).toMatchObject({ depth: 900, breadth: 860 + 50 + 880, well: 50, rise: 190 });
    expect(winder).toMatchObject({ width: 750, headroom: 1950, climb: 600 });
    expect(lift).toMatchObject({
      width: 1100,
      depth: 1400,
      height: 2200,
      door: { width: 900, height: 2000, depth: 180 },
      before: { depth: 1500, left: Number.POSITIVE_INFINITY, right: 500 },
    });
    expect(opening).toMatchObject({ kind: 'opening', sill: 850, depth: 300, leaf: 0 });
    expect(opening?.kind === 'opening' && opening.before.depth).toBe(Number.POSITIVE_INFINITY);
  });

  it('takes the defaults where nothing is said', () => {
    const { route, handRoom, maxBoxes, detail } = good(GOOD_WAYS['usual set']);
    const usual = DEFAULTS.delivery;
    expect([handRoom, maxBoxes, detail]).toEqual([usual.handRoom, usual.maxBoxes, 'answer']);
    const [corner, quarter, half, winder, stair, lift, opening, doorway] = route;
    expect(corner).toMatchObject({ widthAfter: 1000, heightAfter: 2300, angle: Math.PI / 2 });
    expect(quarter).toMatchObject({ widthAfter: 850, depth: 850, breadth: 850, well: 0 });
    expect(half).toMatchObject({ widthAfter: 850, depth: 850, breadth: 1700, well: 0 });
    expect(winder).toMatchObject({ climb: 3 * 220, rise: 220 });
    expect(winder?.kind === 'winder' && winder.pitch).toBeCloseTo(Math.PI / 4, 12);
    expect(stair).toMatchObject({ run: Number.POSITIVE_INFINITY });
    expect(lift).toMatchObject({ door: { depth: usual.wallDepth } });
    expect(opening).toMatchObject({ sill: 0, depth: usual.wallDepth });
    expect(doorway).toMatchObject({ leaf: 0, depth: usual.wallDepth, tolerance: usual.tolerance });
  });

  it('names what has no name by its kind and a number that is free', () => {
    const names = (route: readonly unknown[]) => good({ route }).route.map(({ name }) => name);
    expect(names(GOOD_WAYS['usual set'].route)).toEqual([
      'Corner 1',
      'Quarter landing 1',
      'Half landing 1',
      'Winder 1',
      'Stair 1',
      'Lift 1',
      'Opening 1',
      'Doorway 1',
      'Doorway 2',
    ]);
    expect(names([door, { ...door, name: 'doorway 1' }, door, { ...door, name: 'Doorway 3' }, door])).toEqual(
      ['Doorway 2', 'doorway 1', 'Doorway 4', 'Doorway 3', 'Doorway 5'],
    );
  });

  it('tells each default that was used once, however often', () => {
    const { assumptions } = read(GOOD_WAYS['usual set']);
    expect(new Set(assumptions).size).toBe(assumptions.length);
    for (const sentence of assumptions) expect(sentence).toMatch(/^[A-Z"].*\.$/);
    const about = (word: RegExp) => assumptions.filter((sentence) => word.test(sentence));
    expect(about(/150 mm deep/)).toEqual([
      '"Lift 1", "Opening 1", "Doorway 1" and "Doorway 2" are 150 mm deep (default).',
    ]);
    expect(about(/^Hand room of 25 mm/)).toHaveLength(1);
    expect(about(/10 mm at most/)).toHaveLength(1);
    expect(about(/turns by 90 degrees/)).toEqual(['"Corner 1" turns by 90 degrees (default).']);
    expect(about(/rise 220 mm/)).toEqual([
      '"Quarter landing 1" and "Stair 1" have steps that rise 220 mm (default).',
    ]);
    expect(about(/3 steps/)).toEqual(['"Winder 1" climbs 3 steps in its turn (default).']);
    expect(about(/as deep as/)).toEqual([
      '"Quarter landing 1" is as deep as the flight above is wide (default).',
      '"Half landing 1" is as deep as the flight below is wide (default).',
    ]);
    expect(about(/one-piece set/)).toHaveLength(1);
  });

  it('tells no default that was not used', () => {
    const { assumptions } = read(GOOD_WAYS.full);
    expect(assumptions.some((s) => /Hand room|of the way|150 mm|90 degrees|set/.test(s))).toBe(false);
    const route = [
      { ...door, depth: 100, leaf: 40, before: { depth: 900, left: 0, right: 0, height: 2400 } },
    ];
    expect(read({ route }).assumptions.filter((s) => s.startsWith('"Doorway 1"'))).toEqual([
      '"Doorway 1" has room enough behind it (default).',
    ]);
  });

  it('says nothing about defaults when there are problems', () => {
    expect(read({ route: [{ ...door, width: 8 }] }).assumptions).toEqual([]);
  });
});

describe('what is carried', () => {
  it('is the most usual set of the table, the others being at hand', () => {
    const { pieceSet, pieces, otherSets } = good({ route: [door] });
    expect(pieceSet).toBe('three-piece');
    expect(pieces[0]).toMatchObject({ name: 'Slate, one of 3', count: 3, held: ['on-edge', 'on-end'] });
    expect(pieces[0]?.tilt).toBeCloseTo(Math.PI / 4, 12);
    expect(pieces[0]?.carriers).toBe(4);
    expect(otherSets.map(({ name }) => name)).toEqual(['one-piece']);
    expect(read({ route: [door] }).assumptions.join(' ')).toMatch(/three-piece set, the most usual.*default/);
  });

  it('is the set that was named', () => {
    const { pieceSet, pieces, otherSets } = good({ route: [door], pieces: 'one-piece' });
    expect(pieceSet).toBe('one-piece');
    expect(pieces[0]?.count).toBe(1);
    expect(otherSets.map(({ name }) => name)).toEqual(['three-piece']);
    expect(read({ route: [door], pieces: 'one-piece' }).assumptions.join(' ')).not.toMatch(/most usual one/);
  });

  it('may be pieces of your own, with or without a table', () => {
    const way = { route: [door], pieces: [{ name: 'Crate', length: 900, width: 2000, thickness: 300 }] };
    expect(good(way, null)).toMatchObject({ pieceSet: null, otherSets: [] });
    expect(good(way).otherSets.map(({ name }) => name)).toEqual(['three-piece', 'one-piece']);
    expect(good(way).pieces).toEqual(good(way, null).pieces);
  });

  it('needs a table for a usual set', () => {
    for (const way of [{ route: [door] }, { route: [door], pieces: 'three-piece' }]) {
      const { checked, problems } = read(way, null);
      expect(checked).toBeNull();
      expect(problems.map(({ path, code }) => [path, code])).toEqual([['delivery.pieces', 'no-table']]);
    }
  });

  it('says nothing more where the table has problems of its own', () => {
    const problems = new ProblemList();
    problems.add('table', 'unknown-table', 'There is no such table.');
    expect(readDelivery({ route: [door] }, 'delivery', null, problems, [])).toBeNull();
    expect(problems.problems).toHaveLength(1);
    readDelivery({ route: [{ ...door, width: 1 }] }, 'delivery', null, problems, []);
    expect(problems.problems.map(({ path }) => path)).toEqual(['table', 'delivery.route[0].width']);
  });

  it('has sets for every table of the catalogue', () => {
    for (const table of Object.values(TABLES)) {
      expect(good({ route: [door] }, table).pieces.length).toBeGreaterThan(1);
    }
  });
});
