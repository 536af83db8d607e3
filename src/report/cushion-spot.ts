import type { CushionProfile } from './fit-report.js';

/** Longest cues at one spot of a cushion, mm. */
export interface SpotLengths {
  readonly open: number;
  readonly cramped: number;
}

/** The worst of a cushion's spots: the least of the longest cues, with the full and with the short backswing. Null without spots. */
export function cushionSpot(profile: CushionProfile): SpotLengths | null {
  if (profile.spots.length === 0) return null;
  return {
    open: Math.min(...profile.spots.map((spot) => spot.open)),
    cramped: Math.min(...profile.spots.map((spot) => spot.cramped)),
  };
}
