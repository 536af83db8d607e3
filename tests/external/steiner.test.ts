import { describe, expect, it } from 'vitest';
import { grownArea, grownPerimeter, growRing } from '../../src/geometry/grow-ring.js';
import { rectangleRing } from '../../src/geometry/ring.js';
import { area, buffer, perimeter, polygon } from '../helpers/jsts.js';

/**
 * Minkowski-Steiner formula (statement [seen]; planar form for convex shapes): area A + P r + pi r^2, perimeter P + 2 pi r.
 * Values [derived] by hand. JTS grows the same rectangles with chords on its arcs, so its figures come up from below; of n chords
 * a quarter it lacks (pi - 4 n sin(pi / 4n) cos(pi / 4n)) r^2 of the area.
 */
describe.each([
  { name: 'unit square by 1', length: 1, width: 1, r: 1, grown: 8.141593, around: 10.283185 },
  { name: '3 x 2 by 0.5', length: 3, width: 2, r: 0.5, grown: 11.785398, around: 13.141593 },
  {
    name: 'field of 9 ft pool by a 58 in cue',
    length: 2.54,
    width: 1.27,
    r: 1.4732,
    grown: 21.26984,
    around: 16.876389,
  },
])('$name', ({ length, width, r, grown, around }) => {
  const ring = rectangleRing([0, 0], length * 1000, width * 1000);

  it('has the area and perimeter of the formula', () => {
    expect(grownArea(ring, r * 1000) / 1e6).toBeCloseTo(grown, 6);
    expect(grownPerimeter(ring, r * 1000) / 1000).toBeCloseTo(around, 6);
  });

  it('lies between its inscribed and circumscribed polygons, by JTS', () => {
    const sagitta = 0.01;
    const inner = polygon(growRing(ring, r * 1000, { arcs: 'inscribed', sagitta }));
    const outer = polygon(growRing(ring, r * 1000, { arcs: 'circumscribed', sagitta }));
    expect(area(inner) / 1e6).toBeLessThan(grown + 1e-6);
    expect(area(outer) / 1e6).toBeGreaterThan(grown - 1e-6);
    // A boundary that is off by at most the sagitta.
    expect((area(outer) - area(inner)) / 1e6).toBeLessThan((2 * sagitta * around) / 1000);
    expect(perimeter(inner) / 1000).toBeLessThanOrEqual(around + 1e-6);
  });

  it('is what JTS comes up to', () => {
    const n = 64;
    const jts = buffer(polygon(ring), r * 1000, n);
    const half = Math.PI / (4 * n);
    const lacks = (Math.PI - 4 * n * Math.sin(half) * Math.cos(half)) * (r * 1000) ** 2;
    expect(area(jts)).toBeCloseTo(grownArea(ring, r * 1000) - lacks, 0);
    expect((area(jts) + lacks) / 1e6).toBeCloseTo(grown, 6);
  });
});

it('lacks (4 - pi) r^2 of its bounding box', () => {
  // 5.4864 x 4.2164 m = 23.132857 m2 and an excess of 1.863017 m2 [derived].
  const box = 5486.4 * 4216.4;
  expect(box / 1e6).toBeCloseTo(23.132857, 6);
  expect((box - grownArea(rectangleRing([0, 0], 2540, 1270), 1473.2)) / 1e6).toBeCloseTo(1.863017, 6);
});
