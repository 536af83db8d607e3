import { describe, expect, it } from 'vitest';
import {
  type ArrangementAdviceQuestion,
  adviseArrangement,
} from '../../src/arrangement/advise-arrangement.js';
import type { Arranged, ArrangeQuestion, Layout } from '../../src/arrangement/arrange-question.js';
import type { CheckedPiece } from '../../src/arrangement/checked-arrangement.js';
import { furnishedScene } from '../../src/arrangement/furnished-scene.js';
import { fitsBeside, fitsRoom, fitsTable, roomRules } from '../../src/arrangement/layout-rules.js';
import { type PlacedPiece, placePiece } from '../../src/arrangement/piece-place.js';
import { placesOf } from '../../src/arrangement/report-arrangement.js';
import type { FurnishingSpec } from '../../src/equipment/furnishing-types.js';
import { TABLES } from '../../src/equipment/tables.js';
import type { Placement, Ring } from '../../src/geometry/types.js';
import { judgePose } from '../../src/placement/judge-pose.js';
import type { Scene } from '../../src/room/scene.js';
import { box, sceneOf } from './layout-cases.js';

const TABLE = TABLES['pool-7ft-bar'];
const STROKE = { backswing: 150, shortBackswing: 45, margin: 20, tipOffset: 10, maxElevation: 0.35 };
const CUE = { name: '57 in', length: 1448, tipRadius: 5, buttRadius: 15 };
/** Large enough for the table alone, with little to spare. */
const ROOM: Ring = [
  [0, 0],
  [5400, 0],
  [5400, 4400],
  [0, 4400],
];
const MIDDLE: Placement = { x: 2700, y: 2200, angle: 0 };

function judge(scene: Scene, pose: Placement) {
  const judged = judgePose({
    scene,
    table: TABLE,
    stroke: STROKE,
    cues: [CUE],
    pose,
    shots: 256,
    withTolerance: false,
  });
  return { verdict: judged.stands ? judged.cues[0].verdict : ('none' as const), open: judged.cues[0].open };
}

/**
 * The plainest search there is: the table stays, and each piece that has no place goes to the first one along the walls, at steps of 100 mm,
 * from which the cue's share of open shots is greatest. Counts its calls.
 */
function plainSearch(calls: ArrangeQuestion[]): (question: ArrangeQuestion) => Arranged {
  return (question) => {
    calls.push(question);
    const { scene, arrangement, start } = question;
    const rules = roomRules(scene, arrangement.way);
    const tablePose = start?.tablePose ?? MIDDLE;
    const placed: (PlacedPiece | null)[] = arrangement.pieces.map((piece) =>
      piece.pose === null ? null : placePiece(piece, piece.pose),
    );
    const rest = (): PlacedPiece[] => placed.filter((p) => p !== null);
    arrangement.pieces.forEach((piece, i) => {
      if (placed[i] !== null) return;
      let best = -1;
      for (let wall = 0; wall < scene.outline.length; wall++) {
        for (const pose of posesAlong(scene.outline, wall, piece)) {
          const there = placePiece(piece, pose);
          const free =
            fitsRoom(rules, there) &&
            fitsTable(there, TABLE, tablePose) &&
            rest().every((other) => fitsBeside(there, other));
          if (!free) continue;
          const { open } = judge(
            furnishedScene(scene, [...rest().filter((p) => p !== placed[i]), there], TABLE),
            tablePose,
          );
          if (open <= best) continue;
          best = open;
          placed[i] = there;
          break;
        }
      }
    });
    const poses = placed.map((p) => p?.pose ?? null);
    const value = { value: 0, upperBound: 0, placed: 0, play: 0, apart: 0 };
    return { tablePose, poses, value, layouts: 1, stopped: false, rejections: poses.map(() => []) };
  };
}

function posesAlong(outline: Ring, wall: number, { length, width }: FurnishingSpec): Placement[] {
  const a = outline[wall];
  const b = outline[(wall + 1) % outline.length];
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [tx, ty] = [(b[0] - a[0]) / long, (b[1] - a[1]) / long];
  const poses: Placement[] = [];
  for (let along = length / 2; along <= long - length / 2; along += 100) {
    poses.push({
      x: a[0] + along * tx - (width / 2) * ty,
      y: a[1] + along * ty + (width / 2) * tx,
      angle: Math.atan2(ty, tx),
    });
  }
  return poses;
}

function asked(
  pieces: readonly CheckedPiece[],
  layout: Layout,
  more: Partial<ArrangementAdviceQuestion> = {},
) {
  const calls: ArrangeQuestion[] = [];
  const scene = more.scene ?? sceneOf(ROOM);
  const placed = placesOf(pieces, layout).filter((p) => p !== null);
  const pose = layout.tablePose;
  const question: ArrangementAdviceQuestion = {
    scene,
    table: TABLE,
    stroke: STROKE,
    cue: CUE,
    pose: null,
    arrangement: { pieces, way: 600, effort: 200, onProgress: null },
    search: { gap: 1, maxBoxes: 20_000, turns: 'square' },
    arranged: {
      ...layout,
      value: { value: 0, upperBound: 0, placed: 0, play: 0, apart: 0 },
      layouts: 1,
      stopped: false,
      rejections: pieces.map(() => []),
    },
    now: pose === null ? { verdict: 'none', open: 0 } : judge(furnishedScene(scene, placed, TABLE), pose),
    arrange: plainSearch(calls),
    judge,
    ...more,
  };
  return { advice: adviseArrangement(question), calls, question };
}

const CUPBOARD = box('cupboard', 500, 400, { to: 2000, stand: 'wall', turns: 'back' });
const CHEST = box('chest', 900, 400, { to: 500, stand: 'wall', turns: 'back' });
const AGAINST: Placement = { x: 2700, y: 200, angle: 0 };

describe('advice on a layout', () => {
  it('starts from a room that is clear for the table alone, and not with the cupboard', () => {
    expect(judge(sceneOf(ROOM), MIDDLE).verdict).toBe('clear');
    const { question } = asked([{ ...CUPBOARD, pose: AGAINST }], { tablePose: MIDDLE, poses: [AGAINST] });
    expect(question.now.verdict).not.toBe('clear');
  });

  it('says where to shift a given piece, and what leaving it out brings', () => {
    const pieces = [
      { ...CUPBOARD, pose: AGAINST },
      { ...CHEST, pose: null },
    ];
    const chestAt = { x: 450, y: 200, angle: 0 };
    const { advice, question } = asked(pieces, { tablePose: MIDDLE, poses: [AGAINST, chestAt] });
    expect(advice.map(({ kind, piece, verdict }) => `${kind} ${piece} ${verdict}`)).toEqual([
      'shift cupboard clear',
      'leave-out cupboard clear',
    ]);
    const [shift, leave] = advice;
    expect(shift.gain).toBeCloseTo(1 - question.now.open, 12);
    expect(leave.gain).toBeCloseTo(1 - question.now.open, 12);
    expect(shift.amount).toBeCloseTo(
      Math.hypot((shift.pose?.x ?? 0) - AGAINST.x, (shift.pose?.y ?? 0) - AGAINST.y),
      9,
    );
    // Done as told, it does what it says.
    const { x, y, turn } = shift.pose ?? { x: 0, y: 0, turn: 0 };
    const told = { ...CUPBOARD, pose: { x, y, angle: (turn * Math.PI) / 180 } };
    const done = asked([told, pieces[1]], { tablePose: MIDDLE, poses: [told.pose, null] });
    const then = plainSearch([])({
      ...done.question,
      start: { tablePose: MIDDLE, poses: [told.pose, null] },
    });
    const placed = placesOf([told, pieces[1]], then).filter((p) => p !== null);
    expect(placed).toHaveLength(2);
    expect(placed.every((p) => fitsRoom(roomRules(sceneOf(ROOM), 600), p))).toBe(true);
    expect(fitsBeside(placed[0], placed[1])).toBe(true);
    expect(judge(furnishedScene(sceneOf(ROOM), placed, TABLE), MIDDLE).verdict).toBe('clear');
  });

  it('is none where the verdict is clear and everything has its place: nothing is searched', () => {
    const pieces = [{ ...CHEST, pose: null }];
    const { advice, calls } = asked(pieces, { tablePose: MIDDLE, poses: [{ x: 450, y: 200, angle: 0 }] });
    expect(advice).toEqual([]);
    expect(calls).toEqual([]);
  });

  it('tells which piece keeps another from its place', () => {
    // The only stretch of wall without a window seat, and room for one of the two.
    const scene = sceneOf([
      [0, 0],
      [5400, 0],
      [5400, 4400],
      [0, 4400],
    ]);
    const long = box('long seat', 5000, 200, { to: 450, stand: 'wall', turns: 'back' });
    const pieces = [
      { ...long, pose: { x: 2700, y: 100, angle: 0 } },
      { ...long, name: 'second seat', pose: { x: 2700, y: 4300, angle: Math.PI } },
      { ...long, name: 'third seat', pose: null },
    ];
    const poses = [pieces[0].pose, pieces[1].pose, null];
    const { advice, question } = asked(pieces, { tablePose: MIDDLE, poses }, { scene });
    expect(question.now.verdict).toBe('clear');
    expect(advice.map((a) => [a.kind, a.piece, a.places])).toEqual([
      ['leave-out', 'long seat', ['third seat']],
      ['leave-out', 'second seat', ['third seat']],
    ]);
    for (const { verdict, gain } of advice) expect({ verdict, gain }).toEqual({ verdict: 'clear', gain: 0 });
  });

  it('counts a given piece with a problem as one that finds a place by a shift', () => {
    const crooked = { x: 2700, y: 1000, angle: 0 };
    const pieces = [{ ...CHEST, pose: crooked }];
    const { advice } = asked(pieces, { tablePose: MIDDLE, poses: [crooked] });
    expect(advice.map((a) => [a.kind, a.piece, a.places])).toEqual([
      ['shift', 'chest', ['chest']],
      ['leave-out', 'chest', []],
    ]);
  });

  it('places the table anew when its only companion is left out', () => {
    const pieces = [{ ...CUPBOARD, pose: AGAINST }];
    const off = { x: 2700, y: 2600, angle: 0 };
    const { advice, calls } = asked(pieces, { tablePose: off, poses: [AGAINST] });
    expect(advice.find(({ kind }) => kind === 'leave-out')).toMatchObject({
      piece: 'cupboard',
      verdict: 'clear',
    });
    // With the table's pose given it stays, and the walls hold the verdict back all the same.
    const kept = asked(pieces, { tablePose: off, poses: [AGAINST] }, { pose: off });
    expect(kept.advice.every(({ verdict }) => verdict !== 'clear')).toBe(true);
    expect(calls).toHaveLength(1);
  });

  it('searches at most twice for a piece, each time at a tenth of the effort and from what was found', () => {
    const pieces = [
      { ...CUPBOARD, pose: AGAINST },
      { ...CHEST, pose: null },
      { ...CHEST, name: 'lost chest', pose: null },
    ];
    const layout = { tablePose: MIDDLE, poses: [AGAINST, { x: 450, y: 200, angle: 0 }, null] };
    const { calls } = asked(pieces, layout);
    expect(calls).toHaveLength(3);
    for (const { arrangement, start } of calls) {
      expect(arrangement.effort).toBe(20);
      expect(arrangement.onProgress).toBeNull();
      expect(start?.tablePose).toEqual(MIDDLE);
      expect(start?.poses).toHaveLength(arrangement.pieces.length);
    }
    expect(
      calls.map(({ arrangement }) => arrangement.pieces.map(({ name, pose }) => `${name} ${pose !== null}`)),
    ).toEqual([
      ['cupboard false', 'chest false', 'lost chest false'],
      ['chest false', 'lost chest false'],
      ['cupboard true', 'lost chest false'],
    ]);
  });

  it('never costs another piece its place, nor the verdict', () => {
    const pieces = [
      { ...CUPBOARD, pose: AGAINST },
      { ...CHEST, pose: null },
    ];
    const layout = { tablePose: MIDDLE, poses: [AGAINST, { x: 450, y: 200, angle: 0 }] };
    const losing = (question: ArrangeQuestion): Arranged => {
      const found = plainSearch([])(question);
      return {
        ...found,
        poses: found.poses.map((pose, i) => (question.arrangement.pieces[i].name === 'chest' ? null : pose)),
      };
    };
    const { advice } = asked(pieces, layout, { arrange: losing });
    // Left out, the old layout without the cupboard still has the chest.
    expect(advice.map(({ kind, piece }) => `${kind} ${piece}`)).toEqual(['leave-out cupboard']);
  });

  it('never costs the pieces their clear ways', () => {
    const pieces = [
      { ...CUPBOARD, pose: AGAINST },
      { ...CHEST, pose: null },
    ];
    const layout = { tablePose: MIDDLE, poses: [AGAINST, { x: 450, y: 200, angle: 0 }] };
    const arrange = plainSearch([]);
    const withPlaced = (placed: number) => ({ value: 0, upperBound: 0, placed, play: 0, apart: 0 });
    const shifts = (before: number, after: number): number => {
      const arranged = { ...asked(pieces, layout).question.arranged, value: withPlaced(before) };
      const blocked = (q: ArrangeQuestion): Arranged => ({ ...arrange(q), value: withPlaced(after) });
      return asked(pieces, layout, { arranged, arrange: blocked }).advice.filter(
        ({ kind }) => kind === 'shift',
      ).length;
    };
    expect(shifts(1, 1)).toBe(1);
    expect(shifts(0.5, 1)).toBe(1);
    expect(shifts(1, 0.5)).toBe(0);
  });
});
