import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { checkFitInput } from '../../src/check-fit-input.js';
import type { FitInput } from '../../src/fit-input.js';
import { ROOT, useBrowser } from './harness.js';
import { answered, control, fromNode, sentences, useTryPage } from './try-page.js';

/** A room of the try-it page goes into a file and a link and comes back as it was, and what strangers send does no harm. */

const browser = useBrowser();
const { address } = useTryPage();

const example = (name: string): FitInput => {
  const input: unknown = JSON.parse(readFileSync(join(ROOT, 'docs/examples', name), 'utf8'));
  if (!isGood(input)) throw new Error(`${name} is no good input.`);
  return input;
};

function isGood(input: unknown): input is FitInput {
  return checkFitInput(input).length === 0;
}

async function openFile(page: Page, text: string, name = 'room.json'): Promise<void> {
  const file = { name, mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.locator('#open-file').setInputFiles(file);
}

async function savedFile(page: Page): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as a file' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('elbowroom-room.json');
  return readFileSync(await download.path(), 'utf8');
}

async function madeLink(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Make a link' }).click();
  const link = page.getByLabel('Link that holds the whole room');
  await link.waitFor();
  return link.inputValue();
}

const status = (page: Page): Promise<string | null> => page.locator('.sharing .status').textContent();

describe('the file', () => {
  it.each(['garden-room.json', 'tape-room.json'])('holds all of %s, opened and saved again', async (name) => {
    const input = example(name);
    const { page, problems } = await browser.open(address);
    await openFile(page, JSON.stringify(input));
    await expect.poll(() => sentences(page), { timeout: 20_000 }).toEqual(fromNode(input).words);
    expect(JSON.parse(await savedFile(page))).toEqual(input);
    expect(problems).toEqual([]);
  });

  it('holds what was written last, before it is reckoned', async () => {
    const { page } = await browser.open(address);
    await answered(page);
    await page.getByLabel('Reckon at every change').uncheck();
    await page.locator(control('room.outline[2][1]')).fill('5 m');
    const saved: unknown = JSON.parse(await savedFile(page));
    expect(saved).toMatchObject({ room: { outline: [{}, {}, ['5.6 m', '5 m'], {}] } });
    expect(await page.locator('.stale').isVisible()).toBe(true);
  });

  it('that is none is refused, and nothing changes', async () => {
    const { page, problems } = await browser.open(address);
    await answered(page);
    for (const [text, said] of [
      ['no JSON', 'That is no JSON file: nothing was opened.'],
      ['[1, 2]', 'That file holds no room and table: nothing was opened.'],
      [`{"a": "${'x'.repeat(600_000)}"}`, 'That is too large to be a room: nothing was opened.'],
    ] as const) {
      await openFile(page, text);
      await expect.poll(() => status(page)).toBe(said);
    }
    expect(await page.locator(control('room.outline[1][0]')).inputValue()).toBe('5.6 m');
    expect(problems).toEqual([]);
  });

  it('with slips is opened all the same, and every slip is told at its place', async () => {
    const { page, problems } = await browser.open(address);
    await answered(page);
    const slips = {
      room: {
        outline: [[0, 0], ['6 m', 0], ['6 m'], 'corner'],
        obstacles: [{ name: 'post', footprint: { center: ['1 m', 'x'], diameter: '' } }],
      },
      table: 'no-such-table',
    };
    await openFile(page, JSON.stringify(slips));
    await page.locator('#problems').waitFor();
    expect(await page.locator('#problems li').count()).toBe(checkFitInput(slips).length);
    expect(await page.locator(control('table:table')).getAttribute('aria-invalid')).toBe('true');
    expect(
      await page.locator(control('room.obstacles[0].footprint.diameter')).getAttribute('aria-invalid'),
    ).toBe('true');
    expect(JSON.parse(await savedFile(page))).toEqual(slips);
    expect(problems).toEqual([]);
  });
});

describe('the link', () => {
  it('opens the whole room elsewhere, and in a page that is open', async () => {
    const input = example('garden-room.json');
    const first = await browser.open(address);
    await openFile(first.page, JSON.stringify(input));
    await answered(first.page);
    const link = await madeLink(first.page);
    expect(link.startsWith(`${address}#room=`)).toBe(true);

    const second = await browser.open(link);
    await expect.poll(() => sentences(second.page), { timeout: 20_000 }).toEqual(fromNode(input).words);
    expect(JSON.parse(await savedFile(second.page))).toEqual(input);

    const third = await browser.open(address);
    await answered(third.page);
    await third.page.evaluate((hash) => {
      window.location.hash = hash;
    }, new URL(link).hash);
    await expect.poll(() => sentences(third.page), { timeout: 20_000 }).toEqual(fromNode(input).words);
    expect([...first.problems, ...second.problems, ...third.problems]).toEqual([]);
  });

  it('leaves the room alone that it was made from', async () => {
    const { page } = await browser.open(address);
    await answered(page);
    await madeLink(page);
    await page.locator(control('room.outline[1][0]')).fill('6 m');
    await answered(page);
    expect(await page.locator(control('room.outline[1][0]')).inputValue()).toBe('6 m');
  });

  const packed = (text: string | Buffer): string => `#room=1z.${deflateSync(text).toString('base64url')}`;
  const inScript = '</script><script>window.hurt = true</script><img src=x onerror="window.hurt = true">';

  it.each([
    ['damaged', '#room=1z.AAAA', 'The link is damaged or was cut short: nothing was opened.'],
    [
      'of another version',
      '#room=9q.AAAA',
      'The link is of a kind that this page does not know: nothing was opened.',
    ],
    [
      'very large once unfolded',
      packed(Buffer.alloc(20_000_000, ' ')),
      'That is too large to be a room: nothing was opened.',
    ],
    ['no object', packed('[]'), 'That file holds no room and table: nothing was opened.'],
    [
      'no text',
      packed(Buffer.from([0xc3, 0x28])),
      'The link is damaged or was cut short: nothing was opened.',
    ],
  ])('that is %s is refused', async (_, fragment, said) => {
    const { page, problems } = await browser.open(address + fragment);
    await expect.poll(() => status(page)).toBe(said);
    await answered(page);
    expect(problems).toEqual([]);
  });

  it.each([
    [
      'keys of its own',
      '{"__proto__": {"x": 1}, "constructor": [], "room": {"__proto__": []}, "table": "toString"}',
    ],
    [
      'lists without end',
      JSON.stringify({ room: { outline: Array(20_000).fill([0, 0]) }, cues: Array(9000).fill('') }),
    ],
    [
      'other things than text',
      '{"room": {"outline": [[{}, []], null, true], "tape": 5}, "table": 3, "cues": {"0": 1}}',
    ],
    ['nothing', '{}'],
  ])('with %s opens with problems told, and the page goes on', async (_, text) => {
    const { page, problems } = await browser.open(address + packed(text));
    await page.locator('#problems').waitFor();
    await page.getByRole('button', { name: 'Start again' }).click();
    await answered(page);
    expect(problems).toEqual([]);
  });

  it('shows the words of a stranger as words', async () => {
    const hostile = {
      room: {
        outline: [
          [0, 0],
          ['6 m', 0],
          ['6 m', '4.6 m'],
          [0, '4.6 m'],
        ],
        obstacles: [
          { name: inScript, footprint: { center: ['3 m', '15 cm'], length: '1 m', width: '20 cm' } },
        ],
        doors: [{ name: `${inScript} too`, hinge: [0, '1 m'], latch: [0, '1.8 m'], opens: 'in' }],
      },
      table: {
        name: inScript,
        field: { length: '2 m', width: '1 m' },
        outer: { length: '2.3 m', width: '1.3 m' },
      },
    };
    const { page, problems } = await browser.open(address + packed(JSON.stringify(hostile)));
    await answered(page);
    expect(await page.locator('.sentences-body').textContent()).toContain('<img src=x');
    const made = await page.evaluate(() => {
      const drawing = document.querySelector('.drawing-sheet')?.shadowRoot;
      const all = [document, ...(drawing === null || drawing === undefined ? [] : [drawing])];
      return {
        hurt: 'hurt' in window,
        images: all.flatMap((root) => [...root.querySelectorAll('img, image, foreignObject')]).length,
        scripts: document.scripts.length,
        drawn: drawing?.querySelectorAll('path').length ?? 0,
      };
    });
    expect(made).toMatchObject({ hurt: false, images: 0, scripts: 1 });
    expect(made.drawn).toBeGreaterThan(10);
    expect(problems).toEqual([]);
  });
});
