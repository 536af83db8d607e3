import { describe, expect, it } from 'vitest';
import type { FurnishingInput } from '../../src/arrangement/furnishing-input.js';
import { layoutValue } from '../../src/arrangement/layout-value.js';
import type { Placement } from '../../src/geometry/types.js';
import type { RoomInput } from '../../src/room/room-input.js';
import { questionOf } from './arrange-cases.js';

/** What layouts are worth where it can be told by hand. The weights are those of `ArrangementValue`: 1000, 100 and 5. */

function roomOf(length: number, width: number): RoomInput {
  return {
    outline: [
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ],
    doors: [{ hinge: [0, 300], latch: [0, 1200], opens: 'out' }],
    ceiling: 2600,
  };
}

const chest: FurnishingInput = {
  name: 'chest',
  footprint: { length: 800, width: 400 },
  height: 700,
  zones: [],
};
const MIDDLE: Placement = { x: 6000, y: 5000, angle: 0 };
const CORNER: Placement = { x: 11_000, y: 9000, angle: 0 };
const large = questionOf({ room: roomOf(12_000, 10_000), furnishings: [chest] });

describe('what a layout is worth', () => {
  it('is all there is in a hall with room for everything', () => {
    const value = layoutValue(large, { tablePose: MIDDLE, poses: [CORNER] });
    expect(value).toEqual({ value: 1105, upperBound: 1105, placed: 1, play: 1, apart: 1 });
  });

  it('has no share of pieces without a place, on the table, outside or on one another', () => {
    const placed = (pose: Placement | null): number =>
      layoutValue(large, { tablePose: MIDDLE, poses: [pose] }).placed;
    expect(placed(null)).toBe(0);
    expect(placed(MIDDLE)).toBe(0);
    expect(placed({ x: -2000, y: 5000, angle: 0 })).toBe(0);
    const two = questionOf({
      room: roomOf(12_000, 10_000),
      furnishings: [chest, { ...chest, name: 'other' }, { ...chest, name: 'third' }],
    });
    const apart: Placement = { x: 1500, y: 9000, angle: 0 };
    expect(layoutValue(two, { tablePose: MIDDLE, poses: [CORNER, CORNER, apart] }).placed).toBeCloseTo(
      1 / 3,
      12,
    );
  });

  it('has no play without a place for the table, or where it cannot stand', () => {
    const play = (tablePose: Placement | null): number =>
      layoutValue(large, { tablePose, poses: [CORNER] }).play;
    expect(play(null)).toBe(0);
    expect(play({ x: 200, y: 5000, angle: 0 })).toBe(0);
    expect(play({ x: 11_000, y: 9000, angle: 0 })).toBe(0);
  });

  it('has less play near a wall, and less than 1 where distances do not prove it', () => {
    const plays = [6000, 2500, 1700, 1200].map(
      (x) => layoutValue(large, { tablePose: { x, y: 5000, angle: 0 }, poses: [CORNER] }).play,
    );
    expect(plays[0]).toBe(1);
    expect(plays).toEqual([...plays].sort((a, b) => b - a));
    expect(plays[1]).toBeLessThan(1);
    expect(plays[3]).toBeLessThan(plays[1]);
  });

  it('takes from the pieces apart what of their zones lies in the cueing', () => {
    const zoned: FurnishingInput = { ...chest, zones: [{ front: 1000 }] };
    const question = questionOf({ room: roomOf(12_000, 10_000), furnishings: [zoned] });
    const apart = (pose: Placement): number =>
      layoutValue(question, { tablePose: MIDDLE, poses: [pose] }).apart;
    expect(apart({ x: 6000, y: 9700, angle: Math.PI })).toBe(1);
    // Its back to the table, the zone away from it, then nearer and nearer, up to all of it in the cueing.
    const shares = [7800, 7400, 7000].map((y) => apart({ x: 6000, y, angle: Math.PI }));
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    expect(shares[2]).toBeLessThan(1);
  });

  it('is nothing where a piece shuts the table off from the door', () => {
    const bar: FurnishingInput = {
      name: 'long bar',
      footprint: { length: 4000, width: 300 },
      height: 900,
      zones: [],
    };
    const question = questionOf({ room: roomOf(7000, 4000), furnishings: [bar] });
    const across: Placement = { x: 1900, y: 2000, angle: Math.PI / 2 };
    const value = layoutValue(question, { tablePose: { x: 5000, y: 2000, angle: 0 }, poses: [across] });
    expect([value.placed, value.play]).toEqual([0, 0]);
  });
});
