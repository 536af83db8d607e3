import { describe, expect, it } from 'vitest';
import { arrange } from '../../src/arrangement/arrange.js';
import type { Arranged, ArrangeQuestion } from '../../src/arrangement/arrange-question.js';
import { fitsBeside, fitsRoom, fitsTable, roomRules, tableRing } from '../../src/arrangement/layout-rules.js';
import { layoutValue } from '../../src/arrangement/layout-value.js';
import { type PlacedPiece, placePiece } from '../../src/arrangement/piece-place.js';
import type { Placement, Ring } from '../../src/geometry/types.js';
import { findPlace } from '../../src/placement/find-place.js';
import { seeded } from '../helpers/external-random.js';
import { area, difference, intersection, polygon } from '../helpers/jsts.js';
import { questionOf, somePieces, someRoom } from './arrange-cases.js';

/** Whatever the room: what the search gives back keeps the rules, by the library's own eyes and by those of JTS. */

/** Overlaps of less area may be touching with rounding, 0.01 mm over 20 m; mm2. */
const TOUCHING = 200;

interface Answer {
  readonly name: string;
  readonly question: ArrangeQuestion;
  readonly arranged: Arranged;
  readonly placed: readonly PlacedPiece[];
}

function answer(seed: number, small: boolean): Answer {
  const random = seeded(seed * 7919);
  const room = small
    ? someRoom(random, [2300, 1900], [3600, 3300])
    : someRoom(random, [3600, 3200], [7500, 5600]);
  const count = small ? 6 + Math.floor(random() * 7) : 1 + Math.floor(random() * 6);
  const question = questionOf({ room, furnishings: oneLamp(somePieces(random, count)) }, { effort: 20 });
  const arranged = arrange(question);
  const placed = arranged.poses.flatMap((pose, i) =>
    pose === null ? [] : [placePiece(question.arrangement.pieces[i], pose)],
  );
  return { name: `${small ? 'small' : 'larger'} room ${seed}`, question, arranged, placed };
}

/** Lamps all hang over the middle of the table, so that only one can keep the rules. */
function oneLamp<T extends { readonly kind?: string }>(pieces: readonly T[]): readonly T[] {
  const first = pieces.findIndex(({ kind }) => kind === 'lamp');
  return pieces.filter(({ kind }, i) => kind !== 'lamp' || i === first);
}

const answers: readonly Answer[] = [
  ...Array.from({ length: 12 }, (_, i) => answer(i + 1, true)),
  ...Array.from({ length: 7 }, (_, i) => answer(i + 101, false)),
];

function tableOf({ table }: ArrangeQuestion) {
  if (table === null) throw new Error('There is a table.');
  return table;
}

function placeOf(question: ArrangeQuestion): Placement | null {
  const { scene, stroke, cue, search } = question;
  return findPlace({ scene, table: tableOf(question), stroke, cues: [cue], search }).pose;
}

describe('what the search gives back', () => {
  it('has tables and pieces with a place, and some without', () => {
    const tables = answers.filter(({ arranged }) => arranged.tablePose !== null).length;
    expect(tables).toBeGreaterThan(9);
    expect(tables).toBeLessThan(answers.length);
    const asked = answers.reduce((sum, { arranged }) => sum + arranged.poses.length, 0);
    const found = answers.reduce((sum, { placed }) => sum + placed.length, 0);
    expect(found).toBeGreaterThan(50);
    expect(found).toBeLessThan(asked);
  });

  it.each(answers)('keeps every rule: $name', ({ question, arranged, placed }) => {
    const rules = roomRules(question.scene, question.arrangement.way);
    for (const piece of placed) {
      expect(fitsRoom(rules, piece)).toBe(true);
      if (arranged.tablePose !== null)
        expect(fitsTable(piece, tableOf(question), arranged.tablePose)).toBe(true);
      expect(placed.filter((other) => other !== piece && !fitsBeside(piece, other))).toEqual([]);
    }
  });

  it.each(answers)('lies within the walls and apart by JTS: $name', ({ question, arranged, placed }) => {
    const walls = polygon(question.scene.outline);
    const shared = (a: Ring, b: Ring): number => area(intersection(polygon(a), polygon(b)));
    const frame = arranged.tablePose === null ? null : tableRing(tableOf(question), arranged.tablePose);
    const onFloor = placed.filter(({ spec }) => spec.stand !== 'over-table');
    if (frame !== null) expect(area(difference(polygon(frame), walls))).toBeLessThan(TOUCHING);
    for (const piece of onFloor) {
      const { spec, ring, zones } = piece;
      const rings = [ring, ...zones.map((zone) => zone.ring)];
      for (const each of rings) {
        expect(area(difference(polygon(each), walls))).toBeLessThan(TOUCHING);
        for (const thing of question.scene.obstacles) expect(shared(each, thing.ring)).toBeLessThan(TOUCHING);
        if (frame !== null && spec.from === 0) expect(shared(each, frame)).toBeLessThan(TOUCHING);
      }
      for (const other of onFloor) {
        if (other === piece || other.spec.from >= spec.to || spec.from >= other.spec.to) continue;
        for (const each of rings) expect(shared(each, other.ring)).toBeLessThan(TOUCHING);
      }
    }
  });

  it.each(answers)('never pushes out a table that goes into the bare room: $name', (given) => {
    const { question, arranged } = given;
    expect(arranged.tablePose !== null).toBe(placeOf(question) !== null);
  });

  it.each(answers)('is worth what it says, and no more than the bound: $name', ({ question, arranged }) => {
    const { value, poses } = arranged;
    expect(value).toEqual(layoutValue(question, arranged));
    expect(value.value).toBeLessThanOrEqual(value.upperBound);
    const there = poses.filter((pose) => pose !== null).length;
    expect(value.placed * poses.length).toBeLessThanOrEqual(there + 1e-9);
    expect(arranged.layouts).toBeGreaterThan(0);
    arranged.rejections.forEach((reasons, i) => {
      expect(reasons.length > 0).toBe(poses[i] === null);
    });
  });

  it.each(answers)('has no less play with any one piece taken away: $name', ({ question, arranged }) => {
    const { arrangement } = question;
    arrangement.pieces.forEach((_, left) => {
      if (arranged.poses[left] === null) return;
      const others = <T>(list: readonly T[]): readonly T[] => list.filter((__, i) => i !== left);
      const asked = { ...question, arrangement: { ...arrangement, pieces: others(arrangement.pieces) } };
      const { play } = layoutValue(asked, {
        tablePose: arranged.tablePose,
        poses: others(arranged.poses),
      });
      expect(play).toBeGreaterThanOrEqual(arranged.value.play - 1e-12);
    });
  });
});
