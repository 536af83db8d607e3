// What a stranger writes in the first five minutes with the packed library.

const ROOM = `[[0, 0], ['6 m', 0], ['6 m', '5 m'], [0, '5 m']]`;
const RING = '[[0, 0], [6000, 0], [6000, 5000], [0, 5000]]';

/** A program for each entry point, as an ES module and as CommonJS; it fails where the library does not do its work. */
export const PROGRAMS = {
  elbowroom: program(
    'elbowroom',
    ['assessFit', 'BALLS', 'describeFit', 'InputError'],
    `
    const report = assessFit({ room: { outline: ${ROOM} }, table: 'pool-7ft-bar', cues: ['57 in'] });
    if (report.schema !== 'elbowroom/fit-report@1' || report.pose === null) throw new Error(JSON.stringify(report));
    if (describeFit(report).length < 20 || Object.keys(BALLS).length === 0) throw new Error('nothing said');
    try {
      assessFit({ room: { outline: [] }, table: 'no such table' });
      throw new Error('took nonsense');
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
    }
    console.log(report.verdict);`,
  ),
  'elbowroom/geometry': program(
    'elbowroom/geometry',
    ['closestPoints', 'orientation', 'regionArea', 'unite'],
    `
    const square = (x) => [[x, 0], [x + 1000, 0], [x + 1000, 1000], [x, 1000]];
    const area = regionArea(unite([square(0), square(500)]));
    const { distance } = closestPoints(square(0), square(3000));
    if (Math.abs(area - 1.5e6) > 1 || Math.abs(distance - 2000) > 0.001) throw new Error(area + ' ' + distance);
    if (orientation([0, 0], [1, 0], [0, 1]) !== 1) throw new Error('the wrong way round');
    console.log(area / 1e6 + ' m2');`,
  ),
  'elbowroom/stroke': program(
    'elbowroom/stroke',
    ['answerShot', 'prepareStrokes', 'standingRoom'],
    `
    const wallNames = ['wall 1', 'wall 2', 'wall 3', 'wall 4'];
    const scene = { outline: ${RING}, wallNames, obstacles: [], ceiling: [], doors: [], tolerance: 0 };
    const size = { field: { length: 2000, width: 1000 }, outer: { length: 2300, width: 1300 }, ballDiameter: 57 };
    const heights = { bedHeight: 765, noseHeight: 36, railHeight: 42 };
    const about = { id: null, name: 'table', game: 'pool', usualCue: 1448, mass: null, legs: null, source: 'invented' };
    const table = { ...about, ...size, ...heights };
    const stroke = { backswing: 150, shortBackswing: 45, margin: 20, tipOffset: 10, maxElevation: Math.PI / 9 };
    const shot = (x) => {
      const strokes = prepareStrokes(scene, table, { x, y: 2500, angle: 0 }, stroke);
      return answerShot(strokes, standingRoom(strokes), { length: 1448, tipRadius: 5, buttRadius: 15 }, 0, 0, 0).class;
    };
    if (shot(3000) !== 'open' || shot(4800) !== 'blocked') throw new Error(shot(3000) + ' ' + shot(4800));
    console.log(shot(3000));`,
  ),
  'elbowroom/placement': program(
    'elbowroom/placement',
    ['findPlacement'],
    `
    const play = { length: 2000, width: 1000 };
    const problem = { play, frame: { length: 2300, width: 1300 }, outline: ${RING}, tall: [], low: [] };
    const { value, upperBound } = findPlacement(problem, { gap: 1, maxBoxes: 10000, turns: 'any' });
    if (value > upperBound || Math.abs(value - 2000) > 1) throw new Error(value + ' ' + upperBound);
    console.log(value.toFixed(0) + ' mm');`,
  ),
  'elbowroom/delivery': program(
    'elbowroom/delivery',
    ['assessDelivery'],
    `
    const route = [{ kind: 'doorway', width: '83 cm', height: '2 m' }, { kind: 'corner', width: '95 cm', height: '2.4 m' }];
    const report = assessDelivery({ route }, 'pool-9ft');
    if (report.outcome !== 'passes' || report.pieces.some((p) => p.passages.some((a) => !(a.replayed > 0))))
      throw new Error(JSON.stringify(report));
    console.log(report.outcome + ', ' + report.pieceSet);`,
  ),
  'elbowroom/plan': program(
    'elbowroom/plan',
    ['renderPlan', 'renderShot'],
    `
    const input = { room: { outline: ${ROOM} }, table: 'pool-7ft-bar' };
    try {
      renderPlan(input, {});
      throw new Error('took nonsense');
    } catch (error) {
      if (error.name !== 'InputError') throw error;
    }
    if (typeof renderShot !== 'function') throw new Error('no shot');
    console.log('refuses what is no report');`,
  ),
};

function program(entry, names, body) {
  const list = names.join(', ');
  return {
    import: `import { ${list} } from '${entry}';\n${body}\n`,
    require: `const { ${list} } = require('${entry}');\n${body}\n`,
  };
}

/** Prints the ids of the tables, as an ES module. */
export const TABLE_IDS = `import { TABLES } from 'elbowroom'; console.log(JSON.stringify(TABLES));`;

/** Older and newer compilers than ours that users have. */
const compilers = ['5.0.4', '5.4.5', '5.9.3', '7.0.2'];

const TYPED = `
import {
  assessFit, type ClassifyInput, classifyShot, type FitInput, type FitReport, InputError, type Length, TABLES,
} from 'elbowroom';
import { regionArea, type Ring, unite } from 'elbowroom/geometry';
import { findPlacement, type PlacementProblem } from 'elbowroom/placement';
import { assessDelivery, type DeliveryReport } from 'elbowroom/delivery';
import { type PlanOptions, renderPlan } from 'elbowroom/plan';
import { steepestRail, type StrokeScene } from 'elbowroom/stroke';

const wide: Length = '5 m';
const input: FitInput = {
  room: { outline: [[0, 0], ['6 m', 0], ['6 m', wide], [0, wide]], ceiling: 2400, doors: [] },
  table: 'pool-7ft-bar',
  cues: [1448, { length: '52 in' }],
};
export const report: FitReport = assessFit(input);
export const open: number | undefined = report.cues[0]?.shares.open;
export const square: Ring = [[0, 0], [1, 0], [1, 1], [0, 1]];
export const area: number = regionArea(unite([square]));
export const problem: PlacementProblem = {
  play: { length: 2, width: 1 }, frame: { length: 3, width: 2 }, outline: square, tall: [], low: [],
};
export const bound: number = findPlacement(problem, { gap: 1, maxBoxes: 10, turns: 'any' }).upperBound;
export const paths: (error: unknown) => readonly string[] = (error) =>
  error instanceof InputError ? error.problems.map((p) => p.path) : [];
export const field: number = TABLES['pool-9ft'].field.length;
const shot: ClassifyInput = { ...input, pose: { x: 0, y: 0 }, cue: 1448, ball: { x: 0, y: 0 }, direction: 0 };
export const elevation: number | null = classifyShot(shot).elevation;
export const margin: (scene: StrokeScene) => number = (scene) => scene.planMargin;
export const steep: object = steepestRail;
export const way: DeliveryReport = assessDelivery({ route: [{ kind: 'corridor', width: wide, height: 2400 }] }, 'pool-9ft');
const options: PlanOptions = { sheet: 'A3' };
export const drawing: string = renderPlan(input, report, options);
`;

/** Projects of strict TypeScript users; each compiles the same few lines with its own way to find modules. */
export const CONSUMERS = {
  'nodenext ESM': {
    commonjs: false,
    compilers,
    program: TYPED,
    options: { module: 'nodenext', moduleResolution: 'nodenext' },
  },
  'nodenext CommonJS': {
    commonjs: true,
    compilers,
    program: TYPED,
    options: { module: 'nodenext', moduleResolution: 'nodenext' },
  },
  bundler: {
    commonjs: false,
    compilers,
    program: TYPED,
    options: { module: 'esnext', moduleResolution: 'bundler' },
  },
  'classic node10': {
    commonjs: true,
    compilers: [],
    program: TYPED,
    options: { module: 'commonjs', moduleResolution: 'node10', ignoreDeprecations: '6.0' },
  },
};
