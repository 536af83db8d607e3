import { CUES } from '../equipment/cues.js';
import type { CueSpec, TableSpec } from '../equipment/equipment-types.js';
import { sameGameSmaller } from '../equipment/smaller-tables.js';
import { convexParts } from '../geometry/convex-parts.js';
import { pointInRing } from '../geometry/predicates.js';
import { translated } from '../geometry/ring.js';
import { SAME_LENGTH } from '../geometry/steady.js';
import type { Placement } from '../geometry/types.js';
import { findPlacement } from '../placement/find-placement.js';
import { type JudgeQuestion, judgePose } from '../placement/judge-pose.js';
import { openReach } from '../placement/open-reach.js';
import type { PoseViews } from '../placement/pose-views.js';
import { cueingProblem } from '../placement/problem-for.js';
import type { Scene } from '../room/scene.js';
import { StrokeClassifier } from '../stroke/classify-traced.js';
import { shotShares } from '../stroke/shot-shares.js';
import type { StrokeSettings } from '../stroke/stroke-settings.js';
import { ShotTrace } from '../stroke/trace-shot.js';
import type { Advice, Cushion, CushionProfile, Limit, Span, Verdict } from './fit-report.js';
import { stretchRoom } from './stretch-room.js';

/** What {@link adviceFor} needs to know about a place that is not clear. */
export interface AdviceQuestion {
  readonly scene: Scene;
  readonly table: TableSpec;
  readonly stroke: StrokeSettings;
  /** The wanted cue, */
  readonly cue: CueSpec;
  readonly pose: Placement;
  readonly views: PoseViews;
  /** its clearance there (mm), verdict and share of open shots there. */
  readonly clearance: number;
  readonly verdict: Verdict;
  readonly open: number;
  readonly spans: { readonly along: Span; readonly across: Span };
  readonly limits: readonly Limit[];
  readonly cushions: readonly CushionProfile[];
  readonly maxBoxes: number;
}

/** Shots by which a gain is measured. */
const GAIN_SHOTS = 256;
/** Boxes of shots that one proof for an advice may look at. */
const GAIN_BOXES = 500;
/** A piece of advice has to gain at least this share of open shots, or a better verdict. */
const LEAST_GAIN = 0.01;
/** A cue counts as shorter when it is by more than this, mm. */
const LEAST_SHORTER = 10;
/** At most so many movable things are looked at, the most obstructive first. */
const MOST_MOVES = 2;

/** What would help, each with the verdict and the gain in open shots that it was computed to bring; the greatest gain first. */
export function adviceFor(question: AdviceQuestion): readonly Advice[] {
  const found = [
    ...shorterCue(question),
    ...shorterCueAt(question),
    ...moveObstacles(question),
    ...smallerTable(question),
    ...longerRoom(question),
  ];
  const rank = (verdict: Verdict): number => ['clear', 'tight', 'partial', 'none'].indexOf(verdict);
  return found
    .filter((a) => a.gain >= LEAST_GAIN || rank(a.verdict) < rank(question.verdict))
    .sort((a, b) => rank(a.verdict) - rank(b.verdict) || b.gain - a.gain);
}

/**
 * A shorter cue for the whole table: the longest of the catalogue that is clear here by distance or, without one, the longest
 * that leaves no sampled shot blocked, or the shortest.
 */
function shorterCue(question: AdviceQuestion): readonly Advice[] {
  const { cue, clearance, stroke, table, views } = question;
  const shorter = Object.values(CUES)
    .filter((c) => c.length < cue.length - LEAST_SHORTER)
    .sort((a, b) => b.length - a.length)
    .map((c) => ({ ...cue, name: c.name, length: c.length }));
  if (shorter.length === 0) return [];
  const besides = table.ballDiameter / 2 + stroke.backswing + stroke.margin;
  const clear = shorter.find((c) => c.length + besides <= clearance);
  const chosen = clear ?? longestUnblocked(views, shorter);
  const { verdict, open } = judgePose({ ...judging({ ...question, cue: chosen }), views }).cues[0];
  return [{ kind: 'shorter-cue', amount: chosen.length, verdict, gain: open - question.open }];
}

function longestUnblocked(views: PoseViews, cues: readonly CueSpec[]): CueSpec {
  const { strokes, standing } = views(0);
  const { cues: tallies } = shotShares(strokes, standing, cues, { shots: GAIN_SHOTS });
  const found = tallies.findIndex((t) => t.blocked === 0);
  return cues[found < 0 ? cues.length - 1 : found];
}

/** At each cushion that is short of room, the longest cue that will do all along it, and the share of shots that it opens. */
function shorterCueAt(question: AdviceQuestion): readonly Advice[] {
  const { cushions, cue, verdict } = question;
  const amounts = new Map<Cushion, number>();
  for (const { cushion, spots } of cushions) {
    const open = Math.min(...spots.map((s) => s.open));
    const amount = Math.floor(open > 0 ? open : Math.min(...spots.map((s) => s.cramped)));
    if (amount > 0 && amount < cue.length) amounts.set(cushion, amount);
  }
  if (amounts.size === 0) return [];
  const gains = gainsOver(question, amounts);
  return [...amounts].map(([cushion, amount]): Advice => {
    return { kind: 'shorter-cue-at', cushion, amount, verdict, gain: gains.get(cushion) ?? 0 };
  });
}

/** By cushion: the share of all shots with the butt over it that the wanted cue does not leave open but one of the given length does. */
function gainsOver(
  question: AdviceQuestion,
  lengths: ReadonlyMap<Cushion, number>,
): ReadonlyMap<Cushion, number> {
  const { cue, views } = question;
  const { strokes, standing } = views(0);
  const wanted = new StrokeClassifier(strokes, cue);
  const shorter = new Map(
    [...lengths].map(([c, length]) => [c, new StrokeClassifier(strokes, { ...cue, length })]),
  );
  const trace = new ShotTrace(strokes, wanted.ell);
  const gains = new Map<Cushion, number>();
  for (let k = 0; k < GAIN_SHOTS; k++) {
    // An even filling of positions and directions: multiples of powers of the generalised golden ratio (from memory).
    const px = strokes.qx * (2 * fraction(k * 0.8191725133961645) - 1);
    const py = strokes.qy * (2 * fraction(k * 0.6710436067037893) - 1);
    const phi = 2 * Math.PI * fraction(k * 0.5497004779019703);
    const ux = Math.cos(phi);
    const uy = Math.sin(phi);
    const cushion = leavesOver(strokes.rimX, strokes.rimY, px, py, ux, uy);
    const other = shorter.get(cushion);
    if (other === undefined) continue;
    trace.follow(px, py, ux, uy);
    if (wanted.classify(trace, standing) === 0 || other.classify(trace, standing) !== 0) continue;
    gains.set(cushion, (gains.get(cushion) ?? 0) + 1 / GAIN_SHOTS);
  }
  return gains;
}

function leavesOver(rimX: number, rimY: number, px: number, py: number, ux: number, uy: number): Cushion {
  const endFirst = (rimX - Math.sign(ux) * px) * Math.abs(uy) < (rimY - Math.sign(uy) * py) * Math.abs(ux);
  if (endFirst) return ux > 0 ? 'endA' : 'endB';
  return uy > 0 ? 'sideA' : 'sideB';
}

/** Up to whole millimetres, but not for what is more by rounding only. */
function wholeUp(mm: number): number {
  return Math.max(0, Math.ceil(mm - SAME_LENGTH));
}

function fraction(x: number): number {
  return x - Math.floor(x);
}

/** Movable things that hold shots back: shifted straight away by what is missing where there is floor for it, else taken out. */
function moveObstacles(question: AdviceQuestion): readonly Advice[] {
  const { scene, limits } = question;
  const movable = limits
    .filter((l) => l.kind === 'obstacle' && scene.obstacles.some((o) => o.name === l.name && o.movable))
    .sort((a, b) => b.share - a.share)
    .slice(0, MOST_MOVES);
  return movable.map((limit): Advice => {
    const others = scene.obstacles.filter((o) => o.name !== limit.name);
    const shifted = shiftAway(question, limit);
    const obstacles = shifted === null ? others : [...others, shifted.obstacle];
    const { verdict, open } = judgePose(judging({ ...question, scene: { ...scene, obstacles } })).cues[0];
    const advice: Advice = {
      kind: 'move-obstacle',
      obstacle: limit.name,
      verdict,
      gain: open - question.open,
    };
    return shifted === null ? advice : { ...advice, amount: shifted.distance };
  });
}

/** The thing moved off along the shortest line to it, if it stays in the room and off everything else; null if it cannot. */
function shiftAway({ scene }: AdviceQuestion, limit: Limit) {
  const obstacle = scene.obstacles.find((o) => o.name === limit.name);
  if (obstacle === undefined || limit.witness === null || limit.spare === null || limit.distance === null)
    return null;
  if (limit.distance === 0) return null;
  const [[qx, qy], [ox, oy]] = limit.witness;
  const distance = wholeUp(-limit.spare);
  const dx = ((ox - qx) / limit.distance) * distance;
  const dy = ((oy - qy) / limit.distance) * distance;
  const ring = translated(obstacle.ring, dx, dy);
  const inRoom = ring.every(([x, y]) => pointInRing(scene.outline, x, y) >= 0);
  const others = scene.obstacles.filter((o) => o !== obstacle);
  const onOther = others.some(
    (o) =>
      ring.some(([x, y]) => pointInRing(o.ring, x, y) > 0) ||
      o.ring.some(([x, y]) => pointInRing(ring, x, y) > 0),
  );
  if (!inRoom || onOther) return null;
  return { obstacle: { ...obstacle, ring, parts: convexParts(ring) }, distance };
}

/** The largest smaller table of the catalogue for the game that is clear somewhere in the room with this cue. */
function smallerTable(question: AdviceQuestion): readonly Advice[] {
  const { scene, cue, maxBoxes, open } = question;
  for (const table of sameGameSmaller(question.table)) {
    // The tip offset goes with the ball.
    const tipOffset = (question.stroke.tipOffset * table.ballDiameter) / question.table.ballDiameter;
    const stroke = { ...question.stroke, tipOffset };
    const reach = openReach(table, stroke, cue);
    const problem = cueingProblem(scene, table, stroke.margin, reach);
    const { pose } = findPlacement(problem, {
      gap: 5,
      maxBoxes,
      turns: 'any',
      floor: reach.rho,
      target: reach.rho,
    });
    if (pose === null) continue;
    const judged = judgePose(judging({ ...question, table, stroke, pose })).cues[0];
    if (judged.verdict !== 'clear' || table.id === null) continue;
    return [{ kind: 'smaller-table', table: table.id, verdict: 'clear', gain: judged.open - open }];
  }
  return [];
}

/** How much more room along and across the table would do, checked in the room made larger by so much both ways. */
function longerRoom(question: AdviceQuestion): readonly Advice[] {
  const { scene, pose, spans, open } = question;
  const along = wholeUp(Math.max(0, -spans.along.spare));
  const across = wholeUp(Math.max(0, -spans.across.spare));
  if (along === 0 && across === 0) return [];
  const { verdict, open: then } = judgePose(
    judging({ ...question, scene: stretchRoom(scene, pose, along, across) }),
  ).cues[0];
  return [
    {
      kind: 'longer-room',
      ...(along > 0 ? { along } : {}),
      ...(across > 0 ? { across } : {}),
      verdict,
      gain: then - open,
    },
  ];
}

/** A tight place can only become clear, which mostly distances show; boxes are for what may lift a partial one. */
function judging(question: AdviceQuestion): JudgeQuestion {
  const { scene, table, stroke, cue, pose, verdict } = question;
  const maxBoxes = verdict === 'tight' ? 0 : GAIN_BOXES;
  return {
    scene,
    table,
    stroke,
    cues: [cue],
    pose,
    shots: GAIN_SHOTS,
    withTolerance: false,
    maxBoxes,
  };
}
