import type { MultiPolygon } from 'polygon-clipping';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { RegionError, regionArea } from '../../src/geometry/region.js';
import { REGION_GRID, subtract, unite } from '../../src/geometry/regions.js';
import type { Ring } from '../../src/geometry/types.js';

/**
 * A dependency that goes wrong in every way that it is known to, in place of the real one: it is asked to, so that each
 * check of the wrapper is seen to work.
 */
const { clip } = vi.hoisted(() => ({
  clip: { calls: 0, spoil: (_call: number, result: MultiPolygon): MultiPolygon => result },
}));

vi.mock('polygon-clipping', async (importOriginal) => {
  const { default: real } = await importOriginal<{ default: typeof import('polygon-clipping') }>();
  type Shape = Parameters<typeof real.union>[0];
  const spoilt =
    (operation: (first: Shape, ...rest: Shape[]) => MultiPolygon) =>
    (first: Shape, ...rest: Shape[]): MultiPolygon =>
      clip.spoil(clip.calls++, operation(first, ...rest));
  return {
    default: {
      union: spoilt(real.union),
      intersection: spoilt(real.intersection),
      difference: spoilt(real.difference),
    },
  };
});

const a: Ring = [
  [0, 0],
  [100.3, 0],
  [100.3, 100.3],
  [0, 100.3],
];
const b: Ring = [
  [50, 50],
  [200, 50],
  [200, 200],
  [50, 200],
];
const united = 100.3 * 100.3 + 150 * 150 - 50.3 * 50.3;

beforeEach(() => {
  clip.calls = 0;
  clip.spoil = (_, result) => result;
});

function rectangle(minX: number, minY: number, maxX: number, maxY: number): [number, number][] {
  return [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
    [minX, minY],
  ];
}

function shift(result: MultiPolygon, dx: number, dy: number): MultiPolygon {
  return result.map((polygon) => polygon.map((ring) => ring.map(([x, y]) => [x + dx, y + dy])));
}

/** Wrong results, none of which may be passed on. */
const wrongs: readonly (readonly [string, (result: MultiPolygon) => MultiPolygon])[] = [
  [
    'an error',
    () => {
      throw new Error('Unable to complete output ring');
    },
  ],
  [
    'a deep stack',
    () => {
      throw new RangeError('Maximum call stack size exceeded');
    },
  ],
  [
    'something that is no error',
    () => {
      throw 'a word';
    },
  ],
  ['nothing', () => []],
  [
    'a corner that is no number',
    (result) => result.map((p) => p.map((r) => r.map(([x], i) => [x, i === 1 ? Number.NaN : x]))),
  ],
  // The operands lie in a box of 200 x 200, which the dependency sees around the origin.
  ['less than the largest part', () => [[rectangle(-100, -100, -10, -10)]]],
  ['more than all parts together', () => [[rectangle(-100, -100, 100, 100)]]],
  ['the right area too far to the right', (result) => shift(result, 7, 0)],
  ['the right area too far to the left', (result) => shift(result, -7, 0)],
  ['the right area too far up', (result) => shift(result, 0, 7)],
  ['the right area too far down', (result) => shift(result, 0, -7)],
  [
    'the right area with a boundary from nowhere',
    ([[[first, ...rest]]]) => {
      const spikes = Array.from({ length: 10 }, (): [number, number][] => [first, [0, 0]]).flat();
      return [[[...spikes, first, ...rest]]];
    },
  ],
];

describe('the ladder of grids', () => {
  it.each(wrongs)('climbs over %s', (_, wrong) => {
    clip.spoil = (call, result) => (call === 0 ? wrong(result) : result);
    expect(regionArea(unite([a, b]))).toBeCloseTo(united, 1);
    expect(clip.calls).toBe(2);
  });

  it.each(wrongs)('ends in an error when there is only ever %s', (_, wrong) => {
    clip.spoil = (_call, result) => wrong(result);
    let thrown: unknown = null;
    try {
      unite([a, b]);
    } catch (error) {
      thrown = error;
    }
    expect(thrown).toBeInstanceOf(RegionError);
    expect(thrown).toMatchObject({ code: 'unresolved' });
    expect(clip.calls).toBe(7);
  });

  it('takes a coarser grid when the fine one fails', () => {
    clip.spoil = (call, result) => (call < 2 ? [] : result);
    for (const { outer } of unite([a, b])) {
      for (const [x, y] of outer) {
        expect(Number.isInteger(x / (2 * REGION_GRID))).toBe(true);
        expect(Number.isInteger(y / (2 * REGION_GRID))).toBe(true);
      }
    }
  });

  it('does not believe a difference whose other half is missing', () => {
    // Two unions check the operands, then come the intersection and the difference.
    clip.spoil = (call, result) => (call === 2 ? [] : result);
    expect(regionArea(subtract(a, [b]))).toBeCloseTo(100.3 * 100.3 - 50.3 * 50.3, 1);
    expect(clip.calls).toBe(8);
  });

  it('does not believe an intersection that is larger than one of its operands', () => {
    const small: Ring = [
      [10, 10],
      [20, 10],
      [20, 20],
      [10, 20],
    ];
    // Both halves wrong, and together right.
    const { spoil } = clip;
    clip.spoil = (call, result) =>
      call === 2 ? [[rectangle(-50, -50, 50.3, 50.3)]] : call === 3 ? [] : spoil(call, result);
    const rest = subtract(a, [small]);
    expect(clip.calls).toBe(8);
    expect(regionArea(rest)).toBeCloseTo(100.3 * 100.3 - 100, 1);
  });

  it('unites in groups of eight', () => {
    const strip = Array.from(
      { length: 20 },
      (_, i): Ring => [
        [10 * i, 0],
        [10 * i + 10, 0],
        [10 * i + 10, 10],
        [10 * i, 10],
      ],
    );
    expect(regionArea(unite(strip))).toBe(2000);
    expect(clip.calls).toBe(4);
  });
});
