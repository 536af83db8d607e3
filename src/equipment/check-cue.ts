import { formatLength } from '../length/format-length.js';
import { at, type ProblemList, readArray, readLength, readObject } from '../length/read-input.js';
import { CUES } from './cues.js';
import { DEFAULTS } from './defaults.js';
import type { CueSpec, TableSpec } from './equipment-types.js';
import { LIMITS } from './limits.js';
import { readPlausible, unitHint, writeMm } from './read-plausible.js';

/**
 * A checked cue from its length, a {@link CueInput}, or an entry of the catalogue or its id; null with problems. Diameters
 * that are not given are the usual ones (a tip never thicker than its butt), which is added to the assumptions, once.
 */
export function readCue(
  value: unknown,
  path: string,
  problems: ProblemList,
  ballDiameter: number,
  assumptions: string[] = [],
): CueSpec | null {
  const entry = Object.values(CUES).find((cue) => cue === value || cue.id === value);
  if (entry !== undefined) {
    noteTaper(assumptions);
    return {
      name: entry.name,
      length: entry.length,
      tipRadius: entry.tipRadius,
      buttRadius: entry.buttRadius,
    };
  }
  if (typeof value !== 'object' || value === null) {
    const length = readCueLength(value, path, problems, ballDiameter);
    if (length === null) return null;
    noteTaper(assumptions);
    return { name: nameOf(value, length), length, ...DEFAULTS.cue };
  }
  const before = problems.problems.length;
  const fields = readObject(value, path, ['length', 'tipDiameter', 'buttDiameter'], problems);
  if (fields === null) return null;
  const lengthPath = at(path, 'length');
  const length = fields.has('length')
    ? readCueLength(fields.get('length'), lengthPath, problems, ballDiameter)
    : problems.add(lengthPath, 'missing', 'The length of the cue is missing.');
  const diameter = (key: 'tipDiameter' | 'buttDiameter', what: string): number | null | undefined =>
    fields.has(key)
      ? readPlausible(fields.get(key), at(path, key), what, LIMITS.cue[key], problems)
      : undefined;
  const tip = diameter('tipDiameter', "diameter of the cue's tip");
  const butt = diameter('buttDiameter', "diameter of the cue's butt");
  if (problems.problems.length > before) return null;
  if (length === null || tip === null || butt === null) return null;
  const tipRadius =
    tip === undefined ? Math.min(DEFAULTS.cue.tipRadius, (butt ?? Number.POSITIVE_INFINITY) / 2) : tip / 2;
  const buttRadius = butt === undefined ? Math.max(DEFAULTS.cue.buttRadius, tipRadius) : butt / 2;
  if (tipRadius > buttRadius) {
    return problems.add(
      at(path, 'tipDiameter'),
      'tip-thicker-than-butt',
      `The tip is ${writeMm(2 * tipRadius)} thick and the butt ${writeMm(2 * buttRadius)}; a cue is thicker at its butt, so swap the two.`,
    );
  }
  const name = nameOf(fields.get('length'), length);
  if (tip === undefined && butt === undefined) noteTaper(assumptions);
  else if (tip === undefined)
    note(assumptions, `Tip of the cue ${name} ${writeMm(2 * tipRadius)} thick (default).`);
  else if (butt === undefined)
    note(assumptions, `Butt of the cue ${name} ${writeMm(2 * buttRadius)} thick (default).`);
  return { name, length, tipRadius, buttRadius };
}

/**
 * The checked cues in the order given, the wanted one first, or null with problems. Left out, it is the usual cue of the
 * table, which is added to the assumptions.
 */
export function readCues(
  value: unknown,
  path: string,
  table: Pick<TableSpec, 'id' | 'game' | 'usualCue' | 'ballDiameter'>,
  problems: ProblemList,
  assumptions: string[],
): readonly CueSpec[] | null {
  if (value === undefined) {
    const name = formatLength(table.usualCue, 'in');
    note(
      assumptions,
      `Cue ${name}, the usual one${table.id === null ? '' : ` for ${table.game}`} (default).`,
    );
    noteTaper(assumptions);
    return [{ name, length: table.usualCue, ...DEFAULTS.cue }];
  }
  const list = readArray(value, path, 'cues', problems);
  if (list === null) return null;
  if (list.length === 0) {
    return problems.add(
      path,
      'no-cues',
      'The list of cues is empty; leave it out for the usual cue, or name at least one.',
    );
  }
  if (list.length > LIMITS.cue.count) {
    return problems.add(
      path,
      'too-many-cues',
      `There are ${list.length} cues; at most ${LIMITS.cue.count} are compared.`,
    );
  }
  const cues = list.map((cue, i) => readCue(cue, at(path, i), problems, table.ballDiameter, assumptions));
  const good = cues.filter((cue) => cue !== null);
  return good.length === cues.length ? good : null;
}

function readCueLength(
  value: unknown,
  path: string,
  problems: ProblemList,
  ballDiameter: number,
): number | null {
  const length = readLength(value, path, { what: 'cue length' }, problems);
  if (length === null) return null;
  if (length < ballDiameter) {
    return problems.add(
      path,
      'cue-too-short',
      `The cue is ${writeMm(length)} long, shorter than its ball is wide (${writeMm(ballDiameter)}). ${unitHint(value, LIMITS.cue.length)}`,
    );
  }
  return readPlausible(value, path, 'cue length', LIMITS.cue.length, problems);
}

/** What the customer calls it: the text as given, a number in mm. */
function nameOf(value: unknown, length: number): string {
  return typeof value === 'string' ? value.trim().replace(/\s+/g, ' ') : writeMm(length);
}

function noteTaper(assumptions: string[]): void {
  const { tipRadius, buttRadius } = DEFAULTS.cue;
  note(
    assumptions,
    `Cues ${writeMm(2 * tipRadius)} thick at the tip and ${writeMm(2 * buttRadius)} at the butt (default).`,
  );
}

function note(assumptions: string[], sentence: string): void {
  if (!assumptions.includes(sentence)) assumptions.push(sentence);
}
