import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstShot } from '../../docs/try/probe/first-shot.js';
import {
  crossings,
  fieldToRoom,
  type Point,
  planView,
  rayToSegment,
  rectangleAt,
  roomToField,
  shownBox,
} from '../../docs/try/probe/plan-geometry.js';
import { afterKey, allowed, type Shot, withBallAt, withButtTowards } from '../../docs/try/probe/shot.js';
import { steadyBox } from '../../docs/try/probe/steady-box.js';

const seed = 20_250_711;
const coordinate = fc.double({ min: -8000, max: 8000, noNaN: true });
const point = fc.tuple(coordinate, coordinate);
const pose = fc.record({ x: coordinate, y: coordinate, turn: fc.double({ min: 0, max: 180, noNaN: true }) });
const AREA = { halfX: 1088.925, halfY: 530.425 };
const distance = ([ax, ay]: Point, [bx, by]: Point) => Math.hypot(ax - bx, ay - by);

describe('between pixels, room and table', () => {
  it('goes there and back', () => {
    fc.assert(
      fc.property(pose, point, (table, spot) => {
        expect(distance(roomToField(table, fieldToRoom(table, spot)), spot)).toBeLessThan(1e-9);
      }),
      { seed },
    );
    const box = { left: -300, right: 5200, low: 100, high: 4100 };
    fc.assert(
      fc.property(fc.integer({ min: 200, max: 1600 }), point, (width, spot) => {
        const view = planView(box, width, 460);
        expect(distance(view.toRoom(view.toPixel(spot)), spot)).toBeLessThan(1e-8);
      }),
      { seed },
    );
  });

  it('shows the whole box, up pointing up, at one scale', () => {
    const box = { left: 0, right: 4000, low: 0, high: 3000 };
    for (const [width, scale] of [
      [400, 0.1],
      [2000, 460 / 3000],
    ] as const) {
      const view = planView(box, width, 460);
      expect(view.scale).toBeCloseTo(scale, 12);
      const [left, bottom] = view.toPixel([0, 0]);
      const [right, top] = view.toPixel([4000, 3000]);
      expect(top).toBeCloseTo(0, 9);
      expect(bottom).toBeCloseTo(view.height, 9);
      expect(left).toBeGreaterThanOrEqual(-1e-9);
      expect(left + right).toBeCloseTo(width, 9);
    }
  });

  it('shows no more of the room than the cue can come to, and no more than there is', () => {
    const room: readonly Point[] = [
      [0, 0],
      [20_000, 0],
      [20_000, 4000],
      [0, 4000],
    ];
    const table = rectangleAt({ x: 3000, y: 2000, turn: 0 }, 1300, 700);
    expect(shownBox(room, table, 1700, 150)).toEqual({ left: 0, right: 6000, low: -150, high: 4150 });
  });
});

describe('a ray in the plan', () => {
  it('meets a segment where walking along it in small steps comes closest', () => {
    fc.assert(
      fc.property(point, fc.double({ min: 0, max: 6.28, noNaN: true }), point, point, (from, phi, a, b) => {
        const u: Point = [Math.cos(phi), Math.sin(phi)];
        const at = rayToSegment(from, u, a, b);
        const side = (p: Point) => u[0] * (p[1] - from[1]) - u[1] * (p[0] - from[0]);
        if (at === null) return;
        const hit: Point = [from[0] + at * u[0], from[1] + at * u[1]];
        expect(at).toBeGreaterThanOrEqual(0);
        expect(side(a) * side(b)).toBeLessThanOrEqual(1e-6 * distance(a, b));
        expect(distance(a, hit) + distance(hit, b)).toBeCloseTo(distance(a, b), 4);
      }),
      { seed, numRuns: 500 },
    );
  });

  it('passes what lies behind or aside, and tells crossings of a ring by distance and edge', () => {
    expect(rayToSegment([0, 0], [1, 0], [-5, -1], [-5, 1])).toBeNull();
    expect(rayToSegment([0, 0], [1, 0], [5, 1], [5, 2])).toBeNull();
    expect(rayToSegment([0, 0], [1, 0], [3, 0], [5, 0])).toBeNull();
    const ring: readonly Point[] = [
      [2, -1],
      [4, -1],
      [4, 1],
      [2, 1],
    ];
    expect(crossings([0, 0], [1, 0], ring)).toEqual([
      { at: 2, edge: 3 },
      { at: 4, edge: 1 },
    ]);
  });
});

describe('the shot that is pointed at', () => {
  const shot = { x: 100, y: -50, direction: 30 };

  it('keeps the ball on the table and the direction within a turn', () => {
    fc.assert(
      fc.property(
        coordinate,
        coordinate,
        fc.double({ min: -2000, max: 2000, noNaN: true }),
        (x, y, direction) => {
          const kept = allowed({ x, y, direction }, AREA);
          expect(Math.abs(kept.x)).toBeLessThanOrEqual(AREA.halfX);
          expect(Math.abs(kept.y)).toBeLessThanOrEqual(AREA.halfY);
          expect(kept.direction).toBeGreaterThanOrEqual(0);
          expect(kept.direction).toBeLessThan(360);
          expect(Math.abs(Math.sin(((kept.direction - direction) * Math.PI) / 360))).toBeLessThan(1e-9);
          expect(allowed(kept, AREA)).toEqual(kept);
        },
      ),
      { seed },
    );
  });

  it('lays the ball where the press was, at most at the cushion', () => {
    expect(withBallAt(shot, [300.4, -12.6], AREA)).toEqual({ x: 300, y: -13, direction: 30 });
    expect(withBallAt(shot, [5000, -5000], AREA)).toEqual({ x: AREA.halfX, y: -AREA.halfY, direction: 30 });
  });

  it('turns the butt to the pointer, to a tenth of a degree', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3599 }), fc.double({ min: 10, max: 4000 }), (tenths, far) => {
        const phi = (tenths * Math.PI) / 1800;
        const to: Point = [shot.x + far * Math.cos(phi), shot.y + far * Math.sin(phi)];
        expect(withButtTowards(shot, to).direction).toBe(tenths / 10);
      }),
      { seed },
    );
    expect(withButtTowards(shot, [shot.x + 1, shot.y])).toBe(shot);
  });
});

describe('the shot by keys', () => {
  const shot: Shot = { x: 0, y: 0, direction: 0.5 };
  const press = (key: string, from: Shot = shot, turn = 0, shiftKey = false) =>
    afterKey(from, { key, shiftKey }, { x: 0, y: 0, turn }, AREA);

  it('moves the ball along the table, as the plan shows the arrows, whatever the table is turned by', () => {
    const arrows = { ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] } as const;
    for (let turn = 0; turn < 180; turn += 2.5) {
      const axes = new Set<string>();
      for (const [key, [dx, dy]] of Object.entries(arrows)) {
        const moved = press(key, shot, turn);
        if (moved === null) throw new Error(`${key} does nothing.`);
        expect(Math.abs(moved.x) + Math.abs(moved.y)).toBe(10);
        const [x, y] = fieldToRoom({ x: 0, y: 0, turn }, [moved.x, moved.y]);
        // Within 45 degrees of the arrow.
        expect(x * dx + y * dy).toBeGreaterThan(10 * Math.SQRT1_2 - 1e-6);
        axes.add(`${Math.sign(moved.x)} ${Math.sign(moved.y)}`);
      }
      expect(axes.size).toBe(4);
    }
  });

  it('takes large steps with Shift, and stops at the cushion', () => {
    expect(press('ArrowRight', shot, 0, true)?.x).toBe(100);
    expect(press('ArrowRight', { ...shot, x: AREA.halfX - 3 }, 0)?.x).toBe(AREA.halfX);
  });

  it('turns the cue, round the whole turn', () => {
    expect(press('+')?.direction).toBe(1.5);
    expect(press('-')?.direction).toBe(359.5);
    expect(press('PageUp')?.direction).toBe(15.5);
    expect(press('PageDown')?.direction).toBe(345.5);
    expect(press('-', press('+') ?? shot)).toEqual(shot);
  });

  it('goes to the middle, and leaves other keys alone', () => {
    expect(press('Home', { x: 300, y: 20, direction: 7 })).toEqual({ x: 0, y: 0, direction: 7 });
    for (const key of ['Tab', 'Enter', 'a', 'Escape', 'toString']) expect(press(key)).toBeNull();
  });
});

describe('the first shot', () => {
  it('is square off the cushion with the least room behind it', () => {
    const gaps = [
      { cushion: 'endA', distance: 1800 },
      { cushion: 'sideA', distance: 1700 },
      { cushion: 'endB', distance: 2400 },
      { cushion: 'sideB', distance: 1500 },
    ] as const;
    expect(firstShot(gaps, AREA)).toEqual({ x: 0, y: -AREA.halfY, direction: 270 });
    expect(firstShot(gaps.slice(0, 1), AREA)).toEqual({ x: AREA.halfX, y: 0, direction: 0 });
  });

  it('is in the middle where no gap was told', () => {
    expect(firstShot([], AREA)).toEqual({ x: 0, y: 0, direction: 0 });
  });
});

describe('the cut of the side elevation', () => {
  it('holds what is drawn, and the same cut where that changes a little', () => {
    const drawn = { left: 40, top: 30, right: 181, bottom: 173 };
    const { x, y, width, height } = steadyBox(drawn, 64);
    expect(x).toBeLessThanOrEqual(drawn.left);
    expect(y).toBeLessThanOrEqual(drawn.top);
    expect(x + width).toBeGreaterThanOrEqual(drawn.right);
    expect(y + height).toBeGreaterThanOrEqual(drawn.bottom);
    const wider = steadyBox({ ...drawn, left: 41, right: 179.5 }, 64);
    expect(wider).toEqual({ x, y, width, height });
  });
});
