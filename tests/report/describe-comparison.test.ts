import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ComparisonCue, ComparisonRow, TableComparison } from '../../src/report/comparison.js';
import { describeComparison } from '../../src/report/describe-comparison.js';
import { columnsOf } from '../../src/report/wrap.js';
import { SAMPLE_CUE, SAMPLE_TABLE } from './sample-report.js';

const cue = (length: number, parts: Partial<ComparisonCue> = {}): ComparisonCue => ({
  ...SAMPLE_CUE,
  length,
  ...parts,
});

const row = (
  name: string,
  cues: readonly ComparisonCue[],
  parts: Partial<ComparisonRow> = {},
): ComparisonRow => ({
  table: { ...SAMPLE_TABLE, name },
  pose: { x: 0, y: 0, turn: 0 },
  clearance: {
    value: 1600,
    upperBound: 1600,
    longestCue: 1401.4,
    longestCueUpperBound: 1401.4,
    clearNowhere: false,
  },
  cues,
  longestCue: 1401.4,
  ...parts,
});

const compare = (...rows: ComparisonRow[]): TableComparison => ({ schema: 'elbowroom/comparison@1', rows });

describe('describeComparison', () => {
  it('gives each table and cue a line with its verdict and shares', () => {
    const text = describeComparison(
      compare(
        row('pub table', [
          cue(1447.8),
          cue(1219.2, { verdict: 'clear', shares: { open: 1, cramped: 0, blocked: 0 } }),
        ]),
        row('match table', [
          cue(1447.8, { verdict: 'partial', shares: { open: 0.5, cramped: 0.2, blocked: 0.3 } }),
        ]),
      ),
    );
    expect(text).toMatch(/145 cm \(57 in\) +tight +83% +17% +none$/m);
    expect(text).toMatch(/122 cm \(48 in\) +clear +all +none +none$/m);
    expect(text).toMatch(/145 cm \(57 in\) +partial +50% +20% +30%$/m);
    expect(text.replace(/\s+/g, ' ')).toContain('Longest cue: meets nothing at full backswing');
    expect(text).toContain('pub table');
    expect(text).not.toContain('?');
  });

  it('marks and explains what is too close to be sure', () => {
    const text = describeComparison(compare(row('pub table', [cue(1447.8, { certain: false })])));
    expect(text).toMatch(/ tight \? /);
    expect(text).toContain('? is too close to be sure');
  });

  it('says that a table cannot stand and gives it no shares', () => {
    const text = describeComparison(
      compare(row('hall table', [cue(1447.8, { verdict: 'none' })], { pose: null, longestCue: 0 })),
    );
    expect(text.replace(/\s+/g, ' ')).toMatch(/hall table/);
    expect(text).toContain('cannot');
    expect(text).toMatch(/none +- +- +-/);
  });

  it('keeps every line within 80 columns and every name whole', () => {
    const name = fc
      .array(fc.stringMatching(/^[a-z]{1,12}$/), { minLength: 1, maxLength: 9 })
      .map((words) => words.join(' '));
    const cues = fc.array(
      fc.record({ length: fc.double({ min: 700, max: 1700, noNaN: true }), certain: fc.boolean() }),
      { maxLength: 4 },
    );
    fc.assert(
      fc.property(
        fc.array(fc.tuple(name, cues), { maxLength: 5 }),
        fc.constantFrom('mm', 'cm', 'ftin'),
        (tables, units) => {
          const rows = tables.map(([n, list]) =>
            row(
              n,
              list.map(({ length, certain }) => cue(length, { certain })),
            ),
          );
          const text = describeComparison(compare(...rows), { units });
          for (const line of text.split('\n')) {
            expect(columnsOf(line)).toBeLessThanOrEqual(80);
            expect(line).not.toMatch(/\s$/);
          }
          const words = new Set(text.split(/[\s,:]+/));
          for (const [n] of tables) for (const word of n.split(' ')) expect(words).toContain(word);
        },
      ),
      { seed: 20_261_126, numRuns: 200 },
    );
  });
});
