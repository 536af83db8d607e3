/** Hundreds of rooms on all cores: each worker takes every n-th room and answers with one line a room. */
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { assessFit, type Verdict } from 'elbowroom';

const ROOMS = 60;

interface Answer {
  readonly room: number;
  readonly verdict: Verdict;
  readonly longestCue: number;
}

/** Rooms from 4 x 3 m to 7 x 5 m with a bay, by number, so that every worker makes its own. */
function roomOf(i: number) {
  const length = 4000 + (i % 10) * 330;
  const width = 3000 + Math.floor(i / 10) * 400;
  return {
    outline: [
      [0, 0],
      [length, 0],
      [length, width],
      [length * 0.7, width],
      [length * 0.6, width + 500],
      [length * 0.4, width + 500],
      [length * 0.3, width],
      [0, width],
    ],
  } as const;
}

function answer(room: number): Answer {
  const { verdict, clearance } = assessFit({ room: roomOf(room), table: 'pool-7ft-bar', cues: ['57 in'] });
  return { room, verdict, longestCue: Math.floor(clearance.longestCue) };
}

function isAnswer(value: unknown): value is Answer {
  return typeof value === 'object' && value !== null && 'room' in value && 'verdict' in value;
}

if (isMainThread) {
  const workers = Math.max(2, availableParallelism());
  const answers: Answer[] = [];
  const shares = Array.from({ length: workers }, (_, first) => {
    const worker = new Worker(fileURLToPath(import.meta.url), { workerData: { first, step: workers } });
    worker.on('message', (message: unknown) => {
      if (isAnswer(message)) answers.push(message);
    });
    return new Promise<void>((resolve, reject) => {
      worker.on('error', reject);
      worker.on('exit', () => resolve());
    });
  });
  await Promise.all(shares);
  answers.sort((a, b) => a.room - b.room);
  const clear = answers.filter(({ verdict }) => verdict === 'clear').length;
  // The same answers as one after the other: each depends on its room alone.
  const alone = Array.from({ length: ROOMS }, (_, i) => answer(i));
  if (JSON.stringify(answers) !== JSON.stringify(alone)) throw new Error('never');
  console.log(`${answers.length} rooms, ${clear} of them clear for a 57 in cue`);
} else {
  const { first, step }: { first: number; step: number } = workerData;
  for (let i = first; i < ROOMS; i += step) parentPort?.postMessage(answer(i));
}
