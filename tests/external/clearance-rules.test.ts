import { describe, expect, it } from 'vitest';
import { assessFit, type FitInput, type RoomInput, TABLES, type TableId } from '../../src/index.js';
import { emptyRoom } from '../helpers/external-rooms.js';

/**
 * Published clearance rules as bounds: a room laid out by the rule, and what the model says of legal and usual cues there.
 * Datum: where the rule measures from; the reach is what it leaves from the nose. Unless a test says otherwise, strokes are
 * the default ones, which take 170 mm (backswing 150, margin 20) behind the cue.
 *
 * The Norwegian federation's guide has sections on wall distance, but nobody here has seen its values: no check.
 */
const INCH = 25.4;
const FOOT = 12 * INCH;
const TAKEN = 170;

interface Rule {
  readonly clear: number;
  readonly from: 'outside' | 'nominal' | 'field';
  /** Nominal size, for a rule that measures from it. */
  readonly nominal?: readonly [length: number, width: number];
}

/** From the nose to the wall in a room laid out by the rule, the less of along and across. */
function reachOf(id: TableId, rule: Rule): number {
  const { field } = TABLES[id];
  const { length, width } = roomSize(id, rule);
  return Math.min((length - field.length) / 2, (width - field.width) / 2);
}

function roomSize(id: TableId, { clear, from, nominal }: Rule): { length: number; width: number } {
  const { field, outer } = TABLES[id];
  const [length, width] =
    from === 'nominal' && nominal !== undefined
      ? nominal
      : from === 'outside'
        ? [outer.length, outer.width]
        : [field.length, field.width];
  return { length: length + 2 * clear, width: width + 2 * clear };
}

function ask(id: TableId, rule: Rule, more: Partial<FitInput> = {}) {
  const { length, width } = roomSize(id, rule);
  return assessFit({ room: emptyRoom(length, width), table: id, ...more });
}

/** In such a room the longest level cue is the reach less what the stroke takes, whatever the cue asked about. */
function expectLongest(id: TableId, rule: Rule): void {
  const { clearance } = ask(id, rule);
  const longest = reachOf(id, rule) - TAKEN;
  expect(clearance.longestCueUpperBound).toBeGreaterThanOrEqual(longest - 1e-6);
  expect(clearance.longestCueUpperBound).toBeLessThanOrEqual(longest + 1 + 1e-6);
}

describe('WPA Recommended Equipment Specifications, s. 19 [seen]: 1.83 m from the outside of the rail', () => {
  const rule: Rule = { clear: 6 * FOOT, from: 'outside' };

  it.each(['pool-9ft', 'pool-8ft-wpa'] as const)('is clear for sure for every usual cue on %s', (id) => {
    const { cues } = ask(id, rule, { cues: ['40 in', '57 in', '58 in', '59 in'] });
    expect(cues.map((cue) => [cue.verdict, cue.certain, cue.proof])).toEqual(
      cues.map(() => ['clear', true, 'distance']),
    );
    expectLongest(id, rule);
  });

  it('takes a chair inside the 6 ft for an obstacle, as the rule does', () => {
    // The rule names chairs. One of 0.45 x 0.45 m, seat and back up to 0.9 m, stands 0.6 m from the rail behind the head cushion.
    const { outer } = TABLES['pool-9ft'];
    const { length, width } = roomSize('pool-9ft', rule);
    const room: RoomInput = {
      ...emptyRoom(length, width),
      obstacles: [
        {
          name: 'chair',
          footprint: {
            center: [length / 2 + outer.length / 2 + 600 + 225, width / 2],
            length: 450,
            width: 450,
          },
          to: 900,
        },
      ],
    };
    const { cues, limits } = assessFit({
      room,
      table: 'pool-9ft',
      cues: ['58 in'],
      pose: { x: length / 2, y: width / 2 },
    });
    expect(cues[0].verdict).not.toBe('clear');
    expect(limits.map((limit) => limit.name)).toContain('chair');
  });
});

describe('DBU Materialnormen Snooker, s. 3.2 and 3.3 [seen]: 1.50 m from the outside of the table', () => {
  const rule: Rule = { clear: 1500, from: 'outside' };

  it('is clear for a 57 in cue on a full-size table, and for 58 in it is 3 mm short of that by distance', () => {
    // 1500 + 140.5 mm of rail - 170 = 1470.5 mm; outside 3850 x 2060 mm second-hand.
    expect(reachOf('snooker-12ft', rule) - TAKEN).toBeCloseTo(1470.5, 6);
    expectLongest('snooker-12ft', rule);
    const { cues } = ask('snooker-12ft', rule, { cues: ['57 in', '58 in'] });
    expect(cues[0].verdict).toBe('clear');
    expect(cues[0].proof).toBe('distance');
    expect(cues[1].proof).not.toBe('distance');
    // A shade of elevation more makes up for it: no shot is lost.
    expect(cues[1].shares.blocked).toBe(0);
  });
});

describe('Sports Dimensions Guide, government of Western Australia [seen]: 2.5 m, at least 1.6 m; cue at least 1.016 m', () => {
  it.each(['pool-9ft', 'pool-8ft-wpa', 'snooker-12ft'] as const)(
    '2.5 m round %s is clear for sure for all',
    (id) => {
      for (const from of ['outside', 'field'] as const) {
        const { cues } = ask(id, { clear: 2500, from }, { cues: [1016, '57 in', '58 in', '59 in'] });
        expect(cues.map((cue) => [cue.verdict, cue.certain])).toEqual(cues.map(() => ['clear', true]));
      }
    },
  );

  it.each(['pool-9ft', 'pool-8ft-wpa', 'snooker-12ft'] as const)(
    '1.6 m from the outside of %s is clear for usual cues',
    (id) => {
      const { cues } = ask(id, { clear: 1600, from: 'outside' }, { cues: [1016, '57 in', '58 in'] });
      expect(cues.map((cue) => cue.verdict)).toEqual(['clear', 'clear', 'clear']);
      expectLongest(id, { clear: 1600, from: 'outside' });
    },
  );

  it('1.6 m, if it meant the cushion, would do for the shortest legal cue and 56 in, not for 57 in by distance', () => {
    const { cues } = ask('pool-9ft', { clear: 1600, from: 'field' }, { cues: [1016, '56 in', '57 in'] });
    expect(cues.map((cue) => cue.proof)).toEqual([
      'distance',
      'distance',
      expect.not.stringMatching('distance'),
    ]);
    expectLongest('pool-9ft', { clear: 1600, from: 'field' });
  });
});

describe('tables in a row', () => {
  /** A second table of the same size beside or behind the first, in a hall that has room for everything else. */
  function row(id: TableId, gap: number, where: 'beside' | 'behind', more: Partial<FitInput> = {}) {
    const { outer, bedHeight, railHeight } = TABLES[id];
    const away = where === 'beside' ? outer.width + gap : outer.length + gap;
    const room: RoomInput = {
      ...emptyRoom(20_000, 20_000),
      obstacles: [
        {
          name: 'next table',
          footprint: {
            center: where === 'beside' ? [10_000, 10_000 + away] : [10_000 + away, 10_000],
            length: outer.length,
            width: outer.width,
          },
          to: bedHeight + railHeight,
        },
      ],
    };
    return assessFit({ room, table: id, pose: { x: 10_000, y: 10_000 }, ...more });
  }

  /** The next table's rail is as high as this one's, so it is tall by the margin: distances count. */
  function expectGap(id: TableId, gap: number, where: 'beside' | 'behind'): void {
    const { field, outer, ballDiameter } = TABLES[id];
    const rail = where === 'beside' ? (outer.width - field.width) / 2 : (outer.length - field.length) / 2;
    const { clearance, gaps } = row(id, gap, where);
    expect(clearance.value).toBeCloseTo(gap + rail + ballDiameter / 2, 6);
    expect(clearance.longestCue).toBeCloseTo(gap + rail - TAKEN, 6);
    const nearest = gaps.find((g) => g.cushion === (where === 'beside' ? 'sideA' : 'endA'));
    expect(nearest?.to).toBe('next table');
    expect(nearest?.distance).toBeCloseTo(gap + rail, 6);
  }

  /** E. Neufert, Bauentwurfslehre, Russian edition [seen]: 1.7 m between tables of sizes I and II, 1.6 m for III, IV and V. */
  describe.each([
    { id: 'carom-match' as const, gap: 1700 },
    { id: 'carom-half-de' as const, gap: 1600 },
    { id: 'carom-small' as const, gap: 1600 },
  ])('$gap mm between two of $id, by Neufert', ({ id, gap }) => {
    it.each(['beside', 'behind'] as const)('is clear for a usual cue when the other stands %s', (where) => {
      expectGap(id, gap, where);
      // Carom cues are about 54 to 56 in long [from memory].
      const { cues } = row(id, gap, where, { cues: ['54 in', '56 in'] });
      expect(cues.map((cue) => [cue.verdict, cue.proof])).toEqual([
        ['clear', 'distance'],
        ['clear', 'distance'],
      ]);
    });
  });

  /**
   * B. Garno, Modern Billiards (late 19th century) [seen]: 5 ft between tables in a row, nominal size to nominal size. The rails
   * overhang the nominal size, so less is left from the nose than the cue is long.
   */
  it('5 ft between nominal sizes are short of a 57 in cue by distance, and playable over the other rail', () => {
    const id = 'snooker-12ft';
    const { outer } = TABLES[id];
    const gap = 5 * FOOT - (outer.width - 6 * FOOT);
    expectGap(id, gap, 'beside');
    const { cues } = row(id, gap, 'beside', { cues: ['57 in'] });
    expect(row(id, gap, 'beside').clearance.longestCue).toBeLessThan(57 * INCH);
    expect(cues[0].proof).not.toBe('distance');
    expect(cues[0].shares.blocked).toBe(0);
  });
});

describe('rules from the nominal size', () => {
  const nominal: readonly [number, number] = [12 * FOOT, 6 * FOOT];

  /** W. Broadfoot (ed.), Billiards, Badminton Library, 1896 [seen]; Wikipedia, Billiard room, older text [seen]. */
  it('6 ft round 12 x 6 ft are clear for sure for 57 to 59 in', () => {
    const rule: Rule = { clear: 6 * FOOT, from: 'nominal', nominal };
    const { cues } = ask('snooker-12ft', rule, { cues: ['57 in', '58 in', '59 in'] });
    expect(cues.map((cue) => [cue.verdict, cue.certain])).toEqual(cues.map(() => ['clear', true]));
    expectLongest('snooker-12ft', rule);
  });

  /** Wikipedia, Billiard room, newer text [seen]: 5 ft, since a cue is never drawn back by more than its own length. */
  it('5 ft round 12 x 6 ft are clear for 57 in without a backswing, and not by distance with one', () => {
    const rule: Rule = { clear: 5 * FOOT, from: 'nominal', nominal };
    const stroke = { backswing: 0, shortBackswing: 0, margin: 0 };
    expect(ask('snooker-12ft', rule, { cues: ['57 in'], stroke }).verdict).toBe('clear');
    const usual = ask('snooker-12ft', rule, { cues: ['57 in'] });
    expect(usual.cues[0].proof).not.toBe('distance');
    expect(usual.clearance.longestCueUpperBound).toBeLessThan(57 * INCH);
    expectLongest('snooker-12ft', rule);
  });
});

describe('one 9 ft table under every rule', () => {
  /** Derived from the above, printed to the centimetre; outside 2794 x 1524 mm with 5 in rails. */
  it.each([
    ['Neufert [from memory], playing area + 2 x 1.45 m', 'field', 1450, 5.44, 4.17],
    ['57 in, no stroke', 'field', 57 * INCH, 5.44, 4.17],
    ['58 in, no stroke', 'field', 58 * INCH, 5.49, 4.22],
    ['58 in + 6 in', 'field', 64 * INCH, 5.79, 4.52],
    ['1.50 m from outside', 'outside', 1500, 5.79, 4.52],
    ['1.60 m from outside', 'outside', 1600, 5.99, 4.72],
    ['1.83 m from outside', 'outside', 72 * INCH, 6.45, 5.18],
    ['2.50 m from outside', 'outside', 2500, 7.79, 6.52],
  ] as const)('%s', (_, from, clear, length, width) => {
    const reach = reachOf('pool-9ft', { clear, from });
    const cue = Math.min(58 * INCH, reach);
    const backswing = Math.min(1000, reach - cue);
    const { spans } = ask(
      'pool-9ft',
      { clear, from },
      { cues: [cue + (reach - cue - backswing)], stroke: { backswing, shortBackswing: 0, margin: 0 } },
    );
    expect(spans.along.needed / 1000).toBeCloseTo(length, 2);
    expect(spans.across.needed / 1000).toBeCloseTo(width, 2);
    expect(spans.along.spare).toBeCloseTo(0, 6);
    expect(spans.across.spare).toBeCloseTo(0, 6);
  });
});
