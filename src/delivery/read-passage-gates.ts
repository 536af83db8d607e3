import { DEFAULTS } from '../equipment/defaults.js';
import { PASSAGE_LIMITS } from '../equipment/passage-limits.js';
import { writeMm } from '../equipment/read-plausible.js';
import type { Gate, Lift, Space } from './passages.js';
import type { PassageFields } from './read-passage-fields.js';

const FREE = Number.POSITIVE_INFINITY;
const ENDLESS: Space = { depth: FREE, left: FREE, right: FREE, height: FREE };

/** What a reader of one kind leaves to the reader of all: the name and the tolerance. */
export type Unnamed<T> = T extends unknown ? Omit<T, 'name' | 'tolerance'> : never;

/** A doorway or an opening; holds `NaN` where there were problems. */
export function readGate(fields: PassageFields, kind: 'doorway' | 'opening'): Unnamed<Gate> {
  const doorway = kind === 'doorway';
  return {
    kind,
    width: fields.needed('width', 'clear width', PASSAGE_LIMITS.width),
    height: fields.needed('height', 'clear height', PASSAGE_LIMITS.height),
    depth: readWallDepth(fields),
    sill: doorway ? 0 : fields.optional('sill', 'sill', PASSAGE_LIMITS.sill, 0, 'sill'),
    leaf: doorway ? fields.optional('leaf', "leaf's thickness", PASSAGE_LIMITS.leaf, 0, 'leaf') : 0,
    // Outside an opening nothing is in the way.
    before: doorway ? readSpace(fields, 'before', 'space in front') : ENDLESS,
    after: readSpace(fields, 'after', 'space behind'),
  };
}

/** A lift; its door is neither wider nor higher than its car. */
export function readLift(fields: PassageFields): Unnamed<Lift> {
  const { car, width, height } = PASSAGE_LIMITS;
  const inside = {
    width: fields.needed('width', 'inside width', car.width),
    depth: fields.needed('depth', 'inside depth', car.depth),
    height: fields.needed('height', 'inside height', car.height),
  };
  if (!fields.has('door')) {
    fields.problems.add(
      fields.at('door'),
      'missing',
      `The door of ${fields.owner} is missing; give its clear width and height.`,
    );
  }
  const door = fields.part('door', ['width', 'height', 'depth'], 'door');
  const read = {
    width: door?.needed('width', 'clear width', width) ?? Number.NaN,
    height: door?.needed('height', 'clear height', height) ?? Number.NaN,
    depth: door === null ? Number.NaN : readWallDepth(door),
  };
  if (read.width > inside.width) {
    fields.problems.add(
      `${fields.at('door')}.width`,
      'door-wider-than-car',
      `The door of ${fields.owner} is ${writeMm(read.width)} wide, but its car only ${writeMm(inside.width)} from side to side; check both, or swap the car's width and depth.`,
    );
  }
  if (read.height > inside.height) {
    fields.problems.add(
      `${fields.at('door')}.height`,
      'door-higher-than-car',
      `The door of ${fields.owner} is ${writeMm(read.height)} high, but its car only ${writeMm(inside.height)}; check both.`,
    );
  }
  return { kind: 'lift', ...inside, door: read, before: readSpace(fields, 'before', 'space in front') };
}

function readWallDepth(fields: PassageFields): number {
  const { wallDepth } = DEFAULTS.delivery;
  return fields.optional('depth', 'depth', PASSAGE_LIMITS.wallDepth, wallDepth, 'wallDepth');
}

function readSpace(fields: PassageFields, key: 'before' | 'after', what: string): Space {
  if (!fields.has(key)) {
    fields.note(key);
    return ENDLESS;
  }
  const space = fields.part(key, ['depth', 'left', 'right', 'height'], what);
  if (space === null) return ENDLESS;
  const { floor, beside, height } = PASSAGE_LIMITS;
  return {
    depth: space.needed('depth', 'depth', floor),
    left: space.optional('left', 'floor to the left', beside, FREE, 'left'),
    right: space.optional('right', 'floor to the right', beside, FREE, 'right'),
    height: space.optional('height', 'height', height, FREE, 'floorHeight'),
  };
}
