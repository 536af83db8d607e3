import { capsuleInPlan } from './capsule.js';
import type { Carried, Hold } from './carried.js';
import { bracketSpare, type Decision } from './cross-by-boxes.js';
import type { Crossing } from './crossing.js';
import { holdsUnder, planShapeOf } from './holds.js';
import type { Motion, MotionPose } from './motion.js';
import type { Gate, Space } from './passages.js';
import type { PlanPose, PlanShape } from './plan-shape.js';
import { tightestPose } from './plan-space-clearance.js';
import { gateInPlan } from './plan-space-gate.js';
import { findPath } from './subdivide.js';

/** A family of gates: the one that is asked about narrowed by delta. */
export type NarrowedGate = (delta: number) => Gate;

interface GateWay {
  readonly hold: Hold;
  readonly delta: number;
  readonly poses: readonly PlanPose[];
}

export interface GateSearchOptions {
  readonly maxBoxes: number;
  /** From a closed form: what is known of the spare already. */
  readonly straight: Crossing;
}

/** Boxes of poses are split down to this, mm: well under what the bracket is aimed at. */
const RESOLUTION = 1;
/** Decisions about the capsule: the sign matters, and little else. */
const CAPSULE_STEPS = 4;
/** Of the boxes, that the capsule may have. */
const CAPSULE_SHARE = 4;
/** Poses looked at between two, for the tightest moment. */
const SAMPLES = 24;

/**
 * The spare of a gate beyond what `straight` knows, by subdivision: the box is held one way all through, so its plan is a rectangle, and the
 * plan of the gate is searched with it (see plan-space-gate.ts). Every hold that the heights allow covers one of `holdsUnder`, so no way
 * for any of these is no way at all for a box held in one way. What stops the capsule stops every motion.
 */
export function searchGate(narrowed: NarrowedGate, box: Carried, options: GateSearchOptions): Crossing {
  const { maxBoxes, straight } = options;
  const gate = narrowed(0);
  const held = bracketSpare<GateWay>((delta, boxes) => decideHeld(narrowed(delta), delta, box, boxes), {
    tolerance: gate.tolerance,
    maxBoxes,
    atLeast: straight.atLeast,
    atMost: straight.atMost,
  });
  let atMostAnyMotion = straight.atMostAnyMotion;
  if (held.atMost < 0 && atMostAnyMotion >= 0) {
    const any = bracketSpare<null>((delta, boxes) => decideCapsule(narrowed(delta), box, boxes), {
      tolerance: gate.tolerance,
      maxBoxes: Math.max(maxBoxes - held.boxes, Math.ceil(maxBoxes / CAPSULE_SHARE)),
      atMost: atMostAnyMotion,
      steps: CAPSULE_STEPS,
    });
    atMostAnyMotion = any.atMost;
  }
  const atMost = Math.min(held.atMost, atMostAnyMotion);
  const { proof } = held;
  if (proof === null) {
    const method = atMost < straight.atMost ? 'subdivision' : straight.method;
    return { ...straight, atMost, atMostAnyMotion, method };
  }
  const hold = proof.hold;
  const moves = held.atLeast >= 0;
  return {
    atLeast: held.atLeast,
    atMost,
    atMostAnyMotion,
    hold,
    motion: moves ? motionOf(gate, proof) : null,
    narrowest: moves ? narrowestOf(gate, proof) : null,
    method: 'subdivision',
  };
}

/** Whether the box passes, held in one way all through. */
function decideHeld(gate: Gate, delta: number, box: Carried, maxBoxes: number): Decision<GateWay> {
  let boxes = 0;
  let open = false;
  const height = clearHeight(gate);
  // The slimmest first: it has the best chance.
  const holds = height > 0 ? [...holdsUnder(box, height)].sort((a, b) => slimness(a) - slimness(b)) : [];
  for (const hold of holds) {
    const shape = planShapeOf(hold);
    if (isShut(gate, shape)) continue;
    const { space, near, far } = gateInPlan(gate, shape);
    const found = findPath(space, shape, near, far, { maxBoxes: maxBoxes - boxes, resolution: RESOLUTION });
    boxes += found.boxes;
    if (found.answer === 'path') return { answer: 'path', proof: { hold, delta, poses: found.poses }, boxes };
    if (found.answer === 'undecided') open = true;
  }
  return { answer: open ? 'undecided' : 'no', proof: null, boxes };
}

/** `no`: no motion at all. A way for the capsule says nothing of the box, but bounds what the capsule can tell. */
function decideCapsule(gate: Gate, box: Carried, maxBoxes: number): Decision<null> {
  const ceiling = Math.max(gate.before.height, gate.after.height, gate.sill + gate.height);
  if (Math.min(gate.width, gate.height) < box.h) return { answer: 'no', proof: null, boxes: 0 };
  const shape = capsuleInPlan(box, ceiling);
  if (isShut(gate, shape)) return { answer: 'no', proof: null, boxes: 0 };
  if (shape.halfLength === 0) return { answer: 'undecided', proof: null, boxes: 0 };
  const { space, near, far } = gateInPlan(gate, shape);
  const { answer, boxes } = findPath(space, shape, near, far, { maxBoxes, resolution: RESOLUTION });
  return { answer, proof: null, boxes };
}

/**
 * The height that a box held one way needs all through, mm, sill to lintel or to the lower ceiling: as it crosses the wall's faces, a part of it
 * is in the hole while another part is under the ceiling beside.
 */
function clearHeight({ sill, height, before, after }: Gate): number {
  return Math.min(sill + height, before.height, after.height) - sill;
}

/** Whether a disc within the shape is wider than the hole or than the floor before or beyond it, so that the shape cannot get past. */
function isShut({ width, before, after }: Gate, shape: PlanShape): boolean {
  const across = 2 * (Math.min(shape.halfLength, shape.halfWidth) + shape.radius);
  const floor = (space: Space): number => Math.min(space.depth, space.left + width + space.right);
  return across > Math.min(width, floor(before), floor(after));
}

function slimness(hold: Hold): number {
  const { halfLength, halfWidth } = planShapeOf(hold);
  return Math.min(halfLength, halfWidth);
}

/**
 * The way in space, in the gate as given. Narrowed by delta the hole keeps its middle, the wall's near face its place and the floor's far end
 * beyond the wall its place too, so moved back by half of delta the way keeps half of delta from everything.
 */
function motionOf(gate: Gate, way: GateWay): Motion {
  const { along, across, up } = way.hold;
  return { along, across, up, poses: carriedOn(gate, way).map((pose) => inSpace(gate, way, pose)) };
}

function narrowestOf(gate: Gate, way: GateWay): MotionPose {
  const shape = planShapeOf(way.hold);
  const poses = way.poses.map((pose) => movedBack(pose, way.delta));
  return inSpace(gate, way, tightestPose(gateInPlan(gate, shape).space, shape, poses, SAMPLES));
}

function inSpace(gate: Gate, way: GateWay, { x, y, heading }: PlanPose): MotionPose {
  return { x, y, z: gate.sill + clearHeight(gate) / 2, heading, tilt: way.hold.tilt, roll: 0 };
}

function movedBack(pose: PlanPose, delta: number): PlanPose {
  return { ...pose, y: pose.y - delta / 2 };
}

/**
 * The way's poses, from and to where the box can be carried on. In a strip of floor that goes on to a side (a corridor) it slides along: it lies
 * wholly in the strip, which is the same everywhere. On floor of endless depth it has all the room it needs; where everything has an end,
 * any pose wholly on that side counts.
 */
function carriedOn(gate: Gate, way: GateWay): PlanPose[] {
  const poses = way.poses.map((pose) => movedBack(pose, way.delta));
  const { halfLength, halfWidth } = planShapeOf(way.hold);
  const beside = gate.width / 2 + Math.hypot(halfLength, halfWidth);
  const slid = (pose: PlanPose, space: Space): PlanPose[] => {
    if (!Number.isFinite(space.depth)) return [];
    const [left, right] = [!Number.isFinite(space.left), !Number.isFinite(space.right)];
    if (!left && !right) return [];
    const side = left && right ? (pose.x < 0 ? -1 : 1) : left ? -1 : 1;
    return side * pose.x >= beside ? [] : [{ ...pose, x: side * beside }];
  };
  return [...slid(poses[0], gate.before), ...poses, ...slid(poses[poses.length - 1], gate.after)];
}
