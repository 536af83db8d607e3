import type { TableSpec } from '../equipment/equipment-types.js';
import { FURNISHING_LIMITS } from '../equipment/furnishing-limits.js';
import type { Stand, TurnRule } from '../equipment/furnishing-types.js';
import { writeMm } from '../equipment/read-plausible.js';
import { at, describeValue, type ProblemList, readNumber } from '../length/read-input.js';
import { capital } from '../room/names.js';
import { readList } from '../room/read-corners.js';

const TURNS = ['back', 'square', 'any'] as const;

/** Which way round a piece may stand, or null with problems. */
export function readTurns(
  value: unknown,
  path: string,
  stand: Stand,
  owner: string,
  problems: ProblemList,
): TurnRule | null {
  if (Array.isArray(value)) return readTurnList(value, path, owner, problems);
  const word = TURNS.find((known) => known === value);
  if (word === undefined) {
    return problems.add(
      path,
      'unknown-word',
      `Expected one of "back", "square", "any" or a list of turns in degrees, got ${describeValue(value)}.`,
    );
  }
  if (word === 'back' && stand === 'free') {
    return problems.add(
      path,
      'back-without-wall',
      `${capital(owner)} stands free, with no wall for its back; turn it "square" or "any", or let it stand at a "wall".`,
    );
  }
  return word;
}

function readTurnList(
  value: readonly unknown[],
  path: string,
  owner: string,
  problems: ProblemList,
): readonly number[] | null {
  const list = readList(value, path, `turns of ${owner}`, FURNISHING_LIMITS.count.turns, problems);
  if (list === null) return null;
  if (list.length === 0) {
    return problems.add(
      path,
      'no-turns',
      `The list of turns that ${owner} may have is empty; leave it out, or name at least one.`,
    );
  }
  const limits = { what: `turn of ${owner}`, min: -360, max: 360 };
  const read = list.map((turn, i) => readNumber(turn, at(path, i), limits, ' degrees', problems));
  const good = read.filter((turn) => turn !== null);
  // Adding 0 makes 0 of -0.
  return good.length === read.length ? good.map((turn) => turn + 0) : null;
}

/** What cannot be said of a piece that hangs over the table, because it goes and turns with it. */
export function checkOverTable(
  given: { readonly pose: boolean; readonly turns: boolean; readonly zones: boolean },
  from: number | null,
  table: TableSpec | null,
  path: string,
  owner: string,
  problems: ProblemList,
): void {
  for (const key of ['pose', 'turns', 'zones'] as const) {
    if (!given[key]) continue;
    problems.add(
      at(path, key),
      `over-table-${key}`,
      `${capital(owner)} hangs over the table, goes and turns with it, and nobody needs floor for it; leave out "${key}".`,
    );
  }
  if (from === null || table === null) return;
  const rail = table.bedHeight + table.railHeight;
  if (from > rail) return;
  problems.add(
    at(path, 'from'),
    'over-table-too-low',
    `The underside of ${owner} is ${writeMm(from)} above the floor, not over the table's rails, which are ${writeMm(rail)} high; "from" is measured from the floor, not from the bed.`,
  );
}
