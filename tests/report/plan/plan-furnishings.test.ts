import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import type { PieceReport } from '../../../src/arrangement/arrangement-report.js';
import { checkRoom } from '../../../src/check-fit-input.js';
import { InputError } from '../../../src/input-error.js';
import { renderPlan } from '../../../src/render-plan.js';
import type { FitReport } from '../../../src/report/fit-report.js';
import { cornersOf, lies, overlap } from '../../../src/report/plan/boxes.js';
import type { PlanOptions } from '../../../src/report/plan/plan-options.js';
import { type ArrangedSample, crowdedSample, smallSample, turnedSample } from '../sample-arrangement.js';
import { HOSTILE_NAMES } from './plan-samples.js';
import { everyElement, partsOf, pointsOf, readXml, textBoxes, textOf, type XmlElement } from './read-svg.js';

const SAMPLES: Readonly<Record<string, ArrangedSample>> = {
  crowded: crowdedSample(),
  small: smallSample(),
  turned: turnedSample(),
};

const OPTIONS: readonly PlanOptions[] = [
  {},
  { unit: 'ftin', theme: 'dark' },
  { unit: 'cm', sheet: 'A4', scale: 100 },
  { orientation: 'portrait', unit: 'm' },
];

/** Both sides of a point in the drawing are off by this at most, mm on paper. */
const OFF = 0.01;

type Paper = readonly [number, number];

function drawn({ input, report }: ArrangedSample, options: PlanOptions = {}): XmlElement {
  return readXml(renderPlan(input, report, options));
}

/** From the room to paper, by the corners of the outline and the scale in the title block. */
function onPaper(root: XmlElement, { input }: ArrangedSample): (point: readonly [number, number]) => Paper {
  const scale = Number(/1:(\d+) on A\d/.exec(textOf(root))?.[1]);
  const [[px, py]] = pointsOf(partsOf(root, 'outline')[0]);
  const [[x, y]] = checkRoom(input.room).outline;
  return ([qx, qy]) => [px + (qx - x) / scale, py - (qy - y) / scale];
}

function expectSame(found: readonly Paper[], wanted: readonly Paper[], what: string): void {
  expect(found.length, what).toBe(wanted.length);
  found.forEach(([x, y], i) => {
    expect(Math.abs(x - wanted[i][0]), what).toBeLessThan(OFF);
    expect(Math.abs(y - wanted[i][1]), what).toBeLessThan(OFF);
  });
}

/** What every drawing keeps: ids once and found, no number that is none, texts on the sheet, apart and legible. */
function checkLaws(root: XmlElement): void {
  const [width, height] = ['width', 'height'].map((name) =>
    Number.parseFloat(root.attributes.get(name) ?? ''),
  );
  const ids = [...everyElement(root)].flatMap((e) => e.attributes.get('id') ?? []);
  expect(new Set(ids).size).toBe(ids.length);
  for (const e of everyElement(root))
    for (const value of e.attributes.values()) {
      const target = /url\(#([^)]+)\)/.exec(value);
      if (target !== null) expect(ids).toContain(target[1]);
      expect(value).not.toMatch(/NaN|Infinity|undefined|e[-+]\d/);
    }
  const frame = { left: 10, top: 10, right: width - 10, bottom: height - 10 };
  const texts = textBoxes(root);
  for (const [i, { text, size, box }] of texts.entries()) {
    expect(size * 0.72, text).toBeGreaterThanOrEqual(2.5);
    expect(lies(box, frame), `${text} on the sheet`).toBe(true);
    for (const other of texts.slice(i + 1)) {
      const shrunk = { ...box, width: box.width - 0.01, height: box.height - 0.01 };
      expect(overlap(shrunk, other.box), `${text} over ${other.text}`).toBe(false);
    }
  }
}

const standing = ({ arrangement }: ArrangedSample): readonly PieceReport[] =>
  arrangement.pieces.filter(({ pose }) => pose !== null);

function inPolygon(ring: readonly Paper[], [x, y]: Paper): boolean {
  let inside = false;
  ring.forEach(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length];
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  });
  return inside;
}

describe('other pieces in the plan', () => {
  for (const [name, sample] of Object.entries(SAMPLES)) {
    it(`keeps the laws of a drawing: ${name}`, () => {
      for (const options of OPTIONS) checkLaws(drawn(sample, options));
    });

    it(`draws every piece that has a place where it stands, once, and no other: ${name}`, () => {
      for (const options of OPTIONS) {
        const root = drawn(sample, options);
        const at = onPaper(root, sample);
        const groups = ['low', 'cut', 'overhead'].flatMap((kind) => partsOf(root, `piece-${kind}`));
        const rings = groups.map((group) => pointsOf(partsOf(group, 'footprint')[0]));
        const pieces = standing(sample);
        expect(rings.length).toBe(pieces.length);
        for (const { name: piece, ring } of pieces) {
          const wanted = ring.map(at);
          const near = rings.filter(
            ([[x, y], ...rest]) =>
              rest.length + 1 === wanted.length && Math.hypot(x - wanted[0][0], y - wanted[0][1]) < OFF,
          );
          expect(near.length, piece).toBe(1);
          expectSame(near[0], wanted, piece);
        }
      }
    });

    it(`draws every use zone where it lies, in the pattern of how it is used: ${name}`, () => {
      const root = drawn(sample);
      const at = onPaper(root, sample);
      const zones = standing(sample).flatMap((piece) =>
        piece.zones.map((zone) => ({ ...zone, piece: piece.name })),
      );
      const isShared = (piece: string, zone: string): boolean =>
        sample.arrangement.sharing.some((one) => one.piece === piece && one.zone === zone);
      for (const [part, wanted] of [
        ['zone', zones.filter(({ piece, name: zone }) => !isShared(piece, zone))],
        ['zone-shared', zones.filter(({ piece, name: zone }) => isShared(piece, zone))],
      ] as const) {
        const found = partsOf(root, part).flatMap((group) =>
          [...everyElement(group)].filter(({ name: element }) => element === 'path'),
        );
        expect(found.length).toBe(wanted.length);
        found.forEach((path, i) => {
          expectSame(pointsOf(path), wanted[i].ring.map(at), `${wanted[i].piece}: ${wanted[i].name}`);
          expect(path.attributes.get('fill')).toBe(`url(#elbowroom-${part})`);
          expect(path.attributes.get('stroke-dasharray')).toBe('6 0.75 0.25 0.75 0.25 0.75');
        });
      }
    });

    it(`marks the front of each piece that people stand before: ${name}`, () => {
      const root = drawn(sample);
      const at = onPaper(root, sample);
      const marks = partsOf(root, 'front').map((group) =>
        pointsOf([...everyElement(group)].filter((e) => e.name === 'path')[0]),
      );
      const pieces = standing(sample).filter(({ zones, from }) => zones.length > 0 || from === 0);
      expect(marks.length).toBe(pieces.length);
      pieces.forEach(({ name: piece, pose }, i) => {
        if (pose === null) throw new Error('no place');
        const [a, b, tip] = marks[i];
        const [x, y] = at([pose.x, pose.y]);
        const foot: Paper = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
        // On paper y runs down: the front lies a quarter turn anticlockwise from the length.
        const front = ((pose.turn + 90) * Math.PI) / 180;
        const ahead = (p: Paper): number => Math.cos(front) * (p[0] - x) - Math.sin(front) * (p[1] - y);
        const aside = (p: Paper): number => Math.sin(front) * (p[0] - x) + Math.cos(front) * (p[1] - y);
        expect(Math.abs(aside(foot)), piece).toBeLessThan(OFF);
        expect(Math.abs(aside(tip)), piece).toBeLessThan(OFF);
        expect(ahead(tip), piece).toBeGreaterThan(ahead(foot) + 1);
        const { ring } = sample.arrangement.pieces.find((one) => one.name === piece) ?? { ring: [] };
        expect(Math.abs(ahead(foot) - Math.max(...ring.map((p) => ahead(at(p))))), piece).toBeLessThan(OFF);
      });
    });

    it(`draws each clear way that was found along its path: ${name}`, () => {
      const root = drawn(sample);
      const at = onPaper(root, sample);
      const drawnEdges = partsOf(root, 'way').flatMap((group) => {
        const [path] = [...everyElement(group)].filter((e) => e.name === 'path');
        const points = pointsOf(path);
        return points.slice(1).map((b, i) => [points[i], b] as const);
      });
      const apart = (p: Paper, q: Paper): number => Math.hypot(p[0] - q[0], p[1] - q[1]);
      let seen = 0;
      for (const { path } of sample.arrangement.ways) {
        const points = path.map(at);
        for (let i = 1; i < points.length; i++) {
          const [a, b] = [points[i - 1], points[i]];
          const times = drawnEdges.filter(
            ([p, q]) => (apart(p, a) < OFF && apart(q, b) < OFF) || (apart(p, b) < OFF && apart(q, a) < OFF),
          ).length;
          expect(times).toBe(1);
          seen++;
        }
      }
      expect(seen).toBeGreaterThan(2);
    });

    it(`names every piece on the plan or in the key, and tells listeners: ${name}`, () => {
      for (const options of OPTIONS) {
        const root = drawn(sample, options);
        const words = textOf(root);
        for (const { name: piece } of sample.arrangement.pieces) expect(words).toContain(piece);
        const [desc] = [...everyElement(root)].filter((e) => e.name === 'desc');
        for (const { name: piece } of sample.arrangement.pieces) expect(textOf(desc)).toContain(piece);
        const [title] = [...everyElement(root)].filter((e) => e.name === 'title');
        expect(textOf(title)).toContain(`${standing(sample).length} other pieces`);
      }
    });

    it(`prints nothing in the margins: ${name}`, () => {
      const dots = 4;
      const { input, report } = sample;
      const image = new Resvg(renderPlan(input, report), {
        fitTo: { mode: 'zoom', value: (dots * 25.4) / 96 },
        font: { loadSystemFonts: true, defaultFontFamily: 'DejaVu Sans', sansSerifFamily: 'DejaVu Sans' },
      }).render();
      const { width, height, pixels } = image;
      const blank = Math.floor(9.6 * dots);
      let astray = 0;
      let inked = 0;
      for (let y = 0; y < height; y++)
        for (let x = 0; x < width; x++) {
          const at = 4 * (y * width + x);
          if (pixels[at] + pixels[at + 1] + pixels[at + 2] === 3 * 255) continue;
          inked++;
          if (x < blank || y < blank || x >= width - blank || y >= height - blank) astray++;
        }
      expect(astray).toBe(0);
      expect(inked).toBeGreaterThan(1000);
    });

    it(`gives the same bytes again, also for a report that went through JSON: ${name}`, () => {
      const { input, report } = sample;
      const svg = renderPlan(input, report);
      const parsed: FitReport = JSON.parse(JSON.stringify(report));
      expect(renderPlan(input, parsed)).toBe(svg);
    });
  }

  it('explains every number on the plan, where the key is too small for that elsewhere on the sheet', () => {
    let continued = 0;
    for (const sample of Object.values(SAMPLES))
      for (const options of OPTIONS) {
        const root = drawn(sample, options);
        const keys = [...partsOf(root, 'legend'), ...partsOf(root, 'legend-continued')];
        const written = keys.flatMap((key) => textBoxes(key).map(({ text }) => text));
        for (const group of partsOf(root, 'number')) expect(written).toContain(textOf(group));
        expect(written.join(' ')).not.toMatch(/and \d+ more/);
        continued += keys.length - 1;
      }
    expect(continued).toBeGreaterThan(0);
  });

  it('keeps names of zones off the bodies that they cover', () => {
    let seen = 0;
    for (const sample of Object.values(SAMPLES)) {
      const root = drawn(sample);
      const at = onPaper(root, sample);
      const names = new Set(standing(sample).flatMap(({ zones }) => zones.map(({ name }) => name)));
      for (const group of partsOf(root, 'zone-text')) {
        expect(names.has(textOf(group))).toBe(true);
        const [{ box }] = textBoxes(group);
        const owners = standing(sample).filter(({ zones }) =>
          zones.some(({ name }) => name === textOf(group)),
        );
        // Several pieces may have a zone of this name; the label lies in one of theirs, off that piece.
        const good = owners.some(({ ring, zones }) => {
          const points = [...cornersOf(box), [box.x, box.y] as const];
          const off = points.every((point) => !inPolygon(ring.map(at), point));
          const on = zones.some((zone) => points.every((point) => inPolygon(zone.ring.map(at), point)));
          return off && on;
        });
        expect(good, textOf(group)).toBe(true);
        seen++;
      }
    }
    expect(seen).toBeGreaterThan(4);
  });

  it('draws bodies as obstacles are drawn: lower, in the height of a level cue, and higher', () => {
    const root = drawn(SAMPLES.crowded);
    const dashes = (part: string): readonly (string | undefined)[] =>
      partsOf(root, part).flatMap((g) =>
        partsOf(g, 'footprint').map((e) => e.attributes.get('stroke-dasharray')),
      );
    // Stools are lower than a level cue; the darts board, the score board and the lamp hang higher.
    expect(dashes('piece-low')).toEqual([undefined, undefined]);
    expect(dashes('piece-overhead')).toEqual(['3 0.75', '3 0.75', '3 0.75']);
    expect(dashes('piece-cut').length).toBe(7);
  });

  it('dimensions the gaps of the table up to the pieces', () => {
    const { report } = SAMPLES.crowded;
    const behind = report.gaps.map(({ to }) => to);
    expect(behind).toContain('sofa');
    expect(partsOf(drawn(SAMPLES.crowded), 'gap').length).toBe(report.gaps.length);
  });

  it('says in the key what has no place, what does not fit, and which ways are missing', () => {
    expect(textOf(drawn(SAMPLES.small))).toContain('Without a place: sofa');
    expect(textOf(drawn(SAMPLES.turned))).toContain('Does not fit where it stands: table football');
    const { input, report, arrangement } = SAMPLES.small;
    const ways = arrangement.ways.map((way) => ({ ...way, found: false, path: [] }));
    const root = readXml(renderPlan(input, { ...report, arrangement: { ...arrangement, ways } }));
    expect(partsOf(root, 'way')).toEqual([]);
    expect(textOf(root)).toContain('No clear way found: door to the table');
    expect(textOf(drawn(SAMPLES.crowded))).toContain('no escape');
  });

  it('draws the pieces too where the table has no place', () => {
    const { input, report } = SAMPLES.small;
    const root = readXml(
      renderPlan(input, { ...report, verdict: 'none', pose: null, gaps: [], cushions: [] }),
    );
    checkLaws(root);
    expect(partsOf(root, 'table')).toEqual([]);
    expect(['low', 'cut'].flatMap((kind) => partsOf(root, `piece-${kind}`)).length).toBe(2);
  });

  it('takes hostile names as text', () => {
    const { input: plain, report, arrangement } = SAMPLES.crowded;
    // Each of its own, as the input asks for.
    const name = (i: number): string => `${HOSTILE_NAMES[i % HOSTILE_NAMES.length]} ${i}`;
    const furnishings = (plain.furnishings ?? []).map((piece, i) => ({ ...piece, name: name(i) }));
    const input = { ...plain, furnishings };
    const pieces = arrangement.pieces.map((piece, i) => ({
      ...piece,
      name: name(i),
      zones: piece.zones.map((zone) => ({ ...zone, name: name(i + 1) })),
    }));
    const ways = arrangement.ways.map((way, i) => ({ ...way, from: name(i), to: name(i + 1), found: i > 3 }));
    const hostile = { ...report, arrangement: { ...arrangement, pieces, ways } };
    for (const options of OPTIONS) {
      const root = readXml(renderPlan(input, hostile, options));
      checkLaws(root);
      for (const { name: element } of everyElement(root))
        expect(element).not.toMatch(/script|foreign|image/i);
    }
  });

  it('refuses the report of another table', () => {
    const { input } = SAMPLES.crowded;
    expect(() => renderPlan(input, SAMPLES.small.report)).toThrow(InputError);
  });

  it('draws nothing of pieces without any', () => {
    const { input, report } = SAMPLES.small;
    const { arrangement, ...rest } = report;
    expect(arrangement).toBeDefined();
    const svg = renderPlan({ ...input, furnishings: [] }, rest);
    expect(svg).not.toContain('--er-zone');
    expect(renderPlan(input, report)).toContain('var(--er-zone,var(--er-own-zone))');
    const root = readXml(svg);
    for (const part of ['zone', 'zone-shared', 'way', 'front', 'piece-low', 'piece-cut', 'piece-overhead'])
      expect(partsOf(root, part)).toEqual([]);
    expect(textOf(root)).not.toContain('Pieces');
  });
});
