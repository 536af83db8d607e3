import { checkRoom, type Finding, type RoomQuestion, type Scrutiny } from '../helpers/external-check-room.js';
import { SMALL_TABLE } from '../helpers/external-furnished.js';
import { checkedRoom } from '../helpers/external-rooms.js';
import { openRooms } from '../helpers/open-rooms.js';

/**
 * `npx tsx tests/external/all-rooms.ts [part] [of]`: every real room and two tables against the slow second opinion, closer than
 * the tests look; or only the part-th of so many parts. Prints every disagreement and the counts.
 */
const QUESTIONS: readonly RoomQuestion[] = [
  { table: 'pool-7ft-bar', cues: [1448, 1219] },
  { table: SMALL_TABLE, cues: [1219, 914] },
];
const SCRUTINY: Scrutiny = { step: 200, turns: 12, improved: 8, shots: 60 };

const [part = 0, of = 1] = process.argv.slice(2).map(Number);
const start = performance.now();
const rooms = openRooms.filter((_, i) => i % of === part).map((room) => checkedRoom(room, 'pool-7ft-bar'));
const verdicts = new Map<string, number>();
const gains: number[] = [];
const libraryTimes: number[] = [];
let compared = 0;
let unsure = 0;
let wrong = 0;
for (const room of rooms) {
  for (const question of QUESTIONS) {
    let finding: Finding;
    try {
      const before = performance.now();
      checkRoom(room, question, null);
      libraryTimes.push(performance.now() - before);
      finding = checkRoom(room, question, SCRUTINY);
    } catch (error) {
      wrong++;
      console.log(`${room.id}: ${error instanceof Error ? error.stack : String(error)}`);
      continue;
    }
    const { report } = finding;
    for (const cue of report.cues) {
      const key = `${cue.verdict}, ${cue.certain ? 'certain' : 'not certain'}, by ${cue.proof}`;
      verdicts.set(key, (verdicts.get(key) ?? 0) + 1);
    }
    compared += finding.compared;
    unsure += finding.unsure;
    if (finding.slowGain !== null) gains.push(finding.slowGain);
    if ((finding.slowGain ?? 0) > 0.02) console.log(`(${room.id}, ${report.table.name}: better elsewhere)`);
    wrong += finding.wrong.length;
    for (const what of finding.wrong) console.log(what);
  }
}

console.log(`${rooms.length} rooms, ${rooms.length * QUESTIONS.length} reports, ${wrong} disagreements`);
for (const [key, count] of [...verdicts].sort()) console.log(`  ${count} x ${key}`);
console.log(`${compared} shots compared one by one, ${unsure} too near a threshold for the steps`);
gains.sort((a, b) => b - a);
const better = gains.filter((gain) => gain > 0.02);
console.log(
  `${gains.length} places not clear: the slow search's place of most clearance has over 2 % more playable shots in ${better.length}, at most ${((gains[0] ?? 0) * 100).toFixed(1)} %`,
);
libraryTimes.sort((a, b) => a - b);
const at = (share: number): string => libraryTimes[Math.floor(share * (libraryTimes.length - 1))].toFixed(1);
console.log(`assessFit: median ${at(0.5)} ms, 95 % ${at(0.95)} ms, most ${at(1)} ms`);
console.log(`${((performance.now() - start) / 1000).toFixed(0)} s`);
