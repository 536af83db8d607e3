/** Writes the figures of the guides: `npx tsx tests/docs/write-figures.ts`. */
import { writeFileSync } from 'node:fs';
import { figures } from './figures.js';

for (const [file, svg] of figures())
  writeFileSync(new URL(`../../docs/guides/${file}`, import.meta.url), svg);
