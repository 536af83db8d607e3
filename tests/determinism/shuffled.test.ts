import { describe, expect, it } from 'vitest';
import {
  assessFit,
  classifyShot,
  type FitInput,
  type FitReport,
  roomFromTape,
  type TapeSurvey,
} from '../../src/index.js';
import { randomNumbers } from '../placement/rooms.js';
import { differences } from './differences.js';
import { EVEN_ROOMS, FURNISHED, type Question, realRooms } from './questions.js';

function shuffled<T>(list: readonly T[], random: () => number): T[] {
  const out = [...list];
  for (let i = out.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [out[i], out[j]] = [out[j], out[i]];
  }
  return out;
}

function withShuffledThings(input: FitInput, random: () => number): FitInput {
  const { room } = input;
  return {
    ...input,
    room: {
      ...room,
      ...(room.obstacles === undefined ? {} : { obstacles: shuffled(room.obstacles, random) }),
    },
  };
}

/**
 * Lists of limits and advice are ordered by what they are about: nearest first, best first. Among equals (things at the same
 * distance, moves with the same gain) the order of the input decides, and so it may differ here, as it does in sentences that list things.
 */
function inOrder(report: FitReport): unknown {
  const byText = <T>(list: readonly T[]): readonly T[] =>
    list.toSorted((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));
  return {
    ...report,
    limits: byText(report.limits),
    advice: byText(report.advice),
    // Sentences name things in the order of the input, and only the first few.
    assumptions: report.assumptions.length,
    cautions: report.cautions.map(({ code }) => code),
  };
}

const crowded = realRooms(1, 0).filter(({ input }) => (input.room.obstacles ?? []).length > 1);
const questions: readonly Question[] = [...FURNISHED, ...EVEN_ROOMS, ...crowded];

describe('the order of the obstacles', () => {
  it.each(questions)('changes nothing in the answer but the order among equals: $name', ({ input }) => {
    const random = randomNumbers(4711);
    const report = assessFit(input);
    for (let k = 0; k < 2; k++) {
      const other = assessFit(withShuffledThings(input, random));
      expect(other.limits.map((limit) => limit.distance)).toEqual(
        report.limits.map((limit) => limit.distance),
      );
      // Not even last bits: the same sums in the same order.
      expect(differences(inOrder(report), inOrder(other), 0)).toEqual([]);
    }
  });

  it('changes no shot', () => {
    const random = randomNumbers(3);
    for (const { input } of FURNISHED) {
      const { pose } = assessFit(input);
      if (pose === null) continue;
      for (let k = 0; k < 40; k++) {
        const shot = {
          ball: { x: 1500 * (random() - 0.5), y: 700 * (random() - 0.5) },
          direction: 360 * random(),
        };
        const ask = ({ room, table }: FitInput) => classifyShot({ room, table, pose, ...shot });
        const [one, other] = [ask(input), ask(withShuffledThings(input, random))];
        expect({ ...other, meets: other.meets.toSorted() }).toEqual({ ...one, meets: one.meets.toSorted() });
      }
    }
  });
});

describe('the order of a survey', () => {
  it('of its diagonals changes no corner by more than rounding', () => {
    const survey: TapeSurvey = {
      walls: [5003, 4001, 4998, 4004].map((length) => ({ length })),
      diagonals: [
        { from: 'A', to: 'C', length: 6405 },
        { from: 'B', to: 'D', length: 6404 },
        { from: 'A', to: 'C', length: 6407 },
      ],
    };
    const one = roomFromTape(survey).corners;
    const other = roomFromTape({ ...survey, diagonals: survey.diagonals?.toReversed() ?? [] }).corners;
    expect(differences(one, other, 1e-6)).toEqual([]);
  });
});
