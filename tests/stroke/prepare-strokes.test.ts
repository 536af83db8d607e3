import { describe, expect, it } from 'vitest';
import { StrokeClassifier } from '../../src/stroke/classify-traced.js';
import { growthInPlan, prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import { shotShares } from '../../src/stroke/shot-shares.js';
import { standingRoom } from '../../src/stroke/standing.js';
import { ShotTrace } from '../../src/stroke/trace-shot.js';
import { between, CUE, obstacle, random, randomScene, rectangle, room, STROKE, TABLE } from './scenes.js';

const HALL = rectangle(0, 0, 8000, 6000);
const POSE = { x: 4000, y: 3000, angle: Math.PI / 2 };

describe('a scene made ready for strokes', () => {
  it('has the table at the origin, its rectangles nested', () => {
    const scene = prepareStrokes(room(HALL), TABLE, POSE, STROKE);
    expect([scene.qx, scene.qy]).toEqual([1117.5 - 28.575, 559 - 28.575]);
    expect([scene.noseX, scene.noseY]).toEqual([1117.5, 559]);
    expect([scene.crestX, scene.crestY]).toEqual([1167.5, 609]);
    expect([scene.rimX, scene.rimY]).toEqual([1257.5, 699]);
    expect(scene.ballHeight).toBe(790 + 28.575);
    expect(scene.noseRise).toBeCloseTo(36.3 - 28.575, 12);
    expect(scene.railRise).toBeCloseTo(42 - 28.575, 12);
    // A rail narrower than the cushion is deep: the crest is the rim.
    const narrow = { ...TABLE, outer: { length: 2300, width: 1200 } };
    const edge = prepareStrokes(room(HALL), narrow, POSE, STROKE);
    expect([edge.crestX, edge.crestY]).toEqual([1150, 600]);
  });

  it('turns the room the other way round the table', () => {
    const thing = obstacle('thing', rectangle(4000, 4500, 4300, 4600), 100, 900);
    const scene = prepareStrokes(room(HALL, [thing]), TABLE, POSE, STROKE);
    // The table's +x looks along the room's +y: 1,500 mm ahead of its middle, 300 mm to its right.
    expect([...scene.parts.edges.ax].map(Math.round)).toEqual([1500, 1500, 1600, 1600]);
    expect([...scene.parts.edges.ay].map((y) => Math.round(y) + 0)).toEqual([0, -300, -300, 0]);
    expect(scene.parts.centerX[0]).toBeCloseTo(1550, 9);
    expect(scene.parts.centerY[0]).toBeCloseTo(-150, 9);
    expect(scene.parts.radius[0]).toBeCloseTo(Math.hypot(50, 150), 9);
    expect(scene.walls.count).toBe(4);
    expect(scene.walls.ax[0]).toBeCloseTo(-3000, 9);
    expect(scene.walls.ay[0]).toBeCloseTo(4000, 9);
  });

  it('keeps ceilings where they hang', () => {
    const face = { name: 'slope', height: 3000, slopeX: -0.2, slopeY: 0.1 };
    const scene = prepareStrokes(room(HALL, [], [face]), TABLE, POSE, STROKE);
    const next = random(61);
    for (let k = 0; k < 20; k++) {
      const [x, y] = [between(next, -2000, 2000), between(next, -2000, 2000)];
      const [roomX, roomY] = [4000 - y, 3000 + x];
      const [{ height, slopeX, slopeY }] = scene.ceiling;
      expect(height + slopeX * x + slopeY * y).toBeCloseTo(3000 - 0.2 * roomX + 0.1 * roomY, 9);
    }
  });

  it('moves every boundary of the room by the tolerance, and nothing of the table', () => {
    const things = [
      obstacle('low', rectangle(0, 0, 500, 500), 10, 900),
      obstacle('tall', rectangle(0, 0, 500, 500)),
    ];
    const face = { name: 'ceiling', height: 2400, slopeX: 0, slopeY: 0 };
    const at = (grow: number): ReturnType<typeof prepareStrokes> =>
      prepareStrokes(room(HALL, things, [face]), TABLE, POSE, STROKE, grow);
    const [kind, plain, strict] = [at(-10), at(0), at(10)];
    expect([kind, plain, strict].map((s) => s.planMargin)).toEqual([10, 20, 30]);
    expect([kind, plain, strict].map((s) => [...s.parts.from])).toEqual([
      [20, 10],
      [10, 0],
      [0, -10],
    ]);
    expect([kind, plain, strict].map((s) => [...s.parts.to])).toEqual([
      [890, Infinity],
      [900, Infinity],
      [910, Infinity],
    ]);
    expect([kind, plain, strict].map((s) => s.ceiling[0].height)).toEqual([2410, 2400, 2390]);
    expect([kind, plain, strict].map((s) => s.stance.radius)).toEqual([220, 230, 240]);
    expect([kind, plain, strict].map((s) => s.qx)).toEqual([plain.qx, plain.qx, plain.qx]);
    // A margin below nothing counts as none.
    expect(growthInPlan(at(-30))).toBe(0);
    expect(growthInPlan(strict)).toBe(30);
  });

  it('knows what leaves no room to stand', () => {
    const things = [
      obstacle('sofa', rectangle(0, 0, 500, 500), 0, 850),
      obstacle('shelf', rectangle(0, 0, 500, 500), 1900, 2000),
      obstacle('rack', rectangle(0, 0, 500, 500), 1899, 2000),
    ];
    const faces = [
      { name: 'roof', height: 500, slopeX: 0.5, slopeY: 0 },
      { name: 'ceiling', height: 1500, slopeX: 0, slopeY: 0 },
    ];
    const { stance } = prepareStrokes(room(HALL, things, faces), TABLE, { ...POSE, angle: 0 }, STROKE);
    expect(stance.parts).toEqual([0, 2]);
    expect(stance.never).toBe(false);
    // The roof is 1,500 mm high at x = 2,000 in the room, 2,000 mm left of the table's middle.
    expect(stance.low).toHaveLength(1);
    expect(stance.low[0].nx).toBe(-1);
    expect(stance.low[0].d).toBeCloseTo(2000, 9);
    const low = [{ name: 'ceiling', height: 1499, slopeX: 0, slopeY: 0 }];
    expect(prepareStrokes(room(HALL, [], low), TABLE, POSE, STROKE).stance.never).toBe(true);
  });
});

describe('what a trace leaves out', () => {
  it('changes no answer: things too far, too low or too high', () => {
    const next = random(62);
    let left = 0;
    for (let k = 0; k < 60; k++) {
      const { scene, pose } = randomScene(next, 1);
      // One far away, one under every stroke, one over every stroke.
      const far = obstacle('far', rectangle(5000, 5000, 5500, 5500));
      const under = obstacle('under', rectangle(-900, -900, 900, 900), 0, 700);
      const over = obstacle('over', rectangle(-3000, -3000, 3000, 3000), 2500, 2600);
      const more = { ...scene, obstacles: [far, under, ...scene.obstacles, over] };
      const bare = prepareStrokes(scene, TABLE, pose, STROKE);
      const full = prepareStrokes(more, TABLE, pose, STROKE);
      const standing = standingRoom(bare);
      const classifier = new StrokeClassifier(bare, CUE);
      const other = new StrokeClassifier(full, CUE);
      const near = new ShotTrace(bare, classifier.ell);
      const wide = new ShotTrace(full, 20_000);
      for (let i = 0; i < 40; i++) {
        const phi = next() * 2 * Math.PI;
        const [x, y] = [between(next, -1, 1) * bare.qx, between(next, -1, 1) * bare.qy];
        near.follow(x, y, Math.cos(phi), Math.sin(phi));
        wide.follow(x, y, Math.cos(phi), Math.sin(phi));
        expect(other.classify(wide, standing)).toBe(classifier.classify(near, standing));
        left += near.partCount;
      }
    }
    expect(left).toBeGreaterThan(100);
  });

  it('costs no share of shots in a room with nothing near', () => {
    const scene = prepareStrokes(
      room(rectangle(-9000, -9000, 9000, 9000)),
      TABLE,
      { x: 0, y: 0, angle: 0 },
      STROKE,
    );
    const [cue] = shotShares(scene, standingRoom(scene), [CUE], { shots: 2000 }).cues;
    expect([cue.open, cue.cramped, cue.blocked]).toEqual([1, 0, 0]);
  });
});
