import { describe, expect, it } from 'vitest';
import { answerShot } from '../../src/stroke/answer-shot.js';
import { cushionProfiles } from '../../src/stroke/cushion-profile.js';
import { prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import { railDistances, railElevation } from '../../src/stroke/rail-elevation.js';
import { standingRoom } from '../../src/stroke/standing.js';
import type { StrokeScene } from '../../src/stroke/stroke-scene.js';
import { CUE, obstacle, random, randomScene, rectangle, room, STROKE, TABLE } from './scenes.js';

const POSE = { x: 0, y: 0, angle: 0 };
const PHI = { endA: 0, sideA: Math.PI / 2, endB: Math.PI, sideB: -Math.PI / 2 };

function ballAt(scene: StrokeScene, cushion: keyof typeof PHI, at: number): [number, number] {
  if (cushion === 'endA') return [scene.qx, at];
  if (cushion === 'endB') return [-scene.qx, at];
  return [at, cushion === 'sideA' ? scene.qy : -scene.qy];
}

describe('the longest cue along the cushions', () => {
  it('is what the wall leaves, in an empty rectangular room', () => {
    const scene = prepareStrokes(room(rectangle(-2600, -2300, 2600, 2200)), TABLE, POSE, STROKE);
    const profiles = cushionProfiles(scene, standingRoom(scene), CUE, 5);
    const gaps = {
      endA: 2600 - scene.qx,
      sideA: 2200 - scene.qy,
      endB: 2600 - scene.qx,
      sideB: 2300 - scene.qy,
    };
    for (const { cushion, spots } of profiles) {
      expect(spots).toHaveLength(5);
      const half = cushion.startsWith('end') ? scene.qy : scene.qx;
      expect(spots[0].at).toBe(-half);
      expect(spots[4].at).toBe(half);
      // Where the cue's axis, R + s + L long, comes up to the margin before the wall at theta_rail, by halving.
      const longest = (swing: number, elevation: (length: number) => number): number => {
        let low = 300;
        let high = 2000;
        for (let i = 0; i < 60; i++) {
          const length = (low + high) / 2;
          const free = gaps[cushion] - STROKE.margin;
          if ((scene.ballRadius + swing + length) * Math.cos(elevation(length)) <= free) low = length;
          else high = length;
        }
        return low;
      };
      const rail = (length: number): number => {
        const [x, y] = ballAt(scene, cushion, 0);
        const distances = railDistances(
          scene,
          x,
          y,
          Math.round(Math.cos(PHI[cushion])),
          Math.round(Math.sin(PHI[cushion])),
        );
        return railElevation(scene, { ...CUE, length }, distances);
      };
      const open = longest(STROKE.backswing, rail);
      const cramped = longest(STROKE.shortBackswing, () => STROKE.maxElevation);
      for (const spot of spots) {
        expect(spot.open).toBeGreaterThan(open - 1);
        expect(spot.open).toBeLessThanOrEqual(open + 1e-6);
        expect(spot.cramped).toBeGreaterThan(cramped - 1);
        expect(spot.cramped).toBeLessThanOrEqual(cramped + 1e-6);
      }
    }
  });

  it('can be played as it stands, a millimetre more cannot, and hardly ever any longer one', () => {
    const next = random(401);
    let spotsSeen = 0;
    let longer = 0;
    for (let k = 0; k < 12; k++) {
      const { scene, pose } = randomScene(next, 0.7);
      const prepared = prepareStrokes(scene, TABLE, pose, STROKE);
      const standing = standingRoom(prepared);
      const rank = { open: 0, cramped: 1, blocked: 2 };
      for (const { cushion, spots } of cushionProfiles(prepared, standing, CUE, 3)) {
        for (const spot of spots) {
          const [x, y] = ballAt(prepared, cushion, spot.at);
          const classWith = (length: number): number =>
            rank[answerShot(prepared, standing, { ...CUE, length }, x, y, PHI[cushion]).class];
          spotsSeen++;
          expect(spot.cramped).toBeGreaterThanOrEqual(spot.open);
          for (const [worst, length] of [
            [0, spot.open],
            [1, spot.cramped],
          ]) {
            // The profile goes straight along the axes, this test by sines and cosines: touching shots may differ by rounding.
            if (length > 0 && length < 2000) expect(classWith(length - 1e-6)).toBeLessThanOrEqual(worst);
            if (length > 0 && length < 2000) expect(classWith(length + 1.001)).toBeGreaterThan(worst);
            for (let l = 2000; l > Math.max(300, length + 1); l -= 13)
              if (classWith(l) <= worst) {
                longer++;
                break;
              }
          }
        }
      }
    }
    expect(spotsSeen).toBeGreaterThan(300);
    expect(longer / (2 * spotsSeen)).toBeLessThan(0.02);
  });

  it('jumps beside the corners of a thing, and is asked there', () => {
    const cupboard = obstacle('cupboard', rectangle(-200, 1700, 300, 2500));
    const scene = prepareStrokes(room(rectangle(-4000, -4000, 4000, 4000), [cupboard]), TABLE, POSE, STROKE);
    const [, sideA] = cushionProfiles(scene, standingRoom(scene), CUE, 2);
    // Grown by the margin of 20 mm, the cupboard reaches from -220 to 320.
    expect(sideA.spots.map((spot) => spot.at)).toEqual([
      -scene.qx,
      -220.5,
      -219.5,
      -180.5,
      -179.5,
      279.5,
      280.5,
      319.5,
      320.5,
      scene.qx,
    ]);
    const open = sideA.spots.map((spot) => spot.open);
    expect(open[1]).toBe(2000);
    expect(open[2]).toBeLessThan(1100);
    expect(open[7]).toBe(open[2]);
    expect(open[8]).toBe(2000);
  });

  it('is none where no cue will do', () => {
    const scene = prepareStrokes(room(rectangle(-1500, -760, 1500, 760)), TABLE, POSE, STROKE);
    for (const { cushion, spots } of cushionProfiles(scene, standingRoom(scene), CUE, 3)) {
      for (const spot of spots) expect([cushion, spot.open, spot.cramped]).toEqual([cushion, 0, 0]);
    }
  });

  it('goes on beyond 2,000 mm for a cue that is longer', () => {
    const scene = prepareStrokes(room(rectangle(-9000, -9000, 9000, 9000)), TABLE, POSE, STROKE);
    const [endA] = cushionProfiles(scene, standingRoom(scene), { ...CUE, length: 2400 }, 2);
    expect(endA.spots.map((spot) => spot.open)).toEqual([2400, 2400]);
  });
});
