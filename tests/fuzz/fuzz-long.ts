import { pathToFileURL } from 'node:url';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { prototypesAsTheyAre } from './plain.js';
import { runsOf, TARGETS } from './targets.js';

/**
 * The fuzz at full size: `npx tsx tests/fuzz/fuzz-long.ts [seed] [runs] [part of a target's name]`. Default: 100,000 runs over all
 * targets. Prints every shrunk counterexample with the command that repeats it, and ends with an error if there is any.
 *
 * The runs happen in a worker, which says what it begins; if nothing was heard of it for too long, it hangs, and that is told too.
 */
const BATCH = 50;
/** A guard against hanging only: a batch takes some seconds, and the machine may be loaded. */
const HANGING = 300_000;

interface Job {
  readonly seed: number;
  readonly runs: number;
  readonly only: string;
}

type Message =
  | { readonly kind: 'begins'; readonly name: string; readonly seed: number; readonly numRuns: number }
  | {
      readonly kind: 'failed';
      readonly name: string;
      readonly seed: number;
      readonly numRuns: number;
      readonly words: string;
    }
  | {
      readonly kind: 'target';
      readonly name: string;
      readonly runs: number;
      readonly seconds: number;
      readonly slowest: number;
    };

function work({ seed, runs, only }: Job, say: (message: Message) => void): void {
  for (const target of TARGETS.filter(({ name }) => name.includes(only))) {
    const all = runsOf(target, runs);
    const start = performance.now();
    let slowest = 0;
    for (let done = 0; done < all; done += BATCH) {
      const how = { seed: seed * 100_000 + done / BATCH, numRuns: Math.min(BATCH, all - done) };
      say({ kind: 'begins', name: target.name, ...how });
      const before = performance.now();
      const prototypes = prototypesAsTheyAre();
      try {
        target.run(how);
        if (prototypesAsTheyAre() !== prototypes) throw new Error('A prototype was changed.');
      } catch (error) {
        const words = [error, error instanceof Error ? error.cause : undefined]
          .map((e) => (e instanceof Error ? (e.stack ?? e.message).slice(0, 4000) : ''))
          .join('\n');
        say({ kind: 'failed', name: target.name, ...how, words });
      }
      slowest = Math.max(slowest, performance.now() - before);
    }
    say({
      kind: 'target',
      name: target.name,
      runs: all,
      seconds: (performance.now() - start) / 1000,
      slowest: slowest / 1000,
    });
  }
}

/** Repeats one batch in this thread: `--batch seed runs 'name of the target'`. */
function repeat(seed: number, numRuns: number, name: string): void {
  for (const target of TARGETS.filter((one) => one.name === name)) target.run({ seed, numRuns });
}

function watch(job: Job): void {
  // A worker knows nothing of TypeScript until it is told.
  const start = `import('tsx/esm/api').then(({ register }) => { register(); return import('${import.meta.url}'); });`;
  const worker = new Worker(start, { eval: true, workerData: job });
  let last = { at: performance.now(), words: 'nothing yet', again: '' };
  let failures = 0;
  let runs = 0;
  const guard = setInterval(() => {
    if (performance.now() - last.at < HANGING) return;
    console.log(`HANGS: ${last.words}\n  again: ${last.again}`);
    process.exit(1);
  }, 1000);
  worker.on('message', (message: Message) => {
    if (message.kind === 'target') {
      runs += message.runs;
      console.log(
        `${String(message.runs).padStart(7)} runs ${message.seconds.toFixed(1).padStart(7)} s, slowest ${BATCH} ${message.slowest.toFixed(1)} s  ${message.name}`,
      );
      return;
    }
    const again = `npx tsx tests/fuzz/fuzz-long.ts --batch ${message.seed} ${message.numRuns} '${message.name}'`;
    if (message.kind === 'begins') last = { at: performance.now(), words: message.name, again };
    else {
      failures++;
      console.log(`FAILED: ${message.name}\n${message.words}\n  again: ${again}`);
    }
  });
  worker.on('error', (error) => {
    failures++;
    console.log(`DIED: ${last.words}: ${error.stack ?? error.message}\n  again: ${last.again}`);
  });
  worker.on('exit', () => {
    clearInterval(guard);
    console.log(`${runs} runs, ${failures} failures`);
    if (failures > 0) process.exitCode = 1;
  });
}

if (!isMainThread && parentPort !== null) {
  const port = parentPort;
  work(workerData, (message) => port.postMessage(message));
} else if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const [first = '1', second, third = ''] = process.argv.slice(2);
  if (first === '--batch') repeat(Number(second), Number(third), process.argv[5] ?? '');
  else watch({ seed: Number(first), runs: Number(second ?? 100_000), only: third });
}
