import { STANDING_ROOM, THE_RAIL } from './answer-shot.js';
import { StrokeClassifier } from './classify-traced.js';
import type { StandingRoom } from './standing-room.js';
import type { StrokeCue, StrokeScene } from './stroke-scene.js';
import { ShotTrace } from './trace-shot.js';

/** A shot in the table's frame: ball (x, y) in mm, direction phi from the ball to the butt in radians. */
export interface ShotSpot {
  readonly x: number;
  readonly y: number;
  readonly phi: number;
}

/** Shares of all shots for one cue. */
export interface CueTally {
  readonly open: number;
  readonly cramped: number;
  readonly blocked: number;
  /** Each of the three is within this of the true one: an estimate, tested to hold in at least 99 of 100 scenes. */
  readonly error: number;
  /** Steepest elevation (radians) that a playable shot of the sample needs; null when none is playable. */
  readonly steepest: number | null;
  /** The first few cramped and blocked shots of the sample. */
  readonly crampedShots: readonly ShotSpot[];
  readonly blockedShots: readonly ShotSpot[];
}

/** One thing that keeps shots from being open, for the first cue. */
export interface HoldBack {
  readonly kind: 'wall' | 'obstacle' | 'ceiling' | 'standing' | 'rail';
  /** Index among walls, obstacles or ceiling faces; 0 for the others. */
  readonly index: number;
  readonly name: string;
  /** Share of all shots that it keeps from being open; several things may do so at once. */
  readonly share: number;
}

/** Shares per cell of Q for the first cue, row by row from -y; cell (i, j) spans columns along x and rows along y. */
export interface ShotGrid {
  readonly columns: number;
  readonly rows: number;
  readonly open: readonly number[];
  readonly cramped: readonly number[];
  readonly blocked: readonly number[];
}

export interface ShotTally {
  /** Shots that were tried for every cue. */
  readonly shots: number;
  readonly cues: readonly CueTally[];
  /** Most shots first. */
  readonly holdBack: readonly HoldBack[];
  readonly grid: ShotGrid | null;
}

export interface ShotShareOptions {
  /** How many shots at least; rounded up to the same number in every replicate and cell. */
  readonly shots: number;
  /** Counts the first cue's shots by cells of Q as well, equally many shots in each. */
  readonly grid?: { readonly columns: number; readonly rows: number };
}

/** Copies of the sequence of shots, each moved by its own shift: their spread tells the error. */
const REPLICATES = 8;
/**
 * Error = SPREAD standard errors of the mean of the replicates + RARE shots. Replicates with independent shifts would ask for 3.5
 * (the two-sided 99 % point of Student's t with seven degrees of freedom); these are spread evenly themselves, so part of their
 * errors cancel, and 2.5 is tested to do. A class so rare that no shot fell into it has with 99 % less than the share of
 * ln(100) = 4.6 shots.
 */
const SPREAD = 2.5;
const RARE = 4.6;
/** Shots of each class that are kept as examples. */
const EXAMPLES = 4;

/**
 * Steps of the sequence in each of three coordinates: powers of 1 / g, g^4 = g + 1, whose multiples modulo 1 fill the cube
 * evenly (the generalised golden ratio in three dimensions; from memory).
 */
const G = 1.2207440846057596;
const STEP_X = 1 / G;
const STEP_Y = 1 / (G * G);
const STEP_TURN = 1 / (G * G * G);
/** Shifts of the replicates, on the same principle, with steps unrelated to the above. */
const SHIFT_X = Math.SQRT2 - 1;
const SHIFT_Y = Math.sqrt(3) - 1;
const SHIFT_TURN = Math.sqrt(5) - 2;

/**
 * Which share of all shots is open, cramped and blocked, for several cues at once: a deterministic sample that fills Q x [0, 2 pi)
 * evenly, the same for all cues, poses and rooms. Symmetric cases need no care: each position and each direction counts alike.
 */
export function shotShares(
  scene: StrokeScene,
  room: StandingRoom,
  cues: readonly StrokeCue[],
  options: ShotShareOptions,
): ShotTally {
  const columns = options.grid?.columns ?? 1;
  const rows = options.grid?.rows ?? 1;
  const cells = columns * rows;
  const perCell = Math.max(1, Math.ceil(options.shots / (REPLICATES * cells)));
  const shots = REPLICATES * cells * perCell;
  const counts = cues.map((cue) => new Counts(new StrokeClassifier(scene, cue)));
  const trace = new ShotTrace(scene, Math.max(0, ...counts.map((count) => count.classifier.ell)));
  const holdBack = new HoldBackCounts(scene);
  const gridCounts = new Uint32Array(3 * cells);

  const turn = 2 * Math.PI;
  const cosStep = Math.cos(turn * STEP_TURN);
  const sinStep = Math.sin(turn * STEP_TURN);
  for (let replicate = 0; replicate < REPLICATES; replicate++) {
    let a = fraction(replicate * SHIFT_X);
    let b = fraction(replicate * SHIFT_Y);
    let c = fraction(replicate * SHIFT_TURN);
    for (let cell = 0; cell < cells; cell++) {
      const column = cell % columns;
      const row = (cell - column) / columns;
      // One rotation a shot is cheaper than two trigonometric functions; it starts anew in every cell.
      let ux = Math.cos(turn * c);
      let uy = Math.sin(turn * c);
      for (let k = 0; k < perCell; k++) {
        const px = scene.qx * ((2 * (column + a)) / columns - 1);
        const py = scene.qy * ((2 * (row + b)) / rows - 1);
        trace.follow(px, py, ux, uy);
        for (let i = 0; i < counts.length; i++) {
          const code = counts[i].add(trace, room, replicate, c);
          if (i === 0) {
            gridCounts[3 * cell + code]++;
            if (code !== 0) holdBack.add(counts[0].classifier, trace, room);
          }
        }
        a += STEP_X;
        if (a >= 1) a -= 1;
        b += STEP_Y;
        if (b >= 1) b -= 1;
        c += STEP_TURN;
        if (c >= 1) c -= 1;
        const x = ux * cosStep - uy * sinStep;
        uy = ux * sinStep + uy * cosStep;
        ux = x;
      }
    }
  }
  return {
    shots,
    cues: counts.map((count) => count.tally(shots)),
    holdBack: holdBack.list(shots),
    grid: options.grid === undefined ? null : shotGrid(columns, rows, gridCounts),
  };
}

function fraction(x: number): number {
  return x - Math.floor(x);
}

/** What one cue's shots came to. */
class Counts {
  readonly #byReplicate = new Uint32Array(3 * REPLICATES);
  readonly #cramped: ShotSpot[] = [];
  readonly #blocked: ShotSpot[] = [];
  #steepest = -1;

  constructor(readonly classifier: StrokeClassifier) {}

  /** Classifies the traced shot, whose direction is `turn` of a full turn, and counts it. */
  add(trace: ShotTrace, room: StandingRoom, replicate: number, turn: number): 0 | 1 | 2 {
    const code = this.classifier.classify(trace, room);
    this.#byReplicate[3 * replicate + code]++;
    if (code !== 2 && this.classifier.tanElevation > this.#steepest)
      this.#steepest = this.classifier.tanElevation;
    if (code !== 0) {
      const examples = code === 1 ? this.#cramped : this.#blocked;
      if (examples.length < EXAMPLES) examples.push({ x: trace.px, y: trace.py, phi: 2 * Math.PI * turn });
    }
    return code;
  }

  tally(shots: number): CueTally {
    const share = [0, 0, 0];
    let error = 0;
    for (let code = 0; code < 3; code++) {
      const perReplicate = shots / REPLICATES;
      let sum = 0;
      let squares = 0;
      for (let r = 0; r < REPLICATES; r++) sum += this.#byReplicate[3 * r + code];
      const mean = sum / REPLICATES;
      for (let r = 0; r < REPLICATES; r++) squares += (this.#byReplicate[3 * r + code] - mean) ** 2;
      const standardError = Math.sqrt(squares / (REPLICATES * (REPLICATES - 1))) / perReplicate;
      error = Math.max(error, SPREAD * standardError);
      share[code] = sum / shots;
    }
    return {
      open: share[0],
      cramped: share[1],
      blocked: share[2],
      error: Math.min(1, error + RARE / shots),
      steepest: this.#steepest < 0 ? null : Math.atan(this.#steepest),
      crampedShots: this.#cramped,
      blockedShots: this.#blocked,
    };
  }
}

/** How many shots each thing keeps from being open. */
class HoldBackCounts {
  readonly #walls: Uint32Array;
  readonly #obstacles: Uint32Array;
  readonly #ceiling: Uint32Array;
  /** The last shot that each obstacle was counted for, so that two of its parts count once. */
  readonly #seen: Uint32Array;
  #shot = 0;
  #standing = 0;
  #rail = 0;

  constructor(readonly scene: StrokeScene) {
    this.#walls = new Uint32Array(scene.walls.count);
    this.#obstacles = new Uint32Array(scene.parts.obstacleNames.length);
    this.#ceiling = new Uint32Array(scene.ceiling.length);
    this.#seen = new Uint32Array(scene.parts.obstacleNames.length);
  }

  /** Counts what keeps the traced shot, which was classified last and is not open, from being so. */
  add(classifier: StrokeClassifier, trace: ShotTrace, room: StandingRoom): void {
    const tan = classifier.tanRail;
    this.#shot++;
    if (!classifier.stoodFor(trace, room)) this.#standing++;
    if (classifier.railTooSteep) {
      this.#rail++;
      return;
    }
    if (classifier.wallForbids(tan, trace)) this.#walls[trace.wallEdge]++;
    for (let k = 0; k < trace.partCount; k++) {
      const obstacle = this.scene.parts.obstacle[trace.part[k]];
      if (this.#seen[obstacle] === this.#shot || !classifier.partForbids(tan, trace, k)) continue;
      this.#seen[obstacle] = this.#shot;
      this.#obstacles[obstacle]++;
    }
    for (let i = 0; i < this.#ceiling.length; i++) {
      if (classifier.ceilingForbids(tan, trace, i)) this.#ceiling[i]++;
    }
  }

  list(shots: number): HoldBack[] {
    const { wallNames, parts, ceiling } = this.scene;
    const list: HoldBack[] = [];
    const take = (kind: HoldBack['kind'], index: number, name: string, count: number): void => {
      if (count > 0) list.push({ kind, index, name, share: count / shots });
    };
    for (const [i, count] of this.#walls.entries()) take('wall', i, wallNames[i], count);
    for (const [i, count] of this.#obstacles.entries()) take('obstacle', i, parts.obstacleNames[i], count);
    for (const [i, count] of this.#ceiling.entries()) take('ceiling', i, ceiling[i].name, count);
    take('standing', 0, STANDING_ROOM, this.#standing);
    take('rail', 0, THE_RAIL, this.#rail);
    return list.sort((p, q) => q.share - p.share);
  }
}

function shotGrid(columns: number, rows: number, counts: Uint32Array): ShotGrid {
  const perCell = counts[0] + counts[1] + counts[2];
  const layer = (code: number): number[] =>
    Array.from({ length: columns * rows }, (_, cell) => counts[3 * cell + code] / perCell);
  return { columns, rows, open: layer(0), cramped: layer(1), blocked: layer(2) };
}
