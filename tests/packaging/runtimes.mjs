// How engines other than Node find the package and what it asks of them, without those engines.
import { existsSync, readdirSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join, relative } from 'node:path';
import vm from 'node:vm';
import { buildSync } from 'esbuild';

/** What each engine or bundler looks for in `exports`, besides `import` and `default`, as its documentation has it. */
export const CONDITIONS = {
  Deno: ['deno', 'node', 'module-sync'],
  Bun: ['bun', 'node', 'module', 'module-sync'],
  'a bundler for browsers': ['browser', 'module'],
  'a bundler for web workers': ['worker', 'browser', 'module'],
  'a server at the edge': ['workerd', 'edge-light', 'worker', 'browser'],
  'a development server': ['development', 'browser', 'module'],
};

/**
 * Environment variables that an entry point reads when it is loaded, all for polygon-clipping. Deno asks whether it may; README
 * says so.
 */
export const ENVIRONMENT = {
  'elbowroom/geometry': ['POLYGON_CLIPPING_MAX_QUEUE_SIZE', 'POLYGON_CLIPPING_MAX_SWEEPLINE_SEGMENTS'],
};

/** The file that an import leads to for an engine with these conditions, as a path inside the package. */
export function resolvedFile(project, name, specifier, conditions) {
  const { metafile } = buildSync({
    stdin: { contents: `import '${withoutScheme(specifier)}';`, resolveDir: project, loader: 'js' },
    bundle: true,
    platform: 'neutral',
    mainFields: [],
    conditions,
    // Only where the import leads matters, and a package without side effects would be left out.
    ignoreAnnotations: true,
    external: ['robust-predicates', 'polygon-clipping', '@flatten-js/core'],
    metafile: true,
    write: false,
    logLevel: 'silent',
  });
  const [input] = metafile.inputs['<stdin>'].imports;
  return relative(join(project, 'node_modules', name), input.path)
    .replaceAll('\\', '/')
    .replace(/^.*node_modules\/[^/]+\//, '');
}

/** `npm:name@version/part`, as Deno and Bun write it, is what `name/part` is to Node. */
function withoutScheme(specifier) {
  const [, name, part = ''] = /^npm:((?:@[^/]+\/)?[^/@]+)(?:@[^/]+)?(\/.*)?$/.exec(specifier) ?? [
    undefined,
    specifier,
  ];
  return name + part;
}

/** Imports in the ES modules that an engine without Node's habits would not follow: each must be a file beside it or a dependency. */
export function looseImports(installed, dependencies) {
  const dist = join(installed, 'dist');
  const modules = readdirSync(dist).filter((name) => name.endsWith('.js') && name !== 'cli.js');
  return modules.flatMap((name) =>
    specifiersOf(join(dist, name))
      .filter(
        (target) => !(target.startsWith('./') && target.endsWith('.js') && existsSync(join(dist, target))),
      )
      .filter((target) => !dependencies.includes(target) || builtinModules.includes(target))
      .map((target) => `dist/${name} imports ${target}`),
  );
}

function specifiersOf(path) {
  const { metafile } = buildSync({
    entryPoints: [path],
    bundle: true,
    platform: 'neutral',
    packages: 'external',
    metafile: true,
    write: false,
    logLevel: 'silent',
  });
  const [input] = Object.entries(metafile.inputs).filter(([name]) =>
    path.endsWith(name.replace(/^(\.\.\/)*/, '')),
  );
  return input[1].imports.map((found) => found.original ?? found.path);
}

/**
 * Runs a program with nothing but the language around it: no DOM, no Node, not even timers. Returns what it printed and which
 * environment variables it would read where there are some.
 */
export function runBare(project, program) {
  const { outputFiles } = buildSync({
    stdin: { contents: program, resolveDir: project, loader: 'js' },
    bundle: true,
    format: 'iife',
    platform: 'browser',
    target: 'es2022',
    // An engine loads whole files, and what they import.
    ignoreAnnotations: true,
    treeShaking: false,
    write: false,
    logLevel: 'silent',
  });
  const script = new vm.Script(outputFiles[0].text);
  const printed = [];
  const console = { log: (line) => printed.push(line) };
  script.runInContext(vm.createContext({ console }), { timeout: 60_000 });
  const read = new Set();
  const env = new Proxy({}, { get: (_, name) => void read.add(name) });
  script.runInContext(vm.createContext({ console, process: { env } }), { timeout: 60_000 });
  return { printed: printed[0], env: [...read].sort() };
}
