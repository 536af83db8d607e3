import { gzipSync } from 'node:zlib';
import { buildSync } from 'esbuild';

/** Bundles a program for a browser, minified, inside a project; its gzipped size in bytes and what went into it. */
export function bundle(project, program, external = []) {
  const { outputFiles, metafile } = buildSync({
    stdin: { contents: program, resolveDir: project, loader: 'js' },
    bundle: true,
    minify: true,
    format: 'esm',
    // A Node built-in that slipped into the library stops the build here: a browser has none.
    platform: 'browser',
    target: 'es2022',
    external,
    metafile: true,
    write: false,
    logLevel: 'silent',
  });
  const [output] = outputFiles;
  return { size: gzipSync(output.contents, { level: 9 }).length, meta: metafile };
}

/** Names of the packages that have bytes in the bundle. */
export function packagesIn(metafile) {
  const [output] = Object.values(metafile.outputs);
  const names = Object.entries(output.inputs)
    .filter(([, { bytesInOutput }]) => bytesInOutput > 0)
    .map(([path]) => /.*node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(path)?.[1])
    .filter((name) => name !== undefined);
  return [...new Set(names)].sort();
}

/** Thousands of bytes, as sizes are usually told. */
export function kilobytes(bytes) {
  return `${(bytes / 1000).toFixed(1)} kB`;
}
