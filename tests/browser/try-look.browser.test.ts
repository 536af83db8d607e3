import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { screenshot, sidewaysScroll, useBrowser, VIEWPORTS, violationsOf } from './harness.js';
import { answered, control, useTryPage } from './try-page.js';

/** How the try-it page is to read, by eye, by ear and by keys, at both widths, light and dark. */

const browser = useBrowser();
const { address } = useTryPage();

/** Everything that the page can show: all parts of the form, problems, the comparison, a link. */
async function showEverything(page: Page): Promise<void> {
  await page.getByText('Other pieces in the room').click();
  await page.getByText('Stroke and place of the table').click();
  await page.getByRole('button', { name: 'Compare', exact: true }).click();
  await page.getByText('tables were compared').waitFor();
  await page.getByRole('button', { name: 'Make a link' }).click();
  await page.getByLabel('Link that holds the whole room').waitFor();
}

async function makeMistakes(page: Page): Promise<void> {
  await page.getByLabel('tape readings, wall by wall').check();
  await page.getByRole('button', { name: 'Add an alcove, breast or bay' }).click();
  await page.getByRole('button', { name: 'Add a corner reading' }).click();
  await page.getByRole('button', { name: 'Add a door along a wall' }).click();
  await page.locator(control('room.obstacles[0].footprint:shape')).selectOption('polygon');
  await page.locator(control('room.ceiling:ceiling')).selectOption('faces');
  await page.locator(control('table:table')).selectOption('own');
  await page.locator(control('table.field.length')).fill('long');
  await page.getByRole('button', { name: 'Add a piece' }).click();
  await page.locator(control('furnishings[0].kind:kind')).selectOption({ label: 'by its measurements' });
  await page.getByRole('button', { name: 'Reckon', exact: true }).click();
  await page.locator('#problems').waitFor();
}

describe.each(['phone', 'desktop'] as const)('at the width of a %s', (width) => {
  const viewport = VIEWPORTS[width];

  it.each(['light', 'dark'] as const)(
    'holds nothing against readers of any kind, %s',
    async (colorScheme) => {
      const { page, problems } = await browser.open(address, { viewport, colorScheme });
      await answered(page);
      await screenshot(page, `try-${width}-${colorScheme}`);
      await showEverything(page);
      expect(await violationsOf(page)).toEqual([]);
      expect(await sidewaysScroll(page)).toBe(0);
      await makeMistakes(page);
      expect(await violationsOf(page)).toEqual([]);
      expect(await sidewaysScroll(page)).toBe(0);
      await screenshot(page, `try-${width}-${colorScheme}-mistakes`);
      // axe itself asks for the style sheet again, which the page's policy refuses as it is to refuse everything.
      expect(problems.filter((problem) => !problem.includes('try.css'))).toEqual([]);
    },
  );

  it('cuts nothing off, in form and answer', async () => {
    const { page } = await browser.open(address, { viewport });
    await answered(page);
    await showEverything(page);
    await makeMistakes(page);
    const beyond = await page.evaluate(() => {
      const scrolls = '.drawing-view, .scrolling, pre, .probe-root';
      return [...document.querySelectorAll('main *')]
        .filter((element) => element.closest(scrolls) === null && element.checkVisibility())
        .filter((element) => {
          // Each within the framed part of the page that it belongs to.
          const frame = element.closest('main > *, .columns-two > *')?.getBoundingClientRect();
          const { left, right } = element.getBoundingClientRect();
          return frame !== undefined && (right > frame.right + 0.5 || left < frame.left - 0.5);
        })
        .map((element) => `${element.tagName} ${element.className} ${element.id}`);
    });
    expect(beyond).toEqual([]);
  });
});

describe('by keys', () => {
  it('shows where the focus is, at every stop', async () => {
    const { page } = await browser.open(address);
    await answered(page);
    const unseen: string[] = [];
    let stops = 0;
    for (; stops < 250; stops++) {
      await page.keyboard.press('Tab');
      const stop = await page.evaluate(() => {
        const element = document.activeElement;
        if (element === null || element === document.body) return null;
        // A file's control shows its focus on the label that stands for it.
        const shown = element.matches('.file') ? element.nextElementSibling : element;
        const style = getComputedStyle(shown ?? element);
        const seen = style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2;
        return { seen, name: `${element.tagName} ${element.id} ${element.textContent}` };
      });
      if (stop === null) break;
      if (!stop.seen) unseen.push(stop.name);
    }
    expect(unseen).toEqual([]);
    expect(stops).toBeGreaterThan(40);
  });

  it('leads past the form to the answer', async () => {
    const { page } = await browser.open(address);
    await answered(page);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('answer');
    // And the fragment of a heading opens no room.
    expect(await page.locator('.sharing .status').textContent()).toBe('');
  });
});
