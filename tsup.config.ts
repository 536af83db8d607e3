import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { defineConfig, type Options } from 'tsup';

const entries = {
  index: 'src/index.ts',
  geometry: 'src/geometry/index.ts',
  stroke: 'src/stroke/index.ts',
  placement: 'src/placement/index.ts',
  delivery: 'src/delivery/index.ts',
  plan: 'src/plan.ts',
};

/**
 * Every module that the front door exports from, as an entry of its own in dist/parts. Nobody imports those; but a module
 * that two entries share gets a chunk of its own, so index.js is left with re-exports alone and a bundler takes one constant
 * without a line of the rest. (In one file, @flatten-js/core, which cannot be tree-shaken, would come with everything. One file
 * a module would do too, but takes Node three times as long to load.)
 */
const parts = Object.fromEntries(
  [...readFileSync('src/index.ts', 'utf8').matchAll(/^export (?!type)[^;]*? from '\.\/(.+)\.js';$/gm)].map(
    ([, path]) => [`parts/${path}`, `src/${path}.ts`],
  ),
);

/** What the builds of the library have in common. */
const library: Options = {
  target: 'es2022',
  platform: 'neutral',
  splitting: true,
  treeshake: true,
  // What is marked @internal is no promise, so it is not declared either.
  dts: { entry: entries, compilerOptions: { stripInternal: true } },
  // The builds below run side by side, so none of them may empty dist: `npm run build` does that before.
  clean: false,
};

/** The program uses the library as any other user does: whatever the front door exports comes from the file beside it. */
const frontDoorBeside: NonNullable<Options['esbuildPlugins']>[number] = {
  name: 'front-door-beside',
  setup(build) {
    const frontDoor = new Set([entries.index, ...Object.values(parts)].map((path) => resolve(path)));
    build.onResolve({ filter: /^\.\.?\/.*\.js$/ }, ({ path, resolveDir }) =>
      frontDoor.has(resolve(resolveDir, path.replace(/\.js$/, '.ts')))
        ? { path: './index.js', external: true }
        : undefined,
    );
  },
};

export default defineConfig([
  {
    ...library,
    entry: { ...entries, ...parts },
    format: ['esm'],
    sourcemap: true,
    esbuildOptions(options) {
      // The maps point to src/, which is shipped.
      options.sourcesContent = false;
    },
  },
  // robust-predicates ships ES modules only; a CommonJS program (and its test runner) could not always require it.
  { ...library, entry: entries, format: ['cjs'], noExternal: ['robust-predicates'] },
  {
    entry: { cli: 'src/cli.ts' },
    format: ['esm'],
    target: 'node20',
    platform: 'node',
    splitting: false,
    treeshake: true,
    sourcemap: false,
    clean: false,
    esbuildPlugins: [frontDoorBeside],
    removeNodeProtocol: false,
    banner: { js: '#!/usr/bin/env node' },
  },
]);
