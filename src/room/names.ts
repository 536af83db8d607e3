import { listWords, type ProblemList } from '../length/read-input.js';

/** What the report calls the room itself; nothing else may be called that. */
const ROOMS_OWN = /^(wall|ceiling)( \d+)?$/i;

/** The names of the things in a room, so that no two of them read alike in a report. */
export class NameBook {
  /** Path of the owner by name, in small letters. */
  private readonly taken = new Map<string, string>();

  /** Enters a name that nothing else may have, once or again. */
  reserve(name: string, owner: string): void {
    this.taken.set(name.toLowerCase(), owner);
  }

  /** Enters a name, or adds a problem when it is taken (capitals do not count) or the room's own. */
  claim(name: string, owner: string, path: string, problems: ProblemList): void {
    const key = name.toLowerCase();
    const other = this.taken.get(key);
    if (ROOMS_OWN.test(name)) {
      problems.add(
        path,
        'name-taken',
        `"${name}" is what the report calls a part of the room; choose another name.`,
      );
    } else if (other !== undefined) {
      problems.add(
        path,
        'name-taken',
        `"${name}" is the name of ${other} already; give one of the two another name, so that the report can tell them apart.`,
      );
    } else {
      this.taken.set(key, owner);
    }
  }
}

/** Most names that a sentence lists. */
const LISTED = 5;

/** `"a", "b" and "c"`; after the fifth `and 7 more`. */
export function listNames(names: readonly string[]): string {
  if (names.length <= LISTED) return listWords(names);
  const shown = names.slice(0, LISTED).map((name) => `"${name}"`);
  return `${shown.join(', ')} and ${names.length - LISTED} more`;
}

/** With a capital first letter, to begin a sentence. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
