import { describe, expect, it } from 'vitest';
import { prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import {
  cueRadius,
  elevationOver,
  railDistances,
  railElevation,
  steepestRail,
} from '../../src/stroke/rail-elevation.js';
import { between, CUE, random, rectangle, room, STROKE, TABLE } from './scenes.js';

const degrees = (radians: number): number => (radians * 180) / Math.PI;
const scene = prepareStrokes(
  room(rectangle(-5000, -5000, 5000, 5000)),
  TABLE,
  { x: 0, y: 0, angle: 0 },
  STROKE,
);

describe('the elevation that one height asks for', () => {
  // algorithms.md, section 4.1, of the design notes: a cone of half angle kappa = 0.005 whose axis starts at the point adds kappa.
  it.each([
    [28.6, -0.3, 12.8213],
    [100, -0.3, 3.8414],
    [158.6, 3.4, 3.8629],
  ])('is the published one at %f mm', (t, rise, expected) => {
    expect(degrees(0.005 + elevationOver(t, rise, 6.5))).toBeCloseTo(expected, 4);
  });

  it('is none where the cue is too thick, and always met where the axis is high enough', () => {
    expect(elevationOver(3, 4, 5.1)).toBe(Infinity);
    expect(elevationOver(3, 4, -5.1)).toBe(-Infinity);
  });
});

describe('theta_rail', () => {
  it('is six to seven degrees for a ball frozen square on the cushion, and a degree or two in the open', () => {
    // The model's own words for its defaults.
    const frozen = railElevation(scene, CUE, railDistances(scene, 0, scene.qy, 0, 1));
    expect(degrees(frozen)).toBeGreaterThan(6);
    expect(degrees(frozen)).toBeLessThan(7);
    const open = railElevation(scene, CUE, railDistances(scene, 0, 0, 0, 1));
    expect(degrees(open)).toBeGreaterThan(0.5);
    expect(degrees(open)).toBeLessThan(2);
    expect(steepestRail(scene, CUE)).toBeCloseTo(frozen, 14);
  });

  it('is never beyond steepestRail, on tables and with cues of all kinds', () => {
    const next = random(11);
    for (let k = 0; k < 300; k++) {
      const table = {
        ...TABLE,
        outer: { length: 2235 + between(next, 0, 400), width: 1118 + between(next, 0, 400) },
        noseHeight: between(next, 15, 50),
        railHeight: between(next, 20, 80),
        ballDiameter: between(next, 50, 68),
      };
      const stroke = { ...STROKE, tipOffset: between(next, 0, 15) };
      const s = prepareStrokes(
        room(rectangle(-5000, -5000, 5000, 5000)),
        table,
        { x: 0, y: 0, angle: 0 },
        stroke,
      );
      const cue = {
        length: between(next, 150, 2000),
        tipRadius: between(next, 3, 9),
        buttRadius: between(next, 3, 25),
      };
      const bound = steepestRail(s, cue);
      for (let i = 0; i < 200; i++) {
        const phi = next() * 2 * Math.PI;
        const x = (next() < 0.3 ? 1 : between(next, -1, 1)) * s.qx;
        const y = (next() < 0.3 ? 1 : between(next, -1, 1)) * s.qy;
        const theta = railElevation(s, cue, railDistances(s, x, y, Math.cos(phi), Math.sin(phi)));
        expect(theta).toBeLessThanOrEqual(bound + 1e-12);
      }
    }
  });

  it('asks nothing of a rail that the cue does not reach', () => {
    const short = { ...CUE, length: 100 };
    const distances = railDistances(scene, 0, 0, 1, 0);
    expect(distances).toEqual({ nose: 1117.5, crest: 1167.5, rim: 1257.5 });
    expect(railElevation(scene, short, distances)).toBe(0);
  });

  it('reads the radius off a straight taper that ends at the tip and at the butt', () => {
    expect([0, 28.575, 28.575 + 724, 28.575 + 1448, 9999].map((t) => cueRadius(CUE, 28.575, t))).toEqual([
      5, 5, 10, 15, 15,
    ]);
  });
});
