import { readdirSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
import { dirname } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

/**
 * `npm run bench [word...]`: runs every bench/*.bench.ts, one after the other, or those with one of the words in their name.
 * Each file answers one question against a named peer in the same run and prints its own results.
 */
const folder = dirname(fileURLToPath(import.meta.url));
const words = process.argv.slice(2);
const names = readdirSync(folder)
  .filter((name) => name.endsWith('.bench.ts'))
  .filter((name) => words.length === 0 || words.some((word) => name.includes(word)))
  .sort();

const [cpu] = cpus();
console.log(
  `Node ${process.version} (V8 ${process.versions.v8}), ${process.platform} ${process.arch}, ` +
    `${cpus().length} x ${cpu?.model.trim() ?? 'unknown processor'}, ${(totalmem() / 2 ** 30).toFixed(0)} GiB`,
);
if (names.length === 0) {
  console.error(`No bench in ${folder} matches ${words.join(' ') || 'anything'}.`);
  process.exitCode = 1;
}

for (const name of names) {
  console.log(`\n# ${name.replace(/\.bench\.ts$/, '')}`);
  const bench: unknown = await import(pathToFileURL(`${folder}/${name}`).href);
  if (!hasRun(bench)) throw new TypeError(`bench/${name} does not export run().`);
  const start = performance.now();
  await bench.run();
  console.log(`(${((performance.now() - start) / 1000).toFixed(1)} s)`);
}

function hasRun(module: unknown): module is { run: () => Promise<void> } {
  return typeof module === 'object' && module !== null && 'run' in module && typeof module.run === 'function';
}
