import ManifoldModule, { type Manifold, type ManifoldToplevel, type Vec2, type Vec3 } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Ring } from '../../src/geometry/types.js';
import { StrokeClassifier } from '../../src/stroke/classify-traced.js';
import { prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import { ShotTrace } from '../../src/stroke/trace-shot.js';
import { between, box, obstacle, random, randomConvex, rectangle, room, STROKE, TABLE } from './scenes.js';

/**
 * Shots against solids made by manifold-3d (development only), which shares nothing with the closed forms: the cue's axis as a
 * sliver of a bar, things as their footprints grown by the margin and raised and lowered by a / cos(theta). The bar is a little
 * thick and a grown corner a polygon, so each shot is put to two solids: one a little larger than the true one and one a little
 * smaller. What the closed form calls free must miss the smaller, what it calls forbidden must meet the larger.
 */
const EASE = 0.5;
/** Half the bar's thickness, mm: less than the ease. */
const THIN = 0.1;
/** mm3: far under what a bar this thick shares with anything that it enters by the ease. */
const NOTHING = 1e-6;

let solids: ManifoldToplevel;
beforeAll(async () => {
  solids = await ManifoldModule();
  solids.setup();
});

/** The ring grown by `margin`, between two heights. Round corners are polygons inside the true ones, by less than 0.01 mm. */
function prism(ring: Ring, margin: number, from: number, to: number): Manifold {
  const flat = solids.CrossSection.ofPolygons([ring.map(([x, y]): Vec2 => [x, y])]);
  const grown = flat.offset(margin, 'Round', 2, 256);
  const solid = grown.extrude(to - from).translate([0, 0, from]);
  flat.delete();
  grown.delete();
  return solid;
}

function axis(x: number, y: number, phi: number, z0: number, theta: number, length: number): Manifold {
  const across: Vec2 = [-Math.sin(phi) * THIN, Math.cos(phi) * THIN];
  const points: Vec3[] = [];
  for (const t of [0, length * Math.cos(theta)]) {
    for (const side of [-1, 1]) {
      for (const up of [-THIN, THIN]) {
        points.push([
          x + t * Math.cos(phi) + side * across[0],
          y + t * Math.sin(phi) + side * across[1],
          z0 + t * Math.tan(theta) + up,
        ]);
      }
    }
  }
  return solids.Manifold.hull(points);
}

function meets(a: Manifold, b: Manifold): boolean {
  const shared = a.intersect(b);
  const volume = shared.volume();
  shared.delete();
  return volume > NOTHING;
}

describe('shots put to solids', () => {
  it('are free and forbidden as the closed forms say, elevation by elevation', () => {
    const next = random(501);
    const tally = { free: 0, forbidden: 0 };
    for (let k = 0; k < 26; k++) {
      const [cx, cy] = [between(next, 700, 1900), between(next, -700, 700)];
      const radius = between(next, 60, 500);
      const ring =
        next() < 0.5
          ? randomConvex(next, cx, cy, radius)
          : box(cx, cy, 2 * radius, between(next, 20, 400), next() * 3);
      const from = next() < 0.3 ? 0 : between(next, 820, 1200);
      const to = from + (from === 0 ? between(next, 780, 1800) : between(next, 30, 600));
      const outline = rectangle(-4000, -4000, between(next, 2200, 2900), 4000);
      const stroke = { ...STROKE, margin: between(next, 2, 40) };
      const prepared = prepareStrokes(
        room(outline, [obstacle('thing', ring, from, to)]),
        TABLE,
        { x: 0, y: 0, angle: 0 },
        stroke,
      );
      const cue = { length: between(next, 900, 1600), tipRadius: 6, buttRadius: 14 };
      const classifier = new StrokeClassifier(prepared, cue);
      const trace = new ShotTrace(prepared, classifier.ell);
      for (let j = 0; j < 12; j++) {
        const x = between(next, -1, 1) * prepared.qx;
        const y = between(next, -1, 1) * prepared.qy;
        const phi = Math.atan2(cy - y, cx - x) + between(next, -0.35, 0.35);
        trace.follow(x, y, Math.cos(phi), Math.sin(phi));
        const theta = next() < 0.3 ? 0 : next() * stroke.maxElevation;
        const tan = Math.tan(theta);
        let forbidden = classifier.wallForbids(tan, trace);
        for (let i = 0; i < trace.partCount; i++) forbidden ||= classifier.partForbids(tan, trace, i);
        tally[forbidden ? 'forbidden' : 'free']++;

        const ease = forbidden ? EASE : -EASE;
        const margin = stroke.margin + ease;
        const z0 = prepared.ballHeight + stroke.tipOffset / Math.cos(theta);
        const bar = axis(x, y, phi, z0, theta, classifier.ell + ease);
        const rise = margin / Math.cos(theta);
        const wall = rectangle(outline[1][0], -5000, outline[1][0] + 3000, 5000);
        const matter = [prism(ring, margin, from - rise, to + rise), prism(wall, margin, -100, 9000)];
        expect(matter.some((solid) => meets(bar, solid))).toBe(forbidden);
        for (const solid of [bar, ...matter]) solid.delete();
      }
    }
    expect(tally.free).toBeGreaterThan(60);
    expect(tally.forbidden).toBeGreaterThan(60);
  });
});
