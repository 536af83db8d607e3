import { describe, expect, it } from 'vitest';
import {
  assessFit,
  compareTables,
  describeComparison,
  describeFit,
  describeTapedRoom,
  roomFromTape,
} from '../../src/index.js';
import type { Limit, SurveyNote } from '../../src/report/fit-report.js';
import type { TapeSurvey } from '../../src/room/tape-input.js';
import { sampleReport } from './sample-report.js';

const flat = (text: string): string => text.replace(/\s+/g, ' ');

const NOTE: SurveyNote = {
  unitDeviation: 0.9,
  contradictory: false,
  suspect: null,
  next: [{ reading: 'diagonal A-C', now: 14.2, after: 8.1 }],
};
const LIMIT: Limit = {
  name: 'wall C-D',
  kind: 'wall',
  distance: 1620,
  needed: 1623,
  spare: -3,
  share: 0.02,
  witness: null,
  measureAgain: true,
  repeat: [
    { reading: 'wall D-A', band: 7.2 },
    { reading: 'diagonal B-D', band: 7.9 },
  ],
};

describe('the words for a room by tape readings', () => {
  it('say what certain means', () => {
    const text = flat(describeFit(sampleReport({ certain: true, confidence: 0.95, survey: NOTE })));
    expect(text).toContain('in at least 95 of 100 measurings of this kind no wrong answer');
    expect(text).not.toContain('off by as much as the tolerance');
    // There is nothing to measure where the answer is sure.
    expect(text).not.toContain('The reading to take next');
  });

  it('name the readings to repeat and the one to take next where it is close', () => {
    const report = sampleReport({
      verdict: 'tight',
      certain: false,
      confidence: 0.95,
      survey: NOTE,
      limits: [LIMIT],
    });
    const text = flat(describeFit(report));
    expect(text).toContain('It is close: another measuring of this kind');
    expect(text).toContain('The answer hangs on wall C-D: measure it again.');
    expect(text).toContain('repeat wall D-A (then known to 8 mm) or diagonal B-D (then known to 8 mm)');
    expect(text).toContain('The reading to take next is diagonal A-C');
    expect(text).toContain('known to 15 mm now, to 9 mm then');
    const none = { ...LIMIT, distance: 0, needed: 0, spare: -3 };
    expect(flat(describeFit({ ...report, verdict: 'none', pose: null, limits: [none] }))).toContain(
      'What helps most is to repeat wall D-A',
    );
  });

  it('begin with readings that contradict each other, whatever the answer', () => {
    const suspect = {
      reading: 'wall A-B',
      kind: 'wall',
      read: 6400,
      expected: 6003.4,
      standardized: 60,
      orElse: ['wall C-D'],
    } as const;
    const survey: SurveyNote = { ...NOTE, unitDeviation: 21.3, contradictory: true, suspect };
    const text = flat(describeFit(sampleReport({ certain: true, confidence: 0.95, survey })));
    expect(text).toMatch(
      /^First of all: the readings of this room contradict each other, by about 21\.3 times/,
    );
    expect(text).toContain(
      'One reading is probably wrong: wall A-B, given as 6400 mm; by all the others it would be about 6003 mm.',
    );
    expect(text).toContain('It may as well be wall C-D');
    const corner = { ...suspect, reading: 'corner B', kind: 'corner', read: 90, expected: 93.25 } as const;
    const aside = { ...survey, contradictory: false, suspect: corner };
    expect(flat(describeFit(sampleReport({ survey: aside, confidence: 0.95 })))).toMatch(
      /^One reading is probably wrong: corner B, given as 90 degrees; by all the others it would be about 93\.3 degrees\./,
    );
  });

  it('print names that cannot move a cursor', () => {
    const suspect = {
      reading: 'wall \u001b[2J-B',
      kind: 'wall',
      read: 1,
      expected: 2,
      standardized: 4,
      orElse: [],
    } as const;
    const text = describeFit(sampleReport({ confidence: 0.95, survey: { ...NOTE, suspect } }));
    expect(text).not.toContain('\u001b');
  });
});

const tape: TapeSurvey = {
  walls: [{ length: 6000 }, { length: 5004 }, { length: 6003 }, { length: 4998 }],
  diagonals: [
    { from: 'A', to: 'C', length: 7810 },
    { from: 'B', to: 'D', length: 7812 },
  ],
  heights: [2500, 2490],
};

describe('a room that was measured, in sentences', () => {
  const lines = (text: string): void => {
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    expect(text.endsWith('\n')).toBe(true);
  };

  it('tells corners, walls with their bands, the ceiling and what to measure next', () => {
    const room = roomFromTape(tape);
    const text = describeTapedRoom(room);
    lines(text);
    expect(text).toMatch(/^The readings agree/);
    expect(text).toContain('- A: x = 0 mm, y = 0 mm');
    for (const { name, band } of room.walls) {
      expect(text).toMatch(new RegExp(`- ${name}: \\d+.mm long, known to ${Math.ceil(band - 1e-6)}.mm`));
    }
    expect(text).toMatch(/2490.mm high/);
    expect(text).toContain(room.next[0].reading);
    for (const assumption of room.assumptions) expect(flat(text)).toContain(assumption);
  });

  it('tells which readings nothing checks', () => {
    const { walls } = tape;
    const text = flat(describeTapedRoom(roomFromTape({ walls })));
    expect(text).toContain('a slip in these would go unseen - wall A-B, wall B-C, wall C-D and wall D-A');
  });

  it('begins with what is wrong', () => {
    const room = roomFromTape({ ...tape, walls: [{ length: 6400 }, ...tape.walls.slice(1)] });
    expect(room.contradictory).toBe(true);
    const text = describeTapedRoom(room, { units: 'ftin' });
    lines(text);
    expect(flat(text)).toMatch(/^The readings contradict each other, by about [\d.]+ times what is usual\./);
    expect(flat(text)).toContain('One reading is probably wrong: wall A-B, given as 21 ft;');
    expect(text).not.toMatch(/\d.mm long/);
  });

  it('is what the answers about it say as well', () => {
    const slip = { ...tape, walls: [{ length: 6400 }, ...tape.walls.slice(1)] };
    const fit = flat(describeFit(assessFit({ room: { tape: slip }, table: 'pool-7ft-bar' })));
    expect(fit).toMatch(/^First of all: the readings of this room contradict each other/);
    const comparison = flat(
      describeComparison(compareTables({ room: { tape: slip }, tables: ['pool-7ft-bar'] })),
    );
    expect(comparison).toMatch(/^First of all: the readings of this room contradict each other/);
    expect(comparison).toContain('In at least 95 of 100 measurings of this kind');
  });
});
