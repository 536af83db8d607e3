import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FINE_PLANS, MODEST_PLANS, type SamplePlan } from '../../docs/try/probe/frame-budget.js';
import { CELL_CLASSES } from '../../docs/try/probe/shot-map.js';
import { ENGLISH } from '../../docs/try/probe/strings.js';
import { checkRoom } from '../../src/check-fit-input.js';
import type { FitInput } from '../../src/fit-input.js';
import type { FitReport } from '../../src/report/fit-report.js';
import { checkCue, checkStroke } from '../../src/stroke/check-stroke.js';
import { classifyShot } from '../../src/stroke/classify-shot.js';
import { prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import { type ShotTally, shotShares } from '../../src/stroke/shot-shares.js';
import { standingRoom } from '../../src/stroke/standing.js';
import { buildProbePage } from './fixtures/probe/build.js';
import { ROOT, type StaticServer, screenshot, serve, useBrowser, violationsOf } from './harness.js';

/** The sliders of the probe: shares and map for another cue or stroke, coarse at once and fine after. */

const browser = useBrowser();
const folder = mkdtempSync(join(tmpdir(), 'elbowroom-sliders-'));
let server: StaticServer;

beforeAll(async () => {
  await buildProbePage(folder);
  server = await serve(folder);
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

const garden: FitInput = JSON.parse(readFileSync(join(ROOT, 'docs/examples/garden-room.json'), 'utf8'));
const input: FitInput = { ...garden, detail: 'shots' };

async function open(asked: FitInput, fragment = '#worker') {
  const opened = await browser.open(server.url + fragment);
  const report = await opened.page.evaluate((question) => window.probePage.show(question), asked);
  await opened.page.waitForFunction('window.probePage.frames.length > 0');
  return { ...opened, report };
}

async function slide(page: Page, name: string, value: number): Promise<void> {
  await page.getByRole('slider', { name }).fill(String(value));
}

async function state(page: Page, wanted: string): Promise<void> {
  await page.waitForFunction(
    (name) => document.querySelector<HTMLElement>('.probe-map-figure')?.dataset.state === name,
    wanted,
  );
}

/** From now on the page notes each state of the map, and whether its progress was shown: some last no longer than a frame. */
async function noteStates(page: Page): Promise<() => Promise<readonly string[]>> {
  await page.evaluate(() => {
    const figure = document.querySelector<HTMLElement>('.probe-map-figure');
    const progress = document.querySelector('progress');
    const noted: string[] = [];
    const note = () =>
      noted.push(`${figure?.dataset.state}${progress?.hidden === false ? ' with progress' : ''}`);
    if (figure !== null) new MutationObserver(note).observe(figure, { attributeFilter: ['data-state'] });
    Object.assign(window, { noted });
  });
  return async () => {
    const noted: unknown = await page.evaluate('[...new Set(window.noted)]');
    return Array.isArray(noted) ? noted.map(String) : [];
  };
}

/** Open, cramped and blocked, in percent. */
async function shares(page: Page): Promise<readonly number[]> {
  const texts = await page.locator('.probe-shares dd').allTextContents();
  return texts.map((text) => Number.parseFloat(text));
}

function tally(report: FitReport, settings: Settings, { shots, columns, rows }: SamplePlan): ShotTally {
  const { pose, table } = report;
  if (pose === null) throw new Error('The table stands nowhere.');
  const stroke = { ...checkStroke(input.stroke, table.ballDiameter), ...settings.stroke };
  const place = { x: pose.x, y: pose.y, angle: (pose.turn * Math.PI) / 180 };
  const scene = prepareStrokes(checkRoom(input.room), table, place, stroke);
  const cue = { ...checkCue(input.cues?.[0], table), length: settings.cueLength };
  return shotShares(scene, standingRoom(scene), [cue], { shots, grid: { columns, rows } });
}

interface Settings {
  readonly cueLength: number;
  readonly stroke: { readonly backswing: number; readonly margin: number };
}

function percent({ cues }: ShotTally): readonly number[] {
  return cues.flatMap(({ open, cramped, blocked }) => [100 * open, 100 * cramped, 100 * blocked]);
}

function nearly(values: readonly number[], wanted: readonly number[]): void {
  expect(values).toHaveLength(wanted.length);
  // Two decimals are shown; and the browser is not bound to the last bit of a sine.
  for (const [i, value] of values.entries()) expect(Math.abs(value - (wanted[i] ?? 0))).toBeLessThan(0.015);
}

describe('the sliders', () => {
  it('start at the input, with the map and the shares of the answer', async () => {
    const { page, report } = await open(input);
    await state(page, 'report');
    const [cue] = report.cues;
    nearly(await shares(page), [100 * (cue?.shares.open ?? 0), 100 * (cue?.shares.cramped ?? 0), 0]);
    expect(await page.getByText(ENGLISH.atReport).isVisible()).toBe(true);
    expect(await page.getByRole('button', { name: ENGLISH.reset }).isDisabled()).toBe(true);
    expect(await page.locator('output').allTextContents()).toEqual([1448, 150, 20].map(ENGLISH.millimetres));
  });

  it('refine to what the library samples for those settings, in a worker with progress', async () => {
    const { page, report, problems } = await open(input);
    const finest = FINE_PLANS[FINE_PLANS.length - 1];
    if (finest === undefined) throw new Error('Nothing is refined.');
    const settings = { cueLength: 1547.8, stroke: { backswing: 200, margin: 50 } };
    const states = await noteStates(page);
    // In one go, so that nothing is refined in between.
    await page.evaluate(
      ([wanted, names]) => {
        names.forEach((name, i) => {
          const slider = document.querySelector<HTMLInputElement>(`#probe-${name}`);
          if (slider !== null) slider.value = String(wanted[i]);
          slider?.dispatchEvent(new Event('input', { bubbles: true }));
        });
      },
      [
        [settings.cueLength, settings.stroke.backswing, settings.stroke.margin],
        ['cueLength', 'backswing', 'margin'],
      ] as const,
    );
    await state(page, 'fine');
    expect(await states()).toEqual(['coarse with progress', 'refining with progress', 'fine']);
    expect(await page.getByRole('progressbar').isVisible()).toBe(false);
    const wanted = tally(report, settings, finest);
    nearly(await shares(page), percent(wanted));
    expect(wanted.cues[0]?.blocked).toBeGreaterThan(0);
    for (const kind of CELL_CLASSES) {
      const drawn = await page.locator(`.probe-map path[data-class="${kind}"]`).getAttribute('d');
      expect(drawn === '', kind).toBe(!usesClass(wanted, kind));
    }
    expect(await page.getByText(ENGLISH.changed).isVisible()).toBe(true);
    expect(await violationsOf(page)).toEqual([]);
    await screenshot(page, 'probe-sliders');
    expect(problems).toEqual([]);
  });

  it('draw every frame while they move, and settle once for the last value', async () => {
    const { page, report } = await open(input);
    await page.evaluate('window.probePage.frames.length = 0');
    await page.getByRole('slider', { name: ENGLISH.cueLength }).evaluate(async (slider) => {
      if (!(slider instanceof HTMLInputElement)) return;
      for (let k = 0; k < 30; k++) {
        // Several moves a frame are one redraw.
        for (const by of [0, 10]) {
          slider.value = String(1297.8 + 10 * k + by);
          slider.dispatchEvent(new Event('input', { bubbles: true }));
        }
        await new Promise((done) => requestAnimationFrame(done));
      }
    });
    const frames = await page.evaluate('window.probePage.frames');
    if (!Array.isArray(frames)) throw new Error('The page tells no frames.');
    // The one in which the slider is at the input’s own cue shows the answer and tries nothing.
    expect(frames.length).toBeGreaterThan(20);
    expect(frames.length).toBeLessThanOrEqual(31);
    expect(frames.filter(({ shots }) => shots > 0).length).toBeGreaterThan(20);
    await state(page, 'fine');
    const finest = FINE_PLANS[FINE_PLANS.length - 1];
    const settings = { cueLength: 1597.8, stroke: { backswing: 150, margin: 20 } };
    if (finest !== undefined) nearly(await shares(page), percent(tally(report, settings, finest)));
  });

  it('change the shot at hand as well, and the short backswing with the full one', async () => {
    const { page, report } = await open(input);
    const { pose } = report;
    if (pose === null) throw new Error('The table stands nowhere.');
    const shot = { x: 1089, y: 200, direction: 10 };
    await page.getByLabel(ENGLISH.ballX).fill(String(shot.x));
    await page.getByLabel(ENGLISH.ballY).fill(String(shot.y));
    await page.getByLabel(ENGLISH.direction).fill(String(shot.direction));
    const classes = new Set<string>();
    for (const [cue, backswing] of [
      [1007.8, 100],
      [1457.8, 150],
      [1457.8, 0],
      [1697.8, 300],
    ] as const) {
      await slide(page, ENGLISH.cueLength, cue);
      await slide(page, ENGLISH.backswing, backswing);
      await page.evaluate('new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))');
      const expected = classifyShot({
        room: input.room,
        table: input.table,
        pose,
        cue,
        stroke: { backswing, shortBackswing: Math.min(45, backswing) },
        ball: { x: shot.x, y: shot.y },
        direction: shot.direction,
      });
      classes.add(expected.class);
      expect(await page.locator('.probe-class').textContent()).toBe(ENGLISH.classes[expected.class]);
    }
    expect(classes.size).toBeGreaterThan(1);
  });

  it('go back to the input as written, by keys', async () => {
    const { page } = await open(input);
    const before = await shares(page);
    await page.getByRole('slider', { name: ENGLISH.cueLength }).focus();
    for (let k = 0; k < 12; k++) await page.keyboard.press('ArrowRight');
    await state(page, 'fine');
    expect(await page.locator('output').first().textContent()).toBe(ENGLISH.millimetres(1568));
    expect(await shares(page)).not.toEqual(before);
    await page.getByRole('button', { name: ENGLISH.reset }).click();
    await state(page, 'report');
    expect(await shares(page)).toEqual(before);
    expect(await page.getByText(ENGLISH.atReport).isVisible()).toBe(true);
  });

  it('come back to the input exactly, one step there and one back', async () => {
    const { page } = await open(input);
    await page.getByRole('slider', { name: ENGLISH.cueLength }).focus();
    await page.keyboard.press('ArrowRight');
    await state(page, 'fine');
    await page.keyboard.press('ArrowLeft');
    await state(page, 'report');
  });

  it('refine in idle time where the page has no worker, and sample where the answer has no map', async () => {
    const { page, report, problems } = await open(garden, '');
    await state(page, 'fine');
    const modest = MODEST_PLANS[MODEST_PLANS.length - 1];
    const settings = { cueLength: 1347.8, stroke: { backswing: 150, margin: 20 } };
    const states = await noteStates(page);
    await slide(page, ENGLISH.cueLength, settings.cueLength);
    await page.waitForFunction("window.noted.includes('fine')");
    expect(await states()).toEqual(['coarse with progress', 'refining with progress', 'fine']);
    if (modest !== undefined) nearly(await shares(page), percent(tally(report, settings, modest)));
    expect(problems).toEqual([]);
  });
});

function usesClass({ grid }: ShotTally, kind: string): boolean {
  if (grid === null) return false;
  return grid.blocked.some((stopped, cell) => {
    const tight = grid.cramped[cell] ?? 0;
    const share = stopped > 0 ? stopped : tight;
    const name = `${stopped > 0 ? 'blocked' : 'cramped'}${share < 0.25 ? 'Some' : 'Many'}`;
    return share > 0 && name === kind;
  });
}
