import { describe, expect, it } from 'vitest';
import { codesOf, OUTLINE, read } from './read.js';

const box = { center: [2500, 2000], length: 1000, width: 500 };
const withObstacle = (obstacle: object): object => ({
  outline: OUTLINE,
  ceiling: 2400,
  obstacles: [{ name: 'chest', footprint: box, ...obstacle }],
});
const withFootprint = (footprint: unknown): object => withObstacle({ footprint });
const withDoor = (door: object): object => ({
  outline: OUTLINE,
  doors: [{ hinge: [5000, 1000], latch: [5000, 1900], opens: 'in', ...door }],
});
const withCeiling = (...ceiling: readonly unknown[]): object => ({ outline: OUTLINE, ceiling });
const outline = (...corners: readonly unknown[]): object => ({ outline: corners });
const without = (value: object, ...keys: readonly string[]): object =>
  Object.fromEntries(Object.entries(value).filter(([key]) => !keys.includes(key)));
const tooFar = Array.from({ length: 10_001 }, (_, i) => [i, i % 2]);

const OBSTACLE = 'room.obstacles[0]';
const FOOTPRINT = `${OBSTACLE}.footprint`;
const DOOR = 'room.doors[0]';

/** What is wrong, the room, and the problems in order. */
const DEFECTS: readonly (readonly [string, unknown, ...string[]])[] = [
  ['no room', undefined, 'not-an-object @ room'],
  ['a list for a room', [], 'not-an-object @ room'],
  ['an instance', new Map(), 'not-plain-data @ room'],
  ['no outline', {}, 'missing @ room.outline'],
  ['an unknown property', { outline: OUTLINE, height: 2400 }, 'unknown-property @ room.height'],
  ['text for an outline', { outline: '5 m x 4 m' }, 'not-a-list @ room.outline'],
  ['no corners', outline(), 'outline-too-few-corners @ room.outline'],
  ['two corners', outline([0, 0], [5000, 0]), 'outline-too-few-corners @ room.outline'],
  ['two corners, closed', outline([0, 0], [5000, 0], [0, 0]), 'outline-no-area @ room.outline'],
  ['one point', outline([1, 1], [1, 1], [1, 1]), 'outline-no-area @ room.outline'],
  [
    'corners on a line',
    outline([0, 0], [5000, 5000], [3000, 3000], [2000, 2000]),
    'outline-no-area @ room.outline',
  ],
  [
    'corners as good as on a line',
    outline([0, 0], [3000, 0.0004], [5000, 0], [3000, -0.0004]),
    'outline-no-area @ room.outline',
  ],
  [
    'bad corners',
    outline([0, 0], 7, [1], [1, 2, 3], { x: 1, y: 2 }),
    'not-a-point @ room.outline[1]',
    'not-a-point @ room.outline[2]',
    'not-a-point @ room.outline[3]',
    'not-a-point @ room.outline[4]',
  ],
  [
    'bad coordinates',
    outline([0, Number.NaN], [Number.POSITIVE_INFINITY, '4 furlongs'], [null, true], [1e11, -1e11]),
    'not-a-number @ room.outline[0][1]',
    'not-a-number @ room.outline[1][0]',
    'unknown-unit @ room.outline[1][1]',
    'not-a-length @ room.outline[2][0]',
    'not-a-length @ room.outline[2][1]',
    'too-large @ room.outline[3][0]',
    'too-small @ room.outline[3][1]',
  ],
  // A list with a hole, as JSON cannot write it.
  [
    'a missing corner',
    { outline: Object.assign(new Array(4), { 0: [0, 0], 1: [5000, 0], 3: [0, 4000] }) },
    'missing-item @ room.outline[2]',
  ],
  ['too many corners', { outline: tooFar }, 'too-many @ room.outline'],
  [
    'walls that cross',
    outline([0, 0], [5000, 4000], [5000, 0], [0, 4000]),
    'outline-crosses-itself @ room.outline[0]',
  ],
  [
    'a corner on a wall',
    outline([0, 0], [5000, 0], [5000, 4000], [2500, 0], [0, 4000]),
    'outline-touches-itself @ room.outline[0]',
  ],
  [
    'a corner on a corner',
    outline([0, 0], [5000, 0], [2500, 2000], [5000, 4000], [0, 4000], [2500, 2000]),
    'outline-touches-itself @ room.outline[1]',
  ],
  [
    'a wall there and back',
    outline([0, 0], [5000, 0], [5000, 2000], [3000, 2000], [5000, 2000], [5000, 4000], [0, 4000]),
    'outline-touches-itself @ room.outline[1]',
    'outline-touches-itself @ room.outline[2]',
  ],
  ['metres', outline([0, 0], [4.5, 0], [4.5, 4], [0, 4]), 'outline-wrong-unit @ room.outline'],
  ['centimetres', outline([0, 0], [450, 0], [450, 400], [0, 400]), 'outline-wrong-unit @ room.outline'],
  [
    'kilometres',
    outline([0, 0], [4_500_000, 0], [4_500_000, 4000], [0, 4000]),
    'outline-wrong-unit @ room.outline',
  ],
  [
    'a room of one centimetre',
    outline([0, 0], [5000, 0], [5000, 10], [0, 10]),
    'outline-wrong-unit @ room.outline',
  ],
  ['a tolerance under 0', { outline: OUTLINE, tolerance: -1 }, 'implausible-length @ room.tolerance'],
  [
    'a tolerance over 200 mm',
    { outline: OUTLINE, tolerance: '21 cm' },
    'implausible-length @ room.tolerance',
  ],
  ['a ceiling in metres', { outline: OUTLINE, ceiling: 2.4 }, 'implausible-length @ room.ceiling'],
  [
    'a ceiling higher than a hall',
    { outline: OUTLINE, ceiling: 24_000 },
    'implausible-length @ room.ceiling',
  ],
  ['a ceiling of another kind', { outline: OUTLINE, ceiling: true }, 'not-a-length @ room.ceiling'],
  ['no faces', withCeiling(), 'no-ceiling-faces @ room.ceiling'],
  [
    'two points',
    withCeiling([
      [0, 0, 2400],
      [5000, 0, 2400],
    ]),
    'ceiling-not-three-points @ room.ceiling[0]',
  ],
  [
    'four points',
    withCeiling([
      [0, 0, 2400],
      [5000, 0, 2400],
      [5000, 4000, 2400],
      [0, 4000, 2400],
    ]),
    'too-many @ room.ceiling[0]',
  ],
  [
    'a point without height',
    withCeiling([
      [0, 0],
      [5000, 0, 2400],
      [0, 4000, 2400],
    ]),
    'not-a-point @ room.ceiling[0][0]',
  ],
  [
    'a point under the floor',
    withCeiling([
      [0, 0, -1],
      [5000, 0, 2400],
      [0, 4000, 2400],
    ]),
    'implausible-length @ room.ceiling[0][0][2]',
  ],
  [
    'points in line',
    withCeiling([
      [0, 0, 2400],
      [1000, 0, 2400],
      [4000, 0, 2400],
    ]),
    'ceiling-points-in-line @ room.ceiling[0]',
  ],
  [
    'points in line in space',
    withCeiling([
      [0, 0, 1000],
      [1000, 0, 1500],
      [2000, 0, 2000],
    ]),
    'ceiling-points-in-line @ room.ceiling[0]',
  ],
  [
    'one point thrice',
    withCeiling([
      [1, 1, 2400],
      [1, 1, 2400],
      [1, 1, 2400],
    ]),
    'ceiling-points-in-line @ room.ceiling[0]',
  ],
  [
    'a plane that is a wall',
    withCeiling([
      [0, 0, 1000],
      [1000, 0, 1000],
      [1000, 0, 2400],
    ]),
    'ceiling-face-vertical @ room.ceiling[0]',
  ],
  [
    'a plane as steep as a wall',
    withCeiling([
      [0, 0, 500],
      [4000, 0, 500],
      [0, 300, 2400],
    ]),
    'ceiling-face-vertical @ room.ceiling[0]',
  ],
  [
    'faces in metres',
    withCeiling([
      [0, 0, 2.4],
      [5000, 0, 2.4],
      [0, 4000, 1.2],
    ]),
    'ceiling-wrong-unit @ room.ceiling',
  ],
  [
    'a face that dives under the floor',
    withCeiling([
      [0, 0, 2400],
      [5000, 0, 2400],
      [0, 1000, 1200],
    ]),
    'ceiling-under-floor @ room.ceiling',
  ],
  ['too many faces', { outline: OUTLINE, ceiling: new Array(101).fill(0) }, 'too-many @ room.ceiling'],
  ['obstacles of another kind', { outline: OUTLINE, obstacles: {} }, 'not-a-list @ room.obstacles'],
  ['a word for an obstacle', { outline: OUTLINE, obstacles: ['sofa'] }, `not-an-object @ ${OBSTACLE}`],
  [
    'too many obstacles',
    { outline: OUTLINE, obstacles: new Array(1001).fill(0) },
    'too-many @ room.obstacles',
  ],
  ['no name', withObstacle({ name: undefined }), `missing @ ${OBSTACLE}.name`],
  ['an empty name', withObstacle({ name: ' ' }), `empty-name @ ${OBSTACLE}.name`],
  ['a misspelt property', withObstacle({ moveable: true }), `unknown-property @ ${OBSTACLE}.moveable`],
  ['no footprint', withFootprint(undefined), `missing @ ${FOOTPRINT}`],
  ['a footprint of another kind', withFootprint('round'), `not-an-object @ ${FOOTPRINT}`],
  [
    'an empty footprint',
    withFootprint({}),
    `missing @ ${FOOTPRINT}.center`,
    `missing @ ${FOOTPRINT}.length`,
    `missing @ ${FOOTPRINT}.width`,
  ],
  ['a rectangle without width', withFootprint(without(box, 'width')), `missing @ ${FOOTPRINT}.width`],
  ['a circle without center', withFootprint({ diameter: 400 }), `missing @ ${FOOTPRINT}.center`],
  ['round and square', withFootprint({ ...box, diameter: 400 }), `footprint-round-and-square @ ${FOOTPRINT}`],
  ['a length of nothing', withFootprint({ ...box, length: 0 }), `not-positive @ ${FOOTPRINT}.length`],
  ['a width under 0', withFootprint({ ...box, width: -5 }), `not-positive @ ${FOOTPRINT}.width`],
  ['a width that is none', withFootprint({ ...box, width: 1e-9 }), `footprint-no-area @ ${FOOTPRINT}`],
  ['a turn of another kind', withFootprint({ ...box, turn: '90' }), `not-a-number @ ${FOOTPRINT}.turn`],
  ['a turn beyond a full one', withFootprint({ ...box, turn: 900 }), `too-large @ ${FOOTPRINT}.turn`],
  [
    'a sofa in metres',
    withFootprint({ center: [2500, 2000], length: 2, width: 0.9 }),
    `footprint-wrong-unit @ ${FOOTPRINT}`,
  ],
  [
    'a column in metres',
    withFootprint({ center: [2500, 2000], diameter: 0.4 }),
    `footprint-wrong-unit @ ${FOOTPRINT}`,
  ],
  [
    'a chest longer than any room',
    withFootprint({ ...box, length: 1e6 }),
    `footprint-wrong-unit @ ${FOOTPRINT}`,
  ],
  [
    'a footprint of two corners',
    withFootprint([
      [0, 0],
      [1, 1],
    ]),
    `footprint-too-few-corners @ ${FOOTPRINT}`,
  ],
  [
    'a footprint without area',
    withFootprint([
      [0, 0],
      [100, 100],
      [200, 200],
    ]),
    `footprint-no-area @ ${FOOTPRINT}`,
  ],
  [
    'a footprint that crosses itself',
    withFootprint([
      [100, 100],
      [900, 900],
      [900, 100],
      [100, 900],
    ]),
    `footprint-crosses-itself @ ${FOOTPRINT}[0]`,
  ],
  ['a footprint of too many corners', withFootprint(tooFar.slice(0, 1001)), `too-many @ ${FOOTPRINT}`],
  [
    'too many corners together',
    {
      outline: OUTLINE,
      obstacles: Array.from({ length: 11 }, (_, i) => ({ name: `o${i}`, footprint: tooFar.slice(0, 1000) })),
    },
    'too-many @ room.obstacles',
  ],
  ['an obstacle outside', withFootprint({ ...box, center: [9000, 2000] }), `obstacle-outside @ ${FOOTPRINT}`],
  [
    'an obstacle behind the wall',
    withFootprint({ center: [2500, 4250], length: 1000, width: 500 }),
    `obstacle-outside @ ${FOOTPRINT}`,
  ],
  ['from above to', withObstacle({ from: 900, to: 800 }), `heights-reversed @ ${OBSTACLE}.from`],
  ['from as high as to', withObstacle({ from: 900, to: 900 }), `heights-reversed @ ${OBSTACLE}.from`],
  ['from under the floor', withObstacle({ from: -13 }), `underside-under-floor @ ${OBSTACLE}.from`],
  ['from in metres', withObstacle({ from: 1.9 }), `implausible-length @ ${OBSTACLE}.from`],
  ['to in metres', withObstacle({ to: 0.85 }), `implausible-length @ ${OBSTACLE}.to`],
  ['to of nothing', withObstacle({ to: 0 }), `implausible-length @ ${OBSTACLE}.to`],
  ['from at the ceiling', withObstacle({ from: 2400 }), `obstacle-above-ceiling @ ${OBSTACLE}.from`],
  [
    'from above the ceiling',
    withObstacle({ from: 2500, to: 2600 }),
    `obstacle-above-ceiling @ ${OBSTACLE}.from`,
  ],
  ['movable of another kind', withObstacle({ movable: 'yes' }), `not-yes-or-no @ ${OBSTACLE}.movable`],
  ['movable null', withObstacle({ movable: null }), `not-yes-or-no @ ${OBSTACLE}.movable`],
  [
    'one name twice',
    {
      outline: OUTLINE,
      obstacles: [
        { name: 'Chair', footprint: box },
        { name: ' chair', footprint: box },
      ],
    },
    'name-taken @ room.obstacles[1].name',
  ],
  ["a wall's name", withObstacle({ name: 'Wall 2' }), `name-taken @ ${OBSTACLE}.name`],
  ["the ceiling's name", withObstacle({ name: 'ceiling' }), `name-taken @ ${OBSTACLE}.name`],
  [
    "a door's name for an obstacle",
    { ...withDoor({}), obstacles: [{ name: 'door 1', footprint: box }] },
    `name-taken @ ${DOOR}.name`,
  ],
  ['doors of another kind', { outline: OUTLINE, doors: 1 }, 'not-a-list @ room.doors'],
  ['too many doors', { outline: OUTLINE, doors: new Array(101).fill(0) }, 'too-many @ room.doors'],
  [
    'an empty door',
    { outline: OUTLINE, doors: [{}] },
    `missing @ ${DOOR}.hinge`,
    `missing @ ${DOOR}.latch`,
    `missing @ ${DOOR}.opens`,
  ],
  ['a door that opens otherwise', withDoor({ opens: 'inwards' }), `unknown-word @ ${DOOR}.opens`],
  ['a door in metres', withDoor({ hinge: [5000, 1], latch: [5000, 1.9] }), `door-width @ ${DOOR}`],
  ['a door too wide', withDoor({ hinge: [5000, 500], latch: [5000, 3600] }), `door-width @ ${DOOR}`],
  [
    'hinge and latch in one place',
    withDoor({ hinge: [5000, 500], latch: [5000, 500] }),
    `door-width @ ${DOOR}`,
  ],
  [
    'a door in the middle of the room',
    withDoor({ hinge: [2000, 500], latch: [2900, 500] }),
    `door-not-on-wall @ ${DOOR}`,
  ],
  [
    'a door across a corner',
    withDoor({ hinge: [5000, 400], latch: [4600, 0] }),
    `door-not-on-wall @ ${DOOR}`,
  ],
  [
    'a door beyond the end of its wall',
    withDoor({ hinge: [5000, 3500], latch: [5000, 4400] }),
    `door-not-on-wall @ ${DOOR}`,
  ],
];

describe('problems of a room', () => {
  it.each(DEFECTS)('%s', (_, room, ...expected) => {
    expect(codesOf(room)).toEqual(expected);
    const { scene, problems } = read(room);
    expect(scene).toBeNull();
    // Words for a customer: a sentence, no longer than can be read.
    for (const { message } of problems) {
      expect(message).toMatch(/^["A-Z].*[.)]$/s);
      expect(message.length).toBeLessThan(500);
    }
  });

  it('come all together, each with its path', () => {
    const room = {
      outline: [
        [0, 0],
        [5000, 4000],
        [5000, 0],
        [0, 4000],
      ],
      ceiling: 2.4,
      tolerance: -5,
      obstacles: [
        {
          name: 'a',
          footprint: [
            [0, 0],
            [1000, 'wide'],
            [1000, 1000],
          ],
          to: 0.9,
        },
        { footprint: { center: [0, 0] } },
      ],
      doors: [{ hinge: [0, 0], opens: 'in' }],
      windows: [],
    };
    expect(codesOf(room).sort()).toEqual(
      [
        'unknown-property @ room.windows',
        'implausible-length @ room.tolerance',
        'outline-crosses-itself @ room.outline[0]',
        'implausible-length @ room.ceiling',
        'no-number @ room.obstacles[0].footprint[1][1]',
        'implausible-length @ room.obstacles[0].to',
        'missing @ room.obstacles[1].name',
        'missing @ room.obstacles[1].footprint.length',
        'missing @ room.obstacles[1].footprint.width',
        'missing @ room.doors[0].latch',
      ].sort(),
    );
  });

  const messageOf = (room: unknown): string =>
    read(room)
      .problems.map((p) => p.message)
      .join('\n');

  it('say what to write instead of metres', () => {
    expect(messageOf(outline([0, 0], [4.5, 0], [4.5, 4], [0, 4]))).toContain('write "4.5 m"');
    expect(messageOf({ outline: OUTLINE, ceiling: 2.4 })).toContain('write "2.4 m"');
    expect(messageOf(withObstacle({ to: 0.85 }))).toContain('"0.85 m"');
  });

  it('say which walls cross, by the numbers of the list, and where', () => {
    // Clockwise, with a straight corner and a repeated one: wall 3 crosses wall 6.
    const crossing = outline([0, 0], [0, 2000], [0, 4000], [5000, 0], [5000, 0], [5000, 4000], [2000, -500]);
    const message = messageOf(crossing);
    expect(message).toContain('wall 3 and wall 6 cross at (');
    expect(message).toContain('Wall 3 starts at corner 3 of the list');
  });

  it('say how far a door is from the nearest wall', () => {
    const message = messageOf(withDoor({ hinge: [4880, 1000], latch: [4900, 1900] }));
    expect(message).toContain('wall 2, 120 mm from the hinge and 100 mm from the latch');
    expect(message).toContain('within 50 mm');
  });

  it('say how far outside an obstacle stands', () => {
    expect(messageOf(withFootprint({ ...box, center: [9000, 2000] }))).toContain(
      'its middle is 4000 mm from wall 2',
    );
  });

  it('say at which corner a face dives under the floor', () => {
    const message = messageOf(
      withCeiling([
        [0, 0, 2400],
        [5000, 0, 2400],
        [0, 1000, 1200],
      ]),
    );
    expect(message).toContain(
      'At the corner (5000 mm, 4000 mm) the ceiling would lie 2400 mm under the floor (ceiling 1)',
    );
  });

  it('are listed for 20 crossings of a tangle at most', () => {
    const tangle = Array.from({ length: 101 }, (_, i) => {
      const t = (2 * Math.PI * i * 50) / 101;
      return [2500 * Math.cos(t), 2500 * Math.sin(t)];
    });
    expect(codesOf({ outline: tangle })).toHaveLength(20);
  });
});

describe('what is no problem', () => {
  it.each([
    ['a room of 200 m', outline([0, 0], [200_000, 0], [200_000, 4000], [0, 4000])],
    ['a tolerance of 0', { outline: OUTLINE, tolerance: 0 }],
    ['a door a little off its wall', withDoor({ hinge: [4960, 1000], latch: [5050, 1900] })],
    [
      'a door farther off where the tolerance allows it',
      { ...withDoor({ hinge: [4920, 1000], latch: [4920, 1900] }), tolerance: 80 },
    ],
    [
      'a narrow hatch and a wide leaf',
      {
        outline: OUTLINE,
        doors: [
          { hinge: [0, 0], latch: [300, 0], opens: 'out' },
          { hinge: [0, 500], latch: [0, 3500], opens: 'in' },
        ],
      },
    ],
    ['an underside just below the ceiling', withObstacle({ from: 2399 })],
    ['a top above the ceiling', withObstacle({ to: 3000 })],
    [
      'a shelf under the high side of a slope',
      {
        ...withCeiling([
          [0, 0, 1000],
          [0, 4000, 1000],
          [5000, 0, 3000],
        ]),
        obstacles: [
          { name: 'shelf', footprint: { center: [4000, 2000], length: 1000, width: 500 }, from: 2700 },
        ],
      },
    ],
    [
      'a roof down to the floor',
      withCeiling([
        [0, 0, 0],
        [0, 4000, 0],
        [5000, 0, 3000],
      ]),
    ],
    ['a rug', withObstacle({ to: 5 })],
    [
      'names that differ',
      {
        ...withDoor({ name: 'entry' }),
        obstacles: [
          { name: 'wall unit', footprint: box },
          { name: 'door 1', footprint: box },
        ],
      },
    ],
    [
      'coordinates of a survey',
      outline([430_000_000, 5_000_000_000], [430_005_000, 5_000_000_000], [430_005_000, 5_000_004_000]),
    ],
  ])('%s', (_, room) => {
    expect(codesOf(room)).toEqual([]);
  });
});
