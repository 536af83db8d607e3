import type { TableSpec } from '../equipment/equipment-types.js';
import type { Clearance, Pose, Shares, SurveyNote, Verdict } from './fit-report.js';

/** What one cue can do at one table's best place. */
export interface ComparisonCue {
  readonly name: string;
  /** mm */
  readonly length: number;
  readonly verdict: Verdict;
  /** False: inside the measurement tolerance, or below the resolution of the proof. */
  readonly certain: boolean;
  readonly shares: Shares;
  /** Each share is within this of the true one; 0 where proved. */
  readonly shareError: number;
}

/** One table of a comparison, at the best place that was found for it. */
export interface ComparisonRow {
  readonly table: TableSpec;
  /** Null: the table cannot stand in this room. */
  readonly pose: Pose | null;
  readonly clearance: Clearance;
  /** In the order in which the cues were asked for. */
  readonly cues: readonly ComparisonCue[];
  /** Longest cue with which no level stroke meets anything, mm; 0 without a pose. */
  readonly longestCue: number;
  /** Other pieces: how many were asked for, and how many have a place beside this table with nothing wrong there. Where any were asked for. */
  readonly pieces?: { readonly asked: number; readonly placed: number };
}

/** Which tables take which cues in one room, one row a table. Plain JSON: millimetres, degrees, shares in 0..1. */
export interface TableComparison {
  readonly schema: 'elbowroom/comparison@1';
  readonly rows: readonly ComparisonRow[];
  /** Of a room by tape readings: as in a report of one table. */
  readonly confidence?: number;
  readonly survey?: SurveyNote;
}
