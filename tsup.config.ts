import { defineConfig } from 'tsup';

// Several entries with splitting: a single file would make one constant cost the whole library, because
// @flatten-js/core cannot be tree-shaken.
export default defineConfig([
  {
    entry: {
      index: 'src/index.ts',
      geometry: 'src/geometry/index.ts',
      stroke: 'src/stroke/index.ts',
      placement: 'src/placement/index.ts',
    },
    format: ['esm', 'cjs'],
    target: 'es2022',
    platform: 'neutral',
    splitting: true,
    treeshake: true,
    sourcemap: true,
    dts: true,
    clean: true,
  },
  {
    entry: { cli: 'src/cli.ts' },
    format: ['esm'],
    target: 'node20',
    platform: 'node',
    splitting: false,
    sourcemap: false,
    external: ['./index.js'],
    banner: { js: '#!/usr/bin/env node' },
  },
]);
