import type { Json, Path } from '../document/json.js';
import type { Kind } from '../document/lens.js';

/** What the form shows of an input, as data: the view makes controls of it, and nothing here knows of a page. */
export type Part = FieldPart | ChoicePart | GroupPart | ListPart;

/** What the form holds: the input, and the walls of the other way to write a room down, for whoever comes back to it. */
export interface FormState {
  readonly input: Json;
  readonly otherRoom: Json | undefined;
}

export interface Option {
  readonly value: string;
  readonly label: string;
  readonly group?: string;
}

/** One value in one control. */
export interface FieldPart {
  readonly part: 'field';
  readonly path: Path;
  readonly kind: Kind;
  readonly label: string;
  readonly optional: boolean;
  /** Of what is usually written. */
  readonly width: 'short' | 'medium' | 'long';
  /** Given: one of these is chosen. */
  readonly options?: readonly Option[];
  /** Given with options: what the option is called behind which anything else may be written. */
  readonly own?: string;
}

/** A choice that changes which parts there are. */
export interface ChoicePart {
  readonly part: 'choice';
  readonly path: Path;
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly options: readonly Option[];
  readonly radios: boolean;
  /** The choice is itself what stands at the path, not only the shape of it. */
  readonly showsValue: boolean;
  readonly note?: string;
  readonly choose: (state: FormState, value: string) => FormState;
}

export interface GroupPart {
  readonly part: 'group';
  readonly heading: string;
  readonly parts: readonly Part[];
}

export interface ListPart {
  readonly part: 'list';
  readonly path: Path;
  readonly heading: string;
  readonly note?: string;
  readonly rows: readonly Row[];
  /** Rows that are in the input beyond those. */
  readonly more: number;
  /** Ways to add a row at the end. */
  readonly add: readonly { readonly label: string; readonly item: Json }[];
  /** Every row has the same few controls: they stand in columns where there is room. */
  readonly columns: boolean;
  /** The order of the rows counts, so that one may be put between two. */
  readonly ordered: boolean;
  /** The list is left out where it has no rows. */
  readonly optional: boolean;
}

export interface Row {
  readonly path: Path;
  readonly name: string;
  readonly parts: readonly Part[];
}

export interface Section {
  readonly id: string;
  readonly heading: string;
  readonly notes: readonly string[];
  readonly parts: readonly Part[];
  /** May be folded up, and is at first, unless it holds something. */
  readonly folded: boolean;
}
