import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROOT, type StaticServer, serve, useBrowser } from './harness.js';

/**
 * The packed package as a web project gets it: installed from its tarball, bundled by Vite, and asked in a page, in a module
 * worker, in a classic worker and in a page from the file system, all under a policy that forbids `eval`. Each must answer as
 * the same package does in Node.
 */

const QUESTIONS: readonly unknown[] = [
  example('garden-room.json'),
  example('tape-room.json'),
  {
    room: {
      outline: [
        [0, 0],
        ['1 m', 0],
        ['1 m', '1 m'],
        [0, '1 m'],
      ],
    },
    table: 'snooker-12ft',
  },
  { room: { outline: [] }, table: 'no such table' },
];

/**
 * Numbers may differ by this much, mm and radians: the language leaves the last bits of sin and its like to the engine, and of
 * 20,000 values of each in (0, 1) Chromium 156 and Node 20 write 1 % to 9 % differently. Everything else is the same.
 */
const LAST_BITS = 1e-6;
/** What a cushion's longest cues are found to by halving, mm (`cushionProfiles`): one that lies on a step falls to either side. */
const LONGEST_CUE = { paths: /\/cushions\/\d+\/spots\/\d+\/(open|cramped)$/, within: 1 };

const ANSWER = `
  import { assessFit, InputError } from 'elbowroom';
  export function answer(question) {
    try {
      return assessFit(question);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      return { problems: error.problems };
    }
  }`;

const FILES: Readonly<Record<string, string>> = {
  'answer.js': ANSWER,
  'node.js': `
    import { readFileSync } from 'node:fs';
    import { answer } from './answer.js';
    console.log(JSON.stringify(JSON.parse(readFileSync(0, 'utf8')).map(answer)));`,
  'worker.js': `
    import { answer } from './answer.js';
    let kind = 'classic';
    // Only a classic worker may load scripts this way.
    try { importScripts(); } catch { kind = 'module'; }
    onmessage = ({ data }) => postMessage({ kind, answers: data.map(answer) });`,
  'page.js': `
    import { answer } from './answer.js';
    globalThis.ask = async (questions) => ({ kind: 'page', answers: questions.map(answer) });`,
  'module.js': asking(`new Worker(new URL('./worker.js', import.meta.url), { type: 'module' })`),
  'classic.js': asking(`new Worker(new URL('./worker.js', import.meta.url))`),
  'page.html': html('<script type="module" src="./page.js"></script>'),
  'module.html': html('<script type="module" src="./module.js"></script>'),
  'classic.html': html('<script type="module" src="./classic.js"></script>'),
};

interface Answered {
  readonly kind: string;
  readonly answers: readonly unknown[];
}

describe('the package in a browser', () => {
  const browser = useBrowser();
  let project = '';
  let fromNode: unknown;
  let server: StaticServer | undefined;

  beforeAll(async () => {
    project = mkdtempSync(join(tmpdir(), 'elbowroom-web-'));
    installPackage(project);
    for (const [name, text] of Object.entries(FILES)) writeFileSync(join(project, name), text);
    fromNode = JSON.parse(run(process.execPath, ['node.js'], project, JSON.stringify(QUESTIONS)));
    await bundle(project, 'es', ['page.html', 'module.html']);
    await bundle(project, 'iife', ['classic.html']);
    await bundleScript(project);
    server = await serve(join(project, 'out'));
  }, 240_000);

  afterAll(async () => {
    await server?.close();
    rmSync(project, { recursive: true, force: true });
  });

  it('has answers of every kind to compare', () => {
    expect(fromNode).toMatchObject([
      { schema: 'elbowroom/fit-report@1' },
      { schema: 'elbowroom/fit-report@1' },
      { verdict: 'none' },
      { problems: [{ path: 'room.outline' }, { path: 'table' }] },
    ]);
  });

  it.each([
    ['page', 'es/page.html'],
    ['module', 'es/module.html'],
    ['classic', 'iife/classic.html'],
  ])('answers as in Node: %s', async (kind, path) => {
    await asks(`${server?.url}${path}`, kind);
  });

  it('answers as in Node from the file system, by a plain script', async () => {
    await asks(pathToFileURL(join(project, 'out/script/index.html')).href, 'page');
  });

  async function asks(address: string, kind: string): Promise<void> {
    const { page, problems } = await browser.open(address);
    const { answers, ...rest } = await page.evaluate<Answered>(`ask(${JSON.stringify(QUESTIONS)})`);
    expect(rest.kind).toBe(kind);
    expect(differences(fromNode, answers)).toEqual([]);
    expect(problems).toEqual([]);
  }
});

/** Packs what was built and installs it, with what it depends on, into an empty project. */
function installPackage(project: string): void {
  const age = (path: string) => statSync(join(ROOT, path), { throwIfNoEntry: false })?.mtimeMs ?? 0;
  const sources = readdirSync(join(ROOT, 'src'), { recursive: true, encoding: 'utf8' });
  if (sources.some((path) => path.endsWith('.ts') && age(`src/${path}`) > age('dist/index.js'))) {
    throw new Error("dist/ is older than src/: run 'npm run build' first.");
  }
  writeFileSync(join(project, 'package.json'), JSON.stringify({ private: true, type: 'module' }));
  mkdirSync(join(project, 'packed'));
  run('npm', ['pack', '--ignore-scripts', '--pack-destination', join(project, 'packed')], ROOT);
  const [tarball = ''] = readdirSync(join(project, 'packed'));
  const quietly = ['--ignore-scripts', '--prefer-offline', '--no-audit', '--no-fund'];
  run('npm', ['install', ...quietly, join(project, 'packed', tarball)], project);
}

async function bundle(project: string, workers: 'es' | 'iife', pages: readonly string[]): Promise<void> {
  await build({
    root: project,
    configFile: false,
    logLevel: 'error',
    base: './',
    worker: { format: workers },
    build: {
      outDir: `out/${workers}`,
      rolldownOptions: { input: pages.map((page) => join(project, page)) },
    },
  });
}

/** One script without modules, as a page from the file system needs it. */
async function bundleScript(project: string): Promise<void> {
  await build({
    root: project,
    configFile: false,
    logLevel: 'error',
    build: {
      outDir: 'out/script',
      lib: { entry: 'page.js', formats: ['iife'], name: 'page', fileName: () => 'page.js' },
    },
  });
  // The policy of a file: there is no 'self' to speak of.
  const policy = "default-src 'none'; script-src file:";
  writeFileSync(join(project, 'out/script/index.html'), html('<script src="page.js"></script>', policy));
}

function asking(worker: string): string {
  return `
    const worker = ${worker};
    globalThis.ask = (questions) => new Promise((done, fail) => {
      worker.onmessage = ({ data }) => done(data);
      worker.onerror = ({ message }) => fail(new Error(message));
      worker.postMessage(questions);
    });`;
}

function html(scripts: string, policy = "default-src 'none'; script-src 'self'; worker-src 'self'"): string {
  const head = `<meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="${policy}"><title>A project</title>`;
  return `<!doctype html><html lang="en"><head>${head}</head><body>${scripts}</body></html>`;
}

function example(name: string): unknown {
  return JSON.parse(readFileSync(join(ROOT, 'docs/examples', name), 'utf8'));
}

function run(command: string, args: readonly string[], cwd: string, input = ''): string {
  return execFileSync(command, args, { cwd, input, encoding: 'utf8', timeout: 120_000 });
}

/** Where two pieces of plain data differ: paths with both values. */
function differences(a: unknown, b: unknown, path = ''): string[] {
  const within = LONGEST_CUE.paths.test(path) ? LONGEST_CUE.within : LAST_BITS;
  if (typeof a === 'number' && typeof b === 'number' && Math.abs(a - b) <= within) return [];
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) {
    return Object.is(a, b) ? [] : [`${path}: ${String(a)}, ${String(b)}`];
  }
  if (Array.isArray(a) !== Array.isArray(b)) return [`${path}: a list, no list`];
  const inA = new Map<string, unknown>(Object.entries(a));
  const inB = new Map<string, unknown>(Object.entries(b));
  return [...new Set([...inA.keys(), ...inB.keys()])].flatMap((key) =>
    differences(inA.get(key), inB.get(key), `${path}/${key}`),
  );
}
