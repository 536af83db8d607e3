import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/types.js';
import { ProblemList } from '../../src/length/read-input.js';
import { roomFromTape } from '../../src/room/room-from-tape.js';
import { adjustNetwork } from '../../src/room/tape-adjust.js';
import type { Reading, TapeSurvey } from '../../src/room/tape-input.js';
import { buildNetwork, type Network } from '../../src/room/tape-network.js';
import type { TapedRoom } from '../../src/room/tape-report.js';
import { readSurveyInput } from '../../src/room/tape-survey.js';
import { adjustByMatrices, type PeerReading } from './tape-peer.js';
import { distanceBetween, floorAngles, laidOver, measure, normalNumbers, starRoom } from './tape-simulate.js';

const SEED = 1809;

function networkOf(survey: TapeSurvey): Network {
  const problems = new ProblemList();
  const checked = readSurveyInput(survey, '', problems);
  const network = checked === null ? null : buildNetwork(checked, '', problems);
  if (network === null) throw new Error(problems.problems.map(({ message }) => message).join('\n'));
  return network;
}

/** A star-shaped room with as many diagonals as corners, measured with errors. */
function surveyOf(corners: number, seed: number, diagonals = corners): TapeSurvey {
  const room = starRoom(corners, diagonals, seed);
  return measure(
    room.ring,
    { diagonals: room.diagonals, deviation: 3, cornerDeviation: 0.5 },
    normalNumbers(seed),
  );
}

function cornersOf({ corners }: TapedRoom): Point[] {
  return corners.map(({ x, y }): Point => [x, y]);
}

describe('the adjustment against dense matrices', () => {
  it.each([4, 5, 7, 12, 25])('ml-matrix finds the same corners and covariance for %d corners', (corners) => {
    const network = networkOf(surveyOf(corners, corners));
    const readings = network.observations.map(({ form, points, read, deviation }): PeerReading => {
      const [a, b, , d] = points;
      return form === 'distance'
        ? { kind: 'distance', p: a, q: b, read, deviation }
        : { kind: 'corner', here: a, before: b, after: d, read, deviation };
    });
    const peer = adjustByMatrices(Array.from(network.start), network.held, true, readings);
    const ours = adjustNetwork(network);
    if (typeof ours === 'string') throw new Error(ours);
    const size = 2 * corners;
    ours.xy.forEach((value, k) => {
      expect(value).toBeCloseTo(peer.xy[k], 4);
    });
    expect(ours.squareSum).toBeCloseTo(peer.squareSum, 6);
    peer.free.forEach((k, i) => {
      peer.free.forEach((m, j) => {
        const scale = Math.sqrt(peer.covariance.get(i, i) * peer.covariance.get(j, j));
        expect(Math.abs(ours.covariance[k * size + m] - peer.covariance.get(i, j)) / scale).toBeLessThan(
          1e-6,
        );
      });
    });
  });
});

describe('laws of an adjustment', () => {
  const surveys = fc
    .record({
      corners: fc.integer({ min: 3, max: 14 }),
      seed: fc.integer({ min: 1, max: 1e6 }),
      diagonals: fc.integer({ min: 0, max: 10 }),
    })
    .map(({ corners, seed, diagonals }) => surveyOf(corners, seed, corners < 5 ? 0 : diagonals));

  it('redundancy adds up to the degrees of freedom, and each lies between 0 and 1', () => {
    fc.assert(
      fc.property(surveys, (survey) => {
        const room = roomFromTape(survey);
        const sum = room.readings.reduce((total, { redundancy }) => total + redundancy, 0);
        expect(sum).toBeCloseTo(room.degreesOfFreedom, 5);
        for (const { redundancy } of room.readings) {
          expect(redundancy).toBeGreaterThanOrEqual(0);
          expect(redundancy).toBeLessThanOrEqual(1);
        }
      }),
      { seed: SEED, numRuns: 150 },
    );
  });

  it('weighted residuals are orthogonal to whatever the corners can do', () => {
    fc.assert(
      fc.property(surveys, (survey) => {
        const network = networkOf(survey);
        const ours = adjustNetwork(network);
        if (typeof ours === 'string') throw new Error(ours);
        const { width, columns, slopes, misfits } = ours.rows;
        const gradient = new Float64Array(network.start.length);
        const size = new Float64Array(network.start.length);
        for (let k = 0; k < columns.length; k++) {
          if (columns[k] < 0) continue;
          const part = slopes[k] * misfits[Math.floor(k / width)];
          gradient[columns[k]] += part;
          size[columns[k]] += Math.abs(part);
        }
        gradient.forEach((sum, k) => {
          expect(Math.abs(sum)).toBeLessThan(1e-5 + 1e-5 * size[k]);
        });
      }),
      { seed: SEED, numRuns: 150 },
    );
  });

  it('no other place of the corners has a smaller sum of squares', () => {
    fc.assert(
      fc.property(surveys, fc.integer({ min: 1, max: 1e6 }), (survey, seed) => {
        const network = networkOf(survey);
        const ours = adjustNetwork(network);
        if (typeof ours === 'string') throw new Error(ours);
        const normal = normalNumbers(seed);
        const moved = ours.xy.map((value) => value + 0.5 * normal());
        // Written out from the coordinates, not from the library's rows.
        let sum = 0;
        for (const { form, points, read, deviation } of network.observations) {
          const at = (p: number): Point => [moved[2 * p], moved[2 * p + 1]];
          if (form === 'distance') {
            sum += ((read - distanceBetween(at(points[0]), at(points[1]))) / deviation) ** 2;
          } else {
            const [[ax, ay], [bx, by], [cx, cy]] = [at(points[0]), at(points[1]), at(points[3])];
            const angle = Math.atan2(cy - ay, cx - ax) - Math.atan2(by - ay, bx - ax) - read;
            sum += (Math.atan2(Math.sin(angle), Math.cos(angle)) / deviation) ** 2;
          }
        }
        expect(sum).toBeGreaterThan(ours.squareSum);
      }),
      { seed: SEED, numRuns: 150 },
    );
  });

  it('exact readings give the room back, whatever it is', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 20 }), fc.integer({ min: 1, max: 1e6 }), (corners, seed) => {
        const { ring, diagonals } = starRoom(corners, corners < 5 ? 0 : corners, seed);
        const room = roomFromTape(measure(ring, { diagonals, deviation: 3, cornerDeviation: 0.5 }));
        const found = cornersOf(room);
        laidOver(ring, found).forEach((corner, i) => {
          expect(distanceBetween(corner, found[i])).toBeLessThan(1e-4);
        });
        expect(room.unitDeviation).toBeLessThan(1e-4);
        expect(room.closure.length).toBeLessThan(1e-6);
        expect(room.suspect).toBeNull();
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  it('the shape, its bands and its redundancies do not depend on the corner at which the list begins', () => {
    fc.assert(
      fc.property(surveys, fc.integer({ min: 1, max: 13 }), (survey, shift) => {
        const n = survey.walls.length;
        const from = shift % n;
        const turned = { ...survey, walls: survey.walls.map((_, i) => survey.walls[(i + from) % n]) };
        const [first, second] = [roomFromTape(survey), roomFromTape(turned)];
        const [a, b] = [cornersOf(first), cornersOf(second)];
        const matched = laidOver(
          b,
          b.map((_, i) => a[(i + from) % n]),
        );
        matched.forEach((corner, i) => {
          expect(distanceBetween(corner, a[(i + from) % n])).toBeLessThan(1e-3);
        });
        for (const { name, band } of second.walls) {
          const before = first.walls.find((wall) => wall.name === name)?.band ?? Number.NaN;
          expect(Math.abs(band - before)).toBeLessThan(1e-3 * before);
        }
        for (const { name, redundancy } of second.readings) {
          if (name.startsWith('diagonal')) continue;
          const before = first.readings.find((reading) => reading.name === name)?.redundancy ?? Number.NaN;
          expect(redundancy).toBeCloseTo(before, 5);
        }
      }),
      { seed: SEED, numRuns: 100 },
    );
  });

  it('the same room walked the other way round', () => {
    fc.assert(
      fc.property(surveys, (survey) => {
        // Backwards, wall i runs from its old end: the corner that followed the wall before is at its far end now.
        const n = survey.walls.length;
        const back = survey.walls.map((_, i) => {
          const wall = survey.walls[n - 1 - i];
          const before = survey.walls[(2 * n - 2 - i) % n];
          return {
            ...wall,
            from: survey.walls[(n - i) % n].from ?? '',
            corner: before.corner ?? 90,
            cornerDeviation: before.cornerDeviation ?? 0.5,
          };
        });
        const [first, second] = [
          roomFromTape(survey),
          roomFromTape({ ...survey, walls: back, walk: 'anticlockwise' }),
        ];
        const a = cornersOf(first);
        const b = first.corners.map(({ name }): Point => {
          const corner = second.corners.find((other) => other.name === name);
          return [corner?.x ?? Number.NaN, corner?.y ?? Number.NaN];
        });
        laidOver(b, a).forEach((corner, i) => {
          expect(distanceBetween(corner, a[i])).toBeLessThan(1e-3);
        });
      }),
      { seed: SEED, numRuns: 60 },
    );
  });
});

describe('the datum', () => {
  const WALLS = [{ length: 5000 }, { length: 4000 }, { length: 5003 }, { length: 4001 }];

  it('clockwise: the first wall runs up from the origin, the room lies to its right', () => {
    const { corners, outline } = roomFromTape({ walls: WALLS });
    expect(outline[0]).toEqual([0, 0]);
    expect(corners[1].x).toBe(0);
    expect(corners[1].y).toBeCloseTo(5000, 0);
    expect(corners[2].x).toBeCloseTo(4000, 0);
    expect([corners[0].deviationX, corners[0].deviationY, corners[1].deviationX]).toEqual([0, 0, 0]);
  });

  it('anticlockwise: the first wall runs to the right from the origin, the room lies above it', () => {
    const { corners } = roomFromTape({ walls: WALLS, walk: 'anticlockwise' });
    expect(corners[1].y).toBe(0);
    expect(corners[1].x).toBeCloseTo(5000, 0);
    expect(corners[2].y).toBeCloseTo(4000, 0);
    expect([corners[0].deviationX, corners[0].deviationY, corners[1].deviationY]).toEqual([0, 0, 0]);
  });

  it('ellipses and covariance say the same', () => {
    const { corners, covariance } = roomFromTape(surveyOf(9, 3));
    corners.forEach(({ deviationX, deviationY, ellipse }, i) => {
      const [xx, xy, yy] = [
        covariance[2 * i][2 * i],
        covariance[2 * i][2 * i + 1],
        covariance[2 * i + 1][2 * i + 1],
      ];
      expect(deviationX ** 2).toBeCloseTo(xx, 9);
      expect(deviationY ** 2).toBeCloseTo(yy, 9);
      const turn = (ellipse.turn * Math.PI) / 180;
      const along = (x: number, y: number): number => x * x * xx + 2 * x * y * xy + y * y * yy;
      expect(along(Math.cos(turn), Math.sin(turn))).toBeCloseTo(ellipse.major ** 2, 6);
      expect(along(-Math.sin(turn), Math.cos(turn))).toBeCloseTo(ellipse.minor ** 2, 6);
      expect(ellipse.major).toBeGreaterThanOrEqual(ellipse.minor);
    });
  });
});

describe('deviations', () => {
  const square = (length: Reading) =>
    roomFromTape({ walls: [{ length }, { length: 4000 }, { length: 5000 }, { length: 4000 }] }).readings[0]
      .deviation;

  it('of a tape: what its class allows by sqrt(3), and 3 mm of reading (GUM, type B)', () => {
    // Class II at 5 m: 1.3 mm (Directive 2014/32/EU) and 0.2 mm for the hook.
    expect(square(5000)).toBeCloseTo(Math.hypot(1.5 / Math.sqrt(3), 3), 12);
  });

  it('repeats lessen only the reading`s part', () => {
    expect(square({ length: [5000, 5000, 5000, 5000] })).toBeCloseTo(
      Math.hypot(1.5 / Math.sqrt(3), 3 / 2),
      12,
    );
    expect(square({ length: [4998, 5002], deviation: 6 })).toBeCloseTo(Math.sqrt(0.75 + (36 - 0.75) / 2), 12);
  });

  it('a guess is as good as one guess, however often it is made', () => {
    expect(square({ length: [5000, 5000, 5000], by: 'estimate' })).toBeCloseTo(150, 12);
  });

  it('an own deviation counts whole for one reading', () => {
    expect(square({ length: 5000, deviation: 0.2 })).toBeCloseTo(0.2, 12);
    expect(square({ length: 5000, deviation: 12 })).toBeCloseTo(12, 12);
    expect(square({ length: 5000, deviation: 400, by: 'estimate' })).toBeCloseTo(400, 12);
  });
});

describe('corners', () => {
  it('three distances take the place of the assumed square, inside and outside', () => {
    // An L-shaped room; 3-4-5 triangles with a little off: 2,010 across is 90.51 degrees.
    const angle = (Math.acos((1200 ** 2 + 1600 ** 2 - 2010 ** 2) / (2 * 1200 * 1600)) * 180) / Math.PI;
    const { readings } = roomFromTape({
      walls: [5000, 4000, 3000, 2000, 2000, 2000].map((length, i) => ({
        length,
        corner: i === 3 ? 'external' : 'internal',
      })),
      angles: [
        { corner: 'B', before: 1200, after: 1600, across: 2010 },
        { corner: 'E', before: 1200, after: 1600, across: 2010 },
      ],
    });
    const of = (corner: string) => readings.filter(({ name }) => name.startsWith(`corner ${corner}`));
    expect(of('B')).toHaveLength(1);
    expect(of('B')[0]).toMatchObject({ name: 'corner B by three distances', by: 'tape' });
    expect(of('B')[0].read).toBeCloseTo(angle, 9);
    expect(of('E')[0].read).toBeCloseTo(360 - angle, 9);
    expect(of('A')[0]).toMatchObject({ name: 'corner A', by: 'assumed', read: 90 });
  });

  it('the deviation of three distances is that of their angle, by simulation', () => {
    const normal = normalNumbers(7);
    const [a, b, c] = [1500, 1800, Math.hypot(1500, 1800)];
    const runs = 20_000;
    let [sum, squares] = [0, 0];
    for (let i = 0; i < runs; i++) {
      const [p, q, r] = [a + 4 * normal(), b + 4 * normal(), c + 4 * normal()];
      const angle = (Math.acos((p * p + q * q - r * r) / (2 * p * q)) * 180) / Math.PI;
      sum += angle;
      squares += angle * angle;
    }
    const simulated = Math.sqrt(squares / runs - (sum / runs) ** 2);
    const read = (length: number) => ({ length, deviation: 4 });
    const { readings } = roomFromTape({
      walls: [{ length: 5000 }, { length: 4000 }, { length: 5000 }, { length: 4000 }],
      angles: [{ corner: 'B', before: read(a), after: read(b), across: read(c) }],
    });
    const ours = readings.find(({ name }) => name === 'corner B by three distances')?.deviation ?? Number.NaN;
    // 20,000 runs know a deviation to 0.5 %.
    expect(Math.abs(ours / simulated - 1)).toBeLessThan(0.02);
  });

  it('floor angles of the helper add up, as a check of the tests themselves', () => {
    const { ring } = starRoom(11, 0, 2);
    expect(floorAngles(ring).reduce((sum, angle) => sum + angle, 0)).toBeCloseTo(9 * 180, 6);
  });
});

describe('what cannot be determined', () => {
  it('a net without enough readings is called undetermined, not guessed', () => {
    const network = networkOf(surveyOf(5, 1, 0));
    const walls = network.observations.filter(({ kind }) => kind === 'wall');
    expect(adjustNetwork({ ...network, observations: walls })).toBe('undetermined');
    // Enough in number, but all of one corner.
    expect(adjustNetwork({ ...network, observations: [...walls, ...walls, ...walls] })).toBe('undetermined');
  });

  it('corners that are mere guesses leave wide bands, and the diagonal is the reading to take', () => {
    const guess = { corner: 90, cornerDeviation: 5 } as const;
    const room = roomFromTape({ walls: [5000, 4000, 5000, 4000].map((length) => ({ length, ...guess })) });
    expect(Math.max(...room.walls.map(({ band }) => band))).toBeGreaterThan(100);
    expect(room.next[0].reading).toMatch(/^diagonal/);
    expect(room.next[0].after).toBeLessThan(10);
  });
});
