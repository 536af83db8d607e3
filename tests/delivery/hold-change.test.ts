import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Carried, Hold } from '../../src/delivery/carried.js';
import { changeRoom } from '../../src/delivery/hold-change.js';
import { reportHold } from '../../src/delivery/hold-report.js';

const SEED = 20261125;
const BOX: Carried = { l: 2000, w: 1000, h: 100, held: ['flat', 'on-edge', 'on-end'], tilt: Math.PI / 2 };
const FLAT: Hold = { along: 2000, across: 1000, up: 100, tilt: 0 };
const ON_EDGE: Hold = { along: 2000, across: 100, up: 1000, tilt: 0 };
const ON_END: Hold = { along: 1000, across: 100, up: 2000, tilt: 0 };

const degrees = (angle: number): number => (angle * Math.PI) / 180;

const anyHold = fc
  .record({ family: fc.constantFrom('l', 'w', 'h'), tilt: fc.double({ min: 0, max: 90, noNaN: true }) })
  .map(({ family, tilt }): Hold => {
    const { l, w, h } = BOX;
    if (family === 'l') return { along: w, across: l, up: h, tilt: degrees(tilt) };
    if (family === 'w') return { along: l, across: w, up: h, tilt: degrees(tilt) };
    return { along: l, across: h, up: w, tilt: degrees(tilt) };
  });

describe('a hold in words', () => {
  it('names the three level ways', () => {
    expect(reportHold(BOX, FLAT)).toMatchObject({ way: 'flat', tilt: 0, planLength: 2000, planWidth: 1000 });
    expect(reportHold(BOX, ON_EDGE)).toMatchObject({ way: 'on-edge', tilt: 0, height: 1000 });
    expect(reportHold(BOX, ON_END)).toMatchObject({ way: 'on-end', tilt: 0, height: 2000 });
  });

  it('tells a tilt from the nearer level way', () => {
    const tilted = reportHold(BOX, { ...ON_EDGE, tilt: degrees(30) });
    expect(tilted.way).toBe('tilted');
    expect(tilted.base).toBe('on-edge');
    expect(tilted.tilt).toBeCloseTo(30, 9);
    const steep = reportHold(BOX, { ...ON_EDGE, tilt: degrees(80) });
    expect(steep.base).toBe('on-end');
    expect(steep.tilt).toBeCloseTo(10, 9);
    const leaned = reportHold(BOX, { along: 1000, across: 2000, up: 100, tilt: degrees(20) });
    expect(leaned.way).toBe('leaned');
    expect(leaned.base).toBe('flat');
  });
});

describe('changing the hold', () => {
  it('takes nothing where the hold stays', () => {
    fc.assert(
      fc.property(anyHold, (hold) => {
        expect(changeRoom(BOX, hold, hold)).toBeNull();
      }),
      { seed: SEED },
    );
  });

  it('takes the diagonals of the edges that turn (plane geometry)', () => {
    // From flat to on edge the length stays level; 100 by 1000 turn about it.
    expect(changeRoom(BOX, FLAT, ON_EDGE)?.height).toBeCloseTo(Math.hypot(1000, 100), 6);
    // From on edge to on end, 2000 by 1000 turn upright: as high as their diagonal.
    expect(changeRoom(BOX, ON_EDGE, ON_END)?.height).toBeCloseTo(Math.hypot(2000, 1000), 6);
    // From flat to on end in one turn about the width.
    expect(changeRoom(BOX, FLAT, ON_END)?.height).toBeCloseTo(Math.hypot(2000, 100), 6);
  });

  it('never takes less than either hold covers, nor more height than the diagonal of the box', () => {
    fc.assert(
      fc.property(anyHold, anyHold, (from, to) => {
        const room = changeRoom(BOX, from, to);
        if (room === null) return;
        for (const hold of [from, to]) {
          const { planLength, planWidth, height } = reportHold(BOX, hold);
          expect(room.height).toBeGreaterThanOrEqual(height - 1e-6);
          expect(room.floor).toBeGreaterThanOrEqual(Math.hypot(planLength, planWidth) - 1e-6);
        }
        expect(room.height).toBeLessThanOrEqual(Math.hypot(BOX.l, BOX.w, BOX.h));
      }),
      { seed: SEED },
    );
  });

  it('takes as much one way as the other', () => {
    fc.assert(
      fc.property(anyHold, anyHold, (from, to) => {
        const there = changeRoom(BOX, from, to);
        const back = changeRoom(BOX, to, from);
        expect(back === null).toBe(there === null);
        if (there !== null && back !== null) expect(back.height).toBeCloseTo(there.height, 6);
      }),
      { seed: SEED },
    );
  });

  it('stays on one arc when both holds lie on it', () => {
    const low: Hold = { ...ON_EDGE, tilt: degrees(5) };
    const high: Hold = { ...ON_EDGE, tilt: degrees(25) };
    // Less than standing it up: the height at 25 degrees, which rises over the whole arc.
    const height = 2000 * Math.sin(degrees(25)) + 1000 * Math.cos(degrees(25));
    expect(changeRoom(BOX, low, high)?.height).toBeCloseTo(height, 6);
  });
});
