import { describe, expect, it } from 'vitest';
import { type ArrangementReport, assessFit, type FitInput, type FitReport } from '../../src/index.js';
import { somePieces, someRoom } from '../arrangement/arrange-cases.js';
import { randomNumbers } from '../placement/rooms.js';
import { differences } from './differences.js';
import { withNudgedMath } from './nudged-math.js';

/** Rooms with other pieces: where layouts are worth the same, any of them is an answer, but never one that is worth less. */
const SAME_VALUE = 1e-6;

/** A room twice as symmetric as its pieces: every layout has equals in its mirror images. */
const even: FitInput = {
  room: {
    outline: [
      [0, 0],
      [6400, 0],
      [6400, 5000],
      [0, 5000],
    ],
    doors: [{ hinge: [2750, 0], latch: [3650, 0], opens: 'out' }],
    obstacles: [
      { name: 'left post', footprint: { center: [150, 4850], diameter: 200 } },
      { name: 'right post', footprint: { center: [6250, 4850], diameter: 200 } },
      { name: 'shelf', footprint: { center: [3200, 4900], length: 900, width: 200 }, from: 1600, to: 1900 },
    ],
    ceiling: 2600,
  },
  table: 'pool-7ft-bar',
  cues: ['57 in', '48 in'],
  furnishings: [{ kind: 'sofa' }, { kind: 'cue-rack' }, { kind: 'stool' }, { kind: 'stool' }],
  arrangement: { effort: 16 },
};

function randomInputs(count: number): readonly FitInput[] {
  const random = randomNumbers(20_251_215);
  return Array.from({ length: count }, (_, i): FitInput => {
    const room = someRoom(random, [4200, 3800], [7500, 6200]);
    return {
      room,
      table: 'pool-7ft-bar',
      cues: ['57 in'],
      furnishings: somePieces(random, 1 + (i % 4)),
      arrangement: { effort: 16 },
    };
  });
}

const inputs = [even, ...randomInputs(6)];

function arranged(report: FitReport): ArrangementReport {
  if (report.arrangement === undefined) throw new Error('There are pieces.');
  return report.arrangement;
}

/** What holds of a room with its pieces wherever among equals they are put. */
function worth(report: FitReport): unknown {
  const { value, bounds, complete, pieces, layouts, stopped } = arranged(report);
  return {
    value,
    bounds,
    complete,
    layouts,
    stopped,
    fits: pieces.map(({ name, fits }) => ({ name, fits })),
  };
}

describe('the answer for a room with other pieces', () => {
  it('is the same to the byte when it is asked for again, with others in between', () => {
    const ask = (): readonly string[] => inputs.slice(0, 3).map((input) => JSON.stringify(assessFit(input)));
    const first = ask();
    expect(ask()).toEqual(first);
    const [trip]: readonly FitInput[] = JSON.parse(JSON.stringify(inputs));
    expect(JSON.stringify(assessFit(trip))).toBe(first[0]);
  });

  it.each(inputs.map((input, i) => [i, input] as const))(
    'is worth the same on an engine with other last bits: room %i',
    (i, input) => {
      const here = assessFit(input);
      for (const seed of [1, 2]) {
        const there = withNudgedMath(randomNumbers(100 * i + seed), () => assessFit(input));
        expect(differences(worth(here), worth(there), SAME_VALUE)).toEqual([]);
        expect([there.verdict, there.certain]).toEqual([here.verdict, here.certain]);
      }
    },
  );

  it('is worth the same with the obstacles in another order', () => {
    for (const input of inputs) {
      const obstacles = 'outline' in input.room ? (input.room.obstacles ?? []) : [];
      if (obstacles.length < 2) continue;
      const here = assessFit(input);
      for (const other of [obstacles.toReversed(), [...obstacles.slice(1), obstacles[0]]]) {
        const there = assessFit({ ...input, room: { ...input.room, obstacles: other } });
        expect(differences(worth(here), worth(there), SAME_VALUE)).toEqual([]);
      }
    }
  });
});
