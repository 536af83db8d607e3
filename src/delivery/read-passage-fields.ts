import { readPlausible } from '../equipment/read-plausible.js';
import { at, type ProblemList, readNumber, readObject } from '../length/read-input.js';
import type { DefaultName, DefaultNotes } from './read-passage-notes.js';

type Limits = readonly [least: number, most: number];

/**
 * The properties of one passage while it is read. What cannot be read adds its problem and stands as `NaN`, which every comparison
 * answers with no, so that one slip is told once; nothing that holds a `NaN` is handed on.
 */
export class PassageFields {
  readonly path: string;
  readonly problems: ProblemList;
  readonly notes: DefaultNotes;
  /** What it is called in messages. */
  readonly owner: string;
  private readonly fields: ReadonlyMap<string, unknown>;
  private readonly name: string;

  constructor(
    fields: ReadonlyMap<string, unknown>,
    path: string,
    name: string,
    problems: ProblemList,
    notes: DefaultNotes,
    owner = `"${name}"`,
  ) {
    this.fields = fields;
    this.path = path;
    this.name = name;
    this.problems = problems;
    this.notes = notes;
    this.owner = owner;
  }

  has(key: string): boolean {
    return this.fields.has(key);
  }

  /** Path of one property. */
  at(key: string): string {
    return at(this.path, key);
  }

  /** A length in mm that has to be given. */
  needed(key: string, what: string, limits: Limits): number {
    if (this.has(key)) return this.length(key, what, limits);
    this.problems.add(this.at(key), 'missing', `The ${what} of ${this.owner} is missing.`);
    return Number.NaN;
  }

  /** A length in mm, or what stands in for it, which is noted under its name. */
  optional(key: string, what: string, limits: Limits, usual: number, note: DefaultName): number {
    if (this.has(key)) return this.length(key, what, limits);
    this.note(note);
    return usual;
  }

  /** An angle in degrees, or `NaN` with a problem of this code. */
  degrees(key: string, what: string, [least, most]: Limits, code: string): number {
    const degrees = readNumber(
      this.fields.get(key),
      this.at(key),
      { what: `${what} of ${this.owner}` },
      ' degrees',
      this.problems,
    );
    if (degrees === null) return Number.NaN;
    if (degrees >= least && degrees <= most) return degrees;
    this.problems.add(
      this.at(key),
      code,
      `The ${what} of ${this.owner} is ${degrees} degrees; expected ${least} to ${most} degrees.`,
    );
    return Number.NaN;
  }

  /** Notes that a default was used for this passage. */
  note(what: DefaultName): void {
    this.notes.add(what, this.name);
  }

  /** The properties of something that is part of this passage, or null where it is left out or cannot be read. */
  part(key: string, known: readonly string[], what: string): PassageFields | null {
    if (!this.has(key)) return null;
    const fields = readObject(this.fields.get(key), this.at(key), known, this.problems);
    if (fields === null) return null;
    return new PassageFields(
      fields,
      this.at(key),
      this.name,
      this.problems,
      this.notes,
      `the ${what} of ${this.owner}`,
    );
  }

  private length(key: string, what: string, limits: Limits): number {
    const value = this.fields.get(key);
    const mm = readPlausible(value, this.at(key), `${what} of ${this.owner}`, limits, this.problems);
    // Adding 0 makes 0 of -0.
    return mm === null ? Number.NaN : mm + 0;
  }
}
