import fc from 'fast-check';
import {
  assessDelivery,
  assessFit,
  checkFitInput,
  checkRoom,
  classifyShot,
  compareTables,
  describeComparison,
  describeFit,
  describeTapedRoom,
  describeWay,
  type FitInput,
  type FitReport,
  formatLength,
  InputError,
  parseLength,
  renderPlan,
  renderShot,
  roomFromTape,
  summarizeProblems,
} from '../../src/index.js';
import { GOOD_WAYS } from '../delivery/read-inputs.js';
import { fitsAndWords } from './fit-laws.js';
import { anyFit, anyRoom, cue, table } from './fits.js';
import { GOOD_FITS, spoilt, strange } from './hostile.js';
import { answerOrRefusal, insistNumbers, insistPlain, insistProblems, insistWords } from './plain.js';
import { angle, coordinate } from './shapes.js';
import { survey } from './surveys.js';
import { type Target, target } from './target.js';
import { way } from './ways.js';

const units = fc.constantFrom('mm' as const, 'cm' as const, 'ftin' as const);

/** Calls with whatever comes, which the types would not let through. */
function called(call: (...values: never[]) => unknown, ...values: unknown[]): unknown {
  return Reflect.apply(call, undefined, values);
}

/** Hostile input is refused, or it was good after all and the answer is plain. */
function refusesOrAnswers(call: (...values: never[]) => unknown, ...values: unknown[]): void {
  const answer = answerOrRefusal(() => called(call, ...values));
  if (typeof answer === 'string') insistWords(answer);
  else insistPlain(answer);
}

/** Good inputs that are cheap to answer, for hostile changes: with few boxes to search, where they search. */
const CHEAP_FITS: readonly unknown[] = GOOD_FITS.map((good) => ({
  pose: { x: 2500, y: 2000 },
  ...Object(good),
  search: { maxBoxes: 10 },
}));
const [LEAST] = GOOD_FITS;
const SMALL = {
  room: {
    outline: [
      [0, 0],
      [4000, 0],
      [4000, 3000],
      [0, 3000],
    ],
  },
  table: 'pool-7ft-bar',
  pose: { x: 2000, y: 1500 },
} satisfies FitInput;
const SHOT = { ...SMALL, ball: { x: 100, y: 50 }, direction: 30, cue: 1450, stroke: { backswing: 100 } };
const SURVEY = {
  walls: [
    { from: 'A', length: 5000, corner: 'internal' },
    { from: 'B', length: { length: [4000, 4002], by: 'laser' } },
    { length: 5001, corner: 90 },
    { length: 4001 },
  ],
  diagonals: [{ from: 'A', to: 'C', length: 6403 }],
  heights: [2400],
};
const COMPARE = {
  room: SMALL.room,
  tables: ['pool-7ft-bar', { field: { length: 1000, width: 500 }, outer: { length: 1150, width: 650 } }],
  cues: [1450],
  search: { maxBoxes: 10 },
};
const PLAN_OPTIONS = [
  { sheet: 'A4', orientation: 'landscape', scale: 50, unit: 'cm', theme: 'dark', id: 'plan' },
  { unit: 'ftin' },
  {},
];
const SMALL_REPORT = assessFit(SMALL);

const ballAndDirection = fc.record({
  ball: fc.record({ x: fc.integer({ min: -1200, max: 1200 }), y: fc.integer({ min: -600, max: 600 }) }),
  direction: fc.oneof(coordinate, angle),
});

export const FRONT: readonly Target[] = [
  target(
    ['index/assessFit', 'index/checkFitInput', 'index/describeFit', 'index/renderPlan', 'plan/renderPlan'],
    'rooms',
    5,
    fc.tuple(anyFit({ obstacles: 3, extras: false }), units),
    ([input, words]) => fitsAndWords(input, words),
  ),
  target(
    'index/assessFit',
    'furnished rooms, with the way in',
    2,
    fc.tuple(anyFit({ obstacles: 20, extras: true }), units),
    ([input, words]) => fitsAndWords(input, words),
  ),
  target(
    'index/checkFitInput',
    'good and bad shapes',
    10,
    anyFit({ obstacles: 20, extras: true }),
    (input) => {
      const problems = checkFitInput(input);
      if (problems.length > 0) insistProblems(problems);
      insistPlain(problems);
    },
  ),
  target('index/checkFitInput', 'anything', 12, spoilt(GOOD_FITS), (hostile) => {
    const problems = checkFitInput(hostile.make());
    if (problems.length > 0) insistProblems(problems);
  }),
  target('index/assessFit', 'anything', 3, spoilt([LEAST, ...CHEAP_FITS]), (hostile) => {
    const value = hostile.make();
    // What the check lets through would be searched for long: others do that.
    if (checkFitInput(value).length > 0) refusesOrAnswers(assessFit, value);
  }),
  target(['index/checkRoom'], 'rooms', 5, anyRoom(10), (room) => {
    const scene = answerOrRefusal(() => checkRoom(room));
    // Up to the ceiling, where there is none: Infinity.
    if (scene !== null) insistNumbers(scene);
  }),
  target('index/checkRoom', 'anything', 5, spoilt(GOOD_FITS.map((good) => Object(good).room)), (hostile) =>
    insistNumbers(answerOrRefusal(() => called(checkRoom, hostile.make()))),
  ),
  target(
    ['index/compareTables', 'index/describeComparison'],
    'rooms',
    1,
    fc.tuple(anyRoom(3), fc.array(table, { maxLength: 2 }), units),
    ([room, tables, words]) => {
      const comparison = answerOrRefusal(() => compareTables({ room, tables, search: { maxBoxes: 50 } }));
      if (comparison === null) return;
      insistPlain(comparison);
      insistWords(describeComparison(comparison, { units: words }));
    },
  ),
  target(
    'index/compareTables',
    'furnished rooms',
    1,
    fc.tuple(anyFit({ obstacles: 3, extras: true }), fc.array(table, { minLength: 1, maxLength: 2 }), units),
    ([{ room, furnishings, arrangement }, tables, words]) => {
      const comparison = answerOrRefusal(() =>
        compareTables({
          room,
          tables,
          search: { maxBoxes: 50 },
          ...(furnishings === undefined ? {} : { furnishings }),
          ...(arrangement === undefined ? {} : { arrangement }),
        }),
      );
      if (comparison === null) return;
      insistPlain(comparison);
      insistWords(describeComparison(comparison, { units: words }));
    },
  ),
  target('index/compareTables', 'anything', 3, spoilt([COMPARE]), (hostile) =>
    refusesOrAnswers(compareTables, hostile.make()),
  ),
  target(
    ['index/classifyShot'],
    'rooms',
    8,
    fc.tuple(anyFit({ obstacles: 6, extras: false }), ballAndDirection, cue),
    ([{ room, table: asked, pose = { x: 0, y: 0 } }, shot, wanted]) => {
      const answer = answerOrRefusal(() => classifyShot({ room, table: asked, pose, cue: wanted, ...shot }));
      if (answer !== null) insistPlain(answer);
    },
  ),
  target('index/classifyShot', 'anything', 4, spoilt([SHOT]), (hostile) =>
    refusesOrAnswers(classifyShot, hostile.make()),
  ),
  target(
    ['index/roomFromTape', 'index/describeTapedRoom'],
    'surveys',
    8,
    fc.tuple(survey, units),
    ([asked, words]) => {
      const room = answerOrRefusal(() => roomFromTape(asked));
      if (room === null) return;
      insistPlain(room);
      insistWords(describeTapedRoom(room, { units: words }));
    },
  ),
  target('index/roomFromTape', 'anything', 4, spoilt([SURVEY]), (hostile) =>
    refusesOrAnswers(roomFromTape, hostile.make()),
  ),
  target(
    ['index/assessDelivery', 'delivery/assessDelivery', 'index/describeWay'],
    'ways in',
    2,
    fc.tuple(way, table, units),
    ([asked, of, words]) => {
      const report = answerOrRefusal(() => assessDelivery(asked, of));
      if (report === null) return;
      insistPlain(report);
      insistWords(describeWay(report, { units: words }));
    },
  ),
  target(
    'index/assessDelivery',
    'anything',
    4,
    fc.tuple(spoilt(Object.values(GOOD_WAYS)), fc.option(strange, { nil: undefined, freq: 2 })),
    ([hostile, of]) => {
      const value = hostile.make();
      // A good way takes its time, so it is asked about with a table that is none.
      refusesOrAnswers(assessDelivery, value, of === undefined ? 'no such table' : of.make());
    },
  ),
  target(
    ['index/renderShot', 'plan/renderShot'],
    'rooms',
    3,
    fc.tuple(anyFit({ obstacles: 4, extras: false }), ballAndDirection),
    ([input, shot]) => {
      if (checkFitInput(input).length > 0) return;
      const svg = answerOrRefusal(() => renderShot(input, { ...assessedAt(input) }, shot));
      if (svg !== null) insistWords(svg);
    },
  ),
  target(
    'index/renderShot',
    'anything',
    4,
    fc.tuple(spoilt([{ ball: { x: 10, y: 20 }, direction: 30, cue: 1450 }]), spoilt(PLAN_OPTIONS)),
    ([shot, options]) => {
      refusesOrAnswers(renderShot, SMALL, SMALL_REPORT, shot.make(), options.make());
    },
  ),
  target(
    'index/renderPlan',
    'anything',
    4,
    fc.tuple(strange, spoilt(PLAN_OPTIONS), fc.boolean()),
    ([report, options, good]) => {
      refusesOrAnswers(renderPlan, SMALL, good ? SMALL_REPORT : report.make(), options.make());
    },
  ),
  target(['index/parseLength'], 'text', 14, fc.oneof(fc.string(), lengthText()), (text) => {
    const mm = answerOrRefusal(() => parseLength(text));
    if (mm !== null) insistPlain(mm);
  }),
  target('index/parseLength', 'anything', 6, strange, (hostile) =>
    refusesOrAnswers(parseLength, hostile.make()),
  ),
  target(
    ['index/formatLength'],
    'lengths',
    14,
    fc.tuple(
      fc.oneof(coordinate, fc.double()),
      fc.constantFrom('mm' as const, 'cm' as const, 'm' as const, 'in' as const, 'ftin' as const),
      fc.integer({ min: -1, max: 7 }),
      fc.constantFrom(1 as const, 8 as const, 64 as const),
    ),
    ([mm, unit, decimals, denominator]) => {
      const text = answerOrRefusal(() => formatLength(mm, unit, { decimals, denominator }));
      if (text === null) return;
      insistWords(text);
      // Half a step, and the steps are at most 1 m.
      if (!(Math.abs(parseLength(text) - mm) <= 500))
        throw new Error(`${mm} mm came back from "${text}" as ${parseLength(text)}.`);
    },
  ),
  target(
    'index/formatLength',
    'anything',
    6,
    fc.tuple(strange, strange, fc.jsonValue(), fc.nat(2)),
    ([mm, unit, options, which]) => {
      if (which === 0) refusesOrAnswers(formatLength, mm.make(), 'mm');
      else if (which === 1) refusesOrAnswers(formatLength, 1000, unit.make());
      else refusesOrAnswers(formatLength, 1000, 'mm', options);
    },
  ),
  target(
    ['index/InputError', 'index/summarizeProblems'],
    'problems',
    4,
    fc.array(fc.record({ path: fc.string(), code: fc.string(), message: fc.string() })),
    (problems) => {
      const error = new InputError(problems);
      if (error.message !== summarizeProblems(problems) || error.problems !== problems)
        throw new Error('Not its problems.');
    },
  ),
  target('index/describeFit', 'units that are none', 2, fc.string(), (units) => {
    refusesOrAnswers(describeFit, SMALL_REPORT, { units });
  }),
];

/** A report with the table where the input has it, or in the middle of nowhere. */
function assessedAt(input: FitInput): FitReport {
  const { room, table: asked, cues, pose = { x: 0, y: 0 }, stroke: how } = input;
  const base = {
    room,
    table: asked,
    pose,
    ...(cues === undefined ? {} : { cues }),
    ...(how === undefined ? {} : { stroke: how }),
  };
  return assessFit(base);
}

/** Text that looks like a length. */
function lengthText(): fc.Arbitrary<string> {
  const part = fc.constantFrom(
    '1',
    '12',
    '0',
    '.',
    ',',
    '/',
    ' ',
    '-',
    'mm',
    'cm',
    'm',
    'in',
    'ft',
    "'",
    '"',
    '½',
    '1/2',
    '5e3',
    '+',
    '\u00a0',
    'e',
    '000',
    '1.5',
  );
  return fc.array(part, { maxLength: 8 }).map((parts) => parts.join(''));
}
