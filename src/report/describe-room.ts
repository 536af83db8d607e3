import type { TapedRoom } from '../room/tape-report.js';
import type { DescribeOptions } from './describe-fit.js';
import { sayBand, sayReading, suspectWords } from './describe-survey.js';
import { joinWords, plainName, roundTo, type SentenceUnits } from './sentences.js';
import { surveyNote } from './survey-note.js';
import { wrapText } from './wrap.js';

/** A reading of which less than this share is checked by others: a slip in it would mostly go unseen. */
const HARDLY_CHECKED = 0.1;

/**
 * The room that the readings of a survey make, in plain sentences: whether they agree and which is probably wrong, corners,
 * walls and how surely each is known, readings that nothing checks, what to measure next, assumptions.
 *
 * Lengths to the millimetre, also where centimetres are asked for, since readings are; in feet and inches to the half inch. Lines have
 * at most 80 columns and the text ends with a line break.
 */
export function describeTapedRoom(room: TapedRoom, options: DescribeOptions = {}): string {
  const units = options.units ?? 'cm';
  const blocks = [
    agreement(room, units).flatMap((sentence) => wrapText(sentence)),
    list(
      'Corners',
      room.corners.map(({ name, x, y }) => {
        return `${plainName(name)}: x = ${sayReading(x, units)}, y = ${sayReading(y, units)}`;
      }),
      'From the first corner, x to the right and y up.',
    ),
    list(
      'Walls',
      walls(room, units),
      `How far off a wall may be is told square to it; in at least ${Math.floor(room.confidence * 100 + 1e-9)} of 100 measurings of this kind all walls are as near as that at once.`,
    ),
    list('Ceiling', ceiling(room, units)),
    list('Not checked by any other reading: a slip in these would go unseen', unchecked(room)),
    list('What to measure next, the most useful first', next(room, units)),
    list('Assumed, since nothing else was said', room.assumptions.map(plainName)),
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

function agreement(room: TapedRoom, units: SentenceUnits): string[] {
  const { contradictory, unitDeviation, closure } = room;
  const said: string[] = [];
  const { suspect } = surveyNote(room);
  if (contradictory) {
    const times = unitDeviation === null ? '' : `, by about ${unitDeviation.toFixed(1)} times what is usual`;
    said.push(`The readings contradict each other${times}. Measure again before you rely on this room.`);
  }
  if (suspect !== null) said.push(suspectWords(suspect, units));
  if (!contradictory && suspect === null) {
    said.push(
      unitDeviation === null
        ? 'There are just as many readings as a room needs: nothing checks them.'
        : 'The readings agree with each other as well as such readings do.',
    );
  }
  const gap = roundTo(closure.length, 1, 'near');
  if (gap > 0) {
    said.push(
      `Walked round with the corners as given, the walls miss their start by ${sayReading(gap, units)} on a way of ${sayReading(closure.perimeter, units)}.`,
    );
  }
  return said;
}

function walls({ walls: all, corners }: TapedRoom, units: SentenceUnits): string[] {
  return all.map(({ name, band }, i) => {
    const [a, b] = [corners[i], corners[(i + 1) % corners.length]];
    const length = sayReading(Math.hypot(b.x - a.x, b.y - a.y), units);
    return `${plainName(name)}: ${length} long, known to ${sayBand(band, units)}`;
  });
}

function ceiling({ ceiling: read }: TapedRoom, units: SentenceUnits): string[] {
  return read === null ? [] : [`${sayReading(read.height, units)} high, the least that was read`];
}

function unchecked({ readings }: TapedRoom): string[] {
  const names = readings
    .filter(({ by, redundancy }) => by !== 'assumed' && redundancy < HARDLY_CHECKED)
    .map(({ name }) => plainName(name));
  return names.length === 0 ? [] : [joinWords(names)];
}

function next({ next: readings }: TapedRoom, units: SentenceUnits): string[] {
  return readings.map(({ reading, now, after: then }) => {
    const [before, after] = [sayBand(now, units), sayBand(then, units)];
    const gain = before === after ? '' : `: the least sure wall is known to ${before} now, to ${after} then`;
    return `${plainName(reading)}${gain}`;
  });
}

function list(title: string, items: readonly string[], explanation = ''): string[] {
  if (items.length === 0) return [];
  return [title, ...wrapText(explanation), ...items.flatMap((item) => wrapText(item, '- ', '  '))];
}
