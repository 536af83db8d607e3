import { pathToFileURL } from 'node:url';
import { type ArrangeQuestion, arrange } from '../src/arrangement/arrange.js';
import { assessFit } from '../src/assess-fit.js';
import { fitQuestion } from '../src/check-fit-input.js';
import { TABLES } from '../src/equipment/tables.js';
import type { FitInput } from '../src/fit-input.js';
import { signedArea } from '../src/geometry/ring.js';
import { findPlace } from '../src/placement/find-place.js';
import { checkedRoom } from '../tests/helpers/external-rooms.js';
import { openRooms } from '../tests/helpers/open-rooms.js';
import { anneal } from './annealing-peer.js';

/**
 * How long does it take to place a table and six pieces in a room of 40 m2? And how good are the layouts, set beside plain simulated annealing
 * (annealing-peer.ts) that is given the same time and the same judge, in ten real rooms (tests/fixtures/rooms, see its notice)? The value is that of
 * `ArrangementValue`: 1000 for all pieces placed and reached, 100 for all shots open, 5 for no sharing.
 */
const PIECES = ['darts', 'sofa', 'cupboard', 'cue-rack', 'bar', 'music-machine'].map((kind) => ({ kind }));
const TABLE = 'pool-7ft-bar';
const ROOMS = 10;
const SEEDS = [1, 2, 3];

const FORTY: readonly (readonly [name: string, room: FitInput['room']])[] = [
  [
    '7.2 x 5.6 m',
    {
      outline: [
        [0, 0],
        [7200, 0],
        [7200, 5600],
        [0, 5600],
      ],
      ceiling: 2500,
      doors: [{ hinge: [0, 5000], latch: [0, 4100], opens: 'in' }],
    },
  ],
  [
    'L of 40 m2',
    {
      outline: [
        [0, 0],
        [7600, 0],
        [7600, 4600],
        [4200, 4600],
        [4200, 5900],
        [0, 5900],
      ],
      ceiling: 2500,
      doors: [
        { hinge: [0, 5000], latch: [0, 4100], opens: 'in' },
        { hinge: [7600, 1000], latch: [7600, 1900], opens: 'out' },
      ],
    },
  ],
];

export function run(): Promise<void> {
  for (const [name, room] of FORTY) {
    const input: FitInput = { room, table: TABLE, cues: ['57 in'], furnishings: PIECES };
    const asked = questionOf(input);
    const alone = times(5, () => arrange(asked));
    const whole = times(3, () => assessFit(input));
    const bare = times(5, () => assessFit({ room, table: TABLE, cues: ['57 in'] }));
    console.log(
      `${name}, table and ${PIECES.length} pieces: arrange ${alone}, assessFit ${whole}, without pieces ${bare}; value ${arrange(asked).value.value.toFixed(2)}`,
    );
  }
  console.log(
    '\nroom          area   ours: value, time     annealing at that time, at 4 times it (median, best of 3 seeds)',
  );
  let [better, equal, worse] = [0, 0, 0];
  for (const [id, room] of realRooms()) {
    const asked = questionOf({ room, table: TABLE, cues: ['57 in'], furnishings: PIECES });
    const start = performance.now();
    const ours = arrange(asked).value.value;
    const spent = performance.now() - start;
    const peers = (time: number) =>
      SEEDS.map((seed) => anneal(asked, time, seed).value).sort((a, b) => a - b);
    const [same, longer] = [peers(spent), peers(4 * spent)];
    const median = same[1] ?? 0;
    if (ours > median + 1e-6) better++;
    else if (ours > median - 1e-6) equal++;
    else worse++;
    const say = (list: readonly number[]) => `${(list[1] ?? 0).toFixed(2)} ${(list[2] ?? 0).toFixed(2)}`;
    const area = (signedArea(asked.scene.outline) / 1e6).toFixed(1);
    console.log(
      `${id.padEnd(12)} ${area.padStart(5)}   ${ours.toFixed(2)} ${spent.toFixed(0).padStart(6)} ms   ${say(same).padStart(16)}   ${say(longer).padStart(16)}`,
    );
  }
  console.log(`ours better in ${better}, equal in ${equal}, worse in ${worse} of ${ROOMS}`);
  return Promise.resolve();
}

function questionOf(input: FitInput): ArrangeQuestion {
  const { scene, table, stroke, cues, pose, arrangement, search } = fitQuestion(input);
  if (arrangement === null) throw new Error('There are pieces.');
  const { gap, maxBoxes, turns } = search;
  return { scene, table, stroke, cue: cues[0], pose, arrangement, search: { gap, maxBoxes, turns } };
}

/** The first rooms of the data of 25 to 60 m2 with doors in which the table can stand, and play is not hopeless. */
function realRooms(): readonly (readonly [id: string, room: FitInput['room']])[] {
  const found: (readonly [string, FitInput['room']])[] = [];
  for (const open of openRooms) {
    if (found.length === ROOMS) break;
    const { id, input, problems } = checkedRoom(open, TABLE);
    if (problems.length > 0 || (input.doors ?? []).length === 0) continue;
    const { scene, stroke, cues, search } = fitQuestion({ room: input, table: TABLE, cues: ['57 in'] });
    const area = signedArea(scene.outline) / 1e6;
    if (area < 25 || area > 60) continue;
    const { gap, maxBoxes, turns } = search;
    const { pose } = findPlace({
      scene,
      table: TABLES[TABLE],
      stroke,
      cues,
      search: { gap, maxBoxes, turns },
    });
    if (pose !== null) found.push([id, input]);
  }
  return found;
}

/** Best and median of some runs, ms. */
function times(count: number, work: () => unknown): string {
  const taken = Array.from({ length: count }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return `${(taken[0] ?? 0).toFixed(0)} ms best, ${(taken[count >> 1] ?? 0).toFixed(0)} ms median`;
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) await run();
