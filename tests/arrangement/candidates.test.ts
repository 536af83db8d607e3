import { describe, expect, it } from 'vitest';
import { hasBit } from '../../src/arrangement/bits.js';
import { MOST_CANDIDATES } from '../../src/arrangement/candidate-pool.js';
import { fillPool } from '../../src/arrangement/fill-pool.js';
import { fitsBeside, fitsRoom } from '../../src/arrangement/layout-rules.js';
import { searchRoom } from '../../src/arrangement/search-room.js';
import { seeded } from '../helpers/external-random.js';
import { area, difference, polygon } from '../helpers/jsts.js';
import { questionOf, somePieces, someRoom } from './arrange-cases.js';

/** Overlaps of less area may be touching with rounding, 0.01 mm over 20 m; mm2. */
const TOUCHING = 200;

const rooms = Array.from({ length: 6 }, (_, i) => {
  const random = seeded((i + 1) * 104_729);
  const room = someRoom(random, [3000, 2600], [7500, 5600]);
  const question = questionOf({ room, furnishings: somePieces(random, 2 + i) }, { effort: 1 });
  const search = searchRoom(question);
  fillPool(search);
  return { name: `room ${i + 1}`, question, search };
});

describe('places for pieces', () => {
  it.each(rooms)('lie within the walls and keep the rules of the room: $name', ({ question, search }) => {
    const { pool, rules } = search;
    expect(pool.list.length).toBeGreaterThan(10);
    expect(pool.list.length).toBeLessThanOrEqual(MOST_CANDIDATES);
    const walls = polygon(question.scene.outline);
    for (const [k, { kind, placed }] of pool.list.entries()) {
      expect(fitsRoom(rules, placed)).toBe(true);
      expect(placed.spec).toBe(pool.kinds[kind]);
      if (k % 5 === 0) expect(area(difference(polygon(placed.ring), walls))).toBeLessThan(TOUCHING);
    }
  });

  it.each(rooms)('belong to one kind each, and go together as two pieces do: $name', ({ search }) => {
    const { pool } = search;
    const { list, kinds } = pool;
    for (let k = 0; k < list.length; k += 97) {
      const row = pool.together(k);
      kinds.forEach((_, kind) => {
        expect(hasBit(pool.ofKind(kind), k)).toBe(list[k].kind === kind);
      });
      for (let j = 0; j < list.length; j += 7) {
        if (j === k) continue;
        expect(hasBit(row, j)).toBe(fitsBeside(list[k].placed, list[j].placed));
        expect(hasBit(pool.together(j), k)).toBe(hasBit(row, j));
      }
    }
  });

  it('are one where they are the same, and none where the room has no room', () => {
    const [{ search }] = rooms;
    const { pool } = search;
    const { kind, placed } = pool.list[3];
    const before = pool.list.length;
    expect(pool.add(kind, placed.pose)).toBe(3);
    expect(pool.add(kind, { ...placed.pose, angle: placed.pose.angle + 2 * Math.PI })).toBe(3);
    expect(pool.add(kind, { ...placed.pose, x: 1e6 })).toBe(-1);
    expect(pool.list.length).toBe(before);
  });
});
