import type { Range, ShotBox } from './box-bounds.js';
import { BoxJudge, EVERY_FACT } from './box-judge.js';
import { ALL_OPEN, ALL_PLAYABLE, NONE_OPEN, NONE_PLAYABLE, statusOf } from './shot-box.js';
import type { StandingRoom } from './standing-room.js';
import type { StrokeCue, StrokeScene } from './stroke-scene.js';

/** Bounds of the shares of all shots, each between 0 and 1. */
export interface ShareBounds {
  readonly open: Readonly<Range>;
  readonly cramped: Readonly<Range>;
  readonly blocked: Readonly<Range>;
  readonly boxes: number;
}

/** Boxes at the start: all of Q, and the full turn cut into this many. */
const TURNS = 8;
/** How much a turn counts against a move of the ball when a box is split, as a share of L. */
const TURN_WEIGHT = 0.7;

/**
 * Certified bounds of the shares of open, cramped and blocked shots: boxes are split, largest first, until those whose class is
 * not known hold at most `eps` of all shots or `maxBoxes` were looked at. The bounds are valid in either case. Much slower than
 * a sample of shots: meant to check one.
 */
export function boundShares(
  scene: StrokeScene,
  room: StandingRoom,
  cue: StrokeCue,
  options: { readonly maxBoxes: number; readonly eps: number },
): ShareBounds {
  const judge = new BoxJudge(scene, room, cue, 2);
  const all = judge.listAll();
  const known = { open: 0, cramped: 0, blocked: 0, notOpen: 0, playable: 0 };
  const queue: { box: ShotBox; facts: number; share: number }[] = [];
  const halfPhi = Math.PI / TURNS;
  for (let k = 0; k < TURNS; k++) {
    const box = { u: 0, v: 0, phi: (2 * k + 1) * halfPhi, halfU: scene.qx, halfV: scene.qy, halfPhi };
    queue.push({ box, facts: 0, share: 1 / TURNS });
  }
  let unknown = 1;
  let boxes = 0;
  // First in, first out is largest first: every split halves.
  for (let next = 0; next < queue.length && boxes < options.maxBoxes && unknown > options.eps; next++) {
    const { box, facts: inherited, share } = queue[next];
    judge.judge(box, EVERY_FACT & ~inherited, all, 1);
    boxes++;
    const facts = inherited | judge.facts;
    const status = statusOf(facts);
    if ((status & ALL_OPEN) !== 0) known.open += share;
    else if ((status & NONE_PLAYABLE) !== 0) known.blocked += share;
    else if ((status & NONE_OPEN) !== 0 && (status & ALL_PLAYABLE) !== 0) known.cramped += share;
    else {
      for (const half of halves(box, cue.length)) queue.push({ box: half, facts, share: share / 2 });
      continue;
    }
    unknown -= share;
  }
  // What waits still tells something: it may be known to be playable, or not to be open.
  for (const { facts, share } of queue.slice(boxes)) {
    const status = statusOf(facts);
    if ((status & NONE_OPEN) !== 0) known.notOpen += share;
    if ((status & ALL_PLAYABLE) !== 0) known.playable += share;
  }
  const { open, cramped, blocked } = known;
  return {
    open: { lo: open, hi: 1 - cramped - blocked - known.notOpen },
    cramped: { lo: cramped, hi: 1 - open - blocked },
    blocked: { lo: blocked, hi: 1 - open - cramped - known.playable },
    boxes,
  };
}

function halves(box: ShotBox, length: number): [ShotBox, ShotBox] {
  const { u, v, phi, halfU, halfV, halfPhi } = box;
  const turn = TURN_WEIGHT * length * halfPhi;
  if (halfU >= halfV && halfU >= turn) {
    const half = halfU / 2;
    return [
      { ...box, u: u - half, halfU: half },
      { ...box, u: u + half, halfU: half },
    ];
  }
  if (halfV >= turn) {
    const half = halfV / 2;
    return [
      { ...box, v: v - half, halfV: half },
      { ...box, v: v + half, halfV: half },
    ];
  }
  const half = halfPhi / 2;
  return [
    { ...box, phi: phi - half, halfPhi: half },
    { ...box, phi: phi + half, halfPhi: half },
  ];
}
