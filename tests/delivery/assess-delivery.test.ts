import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessDelivery } from '../../src/delivery/assess-delivery.js';
import type { DeliveryInput, PassageInput, PieceInput } from '../../src/delivery/delivery-input.js';
import type { DeliveryOutcome, DeliveryReport } from '../../src/delivery/delivery-report.js';
import { InputError } from '../../src/input-error.js';
import { FIVE_PIECES, PLAIN_ROUTE, PLAIN_WAY } from './ways.js';

const SEED = 20261125;

const problemsOf = (delivery: DeliveryInput, table?: string) => {
  try {
    assessDelivery(delivery, table);
  } catch (error) {
    if (error instanceof InputError) return error.problems;
    throw error;
  }
  return [];
};

/** Every number of a report. */
function numbers(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbers);
}

const RANK: Readonly<Record<DeliveryOutcome, number>> = { blocked: 0, undecided: 1, passes: 2 };

describe('a way in', () => {
  it('lets five pieces through six passages, each by a motion that was replayed', () => {
    const report = assessDelivery(PLAIN_WAY);
    expect(report.outcome).toBe('passes');
    expect(report.certain).toBe(true);
    expect(report.pieces.map((p) => p.name)).toEqual(FIVE_PIECES.map((p) => p.name));
    for (const { passages } of report.pieces) {
      expect(passages.map((p) => p.passage)).toEqual(PLAIN_ROUTE.map((p) => p.name));
      for (const { outcome, replayed, spare } of passages) {
        expect(outcome).toBe('passes');
        expect(replayed).toBeGreaterThan(0);
        expect(spare.atLeast).toBeGreaterThanOrEqual(0);
      }
    }
    expect(report.advice).toEqual([]);
  });

  it('takes the usual pieces of a table', () => {
    const report = assessDelivery({ route: PLAIN_ROUTE }, 'pool-9ft');
    expect(report.pieceSet).toBe('three-piece');
    expect(report.outcome).toBe('passes');
    expect(report.pieces.some((p) => p.name.toLowerCase().includes('slate') && (p.mass ?? 0) > 80)).toBe(
      true,
    );
    expect(assessDelivery({ route: PLAIN_ROUTE, pieces: 'one-piece' }, 'pool-9ft').pieceSet).toBe(
      'one-piece',
    );
  });

  it('carries a slate on edge wherever that will do, and changes the hold only where it must', () => {
    const [slate] = assessDelivery(PLAIN_WAY).pieces;
    expect(slate?.passages.filter((p) => p.kind !== 'stair').map((p) => p.hold?.way)).toEqual(
      new Array(5).fill('on-edge'),
    );
  });

  it('is stopped by a door that is narrower than the piece is thick, however it is held (Halperin, Sharir and Yehuda)', () => {
    const crate: PieceInput = { name: 'crate', length: 1200, width: 900, thickness: 800 };
    const report = assessDelivery({
      route: [{ kind: 'doorway', width: 780, height: 2000 }],
      pieces: [crate],
      handRoom: 0,
    });
    const [answer] = report.pieces[0]?.passages ?? [];
    expect(answer).toMatchObject({ outcome: 'blocked', anyMotion: true, certain: true });
    expect(answer?.spare.atMost).toBeCloseTo(780 - 800, 1);
  });

  it('advises the door off its hinges where that is enough', () => {
    const crate: PieceInput = { name: 'crate', length: 1200, width: 900, thickness: 800 };
    const report = assessDelivery({
      route: [{ kind: 'doorway', width: 790, height: 2000, leaf: 40 }],
      pieces: [crate],
      handRoom: 0,
    });
    expect(report.outcome).toBe('blocked');
    expect(report.advice.map((a) => a.kind)).toContain('take-door-off');
  });

  it('says when it is the hand room that does not go through', () => {
    const board: PieceInput = { name: 'board', length: 1200, width: 900, thickness: 780 };
    const route: readonly PassageInput[] = [{ kind: 'doorway', width: 800, height: 2000 }];
    const [answer] = assessDelivery({ route, pieces: [board] }).pieces[0]?.passages ?? [];
    expect(answer).toMatchObject({ outcome: 'blocked', withoutHandRoom: true });
    expect(assessDelivery({ route, pieces: [board], handRoom: 5 }).outcome).toBe('passes');
  });

  it('is not certain within the tolerance of the readings', () => {
    const board: PieceInput = { name: 'board', length: 1200, width: 900, thickness: 780 };
    const at = (width: number) =>
      assessDelivery({
        route: [{ kind: 'doorway', width, height: 2000 }],
        pieces: [board],
        handRoom: 0,
        tolerance: 10,
      });
    expect(at(791)).toMatchObject({ outcome: 'passes', certain: true });
    expect(at(789)).toMatchObject({ outcome: 'passes', certain: false });
    expect(at(775)).toMatchObject({ outcome: 'blocked', certain: false });
    expect(at(769)).toMatchObject({ outcome: 'blocked', certain: true });
    expect(at(775).advice.map((a) => a.kind)).toContain('measure-again');
  });

  it('adds the motions where they are asked for', () => {
    const plain = assessDelivery(PLAIN_WAY);
    const full = assessDelivery({ ...PLAIN_WAY, detail: 'motions' });
    for (const { passages } of full.pieces) {
      for (const { motion } of passages) expect(motion?.poses.length).toBeGreaterThan(1);
    }
    const without = {
      ...full,
      pieces: full.pieces.map((p) => ({
        ...p,
        passages: p.passages.map(({ motion: _, ...answer }) => answer),
      })),
    };
    expect(without).toEqual(plain);
  });

  it('is plain JSON with finite numbers, the same every time', () => {
    const report = assessDelivery({ ...PLAIN_WAY, detail: 'motions' });
    expect(JSON.parse(JSON.stringify(report))).toEqual(report);
    expect(numbers(report).every(Number.isFinite)).toBe(true);
    expect(assessDelivery({ ...PLAIN_WAY, detail: 'motions' })).toEqual(report);
  });

  it('tells of every wrong reading by its path', () => {
    const delivery: DeliveryInput = {
      route: [
        { kind: 'doorway', width: -5, height: 2000 },
        { kind: 'corner', width: 1000, height: 2400, turn: 400 },
      ],
      pieces: 'seven-piece',
    };
    expect(problemsOf(delivery, 'pool-9ft').map((p) => p.path)).toEqual([
      'delivery.route[0].width',
      'delivery.route[1].turn',
      'delivery.pieces',
    ]);
    expect(problemsOf({ route: PLAIN_ROUTE }).map((p) => p.code)).toEqual(['no-table']);
    expect(problemsOf({ route: PLAIN_ROUTE }, 'no-such-table').length).toBeGreaterThan(0);
  });
});

const piece = fc.record({
  length: fc.integer({ min: 300, max: 3000 }),
  width: fc.integer({ min: 100, max: 1500 }),
  thickness: fc.integer({ min: 20, max: 900 }),
});
const flat = fc.record({
  door: fc.integer({ min: 500, max: 1200 }),
  corner: fc.integer({ min: 600, max: 1500 }),
  turn: fc.integer({ min: 20, max: 160 }),
});
const routeOf = ({ door, corner, turn }: { door: number; corner: number; turn: number }): PassageInput[] => [
  { kind: 'doorway', width: door, height: 2000 },
  { kind: 'corner', width: corner, height: 2300, turn },
];
const outcomeOf = (route: readonly PassageInput[], size: PieceInput, handRoom: number): DeliveryReport =>
  assessDelivery({ route, pieces: [size], handRoom });

describe('laws of the way in', () => {
  it('never does better with more hand room, a larger piece or another passage', () => {
    fc.assert(
      fc.property(piece, flat, fc.integer({ min: 1, max: 60 }), (size, measures, more) => {
        const route = routeOf(measures);
        const named = { name: 'piece', ...size };
        const rank = RANK[outcomeOf(route, named, 10).outcome];
        expect(RANK[outcomeOf(route, named, 10 + more).outcome]).toBeLessThanOrEqual(rank);
        const larger = { ...named, length: size.length + more };
        expect(RANK[outcomeOf(route, larger, 10).outcome]).toBeLessThanOrEqual(rank);
        const longer = [...route, { kind: 'corridor', width: measures.door, height: 2000 } as const];
        expect(RANK[outcomeOf(longer, named, 10).outcome]).toBeLessThanOrEqual(rank);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  it('is the same for the way back: corridors of a corner swapped', () => {
    fc.assert(
      fc.property(piece, flat, fc.integer({ min: 600, max: 1500 }), (size, { corner, turn }, other) => {
        const there: PassageInput = { kind: 'corner', width: corner, widthAfter: other, height: 2300, turn };
        const back: PassageInput = { kind: 'corner', width: other, widthAfter: corner, height: 2300, turn };
        const named = { name: 'piece', ...size };
        const a = outcomeOf([there], named, 0).pieces[0]?.passages[0];
        const b = outcomeOf([back], named, 0).pieces[0]?.passages[0];
        expect(b?.outcome).toBe(a?.outcome);
        if (a?.spare.atLeast != null && b?.spare.atLeast != null)
          expect(Math.abs(a.spare.atLeast - b.spare.atLeast)).toBeLessThan(0.25);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });
});
