import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type StaticServer, serve, sidewaysScroll, useBrowser, VIEWPORTS, violationsOf } from './harness.js';

/** The harness sees what is wrong with a page; otherwise no page test would mean anything. */

const page = (body: string) =>
  `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>A page</title></head><body><main><h1>A page</h1>${body}</main></body></html>`;

const PAGES = {
  'good.html': page('<p>Nothing is wrong here.</p>'),
  'errors.html': page('<script>console.error("on purpose"); throw new Error("thrown on purpose")</script>'),
  'network.html': page('<img src="https://example.org/a.png" alt="a picture">'),
  'lost.html': page('<script src="not-there.js"></script>'),
  'unlabelled.html': page('<input type="text"><img src="data:image/gif;base64,R0lGODlhAQABAAAAACw=">'),
  'wide.html': page('<div style="width:1000px">wide</div>'),
};

describe('the browser harness', () => {
  const browser = useBrowser();
  let folder = '';
  let server: StaticServer | undefined;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'elbowroom-pages-'));
    for (const [name, html] of Object.entries(PAGES)) writeFileSync(join(folder, name), html);
    server = await serve(folder);
  });
  afterAll(async () => {
    await server?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const asFile = (name: keyof typeof PAGES) => pathToFileURL(join(folder, name)).href;
  const served = (name: string) => `${server?.url}${name}`;

  it('finds nothing wrong with a good page, as a file and served', async () => {
    for (const address of [asFile('good.html'), served('good.html')]) {
      const opened = await browser.open(address);
      expect(await opened.page.title()).toBe('A page');
      expect(await violationsOf(opened.page)).toEqual([]);
      expect(opened.problems).toEqual([]);
    }
  });

  it('collects errors of the console and uncaught ones', async () => {
    const { problems } = await browser.open(asFile('errors.html'));
    expect(problems.filter((text) => text.startsWith('console: on purpose'))).toHaveLength(1);
    expect(problems).toContain('uncaught: thrown on purpose');
  });

  it('refuses the network and says so', async () => {
    const { problems } = await browser.open(asFile('network.html'));
    expect(problems).toContain('asked the network for https://example.org/a.png');
  });

  it('sees files that are not there', async () => {
    for (const address of [asFile('lost.html'), served('lost.html')]) {
      const { problems } = await browser.open(address);
      expect(problems.join('\n')).toContain('not-there.js');
    }
  });

  it('serves nothing from outside its folder', async () => {
    const answers = await Promise.all(
      ['../', '..%2f', '%2e%2e/', 'x/../../'].map((up) => fetch(served(`${up}etc/hostname`))),
    );
    expect(answers.map(({ status }) => status)).toEqual([404, 404, 404, 404]);
  });

  it('finds what a screen reader would miss', async () => {
    const opened = await browser.open(asFile('unlabelled.html'));
    const rules = (await violationsOf(opened.page)).map((text) => text.replace(/:.*/, ''));
    expect(rules).toContain('label');
    expect(rules).toContain('image-alt');
    expect(await violationsOf(opened.page, 'h1')).toEqual([]);
  });

  it('measures sideways scrolling', async () => {
    const wide = await browser.open(asFile('wide.html'), { viewport: VIEWPORTS.phone });
    expect(await sidewaysScroll(wide.page)).toBeGreaterThan(600);
    const good = await browser.open(asFile('good.html'), { viewport: VIEWPORTS.phone });
    expect(await sidewaysScroll(good.page)).toBe(0);
  });
});
