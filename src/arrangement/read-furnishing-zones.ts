import { DEFAULTS } from '../equipment/defaults.js';
import { FURNISHING_LIMITS } from '../equipment/furnishing-limits.js';
import type { UseZoneSpec } from '../equipment/furnishing-types.js';
import { readPlausible, writeMm } from '../equipment/read-plausible.js';
import { at, describeValue, type ProblemList, readName, readObject, readWord } from '../length/read-input.js';
import { readList } from '../room/read-corners.js';
import { readZeroOr } from './read-furnishing-shape.js';

const SIDES = ['front', 'back', 'left', 'right'] as const;
const KEYS = ['name', ...SIDES, 'from', 'to', 'shares', 'offDoors'] as const;
const SHARES = ['cueing', 'zones'] as const;

/** Zones of a piece, and whether any default was used for them. */
export interface ReadZones {
  readonly zones: readonly UseZoneSpec[];
  readonly byDefault: boolean;
}

/** The use zones of a piece, or null with problems; none where the list is empty. */
export function readZones(
  value: unknown,
  path: string,
  owner: string,
  problems: ProblemList,
): ReadZones | null {
  const { zones: most } = FURNISHING_LIMITS.count;
  const list = readList(value, path, `use zones of ${owner}`, most, problems);
  if (list === null) return null;
  const names = new Map<string, number>();
  const read = list.map((zone, i) => readZone(zone, at(path, i), i, owner, names, problems));
  const good = read.filter((zone) => zone !== null);
  if (good.length < read.length) return null;
  return { zones: good.map(({ zone }) => zone), byDefault: good.some(({ byDefault }) => byDefault) };
}

function readZone(
  value: unknown,
  path: string,
  index: number,
  owner: string,
  names: Map<string, number>,
  problems: ProblemList,
): { readonly zone: UseZoneSpec; readonly byDefault: boolean } | null {
  const before = problems.problems.length;
  const fields = readObject(value, path, KEYS, problems);
  if (fields === null) return null;
  const name = fields.has('name')
    ? readName(fields.get('name'), at(path, 'name'), "use zone's name", problems)
    : index === 0
      ? 'use'
      : `use ${index + 1}`;
  const zone = name === null ? `use zone ${index + 1} of ${owner}` : `use zone "${name}" of ${owner}`;
  if (name !== null) claim(name, index, owner, at(path, 'name'), names, problems);

  const length = (key: (typeof SIDES)[number] | 'from' | 'to', what: string, usual: number): number | null =>
    fields.has(key) ? readZoneLength(fields.get(key), at(path, key), what, key, problems) : usual;
  const [front, back, left, right] = SIDES.map((key) => length(key, `${key} of ${zone}`, 0));
  if ([front, back, left, right].every((mm) => mm === 0)) {
    problems.add(
      path,
      'zone-nowhere',
      `The ${zone} goes no farther than the piece itself; give how far it reaches at the "front", "back", "left" or "right".`,
    );
  }
  const from = length('from', `underside of ${zone}`, 0);
  const to = length('to', `top of ${zone}`, DEFAULTS.arrangement.zoneHeight);
  if (from !== null && to !== null && from >= to) {
    problems.add(
      at(path, 'from'),
      'heights-reversed',
      `The underside of ${zone} (${writeMm(from)}) is not below its top (${writeMm(to)}); both are above the floor.`,
    );
  }
  const shares = fields.has('shares')
    ? readShares(fields.get('shares'), at(path, 'shares'), zone, problems)
    : SHARES;
  const offDoors = fields.has('offDoors') ? fields.get('offDoors') : false;
  if (typeof offDoors !== 'boolean') {
    return problems.add(
      at(path, 'offDoors'),
      'not-yes-or-no',
      `Expected true or false for whether ${zone} keeps off doors, got ${describeValue(offDoors)}.`,
    );
  }
  if (problems.problems.length > before || name === null || shares === null) return null;
  if (front === null || back === null || left === null || right === null || from === null || to === null)
    return null;
  const withCueing = shares.includes('cueing');
  const withZones = shares.includes('zones');
  return {
    zone: { name, front, back, left, right, from, to, withCueing, withZones, offDoors },
    byDefault: !(fields.has('to') && fields.has('shares')),
  };
}

/** A side or an underside may be 0. */
function readZoneLength(
  value: unknown,
  path: string,
  what: string,
  key: (typeof SIDES)[number] | 'from' | 'to',
  problems: ProblemList,
): number | null {
  const { side, from, to } = FURNISHING_LIMITS.zone;
  if (key === 'to') return readPlausible(value, path, what, to, problems);
  return readZeroOr(value, path, what, key === 'from' ? from : side, problems);
}

function readShares(
  value: unknown,
  path: string,
  zone: string,
  problems: ProblemList,
): readonly string[] | null {
  const list = readList(value, path, 'things that may be shared with', SHARES.length, problems);
  if (list === null) return null;
  const before = problems.problems.length;
  const words = list.map((item, i) => readWord(item, at(path, i), SHARES, problems));
  if (words.length > 1 && words[0] !== null && words[0] === words[1]) {
    problems.add(at(path, 1), 'given-twice', `"${words[0]}" is in the list of ${zone} already.`);
  }
  return problems.problems.length > before ? null : words.filter((word) => word !== null);
}

function claim(
  name: string,
  index: number,
  owner: string,
  path: string,
  names: Map<string, number>,
  problems: ProblemList,
): void {
  const key = name.toLowerCase();
  const other = names.get(key);
  if (other === undefined) {
    names.set(key, index);
    return;
  }
  problems.add(
    path,
    'name-taken',
    `"${name}" is the name of use zone ${other + 1} of ${owner} already; give one of the two another name.`,
  );
}
