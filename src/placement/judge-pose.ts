import { DEFAULTS } from '../equipment/defaults.js';
import type { CueSpec, TableSpec } from '../equipment/equipment-types.js';
import type { Placement } from '../geometry/types.js';
import { hardestRoom, kindestRoom, type RoomWithin } from '../room/rooms-within.js';
import type { Scene } from '../room/scene.js';
import { proveShots, type ShotProof } from '../stroke/prove-shots.js';
import { type CueTally, type ShotSpot, type ShotTally, shotShares } from '../stroke/shot-shares.js';
import type { ShotCode } from '../stroke/stroke-scene.js';
import type { StrokeSettings } from '../stroke/stroke-settings.js';
import { clearanceAt, distancesAt } from './clearance-at.js';
import { type CueFindings, classes, spotOf, withRare } from './cue-findings.js';
import { type OpenReach, openReach } from './open-reach.js';
import { REACHES } from './place-table.js';
import { playerStrip } from './player-strip.js';
import { type PoseViews, poseViews } from './pose-views.js';
import { cueingProblem, type SortingHeights, tableProblem } from './problem-for.js';
import { FRAME_SLACK } from './search-scene.js';

/** One table, where it stands, and the cues that are asked for. */
export interface JudgeQuestion {
  readonly scene: Scene;
  readonly table: TableSpec;
  readonly stroke: StrokeSettings;
  /** The wanted one first. */
  readonly cues: readonly CueSpec[];
  readonly pose: Placement;
  /** Shots to sample for cues whose game is not clear by distance alone. */
  readonly shots: number;
  readonly grid?: { readonly columns: number; readonly rows: number };
  /** False leaves out whether a verdict holds within the tolerance; `certain` then tells of the resolution only. */
  readonly withTolerance: boolean;
  /** Boxes of shots that one proof may look at; default 20,000. */
  readonly maxBoxes?: number;
  /** Views of this very room, table and pose that are there already. */
  readonly views?: PoseViews;
}

export type PoseVerdict = 'clear' | 'tight' | 'partial' | 'none';
export type ProofKind = 'distance' | 'raised' | 'boxes' | 'shot' | 'resolution' | 'standing';

export interface CueJudgement extends CueFindings {
  readonly verdict: PoseVerdict;
  readonly certain: boolean;
  readonly proof: ProofKind;
}

export interface PoseJudgement {
  /** The frame stands free (touching counts). */
  readonly stands: boolean;
  /** Distance from Q to walls and tall things for the wanted cue, mm; 0 where the table cannot stand. */
  readonly clearance: number;
  readonly cues: readonly CueJudgement[];
  /** The sample, for the cues that needed one (`tallied[i]` is the index of the cue of `tally.cues[i]`). */
  readonly tally: ShotTally | null;
  readonly tallied: readonly number[];
}

const PROVED: ShotProof = { outcome: 'proved', boxes: 0 };

/** Boxes of shots that one proof may look at. */
const MOST_BOXES = 20_000;

/**
 * The verdict for each cue with the table at one pose. `clear` only where proved (by distance or by boxes of shots), `tight`
 * only where distances or boxes prove that no shot is blocked, `partial` on a counterexample. Where boxes stay undecided at the resolution
 * the cautious verdict is given, marked as not certain. With the tolerance e, a verdict is certain when it is the same in
 * every room whose boundaries lie within e, and whose walls lie within their own tolerances where they have some.
 */
export function judgePose(question: JudgeQuestion): PoseJudgement {
  const judge = new Judge(question);
  return judge.run();
}

class Judge {
  readonly #q: JudgeQuestion;
  readonly #views: PoseViews;
  readonly #strips = new Map<number, number>();
  readonly #reaches: readonly OpenReach[];
  /** The least kind room within the tolerances, and the kindest; null where none can be told. */
  readonly #hard: RoomWithin;
  readonly #kind: RoomWithin | null;

  constructor(question: JudgeQuestion) {
    this.#q = question;
    this.#views = question.views ?? poseViews(question.scene, question.table, question.pose, question.stroke);
    this.#reaches = question.cues.map((cue) => openReach(question.table, question.stroke, cue));
    const asGiven = { scene: question.scene, grow: 0 };
    this.#hard = question.withTolerance ? hardestRoom(question.scene) : asGiven;
    this.#kind = question.withTolerance ? kindestRoom(question.scene, question.stroke.margin) : asGiven;
  }

  run(): PoseJudgement {
    const { scene, cues, withTolerance } = this.#q;
    const free = this.#frameRoom(scene);
    const stands = free >= -STAND_SLACK;
    if (!stands) {
      const certain = !withTolerance || this.#standsNowhereNear();
      return {
        stands,
        clearance: 0,
        cues: cues.map(() => ({ ...NOTHING, certain })),
        tally: null,
        tallied: [],
      };
    }
    const hard = this.#hard;
    const standsForSure = !withTolerance || this.#frameRoom(hard.scene) >= hard.grow - STAND_SLACK;
    const tallied = cues.map((_, i) => i).filter((i) => !this.#plainly(i, 'open', 0));
    const tally = tallied.length === 0 ? null : this.#sample(tallied);
    const judged = cues.map((_, i) => {
      const k = tallied.indexOf(i);
      if (tally === null || k < 0) {
        const certain =
          standsForSure && (!withTolerance || this.#prove(i, 'open', hard.grow).outcome === 'proved');
        return { ...ALL_OPEN, certain, steepest: this.#reaches[i].steepest };
      }
      return this.#judgeSampled(i, tally.cues[k], standsForSure);
    });
    return {
      stands,
      clearance: Math.max(0, this.#clearance(this.#reaches[0], 0)),
      cues: judged,
      tally,
      tallied,
    };
  }

  /** Does the frame overlap something even in the kindest room within the tolerances? */
  #standsNowhereNear(): boolean {
    return this.#kind !== null && this.#frameRoom(this.#kind.scene) <= this.#kind.grow;
  }

  /** Distance of the frame from everything in its way, mm; negative where they overlap. */
  #frameRoom(scene: Scene): number {
    const { table, pose } = this.#q;
    const problem = tableProblem(scene, table);
    return clearanceAt({ ...problem, play: problem.frame, tall: problem.low, low: [] }, pose).clearance;
  }

  /** The room to look at with every boundary moved by `grow`: 0, or that of the hardest or the kindest room. */
  #scene(grow: number): Scene {
    if (grow === 0) return this.#q.scene;
    return grow > 0 ? this.#hard.scene : (this.#kind?.scene ?? this.#q.scene);
  }

  /** Distance from Q to walls and things that are tall by these heights. */
  #clearance(heights: SortingHeights, grow: number): number {
    const { table, stroke, pose } = this.#q;
    return clearanceAt(cueingProblem(this.#scene(grow), table, stroke.margin, heights, grow), pose).clearance;
  }

  #reach(i: number, grow: number): OpenReach {
    const { table, stroke, cues } = this.#q;
    return grow === 0 ? this.#reaches[i] : openReach(table, stroke, cues[i], grow);
  }

  /** Width of free floor for players all round the frame. */
  #strip(grow: number): number {
    const known = this.#strips.get(grow);
    if (known !== undefined) return known;
    const { table, pose } = this.#q;
    const width = playerStrip(this.#scene(grow), table, pose, grow);
    this.#strips.set(grow, width);
    return width;
  }

  /** The plain proofs: distances alone show it of every shot, with every boundary e nearer. There is room to stand: */
  #plainlyStand(i: number, grow: number): boolean {
    return this.#strip(grow) >= this.#reach(i, grow).strip + grow - REACHES;
  }

  /** The full stroke is free at theta_rail: */
  #plainlyOpen(i: number, grow: number): boolean {
    const reach = this.#reach(i, grow);
    if (reach.steepest > this.#q.stroke.maxElevation) return false;
    return this.#clearance(reach, grow) >= reach.rho + grow - REACHES;
  }

  /** The short stroke is free at theta_max: it stops short of everything that it does not pass over. */
  #plainlyRaised(i: number, grow: number): boolean {
    const { table, stroke, pose } = this.#q;
    const scene = this.#scene(grow);
    const { steepest, raised } = this.#reach(i, grow);
    if (steepest > stroke.maxElevation) return false;
    const problem = cueingProblem(scene, table, stroke.margin, raised, grow);
    return distancesAt(problem, pose).every(({ kind, index, distance }) => {
      const owner = kind === 'tall' ? problem.tallOwners[index] : null;
      const top = owner?.kind === 'obstacle' ? scene.obstacles[owner.index].to : Number.POSITIVE_INFINITY;
      return distance >= Math.min(raised.needed, raised.passedFrom(top + grow)) + grow - REACHES;
    });
  }

  #plainly(i: number, target: 'open' | 'playable', grow: number): boolean {
    if (!this.#plainlyStand(i, grow)) return false;
    return target === 'open' ? this.#plainlyOpen(i, grow) : this.#plainlyRaised(i, grow);
  }

  #sample(cues: readonly number[]): ShotTally {
    const { strokes, standing } = this.#views(0);
    const { shots, grid } = this.#q;
    const options = grid === undefined ? { shots } : { shots, grid };
    return shotShares(
      strokes,
      standing,
      cues.map((i) => this.#q.cues[i]),
      options,
    );
  }

  #judgeSampled(i: number, tally: CueTally, standsForSure: boolean): CueJudgement {
    const { withTolerance, shots } = this.#q;
    const { open, cramped, blocked, error, steepest } = tally;
    const sampled: CueFindings = { open, cramped, blocked, error, steepest, counterexample: null };
    const result = (
      verdict: PoseVerdict,
      proof: ProofKind,
      certain: boolean,
      found = sampled,
    ): CueJudgement => ({
      ...found,
      verdict,
      proof,
      certain: certain && standsForSure,
    });
    if (blocked > 0) {
      return result('partial', 'shot', !withTolerance || this.#staysBlocked(i, tally.blockedShots));
    }
    let seen = sampled;
    let undecided = false;
    if (cramped === 0) {
      const all = { ...sampled, open: 1, cramped: 0, blocked: 0, error: 0 };
      if (this.#holdsWithin(i, 'open')) return result('clear', 'boxes', true, all);
      const proof = this.#prove(i, 'open', 0);
      if (proof.outcome === 'proved') return result('clear', 'boxes', !withTolerance, all);
      undecided = proof.outcome === 'undecided';
      if (!undecided) seen = withRare(sampled, 'cramped', shots, spotOf(proof));
    }
    const plain = this.#plainly(i, 'playable', 0);
    const within = this.#holdsWithin(i, 'playable');
    const proof: ShotProof =
      plain || within ? { outcome: 'proved', boxes: 0 } : this.#prove(i, 'playable', 0);
    if (proof.outcome === 'refuted') {
      const found = withRare(sampled, 'blocked', shots, spotOf(proof));
      return result('partial', 'shot', !withTolerance || this.#staysBlocked(i, []), found);
    }
    // Between two verdicts the cautious one is given.
    if (proof.outcome === 'undecided') return result('partial', 'resolution', false, seen);
    if (undecided) return result('tight', 'resolution', false, seen);
    const isCramped = (code: ShotCode): boolean => code !== 0;
    const certain = !withTolerance || (within && this.#stays(i, 'open', tally.crampedShots, isCramped));
    return result('tight', plain ? 'raised' : 'boxes', certain, seen);
  }

  /** Proved in the least kind room within the tolerance, and so in every kinder one? Not asked without a tolerance. */
  #holdsWithin(i: number, target: 'open' | 'playable'): boolean {
    return this.#q.withTolerance && this.#prove(i, target, this.#hard.grow).outcome === 'proved';
  }

  /** Is some shot still blocked in the kindest room within the tolerance? */
  #staysBlocked(i: number, examples: readonly ShotSpot[]): boolean {
    return this.#stays(i, 'playable', examples, (code) => code === 2);
  }

  #stays(
    i: number,
    target: 'open' | 'playable',
    examples: readonly ShotSpot[],
    fails: (code: ShotCode) => boolean,
  ): boolean {
    if (this.#kind === null) return false;
    const { grow } = this.#kind;
    const { strokes, standing } = this.#views(grow);
    if (classes(strokes, standing, this.#q.cues[i], examples).some(fails)) return true;
    return this.#prove(i, target, grow).outcome === 'refuted';
  }

  /** By boxes of shots, but for what distances alone prove of it. */
  #prove(i: number, target: 'open' | 'playable', grow: number): ShotProof {
    const { strokes, standing } = this.#views(grow);
    const allStand = this.#plainlyStand(i, grow);
    const allClear = target === 'open' ? this.#plainlyOpen(i, grow) : this.#plainlyRaised(i, grow);
    if (allStand && allClear) return PROVED;
    return proveShots(strokes, standing, this.#q.cues[i], target, {
      maxBoxes: this.#q.maxBoxes ?? MOST_BOXES,
      resolution: DEFAULTS.search.resolution,
      allStand,
      allClear,
    });
  }
}

/**
 * A frame that overlaps by less than this, mm, touches. The search lets a frame overlap by its own slack and works in other
 * coordinates, so a place that it found may measure a little more here.
 */
const STAND_SLACK = 10 * FRAME_SLACK;

const NOTHING = {
  verdict: 'none',
  proof: 'standing',
  open: 0,
  cramped: 0,
  blocked: 1,
  error: 0,
  steepest: null,
  counterexample: null,
} as const;

const ALL_OPEN = {
  verdict: 'clear',
  proof: 'distance',
  open: 1,
  cramped: 0,
  blocked: 0,
  error: 0,
  counterexample: null,
} as const;
