import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangleRing, rotated, translated } from '../../src/geometry/ring.js';
import type { Ring } from '../../src/geometry/types.js';
import { type CueJudgement, judgePose } from '../../src/placement/judge-pose.js';
import { openReach } from '../../src/placement/open-reach.js';
import type { Scene } from '../../src/room/scene.js';
import { prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import { proveShots } from '../../src/stroke/prove-shots.js';
import { shotShares } from '../../src/stroke/shot-shares.js';
import { standingRoom } from '../../src/stroke/standing.js';
import { STROKE, TABLE } from '../stroke/scenes.js';

const cue = { name: '57 in', length: 1448, tipRadius: 5, buttRadius: 15 };
const E = 10;

function room(outline: Ring, obstacles: Scene['obstacles'] = [], ceiling: Scene['ceiling'] = []): Scene {
  const wallNames = outline.map((_, i) => `wall ${i + 1}`);
  return {
    outline,
    wallNames,
    obstacles,
    ceiling,
    doors: [],
    reserved: [],
    tolerance: E,
    wallTolerances: null,
  };
}

function prism(name: string, ring: Ring, from: number, to: number): Scene['obstacles'][number] {
  return { name, ring, parts: [ring], from, to, movable: false };
}

/** A rectangular room whose walls keep `clearance` from Q all round. */
function roomAround(clearance: number, obstacles: Scene['obstacles'] = []): Scene {
  const length = TABLE.field.length - TABLE.ballDiameter + 2 * clearance;
  const width = TABLE.field.width - TABLE.ballDiameter + 2 * clearance;
  return room(rectangleRing([0, 0], length, width), obstacles);
}

function judge(scene: Scene, turn = 0, at = { x: 0, y: 0 }): CueJudgement {
  const question = { scene, table: TABLE, stroke: STROKE, cues: [cue], pose: { ...at, angle: turn } };
  return judgePose({ ...question, shots: 1024, withTolerance: true }).cues[0];
}

const reach = openReach(TABLE, STROKE, cue);

describe('the verdict around the plain threshold rho = R + s + L + a', () => {
  test('is clear by distance at it, and certain once the tolerance fits in as well', () => {
    expect(judge(roomAround(reach.rho))).toMatchObject({
      verdict: 'clear',
      proof: 'distance',
      open: 1,
      error: 0,
    });
    expect(judge(roomAround(reach.rho + E)).certain).toBe(true);
  });

  test('just below it the raised cue of every frozen ball still saves all shots, which boxes prove', () => {
    // theta_rail of a ball frozen on the cushion shortens the plan reach to ell cos(theta_rail) < ell.
    const saved = reach.rho - reach.least;
    expect(saved).toBeGreaterThan(5);
    expect(judge(roomAround(reach.rho - 0.25 * saved))).toMatchObject({
      verdict: 'clear',
      proof: 'boxes',
      certain: false,
    });
  });

  test('below ell cos(theta_rail) + a the frozen ball square off the cushion is not open: tight', () => {
    const found = judge(roomAround(reach.least - E - 1));
    expect(found).toMatchObject({ verdict: 'tight', blocked: 0, certain: true });
    expect(found.open).toBeLessThan(1);
  });

  test('is partial where even the short stroke at theta_max does not fit: ell cos(theta_max) + a', () => {
    const short = TABLE.ballDiameter / 2 + STROKE.shortBackswing + cue.length;
    const raised = short * Math.cos(STROKE.maxElevation) + STROKE.margin;
    const found = judge(roomAround(raised - E - 1));
    expect(found).toMatchObject({ verdict: 'partial', proof: 'shot', certain: true });
    expect(found.blocked).toBeGreaterThan(0);
    expect(judge(roomAround(raised - 0.5)).certain).toBe(false);
    expect(judge(roomAround(raised + E + 2))).toMatchObject({ verdict: 'tight', certain: true });
  });
});

describe('the table itself', () => {
  test('cannot stand where its outside does not go, and hangs on the tolerance near it', () => {
    const { length, width } = TABLE.outer;
    expect(judge(room(rectangleRing([0, 0], length - 40, width + 500)))).toMatchObject({
      verdict: 'none',
      certain: true,
    });
    expect(judge(room(rectangleRing([0, 0], length - 8, width + 500)))).toMatchObject({
      verdict: 'none',
      certain: false,
    });
    expect(judge(room(rectangleRing([0, 0], length + 8, width + 500))).certain).toBe(false);
    expect(judge(room(rectangleRing([0, 0], length + 40, width + 500)))).toMatchObject({
      verdict: 'partial',
      certain: true,
    });
  });

  test('may stand under what hangs over its rail, not where something starts below it', () => {
    const over = rectangleRing([0, 0], 600, 300);
    const top = TABLE.bedHeight + TABLE.railHeight;
    expect(judge(roomAround(2000, [prism('lamp', over, 1750, 2000)])).verdict).toBe('clear');
    expect(judge(roomAround(2000, [prism('shelf', over, top + 1, 2000)])).verdict).toBe('partial');
    expect(judge(roomAround(2000, [prism('shelf', over, top - 1, 2000)])).verdict).toBe('none');
  });
});

describe('standing room', () => {
  // Common practice, no source: furniture no higher than the rail is cued over and only takes standing room.
  test('low furniture all along a side, too wide to stand over, blocks shots that no wall blocks', () => {
    const y = TABLE.outer.width / 2 + 100 + 800;
    const bench = prism('benches', rectangleRing([0, y], 6000, 1600), 0, 450);
    const found = judge(roomAround(2600, [bench]));
    expect(found.verdict).toBe('partial');
    const away = prism('benches', rectangleRing([0, y + 700], 6000, 1600), 0, 450);
    expect(judge(roomAround(3400, [away])).verdict).toBe('clear');
  });

  test('the strip that the plain proof asks for is enough and is asked for', () => {
    const y = (gap: number) => TABLE.outer.width / 2 + gap + 300;
    const bench = (gap: number) =>
      roomAround(2600, [prism('bench', rectangleRing([0, y(gap)], 6000, 600), 0, 450)]);
    expect(judge(bench(reach.strip + 0.01))).toMatchObject({ verdict: 'clear', proof: 'distance' });
    expect(judge(bench(reach.strip - 30)).proof).not.toBe('distance');
  });
});

describe('proofs by distance', () => {
  test('by level and by raised strokes are never contradicted by a dense sample or a counterexample', () => {
    const proofs = new Set<string>();
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        between(1420, 1800),
        between(-0.2, 6.1),
        between(1500, 2400),
        between(700, 1400),
        between(0, 3),
        (clearance, direction, away, to, turn) => {
          const at: [number, number] = [away * Math.cos(direction), away * Math.sin(direction)];
          const scene = roomAround(clearance, [prism('thing', rectangleRing(at, 300, 260, turn), 0, to)]);
          const { verdict, proof } = judge(scene);
          proofs.add(`${verdict} ${proof}`);
          if (proof !== 'raised' && proof !== 'distance') return;
          const strokes = prepareStrokes(scene, TABLE, { x: 0, y: 0, angle: 0 }, STROKE);
          const standing = standingRoom(strokes);
          const [tally] = shotShares(strokes, standing, [cue], { shots: 16_000 }).cues;
          expect(tally.blocked).toBe(0);
          if (proof === 'distance') expect(tally.open).toBe(1);
          const target = verdict === 'clear' ? 'open' : 'playable';
          const options = { maxBoxes: 3000, resolution: 5 };
          expect(proveShots(strokes, standing, cue, target, options).outcome).not.toBe('refuted');
        },
      ),
      { seed: 14, numRuns: 80 },
    );
    // The scenes reach both proofs, and verdicts without them.
    expect([...proofs]).toEqual(expect.arrayContaining(['clear distance', 'tight raised', 'partial shot']));
  });
});

describe('laws', () => {
  const turn = fc.double({ min: 0, max: 3.1, noNaN: true });
  const shift = fc.double({ min: -5000, max: 5000, noNaN: true });
  const clearance = fc.double({ min: 700, max: 1700, noNaN: true });

  test('shares add up and never contradict the verdict', () => {
    fc.assert(
      fc.property(clearance, (c) => {
        const { verdict, open, cramped, blocked } = judge(roomAround(c));
        expect(open + cramped + blocked).toBeCloseTo(1, 12);
        if (verdict === 'clear') expect(open).toBe(1);
        if (verdict === 'tight') expect([blocked, cramped > 0]).toEqual([0, true]);
        if (verdict === 'partial') expect(open).toBeLessThan(1);
      }),
      { seed: 11, numRuns: 25 },
    );
  });

  test('a rigid motion of the room and the table changes nothing', () => {
    fc.assert(
      fc.property(clearance, turn, shift, shift, (c, angle, x, y) => {
        const still = roomAround(c);
        const moved = { ...still, outline: translated(rotated(still.outline, angle), x, y) };
        const a = judge(still);
        const b = judge(moved, angle, { x, y });
        expect(b.verdict).toBe(a.verdict);
        expect(Math.abs(b.open - a.open)).toBeLessThanOrEqual(2 / 1024);
        expect(Math.abs(b.blocked - a.blocked)).toBeLessThanOrEqual(2 / 1024);
      }),
      { seed: 12, numRuns: 20 },
    );
  });

  test('one more thing in the room never betters the verdict, nor the share of open shots', () => {
    const rank = { clear: 0, tight: 1, partial: 2, none: 3 } as const;
    fc.assert(
      fc.property(
        clearance,
        shift,
        shift,
        turn,
        fc.double({ min: 300, max: 2200, noNaN: true }),
        (c, x, y, a, to) => {
          const ring = rectangleRing([x / 3, y / 3], 500, 300, a);
          const bare = judge(roomAround(c));
          const full = judge(roomAround(c, [prism('thing', ring, 0, to)]));
          expect(rank[full.verdict]).toBeGreaterThanOrEqual(rank[bare.verdict]);
          expect(full.open).toBeLessThanOrEqual(bare.open + 1e-12);
        },
      ),
      { seed: 13, numRuns: 40 },
    );
  });
});
