import { spawn } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const DEMO = join(ROOT, 'docs/examples/garden-room.json');
const folder = mkdtempSync(join(tmpdir(), 'elbowroom-cli-'));
const PROGRAM = join(folder, 'dist/cli.js');

// One bundle for all: starting the sources through a loader takes a second each time.
beforeAll(async () => {
  mkdirSync(join(folder, 'dist'));
  copyFileSync(join(ROOT, 'package.json'), join(folder, 'package.json'));
  await build({
    entryPoints: [join(ROOT, 'src/cli.ts')],
    bundle: true,
    platform: 'node',
    format: 'esm',
    outfile: PROGRAM,
    logLevel: 'silent',
  });
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Ended {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the program as a person would. */
function elbowroom(args: readonly string[], stdin = '', closeEarly = false): Promise<Ended> {
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, ['--import', 'tsx', join(ROOT, 'src/cli.ts'), ...args], {
      cwd: ROOT,
    });
    let out = '';
    let err = '';
    child.stdout.on('data', (chunk) => {
      out += String(chunk);
    });
    child.stderr.on('data', (chunk) => {
      err += String(chunk);
    });
    child.on('error', fail);
    child.on('close', (status) => done({ status, out, err }));
    if (closeEarly) child.stdout.destroy();
    child.stdin.end(stdin);
  });
}

describe('the program', { timeout: 60_000 }, () => {
  it('answers for the demo room in sentences', async () => {
    const { status, out, err } = await elbowroom([DEMO]);
    expect(err).toBe('');
    expect(status).toBe(0);
    // The room was made so that the usual cue has trouble and shorter ones have less.
    expect(out).toMatch(/^(Yes, but tight|Partly)\b/);
    expect(out).toMatch(/48 in\) cue: clear/);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  it('answers in JSON for a room that is piped in, and says no with status 1', async () => {
    const closet = '{"outline": [[0, 0], ["2 m", 0], ["2 m", "1 m"], [0, "1 m"]]}';
    const { status, out } = await elbowroom(['-', '--table', 'pool-9ft', '--json'], closet);
    expect(status).toBe(1);
    expect(JSON.parse(out)).toMatchObject({ schema: 'elbowroom/fit-report@1', verdict: 'none', pose: null });
  });

  it('tells what room a file of tape readings makes, and answers for a table in one', async () => {
    const survey = await elbowroom([join(ROOT, 'docs/examples/tape-survey.json')]);
    expect(survey).toMatchObject({ status: 0, err: '' });
    expect(survey.out).toMatch(/^The readings agree/);
    expect(survey.out).toContain('- wall C2-C3: ');
    const fit = await elbowroom([join(ROOT, 'docs/examples/tape-room.json')]);
    expect(fit).toMatchObject({ status: 0, err: '' });
    expect(fit.out.replace(/\s+/g, ' ')).toContain('95 of 100 measurings of this kind');
  });

  it('compares two tables', async () => {
    const { status, out } = await elbowroom([
      DEMO,
      '--compare',
      '--table',
      'pool-7ft-bar',
      '--table',
      'pool-9ft',
    ]);
    expect(status).toBe(0);
    expect(out).toMatch(/^Table +Cue +Verdict +Open/);
    expect(out).toContain('Pool 9 ft');
    expect(out).toContain('Pool 7 ft');
  });

  it('says what is wrong with a file, and ends with status 2', async () => {
    const path = join(folder, 'bad.json');
    writeFileSync(path, '{"room": {"outline": [[0, 0], ["5 m", 0]]}, "table": "pool-9feet"}');
    const { status, out, err } = await elbowroom([path]);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).toContain('- room.outline');
    expect(err).toContain('- table');
    expect(err).not.toMatch(/\n\s+at /);
    expect((await elbowroom([join(folder, 'nowhere.json')])).err).toContain('there is no such file');
    expect((await elbowroom([folder])).err).toContain('it is a folder');
  });

  it('knows its version', async () => {
    const manifest: { version?: unknown } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
    expect((await elbowroom(['--version'])).out).toBe(`${manifest.version}\n`);
  });

  it('is quiet when nobody reads on', async () => {
    const { err } = await elbowroom(['--tables'], '', true);
    expect(err).toBe('');
  });
});
