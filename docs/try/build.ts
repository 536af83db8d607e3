import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type BuildOptions, build, type Plugin } from 'esbuild';
import { ENGLISH } from './strings.js';

/**
 * The try-it page as a folder of three files that works from the file system and from any static host: one plain script that carries
 * the programs of its workers, one style sheet, one page. Called by `npm run docs`, after typedoc has emptied its folder.
 */

const HERE = dirname(fileURLToPath(import.meta.url));
const ROOT = resolve(HERE, '../..');

/** The library by its public names alone, as an embedding page would have it. */
const LIBRARY: Readonly<Record<string, string>> = {
  elbowroom: 'src/index.ts',
  'elbowroom/geometry': 'src/geometry/index.ts',
  'elbowroom/stroke': 'src/stroke/index.ts',
  'elbowroom/placement': 'src/placement/index.ts',
  'elbowroom/delivery': 'src/delivery/index.ts',
  'elbowroom/plan': 'src/plan.ts',
};

const COMMON = {
  bundle: true,
  format: 'iife',
  platform: 'browser',
  target: ['es2023'],
  minify: true,
  legalComments: 'none',
  charset: 'utf8',
  write: false,
  logLevel: 'warning',
  alias: Object.fromEntries(Object.entries(LIBRARY).map(([name, path]) => [name, join(ROOT, path)])),
} as const satisfies BuildOptions;

/** `worker:some/file.ts`: that file, bundled, as text. */
const workers: Plugin = {
  name: 'workers',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^worker:/ }, ({ path }) => ({
      path: path.replace(/^worker:/, ''),
      namespace: 'worker',
    }));
    onLoad({ filter: /.*/, namespace: 'worker' }, async ({ path }) => ({
      contents: await bundled(join(HERE, path)),
      loader: 'text',
    }));
  },
};

async function bundled(entry: string, plugins: Plugin[] = []): Promise<string> {
  const { outputFiles } = await build({ ...COMMON, entryPoints: [entry], plugins });
  const [file] = outputFiles;
  if (file === undefined) throw new Error(`Nothing came of ${entry}.`);
  return file.text;
}

/** Writes the page into a folder, which is made where it is missing. */
export async function buildTryPage(folder: string): Promise<void> {
  const script = await bundled(join(HERE, 'page.ts'), [workers]);
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'try.js'), script);
  writeFileSync(join(folder, 'try.css'), readFileSync(join(HERE, 'try.css')));
  writeFileSync(join(folder, 'index.html'), page(readFileSync(join(HERE, 'index.html'), 'utf8')));
}

/** The page with its words: `{{title}}` is the string of that name. */
function page(template: string): string {
  const words = new Map<string, string>([
    ['title', ENGLISH.title],
    ['heading', ENGLISH.heading],
    ['introduction', ENGLISH.introduction],
    ['privacy', ENGLISH.privacy],
    ['noScript', ENGLISH.noScript],
    ['back', ENGLISH.back],
    ['skip', ENGLISH.skip],
  ]);
  return template
    .replace('lang="en"', `lang="${ENGLISH.language}"`)
    .replaceAll(/\{\{(\w+)\}\}/g, (_, name: string) => {
      const text = words.get(name);
      if (text === undefined) throw new Error(`The page asks for "${name}", which strings.ts does not have.`);
      return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
    });
}

/** Leads from every page of the reference to this one: typedoc writes its links as they are given, also into pages one folder down. */
export function linkPages(reference: string): void {
  for (const path of readdirSync(reference, { recursive: true, encoding: 'utf8' })) {
    const up = path.split(sep).length - 1;
    if (up === 0 || !path.endsWith('.html') || path.startsWith(`try${sep}`)) continue;
    const file = join(reference, path);
    const text = readFileSync(file, 'utf8');
    writeFileSync(file, text.replaceAll('href="try/index.html"', `href="${'../'.repeat(up)}try/index.html"`));
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const reference = join(ROOT, 'docs/reference');
  await buildTryPage(join(reference, 'try'));
  linkPages(reference);
}
