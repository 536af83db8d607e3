import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { START } from '../../docs/try/document/start.js';
import { checkFitInput } from '../../src/check-fit-input.js';
import { compareTables } from '../../src/compare-tables.js';
import type { FitInput } from '../../src/fit-input.js';
import { serve, useBrowser, VIEWPORTS } from './harness.js';
import { answered, control, fromNode, sentences, useTryPage } from './try-page.js';

/** The try-it page as a file: a room is written down and judged, and what is wrong with a reading is told beside it. */

const browser = useBrowser();
const { folder, address } = useTryPage();

/** Tab by tab until the control has the focus, as somebody without a pointer gets there. */
async function tabTo(page: Page, id: string): Promise<void> {
  for (let presses = 0; presses < 120; presses++) {
    await page.keyboard.press('Tab');
    if ((await page.evaluate<string>('document.activeElement.id')) === id) return;
  }
  throw new Error(`Tab does not lead to ${id}.`);
}

async function typeInto(page: Page, path: string, text: string): Promise<void> {
  await tabTo(page, `f:${path}`);
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
}

/** Of the part that has the focus. */
const focused = (page: Page, what: string): Promise<string | null> =>
  page.evaluate<string | null>(`document.activeElement.${what}`);

const described = (page: Page, css: string): Promise<string> =>
  page.evaluate<string>(`(() => {
    const ids = document.querySelector(${JSON.stringify(css)}).getAttribute('aria-describedby') ?? '';
    return ids.split(' ').map((id) => document.getElementById(id)?.textContent ?? '').join(' ');
  })()`);

describe('the try-it page', () => {
  it('opens from the file system and from a server, answers, and asks nobody', async () => {
    const server = await serve(folder);
    try {
      for (const place of [address, server.url]) {
        const { page, problems } = await browser.open(place);
        await answered(page);
        expect(await page.title()).toBe('Elbowroom: try it on your room');
        expect(problems).toEqual([]);
      }
    } finally {
      await server.close();
    }
  });

  it('judges a room that is typed in with keys alone as assessFit does in Node', async () => {
    const { page, problems } = await browser.open(address);
    await answered(page);
    await typeInto(page, 'room.outline[1][0]', '20 ft');
    await typeInto(page, 'room.outline[2][0]', '20 ft');
    await typeInto(page, 'room.outline[2][1]', '4.65 m');
    await typeInto(page, 'room.outline[3][1]', '4.65 m');
    await typeInto(page, 'room.tolerance', '5 mm');
    await typeInto(page, 'room.obstacles[0].name', 'the <i>long</i> bench');
    await typeInto(page, 'room.obstacles[0].footprint.turn', '0');
    await tabTo(page, 'f:table:table');
    await page.keyboard.type('Pool 9');
    await tabTo(page, 'f:cues[0]');
    await page.keyboard.type('57');
    // Back up to the second cue's button, which takes it away.
    await tabTo(page, 'f:cues[1]');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    expect(await focused(page, 'ariaLabel')).toBe('Remove cue 2');
    await page.keyboard.press('Enter');
    expect(await focused(page, 'id')).toBe('f:cues[0]');
    for (let presses = 0; (await focused(page, 'type')) !== 'submit' && presses < 20; presses++)
      await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');

    const typed: FitInput = {
      room: {
        outline: [
          ['0 m', '0 m'],
          ['20 ft', '0 m'],
          ['20 ft', '4.65 m'],
          ['0 m', '4.65 m'],
        ],
        ceiling: '2.4 m',
        obstacles: [
          {
            name: 'the <i>long</i> bench',
            footprint: { center: ['2.8 m', '22 cm'], length: '1.6 m', width: '44 cm', turn: 0 },
            to: '78 cm',
            movable: true,
          },
        ],
        doors: [{ name: 'the hall door', hinge: ['0 m', '4 m'], latch: ['0 m', '3.2 m'], opens: 'in' }],
        tolerance: '5 mm',
      },
      table: 'pool-9ft',
      cues: ['57 in'],
    };
    const { report, words } = fromNode(typed);
    await expect.poll(() => sentences(page), { timeout: 20_000 }).toEqual(words);
    await answered(page);
    expect(await page.locator('.verdict').getAttribute('data-verdict')).toBe(report.verdict);
    expect(await page.locator('.sentences-body i').count()).toBe(0);
    expect(problems).toEqual([]);
  });

  it('judges a room by tape readings, and a table by its measurements', async () => {
    const { page, problems } = await browser.open(address);
    await page.getByLabel('tape readings, wall by wall').check();
    await page.locator(control('room.tape.walls[0].length')).fill('4.302 m; 4.298 m');
    await page.locator(control('room.tape.walls[1].corner')).selectOption({ label: 'degrees:' });
    await page.locator('[id="o:room.tape.walls[1].corner"]').fill('90.2');
    await page.getByRole('button', { name: 'Add a door along a wall' }).click();
    await page.locator(control('room.doors[0].start')).fill('30 cm');
    await page.locator(control('room.doors[0].width')).fill('80 cm');
    await page.locator(control('table:table')).selectOption({ label: 'own measurements' });
    await page.locator(control('table.field.length')).fill('2.1 m');
    await page.locator(control('table.ballDiameter')).fill('52.5 mm');
    await page.getByRole('button', { name: 'Reckon', exact: true }).click();
    const { words } = fromNode({
      room: {
        tape: {
          walls: [
            { length: { length: ['4.302 m', '4.298 m'] } },
            { length: '5.6 m', corner: 90.2 },
            { length: '4.3 m' },
            { length: '5.6 m' },
          ],
          diagonals: [{ from: 'A', to: 'C', length: '7.06 m' }],
          heights: ['2.4 m'],
        },
        ceiling: '2.4 m',
        obstacles: [
          {
            name: 'the sideboard',
            footprint: { center: ['2.8 m', '22 cm'], length: '1.6 m', width: '44 cm' },
            to: '78 cm',
            movable: true,
          },
        ],
        doors: [{ wall: 'A', start: '30 cm', width: '80 cm', hinge: 'start', opens: 'in' }],
        tolerance: '10 mm',
      },
      table: {
        field: { length: '2.1 m', width: '1117.6 mm' },
        outer: { length: '2514.6 mm', width: '1397 mm' },
        ballDiameter: '52.5 mm',
      },
      cues: ['58 in', '52 in'],
    });
    await expect.poll(() => sentences(page), { timeout: 20_000 }).toEqual(words);
    expect(problems).toEqual([]);
  });

  it('tells what is wrong with a reading beside it, and takes that back', async () => {
    const { page, problems } = await browser.open(address, { viewport: VIEWPORTS.phone });
    await answered(page);
    const wrong = page.locator(control('room.outline[1][0]'));
    await wrong.fill('5.6');
    expect(await wrong.getAttribute('aria-invalid')).toBeNull();
    await wrong.press('Tab');
    expect(await wrong.getAttribute('aria-invalid')).toBe('true');
    expect(await described(page, control('room.outline[1][0]'))).toContain('"5.6" has no unit');
    // The answer above is another room's by now.
    expect(await page.locator('.stale').isVisible()).toBe(true);
    expect(await page.locator('#problems').isVisible()).toBe(false);

    await page.getByRole('button', { name: 'Reckon', exact: true }).click();
    expect(await focused(page, 'id')).toBe('f:room.outline[1][0]');
    expect(await page.locator('#problems h3').textContent()).toBe('One reading needs another look');
    await page.locator(control('room.obstacles[0].to')).fill('tall');
    await page.locator(control('room.obstacles[0].to')).press('Tab');
    await page.locator('#problems a', { hasText: 'tall' }).click();
    expect(await focused(page, 'id')).toBe('f:room.obstacles[0].to');
    expect(new URL(page.url()).hash).toBe('');

    await page.locator(control('room.obstacles[0].to')).fill('90 cm');
    await wrong.fill('5.6 m');
    await wrong.press('Tab');
    await answered(page);
    expect(await page.locator('#problems').isVisible()).toBe(false);
    expect(await page.locator('[aria-invalid]').count()).toBe(0);
    expect(await wrong.getAttribute('aria-describedby')).toBeNull();
    expect(problems).toEqual([]);
  });

  it('tells what is wrong with a whole row at the row, and says nothing of rows that are still empty', async () => {
    const { page } = await browser.open(address);
    await answered(page);
    await page.locator(control('room.doors[0].latch[1]')).fill('3.9 m');
    await page.locator(control('room.doors[0].latch[1]')).press('Tab');
    const row = page.getByRole('group', { name: 'door 1' });
    expect(await row.locator('.error:visible').textContent()).toContain('100 mm wide from hinge to latch');
    await page.locator(control('room.doors[0].latch[1]')).fill('3.2 m');
    await page.getByRole('button', { name: 'Add a thing' }).click();
    expect(await focused(page, 'id')).toBe('f:room.obstacles[1].name');
    expect(await page.locator('.error:visible').count()).toBe(0);
    await page.getByRole('button', { name: 'Reckon', exact: true }).click();
    expect(await page.locator('.error:visible').count()).toBeGreaterThan(2);
    expect(await focused(page, 'id')).toBe('f:room.obstacles[1].footprint.center[0]');
  });

  it('names problems of what is folded up, and opens it', async () => {
    const { page } = await browser.open(address);
    await answered(page);
    await page.getByText('Stroke and place of the table').click();
    await page.locator(control('stroke.margin')).fill('2 km');
    await page.getByText('Stroke and place of the table').click();
    expect(await page.locator(control('stroke.margin')).isVisible()).toBe(false);
    await page.getByRole('button', { name: 'Reckon', exact: true }).click();
    expect(await focused(page, 'id')).toBe('f:stroke.margin');
  });
});

describe('reckoning', () => {
  it('shows how far it is, and can be stopped', async () => {
    const { page, problems } = await browser.open(address);
    await answered(page);
    // Whether the slates of the largest table pass each of these takes about a second.
    const doors = Array.from({ length: 16 }, (_, i) => ({
      kind: 'doorway',
      width: '80 cm',
      height: '1.98 m',
      depth: '14 cm',
      before: { depth: `${1000 + 20 * i} mm` },
      after: { depth: '1.3 m' },
    }));
    const slow = {
      room: {
        outline: [
          [0, 0],
          ['7.4 m', 0],
          ['7.4 m', '5.4 m'],
          [0, '5.4 m'],
        ],
      },
      table: 'snooker-12ft',
      delivery: { route: doors, maxBoxes: 3_000_000 },
    };
    await page.locator('#open-file').setInputFiles({
      name: 'slow.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(slow)),
    });
    await expect
      .poll(() => page.locator('.step').textContent(), { timeout: 20_000 })
      .toMatch(/^Best place so far has \d+ cm all round; no place has more than \d+ cm$/);
    expect(await page.getByText('Also reckoned with').textContent()).toContain('delivery');
    await page.getByRole('button', { name: 'Stop' }).click();
    expect(await page.locator('.running').isVisible()).toBe(false);
    expect(await page.getByText('Stopped before there was an answer.').isVisible()).toBe(true);
    // And it goes on with the next question.
    await page.getByRole('button', { name: 'Start again' }).click();
    await answered(page);
    expect(problems).toEqual([]);
  });

  it('compares tables as compareTables does', async () => {
    const { page, problems } = await browser.open(address);
    await answered(page);
    await page.locator('#comparison-which').selectOption('snooker');
    await page.getByRole('button', { name: 'Compare', exact: true }).click();
    await page.getByText('tables were compared').waitFor();
    const rows = await page.locator('.comparison tbody').allInnerTexts();
    const tables = ['12ft', '12ft-metric', '10ft', '9ft', '8ft', '7ft', '6ft'].map(
      (size) => `snooker-${size}`,
    );
    const { room, cues = [] } = startInput();
    const compared = compareTables({ room, cues, tables });
    const names = { clear: 'Clear', tight: 'Tight', partial: 'Partial', none: 'No place' };
    expect(rows).toHaveLength(tables.length);
    compared.rows.forEach((row, i) => {
      expect(rows[i]).toContain(row.table.name);
      const verdicts = (rows[i] ?? '').match(/Clear|Tight|Partial|No place/g);
      expect(verdicts).toEqual(row.cues.map(({ verdict }) => names[verdict]));
    });
    expect(problems).toEqual([]);
  });

  it('finds places for other pieces as assessFit does, and for a piece by its measurements', async () => {
    const { page, problems } = await browser.open(address);
    await answered(page);
    await page.getByText('Other pieces in the room').click();
    await page.getByRole('button', { name: 'Add a piece' }).click();
    await page.locator(control('furnishings[0].kind:kind')).selectOption('sofa');
    await page.getByRole('button', { name: 'Add a piece' }).click();
    await page.locator(control('furnishings[1].kind:kind')).selectOption({ label: 'by its measurements' });
    await page.locator(control('furnishings[1].name')).fill('the trunk');
    await page.locator(control('furnishings[1].footprint.length')).fill('70 cm');
    await page.locator(control('furnishings[1].footprint.width')).fill('40 cm');
    await page.locator(control('furnishings[1].height')).fill('45 cm');
    await page.locator(control('furnishings[1].stands')).selectOption('wall');
    await page.getByRole('button', { name: 'Reckon', exact: true }).click();
    const pieces = [
      { kind: 'sofa' },
      {
        name: 'the trunk',
        footprint: { length: '70 cm', width: '40 cm' },
        height: '45 cm',
        stands: 'wall',
      },
    ] as const;
    const { report, words } = fromNode({ ...startInput(), furnishings: pieces });
    await expect.poll(() => sentences(page), { timeout: 30_000 }).toEqual(words);
    const placed = report.arrangement?.pieces.filter(({ fits }) => fits).length;
    expect(await page.locator('.facts').textContent()).toContain(`${placed} of 2 have a place`);
    expect(problems).toEqual([]);
  });

  it('passes the answer on to the probe', async () => {
    const { page } = await browser.open(address);
    await answered(page);
    await page.locator('.probe-root').getByRole('heading', { name: 'Try one shot' }).waitFor();
    expect(await page.locator('.probe-root svg').count()).toBeGreaterThan(1);
  });
});

/** What the page opens with. */
function startInput(): FitInput {
  const start: unknown = START;
  if (!isGood(start)) throw new Error('The page begins with a bad input.');
  return start;
}

function isGood(input: unknown): input is FitInput {
  return checkFitInput(input).length === 0;
}
