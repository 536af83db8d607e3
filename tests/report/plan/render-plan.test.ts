import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessFit } from '../../../src/assess-fit.js';
import { checkRoom } from '../../../src/check-fit-input.js';
import type { FitInput } from '../../../src/fit-input.js';
import { edgeArrays } from '../../../src/geometry/edge-arrays.js';
import { distanceToEdge } from '../../../src/geometry/shape-distance.js';
import { InputError } from '../../../src/input-error.js';
import { parseLength } from '../../../src/length/parse-length.js';
import { renderPlan } from '../../../src/render-plan.js';
import type { FitReport } from '../../../src/report/fit-report.js';
import { lies, overlap } from '../../../src/report/plan/boxes.js';
import type { PlanOptions } from '../../../src/report/plan/plan-options.js';
import { COLOURS } from '../../../src/report/plan/theme.js';
import { openRoomInput, openRooms } from '../../helpers/open-rooms.js';
import { HOSTILE_NAMES, SAMPLES } from './plan-samples.js';
import { everyElement, partsOf, pointsOf, readXml, textBoxes, textOf, type XmlElement } from './read-svg.js';

const SEED = 20_417;
const REPORTS = new Map<FitInput, FitReport>();

function reportOf(input: FitInput): FitReport {
  const known = REPORTS.get(input);
  if (known !== undefined) return known;
  const report = assessFit(input);
  REPORTS.set(input, report);
  return report;
}

function drawn(input: FitInput, options: PlanOptions = {}): XmlElement {
  return readXml(renderPlan(input, reportOf(input), options));
}

function scaleOf(root: XmlElement): number {
  const found = /1:(\d+) on A\d/.exec(textOf(root));
  if (found === null) throw new Error('no scale in the title block');
  return Number(found[1]);
}

/** From paper to the room, by the corners of the outline. */
function toRoom(root: XmlElement, input: FitInput): (point: readonly [number, number]) => [number, number] {
  const scale = scaleOf(root);
  const [path] = partsOf(root, 'outline');
  const [[px, py]] = pointsOf(path);
  const [[x, y]] = checkRoom(input.room).outline;
  return ([qx, qy]) => [x + (qx - px) * scale, y - (qy - py) * scale];
}

const long = ([ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]) =>
  Math.hypot(bx - ax, by - ay);

/** The laws that every drawing keeps. */
function checkLaws(root: XmlElement, input: FitInput): void {
  const [width, height] = ['width', 'height'].map((name) =>
    Number.parseFloat(root.attributes.get(name) ?? ''),
  );
  expect(root.attributes.get('viewBox')).toBe(`0 0 ${width} ${height}`);
  const ids = [...everyElement(root)].flatMap((e) => e.attributes.get('id') ?? []);
  expect(new Set(ids).size).toBe(ids.length);
  for (const id of root.attributes.get('aria-labelledby')?.split(' ') ?? ['none']) expect(ids).toContain(id);
  for (const e of everyElement(root))
    for (const value of e.attributes.values()) {
      const target = /url\(#([^)]+)\)/.exec(value);
      if (target !== null) expect(ids).toContain(target[1]);
      expect(value).not.toMatch(/NaN|Infinity|undefined|e[-+]\d/);
    }
  // Nothing but text boxes that keep apart, on the sheet, at a size that can be read.
  const texts = textBoxes(root);
  const frame = { left: 10, top: 10, right: width - 10, bottom: height - 10 };
  for (const [i, { text, size, box }] of texts.entries()) {
    expect(size * 0.72, text).toBeGreaterThanOrEqual(2.5);
    expect(lies(box, frame), `${text} on the sheet`).toBe(true);
    for (const other of texts.slice(i + 1)) {
      const shrunk = { ...box, width: box.width - 0.01, height: box.height - 0.01 };
      expect(overlap(shrunk, other.box), `${text} over ${other.text}`).toBe(false);
    }
  }
  // Scale: drawn corners lie as far apart as those of the room.
  const scale = scaleOf(root);
  const corners = pointsOf(partsOf(root, 'outline')[0]);
  const { outline } = checkRoom(input.room);
  expect(corners.length).toBe(outline.length);
  outline.forEach((a, i) => {
    for (const j of [(i + 1) % outline.length, (i + 2) % outline.length])
      expect(Math.abs(long(corners[i], corners[j]) * scale - long(a, outline[j]))).toBeLessThan(0.01);
  });
}

describe('renderPlan', () => {
  for (const [name, input] of Object.entries(SAMPLES)) {
    it(`keeps the laws of a drawing: ${name}`, () => {
      for (const options of [
        {},
        { unit: 'ftin', theme: 'dark' },
        { unit: 'cm', sheet: 'A3' },
        { orientation: 'portrait', unit: 'm' },
      ] as const)
        checkLaws(drawn(input, options), input);
    });
  }

  it('keeps them in real rooms, with dimensions that say what they measure', () => {
    let seen = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: openRooms.length - 1 }),
        fc.constantFrom('pool-7ft-bar', 'pool-8ft-home', 'pool-9ft'),
        fc.constantFrom('mm' as const, 'cm' as const, 'in' as const, 'ftin' as const),
        (index, table, unit) => {
          const input: FitInput = {
            room: openRoomInput(openRooms[index]),
            table,
            search: { turns: 'square' },
          };
          const root = drawn(input, { unit });
          checkLaws(root, input);
          seen += checkDimensions(root, unit);
        },
      ),
      { seed: SEED, numRuns: 40 },
    );
    expect(seen).toBeGreaterThan(100);
  }, 60_000);

  it('says with every dimension what it measures', () => {
    for (const unit of ['mm', 'cm', 'in', 'ftin'] as const)
      for (const input of Object.values(SAMPLES))
        expect(checkDimensions(drawn(input, { unit }), unit)).toBeGreaterThan(1);
  });

  it('dimensions every wall of a simple room, or its like on the other side', () => {
    const texts = partsOf(drawn(SAMPLES.gameRoom), 'wall-dimension-text').map(textOf);
    expect(texts.sort()).toEqual(['1200', '4200', '5100', '5200', '6400', '900'].sort());
  });

  it('draws each gap from the nose to the thing that it names, as far as the report says', () => {
    for (const input of [SAMPLES.gameRoom, SAMPLES.attic, SAMPLES.turned]) {
      const root = drawn(input);
      const report = reportOf(input);
      const scene = checkRoom(input.room);
      const back = toRoom(root, input);
      const { pose, table } = report;
      if (pose === null) throw new Error('no place');
      const angle = (pose.turn * Math.PI) / 180;
      const lines = partsOf(root, 'gap').map((gap) => pointsOf(partsOf(gap, 'dimension-line')[0]).map(back));
      expect(lines.length).toBe(4);
      lines.forEach(([from, to], i) => {
        const gap = report.gaps[i];
        expect(long(from, to)).toBeCloseTo(gap.distance, 2);
        // In the table's frame the foot lies on the cushion's nose.
        const u = Math.cos(angle) * (from[0] - pose.x) + Math.sin(angle) * (from[1] - pose.y);
        const v = Math.cos(angle) * (from[1] - pose.y) - Math.sin(angle) * (from[0] - pose.x);
        const off = gap.cushion.startsWith('end')
          ? Math.abs(u) - table.field.length / 2
          : Math.abs(v) - table.field.width / 2;
        expect(Math.abs(off)).toBeLessThan(0.01);
        const walls = edgeArrays([scene.outline]);
        const wall = scene.wallNames.indexOf(gap.to);
        const thing = scene.obstacles.find((o) => o.name === gap.to);
        const ring = thing === undefined ? null : edgeArrays([thing.ring]);
        const distances =
          ring === null
            ? [distanceToEdge(walls, wall, to[0], to[1])]
            : thing?.ring.map((_, k) => distanceToEdge(ring, k, to[0], to[1]));
        expect(Math.min(...(distances ?? [Number.NaN]))).toBeLessThan(0.02);
      });
    }
  });

  it('joins the points of the witnesses and rounds what is missing up', () => {
    for (const input of [SAMPLES.gameRoom, SAMPLES.tooTight]) {
      const root = drawn(input);
      const back = toRoom(root, input);
      const limits = reportOf(input)
        .limits.filter((l) => l.witness !== null)
        .slice(0, 8);
      const lines = partsOf(root, 'witness').map((line) => pointsOf(line).map(back));
      expect(lines.length).toBe(limits.length);
      expect(limits.length).toBeGreaterThan(0);
      limits.forEach(({ witness, spare, name }, i) => {
        expect(witness?.[0] && long(lines[i][0], witness[0])).toBeLessThan(0.01);
        expect(witness?.[1] && long(lines[i][1], witness[1])).toBeLessThan(0.01);
        const said = new RegExp(`${name}: (\\d+) (missing|to spare)`).exec(textOf(root));
        expect(said?.[2]).toBe(spare !== null && spare < 0 ? 'missing' : 'to spare');
        const number = Number(said?.[1]);
        expect(number - Math.abs(spare ?? Number.NaN)).toBeLessThan(1);
        if ((spare ?? 0) < 0) expect(number).toBeGreaterThanOrEqual(-(spare ?? 0) - 1e-6);
        else expect(number).toBeLessThanOrEqual((spare ?? 0) + 1e-6);
      });
    }
  });

  it('gives the same bytes again, also for a report that went through JSON', () => {
    const input = SAMPLES.gameRoom;
    const report = reportOf(input);
    const svg = renderPlan(input, report);
    expect(renderPlan(input, report)).toBe(svg);
    const parsed: FitReport = JSON.parse(JSON.stringify(report));
    expect(renderPlan(input, parsed)).toBe(svg);
  });

  it('puts patterns beside colours where strokes are cramped or blocked', () => {
    const root = drawn(SAMPLES.tooTight);
    const [shots] = partsOf(root, 'shots');
    const areas = [...everyElement(shots)].filter((e) => e.name === 'path');
    expect(areas.length).toBeGreaterThan(0);
    for (const area of areas)
      expect(area.attributes.get('fill')).toMatch(/^url\(#elbowroom-(cramped|blocked)-(some|many)\)$/);
    const defined = [...everyElement(root)].filter((e) => e.name === 'pattern');
    expect(defined.length).toBeGreaterThan(1);
  });

  it('covers the cells of the map that are not open and no others', () => {
    const input = SAMPLES.tooTight;
    const { shots } = reportOf(input);
    if (shots === undefined) throw new Error('no map');
    const scale = scaleOf(drawn(input));
    const cell = (shots.length / shots.columns) * (shots.width / shots.rows);
    const shaded = shots.open.filter((_, i) => shots.blocked[i] > 0 || shots.cramped[i] > 0).length;
    const [map] = partsOf(drawn(input), 'shots');
    let area = 0;
    for (const path of everyElement(map)) {
      if (path.name !== 'path') continue;
      for (const block of (path.attributes.get('d') ?? '').split('Z').filter((d) => d !== '')) {
        const corners = pointsOf({ ...path, attributes: new Map([['d', `${block}Z`]]) });
        area += long(corners[0], corners[1]) * long(corners[1], corners[2]);
      }
    }
    expect((area * scale * scale) / cell).toBeCloseTo(shaded, 3);
  });

  it('keeps its colours apart, light and dark', () => {
    for (const mode of ['light', 'dark'] as const) {
      const { paper, cloth, ink, fine, ...marks } = COLOURS[mode];
      for (const ground of [paper, cloth]) {
        expect(contrast(ink, ground)).toBeGreaterThanOrEqual(7);
        expect(contrast(fine, ground)).toBeGreaterThanOrEqual(4.5);
        for (const mark of Object.values(marks)) expect(contrast(mark, ground)).toBeGreaterThanOrEqual(4.5);
      }
    }
  });

  it('is light on paper and follows the screen, or stays as it is told', () => {
    const input = SAMPLES.cell;
    const report = reportOf(input);
    const auto = renderPlan(input, report);
    expect(auto).toContain('@media screen and (prefers-color-scheme:dark)');
    expect(auto).toContain('var(--er-ink,');
    for (const theme of ['light', 'dark'] as const) {
      const svg = renderPlan(input, report, { theme });
      expect(svg).not.toContain('prefers-color-scheme');
      expect(svg).toContain(`fill="${COLOURS[theme].paper}"`);
    }
  });

  it('takes hostile names as text', () => {
    const names = HOSTILE_NAMES;
    const room = {
      outline: [
        [0, 0],
        [9000, 0],
        [9000, 7000],
        [0, 7000],
      ] as const,
      obstacles: names.map((name, i) => ({
        name,
        footprint: { center: [500 + 900 * i, 400] as const, length: 400, width: 400 },
      })),
      doors: [
        {
          name: `${names[0]} door`,
          hinge: [0, 3000] as const,
          latch: [0, 3800] as const,
          opens: 'in' as const,
        },
      ],
    };
    const table = {
      name: names[1],
      field: { length: 2240, width: 1120 },
      outer: { length: 2540, width: 1420 },
    };
    const input: FitInput = { room, table };
    const root = drawn(input);
    checkLaws(root, input);
    const known = new Set([
      'svg',
      'title',
      'desc',
      'style',
      'defs',
      'pattern',
      'clipPath',
      'path',
      'g',
      'rect',
      'circle',
      'text',
    ]);
    for (const { name } of everyElement(root)) expect(known).toContain(name);
    expect(textOf(root)).toContain('<script>');
  });

  it('draws the room alone where the table has no place', () => {
    const root = drawn(SAMPLES.cell);
    expect(reportOf(SAMPLES.cell).pose).toBeNull();
    expect(textOf(root)).toContain('None: the table cannot stand anywhere in this room.');
    for (const part of ['table', 'reach', 'gap', 'limit', 'shots', 'axes'])
      expect(partsOf(root, part)).toEqual([]);
    expect(partsOf(root, 'wall-dimension').length).toBe(2);
  });

  it('draws a table where it cannot stand, and names what is in its way', () => {
    const root = drawn(SAMPLES.standsInTheWay);
    expect(reportOf(SAMPLES.standsInTheWay).verdict).toBe('none');
    expect(partsOf(root, 'table').length).toBe(1);
    expect(partsOf(root, 'reach')).toEqual([]);
    expect(textOf(root)).toContain('In the way: pillar');
  });

  it('leaves out a table that was put beside the room', () => {
    const input: FitInput = { ...SAMPLES.cell, pose: { x: 90_000, y: -40_000 } };
    const root = drawn(input);
    checkLaws(root, input);
    expect(partsOf(root, 'table')).toEqual([]);
    expect(textOf(root)).toContain('The place given for the table');
  });

  it('draws what hangs, what is cut and what is lower in different lines', () => {
    const root = drawn(SAMPLES.gameRoom);
    const dashes = (part: string) =>
      partsOf(root, part).flatMap((g) =>
        partsOf(g, 'footprint').map((e) => e.attributes.get('stroke-dasharray')),
      );
    expect(dashes('obstacle-overhead')).toEqual(['3 0.75']);
    expect(dashes('obstacle-low')).toEqual([undefined]);
    expect(dashes('obstacle-cut')).toEqual([undefined, undefined, undefined]);
    expect(textOf(root)).toContain('1850 to 2100');
  });

  it('draws lines of equal height where the ceiling has it', () => {
    const input = SAMPLES.attic;
    const root = drawn(input);
    const back = toRoom(root, input);
    const lines = partsOf(root, 'contour').map((g) => pointsOf([...everyElement(g)][1]).map(back));
    const texts = partsOf(root, 'contour-text').map((g) => Number(textOf(g)));
    expect(texts.length).toBe(lines.length);
    expect(texts.length).toBeGreaterThan(5);
    // 1,700 mm up in 2,000 mm, from both eaves at 1,200 mm.
    lines.forEach((line, i) => {
      for (const [x, y] of line) {
        expect(1200 + 0.85 * Math.min(y, 5600 - y)).toBeCloseTo(texts[i], 1);
        expect(Math.min(Math.abs(x), Math.abs(x - 7000))).toBeLessThan(0.01);
      }
    });
  });

  it('draws a scale bar as long as it says', () => {
    for (const [unit, mm] of [
      ['mm', 1],
      ['ftin', 304.8],
    ] as const) {
      const root = drawn(SAMPLES.gameRoom, { unit });
      const [bar] = partsOf(root, 'scale-bar');
      const blocks = [...everyElement(bar)].filter((e) => e.name === 'path').map(pointsOf);
      const paper = Math.max(...blocks.flat().map(([x]) => x)) - Math.min(...blocks.flat().map(([x]) => x));
      const said = textBoxes(bar).map(({ text }) => Number.parseFloat(text));
      expect(paper * scaleOf(root)).toBeCloseTo(Math.max(...said) * mm, 2);
    }
  });

  it('takes the sheet and the scale that it is given, and the largest that goes else', () => {
    const input = SAMPLES.gameRoom;
    const root = drawn(input, { sheet: 'A3', orientation: 'portrait', scale: 75 });
    expect([root.attributes.get('width'), root.attributes.get('height')]).toEqual(['297mm', '420mm']);
    expect(scaleOf(root)).toBe(75);
    expect(scaleOf(drawn(input))).toBe(50);
    expect(scaleOf(drawn(SAMPLES.cell))).toBe(20);
    expect(drawn(SAMPLES.hall).attributes.get('width')).toMatch(/mm$/);
  });

  it('refuses what it cannot do, by path', () => {
    const input = SAMPLES.gameRoom;
    const report = reportOf(input);
    const codes = (run: () => unknown): string[] => {
      try {
        run();
      } catch (error) {
        if (error instanceof InputError) return error.problems.map((p) => `${p.path} ${p.code}`);
        throw error;
      }
      return [];
    };
    const options = (value: unknown): PlanOptions => JSON.parse(JSON.stringify(value));
    expect(codes(() => renderPlan(input, report, options({ sheets: 'A4', unit: 'ell', id: '1 <' })))).toEqual(
      ['options.sheets unknown-property', 'options.unit unknown-word', 'options.id bad-id'],
    );
    expect(codes(() => renderPlan(input, report, { scale: 20, sheet: 'A4' }))).toEqual([
      'options.scale does-not-fit',
    ]);
    expect(codes(() => renderPlan(input, report, { scale: 0 }))).toEqual(['options.scale too-small']);
    expect(codes(() => renderPlan({ ...input, table: 'pool-9ft' }, report))).toEqual([
      'report.table another-question',
    ]);
    expect(codes(() => renderPlan({ ...input, cues: [1200] }, report))).toEqual([
      'report.cues another-question',
    ]);
    const none: FitReport = JSON.parse('{}');
    expect(codes(() => renderPlan(input, none))).toEqual(['report not-a-report']);
    const bad: FitInput = { ...input, cues: ['long'] };
    expect(codes(() => renderPlan(bad, report))[0]).toMatch(/^cues\[0\] /);
  });
});

/** Compares every written dimension with its line; gives how many there were. */
function checkDimensions(root: XmlElement, unit: 'mm' | 'cm' | 'in' | 'ftin'): number {
  const scale = scaleOf(root);
  let seen = 0;
  for (const part of ['wall-dimension', 'gap']) {
    const lines = partsOf(root, part).map((g) => pointsOf(partsOf(g, 'dimension-line')[0]));
    const texts = partsOf(root, `${part}-text`).map(textOf);
    // Where a number stands for a label the order is lost; those are read from the key by other tests.
    if (texts.length !== lines.length) continue;
    const step = unit === 'mm' || unit === 'cm' ? 1 : 3.175;
    lines.forEach((line, i) => {
      const mm = parseLength(/[\u2032\u2033]/.test(texts[i]) ? texts[i] : `${texts[i]} ${unit}`);
      expect(Math.abs(mm - long(line[0], line[1]) * scale), texts[i]).toBeLessThanOrEqual(step / 2 + 0.01);
      seen++;
    });
  }
  return seen;
}

/** WCAG 2.2: (L1 + 0.05) / (L2 + 0.05) of the relative luminances. */
function contrast(a: string, b: string): number {
  const luminance = (colour: string): number => {
    const [r, g, bl] = [1, 3, 5].map((i) => {
      const c = Number.parseInt(colour.slice(i, i + 2), 16) / 255;
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * bl;
  };
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (high + 0.05) / (low + 0.05);
}
