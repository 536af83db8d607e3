import { describe, expect, it } from 'vitest';
import { roomFromTape } from '../../src/room/room-from-tape.js';
import { endCovariance, innerCovariance, wallEnds } from '../../src/room/tape-bands.js';
import type { TapeSurvey, TapeWall } from '../../src/room/tape-input.js';
import type { TapedRoom } from '../../src/room/tape-report.js';
import { distanceBetween, measure, starRoom } from './tape-simulate.js';

const RECTANGLE: readonly TapeWall[] = [
  { length: 5000 },
  { length: 4000 },
  { length: 5000 },
  { length: 4000 },
];
const DIAGONAL = Math.hypot(5000, 4000);

function greatest(room: TapedRoom): number {
  return Math.max(...room.walls.map(({ band }) => band));
}

/**
 * Greater deviation of both ends of each wall, square to it, from the covariance that the room reports. Predictions keep the factor
 * of now, so they are compared by these.
 */
function wallDeviations({ corners, covariance }: TapedRoom): number[] {
  const xy = Float64Array.from(corners.flatMap(({ x, y }) => [x, y]));
  const inner = innerCovariance(xy, Float64Array.from(covariance.flat()));
  const each = wallEnds(xy).map((end) => Math.sqrt(endCovariance(end, end, inner, xy.length)));
  return corners.map((_, i) => Math.max(each[2 * i], each[2 * i + 1]));
}

/** The factor of a room's bands. */
function factorOf(room: TapedRoom): number {
  return greatest(room) / Math.max(...wallDeviations(room));
}

describe('what to read next', () => {
  it('a rectangle by its walls: a diagonal first, which does what was said once it is taken', () => {
    const before = roomFromTape({ walls: RECTANGLE });
    expect(before.next[0].reading).toMatch(/^diagonal (A-C|B-D)$/);
    expect(before.next[0].now).toBe(greatest(before));
    const after = roomFromTape({ walls: RECTANGLE, diagonals: [{ from: 'A', to: 'C', length: DIAGONAL }] });
    expect(before.next[0].after).toBeCloseTo(factorOf(before) * Math.max(...wallDeviations(after)), 5);
    expect(greatest(after)).toBeLessThan(0.6 * greatest(before));
  });

  it('both diagonals taken: only readings to repeat are left', () => {
    const { next } = roomFromTape({
      walls: RECTANGLE,
      diagonals: [
        { from: 'A', to: 'C', length: DIAGONAL },
        { from: 'B', to: 'D', length: DIAGONAL },
      ],
    });
    expect(next.length).toBeGreaterThan(0);
    for (const { reading } of next) expect(reading).toMatch(/again$|three distances$/);
  });

  it('every prediction for a star of nine corners comes true when that exact reading is added', () => {
    const { ring } = starRoom(9, 0, 4);
    const how = { deviation: 3, cornerDeviation: 0.5, diagonals: [] };
    const survey = measure(ring, how);
    const before = roomFromTape(survey);
    const diagonals = before.next.filter(({ reading }) => reading.startsWith('diagonal'));
    expect(diagonals.length).toBeGreaterThan(1);
    for (const { reading, after: then } of diagonals) {
      const [from, to] = reading.replace('diagonal ', '').split('-');
      const length = distanceBetween(ring[Number(from.slice(1))], ring[Number(to.slice(1))]);
      // A new tape reading, with the deviation that such a reading usually has.
      const after = roomFromTape({ ...survey, diagonals: [{ from, to, length }] });
      expect(then).toBeCloseTo(factorOf(before) * Math.max(...wallDeviations(after)), 5);
    }
  });

  it('is ranked best first, and nothing beyond a wall is asked for', () => {
    // A U: its two arms do not see each other's ends.
    const survey: TapeSurvey = {
      walls: [
        { length: 5000 },
        { length: 2000 },
        { length: 3000, corner: 'external' },
        { length: 2000, corner: 'external' },
        { length: 3000 },
        { length: 2000 },
        { length: 5000 },
        { length: 6000 },
      ],
    };
    const { next } = roomFromTape(survey);
    expect(next.length).toBeGreaterThan(2);
    // Those that differ by rounding only are equals.
    const after = next.map((reading) => Math.round(reading.after * 1e6));
    expect(after).toEqual(after.toSorted((a, b) => a - b));
    const blind = ['B-F', 'B-G', 'C-F', 'C-G', 'A-F', 'C-H'].map((ends) => `diagonal ${ends}`);
    for (const { reading } of next) expect(blind).not.toContain(reading);
  });

  it('agrees with trying every diagonal in full', () => {
    const { ring } = starRoom(7, 0, 8);
    const survey = measure(ring, { deviation: 3, cornerDeviation: 0.5, diagonals: [] });
    const tried: { name: string; band: number }[] = [];
    for (let i = 0; i < 7; i++) {
      for (let j = i + 2; j < 7; j++) {
        if (i === 0 && j === 6) continue;
        const [from, to] = [`P${i}`, `P${j}`];
        const after = roomFromTape({
          ...survey,
          diagonals: [{ from, to, length: distanceBetween(ring[i], ring[j]) }],
        });
        tried.push({ name: `diagonal ${from}-${to}`, band: Math.max(...wallDeviations(after)) });
      }
    }
    tried.sort((a, b) => a.band - b.band);
    const before = roomFromTape(survey);
    const said = before.next.filter(({ reading }) => reading.startsWith('diagonal'));
    expect(said.length).toBeGreaterThan(1);
    said.forEach(({ reading, after: then }, i) => {
      expect(reading).toBe(tried[i].name);
      expect(then).toBeCloseTo(factorOf(before) * tried[i].band, 5);
    });
  });
});

describe('what to repeat for one wall', () => {
  it('narrows its band as said when it is repeated', () => {
    const survey: TapeSurvey = { walls: RECTANGLE, diagonals: [{ from: 'A', to: 'C', length: DIAGONAL }] };
    const before = roomFromTape(survey);
    const [, second] = before.walls;
    const [best] = second.repeat;
    const twice = (length: number) => ({ length: [length, length] });
    const after = roomFromTape({
      walls: RECTANGLE.map((wall, i) => {
        const name = `wall ${'ABCD'.charAt(i)}-${'BCDA'.charAt(i)}`;
        return name === best.reading ? { ...wall, length: twice(i % 2 === 0 ? 5000 : 4000) } : wall;
      }),
      diagonals: [
        { from: 'A', to: 'C', length: best.reading === 'diagonal A-C' ? twice(DIAGONAL) : DIAGONAL },
      ],
    });
    expect(best.band).toBeLessThan(second.band);
    expect(best.band).toBeCloseTo(factorOf(before) * wallDeviations(after)[1], 5);
  });

  it('an estimate is measured, not estimated again', () => {
    const [first, ...others] = RECTANGLE;
    const guessed = { ...first, length: { length: 5000, by: 'estimate' } } as const;
    const diagonals = [{ from: 'A', to: 'C', length: DIAGONAL }];
    const before = roomFromTape({ walls: [guessed, ...others], diagonals });
    const said = before.walls.flatMap(({ repeat }) => repeat).find(({ reading }) => reading === 'wall A-B');
    expect(said?.band).toBeLessThan(0.5 * greatest(before));
  });

  it('names readings only, never what was assumed', () => {
    const { walls, readings } = roomFromTape({
      walls: RECTANGLE,
      diagonals: [{ from: 'A', to: 'C', length: DIAGONAL }],
    });
    const assumed = new Set(readings.filter(({ by }) => by === 'assumed').map(({ name }) => name));
    for (const { repeat } of walls) {
      expect(repeat.length).toBeGreaterThan(0);
      for (const { reading } of repeat) expect(assumed.has(reading)).toBe(false);
      expect(repeat.map(({ band }) => band)).toEqual(repeat.map(({ band }) => band).sort((a, b) => a - b));
    }
  });

  it('is nothing where only the assumed corners make a wall unsure: then a new reading is what helps', () => {
    const { walls, next } = roomFromTape({ walls: RECTANGLE });
    const unsure = walls.reduce((a, b) => (b.band > a.band ? b : a));
    expect(unsure.repeat).toEqual([]);
    expect(next[0].after).toBeLessThan(0.6 * unsure.band);
  });
});
