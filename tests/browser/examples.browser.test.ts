import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { assessFit } from '../../src/assess-fit.js';
import { describeFit } from '../../src/report/describe-fit.js';
import {
  ROOT,
  type StaticServer,
  serve,
  sidewaysScroll,
  useBrowser,
  VIEWPORTS,
  violationsOf,
} from './harness.js';

/**
 * The example pages as their reader has them after `npm run build`; the library is built from src/ here, so that the tests hang on
 * no earlier command.
 */
const browser = useBrowser();
const folder = mkdtempSync(join(tmpdir(), 'elbowroom-examples-'));
const library = join(folder, 'elbowroom.js');
const bundle = join(folder, 'worker.bundle.js');
let server: StaticServer;

beforeAll(async () => {
  const common = { bundle: true, platform: 'browser', logLevel: 'silent' } as const;
  await build({
    ...common,
    entryPoints: [join(ROOT, 'src/index.ts')],
    format: 'esm',
    outfile: library,
    external: ['robust-predicates'],
  });
  await build({
    ...common,
    entryPoints: [join(ROOT, 'docs/examples/worker/worker.js')],
    format: 'iife',
    outfile: bundle,
    alias: { elbowroom: library, 'robust-predicates': join(ROOT, 'node_modules/robust-predicates/index.js') },
  });
  server = await serve('.');
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Opens a page with the built files put where a reader's build puts them. */
async function open(path: string, options: Parameters<typeof browser.open>[1] = {}) {
  const opened = await browser.open('about:blank', options);
  await opened.page.route('**/dist/index.js', (route) =>
    route.fulfill({ path: library, contentType: 'text/javascript' }),
  );
  await opened.page.route('**/worker.bundle.js', (route) =>
    route.fulfill({ path: bundle, contentType: 'text/javascript' }),
  );
  await opened.page.goto(`${server.url}${path}`, { waitUntil: 'load' });
  return opened;
}

describe('the fit check in plain HTML', () => {
  it('answers as assessFit does, with a drawing', async () => {
    const { page, problems } = await open('docs/examples/embed/');
    await page.getByLabel('Length of the room').fill('19 ft');
    await page.getByRole('button', { name: 'Reckon' }).click();
    const outline = [
      [0, 0],
      ['19 ft', 0],
      ['19 ft', '4.3 m'],
      [0, '4.3 m'],
    ] as const;
    const report = assessFit({ room: { outline }, table: 'pool-8ft-home', cues: [1447.8], detail: 'shots' });
    expect(await page.locator('#words').textContent()).toBe(describeFit(report, { units: 'cm' }));
    const drawn = page.getByAltText('Plan of the room with the table, to scale');
    const width = await drawn.evaluate(async (image) => {
      if (!(image instanceof HTMLImageElement)) return 0;
      await image.decode();
      return image.naturalWidth;
    });
    expect(width).toBeGreaterThan(0);
    expect(problems).toEqual([]);
  });

  it('says what is wrong with a reading', async () => {
    const { page, problems } = await open('docs/examples/embed/');
    await page.getByLabel('Width of the room').fill('4.3 mm');
    await page.getByRole('button', { name: 'Reckon' }).click();
    expect(await page.getByRole('alert').textContent()).toContain('4.3 mm');
    expect(problems).toEqual([]);
  });

  it('can be used with a reader and on a phone', async () => {
    const { page } = await open('docs/examples/embed/', { viewport: VIEWPORTS.phone });
    await page.getByRole('button', { name: 'Reckon' }).click();
    await page.locator('#words').waitFor();
    expect(await violationsOf(page)).toEqual([]);
    expect(await sidewaysScroll(page)).toBe(0);
  });
});

describe('the fit check in a worker', () => {
  it('answers, and can be stopped and started again', async () => {
    const { page, problems } = await open('docs/examples/worker/');
    await page.getByRole('button', { name: 'Reckon' }).click();
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.getByRole('button', { name: 'Reckon' }).click();
    await page.waitForFunction("document.querySelector('#words').textContent !== ''");
    expect(await page.locator('#words').textContent()).toContain('Pool 8 ft');
    await page.waitForFunction("document.querySelector('#stop').disabled");
    expect(await violationsOf(page)).toEqual([]);
    expect(problems).toEqual([]);
  });
});
