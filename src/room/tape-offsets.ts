import { DEFAULTS } from '../equipment/defaults.js';
import { writeMm } from '../equipment/read-plausible.js';
import { at, type ProblemList } from '../length/read-input.js';
import { TAPE_LIMITS } from './tape-limits.js';
import { cornerName } from './tape-names.js';
import type { Observation } from './tape-observations.js';
import type { CheckedReading } from './tape-readings.js';
import type { CheckedOffset, CheckedSurvey } from './tape-survey.js';

/** An offset with the wall that it breaks and its place in the order along the wall: its corners are 4 place + 1 to 4 place + 4. */
export interface PlacedOffset {
  readonly offset: CheckedOffset;
  readonly place: number;
}

/** The offsets of each wall from its start on; adds a problem for each that is not within its wall or runs into another. */
export function placeOffsets(
  { walls, offsets }: CheckedSurvey,
  problems: ProblemList,
): readonly (readonly PlacedOffset[])[] {
  return walls.map(({ from, reading }) => {
    const own = offsets.filter(({ wall }) => wall === from).sort((a, b) => a.start.length - b.start.length);
    let end = 0;
    let before = 'the corner';
    for (const offset of own) {
      const { start, width, path } = offset;
      const label = offsetLabel(offset);
      const beside = TAPE_LIMITS.besideOffset;
      if (start.length < end + beside) {
        problems.add(
          at(path, 'start'),
          'offsets-overlap',
          `The ${label} starts ${writeMm(start.length)} from corner ${from}, but ${before} ends at ${writeMm(end)}; at least ${writeMm(beside)} of wall must be between them. What goes into a corner is given wall by wall.`,
        );
      }
      end = start.length + width.length;
      before = `the ${label}`;
      if (end + beside > reading.length) {
        problems.add(
          at(path, 'width'),
          'offset-too-wide',
          `The ${label} ends ${writeMm(end)} from corner ${from}, but the wall is only ${writeMm(reading.length)} long; at least ${writeMm(beside)} of it must be left. What goes into a corner is given wall by wall.`,
        );
      }
    }
    return own.map((offset, place) => ({ offset, place }));
  });
}

export function offsetLabel({ kind, name, wall }: CheckedOffset): string {
  return name ?? `${kind} on the wall from ${wall}`;
}

/** Its four corners, in the order of the walk: `A1` to `A4`, and after a name that ends in a digit `12.1` to `12.4`. */
export function offsetCornerNames({ offset: { wall }, place }: PlacedOffset): readonly string[] {
  const stem = /\d$/.test(wall) ? `${wall}.` : wall;
  return [1, 2, 3, 4].map((k) => `${stem}${4 * place + k}`);
}

/** Where its corners are on the wall that runs from (x, y) along the unit vector (ux, uy), before the adjustment: x, y, x, y, ... */
export function offsetStart(
  { kind, start, width, depth, front }: CheckedOffset,
  clockwise: boolean,
  [x, y]: readonly [number, number],
  [ux, uy]: readonly [number, number],
): readonly number[] {
  const inset = (width.length - (front ?? width).length) / 2;
  // The room lies to the right of a clockwise walk.
  const side = (clockwise ? -1 : 1) * (kind === 'breast' ? depth.length : -depth.length);
  const place = (along: number, across: number): number[] => [
    x + along * ux - across * uy,
    y + along * uy + across * ux,
  ];
  const [first, last] = [start.length, start.length + width.length];
  return [...place(first, 0), ...place(first + inset, side), ...place(last - inset, side), ...place(last, 0)];
}

/**
 * Its readings, and what is assumed of it: both ends on the line of the wall, the sides equally long, and either square to it
 * or, of a bay with a front of its own, that front along the wall. Eight of them make its four corners; the rest of the wall
 * checks them.
 *
 * `points`: indices of the wall's two corners and of its own four.
 */
export function offsetObservations(
  placed: PlacedOffset,
  clockwise: boolean,
  points: readonly [a: number, b: number, p: number, q: number, r: number, s: number],
): Observation[] {
  const { offset } = placed;
  const { kind, start, width, depth, front, rest } = offset;
  const { straightDeviation, squareDeviation, depthDeviation, bayDeviation } = DEFAULTS.survey;
  const [a, b, p, q, r, s] = points;
  const label = offsetLabel(offset);
  const names = offsetCornerNames(placed);
  const straight = (corner: number, name: string): Observation => ({
    name: `${name} in line with the wall`,
    kind: 'offset',
    by: 'assumed',
    form: 'line',
    points: [a, b, corner],
    read: 0,
    deviation: straightDeviation,
    source: null,
  });
  const square = (name: string, read: number, vectors: readonly number[]): Observation => ({
    name,
    kind: 'corner',
    by: 'assumed',
    form: 'angle',
    points: clockwise ? vectors : [vectors[2], vectors[3], vectors[0], vectors[1]],
    read,
    deviation: (squareDeviation * Math.PI) / 180,
    source: null,
  });
  const distance = (what: string, from: number, to: number, reading: CheckedReading): Observation =>
    read(`${what} ${label}`, 'distance', [from, to], reading);

  const out = [
    distance('start of', a, p, start),
    distance('width of', p, s, width),
    straight(p, names[0]),
    straight(s, names[3]),
  ];
  const alike = (deviation: number): Observation => ({
    name: `sides of ${label} alike`,
    kind: 'offset',
    by: 'assumed',
    form: 'difference',
    points: [p, q, s, r],
    read: 0,
    deviation,
    source: null,
  });
  if (front === null) {
    const floor = kind === 'breast' ? Math.PI / 2 : (3 * Math.PI) / 2;
    out.push(
      distance('depth of', p, q, depth),
      square(cornerName(names[0]), floor, [b, a, p, q]),
      square(cornerName(names[3]), floor, [s, r, a, b]),
      alike(depthDeviation),
    );
  } else {
    out.push(
      // Left of a clockwise walk is out of the room.
      read(`depth of ${label}`, 'line', clockwise ? [p, s, q] : [s, p, q], depth),
      distance('front of', q, r, front),
      square(`front of ${label} along the wall`, 0, [a, b, q, r]),
      alike(bayDeviation),
    );
  }
  if (rest !== null) out.push(distance('rest of the wall after', s, b, rest));
  return out;
}

function read(
  name: string,
  form: Observation['form'],
  points: readonly number[],
  reading: CheckedReading,
): Observation {
  const { length, deviation, by } = reading;
  return { name, kind: 'offset', by, form, points, read: length, deviation, source: reading };
}

/** What was assumed of the offsets, in sentences. */
export function offsetAssumptions(offsets: readonly CheckedOffset[]): string[] {
  if (offsets.length === 0) return [];
  const { straightDeviation, squareDeviation, depthDeviation, bayDeviation } = DEFAULTS.survey;
  const sentences = [
    `Alcoves, chimney breasts and bays are taken to break a straight wall: its parts in line (standard deviation ${writeMm(straightDeviation)}).`,
  ];
  if (offsets.some(({ front }) => front === null)) {
    sentences.push(
      `Their sides are taken to be square to the wall (${squareDeviation} degrees) and equally deep (${writeMm(depthDeviation)}).`,
    );
  }
  if (offsets.some(({ front }) => front !== null)) {
    sentences.push(
      `The front of a bay is taken to run along its wall (${squareDeviation} degrees) between equally long sides (${writeMm(bayDeviation)}).`,
    );
  }
  return sentences;
}
