import { readFile, writeFile } from 'node:fs/promises';
import { EXIT } from './cli/io.js';
import { runCli } from './cli/run.js';
import * as elbowroom from './index.js';

/** A reader that goes away early, such as `head`, is no error: the rest is left unsaid. */
function quietOnClosedPipe(error: NodeJS.ErrnoException): void {
  if (error.code === 'EPIPE') process.exit(process.exitCode ?? EXIT.fits);
  throw error;
}

process.stdout.on('error', quietOnClosedPipe);
process.stderr.on('error', quietOnClosedPipe);

async function readStdin(): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of process.stdin) chunks.push(chunk);
  return Buffer.concat(chunks);
}

/** From the package's own description, which lies one folder up in the source as in the build. */
async function version(): Promise<string> {
  const text = await readFile(new URL('../package.json', import.meta.url), 'utf8');
  const found: { version?: unknown } = JSON.parse(text);
  return String(found.version);
}

process.exitCode = await runCli(
  process.argv.slice(2),
  {
    readFile: (path) => readFile(path),
    writeFile: (path, text) => writeFile(path, text),
    readStdin,
    stdinIsTty: process.stdin.isTTY === true,
    stderrIsTty: process.stderr.isTTY === true,
    writeOut: (text) => void process.stdout.write(text),
    writeError: (text) => void process.stderr.write(text),
    version,
    debug: (process.env.ELBOWROOM_DEBUG ?? '') !== '',
  },
  { ...elbowroom, tables: Object.values(elbowroom.TABLES) },
);
