import type { CueSpec, TableSpec } from '../equipment/equipment-types.js';
import type { Placement } from '../geometry/types.js';
import type { PlacementOptions } from '../placement/placement-problem.js';
import type { Scene } from '../room/scene.js';
import type { StrokeSettings } from '../stroke/stroke-settings.js';
import type { ArrangementValue, PieceProblem } from './arrangement-report.js';
import type { CheckedArrangement } from './checked-arrangement.js';

/** One room, a table and other pieces that are to stand in it together. */
export interface ArrangeQuestion {
  /** The bare room: without the pieces. */
  readonly scene: Scene;
  /** Null: pieces alone, no table. */
  readonly table: TableSpec | null;
  readonly stroke: StrokeSettings;
  /** The wanted cue. */
  readonly cue: CueSpec;
  /** Of the table, where it is given. */
  readonly pose: Placement | null;
  readonly arrangement: CheckedArrangement;
  readonly search: Pick<PlacementOptions, 'gap' | 'maxBoxes' | 'turns'>;
  /** A layout to start from; it is weighed first, and what is found has at least its value. */
  readonly start?: Layout;
}

/** Where everything stands. */
export interface Layout {
  /** Null: no table, or no place for it. */
  readonly tablePose: Placement | null;
  /** In the order of the pieces; null: it has no place. */
  readonly poses: readonly (Placement | null)[];
}

/** The best layout that was found. */
export interface Arranged extends Layout {
  readonly value: ArrangementValue;
  /** Layouts of the whole room that were weighed. */
  readonly layouts: number;
  /** True: `onProgress` ended the search. */
  readonly stopped: boolean;
  /** For each piece: what held back the places that were tried, most often first; empty where it has a place. */
  readonly rejections: readonly (readonly PieceProblem[])[];
}
