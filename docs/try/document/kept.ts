import { type Json, leaves, type Path, pathText } from './json.js';
import { isWithin } from './place-problems.js';

/**
 * The parts of an input that no control shows, the largest such parts, as paths: they are kept, reckoned with and saved as they
 * are, and the page names them.
 */
export function keptParts(input: Json, shown: readonly string[]): string[] {
  const covered = (path: Path): boolean => {
    const text = pathText(path);
    return shown.some((control) => isWithin(text, control) || isWithin(control, text));
  };
  const kept = new Set<string>();
  for (const leaf of leaves(input)) {
    if (leaf.length === 0) continue;
    for (let length = 1; length <= leaf.length; length++) {
      const part = leaf.slice(0, length);
      if (covered(part)) continue;
      kept.add(pathText(part));
      break;
    }
  }
  return [...kept];
}
