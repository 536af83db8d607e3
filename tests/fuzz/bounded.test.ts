import { describe, expect, it } from 'vitest';
import type { Point, Ring } from '../../src/geometry/types.js';
import {
  assessFit,
  checkFitInput,
  type FitInput,
  InputError,
  type ObstacleInput,
  roomFromTape,
} from '../../src/index.js';
import { findPlacement, squareTurns } from '../../src/placement/index.js';
import { insistPlain } from './plain.js';

/**
 * The largest inputs that are taken, and one more of everything: answered or refused, by work that is counted where it can be. The
 * time limit of the runner guards against hanging; nothing here is a measurement.
 */
const TABLE = 'pool-7ft-bar';

/** A round room with so many corners; `wave` mm deep, where it is not 0. */
function round(corners: number, radius: number, wave: number): Ring {
  return Array.from({ length: corners }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / corners;
    const r = radius + (i % 2 === 0 ? wave : 0);
    return [r * Math.cos(angle), r * Math.sin(angle)];
  });
}

const square: Ring = [
  [0, 0],
  [30_000, 0],
  [30_000, 30_000],
  [0, 30_000],
];

function posts(count: number): ObstacleInput[] {
  return Array.from({ length: count }, (_, i) => ({
    name: `post ${i + 1}`,
    footprint: { center: [600 + 1200 * (i % 24), 600 + 1200 * Math.floor(i / 24)] as const, diameter: 60 },
  }));
}

function codes(input: unknown): readonly string[] {
  return checkFitInput(input).map(({ code, path }) => `${code} @ ${path}`);
}

describe('bounded work', () => {
  it('answers a room with 10,000 corners, smooth and jagged, within its budget of boxes', () => {
    for (const wave of [0, 40]) {
      const seen: number[] = [];
      const report = assessFit({
        room: { outline: round(10_000, 5000, wave) },
        table: TABLE,
        search: {
          maxBoxes: 150,
          onProgress: ({ boxes }) => {
            seen.push(boxes);
            return true;
          },
        },
      });
      insistPlain(report);
      expect(report.pose).not.toBeNull();
      expect(report.clearance.value).toBeGreaterThan(3000);
      expect(Math.max(...seen)).toBeLessThanOrEqual(150);
    }
  });

  it('refuses a room of 5,000 spikes, whose floor is narrower than any passage', () => {
    const outline = round(5000, 5000, 0).map(([x, y], i): Point => (i % 2 === 0 ? [x, y] : [x / 50, y / 50]));
    expect(codes({ room: { outline }, table: TABLE })).toEqual(['outline-wrong-unit @ room.outline']);
  });

  it('refuses one corner, thing, door, face and cue too many before it looks at any', () => {
    const door = { hinge: [0, 0], latch: [0, 900], opens: 'out' };
    const face = [
      [0, 0, 2500],
      [1000, 0, 2500],
      [0, 1000, 2500],
    ];
    const base = { room: { outline: square }, table: TABLE };
    const room = (more: object): unknown => ({ ...base, room: { outline: square, ...more } });
    expect(codes({ ...base, room: { outline: round(10_001, 5000, 0) } })).toEqual([
      'too-many @ room.outline',
    ]);
    expect(codes(room({ obstacles: new Array(1001).fill(null) }))).toEqual(['too-many @ room.obstacles']);
    expect(codes(room({ doors: new Array(101).fill(door) }))).toEqual(['too-many @ room.doors']);
    expect(codes(room({ ceiling: new Array(101).fill(face) }))).toEqual(['too-many @ room.ceiling']);
    expect(codes({ ...base, cues: new Array(500).fill(1450) })).toEqual(['too-many-cues @ cues']);
    const [big] = codes(room({ obstacles: [{ name: 'big', footprint: round(1001, 500, 0) }] }));
    expect(big).toBe('too-many @ room.obstacles[0].footprint');
    const many = new Array(11)
      .fill(0)
      .map((_, i) => ({ name: `thing ${i}`, footprint: round(1000, 100, 0) }));
    expect(codes(room({ obstacles: many }))).toEqual(['too-many @ room.obstacles']);
  });

  it('answers 500 obstacles, 20 cues, 100 doors and 100 faces of a ceiling at once', () => {
    const input: FitInput = {
      room: {
        outline: square,
        obstacles: posts(500),
        doors: Array.from({ length: 30 }, (_, i) => ({
          hinge: [0, 1000 * i] as const,
          latch: [0, 1000 * i + 900] as const,
          opens: 'out' as const,
        })),
        ceiling: Array.from(
          { length: 100 },
          (_, i) =>
            [
              [0, 0, 2500 + i],
              [1000, 0, 2500 + i],
              [0, 1000, 2500 + i],
            ] as const,
        ),
      },
      table: { field: { length: 600, width: 300 }, outer: { length: 700, width: 400 } },
      cues: Array.from({ length: 20 }, (_, i) => 400 + 50 * i),
      search: { maxBoxes: 200 },
    };
    const report = assessFit(input);
    insistPlain(report);
    expect(report.cues).toHaveLength(20);
    expect(report.pose).not.toBeNull();
  });

  it('looks at no more boxes than it may, however hard the room', () => {
    for (const maxBoxes of [0, 1, 7, 100]) {
      for (const outline of [round(3000, 4000, 30), square]) {
        const { boxes, stopped, upperBound, value } = findPlacement(
          {
            outline,
            play: { length: 1900, width: 940 },
            frame: { length: 2200, width: 1240 },
            tall: [],
            low: [],
          },
          { maxBoxes, gap: 0.0001, turns: 'any' },
        );
        expect(boxes).toBeLessThanOrEqual(maxBoxes);
        if (stopped) expect(upperBound).toBeGreaterThanOrEqual(value);
      }
    }
    expect(squareTurns(round(10_000, 5000, 40)).length).toBeLessThanOrEqual(400);
  });

  it('takes a survey of 120 walls and refuses one of 121', () => {
    const walls = (count: number) =>
      Array.from({ length: count }, () => ({ length: 300, corner: 180 - 360 / count }));
    const room = roomFromTape({ walls: walls(120), by: 'laser' });
    insistPlain(room);
    expect(room.corners).toHaveLength(120);
    expect(() => roomFromTape({ walls: walls(121) })).toThrow(InputError);
  });
});
