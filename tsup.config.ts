import { resolve } from 'node:path';
import { defineConfig, type Options } from 'tsup';

/**
 * What the library builds have in common. Several entries with splitting: a single file would make one constant cost the
 * whole library, because @flatten-js/core cannot be tree-shaken.
 */
const library: Options = {
  entry: {
    index: 'src/index.ts',
    geometry: 'src/geometry/index.ts',
    stroke: 'src/stroke/index.ts',
    placement: 'src/placement/index.ts',
  },
  target: 'es2022',
  platform: 'neutral',
  splitting: true,
  treeshake: true,
  dts: true,
  // The builds below run side by side, so none of them may empty dist: `npm run build` does that before.
  clean: false,
};

/** The program uses the library as any other user does, from the file beside it: src/index.ts stays outside. */
const frontDoorBeside: NonNullable<Options['esbuildPlugins']>[number] = {
  name: 'front-door-beside',
  setup(build) {
    build.onResolve({ filter: /\/index\.js$/ }, ({ path, resolveDir }) =>
      resolve(resolveDir, path) === resolve('src/index.js')
        ? { path: './index.js', external: true }
        : undefined,
    );
  },
};

export default defineConfig([
  {
    ...library,
    format: ['esm'],
    sourcemap: true,
    esbuildOptions(options) {
      // The maps point to src/, which is shipped.
      options.sourcesContent = false;
    },
  },
  // robust-predicates ships ES modules only; a CommonJS program (and its test runner) could not always require it.
  { ...library, format: ['cjs'], noExternal: ['robust-predicates'] },
  {
    entry: { cli: 'src/cli.ts' },
    format: ['esm'],
    target: 'node20',
    platform: 'node',
    splitting: false,
    sourcemap: false,
    clean: false,
    esbuildPlugins: [frontDoorBeside],
    removeNodeProtocol: false,
    banner: { js: '#!/usr/bin/env node' },
  },
]);
