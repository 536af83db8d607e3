import { mkdirSync, readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import type { AddressInfo } from 'node:net';
import { extname, join, resolve, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll } from 'vitest';

/**
 * Real pages in a real browser, for `*.browser.test.ts` (`npm run test:browser`):
 *
 *     const browser = useBrowser();                             // one chromium for the whole test file
 *     it('opens', async () => {
 *       const { page, problems } = await browser.open('docs/try/index.html', { viewport: VIEWPORTS.phone });
 *       await page.getByLabel('Length').fill('5.8 m');          // page is playwright's
 *       expect(await violationsOf(page)).toEqual([]);           // axe-core
 *       await screenshot(page, 'try-phone');                    // reports/screenshots/try-phone.png
 *       expect(problems).toEqual([]);                           // errors on the console, uncaught errors, lost requests
 *     });
 *
 * Pages are closed after each test, with everything that they stored. No page reaches the network: a request to anything but
 * a file or this machine is refused and counts as a problem.
 */

export const ROOT: string = resolve(fileURLToPath(new URL('../..', import.meta.url)));

/** The browser that is started: CHROMIUM, or where Debian puts it. */
export const CHROMIUM: string = process.env.CHROMIUM ?? '/usr/bin/chromium';

export interface Viewport {
  readonly width: number;
  readonly height: number;
}

/** CSS pixels. The phone is the narrowest that the pages promise to work on. */
export const VIEWPORTS = {
  phone: { width: 360, height: 740 },
  tablet: { width: 820, height: 1180 },
  desktop: { width: 1280, height: 800 },
} as const satisfies Readonly<Record<string, Viewport>>;

export interface OpenOptions {
  /** Desktop unless said otherwise. */
  readonly viewport?: Viewport;
  readonly colorScheme?: 'light' | 'dark';
  readonly reducedMotion?: 'reduce' | 'no-preference';
  /** A finger instead of a mouse. */
  readonly touch?: boolean;
}

export interface OpenPage {
  readonly page: Page;
  /** What went wrong so far, in order; it goes on growing while the page is open. Errors alone, no warnings. */
  readonly problems: readonly string[];
}

export interface TestBrowser {
  /**
   * Opens a page in a profile of its own and waits for its load event. The address is a URL (`http://127.0.0.1:…` from `serve`,
   * `file://…`) or a path below the root of the project, which is opened as a file, with `?query` and `#fragment` if wanted.
   */
  open(address: string, options?: OpenOptions): Promise<OpenPage>;
}

/** Starts chromium before the tests of the calling file and ends it after them. Call it at the top of the file. */
export function useBrowser(): TestBrowser {
  let browser: Browser | undefined;
  const contexts = new Set<BrowserContext>();
  beforeAll(async () => {
    browser = await launch();
  }, 60_000);
  afterEach(async () => {
    const open = [...contexts];
    contexts.clear();
    await Promise.all(open.map((context) => context.close()));
  });
  afterAll(async () => {
    await browser?.close();
  });
  return {
    async open(address, options = {}) {
      if (browser === undefined) throw new Error('Pages can be opened inside tests and hooks only.');
      const context = await browser.newContext({
        viewport: options.viewport ?? VIEWPORTS.desktop,
        colorScheme: options.colorScheme ?? 'light',
        reducedMotion: options.reducedMotion ?? 'no-preference',
        hasTouch: options.touch ?? false,
        locale: 'en-GB',
        timezoneId: 'UTC',
      });
      contexts.add(context);
      const problems: string[] = [];
      await refuseNetwork(context, problems);
      const page = await context.newPage();
      collectProblems(page, problems);
      await page.goto(urlOf(address), { waitUntil: 'load' });
      return { page, problems };
    },
  };
}

/** A chromium of one's own, for the rare program that is no test file; whoever calls it closes it. */
export function launch(): Promise<Browser> {
  if (statSync(CHROMIUM, { throwIfNoEntry: false }) === undefined) {
    throw new Error(
      `There is no browser at ${CHROMIUM}. Install it ('apt-get install chromium'), or set CHROMIUM to one.`,
    );
  }
  // Containers run as root, where chromium's sandbox refuses to start; only our own pages are opened.
  const args = ['--no-sandbox', '--force-color-profile=srgb', '--font-render-hinting=none'];
  return chromium.launch({ executablePath: CHROMIUM, args, headless: true });
}

export interface StaticServer {
  /** `http://127.0.0.1:port/`, with the slash. */
  readonly url: string;
  close(): Promise<void>;
}

/** Serves the files of a folder (a path below the root of the project, or an absolute one) on this machine; nothing is cached. */
export async function serve(folder: string): Promise<StaticServer> {
  const base = resolve(ROOT, folder);
  const server = createServer((request, response) => {
    const file = fileFor(base, request.url ?? '/');
    if (file === undefined) {
      response.writeHead(404, { 'content-type': 'text/plain' }).end('not here');
      return;
    }
    response.writeHead(200, {
      'content-type': TYPES[extname(file)] ?? 'application/octet-stream',
      'cache-control': 'no-store',
    });
    response.end(readFileSync(file));
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return {
    url: `http://127.0.0.1:${portOf(server.address())}/`,
    close: () =>
      new Promise((done, fail) => {
        server.close((error) => (error === undefined ? done() : fail(error)));
        server.closeAllConnections();
      }),
  };
}

/** What axe-core holds against the page, or against one part of it: `rule: what (where; where)`. All its rules but experimental ones. */
export async function violationsOf(page: Page, within?: string): Promise<string[]> {
  // Evaluated rather than added as a script, which a content security policy would refuse.
  await page.evaluate(AXE);
  const context = within === undefined ? 'document' : JSON.stringify(within);
  const { violations } = await page.evaluate<AxeAnswer>(
    `axe.run(${context}, { resultTypes: ['violations'] })`,
  );
  return violations.map(
    ({ id, help, nodes }) => `${id}: ${help} (${nodes.map(({ target }) => target.join(' ')).join('; ')})`,
  );
}

/** Takes a picture of the whole page into reports/screenshots/NAME.png, for people to look at; returns the path. */
export async function screenshot(page: Page, name: string): Promise<string> {
  const folder = join(ROOT, 'reports/screenshots');
  mkdirSync(folder, { recursive: true });
  const path = join(folder, `${name}.png`);
  await page.screenshot({ path, fullPage: true });
  return path;
}

/** By how many CSS pixels the page is wider than its window: 0 where nobody has to scroll sideways. */
export async function sidewaysScroll(page: Page): Promise<number> {
  return page.evaluate<number>(
    'Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth)',
  );
}

interface AxeAnswer {
  readonly violations: readonly {
    readonly id: string;
    readonly help: string;
    readonly nodes: readonly { readonly target: readonly string[] }[];
  }[];
}

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.png': 'image/png',
  '.txt': 'text/plain; charset=utf-8',
};

function urlOf(address: string): string {
  if (/^[a-z]+:/i.test(address)) return address;
  const [, path = '', rest = ''] = /^([^?#]*)(.*)$/.exec(address) ?? [];
  return pathToFileURL(join(ROOT, path)).href + rest;
}

/** The file that a request means; undefined where there is none, or where it would leave the folder. */
function fileFor(base: string, requested: string): string | undefined {
  const path = join(base, decodeURIComponent(new URL(requested, 'http://localhost').pathname));
  if (path !== base && !path.startsWith(base + sep)) return undefined;
  const found = statSync(path, { throwIfNoEntry: false });
  if (found?.isDirectory()) return fileFor(base, join(requested, 'index.html'));
  return found?.isFile() ? path : undefined;
}

function portOf(address: AddressInfo | string | null): number {
  if (address === null || typeof address === 'string') throw new Error('The server has no port.');
  return address.port;
}

async function refuseNetwork(context: BrowserContext, problems: string[]): Promise<void> {
  const outside = (url: URL) => /^(https?|wss?):$/.test(url.protocol) && url.hostname !== '127.0.0.1';
  await context.route(outside, async (route) => {
    problems.push(`asked the network for ${route.request().url()}`);
    await route.abort();
  });
}

function collectProblems(page: Page, problems: string[]): void {
  page.on('console', (message) => {
    // Browsers ask for this by themselves where a page names no icon.
    if (message.location().url.endsWith('/favicon.ico')) return;
    if (message.type() === 'error') problems.push(`console: ${message.text()} (${message.location().url})`);
  });
  page.on('pageerror', (error) => problems.push(`uncaught: ${error.message}`));
  page.on('requestfailed', (request) => {
    // A page that is left, or a worker that is ended, drops what it was still loading.
    const reason = request.failure()?.errorText ?? 'lost';
    if (reason !== 'net::ERR_ABORTED') problems.push(`${request.url()}: ${reason}`);
  });
}
