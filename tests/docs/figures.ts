/** Figures and pages of the guides that the code itself makes; `npx tsx tests/docs/write-figures.ts` writes them anew. */
import { readFileSync } from 'node:fs';
import { assessFit } from '../../src/assess-fit.js';
import { checkFitInput } from '../../src/check-fit-input.js';
import { CUES } from '../../src/equipment/cues.js';
import { DEFAULTS } from '../../src/equipment/defaults.js';
import { TABLES } from '../../src/equipment/tables.js';
import type { FitInput } from '../../src/fit-input.js';
import { renderShot } from '../../src/render-shot.js';
import { cataloguePage } from './catalogue-page.js';
import { elevationsFigure, type FigureCase } from './elevations-figure.js';
import { standingFigure } from './standing-figure.js';

const ROOT = new URL('../../', import.meta.url);
const isQuestion = (value: unknown): value is FitInput => checkFitInput(value).length === 0;

/** File below docs/guides/ and its text. */
export function figures(): readonly (readonly [file: string, text: string])[] {
  const question: unknown = JSON.parse(readFileSync(new URL('docs/examples/garden-room.json', ROOT), 'utf8'));
  if (!isQuestion(question)) throw new Error('The example is no question.');
  const report = assessFit(question);
  const table = TABLES['pool-8ft-home'];
  const cue = CUES['cue-57in'];
  const frozen = { x: 0, y: -table.field.width / 2 + table.ballDiameter / 2 };
  return [
    [
      'the-model/frozen-ball.svg',
      renderShot(question, report, { ball: frozen, direction: -90 }, { id: 'frozen', unit: 'mm' }),
    ],
    [
      'the-model/off-the-cushion.svg',
      renderShot(question, report, { ball: { x: 0, y: 0 }, direction: -90 }, { id: 'middle', unit: 'mm' }),
    ],
    ['tables-and-cues.md', cataloguePage()],
    ['the-model/standing.svg', standingFigure(table, cue.length)],
    ['the-model/past-a-thing.svg', elevationsFigure(PAST)],
  ];
}

/** One thing of each kind, as far from the ball as shows how it is passed: heights and distances are of the drawing alone. */
const PAST: readonly FigureCase[] = [
  { words: 'stops short of it', from: 0, to: 2200, at: 1760, elevation: 0 },
  { words: 'passes over it', from: 0, to: 720, at: 1150, elevation: 4 },
  { words: 'passes under it', from: 1060, to: 2000, at: 900, elevation: 4 },
].map((c) => ({
  ...c,
  table: TABLES['pool-8ft-home'],
  cue: CUES['cue-57in'],
  backswing: DEFAULTS.stroke.backswing,
}));
