import { editDistance } from '../equipment/edit-distance.js';
import type { FurnishingSpec } from '../equipment/furnishing-types.js';
import { FURNISHINGS } from '../equipment/furnishings.js';
import { describeValue, listWords, type ProblemList } from '../length/read-input.js';

const MOST_CHARACTERS = 60;

/** The kind of the catalogue with this id, or null with a problem that names the nearest and all others. */
export function readKind(value: unknown, path: string, problems: ProblemList): FurnishingSpec | null {
  const kinds = Object.entries(FURNISHINGS);
  const found = kinds.find(([id]) => id === value);
  if (found !== undefined) return found[1];
  if (typeof value !== 'string') {
    return problems.add(
      path,
      'not-text',
      `Expected the kind of the piece as text, such as "sofa", got ${describeValue(value)}.`,
    );
  }
  // Long text is no id, and comparing it would only take time.
  const wanted = value.slice(0, MOST_CHARACTERS).trim().toLowerCase();
  const [nearest] = kinds
    .map(([id]) => ({ id, distance: editDistance(wanted, id) }))
    .sort((a, b) => a.distance - b.distance);
  const all = listWords(kinds.map(([id]) => id));
  return problems.add(
    path,
    'unknown-kind',
    `There is no kind of piece ${describeValue(value)}; nearest is "${nearest.id}" of ${all}. Or leave out "kind" and give "footprint" and "height".`,
  );
}
