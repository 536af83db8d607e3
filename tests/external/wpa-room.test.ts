import { describe, expect, it } from 'vitest';
import { assessFit, type FitInput, type TableInput } from '../../src/index.js';
import { emptyRoom } from '../helpers/external-rooms.js';

/**
 * WPA Recommended Equipment Specifications (effective November 2001), s. 19 [seen]: 6 ft = 1.83 m from the outside edge of the rail in
 * every horizontal direction to any obstacle. S. 5 [seen]: playing surface 100 x 50 in (9 ft) and 92 x 46 in (8 ft). S. 6 [seen]:
 * rails 4 to 7 1/2 in wide. The sums are derived.
 */
const INCH = 25.4;
const SIX_FEET = 72 * INCH;

const tables = [
  { name: '9 ft', length: 100, width: 50 },
  { name: '8 ft', length: 92, width: 46 },
].flatMap((field) => [4, 5, 7.5].map((rail) => ({ ...field, rail })));

function tableOf({ length, width, rail }: { length: number; width: number; rail: number }): TableInput {
  return {
    field: { length: length * INCH, width: width * INCH },
    outer: { length: (length + 2 * rail) * INCH, width: (width + 2 * rail) * INCH },
    bedHeight: '30 in',
  };
}

describe.each(tables)('$name, rail $rail in', (size) => {
  const { length, width, rail } = size;
  const room = emptyRoom((length + 2 * rail + 144) * INCH, (width + 2 * rail + 144) * INCH);
  const ask = (more: Omit<FitInput, 'room' | 'table'>) => assessFit({ room, table: tableOf(size), ...more });

  it('is clear for a 58 in cue with the default stroke, for sure', () => {
    const report = ask({ cues: ['58 in'] });
    expect(report.verdict).toBe('clear');
    expect(report.certain).toBe(true);
    expect(report.cues[0].proof).toBe('distance');
    expect(report.cues[0].shares).toEqual({ open: 1, cramped: 0, blocked: 0 });
    // 6 ft and the rail, less a backswing of 150 mm and a margin of 20 mm.
    expect(report.clearance.longestCue).toBeCloseTo(SIX_FEET + rail * INCH - 170, 6);
  });

  /**
   * The rule as a stroke: field + 2 (cue + backswing) with margin 0 is the room when the backswing is 6 ft + rail - cue, which is
   * 18, 19 or 21 1/2 in behind a 58 in cue.
   */
  it('is the least room of the stroke that the rule amounts to', () => {
    const backswing = SIX_FEET + rail * INCH - 58 * INCH;
    const exact = ask({ cues: ['58 in'], stroke: { backswing, margin: 0 } });
    expect(exact.verdict).toBe('clear');
    expect(exact.spans.along.spare).toBeCloseTo(0, 6);
    expect(exact.spans.across.spare).toBeCloseTo(0, 6);
    const more = ask({ cues: ['58 in'], stroke: { backswing: backswing + 5, margin: 0 } });
    expect(more.cues[0].proof).not.toBe('distance');
    expect(more.clearance.longestCueUpperBound).toBeLessThan(58 * INCH);
  });

  /** S. 17 [seen]: a cue has at least 40 in and no upper limit. Usual lengths: 57 to 59 in (an encyclopaedia on cues) [seen]. */
  it('is clear for every legal cue up to the length that the rule leaves', () => {
    const longest = SIX_FEET + rail * INCH - 170;
    const report = ask({ cues: ['40 in', '57 in', '59 in', longest - 0.001, longest + 1] });
    expect(report.cues.map((cue) => cue.verdict).slice(0, 4)).toEqual(['clear', 'clear', 'clear', 'clear']);
    expect(report.cues[4].proof).not.toBe('distance');
  });
});

describe('the rooms in metres', () => {
  // Standards table 4.2: derived, printed to the centimetre.
  it.each([
    [100, 50, 4, 6.4, 5.13],
    [100, 50, 5, 6.45, 5.18],
    [100, 50, 7.5, 6.58, 5.31],
    [92, 46, 4, 6.2, 5.03],
    [92, 46, 5, 6.25, 5.08],
    [92, 46, 7.5, 6.38, 5.21],
  ])('%i x %i in with rails of %f in want %f x %f m', (length, width, rail, long, wide) => {
    const backswing = SIX_FEET + rail * INCH - 58 * INCH;
    const { spans } = assessFit({
      room: emptyRoom('7 m', '6 m'),
      table: tableOf({ length, width, rail }),
      cues: ['58 in'],
      stroke: { backswing, margin: 0 },
    });
    expect(spans.along.needed / 1000).toBeCloseTo(long, 2);
    expect(spans.across.needed / 1000).toBeCloseTo(wide, 2);
  });
});
