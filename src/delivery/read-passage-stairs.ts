import { DEFAULTS } from '../equipment/defaults.js';
import { PASSAGE_LIMITS } from '../equipment/passage-limits.js';
import { writeMm } from '../equipment/read-plausible.js';
import type { Landing, Level, Stair, Winder } from './passages.js';
import type { PassageFields } from './read-passage-fields.js';
import type { Unnamed } from './read-passage-gates.js';

const FREE = Number.POSITIVE_INFINITY;
const { width, headroom, floor, height, run, climb, well, pitch, rise, going } = PASSAGE_LIMITS;

/** A straight flight; holds `NaN` where there were problems. */
export function readStair(fields: PassageFields): Unnamed<Stair> {
  return {
    kind: 'stair',
    width: fields.needed('width', 'clear width', width),
    headroom: fields.needed('headroom', 'headroom', headroom),
    ...readSlope(fields),
    run: fields.optional('run', 'run', run, FREE, 'run'),
    bottom: readLevel(fields, 'bottom', 'floor at the foot'),
    top: readLevel(fields, 'top', 'floor at the head'),
  };
}

/** A landing between two flights. The flight above a quarter landing leaves it within its depth, the flight below within its breadth. */
export function readLanding(fields: PassageFields, kind: Landing['kind']): Unnamed<Landing> {
  const quarter = kind === 'quarter-landing';
  const below = fields.needed('width', 'clear width', width);
  const above = fields.optional('widthAfter', 'clear width of the flight above', width, below, 'widthAfter');
  const gap = quarter ? 0 : fields.optional('well', 'well', well, 0, 'well');
  const landing = {
    kind,
    width: below,
    widthAfter: above,
    headroom: fields.needed('headroom', 'headroom', headroom),
    ...readSlope(fields),
    depth: quarter
      ? fields.optional('depth', 'depth', floor, above, 'quarterDepth')
      : fields.optional('depth', 'depth', floor, below, 'halfDepth'),
    breadth: quarter ? fields.optional('breadth', 'breadth', floor, below, 'breadth') : below + gap + above,
    well: gap,
  };
  if (quarter && landing.depth < above) {
    fields.problems.add(
      fields.at('depth'),
      'landing-too-shallow',
      `${fields.owner} is ${writeMm(landing.depth)} deep, but the flight above it ${writeMm(above)} wide; the depth runs from the last step below to the wall opposite, along the whole width of the flight above. Leave it out if the two are the same.`,
    );
  }
  if (landing.breadth < below) {
    fields.problems.add(
      fields.at('breadth'),
      'landing-too-narrow',
      `${fields.owner} is ${writeMm(landing.breadth)} broad, but the flight below it ${writeMm(below)} wide; the breadth runs from that flight's outer wall to the first step above, across its whole width. Leave it out if the two are the same.`,
    );
  }
  return landing;
}

/** Steps that wind round a corner. */
export function readWinder(fields: PassageFields): Unnamed<Winder> {
  const slope = readSlope(fields);
  const usual = DEFAULTS.delivery.winderSteps * slope.rise;
  return {
    kind: 'winder',
    width: fields.needed('width', 'narrowest clear width', width),
    headroom: fields.needed('headroom', 'headroom', headroom),
    ...slope,
    climb: fields.optional('climb', 'climb', climb, usual, 'climb'),
  };
}

/** Pitch (radians) and rise of one step, from the pitch alone or from rise and going. */
function readSlope(fields: PassageFields): { readonly pitch: number; readonly rise: number } {
  const unknown = { pitch: Number.NaN, rise: Number.NaN };
  const { owner, problems } = fields;
  const byStep = fields.has('rise') || fields.has('going');
  if (fields.has('pitch')) {
    const degrees = fields.degrees('pitch', 'pitch', pitch, 'pitch-out-of-range');
    if (byStep) {
      problems.add(
        fields.at('pitch'),
        'slope-given-twice',
        `${owner} has a pitch and a step; give its pitch in degrees, or the rise and going of one step, not both.`,
      );
      return unknown;
    }
    fields.note('stepRise');
    return { pitch: (degrees * Math.PI) / 180, rise: DEFAULTS.delivery.stepRise };
  }
  if (!byStep) {
    problems.add(
      fields.at('pitch'),
      'missing',
      `Say how steep ${owner} is: its pitch in degrees, or the rise and going of one step.`,
    );
    return unknown;
  }
  const up = fields.needed('rise', 'rise of one step', rise);
  const on = fields.needed('going', 'going of one step', going);
  const angle = Math.atan2(up, on);
  const degrees = (angle * 180) / Math.PI;
  if (degrees < pitch[0] || degrees > pitch[1]) {
    problems.add(
      fields.at('rise'),
      'pitch-out-of-range',
      `Steps that rise ${writeMm(up)} and go ${writeMm(on)} give ${owner} a pitch of ${degrees.toFixed(1)} degrees; expected ${pitch[0]} to ${pitch[1]} degrees. Check the two and their units.`,
    );
  }
  return { pitch: angle, rise: up };
}

function readLevel(fields: PassageFields, key: 'bottom' | 'top', what: string): Level {
  if (!fields.has(key)) {
    fields.note(key);
    return { depth: FREE, height: FREE };
  }
  const level = fields.part(key, ['depth', 'height'], what);
  if (level === null) return { depth: FREE, height: FREE };
  return {
    depth: level.needed('depth', 'depth', floor),
    height: level.optional('height', 'height', height, FREE, 'floorHeight'),
  };
}
