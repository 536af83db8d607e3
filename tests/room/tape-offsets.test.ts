import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { signedArea } from '../../src/geometry/ring.js';
import type { Point } from '../../src/geometry/types.js';
import { roomFromTape } from '../../src/room/room-from-tape.js';
import type { TapeOffset, TapeSurvey } from '../../src/room/tape-input.js';
import type { TapedRoom } from '../../src/room/tape-report.js';

const SEED = 1771;
const WALLS = [{ length: 5000 }, { length: 4000 }, { length: 5000 }, { length: 4000 }] as const;
const BREAST = { kind: 'breast', wall: 'A', start: 1500, width: 1600, depth: 350 } as const;

function room(offsets: readonly TapeOffset[], more: Partial<TapeSurvey> = {}): TapedRoom {
  return roomFromTape({ walls: WALLS, offsets, ...more });
}

function cornersOf({ corners }: TapedRoom): Record<string, Point> {
  return Object.fromEntries(corners.map(({ name, x, y }): [string, Point] => [name, [x, y]]));
}

/** Exact readings leave nothing to share out but what is under a hundredth of a millimetre. */
function expectAt(found: Record<string, Point>, expected: Record<string, Point>): void {
  for (const [name, [x, y]] of Object.entries(expected)) {
    expect(found[name][0]).toBeCloseTo(x, 4);
    expect(found[name][1]).toBeCloseTo(y, 4);
  }
}

describe('what breaks a wall', () => {
  it('a chimney breast juts into the room of a clockwise walk, to the right of its wall', () => {
    const found = room([BREAST]);
    expect(found.corners.map(({ name }) => name)).toEqual(['A', 'A1', 'A2', 'A3', 'A4', 'B', 'C', 'D']);
    expectAt(cornersOf(found), {
      A1: [0, 1500],
      A2: [350, 1500],
      A3: [350, 3100],
      A4: [0, 3100],
      B: [0, 5000],
    });
    expect(found.walls.map(({ name }) => name)).toEqual([
      'wall A-A1',
      'wall A1-A2',
      'wall A2-A3',
      'wall A3-A4',
      'wall A4-B',
      'wall B-C',
      'wall C-D',
      'wall D-A',
    ]);
  });

  it('and to the left of an anticlockwise one', () => {
    const found = room([BREAST], { walk: 'anticlockwise' });
    expectAt(cornersOf(found), {
      A1: [1500, 0],
      A2: [1500, 350],
      A3: [3100, 350],
      A4: [3100, 0],
      B: [5000, 0],
    });
  });

  it('an alcove goes back from the wall', () => {
    expectAt(cornersOf(room([{ ...BREAST, kind: 'alcove' }])), { A2: [-350, 1500], A3: [-350, 3100] });
    expectAt(cornersOf(room([{ ...BREAST, kind: 'alcove' }], { walk: 'anticlockwise' })), {
      A2: [1500, -350],
      A3: [3100, -350],
    });
  });

  it('a bay with a front of its own has splayed sides; without, square ones', () => {
    const bay = { kind: 'bay', wall: 'B', start: 1000, width: 2000, depth: 500 } as const;
    expectAt(cornersOf(room([{ ...bay, front: 1200 }])), {
      B1: [1000, 5000],
      B2: [1400, 5500],
      B3: [2600, 5500],
      B4: [3000, 5000],
    });
    expectAt(cornersOf(room([bay])), { B2: [1000, 5500], B3: [3000, 5500] });
    expectAt(cornersOf(room([{ ...bay, front: 1200 }], { walk: 'anticlockwise' })), {
      B1: [5000, 1000],
      B2: [5500, 1400],
      B3: [5500, 2600],
      B4: [5000, 3000],
    });
  });

  it('several on one wall are counted on from its start, in whichever order they are given', () => {
    const second = { ...BREAST, kind: 'alcove', start: 3500, width: 800 } as const;
    const found = cornersOf(room([second, BREAST]));
    expectAt(found, { A2: [350, 1500], A4: [0, 3100], A5: [0, 3500], A6: [-350, 3500], A8: [0, 4300] });
  });

  it('the rest of the wall checks start and width; depth stays unchecked', () => {
    const { readings, degreesOfFreedom } = room([{ ...BREAST, name: 'chimney', rest: 1909 }]);
    const of = (name: string) => readings.find((reading) => reading.name === name);
    // 9 mm too much for the wall's 5,000, shared by the four readings by their variances: about a quarter each.
    for (const name of ['start of chimney', 'width of chimney', 'rest of the wall after chimney']) {
      expect(of(name)?.residual).toBeCloseTo(-2.2, 0);
      expect(of(name)?.redundancy).toBeGreaterThan(0.2);
    }
    expect(of('depth of chimney')).toMatchObject({ redundancy: 0, standardized: null, kind: 'offset' });
    expect(of('A1 in line with the wall')).toMatchObject({ by: 'assumed', kind: 'offset' });
    expect(degreesOfFreedom).toBe(4);
  });

  it('its corners can be measured to', () => {
    const { readings } = room([BREAST], {
      diagonals: [
        { from: 'C', to: 'A3', length: Math.hypot(3650, 1900) },
        { from: 'A2', to: 'D', length: Math.hypot(3650, 1500) },
      ],
    });
    expect(readings.map(({ name }) => name)).toContain('diagonal A3-C');
    expect(readings.map(({ name }) => name)).toContain('diagonal A2-D');
    for (const { residual } of readings) expect(Math.abs(residual)).toBeLessThan(1e-4);
  });

  it('takes its own area from the room or adds it, whatever it measures', () => {
    const number = (min: number, max: number) => fc.integer({ min, max });
    fc.assert(
      fc.property(
        fc.constantFrom('alcove', 'breast', 'bay'),
        fc.constantFrom('clockwise', 'anticlockwise'),
        fc.constantFrom('A', 'B', 'C', 'D'),
        number(20, 1500),
        number(300, 1400),
        number(50, 1200),
        number(100, 300),
        (kind, walk, wall, start, width, depth, front) => {
          const splayed = kind === 'bay' ? { front } : {};
          const found = room([{ kind, wall, start, width, depth, ...splayed }], { walk });
          const ring = found.corners.map(({ x, y }): Point => [x, y]);
          const own = kind === 'bay' ? (depth * (width + front)) / 2 : depth * width;
          const area = 5000 * 4000 + (kind === 'breast' ? -own : own);
          expect(Math.abs(signedArea(ring))).toBeCloseTo(area, 0);
          expect(signedArea(ring) > 0).toBe(walk === 'anticlockwise');
          expect(found.unitDeviation).toBeLessThan(1e-6);
        },
      ),
      { seed: SEED, numRuns: 200 },
    );
  });

  it('is refused where its corners would be called like another one', () => {
    expect(() =>
      roomFromTape({
        walls: [{ length: 5000 }, { length: 4000, from: 'A1' }, { length: 5000 }, { length: 4000 }],
        offsets: [BREAST],
      }),
    ).toThrow(/called "A1" already/);
  });

  it('counts its corners apart where the corners of the room are numbers', () => {
    const found = roomFromTape({
      walls: WALLS.map((wall, i) => ({ ...wall, from: String(i + 10) })),
      offsets: [{ ...BREAST, wall: '10' }],
      diagonals: [{ from: '10.2', to: '13', length: Math.hypot(3650, 1500) }],
    });
    expect(found.corners.map(({ name }) => name)).toEqual([
      '10',
      '10.1',
      '10.2',
      '10.3',
      '10.4',
      '11',
      '12',
      '13',
    ]);
  });
});
