import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Box,
  cornersOf,
  lengthInside,
  lies,
  overlap,
  type Segment,
} from '../../../src/report/plan/boxes.js';
import { fitLines, fitText, textWidth } from '../../../src/report/plan/character-widths.js';
import { LabelPlacer } from '../../../src/report/plan/label-placer.js';
import { wallChains } from '../../../src/report/plan/wall-chains.js';

const SEED = 7_731;
const AREA = { left: 0, top: 0, right: 100, bottom: 80 };
const coordinate = fc.double({ min: -5, max: 105, noNaN: true });
const anyBox: fc.Arbitrary<Box> = fc.record({
  x: coordinate,
  y: coordinate,
  width: fc.double({ min: 1, max: 30, noNaN: true }),
  height: fc.double({ min: 1, max: 12, noNaN: true }),
  angle: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
});

/** Slow and obvious: points of one box, on a grid, looked for in the other. */
function sharesPoints(a: Box, b: Box): boolean {
  const [c0, c1, , c3] = cornersOf(a);
  for (let i = 0.5; i < 40; i++)
    for (let j = 0.5; j < 40; j++) {
      const x = c0[0] + ((c1[0] - c0[0]) * i + (c3[0] - c0[0]) * j) / 40;
      const y = c0[1] + ((c1[1] - c0[1]) * i + (c3[1] - c0[1]) * j) / 40;
      const along = (x - b.x) * Math.cos(b.angle) + (y - b.y) * Math.sin(b.angle);
      const across = (y - b.y) * Math.cos(b.angle) - (x - b.x) * Math.sin(b.angle);
      if (Math.abs(along) < b.width / 2 && Math.abs(across) < b.height / 2) return true;
    }
  return false;
}

describe('boxes', () => {
  it('overlap wherever they share points', () => {
    fc.assert(
      fc.property(anyBox, anyBox, (a, b) => {
        if (sharesPoints(a, b)) expect(overlap(a, b)).toBe(true);
        else
          expect(
            overlap(
              { ...a, width: a.width * 0.9, height: a.height * 0.9 },
              { ...b, width: b.width * 0.9, height: b.height * 0.9 },
            ),
          ).toBe(false);
        expect(overlap(a, b)).toBe(overlap(b, a));
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it('hold as much of a segment as a fine division of it says', () => {
    fc.assert(
      fc.property(anyBox, coordinate, coordinate, coordinate, coordinate, (box, ax, ay, bx, by) => {
        const segment: Segment = [
          [ax, ay],
          [bx, by],
        ];
        let inside = 0;
        for (let i = 0.5; i < 2000; i++) {
          const dx = ax + ((bx - ax) * i) / 2000 - box.x;
          const dy = ay + ((by - ay) * i) / 2000 - box.y;
          const along = dx * Math.cos(box.angle) + dy * Math.sin(box.angle);
          const across = dy * Math.cos(box.angle) - dx * Math.sin(box.angle);
          if (Math.abs(along) < box.width / 2 && Math.abs(across) < box.height / 2) inside++;
        }
        const long = Math.hypot(bx - ax, by - ay);
        expect(Math.abs(lengthInside(box, segment) - (inside / 2000) * long)).toBeLessThanOrEqual(
          (2 * long) / 2000 + 1e-9,
        );
      }),
      { seed: SEED, numRuns: 300 },
    );
  });
});

describe('LabelPlacer', () => {
  it('never lets two labels overlap nor one leave the area', () => {
    fc.assert(
      fc.property(fc.array(fc.array(anyBox, { maxLength: 6 }), { maxLength: 25 }), (labels) => {
        const placer = new LabelPlacer(AREA);
        const placed: Box[] = [];
        for (const boxes of labels) {
          const found = placer.place(boxes.map((box, i) => ({ box, cost: i })));
          if (found === null) continue;
          expect(lies(found.box, AREA)).toBe(true);
          for (const other of placed) expect(overlap(found.box, other)).toBe(false);
          placed.push(found.box);
        }
      }),
      { seed: SEED, numRuns: 100 },
    );
  });

  it('takes the place that covers least, and none that costs too much', () => {
    const placer = new LabelPlacer(AREA);
    const box = (x: number): Box => ({ x, y: 40, width: 10, height: 4, angle: 0 });
    placer.avoid(
      [
        [
          [20, 0],
          [20, 80],
        ],
      ],
      1,
    );
    expect(
      placer.place([
        { box: box(20), cost: 0 },
        { box: box(50), cost: 3 },
      ])?.box.x,
    ).toBe(50);
    expect(placer.place([{ box: box(20), cost: 0 }], 4)).toBeNull();
    expect(placer.place([{ box: box(20), cost: 0 }], 4.1)?.box.x).toBe(20);
    expect(placer.place([{ box: box(22), cost: 0 }])).toBeNull();
  });
});

describe('text', () => {
  it('is cut and broken to what goes into a width', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 80 }),
        fc.double({ min: 15, max: 60, noNaN: true }),
        (text, width) => {
          expect(textWidth(fitText(text, 3.5, width), 3.5)).toBeLessThanOrEqual(width + 1e-9);
          const lines = fitLines(text, 3.5, width, 3);
          expect(lines.length).toBeLessThanOrEqual(3);
          for (const line of lines) expect(textWidth(line, 3.5)).toBeLessThanOrEqual(width + 1e-9);
          if (!lines.some((line) => line.endsWith('\u2026')))
            expect(lines.join(' ')).toBe(
              text
                .split(' ')
                .filter((w) => w !== '')
                .join(' '),
            );
        },
      ),
      { seed: SEED, numRuns: 300 },
    );
  });
});

describe('wallChains', () => {
  it('sets out a room with a niche: what faces out in chains, the whole beside it', () => {
    const chains = wallChains([
      [0, 0],
      [4000, 0],
      [4000, 3000],
      [2500, 3000],
      [2500, 2400],
      [1500, 2400],
      [1500, 3000],
      [0, 3000],
    ]);
    const spans = (side: 'bottom' | 'top' | 'left' | 'right') =>
      chains.sides[side].map(({ low, high }) => [low, high]);
    expect(spans('bottom')).toEqual([[0, 4000]]);
    expect(spans('top')).toEqual([
      [0, 1500],
      [1500, 2500],
      [2500, 4000],
    ]);
    expect(spans('left')).toEqual([[0, 3000]]);
    expect(spans('right')).toEqual([]);
    expect(chains.whole).toEqual([]);
    // The niche's sides are seen from neither side.
    expect(chains.others).toEqual([3, 5]);
  });
});
