/**
 * The long run of `repeated-measuring.test.ts`: `npx tsx tests/repeated-measuring-long.ts [measurings of each case]`. Prints, for each
 * kind of room and each distance from the threshold, in how many per cent of all measurings the verdict was called certain, in
 * how many it was called certain and wrong, and in how many some wall left its band.
 */
import { measureAgainAndAgain, ROOM_KINDS } from './helpers/repeated-measuring.js';

const measurings = Number(process.argv[2] ?? 500);
const percent = (n: number, of: number): string => `${((100 * n) / of).toFixed(2).padStart(6)} %`;

let [worst, allWrong, allOut, all, certainFar, far] = [0, 0, 0, 0, 0, 0];
for (const [k, kind] of ROOM_KINDS.entries()) {
  for (const off of [
    -300, -260, -235, -225, -220, -217, -214, -211, -208, -200, -110, -90, -50, -30, -20, -16, -13, -11, -9,
    -7, -5, -2, 5, 20, 40, 90,
  ]) {
    let [certain, wrong, out] = [0, 0, 0];
    // Several true rooms of each kind.
    for (let room = 0; room < 5; room++) {
      const tally = measureAgainAndAgain(kind, off, measurings / 5, 1000 * k + 10 * Math.abs(off) + room);
      certain += tally.certain;
      wrong += tally.wrong;
      out += tally.outOfBand;
    }
    console.log(
      kind.name.padEnd(34),
      String(off).padStart(5),
      'mm: certain',
      percent(certain, measurings),
      ' certain and wrong',
      percent(wrong, measurings),
      ' out of band',
      percent(out, measurings),
    );
    worst = Math.max(worst, wrong / measurings);
    allWrong += wrong;
    allOut += out;
    all += measurings;
    if (kind.far.includes(off)) {
      certainFar += certain;
      far += measurings;
    }
  }
}
console.log(
  `${all} measurings; certain and wrong ${percent(allWrong, all)}, at worst ${percent(worst, 1)}; some wall out of its band ${percent(allOut, all)}; ` +
    `certain well off the threshold ${percent(certainFar, far)}`,
);
