import { type RenderedImage, Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { assessFit } from '../../../src/assess-fit.js';
import type { FitInput } from '../../../src/fit-input.js';
import { renderPlan } from '../../../src/render-plan.js';
import { renderShot } from '../../../src/render-shot.js';
import { cornersOf } from '../../../src/report/plan/boxes.js';
import type { PlanOptions } from '../../../src/report/plan/plan-options.js';
import { HOSTILE_NAMES, SAMPLES } from './plan-samples.js';
import { readXml, textBoxes } from './read-svg.js';

/** 200 dots an inch, in dots a millimetre of the drawing. */
const DOTS = 200 / 25.4;

function raster(svg: string): RenderedImage {
  return new Resvg(svg, {
    fitTo: { mode: 'zoom', value: DOTS * (25.4 / 96) },
    font: { loadSystemFonts: true, defaultFontFamily: 'DejaVu Sans', sansSerifFamily: 'DejaVu Sans' },
  }).render();
}

const HOSTILE: FitInput = {
  room: {
    outline: [
      [0, 0],
      [9000, 0],
      [9000, 7000],
      [0, 7000],
    ],
    obstacles: HOSTILE_NAMES.map((name, i) => ({
      name,
      footprint: { center: [500 + 900 * i, 400], length: 400, width: 400 },
    })),
  },
  table: 'pool-8ft-home',
};

const DRAWINGS: readonly (readonly [string, () => string])[] = [
  ...Object.entries(SAMPLES).map(([name, input]) => [name, () => plan(input)] as const),
  ['turned, portrait, in feet', () => plan(SAMPLES.turned, { orientation: 'portrait', unit: 'ftin' })],
  ['game room in feet on A3', () => plan(SAMPLES.gameRoom, { unit: 'ftin', sheet: 'A3' })],
  ['hostile names', () => plan(HOSTILE)],
  [
    'a shot',
    () =>
      renderShot(SAMPLES.gameRoom, assessFit(SAMPLES.gameRoom), {
        ball: { x: 0, y: -460 },
        direction: -90,
        cue: 1900,
      }),
  ],
];

function plan(input: FitInput, options: PlanOptions = {}): string {
  return renderPlan(input, assessFit(input), options);
}

describe('on paper', () => {
  for (const [name, draw] of DRAWINGS) {
    it(`leaves the margins blank and keeps every letter in its box: ${name}`, () => {
      const svg = draw();
      const image = raster(svg);
      const { width, height, pixels } = image;
      // The frame's line is half a millimetre, its outer half in the margin.
      const blank = Math.floor(9.6 * DOTS);
      let inked = 0;
      let astray = 0;
      for (let y = 0; y < height; y++)
        for (let x = 0; x < width; x++) {
          const at = 4 * (y * width + x);
          if (pixels[at] + pixels[at + 1] + pixels[at + 2] === 3 * 255) continue;
          inked++;
          if (x < blank || y < blank || x >= width - blank || y >= height - blank) astray++;
        }
      expect(astray).toBe(0);
      expect(inked).toBeGreaterThan(1000);

      // The letters alone, each dot of ink in the box of some text. Machines without fonts have no letters to look at.
      const letters = raster(
        `${svg.slice(0, svg.indexOf('>') + 1)}${(svg.match(/<text .*?<\/text>/gs) ?? []).join('')}</svg>`,
      );
      const boxes = textBoxes(readXml(svg)).map(({ box }) =>
        cornersOf({ ...box, width: box.width + 0.3, height: box.height + 0.3 }),
      );
      const covered = new Uint8Array(letters.width * letters.height);
      for (const [a, b, c, d] of boxes) {
        const xs = [a, b, c, d].map(([x]) => x * DOTS);
        const ys = [a, b, c, d].map(([, y]) => y * DOTS);
        for (let y = Math.floor(Math.min(...ys)); y <= Math.max(...ys); y++)
          for (let x = Math.floor(Math.min(...xs)); x <= Math.max(...xs); x++) {
            const px = (x + 0.5) / DOTS - a[0];
            const py = (y + 0.5) / DOTS - a[1];
            const along = px * (b[0] - a[0]) + py * (b[1] - a[1]);
            const down = px * (d[0] - a[0]) + py * (d[1] - a[1]);
            const inside =
              along >= 0 &&
              along <= (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2 &&
              down >= 0 &&
              down <= (d[0] - a[0]) ** 2 + (d[1] - a[1]) ** 2;
            if (inside) covered[y * letters.width + x] = 1;
          }
      }
      // The getter copies all of them each time.
      const ink = letters.pixels;
      let outside = 0;
      for (let at = 0; at < covered.length; at++) if (ink[4 * at + 3] > 64 && covered[at] === 0) outside++;
      expect(outside).toBe(0);
    });
  }
});
