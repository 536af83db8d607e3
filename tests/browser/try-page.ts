import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { buildTryPage } from '../../docs/try/build.js';
import { assessFit } from '../../src/assess-fit.js';
import type { FitInput } from '../../src/fit-input.js';
import { describeFit } from '../../src/report/describe-fit.js';
import type { FitReport } from '../../src/report/fit-report.js';

/** Builds the try-it page before the tests of the calling file; returns its folder and its address as a file. Call it at the top of the file. */
export function useTryPage(): { readonly folder: string; readonly address: string } {
  const folder = mkdtempSync(join(tmpdir(), 'elbowroom-try-'));
  beforeAll(() => buildTryPage(folder), 60_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return { folder, address: pathToFileURL(join(folder, 'index.html')).href };
}

/** Waits until the page has answered what is in its form. */
export async function answered(page: Page): Promise<void> {
  // A function and no text: the page's policy forbids to make programs of text.
  await page.waitForFunction(() => {
    const shown = (css: string): boolean =>
      [...document.querySelectorAll(css)].some((element) => element.checkVisibility());
    return shown('.verdict') && !shown('.running') && !shown('.stale');
  });
}

/** The words of the page's sentences, whatever the lines. */
export async function sentences(page: Page): Promise<string[]> {
  // innerText knows lines; textContent would join the last word of one list item with the first of the next.
  const text = await page.evaluate<string>(`document.querySelector('.sentences-body').innerText`);
  return wordsOf(text);
}

/** The answer of the library in Node to what the page asks, and its sentences. */
export function fromNode(input: FitInput): { readonly report: FitReport; readonly words: string[] } {
  const report = assessFit({ ...input, detail: 'shots' });
  return { report, words: wordsOf(describeFit(report, { units: 'cm' })) };
}

function wordsOf(text: string): string[] {
  return text.split(/\s+/).filter((word) => word !== '' && word !== '-');
}

/** The control at a path of the input. */
export function control(path: string): string {
  return `[id="f:${path}"]`;
}
