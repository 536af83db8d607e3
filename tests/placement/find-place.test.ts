import { describe, expect, test } from 'vitest';
import { rectangleRing } from '../../src/geometry/ring.js';
import type { Placement, Ring } from '../../src/geometry/types.js';
import { clearanceProbe } from '../../src/placement/clearance-at.js';
import { clearNowhere, findPlace, standsWithin } from '../../src/placement/find-place.js';
import { openReach } from '../../src/placement/open-reach.js';
import { playerStrip } from '../../src/placement/player-strip.js';
import { tableProblem } from '../../src/placement/problem-for.js';
import type { Scene } from '../../src/room/scene.js';
import { prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import { shotShares } from '../../src/stroke/shot-shares.js';
import { standingRoom } from '../../src/stroke/standing.js';
import { STROKE, TABLE } from '../stroke/scenes.js';

const cue = { name: '57 in', length: 1448, tipRadius: 5, buttRadius: 15 };
const reach = openReach(TABLE, STROKE, cue);
const search = { gap: 1, maxBoxes: 100_000, turns: 'any' } as const;

function room(outline: Ring, obstacles: Scene['obstacles'] = []): Scene {
  const wallNames = outline.map((_, i) => `wall ${i + 1}`);
  return {
    outline,
    wallNames,
    obstacles,
    ceiling: [],
    doors: [],
    reserved: [],
    tolerance: 10,
    wallTolerances: null,
  };
}

function prism(name: string, ring: Ring, from: number, to: number): Scene['obstacles'][number] {
  return { name, ring, parts: [ring], from, to, movable: false };
}

function roomAround(clearance: number, obstacles: Scene['obstacles'] = []): Scene {
  const length = TABLE.field.length - TABLE.ballDiameter + 2 * clearance;
  const width = TABLE.field.width - TABLE.ballDiameter + 2 * clearance;
  return room(rectangleRing([0, 0], length, width), obstacles);
}

const place = (scene: Scene) => findPlace({ scene, table: TABLE, stroke: STROKE, cues: [cue], search });

/** Share of playable shots, and among equals of open ones, by a sample of its own size. */
function score(scene: Scene, pose: Placement): number {
  const strokes = prepareStrokes(scene, TABLE, pose, STROKE);
  const [tally] = shotShares(strokes, standingRoom(strokes), [cue], { shots: 2000 }).cues;
  return tally.open + 0.9 * tally.cramped;
}

describe('the place found', () => {
  test('is the one with most clearance where that is clear', () => {
    const { pose, upperBound } = place(roomAround(1700));
    expect(pose?.x).toBeCloseTo(0, 6);
    expect(pose?.y).toBeCloseTo(0, 6);
    // A rectangle whose sides all bind: (A - w) / 2 by the closed form of algorithms for rectangular rooms.
    expect(upperBound).toBeCloseTo(1700, 3);
  });

  test('is not the one with most clearance where another lets more shots be played', () => {
    // A wardrobe keeps cues off one end; a row of low chests only keeps players off the floor between them.
    const wardrobe = prism('wardrobe', rectangleRing([2300, 1400], 600, 900), 0, 2000);
    const chests = prism('chests', rectangleRing([-600, -1650], 3400, 500), 0, 600);
    const scene = room(rectangleRing([0, 0], 5200, 3900), [wardrobe, chests]);
    const { pose } = place(scene);
    const stander = clearanceProbe(tableProblem(scene, TABLE));
    let best = Number.NEGATIVE_INFINITY;
    for (const angle of [0, Math.PI / 2]) {
      for (let i = 0; i < 14; i++) {
        for (let j = 0; j < 12; j++) {
          const trial = { x: -2600 + (5200 * (i + 0.5)) / 14, y: -1950 + (3900 * (j + 0.5)) / 12, angle };
          if (stander.stands(trial)) best = Math.max(best, score(scene, trial));
        }
      }
    }
    expect(pose).not.toBeNull();
    // A plain grid of 336 places is no better by more than the noise of the samples that ranked them.
    if (pose !== null) expect(score(scene, pose)).toBeGreaterThan(best - 0.02);
  });

  test('lets a table stand under what hangs over it, where there is no other place', () => {
    const low = prism('low beam', rectangleRing([0, 0], 3000, 2000), 1000, 1200);
    const scene = room(rectangleRing([0, 0], TABLE.outer.length + 300, TABLE.outer.width + 300), [low]);
    expect(place(scene).pose).not.toBeNull();
    const stump = prism('stump', rectangleRing([0, 0], 300, 300), 0, 200);
    expect(place({ ...scene, obstacles: [stump] }).pose).toBeNull();
  });
});

describe('the proof that no place is clear', () => {
  const ask = (scene: Scene) => {
    const { upperBound } = place(scene);
    return clearNowhere({ scene, table: TABLE, stroke: STROKE, cue, upperBound, maxBoxes: 100_000 });
  };

  test('holds below ell cos(theta_rail) + a and not above it', () => {
    expect(ask(roomAround(reach.least - 2))).toBe(true);
    expect(ask(roomAround(reach.least + 2))).toBe(false);
  });

  test('does not rest on things that a cue may pass over or under', () => {
    const wide = (o: Scene['obstacles']) => roomAround(reach.least + 400, o);
    expect(ask(wide([]))).toBe(false);
    const inner = reach.least - 400;
    const close = [1, -1].map((side) =>
      prism(`row ${side}`, rectangleRing([0, side * (TABLE.field.width / 2 + inner)], 9000, 200), 0, 2400),
    );
    expect(ask(wide(close))).toBe(true);
    expect(ask(wide(close.map((o) => ({ ...o, to: 900 }))))).toBe(false);
  });
});

describe('rooms within the tolerance', () => {
  test('hold a table that is short of room by less than twice the tolerance', () => {
    const { length, width } = TABLE.outer;
    const scene = (missing: number) => room(rectangleRing([0, 0], length - missing, width + 20));
    expect(standsWithin(scene(15), TABLE, 10, 10_000)).toBe(true);
    expect(standsWithin(scene(25), TABLE, 10, 10_000)).toBe(false);
  });
});

describe("the players' strip", () => {
  const pose = { x: 0, y: 0, angle: 0.3 };

  test('is the width of floor to the nearest thing that leaves no room to stand', () => {
    const scene = room(rectangleRing([0, 0], TABLE.outer.length + 1400, TABLE.outer.width + 1800, 0.3));
    expect(playerStrip(scene, TABLE, pose)).toBeCloseTo(700, 6);
    const lamp = prism('lamp', rectangleRing([0, 0], 1500, 300, 0.3), 1650, 1900);
    expect(playerStrip({ ...scene, obstacles: [lamp] }, TABLE, pose)).toBeCloseTo(700, 6);
  });

  test('is gone where something hangs over the rim, and ends at what stands', () => {
    const scene = room(rectangleRing([0, 0], TABLE.outer.length + 1400, TABLE.outer.width + 1800, 0.3));
    const wide = prism('canopy', rectangleRing([0, 0], TABLE.outer.length + 100, 300, 0.3), 1650, 1900);
    expect(playerStrip({ ...scene, obstacles: [wide] }, TABLE, pose)).toBeLessThan(0);
    const high = { ...wide, from: 1950 };
    expect(playerStrip({ ...scene, obstacles: [high] }, TABLE, pose)).toBeCloseTo(700, 6);
  });
});
