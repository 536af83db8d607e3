import { describe, expect, it } from 'vitest';
import { assessFit, type FitInput, TABLES, type TableId } from '../../src/index.js';
import { emptyRoom } from '../helpers/external-rooms.js';
import { printedReach, ROOM_ROWS, type RoomRow, ruleReach } from './room-rows.js';

/** Rounding, mm. */
const EXACT = 1e-6;
/** Gap of the search between what it finds and what it proves. */
const GAP = 1;

/** The row's room (smaller by `less` on every side), its table, and a stroke that takes `reach` from the nose. */
function question(row: RoomRow, reach: number, less = 0): FitInput {
  // Where a room has less than the author's rule, the backswing goes first and then the cue.
  const cue = Math.min(row.cue, reach);
  return {
    room: emptyRoom(row.room.length - 2 * less, row.room.width - 2 * less),
    table: { field: row.field, outer: row.outer },
    cues: [cue],
    stroke: { backswing: reach - cue, shortBackswing: Math.min(45, reach - cue), margin: 0 },
    search: { gap: GAP },
  };
}

const rows = ROOM_ROWS.map((row): [string, RoomRow] => [`${row.source} [${row.tag}]: ${row.table}`, row]);

describe.each(rows)('%s', (_, row) => {
  const printed = printedReach(row);
  const rule = ruleReach(row);
  const reach = Math.min(printed.along, printed.across);

  it('keeps its rule, or is off it by what is known', () => {
    expect(printed.along - rule.along).toBeCloseTo(row.off.along, 6);
    expect(printed.across - rule.across).toBeCloseTo(row.off.across, 6);
  });

  it('is the least room of its stroke', () => {
    const { clearance, cues, pose, spans } = assessFit(question(row, reach));
    // Field + 2 (cue + backswing): the sum that the library makes is the printed room on the side that governs.
    expect(spans.along.needed).toBeCloseTo(row.field.length + 2 * reach, 6);
    expect(spans.across.needed).toBeCloseTo(row.field.width + 2 * reach, 6);
    expect(Math.min(spans.along.spare, spans.across.spare)).toBeCloseTo(0, 6);
    expect(cues[0].verdict).toBe('clear');
    // By distance a tape cannot tell. Where every cue is raised a little by the rail it may still be certain: then a room smaller
    // by the tolerance of 10 mm on every side must be clear too.
    if (cues[0].certain) expect(assessFit(question(row, reach, 10)).verdict).toBe('clear');
    expect(clearance.longestCue).toBeGreaterThanOrEqual(cues[0].length - EXACT);
    expect(clearance.longestCueUpperBound).toBeLessThanOrEqual(cues[0].length + GAP + EXACT);
    expect(pose).not.toBeNull();
  });

  it('is too small for it by distance when 5 mm are missing on every side', () => {
    const { clearance, cues, table } = assessFit(question(row, reach, 5));
    // rho = R + s + L + a.
    const rho = table.ballDiameter / 2 + reach;
    expect(clearance.upperBound).toBeLessThan(rho);
    expect(clearance.upperBound).toBeLessThanOrEqual(rho - 5 + GAP + EXACT);
    expect(clearance.value).toBeLessThanOrEqual(rho - 5 + EXACT);
    expect(cues[0].proof).not.toBe('distance');
  });

  it("takes its author's own stroke exactly when it keeps the rule", () => {
    const asked = Math.min(rule.along, rule.across);
    const { clearance, spans, table } = assessFit(question(row, asked));
    expect(spans.along.spare).toBeCloseTo(2 * (printed.along - asked), 6);
    expect(spans.across.spare).toBeCloseTo(2 * (printed.across - asked), 6);
    const short = Math.min(printed.along, printed.across) - asked;
    const rho = table.ballDiameter / 2 + asked;
    expect(clearance.value >= rho - EXACT).toBe(short >= -EXACT);
    if (short < 0) expect(clearance.upperBound).toBeLessThanOrEqual(rho + short + GAP + EXACT);
  });
});

describe('tables of the catalogue in the printed rooms', () => {
  const named = ROOM_ROWS.flatMap((row): [string, RoomRow, TableId][] => {
    const { catalogue, table, source } = row;
    return catalogue === undefined
      ? []
      : [[`${catalogue} in the room of ${table}, ${source}`, row, catalogue]];
  });

  it.each(named)('%s', (_, row, id) => {
    const table = TABLES[id];
    // Datum: the rule's rectangle is not the true field, so the reach from the nose is worked out anew.
    const reach = Math.min(
      (row.room.length - table.field.length) / 2,
      (row.room.width - table.field.width) / 2,
    );
    const { clearance, spans } = assessFit({
      room: emptyRoom(row.room.length, row.room.width),
      table: id,
      search: { gap: GAP },
    });
    const radius = table.ballDiameter / 2;
    expect(clearance.upperBound).toBeGreaterThanOrEqual(reach + radius - EXACT);
    expect(clearance.upperBound).toBeLessThanOrEqual(reach + radius + GAP + EXACT);
    // Backswing 150 mm and margin 20 mm by default.
    expect(clearance.longestCueUpperBound).toBeGreaterThanOrEqual(reach - 170 - EXACT);
    expect(clearance.longestCueUpperBound).toBeLessThanOrEqual(reach - 170 + GAP + EXACT);
    expect([spans.along.available, spans.across.available]).toEqual([
      expect.closeTo(row.room.length, 6),
      expect.closeTo(row.room.width, 6),
    ]);
  });
});
