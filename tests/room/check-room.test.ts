import { describe, expect, it } from 'vitest';
import { OUTLINE, read, sceneOf } from './read.js';

describe('readRoom', () => {
  it('reads the least that a room needs, and says what it assumed', () => {
    const { scene, problems, assumptions } = read({ outline: OUTLINE });
    expect(problems).toEqual([]);
    expect(scene).toEqual({
      outline: OUTLINE,
      wallNames: ['wall 1', 'wall 2', 'wall 3', 'wall 4'],
      obstacles: [],
      ceiling: [],
      doors: [],
      tolerance: 10,
      reserved: [],
      wallTolerances: null,
    });
    expect(assumptions).toEqual([
      'Measurements are taken to be within 10 mm (default).',
      'No ceiling was given: none is considered.',
      'No obstacles were given: the room is taken to be empty.',
      'No doors were given: no floor is kept free for one to open.',
    ]);
  });

  it('assumes nothing where everything was given', () => {
    const { scene, assumptions } = read({
      outline: [
        ['0', '0 m'],
        ['5 m', 0],
        ['500 cm', '4 m'],
        [0, 4000],
      ],
      ceiling: '2.4 m',
      obstacles: [
        {
          name: 'sofa',
          footprint: { center: [2500, '50 cm'], length: '2 m', width: '0.9 m', turn: 0 },
          from: 0,
          to: 850,
          movable: true,
        },
      ],
      doors: [{ name: 'entry', hinge: ['5 m', '1 m'], latch: [5000, 1900], opens: 'slides' }],
      tolerance: '5 mm',
    });
    expect(assumptions).toEqual([]);
    expect(scene).toEqual({
      outline: OUTLINE,
      wallNames: ['wall 1', 'wall 2', 'wall 3', 'wall 4'],
      obstacles: [
        {
          name: 'sofa',
          ring: [
            [1500, 50],
            [3500, 50],
            [3500, 950],
            [1500, 950],
          ],
          parts: [
            [
              [1500, 50],
              [3500, 50],
              [3500, 950],
              [1500, 950],
            ],
          ],
          from: 0,
          to: 850,
          movable: true,
        },
      ],
      ceiling: [{ name: 'ceiling', height: 2400, slopeX: 0, slopeY: 0 }],
      doors: [{ name: 'entry', hinge: [5000, 1000], latch: [5000, 1900], opens: 'slides', swing: null }],
      tolerance: 5,
      reserved: [],
      wallTolerances: null,
    });
  });

  it('names every default of obstacles and doors, once each', () => {
    const round = (name: string, x: number): object => ({
      name,
      footprint: { center: [x, 2000], diameter: 300 },
    });
    const { assumptions } = read({
      outline: OUTLINE,
      ceiling: 2400,
      tolerance: 10,
      obstacles: [
        round('column', 1000),
        { name: 'desk', footprint: { center: [3000, 500], length: 1600, width: 800 }, from: 0, to: 740 },
      ],
      doors: [
        { hinge: [0, 1000], latch: [0, 1900], opens: 'in' },
        { hinge: [0, 3900], latch: [0, 3000], opens: 'in' },
      ],
    });
    expect(assumptions).toEqual([
      '"column" stands on the floor (default).',
      '"column" reaches the ceiling (default).',
      '"column" and "desk" stay in place: no advice moves them (default).',
      '"desk" lies square to the plan, its length along x (default).',
      '"column" counts as a polygon drawn around the circle, at most 0.95 mm larger.',
      "The swing of a door counts as at most 5 mm larger than the leaf's quarter circle.",
    ]);
    const many = read({
      outline: OUTLINE,
      obstacles: Array.from({ length: 7 }, (_, i) => round(`post ${i + 1}`, 500 + 600 * i)),
    });
    expect(many.assumptions).toContain(
      '"post 1", "post 2", "post 3", "post 4", "post 5" and 2 more stand on the floor (default).',
    );
  });

  it('lets obstacles overlap walls, corners and one another, and surround the room', () => {
    const scene = sceneOf({
      outline: OUTLINE,
      obstacles: [
        { name: 'chimney breast', footprint: { center: [2500, 4000], length: 1500, width: 900 } },
        { name: 'nook', footprint: { center: [0, 0], diameter: 800 } },
        {
          name: 'flush',
          footprint: [
            [0, 1000],
            [300, 1000],
            [300, 2000],
            [0, 2000],
          ],
        },
        {
          name: 'upon it',
          footprint: [
            [-10, 1500],
            [200, 1500],
            [200, 2500],
            [-10, 2500],
          ],
          from: 900,
        },
        {
          name: 'false ceiling',
          footprint: [
            [-100, -100],
            [5100, -100],
            [5100, 4100],
            [-100, 4100],
          ],
          from: 2000,
        },
        { name: 'all of it', footprint: OUTLINE, from: 2000 },
      ],
    });
    expect(scene.obstacles.map((o) => o.name)).toEqual([
      'chimney breast',
      'nook',
      'flush',
      'upon it',
      'false ceiling',
      'all of it',
    ]);
    expect(scene.obstacles.map((o) => o.to)).toEqual(new Array(6).fill(Number.POSITIVE_INFINITY));
  });

  it('makes rings of footprints run anticlockwise and splits them into convex parts', () => {
    const [obstacle] = sceneOf({
      outline: OUTLINE,
      obstacles: [
        {
          name: 'corner sofa',
          footprint: [
            [1000, 1000],
            [1000, 3000],
            [2000, 3000],
            [2000, 2000],
            [3000, 2000],
            [3000, 1500],
            [3000, 1000],
            [1000, 1000],
          ],
        },
      ],
    }).obstacles;
    expect(obstacle.ring).toEqual([
      [1000, 1000],
      [3000, 1000],
      [3000, 2000],
      [2000, 2000],
      [2000, 3000],
      [1000, 3000],
    ]);
    expect(obstacle.parts).toHaveLength(2);
  });

  it('turns a rectangle anticlockwise by degrees', () => {
    const [obstacle] = sceneOf({
      outline: OUTLINE,
      obstacles: [{ name: 'bench', footprint: { center: [2000, 2000], length: 1000, width: 400, turn: 90 } }],
    }).obstacles;
    const xs = obstacle.ring.map(([x]) => x);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(400, 9);
  });

  it('reads plain data without a prototype, and leaves the input alone', () => {
    const bare: Record<string, unknown> = Object.assign(Object.create(null), { outline: OUTLINE });
    expect(sceneOf(bare).outline).toEqual(OUTLINE);
    const input = Object.freeze({ outline: Object.freeze([...OUTLINE]), doors: Object.freeze([]) });
    expect(sceneOf(input).doors).toEqual([]);
  });

  it('knows no -0, as a mirrored plan brings it in', () => {
    const mirrored = OUTLINE.map(([x, y]) => [-x, -y]);
    expect(Object.is(mirrored[0][0], -0)).toBe(true);
    const zeros = sceneOf({ outline: mirrored })
      .outline.flat()
      .filter((v) => v === 0);
    expect(zeros).toHaveLength(4);
    for (const zero of zeros) expect(Object.is(zero, 0)).toBe(true);
  });

  it('gives the same scene for the same input', () => {
    const input = {
      outline: OUTLINE,
      obstacles: [{ name: 'post', footprint: { center: [2000, 2000], diameter: 120 } }],
    };
    expect(read(input)).toEqual(read(input));
  });
});

describe('names of walls', () => {
  const named = (outline: unknown): Record<string, string> => {
    const scene = sceneOf({ outline });
    return Object.fromEntries(
      scene.outline.map(([x, y], i) => {
        const [bx, by] = scene.outline[(i + 1) % scene.outline.length];
        return [scene.wallNames[i], `${x},${y} to ${bx},${by}`];
      }),
    );
  };

  it('keep the caller numbers of a clockwise outline', () => {
    const clockwise = [
      [0, 0],
      [0, 4000],
      [5000, 4000],
      [5000, 0],
    ];
    expect(named(clockwise)).toEqual({
      'wall 1': '0,4000 to 0,0',
      'wall 2': '5000,4000 to 0,4000',
      'wall 3': '5000,0 to 5000,4000',
      'wall 4': '0,0 to 5000,0',
    });
  });

  it('keep them where the outline is closed, in either direction', () => {
    expect(named([...OUTLINE, [0, 0]])).toEqual(named(OUTLINE));
    const clockwise = [...OUTLINE].reverse();
    expect(named([...clockwise, clockwise[0]])).toEqual(named(clockwise));
  });

  it('take the first of several corners on one wall, and the last of repeated ones', () => {
    const outline = [
      [2000, 0], // 1: in the middle of the wall that starts at corner 7
      [5000, 0], // 2
      [5000, 0], // 3: the same corner
      [5000, 1000], // 4: on wall 3
      [5000, 4000], // 5
      [0, 4000], // 6
      [0, 0], // 7
    ];
    expect(named(outline)).toEqual({
      'wall 7': '0,0 to 5000,0',
      'wall 3': '5000,0 to 5000,4000',
      'wall 5': '5000,4000 to 0,4000',
      'wall 6': '0,4000 to 0,0',
    });
  });
});
