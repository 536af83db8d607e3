import { anyCriticalShot } from './box-critical.js';
import { BoxJudge, OPEN_ELEVATION, PLAYABLE_ELEVATION, ROOM_TO_STAND } from './box-judge.js';
import { isSmall, noteGain, type PendingBox, pendingBox, sideToSplit } from './box-split.js';
import { StrokeClassifier } from './classify-traced.js';
import { growthInPlan } from './prepare-strokes.js';
import type { StandingRoom } from './standing-room.js';
import type { StrokeCue, StrokeScene } from './stroke-scene.js';
import { ShotTrace } from './trace-shot.js';

export interface ProofOptions {
  /** How many boxes may be looked at. */
  readonly maxBoxes: number;
  /** Boxes no larger than this (mm, in u, in v and at the cue's butt in phi; > 0) are not split further. */
  readonly resolution: number;
  /** True: that there is room to stand for every shot is proved already, and not looked into again. */
  readonly allStand?: boolean;
  /** True: that the cue has its elevation for every shot is proved already; only room to stand is looked into. */
  readonly allClear?: boolean;
}

export interface ShotProof {
  readonly outcome: 'proved' | 'refuted' | 'undecided';
  /** For `refuted`: a shot that is not open or not playable, by its exact class; mm and radians in the table's frame. */
  readonly shot?: { readonly u: number; readonly v: number; readonly phi: number };
  /** Boxes that were looked at. */
  readonly boxes: number;
}

/** Once a box at the resolution is left over there is no proof; this many more boxes are searched for a counterexample. */
const BOXES_AFTER_UNDECIDED = 2000;

/**
 * Is every shot of Q x [0, 360) open, or playable (open or cramped), with this cue?
 *
 * - `proved`: bounds over boxes that cover all shots say so. Certified up to rounding (1e-6 mm, what touching may overlap).
 * - `refuted`: `shot` is a counterexample by its exact class.
 * - `undecided`: neither; bounds at the resolution left a box over, or `maxBoxes` was reached. Then nothing is known, except that
 *   no counterexample was come across.
 */
export function proveShots(
  scene: StrokeScene,
  room: StandingRoom,
  cue: StrokeCue,
  target: 'open' | 'playable',
  options: ProofOptions,
): ShotProof {
  return new ShotProver(scene, room, cue, target, options).run();
}

/** Where shots are tried around an undecided box, in its half sizes. */
const NEAR = [1, -1, 4, -4] as const;
/** Around how many of them that is done. */
const LOOKED_AROUND = 20;

/** Depth first, the worse half first; each of the (at most two) boxes that wait at one depth has a slot for its lists. */
class ShotProver {
  readonly #scene: StrokeScene;
  readonly #room: StandingRoom;
  readonly #classifier: StrokeClassifier;
  readonly #trace: ShotTrace;
  readonly #judge: BoxJudge;
  readonly #needed: number;
  /** Least class code that violates the target. */
  readonly #badCode: 1 | 2;
  readonly #options: ProofOptions;
  readonly #pending: PendingBox[] = [];
  #waiting = 0;
  #boxes = 0;
  #counterexample: ShotProof['shot'];

  constructor(
    scene: StrokeScene,
    room: StandingRoom,
    cue: StrokeCue,
    target: 'open' | 'playable',
    options: ProofOptions,
  ) {
    this.#scene = scene;
    this.#room = room;
    this.#options = options;
    this.#classifier = new StrokeClassifier(scene, cue);
    this.#trace = new ShotTrace(scene, this.#classifier.ell);
    const elevation = target === 'open' ? OPEN_ELEVATION : PLAYABLE_ELEVATION;
    this.#needed =
      (options.allStand === true ? 0 : ROOM_TO_STAND) | (options.allClear === true ? 0 : elevation);
    this.#badCode = target === 'open' ? 1 : 2;
    const depth = this.#greatestDepth();
    for (let k = 0; k < 2 * depth + 2; k++) this.#pending.push(pendingBox());
    this.#judge = new BoxJudge(scene, room, cue, 2 * depth + 3);
  }

  run(): ShotProof {
    const { qx, qy } = this.#scene;
    const reach = this.#classifier.ell + growthInPlan(this.#scene);
    const found = anyCriticalShot(this.#scene, reach, (u, v, phi) => this.#violates(u, v, phi));
    if (found) return this.#refuted();

    const all = { ...pendingBox(), ...this.#judge.listAll(), depth: -1 };
    this.#look(0, 0, 0, qx, qy, Math.PI, all, 0);
    let limit = this.#options.maxBoxes;
    let undecided = 0;
    while (this.#waiting > 0) {
      const box = this.#pending[--this.#waiting];
      if (this.#violates(box.u, box.v, box.phi)) return this.#refuted();
      if (isSmall(box, this.#classifier.ell, this.#options.resolution)) {
        if (undecided < LOOKED_AROUND && this.#anyNearViolates(box)) return this.#refuted();
        if (undecided === 0) limit = Math.min(limit, this.#boxes + BOXES_AFTER_UNDECIDED);
        undecided++;
      } else {
        if (this.#boxes >= limit) return { outcome: 'undecided', boxes: this.#boxes };
        this.#split(box);
      }
    }
    return { outcome: undecided > 0 ? 'undecided' : 'proved', boxes: this.#boxes };
  }

  #refuted(): ShotProof {
    const shot = this.#counterexample;
    return { outcome: 'refuted', boxes: this.#boxes, ...(shot === undefined ? {} : { shot }) };
  }

  /** The exact answer for one shot; a counterexample is kept. */
  #violates(u: number, v: number, phi: number): boolean {
    this.#trace.follow(u, v, Math.cos(phi), Math.sin(phi));
    if (this.#classifier.classify(this.#trace, this.#room) < this.#badCode) return false;
    this.#counterexample = { u, v, phi };
    return true;
  }

  /** Tries shots in and around a box that bounds could not decide: a counterexample may be near. */
  #anyNearViolates({ u, v, phi, halfU, halfV, halfPhi }: PendingBox): boolean {
    const { qx, qy } = this.#scene;
    for (const i of NEAR) {
      const ballU = Math.max(-qx, Math.min(qx, u + i * halfU));
      for (const j of NEAR) {
        const ballV = Math.max(-qy, Math.min(qy, v + j * halfV));
        for (const k of NEAR) if (this.#violates(ballU, ballV, phi + k * halfPhi)) return true;
      }
    }
    return false;
  }

  #split(box: PendingBox): void {
    // The halves may be put where this box was, so it is copied first.
    const parent = { ...box };
    const { u, v, phi, halfU, halfV, halfPhi } = parent;
    const { ell } = this.#classifier;
    const side = sideToSplit(parent, ell, this.#options.resolution);
    const first = this.#waiting;
    let worst = Infinity;
    for (let sign = -1; sign <= 1; sign += 2) {
      const slot = 2 * parent.depth + (sign < 0 ? 1 : 2);
      let spare: number;
      if (side === 'u')
        spare = this.#look(u + (sign * halfU) / 2, v, phi, halfU / 2, halfV, halfPhi, parent, slot);
      else if (side === 'v')
        spare = this.#look(u, v + (sign * halfV) / 2, phi, halfU, halfV / 2, halfPhi, parent, slot);
      else spare = this.#look(u, v, phi + (sign * halfPhi) / 2, halfU, halfV, halfPhi / 2, parent, slot);
      worst = Math.min(worst, spare);
    }
    const pending = this.#pending;
    for (let k = first; k < this.#waiting; k++) noteGain(pending[k], parent, side, worst, ell);
    if (this.#waiting === first + 2 && pending[first].spare < pending[first + 1].spare) {
      const better = pending[first + 1];
      pending[first + 1] = pending[first];
      pending[first] = better;
    }
  }

  /** Judges a box inside `parent`, and lets it wait unless all its shots are as wanted. Returns its spare. */
  #look(
    u: number,
    v: number,
    phi: number,
    halfU: number,
    halfV: number,
    halfPhi: number,
    parent: PendingBox,
    slot: number,
  ): number {
    const judge = this.#judge;
    const box = this.#pending[this.#waiting];
    box.u = u;
    box.v = v;
    box.phi = phi;
    box.halfU = halfU;
    box.halfV = halfV;
    box.halfPhi = halfPhi;
    judge.judge(box, this.#needed & ~parent.facts, parent, slot);
    this.#boxes++;
    box.facts = parent.facts | judge.facts;
    box.spare = this.#badCode === 1 ? judge.openSpare : judge.playableSpare;
    box.rateU = parent.rateU;
    box.rateV = parent.rateV;
    box.ratePhi = parent.ratePhi;
    box.depth = parent.depth + 1;
    box.slot = slot;
    box.walls = judge.wallCount;
    box.parts = judge.partCount;
    if ((box.facts & this.#needed) !== this.#needed) this.#waiting++;
    return box.spare;
  }

  /** More than the number of splits that lead from all shots to a box at the resolution. */
  #greatestDepth(): number {
    const { resolution } = this.#options;
    const halvings = (size: number): number => Math.max(0, Math.ceil(Math.log2(size / resolution))) + 1;
    const { qx, qy } = this.#scene;
    return halvings(2 * qx) + halvings(2 * qy) + halvings(2 * Math.PI * this.#classifier.ell) + 1;
  }
}
