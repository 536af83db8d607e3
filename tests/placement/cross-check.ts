import type { Ring, Size } from '../../src/geometry/types.js';
import { findPlacement } from '../../src/placement/find-placement.js';
import type { PlacementProblem } from '../../src/placement/placement-problem.js';
import { plainClearance, plainFrameDistance } from './plain-distance.js';
import { plainSearch } from './plain-search.js';
import { framed, irregular, problem, randomNumbers, rectangle, regular, turned } from './rooms.js';

export interface CrossCount {
  rooms: number;
  /** Rooms where the plain solver's own budget ran out: its bounds were compared all the same. */
  unfinished: number;
  standing: number;
  disagreements: string[];
}

/** A room with tall and low footprints that may overlap one another and stick out. */
export function crossRoom(random: () => number, k: number): PlacementProblem {
  const plays: Size[] = [
    { length: 2482.8, width: 1212.8 },
    { length: 1923.8, width: 933.8 },
    { length: 1500, width: 400 },
    { length: 1000, width: 1000 },
    { length: 900, width: 1800 },
  ];
  const play = plays[k % plays.length];
  // Every fifth room is hardly larger than the frame, or a little smaller.
  const [x, y] = [play.length / 2 + 100 + 200 * random(), play.width / 2 + 100 + 200 * random()];
  const outline =
    k % 5 === 3
      ? turned(rectangle(-x, -y, x, y), random())
      : k % 3 === 0
        ? turned(rectangle(-1300 - 1500 * random(), -900 - 1200 * random(), 1800, 1500), random())
        : irregular(
            4 + Math.floor(16 * random()),
            1500 + 1200 * random(),
            3200 + 2000 * random(),
            1e6 * random(),
          );
  const things = (most: number): Ring[] =>
    Array.from({ length: Math.floor((most + 1) * random()) }, () => {
      const x = (random() - 0.5) * 6000;
      const y = (random() - 0.5) * 5000;
      if (random() < 0.3) return regular(5, 100 + 300 * random(), x, y);
      const [halfX, halfY] = [80 + 500 * random(), 80 + 300 * random()];
      return turned(rectangle(x - halfX, y - halfY, x + halfX, y + halfY), 3 * random(), x, y);
    });
  const around = [169, 30, 300][k % 3];
  return problem(outline, play, things(3), things(3), framed(play, around));
}

/** Solves random rooms with the library and with the plain solver: the brackets of the two must overlap. */
export function crossCheck(seed: number, rooms: number, gap: number, plainBoxes: number): CrossCount {
  const random = randomNumbers(seed);
  const count: CrossCount = { rooms: 0, unfinished: 0, standing: 0, disagreements: [] };
  for (let k = 0; k < rooms; k++) {
    const room = crossRoom(random, k);
    const ours = findPlacement(room, { gap, maxBoxes: 200_000, turns: 'any' });
    const plain = plainSearch(room, gap, plainBoxes);
    count.rooms++;
    if (plain.boxes > plainBoxes) count.unfinished++;
    if (ours.pose !== null) count.standing++;
    const problems: string[] = [];
    if (ours.stopped) problems.push('stopped');
    if (ours.pose !== null && ours.upperBound - ours.value > gap + 1e-6) problems.push('gap');
    if (ours.pose === null && ours.upperBound !== 0) problems.push('no pose, yet a bound');
    if (ours.upperBound < plain.value - 1e-6) problems.push('bound below a plain value');
    if (ours.value > plain.upperBound + 1e-6) problems.push('value above the plain bound');
    if (ours.pose !== null) {
      if (Math.abs(plainClearance(room, ours.pose) - ours.value) > 1e-6)
        problems.push('value is not the clearance');
      // Touching counts as standing; the plain distance then is 0 or -1 by rounding.
      const shrunk = { ...room, frame: { length: room.frame.length - 4e-6, width: room.frame.width - 4e-6 } };
      if (!(plainFrameDistance(shrunk, ours.pose) > 0)) problems.push('the frame does not stand');
    }
    if (problems.length > 0) {
      count.disagreements.push(`${problems.join(', ')}: ${JSON.stringify({ k, seed, ours, plain, room })}`);
    }
  }
  return count;
}
