import { describe, expect, it } from 'vitest';
import { answerShot } from '../../src/stroke/answer-shot.js';
import { StrokeClassifier } from '../../src/stroke/classify-traced.js';
import { prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import { railDistances, railElevation, steepestRail } from '../../src/stroke/rail-elevation.js';
import { standingRoom } from '../../src/stroke/standing.js';
import { ShotTrace } from '../../src/stroke/trace-shot.js';
import { between, random, randomScene, STROKE, TABLE } from './scenes.js';
import { Oracle } from './shot-oracle.js';

const RANK = { open: 0, cramped: 1, blocked: 2 };

describe('a shot judged in closed form', () => {
  it('lies between a strict and a kind judge who try points along the cue', () => {
    const next = random(20_251);
    const tally = { open: 0, cramped: 0, blocked: 0, decided: 0, shots: 0 };
    for (let k = 0; k < 60; k++) {
      const { scene, pose } = randomScene(next, next() < 0.5 ? 0.4 : 0.8);
      const stroke = { ...STROKE, margin: next() < 0.2 ? 0 : between(next, 5, 30) };
      const cue = { length: between(next, 900, 1500), tipRadius: 5, buttRadius: between(next, 5, 16) };
      const prepared = prepareStrokes(scene, TABLE, pose, stroke);
      const room = standingRoom(prepared);
      for (let j = 0; j < 12; j++) {
        const frozen = next() < 0.3;
        const x = between(next, -1, 1) * prepared.qx;
        const y = frozen ? (next() < 0.5 ? -1 : 1) * prepared.qy : between(next, -1, 1) * prepared.qy;
        const phi = next() * 2 * Math.PI;
        const answer = answerShot(prepared, room, cue, x, y, phi);
        const oracle = new Oracle({ scene, table: TABLE, pose, stroke, cue, x, y, phi });

        const rail = oracle.railElevation();
        expect(Math.abs((answer.railElevation ?? Infinity) - rail)).toBeLessThan(1e-7);
        const stands = oracle.standingSlack(0.01);
        if (Math.abs(stands) > 0.02) expect(answer.canStand).toBe(stands >= 0);

        // The cue alone: standing apart, so that it hides nothing.
        const cueClass = answer.elevation === null ? 'blocked' : isOpen(answer) ? 'open' : 'cramped';
        const ease = 0.6;
        const steep = rail > stroke.maxElevation;
        const openKind = !steep && oracle.free(rail, stroke.backswing, ease);
        const openStrict = !steep && oracle.free(rail, stroke.backswing, -ease);
        if (cueClass === 'open') expect(openKind).toBe(true);
        if (openStrict) expect(cueClass).toBe('open');
        if (cueClass === 'cramped' && answer.elevation !== null) {
          expect(answer.elevation).toBeGreaterThanOrEqual(rail - 1e-7);
          expect(answer.elevation).toBeLessThanOrEqual(stroke.maxElevation);
          expect(oracle.free(answer.elevation, stroke.shortBackswing, ease)).toBe(true);
        }
        // Nothing below the elevation that was found is free, not even to a strict judge.
        const top = answer.elevation ?? stroke.maxElevation;
        if (cueClass !== 'open' && !steep && top > rail + 1e-6) {
          for (let i = 0; i < 40; i++) {
            const theta = rail + ((top - rail) * i) / 40;
            expect(oracle.free(theta, stroke.shortBackswing, -ease)).toBe(false);
          }
        }
        tally.shots++;
        tally[cueClass]++;
        if (openKind === openStrict) tally.decided++;
      }
    }
    // The shots tell: all classes occur often, and the two judges differ rarely.
    expect(Math.min(tally.open, tally.cramped, tally.blocked)).toBeGreaterThan(50);
    expect(tally.decided / tally.shots).toBeGreaterThan(0.97);
  });
});

function isOpen(answer: { meets: readonly string[] }): boolean {
  return answer.meets.every((name) => name === 'standing room');
}

describe('the forms without angles', () => {
  it('give the rail elevation and the classes that the forms with angles give', () => {
    const next = random(77);
    for (let k = 0; k < 60; k++) {
      const { scene, pose } = randomScene(next, 0.7);
      const prepared = prepareStrokes(scene, TABLE, pose, STROKE);
      const room = standingRoom(prepared);
      const cue = { length: between(next, 800, 2500), tipRadius: 5, buttRadius: between(next, 4, 20) };
      const classifier = new StrokeClassifier(prepared, cue);
      const trace = new ShotTrace(prepared, classifier.ell);
      for (let j = 0; j < 100; j++) {
        const x = between(next, -1, 1) * prepared.qx;
        const y = between(next, -1, 1) * prepared.qy;
        const phi = next() * 2 * Math.PI;
        const ux = Math.cos(phi);
        const uy = Math.sin(phi);
        trace.follow(x, y, ux, uy);
        const code = classifier.classify(trace, room);
        const distances = railDistances(prepared, x, y, ux, uy);
        expect([trace.nose, trace.crest, trace.rim]).toEqual([
          distances.nose,
          distances.crest,
          distances.rim,
        ]);
        const theta = railElevation(prepared, cue, distances);
        expect(Math.atan(classifier.tanRail)).toBeCloseTo(theta, 12);
        expect(theta).toBeLessThanOrEqual(steepestRail(prepared, cue) + 1e-12);
        expect(RANK[answerShot(prepared, room, cue, x, y, phi).class]).toBe(code);
        // Open means: the least elevation with the full backswing is theta_rail itself.
        const least = classifier.leastElevation(trace, 'full');
        expect(classifier.openAtRail(trace)).toBe(least >= 0 && Math.abs(least - theta) < 1e-12);
      }
    }
  });
});
