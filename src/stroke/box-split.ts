import { OPEN_ELEVATION, PLAYABLE_ELEVATION } from './box-judge.js';

/** How much a turn counts against a move of the ball when a box is split, as a share of ell: between tip and butt. */
const TURN_WEIGHT = 0.7;

/**
 * A side of a box is split for what it is likely to gain: its size times the gain per size that ancestors' splits showed. Where
 * they showed little, this share of the greatest gain per size is still counted on, so that every side is split in the end.
 */
const LEAST_RATE = 0.05;

/** Larger boxes (half sizes, as a share of ell) are split where they are largest: what gains there says little about later splits. */
const RATED_BELOW = 0.12;

/** A box of a search that waits to be split, and where its lists of walls and parts are. */
export interface PendingBox {
  u: number;
  v: number;
  phi: number;
  halfU: number;
  halfV: number;
  halfPhi: number;
  facts: number;
  /** By how much all elevations are as wanted, radians; negative: by how much not. */
  spare: number;
  /** How much of that a split of u, v or phi gained per mm of its size, -1 where none was tried. */
  rateU: number;
  rateV: number;
  ratePhi: number;
  depth: number;
  slot: number;
  walls: number;
  parts: number;
}

export function pendingBox(): PendingBox {
  return {
    u: 0,
    v: 0,
    phi: 0,
    halfU: 0,
    halfV: 0,
    halfPhi: 0,
    facts: 0,
    spare: 0,
    rateU: -1,
    rateV: -1,
    ratePhi: -1,
    depth: 0,
    slot: 0,
    walls: 0,
    parts: 0,
  };
}

const ELEVATION = OPEN_ELEVATION | PLAYABLE_ELEVATION;

/** Is the box no larger than the resolution, in u, in v and at the cue's butt? */
export function isSmall({ halfU, halfV, halfPhi }: PendingBox, ell: number, resolution: number): boolean {
  return Math.max(halfU, halfV, halfPhi * ell) * 2 <= resolution;
}

/** The side of a box that is not small to split: never one that is below the resolution itself. */
export function sideToSplit(box: PendingBox, ell: number, resolution: number): 'u' | 'v' | 'phi' {
  const { halfU, halfV, halfPhi, rateU, rateV, ratePhi } = box;
  const greatest = isRated(box, ell) ? Math.max(rateU, rateV, ratePhi) : -1;
  const least = LEAST_RATE * greatest;
  const gain = (size: number, known: number): number => {
    if (greatest <= 0) return size;
    return size * (known < 0 ? greatest : Math.max(least, known));
  };
  const half = resolution / 2;
  const gainU = halfU > half ? gain(halfU, rateU) : 0;
  const gainV = halfV > half ? gain(halfV, rateV) : 0;
  const gainPhi = halfPhi * ell > half ? gain(atButt(halfPhi, ell), ratePhi) : 0;
  if (gainU >= gainV && gainU >= gainPhi) return 'u';
  return gainV >= gainPhi ? 'v' : 'phi';
}

/** Notes in one half of `parent` what splitting that side gained: `worst` is the lesser spare of the two halves. */
export function noteGain(
  half: PendingBox,
  parent: PendingBox,
  side: 'u' | 'v' | 'phi',
  worst: number,
  ell: number,
): void {
  if (!isRated(parent, ell)) return;
  const gain = worst > parent.spare ? worst - parent.spare : 0;
  if (side === 'u') half.rateU = gain / parent.halfU;
  else if (side === 'v') half.rateV = gain / parent.halfV;
  else half.ratePhi = gain / atButt(parent.halfPhi, ell);
}

/** Are splits of this box guided by what earlier ones gained? Where only room to stand is missing, nothing tells. */
function isRated({ halfU, halfV, halfPhi, facts }: PendingBox, ell: number): boolean {
  return (facts & ELEVATION) === 0 && Math.max(halfU, halfV, atButt(halfPhi, ell)) <= RATED_BELOW * ell;
}

/** A turn as mm, to be weighed against moves of the ball. */
function atButt(turn: number, ell: number): number {
  return TURN_WEIGHT * ell * turn;
}
