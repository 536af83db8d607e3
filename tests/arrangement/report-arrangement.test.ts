import { describe, expect, it } from 'vitest';
import type { Arranged } from '../../src/arrangement/arrange-question.js';
import type { ClearWay, PieceProblem } from '../../src/arrangement/arrangement-report.js';
import type { CheckedPiece } from '../../src/arrangement/checked-arrangement.js';
import {
  fullTurn,
  type ReportQuestion,
  reportArrangement,
} from '../../src/arrangement/report-arrangement.js';
import type { FurnishingSpec } from '../../src/equipment/furnishing-types.js';
import { FURNISHINGS } from '../../src/equipment/furnishings.js';
import { TABLES } from '../../src/equipment/tables.js';
import type { Placement } from '../../src/geometry/types.js';
import { box, doorIn, flatCeiling, sceneOf } from './layout-cases.js';

const TABLE = TABLES['pool-7ft-bar'];
const AT: Placement = { x: 3500, y: 2500, angle: 0 };
const VALUE = { value: 900, upperBound: 1105, placed: 0.8, play: 1, apart: 0.9 };

function pose(x: number, y: number, degrees = 0): Placement {
  return { x, y, angle: (degrees * Math.PI) / 180 };
}

function open(spec: FurnishingSpec): CheckedPiece {
  return { ...spec, pose: null };
}

function questionOf(pieces: readonly CheckedPiece[]): ReportQuestion {
  return {
    scene: sceneOf(
      [
        [0, 0],
        [7000, 0],
        [7000, 5000],
        [0, 5000],
      ],
      { doors: [doorIn('front door', [500, 0], [1400, 0])], ceiling: flatCeiling(2500) },
    ),
    table: TABLE,
    stroke: { backswing: 150, shortBackswing: 45, margin: 20, tipOffset: 10, maxElevation: 0.35 },
    cue: { name: '57 in', length: 1448, tipRadius: 5, buttRadius: 15 },
    arrangement: { pieces, way: 600, effort: 200, onProgress: null },
  };
}

function arrangedAt(
  poses: readonly (Placement | null)[],
  rejections: readonly (readonly PieceProblem[])[] = poses.map(() => []),
): Arranged {
  return { tablePose: AT, poses, value: VALUE, layouts: 77, stopped: false, rejections };
}

function wayTo(to: string, found: boolean, widest: number | null = found ? 900 : 400): ClearWay {
  return { from: 'front door', to, width: 600, found, certain: true, path: [], widest, between: [] };
}

describe('the report of a layout', () => {
  const pieces = [open(FURNISHINGS.sofa), { ...FURNISHINGS.cupboard, pose: pose(6750, 2500, 90) }];
  const arranged = arrangedAt([pose(3500, 4540, 180), pose(6750, 2500, 90)]);
  const ways = [wayTo('the table', true), wayTo('sofa', true), wayTo('cupboard', true)];

  it('tells where each piece stands and that all is well', () => {
    const report = reportArrangement(questionOf(pieces), arranged, ways);
    const { value, layouts, stopped, ways: told, complete } = report;
    expect({ value, layouts, stopped, told, complete }).toEqual({
      value: VALUE,
      layouts: 77,
      stopped: false,
      told: ways,
      complete: true,
    });
    const [sofa, cupboard] = report.pieces;
    expect(sofa).toMatchObject({
      name: 'sofa',
      kind: 'sofa',
      pose: { x: 3500, y: 4540 },
      given: false,
      fits: true,
      problems: [],
    });
    expect(sofa.pose?.turn).toBeCloseTo(180, 9);
    expect([sofa.from, sofa.to]).toEqual([FURNISHINGS.sofa.from, FURNISHINGS.sofa.to]);
    expect(cupboard).toMatchObject({ given: true, fits: true });
    expect(sofa.ring).toHaveLength(4);
    expect(sofa.gaps.map(({ side, to }) => `${side} ${to}`)).toEqual([
      'back wall 3',
      'left wall 4',
      'front the table',
      'right wall 2',
    ]);
    expect(sofa.gaps[0].distance).toBeCloseTo(5000 - 4540 - FURNISHINGS.sofa.width / 2, 6);
    expect(sofa.zones.map(({ name }) => name)).toEqual(FURNISHINGS.sofa.zones.map(({ name }) => name));
    expect(report.sharing.map((s) => `${s.piece} / ${s.zone} / ${s.with}`)).toContain(
      `sofa / ${FURNISHINGS.sofa.zones[0].name} / cueing`,
    );
    expect(report.bounds.floor.needed).toBeLessThan(report.bounds.floor.available);
  });

  it('is plain data, without infinities', () => {
    const report = reportArrangement(questionOf(pieces), arranged, ways);
    expect(JSON.parse(JSON.stringify(report))).toEqual(report);
  });

  it('is not complete where a way is missing, and says so of the piece', () => {
    const missing = [ways[0], wayTo('sofa', false, 400), wayTo('cupboard', false, null)];
    const report = reportArrangement(questionOf(pieces), arranged, missing);
    expect(report.complete).toBe(false);
    expect(report.pieces.map(({ fits }) => fits)).toEqual([false, false]);
    expect(report.pieces.map(({ problems }) => problems)).toEqual([
      [{ code: 'no-way', with: 'front door', zone: null, amount: 200 }],
      [{ code: 'no-way', with: 'front door', zone: null, amount: null }],
    ]);
    const tableOnly = reportArrangement(questionOf(pieces), arranged, [
      wayTo('the table', false),
      ways[1],
      ways[2],
    ]);
    expect(tableOnly.complete).toBe(false);
    expect(tableOnly.pieces.map(({ fits }) => fits)).toEqual([true, true]);
  });

  it('tells what held back a piece without a place', () => {
    const why: PieceProblem = { code: 'zone-table', with: 'the table', zone: 'players', amount: 120 };
    const with2 = arrangedAt([null, pose(6750, 2500, 90)], [[why], []]);
    const report = reportArrangement(questionOf(pieces), with2, [ways[0], ways[2]]);
    expect(report.complete).toBe(false);
    expect(report.pieces[0]).toMatchObject({
      pose: null,
      fits: false,
      problems: [why],
      ring: [],
      gaps: [],
      zones: [],
    });
    const nothing = reportArrangement(questionOf(pieces), arrangedAt([null, null]), []);
    expect(nothing.pieces.map(({ problems }) => problems.map(({ code }) => code))).toEqual([
      ['no-place'],
      ['no-place'],
    ]);
    expect(nothing.sharing).toEqual([]);
  });

  it('judges given poses against the room, the table and the other pieces', () => {
    const press = box('press', 1200, 600, { to: 2600, stand: 'wall', turns: 'back' });
    const bench = box('bench', 1200, 400, { turns: 'square' });
    const given = [
      { ...press, pose: pose(1100, 300) },
      { ...bench, pose: pose(1500, 600, 45) },
      { ...bench, name: 'other bench', pose: pose(3500, 2500) },
    ];
    const report = reportArrangement(questionOf(given), arrangedAt(given.map((p) => p.pose)), []);
    const told = report.pieces.map(({ problems }) => problems.map((p) => `${p.code} ${p.with}`));
    expect(told).toEqual([
      ['ceiling ceiling', 'door front door', 'overlap bench'],
      ['door front door', 'turn null', 'overlap press'],
      ['table the table'],
    ]);
    expect(report.complete).toBe(false);
  });

  it('does without a table', () => {
    const question = { ...questionOf(pieces), table: null };
    const report = reportArrangement(question, { ...arranged, tablePose: null }, ways.slice(1));
    expect(report.complete).toBe(true);
    expect(report.sharing.some((s) => s.with === 'cueing')).toBe(false);
    expect(report.pieces[0].gaps[2].to).toBe('wall 1');
  });
});

describe('a full turn', () => {
  it('is told in [0, 360)', () => {
    for (const [angle, turn] of [
      [0, 0],
      [-0, 0],
      [Math.PI, 180],
      [-Math.PI / 2, 270],
      [2 * Math.PI, 0],
      [5 * Math.PI, 180],
    ]) {
      expect(fullTurn(angle)).toBeCloseTo(turn, 9);
      expect(Object.is(fullTurn(angle), -0)).toBe(false);
    }
    expect(fullTurn(-1e-20)).toBe(0);
  });
});
