import type { CueSpec, TableSpec } from '../equipment/equipment-types.js';
import { type EdgeArrays, edgeArrays } from '../geometry/edge-arrays.js';
import { pointInRing } from '../geometry/predicates.js';
import { createEdgeView, createTurnedRectangle, viewEdge } from '../geometry/rectangle-distance.js';
import { rectangleWitness } from '../geometry/rectangle-witness.js';
import { inSteps, SAME_LENGTH } from '../geometry/steady.js';
import type { Placement, Ring, Size } from '../geometry/types.js';
import { findPlacement } from '../placement/find-placement.js';
import type { OpenReach } from '../placement/open-reach.js';
import { playSize, tableProblem } from '../placement/problem-for.js';
import { wallTolerance } from '../room/rooms-within.js';
import type { Scene } from '../room/scene.js';
import { STANDING_ROOM, THE_RAIL } from '../stroke/answer-shot.js';
import type { HoldBack } from '../stroke/shot-shares.js';
import type { Limit } from './fit-report.js';

/** What {@link limitsAt} needs to know. */
export interface LimitQuestion {
  readonly scene: Scene;
  readonly table: TableSpec;
  readonly cue: CueSpec;
  readonly reach: OpenReach;
  readonly margin: number;
  readonly pose: Placement;
  readonly certain: boolean;
  /** What keeps sampled shots from being open. */
  readonly holdBack: readonly HoldBack[];
  /** Names of what keeps a shot from being open that the sample missed and a proof found, */
  readonly rareNames: readonly string[];
  /** and the share that it stands for. */
  readonly rareShare: number;
}

/**
 * What holds the verdict of the wanted cue back, nearest first, by name: every wall and tall thing that keeps some sampled
 * shot from being open or, where the verdict hangs on the tolerance, is within it of its needed distance; then ceilings,
 * standing room and rails, for which a distance says nothing. Where the verdict is not certain, at least one limit is marked
 * to be measured again: those within their tolerance of what they need, or the one that comes nearest to it.
 */
export function limitsAt(question: LimitQuestion): readonly Limit[] {
  const { scene, table, reach, margin, pose, certain, holdBack, rareNames, rareShare } = question;
  const play = playSize(table);
  const found: Measured[] = [];
  const rare = (name: string): number => (rareNames.includes(name) ? rareShare : 0);
  const shareOf = (kind: HoldBack['kind'], index: number, name: string): number =>
    holdBack.find((h) => h.kind === kind && h.index === index)?.share ?? rare(name);
  const consider = (
    name: string,
    kind: Limit['kind'],
    edges: EdgeArrays,
    ring: Ring | null,
    share: number,
    tolerance: number,
  ): void => {
    const near = nearestEdge(edges, play, pose);
    const distance = ring !== null && pointInRing(ring, pose.x, pose.y) > 0 ? 0 : Math.max(0, near.distance);
    const spare = distance - reach.rho;
    const hangs = !certain && Math.abs(spare) <= 2 * tolerance + SAME_LENGTH;
    if (share === 0 && !hangs) return;
    found.push({
      name,
      kind,
      distance,
      needed: reach.rho,
      spare,
      share,
      witness: distance > 0 ? near.witness() : null,
      measureAgain: false,
      tolerance,
    });
  };
  scene.outline.forEach((a, i) => {
    const b = scene.outline[(i + 1) % scene.outline.length];
    // Two corners make a ring of two edges, there and back: the same distance.
    const share = shareOf('wall', i, scene.wallNames[i]);
    consider(scene.wallNames[i], 'wall', edgeArrays([[a, b]]), null, share, wallTolerance(scene, i));
  });
  scene.obstacles.forEach((obstacle, i) => {
    const tall = obstacle.to + margin > reach.low && obstacle.from < reach.high;
    const share = shareOf('obstacle', i, obstacle.name);
    if (tall || share > 0)
      consider(obstacle.name, 'obstacle', edgeArrays([obstacle.ring]), obstacle.ring, share, scene.tolerance);
  });
  const nearness = (limit: Limit): number => inSteps(limit.distance ?? 0, SAME_LENGTH);
  found.sort((a, b) => nearness(a) - nearness(b));
  scene.ceiling.forEach(({ name }, i) => {
    const share = shareOf('ceiling', i, name);
    if (share > 0) found.push({ ...withoutDistance(name, 'ceiling', share), tolerance: scene.tolerance });
  });
  for (const [kind, name] of [
    ['standing', STANDING_ROOM],
    ['rail', THE_RAIL],
  ] as const) {
    const share = shareOf(kind, 0, name);
    if (share > 0) found.push({ ...withoutDistance(name, kind, share), tolerance: scene.tolerance });
  }
  return certain ? found.map(({ tolerance, ...limit }) => limit) : markMeasures(found);
}

/**
 * What keeps the table from standing: at a pose, what its frame overlaps or comes nearest to; without one, everything that
 * takes floor from it if the bare room would hold it, else the room itself.
 */
export function limitsOfNone(
  question: NoneQuestion,
  pose: Placement | null,
  certain: boolean,
): readonly Limit[] {
  const { scene, table, search } = question;
  const { outline, low, lowOwners, frame } = tableProblem(scene, table);
  if (pose === null) {
    const bare = { play: frame, frame, outline, tall: [], low: [] };
    const fits =
      findPlacement(bare, { gap: 10, maxBoxes: search.maxBoxes, turns: search.turns }).pose !== null;
    const what = fits ? lowOwners : [THE_ROOM];
    return what.map(({ name, kind }) => ({ ...withoutDistance(name, kind, 1), measureAgain: !certain }));
  }
  const found: Limit[] = [];
  const consider = (
    name: string,
    kind: Limit['kind'],
    edges: EdgeArrays,
    ring: Ring | null,
    tolerance: number,
  ): void => {
    const near = nearestEdge(edges, frame, pose);
    const inside = ring !== null && pointInRing(ring, pose.x, pose.y) >= 0;
    // What is only touched does not keep it from standing.
    if (near.distance > -SAME_LENGTH && !inside) return;
    const spare = Math.min(0, near.distance);
    const measureAgain = !certain && spare >= -tolerance;
    found.push({ name, kind, distance: 0, needed: 0, spare, share: 1, witness: null, measureAgain });
  };
  outline.forEach((a, i) => {
    const edges = edgeArrays([[a, outline[(i + 1) % outline.length]]]);
    consider(scene.wallNames[i], 'wall', edges, null, wallTolerance(scene, i));
  });
  low.forEach((ring, i) => {
    consider(lowOwners[i].name, lowOwners[i].kind, edgeArrays([ring]), ring, scene.tolerance);
  });
  if (found.length === 0) return [withoutDistance(THE_ROOM.name, THE_ROOM.kind, 1)];
  const depth = (limit: Limit): number => inSteps(limit.spare ?? 0, SAME_LENGTH);
  return found.sort((a, b) => depth(a) - depth(b));
}

/** What is to blame where nothing in the room is. */
const THE_ROOM = { name: 'the room itself', kind: 'room' } as const;

/** What {@link limitsOfNone} needs to know. */
export interface NoneQuestion {
  readonly scene: Scene;
  readonly table: TableSpec;
  readonly search: { readonly maxBoxes: number; readonly turns: 'square' | 'any' };
}

/** A limit with how far off its thing may be, mm. */
interface Measured extends Limit {
  readonly tolerance: number;
}

/** Marks what to measure again, see {@link limitsAt}. */
function markMeasures(limits: readonly Measured[]): readonly Limit[] {
  const off = (limit: Limit): number =>
    limit.spare === null ? Number.POSITIVE_INFINITY : Math.abs(limit.spare);
  const least = Math.min(...limits.map(off));
  return limits.map(({ tolerance, ...limit }) => {
    return { ...limit, measureAgain: off(limit) <= Math.max(least, tolerance) + SAME_LENGTH };
  });
}

function withoutDistance(name: string, kind: Limit['kind'], share: number): Limit {
  return { name, kind, distance: null, needed: null, spare: null, share, witness: null, measureAgain: false };
}

/** What comes nearest to a rectangle at the pose. */
interface Nearest {
  /** mm; negative where they overlap. */
  readonly distance: number;
  /** The two ends of a shortest line, on the rectangle and on the edge. */
  readonly witness: () => Limit['witness'];
}

function nearestEdge(edges: EdgeArrays, size: Size, pose: Placement): Nearest {
  const rectangle = createTurnedRectangle(size.length / 2, size.width / 2);
  rectangle.x = pose.x;
  rectangle.y = pose.y;
  rectangle.cos = Math.cos(pose.angle);
  rectangle.sin = Math.sin(pose.angle);
  const view = createEdgeView();
  let distance = Number.POSITIVE_INFINITY;
  let edge = 0;
  for (let e = 0; e < edges.count; e++) {
    viewEdge(view, rectangle, edges, e);
    if (view.separation < distance) {
      distance = view.separation;
      edge = e;
    }
  }
  return { distance, witness: () => rectangleWitness(rectangle, edges, edge) };
}
