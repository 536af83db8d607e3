import type { Carried, Hold } from './carried.js';
import type { HoldName } from './delivery-input.js';
import type { HoldReport } from './delivery-report.js';
import { heldHeight, planLength } from './holds.js';

/** Radians within which a hold counts as level. */
const LEVEL = 1e-6;

/** The edge that is level and lies across, and the turn (0 to pi/2) of the other two: a place on one of three arcs between level holds. */
export interface HoldArc {
  /** Level hold at turn 0, and at a quarter turn. */
  readonly from: HoldName;
  readonly to: HoldName;
  readonly turn: number;
  readonly along: number;
  readonly up: number;
  readonly across: number;
}

/** The hold as an arc from the level way with the lower height; `leaned` runs from flat to on edge, `tilted` from flat or on edge to on end. */
export function holdArc(box: Carried, hold: Hold): HoldArc {
  const { along, across, up, tilt } = hold;
  // A hold that was written the other way up: its edges up and along change places.
  const [longer, shorter, turn] = along >= up ? [along, up, tilt] : [up, along, Math.PI / 2 - tilt];
  const [from, to]: readonly [HoldName, HoldName] =
    across === box.l
      ? ['flat', 'on-edge']
      : across === box.h && box.h !== box.w
        ? ['on-edge', 'on-end']
        : ['flat', 'on-end'];
  return { from, to, turn: Math.min(Math.PI / 2, Math.max(0, turn)), along: longer, up: shorter, across };
}

/** The hold in words and figures: which way it is held, and how far it is tilted out of the nearest level way. */
export function reportHold(box: Carried, hold: Hold): HoldReport {
  const { from, to, turn, across } = holdArc(box, hold);
  const nearStart = turn <= Math.PI / 4;
  const base = nearStart ? from : to;
  const away = nearStart ? turn : Math.PI / 2 - turn;
  const level = away <= LEVEL;
  return {
    way: level ? base : across === box.l ? 'leaned' : 'tilted',
    tilt: level ? 0 : (away * 180) / Math.PI,
    base,
    planLength: planLength(hold),
    planWidth: across,
    height: heldHeight(hold),
  };
}
