import { describe, expect, it } from 'vitest';
import { checkRoom, type Finding, type RoomQuestion } from '../helpers/external-check-room.js';
import { FURNISHED_ROOMS, SMALL_TABLE } from '../helpers/external-furnished.js';
import { checkedRoom, plainRoom } from '../helpers/external-rooms.js';
import { openRooms } from '../helpers/open-rooms.js';

/**
 * Real room outlines (sources and licences in tests/fixtures/rooms/NOTICE.md), their heights as flat ceilings, their doors hung
 * and their fixtures in place. Every room is asked about two tables and the report checked against itself; a sample is checked
 * against a slow second opinion that shares no code with the library. tests/external/all-rooms.ts does so for all.
 */
const QUESTIONS: readonly RoomQuestion[] = [
  { table: 'pool-7ft-bar', cues: [1448, 1219] },
  { table: SMALL_TABLE, cues: [1219, 914] },
];
const rooms = openRooms.map((room) => checkedRoom(room, 'pool-7ft-bar'));
const good = rooms.filter((room) => room.problems.length === 0);
/** Those with fixtures, and every so many-th. */
const sample = good.filter((room, i) => room.slow.things.length > 0 || i % 16 === 5);

describe('real rooms', () => {
  it('are read, but for doors that are drawn wrong in the data', () => {
    expect(rooms).toHaveLength(551);
    expect(rooms.filter((room) => room.problems.length > 0).map((room) => [room.id, room.problems])).toEqual(
      [],
    );
    // Openings of more than 3 m, which are no leaves.
    const doors = rooms.flatMap((room) => room.badDoors);
    expect(doors).toHaveLength(3);
    expect(doors.filter((door) => !door.endsWith(' door-width'))).toEqual([]);
    expect(sample.length).toBeGreaterThanOrEqual(38);
  });

  it.each(QUESTIONS)('have reports without contradictions for table $table', (question) => {
    // One cue each: the sample below is asked about two.
    const asked = { ...question, cues: question.cues.slice(0, 1) };
    const wrong = good.flatMap((room) => checkRoom(room, asked, null).wrong);
    expect(wrong).toEqual([]);
  });

  it('agree with a slow second opinion, each for one of the tables', () => {
    const findings = sample.map(
      (room, i): Finding =>
        checkRoom(room, QUESTIONS[i % 2], { step: 500, turns: 3, improved: 3, shots: 25 }),
    );
    expect(findings.flatMap((finding) => finding.wrong)).toEqual([]);
    const compared = findings.reduce((sum, finding) => sum + finding.compared, 0);
    const unsure = findings.reduce((sum, finding) => sum + finding.unsure, 0);
    // The steps are fine enough to tell most shots.
    expect(unsure).toBeLessThan(compared / 20);
  });
});

describe('furnished rooms', () => {
  // Those without round or sloping things in a cue's way, which the slow opinion takes for polygons or does not know.
  const furnished = FURNISHED_ROOMS.filter(({ name }) => name === 'lounge' || name === 'garage');

  it.each(furnished)('agree with a slow second opinion: $name', ({ name, room }) => {
    for (const table of [SMALL_TABLE, 'pool-9ft']) {
      const { wrong, compared } = checkRoom(
        plainRoom(name, room),
        { table, cues: [1473.2, 1219.2] },
        { step: 600, turns: 2, improved: 2, shots: 70 },
      );
      expect(wrong).toEqual([]);
      expect(compared).toBeGreaterThan(55);
    }
  });
});
