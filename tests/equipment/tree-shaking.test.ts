import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';

const SRC = resolve(dirname(fileURLToPath(import.meta.url)), '../../src');

/** Bundles a module of its own, minified, and answers its text. */
async function bundle(contents: string): Promise<string> {
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: SRC, loader: 'ts' },
    bundle: true,
    minify: true,
    format: 'esm',
    write: false,
  });
  return outputFiles[0]?.text ?? '';
}

describe('what a bundle pays for the catalogues', () => {
  it('is nothing for what is not used', async () => {
    const text = await bundle(`
      import { BALLS } from './equipment/balls.js';
      import { CUES } from './equipment/cues.js';
      import { TABLES } from './equipment/tables.js';
      import { sameGameSmaller } from './equipment/smaller-tables.js';
      import { parseLength } from './length/parse-length.js';
      export const nothing = 1;
    `);
    expect(text).toMatch(/^var \w+=1;export\{\w+ as nothing\};\s*$/);
  });

  it('is less than 1 kB, zipped, for the balls alone or the cues alone', async () => {
    for (const line of [
      `export { BALLS } from './equipment/balls.js';`,
      `export { CUES } from './equipment/cues.js';`,
    ]) {
      const text = await bundle(line);
      expect(text).toContain('source');
      expect(gzipSync(text).length).toBeLessThan(1000);
    }
  });
});
