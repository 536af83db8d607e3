import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENGLISH } from '../../docs/try/probe/strings.js';
import { assessFit } from '../../src/assess-fit.js';
import type { FitInput } from '../../src/fit-input.js';
import type { FitReport } from '../../src/report/fit-report.js';
import { classifyShot, type ShotAnswer } from '../../src/stroke/classify-shot.js';
import { buildProbePage } from './fixtures/probe/build.js';
import {
  ROOT,
  type StaticServer,
  screenshot,
  serve,
  sidewaysScroll,
  useBrowser,
  VIEWPORTS,
  violationsOf,
} from './harness.js';

/** One shot in the probe, by pointer, finger, keys and numbers: it answers as classifyShot does in Node for the same numbers. */

const browser = useBrowser();
const folder = mkdtempSync(join(tmpdir(), 'elbowroom-probe-'));
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
const taped: FitInput = JSON.parse(readFileSync(join(ROOT, 'docs/examples/tape-room.json'), 'utf8'));
/** Tight all round, with a low ceiling on one side: all three classes are near each other. */
const attic: FitInput = {
  room: {
    outline: [
      [0, 0],
      [4600, 0],
      [4600, 3500],
      [0, 3500],
    ],
    ceiling: [
      [
        [0, 0, 1450],
        [4600, 0, 1450],
        [0, 3500, 2900],
      ],
    ],
    obstacles: [
      { name: 'the bench', footprint: { center: [2300, 3300], length: 1500, width: 350 }, to: 450 },
      { name: 'the post', footprint: { center: [900, 700], diameter: 140 } },
      {
        name: 'the lamp',
        footprint: { center: [2300, 1750], length: 1200, width: 300 },
        from: 1500,
        to: 1800,
      },
    ],
  },
  table: 'pool-7ft-bar',
  pose: { x: 2300, y: 1750, turn: 0 },
};

async function open(input: FitInput, options: Parameters<typeof browser.open>[1] = {}) {
  const opened = await browser.open(server.url, options);
  const report = await opened.page.evaluate((asked) => window.probePage.show(asked), input);
  if (report.pose !== null) await opened.page.waitForFunction('window.probePage.frames.length > 0');
  return { ...opened, report, stage: opened.page.getByRole('application', { name: ENGLISH.planLabel }) };
}

/** What the page says of the shot at hand. */
async function said(page: Page) {
  await settle(page);
  const number = async (label: string) => Number(await page.getByLabel(label).inputValue());
  const fact = async (name: string) =>
    (await page.locator('.probe-facts div', { hasText: name }).locator('dd').textContent()) ?? '';
  const { facts } = ENGLISH;
  return {
    x: await number(ENGLISH.ballX),
    y: await number(ENGLISH.ballY),
    direction: await number(ENGLISH.direction),
    class: (await page.locator('.probe-class').textContent()) ?? '',
    elevation: await fact(facts.elevation),
    rail: await fact(facts.rail),
    meets: await fact(facts.meets),
    player: await fact(facts.player),
    drawnClass: (await page.locator('.probe-word').textContent()) ?? '',
  };
}

/** Waits until what was asked has been drawn. */
async function settle(page: Page): Promise<void> {
  await page.evaluate('new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))');
}

function classified(input: FitInput, report: FitReport, shot: { x: number; y: number; direction: number }) {
  if (report.pose === null) throw new Error('The table stands nowhere.');
  return classifyShot({
    room: input.room,
    table: input.table,
    pose: report.pose,
    cue: input.cues?.[0],
    stroke: input.stroke,
    ball: { x: shot.x, y: shot.y },
    direction: shot.direction,
  });
}

function inWords({ class: kind, elevation, railElevation, meets, canStand }: ShotAnswer) {
  const angle = (degrees: number | null) =>
    degrees === null ? ENGLISH.noElevation : ENGLISH.degrees(degrees);
  return {
    class: ENGLISH.classes[kind],
    drawnClass: ENGLISH.classes[kind],
    elevation: angle(elevation),
    rail: angle(railElevation),
    meets: meets.length === 0 ? ENGLISH.nothing : meets.join(', '),
    player: canStand ? ENGLISH.stands : ENGLISH.noStanding,
  };
}

async function agrees(page: Page, input: FitInput, report: FitReport) {
  const answer = await said(page);
  const expected = inWords(classified(input, report, answer));
  expect(answer).toMatchObject(expected);
  return { ...answer, kind: answer.class };
}

/** Where a point of the table's frame is on the screen, from the ball that the page draws there itself. */
async function screenOf(page: Page, x: number, y: number) {
  await page.getByLabel(ENGLISH.ballX).fill(String(x));
  await page.getByLabel(ENGLISH.ballY).fill(String(y));
  await page.getByLabel(ENGLISH.ballY).blur();
  await settle(page);
  // The same scrolling every time, wherever the inputs are.
  await page.evaluate("document.querySelector('.probe-stage').scrollIntoView({ block: 'center' })");
  const box = await page.locator('.probe-plan [data-part="ball"]').boundingBox();
  if (box === null) throw new Error('No ball is drawn.');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

describe('the shot by pointer', () => {
  it('lays the ball where the press is and points the butt where it is drawn to', async () => {
    const { page, problems, report } = await open(garden);
    const from = await screenOf(page, 400, 100);
    const to = await screenOf(page, 900, 400);
    await screenOf(page, -800, -300);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    const laid = await agrees(page, garden, report);
    // One pixel of the plan is some 10 mm.
    expect(Math.hypot(laid.x - 400, laid.y - 100)).toBeLessThan(15);
    await page.mouse.move(to.x, to.y, { steps: 6 });
    await page.mouse.up();
    const turned = await agrees(page, garden, report);
    expect([turned.x, turned.y]).toEqual([laid.x, laid.y]);
    const wanted = (Math.atan2(300, 500) * 180) / Math.PI;
    expect(Math.abs(turned.direction - wanted)).toBeLessThan(3);
    expect(problems).toEqual([]);
  });

  it('turns the cue where somebody presses beside the cloth, and by its grip', async () => {
    const { page, report, stage } = await open(garden);
    const middle = await screenOf(page, 0, 0);
    const box = await stage.boundingBox();
    if (box === null) throw new Error('There is no plan.');
    await page.mouse.click(middle.x, middle.y - 120);
    const up = await agrees(page, garden, report);
    expect(Math.abs(up.direction - 90)).toBeLessThan(1);
    expect([up.x, up.y]).toEqual([0, 0]);
    const grip = await page.locator('.probe-plan [data-part="grip"]').boundingBox();
    if (grip === null) throw new Error('There is no grip.');
    await page.mouse.move(grip.x + grip.width / 2, grip.y + grip.height / 2);
    await page.mouse.down();
    await page.mouse.move(middle.x - 200, middle.y, { steps: 5 });
    await page.mouse.up();
    const left = await agrees(page, garden, report);
    expect(Math.abs(left.direction - 180)).toBeLessThan(1);
  });

  it('agrees with classifyShot all over a tight room, in every class', async () => {
    const { page, problems, report } = await open(attic);
    const middle = await screenOf(page, 0, 0);
    const corner = await screenOf(page, 900, 400);
    const kinds = new Set<string>();
    for (const [u, v, dx, dy] of [
      [0, 0, 1, 0.2],
      [0.9, 0.5, 1, 0],
      [-0.9, -0.9, -1, 1],
      [0.2, -0.95, 0.1, 1],
      [0.7, 0.9, -0.2, -1],
      [-0.5, 0.1, 1, 0],
      [-0.9, 0.3, -1, -0.1],
    ] as const) {
      const ball = {
        x: middle.x + u * (corner.x - middle.x),
        y: middle.y + v * (corner.y - middle.y),
      };
      await page.mouse.move(ball.x, ball.y);
      await page.mouse.down();
      await page.mouse.move(ball.x + 60 * dx, ball.y + 60 * dy, { steps: 3 });
      await page.mouse.up();
      kinds.add((await agrees(page, attic, report)).kind);
    }
    expect([...kinds].sort()).toEqual(['Blocked', 'Cramped', 'Open']);
    expect(problems).toEqual([]);
  });

  it('works with a finger on a phone, without taking the page’s scrolling', async () => {
    const { page, report, stage } = await open(taped, { viewport: VIEWPORTS.phone, touch: true });
    const spot = await screenOf(page, 300, 100);
    await screenOf(page, 0, 0);
    await page.touchscreen.tap(spot.x, spot.y);
    const laid = await agrees(page, taped, report);
    expect(Math.hypot(laid.x - 300, laid.y - 100)).toBeLessThan(40);
    await stage.scrollIntoViewIfNeeded();
    const box = await stage.boundingBox();
    if (box === null) throw new Error('There is no plan.');
    await page.touchscreen.tap(box.x + box.width / 2, box.y + 12);
    const turned = await agrees(page, taped, report);
    expect([turned.x, turned.y]).toEqual([laid.x, laid.y]);
    expect(turned.direction).not.toBe(laid.direction);
    const action = (selector: string) =>
      page.evaluate((found) => {
        const element = document.querySelector(found);
        return element === null ? '' : getComputedStyle(element).touchAction;
      }, selector);
    expect(await action('.probe-stage')).toContain('pan-y');
    expect(await action('.probe-field')).toBe('none');
  });
});

describe('the shot by keys and numbers', () => {
  it('moves and turns by keys, as the plan shows them', async () => {
    const { page, problems, report, stage } = await open(attic);
    await stage.focus();
    for (const key of ['Home', 'Shift+ArrowRight', 'ArrowUp', 'ArrowUp', 'ArrowLeft'])
      await page.keyboard.press(key);
    const moved = await agrees(page, attic, report);
    expect([moved.x, moved.y]).toEqual([90, 20]);
    const { direction } = moved;
    await page.keyboard.press('PageUp');
    await page.keyboard.press('+');
    await page.keyboard.press('-');
    await page.keyboard.press('-');
    const turned = await agrees(page, attic, report);
    expect(turned.direction).toBe((direction + 14) % 360);
    for (let k = 0; k < 24; k++) {
      await page.keyboard.press('PageDown');
      await agrees(page, attic, report);
    }
    expect(problems).toEqual([]);
  });

  it('moves the way of the arrow for a table across the room', async () => {
    const { page, report, stage } = await open(taped);
    expect(report.pose?.turn).toBe(90);
    await stage.focus();
    await page.keyboard.press('Home');
    await page.keyboard.press('Shift+ArrowUp');
    const moved = await agrees(page, taped, report);
    expect([moved.x, moved.y]).toEqual([100, 0]);
  });

  it('is told in words after a pause, and takes the keys only on the plan', async () => {
    const { page, stage } = await open(attic);
    await stage.focus();
    await page.keyboard.press('Home');
    const spoken = page.locator('.probe-answer [role="status"]');
    await page.waitForFunction(
      "document.querySelector('.probe-answer [role=status]').textContent.includes('Ball 0 along and 0 across')",
    );
    expect(await spoken.getAttribute('aria-live')).toBe('polite');
    await page.getByLabel(ENGLISH.direction).focus();
    await page.keyboard.press('Home');
    await page.keyboard.press('ArrowUp');
    expect((await said(page)).x).toBe(0);
  });

  it('takes numbers, keeps what is being typed, and puts right what is out of range', async () => {
    const { page, report } = await open(attic);
    const input = page.getByLabel(ENGLISH.ballX);
    await page.getByLabel(ENGLISH.ballY).fill('-123.5');
    await page.getByLabel(ENGLISH.direction).fill('-90');
    await input.fill('99999');
    expect(await input.inputValue()).toBe('99999');
    await input.blur();
    const answer = await agrees(page, attic, report);
    expect(answer.y).toBe(-123.5);
    expect(answer.x).toBeGreaterThan(800);
    expect(answer.x).toBeLessThan(1100);
    await page.getByLabel(ENGLISH.direction).blur();
    await input.fill('');
    await input.blur();
    expect((await said(page)).x).toBe(answer.x);
  });

  it('draws the side elevation of the shot at hand', async () => {
    const { page, problems, report, stage } = await open(attic);
    await stage.focus();
    await page.keyboard.press('Home');
    await page.waitForTimeout(300);
    const group = page.getByRole('group', { name: ENGLISH.elevationLabel });
    expect(await group.locator('svg').count()).toBe(1);
    const answer = await agrees(page, attic, report);
    const elevation = group.locator('[data-part="angle-text"]');
    expect(await elevation.textContent()).toContain(answer.elevation.replace('°', ''));
    expect(problems).toEqual([]);
  });
});

describe('the probe on the page', () => {
  it('knows the other pieces that the answer has placed', async () => {
    const { page } = await open(garden);
    const plain = assessFit({ ...garden, detail: 'shots' });
    const ring = [
      [5200, 2200],
      [5800, 2200],
      [5800, 2700],
      [5200, 2700],
    ] as const;
    const piece = {
      name: 'the bar table',
      kind: null,
      pose: { x: 5500, y: 2450, turn: 0 },
      given: true,
      fits: true,
      problems: [],
      ring,
      from: 0,
      to: 1100,
      gaps: [],
      zones: [],
    };
    const report: FitReport = {
      ...plain,
      arrangement: {
        complete: true,
        pieces: [piece],
        ways: [],
        sharing: [],
        value: { value: 0, upperBound: 0, placed: 1, play: 0, apart: 0 },
        bounds: { floor: { needed: 0, available: 0 }, wall: { needed: 0, available: 0 } },
        advice: [],
        layouts: 1,
        stopped: false,
      },
    };
    await page.evaluate(([input, shown]) => window.probePage.showReport(input, shown), [
      garden,
      report,
    ] as const);
    await page.getByLabel(ENGLISH.ballX).fill('1000');
    await page.getByLabel(ENGLISH.ballY).fill('0');
    await page.getByLabel(ENGLISH.direction).fill('0');
    const room = {
      ...garden.room,
      obstacles: [...(garden.room.obstacles ?? []), { name: piece.name, footprint: ring, to: 1100 }],
    };
    const answer = await agrees(page, { ...garden, room }, report);
    expect(answer.meets).toContain('the bar table');
    expect(await page.locator('.probe-elevation').textContent()).toContain('the bar table');
  });

  it('says that there is no place, and comes back with the next answer', async () => {
    const { page, problems } = await open({
      ...garden,
      room: {
        outline: [
          [0, 0],
          [2000, 0],
          [2000, 2000],
          [0, 2000],
        ],
      },
    });
    expect(await page.getByText(ENGLISH.noPlace).isVisible()).toBe(true);
    expect(await page.getByRole('application').count()).toBe(0);
    expect(await page.getByRole('slider').count()).toBe(0);
    const report = await page.evaluate((asked) => window.probePage.show(asked), attic);
    await agrees(page, attic, report);
    expect(await page.getByText(ENGLISH.noPlace).isVisible()).toBe(false);
    await page.evaluate('window.probePage.clear()');
    expect(await page.locator('#probe').textContent()).toBe('');
    expect(problems).toEqual([]);
  });

  it('passes axe and scrolls no page sideways, on phone and desktop, light and dark', async () => {
    for (const [name, options] of [
      ['phone', { viewport: VIEWPORTS.phone }],
      ['desktop', { viewport: VIEWPORTS.desktop }],
      ['dark', { viewport: VIEWPORTS.tablet, colorScheme: 'dark', reducedMotion: 'reduce' }],
    ] as const) {
      const { page, problems } = await open(garden, options);
      await page.waitForTimeout(600);
      expect(await violationsOf(page), name).toEqual([]);
      expect(await sidewaysScroll(page), name).toBe(0);
      await screenshot(page, `probe-${name}`);
      expect(problems).toEqual([]);
    }
  });

  it('shows the focus on the plan', async () => {
    const { page, stage } = await open(garden);
    await page.keyboard.press('Tab');
    expect(await stage.evaluate((element) => element === document.activeElement)).toBe(true);
    expect(await stage.evaluate((element) => getComputedStyle(element).outlineStyle)).toBe('solid');
  });
});
