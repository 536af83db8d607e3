import { readArrangement } from './arrangement/read-furnishings.js';
import { readDelivery } from './delivery/read-delivery.js';
import { readCues } from './equipment/check-cue.js';
import { readTable } from './equipment/check-table.js';
import { DEFAULTS } from './equipment/defaults.js';
import type { FitInput, SearchProgress } from './fit-input.js';
import type { CheckedSearch, FitQuestion } from './fit-question.js';
import type { Placement } from './geometry/types.js';
import { InputError, type InputProblem } from './input-error.js';
import {
  at,
  ProblemList,
  readGuarded,
  readLength,
  readNumber,
  readObject,
  readWord,
} from './length/read-input.js';
import { readRoom, readSurveyedRoom } from './room/check-room.js';
import type { RoomInput } from './room/room-input.js';
import type { Scene } from './room/scene.js';
import type { TapedRoomInput } from './room/tape-room.js';
import { readPose } from './stroke/read-pose.js';
import { readStroke } from './stroke/read-stroke.js';

const FIT_KEYS = [
  'room',
  'table',
  'cues',
  'pose',
  'stroke',
  'search',
  'detail',
  'delivery',
  'furnishings',
  'arrangement',
] as const;

/**
 * The problems of an input as data: the same list that {@link InputError} carries, empty when the input is good. Takes
 * anything, such as parsed JSON from a stranger, and never throws.
 */
export function checkFitInput(input: unknown): readonly InputProblem[] {
  const problems = new ProblemList();
  readGuarded([input], problems, () => readFitInput(input, problems));
  return problems.problems;
}

/** The checked question, or an {@link InputError} with every problem. */
export function fitQuestion(input: FitInput): FitQuestion {
  const problems = new ProblemList();
  const question = readGuarded([input], problems, () => readFitInput(input, problems));
  if (question === null) throw new InputError(problems.problems);
  return question;
}

/**
 * A room as the parts of the library take it (`elbowroom/stroke`): millimetre numbers, nothing optional.
 *
 * @throws InputError with every problem of the room.
 */
export function checkRoom(room: RoomInput | TapedRoomInput): Scene {
  const problems = new ProblemList();
  const scene = readGuarded([room], problems, () => readRoom(room, 'room', problems, []));
  if (scene === null || problems.problems.length > 0) throw new InputError(problems.problems);
  return scene;
}

/** The checked question, or null with every problem. */
export function readFitInput(input: unknown, problems: ProblemList): FitQuestion | null {
  const fields = readObject(input, '', FIT_KEYS, problems);
  if (fields === null) return null;
  const assumptions: string[] = [];
  const required = (key: string, what: string): unknown => {
    const value = fields.get(key);
    if (value === undefined) problems.add(key, 'missing', `The ${what} is missing.`);
    return value;
  };
  const roomValue = required('room', 'room');
  const tableValue = required('table', 'table');
  const room = roomValue === undefined ? null : readSurveyedRoom(roomValue, 'room', problems, assumptions);
  const table = tableValue === undefined ? null : readTable(tableValue, 'table', problems, assumptions);
  const { ballDiameter } = table ?? STAND_IN;
  const cues = readCues(fields.get('cues'), 'cues', table ?? STAND_IN, problems, assumptions);
  const stroke = readStroke(fields.get('stroke'), 'stroke', ballDiameter / 2, problems, assumptions);
  const poseValue = fields.get('pose');
  const pose = poseValue === undefined ? null : readPose(poseValue, 'pose', problems);
  const search = readSearch(fields.get('search'), 'search', problems);
  const detailValue = fields.get('detail');
  const detail =
    detailValue === undefined ? 'verdict' : readWord(detailValue, 'detail', ['verdict', 'shots'], problems);
  const deliveryValue = fields.get('delivery');
  const delivery =
    deliveryValue === undefined
      ? null
      : readDelivery(deliveryValue, 'delivery', table, problems, assumptions);
  const arrangement = readArrangement(
    fields.get('furnishings'),
    fields.get('arrangement'),
    room?.scene ?? null,
    table,
    problems,
    assumptions,
  );
  if (problems.problems.length > 0) return null;
  if (room === null || table === null || cues === null || stroke === null) return null;
  if (search === null || detail === null) return null;
  return {
    scene: room.scene,
    survey: room.survey,
    table,
    cues,
    pose: pose === null ? null : halfTurned(pose),
    stroke,
    search,
    detail,
    delivery,
    arrangement,
    assumptions,
  };
}

/** Lets cues be checked in the same go beside a table that is itself wrong. */
const STAND_IN = {
  id: null,
  game: 'any',
  ballDiameter: DEFAULTS.table.ballDiameter,
  usualCue: DEFAULTS.table.usualCue,
};

/** A table is symmetric under a half turn: its angle in [0, pi). */
function halfTurned({ x, y, angle }: Placement): Placement {
  const rest = angle % Math.PI;
  // Adding 0 makes 0 of -0.
  return { x, y, angle: rest < 0 ? rest + Math.PI : rest + 0 };
}

function readSearch(value: unknown, path: string, problems: ProblemList): CheckedSearch | null {
  const { gap, maxBoxes } = DEFAULTS.search;
  if (value === undefined) return { turns: 'any', gap, maxBoxes, onProgress: null };
  const fields = readObject(value, path, ['turns', 'gap', 'maxBoxes', 'onProgress'], problems);
  if (fields === null) return null;
  const turnsValue = fields.get('turns');
  const turns =
    turnsValue === undefined ? 'any' : readWord(turnsValue, at(path, 'turns'), ['square', 'any'], problems);
  const gapValue = fields.get('gap');
  const gapRead =
    gapValue === undefined
      ? gap
      : readLength(gapValue, at(path, 'gap'), { what: 'gap of the search', min: 0.001, max: 1000 }, problems);
  const boxesValue = fields.get('maxBoxes');
  const boxes =
    boxesValue === undefined
      ? maxBoxes
      : readNumber(
          boxesValue,
          at(path, 'maxBoxes'),
          { what: 'limit of boxes', min: 1, max: 1e9 },
          '',
          problems,
        );
  const progress = fields.get('onProgress');
  if (progress !== undefined && !isProgressCallback(progress)) {
    return problems.add(
      at(path, 'onProgress'),
      'not-a-function',
      'Expected a function that takes the progress.',
    );
  }
  if (turns === null || gapRead === null || boxes === null) return null;
  return { turns, gap: gapRead, maxBoxes: Math.floor(boxes), onProgress: progress ?? null };
}

function isProgressCallback(value: unknown): value is (progress: SearchProgress) => boolean | undefined {
  return typeof value === 'function';
}
