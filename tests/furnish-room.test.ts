import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessFit } from '../src/assess-fit.js';
import { compareTables } from '../src/compare-tables.js';
import type { FitInput } from '../src/fit-input.js';
import { describeComparison } from '../src/report/describe-comparison.js';
import type { FitReport, Verdict } from '../src/report/fit-report.js';

/** A games room of our own: an alcove at the far wall, a door that opens in and one that slides. */
const ROOM: FitInput['room'] = {
  outline: [
    [0, 0],
    [7400, 0],
    [7400, 5600],
    [4800, 5600],
    [4800, 5200],
    [3400, 5200],
    [3400, 5600],
    [0, 5600],
  ],
  ceiling: 2500,
  doors: [
    { name: 'the cellar door', hinge: [0, 5000], latch: [0, 4100], opens: 'in' },
    { name: 'the garden door', hinge: [7400, 3200], latch: [7400, 4600], opens: 'slides' },
  ],
};
const QUESTION = { room: ROOM, table: 'pool-7ft-bar', cues: ['57 in'] } as const satisfies FitInput;
const effort = (layouts: number): Pick<FitInput, 'arrangement'> => ({ arrangement: { effort: layouts } });

const rank = (verdict: Verdict): number => ['clear', 'tight', 'partial', 'none'].indexOf(verdict);
const nameOf = (report: FitReport): readonly string[] =>
  (report.arrangement?.pieces ?? []).map(({ name }) => name);

describe('assessFit with other pieces', () => {
  it('places all of them where there is room, and judges the table beside them', () => {
    const furnishings = [
      { kind: 'sofa' },
      { kind: 'cue-rack' },
      { kind: 'lamp' },
      { kind: 'darts' },
    ] as const;
    const report = assessFit({ ...QUESTION, furnishings });
    expect(report.verdict).toBe('clear');
    expect(report.arrangement?.complete).toBe(true);
    expect(nameOf(report)).toEqual(['sofa', 'cue rack', 'lamp over the table', 'darts board']);
    expect(report.arrangement?.ways.every(({ found }) => found)).toBe(true);
    // The lamp follows the table.
    const lamp = report.arrangement?.pieces[2]?.pose;
    expect([lamp?.x, lamp?.y]).toEqual([report.pose?.x, report.pose?.y]);
    expect(JSON.parse(JSON.stringify(report))).toEqual(report);
  });

  it('leaves out nothing of the answer without pieces, and no arrangement where none are given', () => {
    const bare = assessFit(QUESTION);
    expect(assessFit({ ...QUESTION, furnishings: [] })).toEqual(bare);
    expect('arrangement' in bare).toBe(false);
  });

  it('judges a piece where it is given, and says what is wrong there', () => {
    const sofa = { kind: 'sofa', pose: { x: 500, y: 4500, turn: 90 } };
    const report = assessFit({ ...QUESTION, furnishings: [sofa], ...effort(100) });
    const [judged] = report.arrangement?.pieces ?? [];
    expect(judged).toMatchObject({ given: true, fits: false, pose: { x: 500, y: 4500, turn: 90 } });
    expect(judged?.problems.map(({ code, with: other }) => [code, other])).toContainEqual([
      'door',
      'the cellar door',
    ]);
    expect(report.arrangement?.advice.some(({ kind, piece }) => kind === 'shift' && piece === 'sofa')).toBe(
      true,
    );
  });

  it('counts a given piece as an obstacle by its name', () => {
    // A cupboard in the middle of a room that is just long enough, with the table beside it.
    const cupboard = {
      kind: 'cupboard',
      pose: { x: 3700, y: 2600, turn: 0 },
      stands: 'free',
      turns: 'square',
    } as const;
    const report = assessFit({
      ...QUESTION,
      pose: { x: 1900, y: 2600, turn: 90 },
      furnishings: [cupboard],
      ...effort(1),
    });
    expect(report.verdict).not.toBe('clear');
    expect(report.limits.map(({ name }) => name)).toContain('cupboard');
    expect(report.arrangement?.advice.map(({ kind, piece }) => `${kind} ${piece}`)).toContain(
      'leave-out cupboard',
    );
    // Its own advice: the general one knows nothing of where pieces may go.
    expect(report.advice.filter(({ obstacle }) => obstacle === 'cupboard')).toEqual([]);
  });

  it('says what holds back a piece that has no place', () => {
    const wardrobe = {
      name: 'wardrobe',
      footprint: { length: 5900, width: 700 },
      height: 2100,
      stands: 'wall',
    } as const;
    const tall = { name: 'tree', footprint: { diameter: 900 }, height: 2600 } as const;
    const report = assessFit({ ...QUESTION, furnishings: [wardrobe, tall], ...effort(10) });
    const [, tree] = report.arrangement?.pieces ?? [];
    expect(tree).toMatchObject({ pose: null, fits: false });
    expect(tree?.problems.map(({ code }) => code)).toContain('ceiling');
    expect(report.arrangement?.complete).toBe(false);
  });

  it('never has a better verdict, more clearance or a higher bound for one piece more', () => {
    const kind = fc.constantFrom('sofa', 'bar', 'cupboard', 'pinball', 'stool', 'darts', 'table-football');
    const room = fc.record({
      length: fc.integer({ min: 5200, max: 8200 }),
      width: fc.integer({ min: 4300, max: 6200 }),
    });
    fc.assert(
      fc.property(room, fc.array(kind, { minLength: 1, maxLength: 3 }), ({ length, width }, kinds) => {
        const outline = [
          [0, 0],
          [length, 0],
          [length, width],
          [0, width],
        ] as const;
        const doors = [{ hinge: [0, 300], latch: [0, 1200], opens: 'out' }] as const;
        const ask = (list: readonly string[]) =>
          assessFit({
            ...QUESTION,
            room: { outline, doors, ceiling: 2500 },
            furnishings: list.map((k) => ({ kind: k })),
            ...effort(60),
          });
        const [fewer, more] = [ask(kinds.slice(1)), ask(kinds)];
        expect(rank(more.verdict)).toBeGreaterThanOrEqual(rank(fewer.verdict));
        expect(more.clearance.upperBound).toBeLessThanOrEqual(fewer.clearance.upperBound + 1);
        expect(more.clearance.value).toBeLessThanOrEqual(more.clearance.upperBound + 1e-6);
      }),
      { numRuns: 25, seed: 20261125 },
    );
  });

  it('is the same for the same question, and stops where it is told to', () => {
    const furnishings = [{ kind: 'sofa' }, { kind: 'bar' }, { kind: 'pinball' }];
    const ask = { ...QUESTION, furnishings, ...effort(20) };
    expect(JSON.stringify(assessFit(ask))).toBe(JSON.stringify(assessFit(ask)));
    let calls = 0;
    const onProgress = () => {
      calls++;
      return false;
    };
    const stopped = assessFit({ ...ask, arrangement: { effort: 20, onProgress } });
    expect(calls).toBe(1);
    expect(stopped.arrangement?.stopped).toBe(true);
  });

  it('sets tables side by side with the pieces in the room', () => {
    const comparison = compareTables({
      room: ROOM,
      tables: ['pool-7ft-bar', 'snooker-12ft'],
      cues: ['57 in'],
      furnishings: [{ kind: 'sofa' }, { kind: 'darts' }],
      ...effort(5),
    });
    const [small, large] = comparison.rows;
    expect(small?.pieces).toEqual({ asked: 2, placed: 2 });
    expect(large?.pieces?.asked).toBe(2);
    expect(describeComparison(comparison).replace(/\s+/g, ' ')).toContain('2 of 2 other pieces');
  });
});
