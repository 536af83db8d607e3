import { DEFAULTS } from '../equipment/defaults.js';
import { writeMm } from '../equipment/read-plausible.js';
import { FLAT_TOLERANCE } from '../geometry/named-ring.js';
import { signedArea } from '../geometry/ring.js';
import { findSelfContacts } from '../geometry/simple-ring.js';
import type { Point } from '../geometry/types.js';
import { InputError } from '../input-error.js';
import { at, ProblemList, readGuarded } from '../length/read-input.js';
import { readOutline } from './read-outline.js';
import { ROOM_LIMITS } from './room-limits.js';
import { adjustNetwork } from './tape-adjust.js';
import { cornerAssumptions } from './tape-corners.js';
import type { TapeSurvey } from './tape-input.js';
import { wallName } from './tape-names.js';
import { buildNetwork, type Network } from './tape-network.js';
import { offsetAssumptions } from './tape-offsets.js';
import type { TapedRoom } from './tape-report.js';
import { reportRoom } from './tape-result.js';
import { type CheckedSurvey, readSurveyInput } from './tape-survey.js';

/**
 * The outline that the readings of a survey make: the corners that agree best with all of them (weighted least squares), how
 * surely each is known, which reading is probably wrong, and which to take next. Lengths in mm, angles in degrees.
 *
 * Nothing is dropped or put right in silence: every reading counts, also one that is named as the suspect, and `contradictory`
 * says when they do not agree. To first order in the errors, and as far as the deviations are right, all walls lie in their bands
 * at once in at least 95 of 100 surveys; where the readings contradict each other, all deviations are raised by how much
 * they do.
 *
 * The first corner is the origin; the first wall runs along +y where the walk is clockwise, along +x where it is not.
 *
 * @throws InputError with every problem of the survey.
 */
export function roomFromTape(survey: TapeSurvey): TapedRoom {
  const problems = new ProblemList();
  const room = readGuarded([survey], problems, () => readTapeSurvey(survey, '', problems, []));
  if (room === null) throw new InputError(problems.problems);
  return room;
}

/**
 * As {@link roomFromTape}, for a survey inside another input: the room, or null with every problem at its path. What was assumed
 * is added to the assumptions, and listed in the room as well.
 */
export function readTapeSurvey(
  value: unknown,
  path: string,
  problems: ProblemList,
  assumptions: string[],
): TapedRoom | null {
  const survey = readSurveyInput(value, path, problems);
  if (survey === null) return null;
  const network = buildNetwork(survey, path, problems);
  if (network === null) return null;
  const adjustment = adjustNetwork(network);
  if (adjustment === 'undetermined') {
    return problems.add(
      path,
      'survey-undetermined',
      'The readings do not determine the room: some corner can move without any of them changing. Measure a diagonal to each corner.',
    );
  }
  if (adjustment === 'does-not-converge') {
    return problems.add(
      path,
      'survey-does-not-converge',
      'The readings contradict each other so much that no room agrees with them even roughly. Check the number and the unit of every length, which corners are "external", and the order of the walls.',
    );
  }
  if (!isRoom(network, adjustment.xy, survey.clockwise, at(path, 'walls'), problems)) return null;
  const room = reportRoom(survey, network, adjustment, surveyAssumptions(survey));
  assumptions.push(...room.assumptions);
  return room;
}

/** Whether the adjusted corners make a simple outline of a room's size, in the direction of the walk. */
function isRoom(
  { names }: Network,
  xy: Float64Array,
  clockwise: boolean,
  path: string,
  problems: ProblemList,
): boolean {
  const before = problems.problems.length;
  const corners = names.map((_, i): Point => [xy[2 * i], xy[2 * i + 1]]);
  const name = (side: number): string => wallName(names[side], names[(side + 1) % names.length]);
  for (const { kind, sides } of findSelfContacts(corners, FLAT_TOLERANCE, ROOM_LIMITS.count.contacts)) {
    const crosses = kind === 'cross';
    problems.add(
      path,
      `outline-${crosses ? 'crosses' : 'touches'}-itself`,
      `With all readings together, ${name(sides[0])} and ${name(sides[1])} ${crosses ? 'cross' : 'touch'} one another. Check their lengths, and which corners are "external".`,
    );
  }
  if (problems.problems.length > before || readOutline(corners, path, problems) === null) return false;
  if (signedArea(corners) > 0 !== clockwise) return true;
  problems.add(
    path,
    'survey-turned-over',
    `The readings make a room that runs ${clockwise ? 'anticlockwise' : 'clockwise'}; check the corners and the direction of the walk.`,
  );
  return false;
}

function surveyAssumptions(survey: CheckedSurvey): string[] {
  const { tapeReading, laser, estimate } = DEFAULTS.survey;
  const { walls, distances, angles, offsets, heights, means } = survey;
  const readings = [
    ...walls.map(({ reading }) => reading),
    ...distances.map(({ reading }) => reading),
    ...angles.flatMap(({ before, after, across }) => [before, after, across]),
    ...offsets.flatMap(({ start, width, depth, front, rest }) => [
      start,
      width,
      depth,
      ...(front === null ? [] : [front]),
      ...(rest === null ? [] : [rest]),
    ]),
    ...heights,
  ];
  const sentences: string[] = [];
  if (readings.some(({ by }) => by === 'tape')) {
    sentences.push(
      `Tape readings: class ${means.tapeClass} of Directive 2014/32/EU for the tape, and a standard deviation of ${writeMm(tapeReading)} for each reading unless it says otherwise; repeating lessens only the second.`,
    );
  }
  if (readings.some(({ by }) => by === 'laser')) {
    sentences.push(
      `Laser readings: a standard deviation of ${writeMm(laser.own)} of its own and ${writeMm(laser.reading)} for each reading unless it says otherwise.`,
    );
  }
  if (readings.some(({ by }) => by === 'estimate')) {
    sentences.push(
      `Estimates: a standard deviation of ${estimate.share * 100} % of the length, at least ${writeMm(estimate.least)}, unless it says otherwise.`,
    );
  }
  return [...sentences, ...cornerAssumptions(survey), ...offsetAssumptions(offsets)];
}
