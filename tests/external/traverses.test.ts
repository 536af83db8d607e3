import { describe, expect, it } from 'vitest';
import { fitLeastSquares } from '../../src/geometry/least-squares.js';
import { signedArea } from '../../src/geometry/ring.js';
import type { Point } from '../../src/geometry/types.js';
import { roomFromTape } from '../../src/room/room-from-tape.js';
import { greatestTapeError } from '../../src/room/tape-deviation.js';
import type { TapedRoom } from '../../src/room/tape-report.js';
import { closedStart } from '../../src/room/tape-walk.js';

/**
 * Surveying examples that were published with their results. A traverse is a room measured by its walls and corners, without
 * diagonals. North is y, east is x.
 */
interface Traverse {
  readonly name: string;
  /** Length, latitude (north) and departure (east) of each line, as published or from its published bearing. */
  readonly lines: readonly (readonly [length: number, latitude: number, departure: number])[];
  readonly clockwise: boolean;
  /** mm that stand for one of its units, so that it has a room's size. */
  readonly unit: number;
}

/** Latitude and departure of a bearing such as S 68 05 35 W. */
function line(
  length: number,
  ns: 'N' | 'S',
  [degrees, minutes, seconds]: readonly [number, number, number],
  ew: 'E' | 'W',
): [number, number, number] {
  const angle = ((degrees + minutes / 60 + seconds / 3600) * Math.PI) / 180;
  return [
    length,
    (ns === 'N' ? 1 : -1) * length * Math.cos(angle),
    (ew === 'E' ? 1 : -1) * length * Math.sin(angle),
  ];
}

/** Source: J. Mahun, Open Access Surveying Library, traverse computations, loop traverse (standards.md S74); feet. */
const A: Traverse = {
  name: 'A, a loop traverse',
  lines: [
    line(472.68, 'S', [68, 5, 35], 'W'),
    line(216.13, 'N', [19, 46, 0], 'W'),
    line(276.52, 'N', [45, 55, 20], 'E'),
    line(382.24, 'S', [54, 59, 15], 'E'),
  ],
  clockwise: true,
  unit: 304.8,
};

/** Source: standards.md S75 (a published exercise with its solution); feet. */
const B: Traverse = {
  name: 'B, four courses',
  lines: [
    line(314.02, 'N', [22, 36, 40], 'W'),
    line(264.49, 'S', [60, 39, 24], 'W'),
    line(213.5, 'S', [38, 46, 10], 'E'),
    line(217.69, 'N', [88, 22, 58], 'E'),
  ],
  clockwise: false,
  unit: 304.8,
};

/** Source: Sample Traverse Computations (standards.md S76), with latitudes and departures as published. */
const C: Traverse = {
  name: 'C, six courses that close badly',
  lines: [
    [495.85, 493.5672, 47.5251],
    [850.62, 590.5342, 612.2285],
    [855.45, -325.5265, 791.0924],
    [1020.87, -996.9916, 219.5069],
    [1117.26, -121.9557, -1110.584],
    [660.08, 377.1895, -541.6952],
  ],
  clockwise: true,
  unit: 100,
};

/** Degrees of floor between each line and the next. */
function corners({ lines, clockwise }: Traverse): number[] {
  return lines.map(([, lat, dep], i) => {
    const [, nextLat, nextDep] = lines[(i + 1) % lines.length];
    const turn = Math.atan2(nextLat, nextDep) - Math.atan2(lat, dep);
    const left = ((turn / Math.PI) * 180 + 720) % 360;
    return (180 + (clockwise ? left : -left) + 360) % 360;
  });
}

function asRoom(traverse: Traverse): TapedRoom {
  const angles = corners(traverse);
  return roomFromTape({
    walk: traverse.clockwise ? 'clockwise' : 'anticlockwise',
    walls: traverse.lines.map(([length], i) => ({ length: length * traverse.unit, corner: angles[i] })),
  });
}

/** The room's closure turned back to north and east, in the traverse's units. */
function closureOf(traverse: Traverse): { lat: number; dep: number; length: number; perimeter: number } {
  const { closure } = asRoom(traverse);
  const [, lat, dep] = traverse.lines[0];
  const back = Math.atan2(lat, dep) - (traverse.clockwise ? Math.PI / 2 : 0);
  const { unit } = traverse;
  return {
    lat: (Math.sin(back) * closure.x + Math.cos(back) * closure.y) / unit,
    dep: (Math.cos(back) * closure.x - Math.sin(back) * closure.y) / unit,
    length: closure.length / unit,
    perimeter: closure.perimeter / unit,
  };
}

/**
 * Coordinates of all stations but the first, by least squares over latitudes and departures as uncorrelated readings whose
 * variance grows with the length of their line.
 */
function byLeastSquares({ lines }: Traverse): Point[] {
  const n = lines.length;
  const model = {
    unknowns: 2 * (n - 1),
    readings: 2 * n,
    width: 2,
    linearize(x: Float64Array, rows: Parameters<Parameters<typeof fitLeastSquares>[0]['linearize']>[1]) {
      lines.forEach(([length, lat, dep], i) => {
        [dep, lat].forEach((read, axis) => {
          const r = 2 * i + axis;
          const deviation = Math.sqrt(length);
          const from = i === 0 ? -1 : 2 * (i - 1) + axis;
          const to = i === n - 1 ? -1 : 2 * i + axis;
          rows.columns[2 * r] = from;
          rows.columns[2 * r + 1] = to;
          rows.slopes[2 * r] = -1 / deviation;
          rows.slopes[2 * r + 1] = 1 / deviation;
          const computed = (to < 0 ? 0 : x[to]) - (from < 0 ? 0 : x[from]);
          rows.misfits[r] = (read - computed) / deviation;
        });
      });
    },
  };
  const fit = fitLeastSquares(model, new Float64Array(2 * (n - 1)));
  if (typeof fit === 'string') throw new Error(fit);
  return [[0, 0], ...lines.slice(1).map((_, i): Point => [fit.x[2 * i], fit.x[2 * i + 1]])];
}

/** Latitude and departure of each side of a closed ring. */
function sides(ring: readonly Point[]): [number, number][] {
  return ring.map(([x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length];
    return [ny - y, nx - x];
  });
}

/** The compass rule as it is written in the books: correction = - closure x length / perimeter. */
function byCompassRule({ lines }: Traverse): [number, number][] {
  const sum = (k: 0 | 1 | 2): number => lines.reduce((total, row) => total + row[k], 0);
  return lines.map(([length, lat, dep]) => [
    lat - (sum(1) * length) / sum(0),
    dep - (sum(2) * length) / sum(0),
  ]);
}

describe('published traverses', () => {
  it('A: misses its start by the published latitude and departure', () => {
    const { lat, dep, length, perimeter } = closureOf(A);
    expect(perimeter).toBeCloseTo(1347.57, 8);
    expect(Math.abs(lat - 0.083)).toBeLessThan(0.001);
    expect(Math.abs(dep - 0.075)).toBeLessThan(0.001);
    expect(Math.abs(length - 0.1119)).toBeLessThan(0.001);
  });

  it('B: misses its start by 0.045 ft, 1 in 22,500', () => {
    const { length, perimeter } = closureOf(B);
    expect(length).toBeCloseTo(0.0448, 3);
    expect(Math.abs(perimeter / length / 22_517 - 1)).toBeLessThan(0.002);
  });

  it('C: misses its start by 24.6876, 1 in 200', () => {
    const { length, perimeter } = closureOf(C);
    // The published lengths and coordinates are rounded to 0.01: six lines, each 0.005 off at most.
    expect(Math.abs(length - 24.6876)).toBeLessThan(0.03);
    expect(Math.round(perimeter / length)).toBe(203);
    expect(perimeter).toBeCloseTo(5000.13, 6);
  });

  it.each([
    ['A', A, [-176.386, 203.382, 192.34, -219.336], [-438.574, -73.105, 198.636, 313.044]],
    [
      'C',
      C,
      [
        493.5672 - 1.6677,
        590.5342 - 2.8609,
        -325.5265 - 2.8772,
        -996.9916 - 3.4335,
        -121.9557 - 3.7577,
        377.1895 - 2.2201,
      ],
      [
        47.5251 - 1.7923,
        612.2285 - 3.0747,
        791.0924 - 3.0922,
        219.5069 - 3.6901,
        -1110.584 - 4.0385,
        -541.6952 - 2.386,
      ],
    ],
  ] as const)(
    '%s: least squares with variances that grow with the length gives the published compass-rule corrections',
    (_, traverse, lats, deps) => {
      const adjusted = sides(byLeastSquares(traverse));
      adjusted.forEach(([lat, dep], i) => {
        expect(Math.abs(lat - lats[i])).toBeLessThan(0.0011);
        expect(Math.abs(dep - deps[i])).toBeLessThan(0.0011);
      });
    },
  );

  it.each([A, B, C])('$name: least squares is the compass rule there', (traverse) => {
    const rule = byCompassRule(traverse);
    sides(byLeastSquares(traverse)).forEach(([lat, dep], i) => {
      expect(lat).toBeCloseTo(rule[i][0], 7);
      expect(dep).toBeCloseTo(rule[i][1], 7);
    });
  });

  it('A: stations and area as published, from N 500 E 2000', () => {
    const ring = byLeastSquares(A).map(([x, y]): Point => [x + 2000, y + 500]);
    const published: Point[] = [
      [2000, 500],
      [1561.426, 323.614],
      [1488.321, 526.996],
      [1686.956, 719.336],
    ];
    ring.forEach(([x, y], i) => {
      expect(Math.abs(x - published[i][0])).toBeLessThan(0.0015);
      expect(Math.abs(y - published[i][1])).toBeLessThan(0.0015);
    });
    expect(Math.abs(Math.abs(signedArea(ring)) - 102_936)).toBeLessThan(1);
  });

  it('C: area of the adjusted traverse as published, 1,715,250.05', () => {
    expect(Math.abs(Math.abs(signedArea(byLeastSquares(C))) - 1_715_250.0494)).toBeLessThan(0.2);
  });

  it.each([
    ['A', A, 102_936, 1],
    ['B', B, 59_763.8, 0.2],
    // Lengths and bearings, both rounded, instead of the published latitudes: 0.01 along 5,000 of perimeter.
    ['C', C, 1_715_250.05, 30],
  ] as const)(
    '%s: the walk from which the adjustment starts is closed by the same rule',
    (_, traverse, area, within) => {
      const start = closedStart(
        traverse.lines.map(([length]) => length),
        corners(traverse).map((degrees) => (degrees * Math.PI) / 180),
        traverse.lines.map(() => 0.01),
        traverse.clockwise,
      );
      const ring = traverse.lines.map((_, i): Point => [start[2 * i], start[2 * i + 1]]);
      expect(signedArea(ring) < 0).toBe(traverse.clockwise);
      expect(Math.abs(Math.abs(signedArea(ring)) - area)).toBeLessThan(within);
    },
  );
});

/** Source of the values: elementary geometry, computed in standards.md 9.4 (shoelace, Heron and Bretschneider agree). */
describe('quadrilaterals from four sides and one diagonal', () => {
  const GUESS = { corner: 90, cornerDeviation: 60 } as const;
  const exact = (length: number) => ({ length: length * 1000, deviation: 0.1 });
  const quadrilateral = (
    a: number,
    b: number,
    c: number,
    d: number,
    diagonals: { AC?: number; BD?: number },
  ) =>
    roomFromTape({
      walls: [a, b, c, d].map((side) => ({ length: exact(side), ...GUESS })),
      diagonals: Object.entries(diagonals).map(([name, length]) => ({
        from: name.charAt(0),
        to: name.charAt(1),
        length: exact(length),
      })),
    });

  it.each([
    [4, 3, 4, 3, 5, 5, 12],
    [13, 14, 13, 14, 15, 22.472205, 168],
    [5, 4, 5.1, 4.05, 6.45, 6.4651, 20.32438],
  ])('%d %d %d %d with the diagonal %d: the other is %d, the area %d', (a, b, c, d, e, other, area) => {
    const { corners: found } = quadrilateral(a, b, c, d, { AC: e });
    const ring = found.map(({ x, y }): Point => [x, y]);
    expect(Math.hypot(ring[1][0] - ring[3][0], ring[1][1] - ring[3][1]) / 1000).toBeCloseTo(other, 5);
    expect(-signedArea(ring) / 1e6).toBeCloseTo(area, 5);
  });

  it('the second diagonal checks the six lengths: one degree of freedom more, and a slip of 50 mm shows', () => {
    const one = quadrilateral(5, 4, 5.1, 4.05, { AC: 6.45 });
    const both = quadrilateral(5, 4, 5.1, 4.05, { AC: 6.45, BD: 6.4651 });
    expect(both.degreesOfFreedom).toBe(one.degreesOfFreedom + 1);
    expect(both.contradictory).toBe(false);
    const slipped = quadrilateral(5, 4, 5.1, 4.05, { AC: 6.45, BD: 6.5151 });
    expect(slipped.contradictory).toBe(true);
    // Six lengths for five unknowns: the slip shows, but any of the six may have it.
    const lengths = ['wall A-B', 'wall B-C', 'wall C-D', 'wall D-A', 'diagonal A-C', 'diagonal B-D'];
    const { suspect } = slipped;
    expect([suspect?.reading, ...(suspect?.orElse ?? [])].sort()).toEqual(lengths.sort());
  });

  it('a 5 x 4 m room with its diagonal read 10 mm long has a corner of 90.18 degrees', () => {
    const diagonal = Math.hypot(5, 4) + 0.01;
    const { readings } = quadrilateral(5, 4, 5, 4, { AC: diagonal });
    expect(readings.find(({ name }) => name === 'corner B')?.adjusted).toBeCloseTo(90.18, 2);
  });
});

/** Source: Directive 2014/32/EU, Annex X (UK SI 2016/1153, Schedule 1I), as tabled in standards.md 9.1 (S72, 10 m also S73). */
describe('greatest error allowed of a tape', () => {
  const LENGTHS = [3000, 5000, 5200, 8000, 10_000, 30_000];
  it.each([
    ['I', [0.4, 0.6, 0.7, 0.9, 1.1, 3.1], 0.1],
    ['II', [0.9, 1.3, 1.5, 1.9, 2.3, 6.3], 0.2],
    ['III', [1.8, 2.6, 3.0, 3.8, 4.6, 12.6], 0.3],
  ] as const)('class %s', (tapeClass, without, hook) => {
    LENGTHS.forEach((length, i) => {
      expect(greatestTapeError(tapeClass, length)).toBeCloseTo(without[i] + hook, 9);
    });
  });
});
