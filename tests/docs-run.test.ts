import { execFile } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { build } from 'esbuild';
import ts from 'typescript';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

/**
 * Documentation that cannot rot: every TypeScript block of README.md, docs/ and the comments in src/ is type-checked and run
 * as a program of its own, every example file too, every JSON block is parsed and every relative link is followed.
 *
 * ```ts            a program of its own
 * ```ts continued  goes on where the page's earlier blocks stopped
 * <!-- prints -->  before a fenced block right after a program: exactly what the program prints
 * console.log(x);  // 42: where each of them has such a comment, it starts with the line that is printed
 */

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '..');
const run = promisify(execFile);

interface Program {
  /** Where it stands: `README.md:34`. */
  readonly where: string;
  readonly code: string;
  /** What it must print, if the page shows it, */
  readonly prints: string | null;
  /** or what each line that it prints is said to be. */
  readonly says: readonly string[] | null;
}

interface Block {
  readonly info: string;
  readonly line: number;
  readonly text: string;
  /** The comment mark right before the block, if any. */
  readonly mark: string | null;
}

const pages = ['README.md', 'DEVELOPERS.md', 'CHANGELOG.md', ...filesIn('docs', '.md')].filter((path) =>
  existsSync(join(ROOT, path)),
);
const shown = pages.filter((path) => path === 'README.md' || path.startsWith('docs/'));
const programs = [
  ...shown.flatMap((path) => programsOf(path, read(path))),
  ...filesIn('src', '.ts').flatMap((path) => programsOf(path, commentsOf(read(path)))),
  ...exampleFiles(),
];

/** Import name -> source file, for every entry point that package.json exports. */
const entries = new Map<string, string>();
for (const key of exportedKeys()) {
  const name = key.slice(2);
  const source = [`src/${name}/index.ts`, `src/${name}.ts`, 'src/index.ts'].find((p) =>
    existsSync(join(ROOT, p)),
  );
  if (source !== undefined) entries.set(`elbowroom${key.slice(1)}`, join(ROOT, source));
}

describe('the documentation', () => {
  let folder = '';
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'elbowroom-docs-'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('shows programs', () => {
    expect(programs.some(({ where }) => where.startsWith('README.md'))).toBe(true);
  });

  it('type-checks', { timeout: 120_000 }, () => {
    expect(typeErrors()).toEqual([]);
  });

  const named = programs.map((program) => [program.where, program] as const);
  it.each(named)('runs %s', { timeout: 120_000 }, async (where, { code, prints, says }) => {
    const outfile = join(folder, `${where.replace(/[^a-z0-9]+/gi, '-')}.mjs`);
    await build({
      stdin: { contents: code, loader: 'ts', resolveDir: ROOT, sourcefile: where },
      alias: Object.fromEntries([...entries].sort((a, b) => b[0].length - a[0].length)),
      bundle: true,
      platform: 'node',
      format: 'esm',
      outfile,
      logLevel: 'silent',
    });
    const { stdout } = await run(process.execPath, [outfile], { cwd: ROOT, timeout: 100_000 });
    if (prints !== null) expect(stdout.trimEnd()).toBe(prints.trimEnd());
    if (says !== null) {
      const printed = stdout.trimEnd().split('\n');
      expect(printed.map((line, i) => (says[i]?.startsWith(line) ? says[i] : line))).toEqual(says);
    }
  });

  it.each(shown)('shows JSON that can be read: %s', (path) => {
    for (const block of blocksOf(path, read(path)).filter(({ info }) => info === 'json')) {
      expect(() => JSON.parse(block.text), `${path}:${block.line}`).not.toThrow();
    }
  });

  it.each(pages)('links to what exists: %s', (path) => {
    const text = read(path).replace(/^```[\s\S]*?^```/gm, '');
    const targets = [...text.matchAll(/\]\(([^)\s]+)\)|(?:src|href)="([^"]+)"/g)]
      .map(([, inline, attribute]) => inline ?? attribute ?? '')
      .filter((target) => !/^([a-z]+:|#)/i.test(target))
      .map((target) => target.replace(/#.*$/, ''));
    expect(targets.filter((target) => !existsSync(join(ROOT, dirname(path), target)))).toEqual([]);
  });
});

/** What the compiler says about all programs, as a user's own strict project would see them. */
function typeErrors(): string[] {
  const options: ts.CompilerOptions = {
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    moduleDetection: ts.ModuleDetectionKind.Force,
    lib: ['lib.es2023.d.ts'],
    types: ['node'],
    strict: true,
    exactOptionalPropertyTypes: true,
    skipLibCheck: true,
    esModuleInterop: true,
    noEmit: true,
    paths: Object.fromEntries([...entries].map(([name, file]) => [name, [file]])),
  };
  // The programs stand at the root of the project, so that their imports resolve as ours do.
  const virtual = new Map(
    programs.map(({ where, code }, i) => [join(ROOT, `program-${i}.ts`), { where, code }]),
  );
  const host = ts.createCompilerHost(options);
  const { fileExists, readFile, getSourceFile } = host;
  host.fileExists = (name) => virtual.has(name) || fileExists(name);
  host.readFile = (name) => virtual.get(name)?.code ?? readFile(name);
  host.getSourceFile = (name, ...rest) => {
    const program = virtual.get(name);
    return program === undefined
      ? getSourceFile(name, ...rest)
      : ts.createSourceFile(name, program.code, ts.ScriptTarget.ES2022, true);
  };
  const compiled = ts.createProgram([...virtual.keys()], options, host);
  return [...virtual].flatMap(([name, { where }]) => {
    const tree = compiled.getSourceFile(name);
    if (tree === undefined) return [`${where}: not compiled`];
    return [...compiled.getSyntacticDiagnostics(tree), ...compiled.getSemanticDiagnostics(tree)].map((d) => {
      const line = tree.getLineAndCharacterOfPosition(d.start ?? 0).line + 1;
      return `${where}, line ${line} of the block: ${ts.flattenDiagnosticMessageText(d.messageText, ' ')}`;
    });
  });
}

function programsOf(path: string, page: string): Program[] {
  const found: Program[] = [];
  const before: string[] = [];
  const blocks = blocksOf(path, page);
  for (const [i, { info, line, text }] of blocks.entries()) {
    const [language, ...words] = info.split(' ');
    if (language !== 'ts') continue;
    const next = blocks[i + 1];
    const code = words.includes('continued') ? [...before, text].join('\n') : text;
    if (!words.includes('continued')) before.length = 0;
    before.push(text);
    const prints = next?.mark === 'prints' ? next.text : null;
    found.push({ where: `${path}:${line}`, code, prints, says: prints === null ? saidOf(code) : null });
  }
  return found;
}

/** The comments behind the `console.log`s of a program, when every one of them has one. */
function saidOf(code: string): string[] | null {
  const calls = code.split('\n').filter((line) => line.includes('console.log('));
  const said = calls.flatMap((line) => /^console\.log\(.*\); +\/\/ (.+)$/.exec(line)?.[1] ?? []);
  return calls.length > 0 && said.length === calls.length ? said : null;
}

/** A source file with its documentation comments as plain text, line by line, and the rest blank. */
function commentsOf(source: string): string {
  let inside = false;
  return source
    .split('\n')
    .map((line) => {
      const text = inside ? (/^\s*\*(?!\/) ?(.*)$/.exec(line)?.[1] ?? '') : '';
      inside = (inside || /^\s*\/\*\*/.test(line)) && !line.includes('*/');
      return text;
    })
    .join('\n');
}

function blocksOf(path: string, page: string): Block[] {
  const blocks: Block[] = [];
  const lines = page.split('\n');
  let mark: string | null = null;
  for (let i = 0; i < lines.length; i++) {
    const line = lines[i] ?? '';
    const fence = /^(`{3,})(.*)$/.exec(line);
    if (fence !== null) {
      const [, ticks = '```', info = ''] = fence;
      const end = lines.indexOf(ticks, i + 1);
      if (end < 0) throw new Error(`${path}:${i + 1}: a fenced block without its end`);
      blocks.push({ info: info.trim(), line: i + 1, text: lines.slice(i + 1, end).join('\n'), mark });
      i = end;
      mark = null;
    } else if (line.trim() !== '') {
      mark = /^<!-- (\S+) -->$/.exec(line.trim())?.[1] ?? null;
    }
  }
  return blocks;
}

/** Runnable examples that are files of their own. */
function exampleFiles(): Program[] {
  return filesIn('docs/examples', '.ts').map((path) => {
    const code = read(path);
    return { where: path, code, prints: null, says: saidOf(code) };
  });
}

function filesIn(folder: string, extension: string): string[] {
  if (!existsSync(join(ROOT, folder))) return [];
  return readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(extension))
    .map((entry) => relative(ROOT, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .filter((path) => !path.startsWith('docs/reference/'))
    .sort();
}

function exportedKeys(): string[] {
  const manifest: unknown = JSON.parse(read('package.json'));
  if (typeof manifest !== 'object' || manifest === null || !('exports' in manifest)) return [];
  const { exports } = manifest;
  if (typeof exports !== 'object' || exports === null) return [];
  return Object.keys(exports).filter((key) => key !== './package.json');
}

function read(path: string): string {
  return readFileSync(join(ROOT, path), 'utf8');
}
