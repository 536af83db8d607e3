import type { Point, Ring, Size } from '../../src/geometry/types.js';
import type { PlacementProblem } from '../../src/placement/placement-problem.js';

/** A seeded generator of numbers in [0, 1) (mulberry32), so that every run sees the same rooms. */
export function randomNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** An upright rectangle by two opposite corners. */
export function rectangle(minX: number, minY: number, maxX: number, maxY: number): Ring {
  return [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
}

/** Turned anticlockwise by `angle` (radians) about (aboutX, aboutY). */
export function turned(ring: Ring, angle: number, aboutX = 0, aboutY = 0): Ring {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return ring.map(([x, y]): Point => {
    const dx = x - aboutX;
    const dy = y - aboutY;
    return [aboutX + cos * dx - sin * dy, aboutY + sin * dx + cos * dy];
  });
}

export function shifted(ring: Ring, dx: number, dy: number): Ring {
  return ring.map(([x, y]): Point => [x + dx, y + dy]);
}

export function regular(n: number, radius: number, x = 0, y = 0): Ring {
  return Array.from({ length: n }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / n;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
}

/** A star-shaped room: n corners at random distances between the two radii. */
export function irregular(n: number, least: number, most: number, seed: number): Ring {
  const random = randomNumbers(seed);
  return Array.from({ length: n }, (_, i): Point => {
    const angle = (2 * Math.PI * (i + 0.6 * (random() - 0.5))) / n;
    const radius = least + (most - least) * random();
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
}

/** Q of the usual tables: play field less a ball's diameter, mm. */
export const PLAY = {
  nineFoot: { length: 2540 - 57.2, width: 1270 - 57.2 },
  eightFoot: { length: 2235 - 57.2, width: 1118 - 57.2 },
  sevenFoot: { length: 1981 - 57.2, width: 991 - 57.2 },
  snooker: { length: 3569 - 52.5, width: 1778 - 52.5 },
} as const satisfies Record<string, Size>;

/** From Q to the outside of the rails: a ball's radius and about 140 mm of cushion and rail on every side. */
export function framed(play: Size, around = 169): Size {
  return { length: play.length + 2 * around, width: play.width + 2 * around };
}

export function problem(
  outline: Ring,
  play: Size,
  tall: readonly Ring[] = [],
  low: readonly Ring[] = [],
  frame: Size = framed(play),
): PlacementProblem {
  return { outline, play, frame, tall, low };
}

export interface NamedRoom {
  readonly name: string;
  readonly problem: PlacementProblem;
}

/** Fourteen rooms that between them have ridges, symmetry, elbows, pillars and many corners. */
export function benchRooms(): NamedRoom[] {
  const rooms: [string, PlacementProblem][] = [
    ['rectangle 6.0 x 4.6', problem(rectangle(0, 0, 6000, 4600), PLAY.nineFoot)],
    [
      'square 4.6 turned 17 deg',
      problem(turned(rectangle(0, 0, 4600, 4600), (17 * Math.PI) / 180), PLAY.sevenFoot),
    ],
    [
      'L',
      problem(
        [
          [0, 0],
          [7000, 0],
          [7000, 4200],
          [4800, 4200],
          [4800, 6500],
          [0, 6500],
        ],
        PLAY.eightFoot,
      ),
    ],
    [
      'T',
      problem(
        [
          [0, 4000],
          [2200, 4000],
          [2200, 0],
          [6400, 0],
          [6400, 4000],
          [8600, 4000],
          [8600, 8000],
          [0, 8000],
        ],
        PLAY.eightFoot,
      ),
    ],
    [
      'chimney breast and alcoves',
      problem(
        [
          [0, 0],
          [6200, 0],
          [6200, 4700],
          [4100, 4700],
          [4100, 4250],
          [2500, 4250],
          [2500, 4700],
          [0, 4700],
        ],
        PLAY.eightFoot,
      ),
    ],
    [
      'splayed walls',
      problem(
        [
          [0, 0],
          [6300, 250],
          [5900, 4900],
          [300, 5200],
        ],
        PLAY.eightFoot,
      ),
    ],
    ['hexagon', problem(regular(6, 3200), PLAY.eightFoot)],
    [
      '9 x 7 with 3 pillars',
      problem(rectangle(0, 0, 9000, 7000), PLAY.eightFoot, [
        rectangle(2800, 3000, 3200, 3400),
        rectangle(6100, 2500, 6400, 2800),
        regular(8, 200, 4500, 5600),
      ]),
    ],
    ['irregular, 40 corners', problem(irregular(40, 2700, 4200, 5), PLAY.sevenFoot)],
    ['regular, 200 corners', problem(regular(200, 3200), PLAY.nineFoot)],
    ['rough circle, 200 corners', problem(irregular(200, 3000, 3300, 11), PLAY.nineFoot)],
    ['bay and chimney, 16 corners, turned', problem(bayRoom(), PLAY.sevenFoot)],
    [
      'hall 12 x 9 with 2 pillars, 12 ft',
      problem(rectangle(0, 0, 12000, 9000), PLAY.snooker, [
        rectangle(3900, 4300, 4300, 4700),
        rectangle(7700, 4300, 8100, 4700),
      ]),
    ],
    ['long room 12 x 4.2', problem(rectangle(0, 0, 12000, 4200), PLAY.eightFoot)],
  ];
  return rooms.map(([name, p]) => ({ name, problem: p }));
}

function bayRoom(): Ring {
  return turned(
    [
      [0, 0],
      [1500, 0],
      [1900, -700],
      [3600, -700],
      [4000, 0],
      [5600, 0],
      [5600, 1500],
      [5250, 1500],
      [5250, 2900],
      [5600, 2900],
      [5600, 4400],
      [3300, 4400],
      [3300, 4100],
      [2100, 4100],
      [2100, 4400],
      [0, 4400],
    ],
    0.3,
  );
}
