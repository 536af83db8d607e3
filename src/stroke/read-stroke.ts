import { DEFAULTS } from '../equipment/defaults.js';
import { LIMITS } from '../equipment/limits.js';
import { writeMm } from '../equipment/read-plausible.js';
import { at, type ProblemList, readLength, readNumber, readObject } from '../length/read-input.js';
import type { StrokeInput, StrokeSettings } from './stroke-settings.js';

const STROKE_KEYS: readonly (keyof StrokeInput)[] = [
  'backswing',
  'shortBackswing',
  'margin',
  'tipOffset',
  'maxElevation',
];

/**
 * Checked stroke settings (mm, radians) for a ball of radius R, or null with problems. Every default that was used is added
 * to the assumptions as a sentence. A default short backswing is never longer than the full one.
 */
export function readStroke(
  value: unknown,
  path: string,
  ballRadius: number,
  problems: ProblemList,
  assumptions: string[],
): StrokeSettings | null {
  const before = problems.problems.length;
  const fields =
    value === undefined ? new Map<string, unknown>() : readObject(value, path, STROKE_KEYS, problems);
  if (fields === null) return null;
  const { stroke: usual } = DEFAULTS;
  const { stroke: limits } = LIMITS;
  const notes: string[] = [];
  const length = (
    key: keyof StrokeInput,
    what: string,
    most: number,
    otherwise: number,
    note: string,
  ): number | null => {
    if (fields.has(key))
      return readLength(fields.get(key), at(path, key), { what, min: 0, max: most }, problems);
    notes.push(`${note.replace('#', writeMm(otherwise))} (default).`);
    return otherwise;
  };
  const backswing = length('backswing', 'backswing', limits.backswing[1], usual.backswing, 'Backswing #');
  const shortBackswing = length(
    'shortBackswing',
    'short backswing',
    limits.backswing[1],
    Math.min(usual.shortBackswing, backswing ?? usual.backswing),
    'Short backswing #',
  );
  if (backswing !== null && shortBackswing !== null && shortBackswing > backswing) {
    problems.add(
      at(path, 'shortBackswing'),
      'short-backswing-too-long',
      `The short backswing of ${writeMm(shortBackswing)} is longer than the full one of ${writeMm(backswing)}; it is the one for a ball in a tight place.`,
    );
  }
  const margin = length(
    'margin',
    'margin around the cue',
    limits.margin[1],
    usual.margin,
    'Margin around the cue #',
  );
  const tipOffset = length(
    'tipOffset',
    'tip offset',
    Number.POSITIVE_INFINITY,
    usual.tipOffsetShare * ballRadius,
    "Tip at most # above the ball's centre",
  );
  const highest = limits.tipOffsetShare * ballRadius;
  if (tipOffset !== null && tipOffset > highest) {
    problems.add(
      at(path, 'tipOffset'),
      'tip-offset-too-large',
      `The tip offset is ${writeMm(tipOffset)}; beyond half the ball's radius, ${writeMm(highest)} here, the tip slips off the ball.`,
    );
  }
  const maxElevation = readElevation(fields, path, problems, notes);
  if (problems.problems.length > before) return null;
  if (backswing === null || shortBackswing === null || margin === null) return null;
  if (tipOffset === null || maxElevation === null) return null;
  assumptions.push(...notes);
  return { backswing, shortBackswing, margin, tipOffset, maxElevation: (maxElevation * Math.PI) / 180 };
}

/** theta_max in degrees. */
function readElevation(
  fields: ReadonlyMap<string, unknown>,
  path: string,
  problems: ProblemList,
  notes: string[],
): number | null {
  const key = 'maxElevation';
  if (!fields.has(key)) {
    notes.push(`Cue raised at most ${DEFAULTS.stroke.maxElevation} degrees (default).`);
    return DEFAULTS.stroke.maxElevation;
  }
  const what = 'greatest elevation';
  const most = LIMITS.stroke.maxElevation;
  const degrees = readNumber(fields.get(key), at(path, key), { what, max: most }, ' degrees', problems);
  if (degrees === null || degrees > 0) return degrees;
  return problems.add(
    at(path, key),
    'too-small',
    `The ${what} is ${degrees} degrees; it must be more than 0, because every rail asks for a little.`,
  );
}
