import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessFit } from '../../../src/assess-fit.js';
import { DEFAULTS } from '../../../src/equipment/defaults.js';
import type { FitInput } from '../../../src/fit-input.js';
import { InputError } from '../../../src/input-error.js';
import { renderShot, type ShotInput } from '../../../src/render-shot.js';
import type { FitReport } from '../../../src/report/fit-report.js';
import { lies, overlap } from '../../../src/report/plan/boxes.js';
import { classifyShot } from '../../../src/stroke/classify-shot.js';
import { SAMPLES } from './plan-samples.js';
import {
  everyElement,
  numberOf,
  partsOf,
  pointsOf,
  readXml,
  textBoxes,
  textOf,
  type XmlElement,
} from './read-svg.js';

const SEED = 61_203;
const { detail: _, ...INPUT } = SAMPLES.gameRoom;
const REPORT = assessFit(INPUT);
const { table } = REPORT;
const R = table.ballDiameter / 2;
const B = DEFAULTS.stroke.tipOffsetShare * R;
const CUE = 57 * 25.4;
/** The same table where many shots are cramped or blocked. */
const TIGHT: FitInput = { ...INPUT, room: { ...SAMPLES.tooTight.room } };
const TIGHT_REPORT = assessFit(TIGHT);

const drawn = (shot: ShotInput, input = INPUT, report = REPORT): XmlElement =>
  readXml(renderShot(input, report, shot));

function scaleOf(root: XmlElement): number {
  return Number(/1:(\d+) on A\d/.exec(textOf(root))?.[1]);
}

/** From paper to the plane of the shot: t from the ball's centre, z above the floor, mm. */
function toPlane(root: XmlElement): (point: readonly [number, number]) => readonly [number, number] {
  const scale = scaleOf(root);
  const [ball] = partsOf(root, 'ball').map((g) => [...everyElement(g)][1]);
  const x = numberOf(ball, 'cx');
  const y = numberOf(ball, 'cy');
  return ([px, py]) => [(px - x) * scale, table.bedHeight + R - (py - y) * scale];
}

function judged(shot: ShotInput, input = INPUT, report = REPORT) {
  const { pose } = report;
  if (pose === null) throw new Error('no place');
  return classifyShot({ room: input.room, table: 'pool-7ft-bar', pose, cue: CUE, ...shot });
}

const qx = (table.field.length - table.ballDiameter) / 2;
const qy = (table.field.width - table.ballDiameter) / 2;
const anyShot = fc.record({
  ball: fc.record({
    x: fc.oneof(fc.constantFrom(-qx, qx), fc.double({ min: -qx, max: qx, noNaN: true })),
    y: fc.oneof(fc.constantFrom(-qy, qy), fc.double({ min: -qy, max: qy, noNaN: true })),
  }),
  direction: fc.double({ min: -360, max: 360, noNaN: true }),
});

describe('renderShot', () => {
  it('draws the elevation that classifyShot answers, in its words, on an orderly sheet', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(anyShot, (shot) => {
        const answer = judged(shot, TIGHT, TIGHT_REPORT);
        seen.add(answer.class);
        const root = drawn(shot, TIGHT, TIGHT_REPORT);
        const back = toPlane(root);
        const [[t0, z0], [t1, z1]] = pointsOf(partsOf(root, 'axis')[0]).map(back);
        const theta = (Math.atan2(z1 - z0, t1 - t0) * 180) / Math.PI;
        const wanted = answer.elevation ?? Math.min(answer.railElevation ?? 0, DEFAULTS.stroke.maxElevation);
        expect(theta).toBeCloseTo(wanted, 4);
        expect(t0).toBeCloseTo(0, 3);
        expect(z0).toBeCloseTo(table.bedHeight + R + B / Math.cos((theta * Math.PI) / 180), 2);
        expect(textOf(root)).toContain(
          { open: 'Open:', cramped: 'Cramped:', blocked: 'Blocked:' }[answer.class],
        );
        for (const name of answer.meets)
          expect(textOf(root).replaceAll('\u00a0', ' ')).toContain(name.split(' ')[0]);
        checkSheet(root);
      }),
      { seed: SEED, numRuns: 150 },
    );
    expect([...seen].sort()).toEqual(['blocked', 'cramped', 'open']);
  });

  it('draws the cue clear of nose and rail, touching one where the rail alone lifts it', () => {
    fc.assert(
      fc.property(anyShot, (shot) => {
        const root = drawn(shot);
        const back = toPlane(root);
        const profile = pointsOf(partsOf(root, 'profile')[0]).map(back);
        // Nose, crest and rim are corners two to four of the profile.
        const heights = profile.slice(1, 4);
        const lower = pointsOf(partsOf(root, 'struck')[0]).map(back).slice(0, 3);
        const sideAt = (t: number): number => {
          const i = t > lower[1][0] && lower[2][0] > lower[1][0] ? 1 : 0;
          const [a, b] = [lower[i], lower[i + 1]];
          return a[1] + ((b[1] - a[1]) * (t - a[0])) / (b[0] - a[0]);
        };
        const spare = heights
          .filter(([t]) => t > lower[0][0] && t < lower[2][0])
          .map(([t, z]) => sideAt(t) - z);
        expect(Math.min(...spare, Number.POSITIVE_INFINITY)).toBeGreaterThan(-0.01);
        const { elevation, railElevation } = judged(shot);
        const lifted = railElevation !== null && railElevation > 0 && elevation === railElevation;
        if (lifted && heights.every(([t]) => t < lower[2][0])) expect(Math.min(...spare)).toBeLessThan(0.01);
      }),
      { seed: SEED + 1, numRuns: 150 },
    );
  });

  it('draws cue and backswing as long as they are', () => {
    for (const [shot, swing] of [
      [{ ball: { x: 0, y: 0 }, direction: 180 }, DEFAULTS.stroke.backswing],
      [{ ball: { x: 0, y: -460 }, direction: -90 }, DEFAULTS.stroke.shortBackswing],
    ] as const) {
      const root = drawn(shot);
      const back = toPlane(root);
      const struck = pointsOf(partsOf(root, 'struck')[0]).map(back);
      const drawnBack = pointsOf(partsOf(root, 'backswing')[0]).map(back);
      const cos = Math.cos(((judged(shot).elevation ?? 0) * Math.PI) / 180);
      expect((struck[2][0] - struck[0][0]) / cos).toBeCloseTo(CUE, 1);
      expect(struck[0][0] / cos).toBeCloseTo(R, 2);
      expect((drawnBack[2][0] - struck[2][0]) / cos).toBeCloseTo(swing, 2);
    }
  });

  it('puts walls, things and their heights where they are', () => {
    // Square off the side: the chimney breast, 350 mm deep, stands before wall 1.
    const shot = { ball: { x: -200, y: -460 }, direction: -90, cue: 1900 };
    const root = drawn(shot);
    const back = toPlane(root);
    const { pose } = REPORT;
    const y = (pose?.y ?? Number.NaN) - 460;
    const [face] = partsOf(root, 'face').map(pointsOf);
    expect(back(face[0])[0]).toBeCloseTo(y, 2);
    const things = partsOf(root, 'obstacle').map((g) =>
      [...everyElement(g)].slice(1).map(pointsOf)[1].map(back),
    );
    expect(things.length).toBe(1);
    expect(things[0][0][0]).toBeCloseTo(y - 350, 2);
    expect(things[0].map(([, z]) => z)).toEqual([0, 0, 2400, 2400].map((z) => expect.closeTo(z, 1)));
    expect(textOf(root)).toContain('chimney breast');
    expect(judged(shot).class).toBe('blocked');
  });

  it('measures what is behind the butt', () => {
    const shot = { ball: { x: 600, y: 0 }, direction: 0 };
    const root = drawn(shot);
    const [line] = partsOf(root, 'butt').map((g) => pointsOf(partsOf(g, 'dimension-line')[0]));
    const [text] = partsOf(root, 'butt-text').map(textOf);
    expect((line[1][0] - line[0][0]) * scaleOf(root)).toBeCloseTo(Number(text), -0.31);
    const { pose } = REPORT;
    const elevation = ((judged(shot).elevation ?? 0) * Math.PI) / 180;
    const behind = 6400 - (pose?.x ?? 0) - 600 - (R + 150 + CUE) * Math.cos(elevation);
    expect(Math.abs(Number(text) - behind)).toBeLessThanOrEqual(0.5 + 1e-6);
  });

  it('gives the same bytes again', () => {
    const shot = { ball: { x: 100, y: 50 }, direction: 77 };
    expect(renderShot(INPUT, REPORT, shot)).toBe(renderShot(INPUT, REPORT, shot));
  });

  it('follows a sloping ceiling', () => {
    const input = SAMPLES.attic;
    const report = assessFit(input);
    const root = readXml(renderShot(input, report, { ball: { x: 0, y: 500 }, direction: 90 }));
    checkSheet(root);
    expect(partsOf(root, 'ceiling').length).toBeGreaterThan(0);
  });

  it('refuses a shot that is none, by path', () => {
    const codes = (shot: unknown, report: FitReport = REPORT, input = INPUT): string[] => {
      const given: ShotInput = JSON.parse(JSON.stringify(shot));
      try {
        renderShot(input, report, given);
      } catch (error) {
        if (error instanceof InputError) return error.problems.map((p) => `${p.path} ${p.code}`);
        throw error;
      }
      return [];
    };
    expect(codes({ ball: { x: 0, y: 600 }, direction: 0 })).toEqual(['shot.ball.y ball-off-table']);
    expect(codes({ ball: { x: 0 }, direction: 'up', angle: 3 })).toEqual([
      'shot.angle unknown-property',
      'shot.ball.y missing',
      'shot.direction not-a-number',
    ]);
    expect(codes({ ball: { x: 0, y: 0 }, direction: 0, cue: 3 })).toEqual(['shot.cue cue-too-short']);
    expect(codes({ ball: { x: 0, y: 0 }, direction: 0 }, assessFit(SAMPLES.cell), SAMPLES.cell)).toEqual([
      'report.pose no-place',
    ]);
  });
});

function checkSheet(root: XmlElement): void {
  const [width, height] = ['width', 'height'].map((name) =>
    Number.parseFloat(root.attributes.get(name) ?? ''),
  );
  const texts = textBoxes(root);
  const frame = { left: 10, top: 10, right: width - 10, bottom: height - 10 };
  for (const [i, { text, box }] of texts.entries()) {
    expect(lies(box, frame), text).toBe(true);
    const shrunk = { ...box, width: box.width - 0.01, height: box.height - 0.01 };
    for (const other of texts.slice(i + 1))
      expect(overlap(shrunk, other.box), `${text}, ${other.text}`).toBe(false);
  }
  for (const e of everyElement(root))
    for (const value of e.attributes.values()) expect(value).not.toMatch(/NaN|Infinity|undefined|e[-+]\d/);
}
