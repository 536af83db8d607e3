import { clamp } from './shot.js';

/** Where a player's middle is looked for: from `from` to `to` behind the ball along the unit vector, and within `half` to either side. */
export interface StandingWindow {
  readonly x: number;
  readonly y: number;
  readonly ux: number;
  readonly uy: number;
  readonly from: number;
  readonly to: number;
  readonly half: number;
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

const STEPS_ALONG = 28;
const STEPS_ASIDE = 14;
/** A step aside counts as much as two along: a player stays near the cue. */
const ALONG_COSTS = 0.5;
/** What a spot may lack, mm: drawn, that is nothing. */
const DRAWN = 1;
/** Steps of the search for a narrow place stop here, mm. */
const FINEST = 0.05;

/**
 * A place for the player in the window, as near as may be to the cue's line at `wanted` behind the ball; null where none was found.
 * `slack` tells how far a player at a point is from being in the way of something, negative where he is. This is for the drawing:
 * whether there is a place at all is the library's exact answer.
 */
export function standingSpot(
  window: StandingWindow,
  wanted: number,
  slack: (x: number, y: number) => number,
): Spot | null {
  const { x, y, ux, uy, from, to, half } = window;
  if (!(from <= to && half >= 0)) return null;
  const at = (along: number, aside: number): Spot => ({
    x: x + along * ux - aside * uy,
    y: y + along * uy + aside * ux,
  });
  const slackAt = (along: number, aside: number): number => {
    const spot = at(along, aside);
    return slack(spot.x, spot.y);
  };
  const aim = clamp(wanted, from, to);
  if (slackAt(aim, 0) >= 0) return at(aim, 0);
  let best: { along: number; aside: number; cost: number } | null = null;
  let widest = { along: aim, aside: 0, slack: Number.NEGATIVE_INFINITY };
  for (let i = 0; i <= STEPS_ALONG; i++) {
    const along = from + ((to - from) * i) / STEPS_ALONG;
    for (let j = 0; j <= STEPS_ASIDE; j++) {
      const aside = half * ((2 * j) / STEPS_ASIDE - 1);
      const free = slackAt(along, aside);
      if (free > widest.slack) widest = { along, aside, slack: free };
      const cost = Math.abs(aside) + ALONG_COSTS * Math.abs(along - aim);
      if (free >= 0 && (best === null || cost < best.cost)) best = { along, aside, cost };
    }
  }
  if (best !== null) return at(best.along, best.aside);
  // Between the samples: climb from the widest one.
  for (let step = Math.max((to - from) / STEPS_ALONG, (2 * half) / STEPS_ASIDE); step > FINEST; ) {
    let moved = false;
    for (const [along, aside] of [
      [step, 0],
      [-step, 0],
      [0, step],
      [0, -step],
    ] as const) {
      const next = {
        along: clamp(widest.along + along, from, to),
        aside: clamp(widest.aside + aside, -half, half),
      };
      const free = slackAt(next.along, next.aside);
      if (free > widest.slack) {
        widest = { ...next, slack: free };
        moved = true;
      }
    }
    if (!moved) step /= 2;
  }
  return widest.slack >= -DRAWN ? at(widest.along, widest.aside) : null;
}
