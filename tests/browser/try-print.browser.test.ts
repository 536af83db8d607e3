import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { ROOT, useBrowser, VIEWPORTS } from './harness.js';
import { answered, control, useTryPage } from './try-page.js';
import { type PdfPage, type PdfPoint, pdfPages } from './try-pdf.js';

/** What comes out of the printer, measured: a wall of known length on paper, by the lines of the PDF itself. */

const browser = useBrowser();
const { address } = useTryPage();

/** How far a measured length may be from the true one, mm. */
const NEAR = 0.1;

async function printed(page: Page, name: string): Promise<PdfPage[]> {
  const pdf = await page.pdf({ preferCSSPageSize: true });
  mkdirSync(join(ROOT, 'reports'), { recursive: true });
  writeFileSync(join(ROOT, 'reports', `${name}.pdf`), pdf);
  return pdfPages(pdf);
}

function lengths(path: readonly PdfPoint[]): number[] {
  return path.slice(1).map(([x, y], i) => {
    const [fromX, fromY] = path[i] ?? [Number.NaN, Number.NaN];
    return Math.hypot(x - fromX, y - fromY);
  });
}

/** Closed paths whose sides are as long as these, in this order from any of them. */
function rings(page: PdfPage | undefined, sides: readonly number[]): number {
  return (page?.paths ?? []).filter((path) => {
    const found = lengths(path).filter((length) => length > 1e-6);
    if (found.length !== sides.length) return false;
    return sides.some((_, shift) =>
      sides.every((side, i) => Math.abs((found[(i + shift) % sides.length] ?? Number.NaN) - side) <= NEAR),
    );
  }).length;
}

describe('the drawing on paper', () => {
  it('has a wall of 5.6 m 112 mm long at 1:50, on a sheet of its own size', async () => {
    const { page, problems } = await browser.open(address);
    await answered(page);
    await page.locator('#drawing-scale').selectOption({ label: '1:50' });
    const pages = await printed(page, 'try-50');
    const [sheet, ...rest] = pages;
    expect(sheet?.width).toBeCloseTo(297, 0);
    expect(sheet?.height).toBeCloseTo(210, 0);
    expect(rings(sheet, [112, 86, 112, 86])).toBeGreaterThan(0);
    // The play field of the table, and what stands in the room: 1.6 m by 44 cm.
    expect(rings(sheet, [2235.2 / 50, 1117.6 / 50, 2235.2 / 50, 1117.6 / 50])).toBeGreaterThan(0);
    expect(rings(sheet, [32, 8.8, 32, 8.8])).toBeGreaterThan(0);
    // Then the sentences, upright and on no more sheets than they fill.
    expect(rest.length).toBeGreaterThanOrEqual(1);
    expect(rest.length).toBeLessThanOrEqual(4);
    for (const { width, height } of rest) {
      expect(width).toBeCloseTo(210, 0);
      expect(height).toBeCloseTo(297, 0);
    }
    expect(problems).toEqual([]);
  });

  it.each([
    ['phone', '1:100', 100, 297, 210],
    ['desktop', '1:20', 20, 420, 297],
  ] as const)('keeps its scale from a %s at %s', async (viewport, label, scale, width, height) => {
    const { page } = await browser.open(address, { viewport: VIEWPORTS[viewport], colorScheme: 'dark' });
    await answered(page);
    await page.locator(control('room.outline[1][0]')).fill('5.2 m');
    await page.locator(control('room.outline[2][0]')).fill('5.2 m');
    await answered(page);
    if (scale === 20) await page.locator('#drawing-size').selectOption('A3');
    await page.locator('#drawing-scale').selectOption({ label });
    await page.getByLabel('As large as on paper').check();
    const [sheet] = await printed(page, `try-${scale}`);
    expect(sheet?.width).toBeCloseTo(width, 0);
    expect(sheet?.height).toBeCloseTo(height, 0);
    const sides = [5200 / scale, 4300 / scale, 5200 / scale, 4300 / scale];
    expect(rings(sheet, sides)).toBeGreaterThan(0);
  });

  it('says why where the sheet is too small, and comes back', async () => {
    const { page, problems } = await browser.open(address);
    await answered(page);
    await page.locator('#drawing-size').selectOption('A4');
    await page.locator('#drawing-scale').selectOption({ label: '1:20' });
    expect(await page.locator('#drawing-problem').textContent()).toBe(
      'At 1:20 this does not go on the sheet. 1:50 does.',
    );
    expect(await page.locator('.drawing-view').isVisible()).toBe(false);
    await page.locator('#drawing-scale').selectOption({ label: '1:50' });
    expect(await page.locator('.drawing-view').isVisible()).toBe(true);
    expect(await page.locator('#drawing-problem').textContent()).toBe('');
    expect(problems).toEqual([]);
  });
});
