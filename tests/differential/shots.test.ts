import { describe, expect, it } from 'vitest';
import { clearanceAt } from '../../src/placement/clearance-at.js';
import { longestLevelCue } from '../../src/placement/longest-cue.js';
import { openReach } from '../../src/placement/open-reach.js';
import { cueingProblem } from '../../src/placement/problem-for.js';
import { answerShot } from '../../src/stroke/answer-shot.js';
import { prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import { standingRoom } from '../../src/stroke/standing.js';
import { between, random, randomScene, STROKE, TABLE } from '../stroke/scenes.js';
import { Oracle } from '../stroke/shot-oracle.js';

/** What a closed form and points 1 mm apart may differ by, mm: the judges are kinder and stricter by as much. */
const EASE = 0.6;

describe('single shots against points along the cue', () => {
  it('lie between a strict and a kind judge in 2,000 random scenes, one shot each', () => {
    const next = random(20_251_206);
    const tally = { open: 0, cramped: 0, blocked: 0, decided: 0 };
    for (let k = 0; k < 2000; k++) {
      const { scene, pose } = randomScene(next, between(next, 0.2, 1.2));
      const stroke = {
        backswing: between(next, 60, 300),
        shortBackswing: between(next, 0, 60),
        margin: next() < 0.2 ? 0 : between(next, 1, 60),
        tipOffset: between(next, 0, 14),
        maxElevation: between(next, 0.05, 0.9),
      };
      const cue = {
        length: between(next, 600, 1700),
        tipRadius: between(next, 2, 7),
        buttRadius: between(next, 7, 18),
      };
      const prepared = prepareStrokes(scene, TABLE, pose, stroke);
      const frozen = next() < 0.3;
      const x = between(next, -1, 1) * prepared.qx;
      const y = frozen ? (next() < 0.5 ? -1 : 1) * prepared.qy : between(next, -1, 1) * prepared.qy;
      // Square and along the cushions now and then: where rays run along sides.
      const phi = next() < 0.1 ? (Math.floor(4 * next()) * Math.PI) / 2 : next() * 2 * Math.PI;
      const answer = answerShot(prepared, standingRoom(prepared), cue, x, y, phi);
      const oracle = new Oracle({ scene, table: TABLE, pose, stroke, cue, x, y, phi });
      const where = `scene ${k}`;

      const rail = oracle.railElevation();
      expect(Math.abs((answer.railElevation ?? Infinity) - rail), where).toBeLessThan(1e-7);
      if (k % 4 === 0) {
        const stands = oracle.standingSlack(0.05);
        if (Math.abs(stands) > 0.1) expect(answer.canStand, where).toBe(stands >= 0);
      }
      const alone = answer.meets.every((name) => name === 'standing room');
      const cueClass = answer.elevation === null ? 'blocked' : alone ? 'open' : 'cramped';
      const steep = rail > stroke.maxElevation;
      const kind = !steep && oracle.free(rail, stroke.backswing, EASE);
      const strict = !steep && oracle.free(rail, stroke.backswing, -EASE);
      if (cueClass === 'open') expect(kind, where).toBe(true);
      if (strict) expect(cueClass, where).toBe('open');
      if (cueClass === 'cramped' && answer.elevation !== null)
        expect(oracle.free(answer.elevation, stroke.shortBackswing, EASE), where).toBe(true);
      const top = answer.elevation ?? stroke.maxElevation;
      if (cueClass !== 'open' && !steep && top > rail + 1e-6) {
        // Nothing below what was found is free, not even to a strict judge.
        for (let i = 0; i < 12; i++) {
          const theta = rail + ((top - rail) * (i + next())) / 12.5;
          if (theta < top - 1e-6) expect(oracle.free(theta, stroke.shortBackswing, -EASE), where).toBe(false);
        }
      }
      tally[cueClass]++;
      if (kind === strict) tally.decided++;
    }
    expect(Math.min(tally.open, tally.cramped, tally.blocked)).toBeGreaterThan(150);
    expect(tally.decided).toBeGreaterThan(1940);
  });

  it('meet nothing with the longest level cue of 1,000 random scenes', () => {
    const next = random(20_251_207);
    let told = 0;
    for (let k = 0; k < 1000; k++) {
      const { scene, pose } = randomScene(next, between(next, 0.6, 1.6));
      const cue = { name: 'short', length: between(next, 400, 1000), tipRadius: 5, buttRadius: 15 };
      const reach = openReach(TABLE, STROKE, cue);
      const { clearance } = clearanceAt(cueingProblem(scene, TABLE, STROKE.margin, reach), pose);
      if (clearance <= 0) continue;
      const length = longestLevelCue({ scene, table: TABLE, stroke: STROKE, cue, pose, clearance });
      if (length < 100) continue;
      told++;
      const prepared = prepareStrokes(scene, TABLE, pose, STROKE);
      for (let j = 0; j < 3; j++) {
        const x = between(next, -1, 1) * prepared.qx;
        const y = (next() < 0.5 ? Math.sign(next() - 0.5) : between(next, -1, 1)) * prepared.qy;
        const phi = j === 0 ? (Math.floor(4 * next()) * Math.PI) / 2 : next() * 2 * Math.PI;
        const oracle = new Oracle({
          scene,
          table: TABLE,
          pose,
          stroke: STROKE,
          cue: { ...cue, length },
          x,
          y,
          phi,
        });
        // Level is at what the rail asks for; more than theta_max is the rail's own refusal.
        const rail = oracle.railElevation();
        if (rail <= STROKE.maxElevation)
          expect(oracle.free(rail, STROKE.backswing, 0.1), `scene ${k}`).toBe(true);
      }
    }
    expect(told).toBeGreaterThan(200);
  });
});
