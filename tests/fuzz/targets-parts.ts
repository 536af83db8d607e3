import fc from 'fast-check';
import * as delivery from '../../src/delivery/index.js';
import * as geometry from '../../src/geometry/index.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import { checkRoom, type FitInput, proveShots, TABLES } from '../../src/index.js';
import * as placement from '../../src/placement/index.js';
import * as strokes from '../../src/stroke/index.js';
import { read } from '../delivery/read-inputs.js';
import { anyFit, cue, stroke } from './fits.js';
import { spoilt } from './hostile.js';
import { answerOrRefusal, insistNumbers, insistPlain } from './plain.js';
import { angle, anyRing, coordinate, plainRing, point } from './shapes.js';
import { type Target, target } from './target.js';
import { way } from './ways.js';

/** Runs what may refuse by a RegionError, as its docstring says. */
function regionOrError<T>(run: () => T): T | null {
  try {
    const result = run();
    insistNumbers(result);
    return result;
  } catch (error) {
    if (!(error instanceof geometry.RegionError)) throw error;
    return null;
  }
}

/** A ring that its readers would let through, anticlockwise; null for others. */
function good(ring: Ring): Ring | null {
  if (!geometry.isSimple(ring)) return null;
  return geometry.ringDirection(ring) > 0 ? ring : geometry.reversed(ring);
}

const placementAt = fc.record({ x: coordinate, y: coordinate, angle });
const convex = fc
  .tuple(fc.integer({ min: 100, max: 4000 }), fc.integer({ min: 100, max: 4000 }), angle)
  .map(([length, width, turn]) => geometry.rectangleRing([0, 0], length, width, turn));
const reach = fc.oneof(fc.integer({ min: 0, max: 2000 }), fc.constantFrom(0, 1e-9, -1, Number.NaN, 1e9));
const arcs = fc.record({
  arcs: fc.constantFrom('inscribed' as const, 'circumscribed' as const),
  sagitta: fc.constantFrom(1, 0.01, 1e-9, 0, 50),
});

const GEOMETRY: readonly Target[] = [
  target(
    [
      'geometry/signedArea',
      'geometry/perimeter',
      'geometry/centroid',
      'geometry/ringDirection',
      'geometry/reversed',
      'geometry/mirrored',
      'geometry/turnsOnlyLeft',
      'geometry/isSimple',
      'geometry/findSelfContacts',
      'geometry/edgeArrays',
    ],
    'rings',
    6,
    anyRing,
    (ring) => {
      const {
        signedArea,
        perimeter,
        centroid,
        ringDirection,
        reversed,
        mirrored,
        turnsOnlyLeft,
        isSimple,
        findSelfContacts,
        edgeArrays,
      } = geometry;
      insistNumbers([
        signedArea(ring),
        perimeter(ring),
        ringDirection(ring),
        reversed(ring),
        mirrored(ring),
        turnsOnlyLeft(ring),
        isSimple(ring),
      ]);
      insistNumbers([findSelfContacts(ring, 0), findSelfContacts(ring, 0.5, 3)]);
      if (ring.length > 0) insistNumbers(centroid(ring));
      // Rings must have no repeated corners there.
      if (isSimple(ring)) insistNumbers(edgeArrays([ring]));
    },
  ),
  target(
    ['geometry/boundingBox', 'geometry/translated', 'geometry/rotated', 'geometry/clipToHalfPlane'],
    'rings and numbers',
    4,
    fc.tuple(anyRing, coordinate, coordinate, angle),
    ([ring, a, b, turn]) => {
      if (ring.length > 0) insistNumbers(geometry.boundingBox(ring));
      insistNumbers([
        geometry.translated(ring, a, b),
        geometry.rotated(ring, turn, [a, b]),
        geometry.clipToHalfPlane(ring, Math.cos(turn), Math.sin(turn), a),
      ]);
    },
  ),
  target(
    ['geometry/rectangleRing', 'geometry/circleRing', 'geometry/circleExcess', 'geometry/distanceToSegment'],
    'points and sizes',
    4,
    fc.tuple(point, point, point, fc.integer({ min: 1, max: 200_000 }), angle),
    ([p, a, b, size, turn]) => {
      insistNumbers([
        geometry.rectangleRing(p, size, size / 3, turn),
        geometry.circleRing(p, size),
        geometry.circleExcess(size),
        geometry.distanceToSegment(p, a, b),
        geometry.distanceToSegment(p, a, a),
      ]);
    },
  ),
  target(
    [
      'geometry/orientation',
      'geometry/onSegment',
      'geometry/segmentContact',
      'geometry/segmentsCross',
      'geometry/segmentsMeet',
    ],
    'four points',
    6,
    fc.tuple(point, point, point, point),
    ([a, b, c, d]) => {
      const contact = geometry.segmentContact(a, b, c, d);
      if (geometry.segmentContact(d, c, b, a) !== contact) throw new Error('Contact depends on the order.');
      if (geometry.segmentsCross(a, b, c, d) !== (contact === 'cross'))
        throw new Error('A cross that is none.');
      if (geometry.segmentsMeet(a, b, c, d) !== (contact !== 'apart'))
        throw new Error('A meeting that is none.');
      if (geometry.onSegment(a, b, c) && geometry.orientation(a, b, c) !== 0)
        throw new Error('On a segment, but beside it.');
    },
  ),
  target(
    ['geometry/pointInRing', 'geometry/segmentMeetsConvexInside'],
    'a ring and points',
    4,
    fc.tuple(anyRing, convex, point, point),
    ([ring, box, a, b]) => {
      const where = geometry.pointInRing(ring, a[0], a[1]);
      if (where !== geometry.pointInRing(geometry.reversed(ring), a[0], a[1]))
        throw new Error('Depends on direction.');
      for (const [x, y] of ring)
        if (geometry.pointInRing(ring, x, y) !== 0) throw new Error('A corner off its ring.');
      geometry.segmentMeetsConvexInside(box, a, b);
    },
  ),
  target(['geometry/convexParts'], 'rings', 4, fc.oneof(plainRing, anyRing), (given) => {
    const ring = good(given);
    if (ring === null) {
      try {
        geometry.convexParts(given);
      } catch (error) {
        // As it says: an Error for a ring that is not simple.
        if (!(error instanceof Error) || error instanceof TypeError) throw error;
      }
      return;
    }
    const parts = geometry.convexParts(ring);
    const area = parts.reduce((sum, part) => sum + geometry.signedArea(part), 0);
    const whole = geometry.signedArea(ring);
    const box = geometry.boundingBox(ring);
    const rounding = 1e-9 * (box.maxX - box.minX) * (box.maxY - box.minY);
    if (!(Math.abs(area - whole) <= rounding)) throw new Error(`Parts of ${area} from ${whole}.`);
    for (const part of parts)
      if (!geometry.turnsOnlyLeft(part)) throw new Error('A part that is not convex.');
  }),
  target(
    [
      'geometry/unite',
      'geometry/intersect',
      'geometry/subtract',
      'geometry/split',
      'geometry/freeFloor',
      'geometry/regionArea',
      'geometry/RegionError',
    ],
    'rings',
    3,
    fc.tuple(anyRing, anyRing, anyRing),
    ([a, b, c]) => {
      regionOrError(() => geometry.regionArea(geometry.unite([a, b, c])));
      regionOrError(() => geometry.regionArea(geometry.intersect(a, b)));
      regionOrError(() => geometry.subtract(a, [b, c]));
      regionOrError(() => geometry.split(a, [b]));
      regionOrError(() => geometry.freeFloor(a, [b]));
    },
  ),
  target(
    ['geometry/closestPoints', 'geometry/pointToRing', 'geometry/ringToSegment'],
    'rings and points',
    4,
    fc.tuple(anyRing, anyRing, point, point),
    ([a, b, p, q]) => {
      regionOrError(() => geometry.closestPoints(a, b));
      regionOrError(() => geometry.pointToRing(p, a));
      regionOrError(() => geometry.ringToSegment(a, p, q));
    },
  ),
  target(
    [
      'geometry/growRing',
      'geometry/growParts',
      'geometry/grownArea',
      'geometry/grownPerimeter',
      'geometry/reachInRoom',
    ],
    'convex rings',
    3,
    fc.tuple(fc.oneof(convex, anyRing), anyRing, reach, arcs),
    ([ring, room, r, how]) => {
      regionOrError(() => geometry.growRing(ring, r, how));
      regionOrError(() => geometry.growParts([ring, ring], r, how));
      regionOrError(() => [geometry.grownArea(ring, r), geometry.grownPerimeter(ring, r)]);
      regionOrError(() => geometry.reachInRoom(room, ring, r, how));
    },
  ),
];

/** What a scene of strokes is made of. */
interface StrokeParts {
  readonly fit: FitInput;
  readonly settings: Partial<strokes.StrokeInput>;
  readonly wanted: strokes.CueInput | strokes.Length;
  readonly at: { readonly dx: number; readonly dy: number; readonly turn: number; readonly grow: number };
}

/** A prepared scene of a room that can be read, or null. */
function prepared({
  fit,
  settings,
  wanted,
  at,
}: StrokeParts): { readonly scene: strokes.StrokeScene; readonly wanted: strokes.StrokeCue } | null {
  const table = TABLES[fit.table === 'snooker-12ft' ? 'snooker-12ft' : 'pool-7ft-bar'];
  const room = answerOrRefusal(() => checkRoom(fit.room));
  const how = answerOrRefusal(() => strokes.checkStroke(settings, table.ballDiameter));
  const chosen = answerOrRefusal(() => strokes.checkCue(wanted, table));
  if (room === null || how === null || chosen === null) return null;
  const [x, y] = room.outline[0];
  const place = { x: x + at.dx, y: y + at.dy, angle: at.turn };
  const scene = strokes.withStroke(strokes.prepareStrokes(room, table, place, how, at.grow), how);
  return { scene, wanted: chosen };
}

const strokeScene: fc.Arbitrary<StrokeParts> = fc.record({
  fit: anyFit({ obstacles: 6, extras: false }),
  settings: stroke,
  wanted: cue,
  at: fc.record({
    dx: fc.integer({ min: -3000, max: 6000 }),
    dy: fc.integer({ min: -3000, max: 6000 }),
    turn: angle,
    grow: fc.constantFrom(0, 10, -30),
  }),
});

const shot = fc.record({
  u: fc.double({ min: -1, max: 1, noNaN: true }),
  v: fc.double({ min: -1, max: 1, noNaN: true }),
  phi: angle,
});
const TABLE = TABLES['pool-7ft-bar'];

const STROKE: readonly Target[] = [
  target(
    [
      'stroke/prepareStrokes',
      'stroke/withStroke',
      'stroke/answerShot',
      'stroke/railDistances',
      'stroke/railElevation',
      'stroke/steepestRail',
      'stroke/canStand',
      'stroke/standingRoom',
      'stroke/standingFrom',
      'stroke/standingTo',
    ],
    'shots in rooms',
    6,
    fc.tuple(strokeScene, shot),
    ([input, { u, v, phi }]) => {
      const made = prepared(input);
      if (made === null) return;
      const { scene, wanted } = made;
      insistNumbers(scene);
      const room = strokes.standingRoom(scene);
      const [x, y] = [u * scene.qx, v * scene.qy];
      insistPlain(strokes.answerShot(scene, room, wanted, x, y, phi));
      const [ux, uy] = [Math.cos(phi), Math.sin(phi)];
      const distances = strokes.railDistances(scene, x, y, ux, uy);
      insistNumbers([
        distances,
        strokes.railElevation(scene, wanted, distances),
        strokes.steepestRail(scene, wanted),
      ]);
      const [from, to] = [
        strokes.standingFrom(wanted.length),
        strokes.standingTo(wanted.length, distances.rim),
      ];
      insistNumbers([from, to]);
      strokes.canStand(scene, room, x, y, ux, uy, from, to, strokes.STANDING_ASIDE);
    },
  ),
  target(
    ['stroke/shotShares', 'stroke/cushionProfiles', 'index/proveShots'],
    'all shots in rooms',
    2,
    strokeScene,
    (input) => {
      const made = prepared(input);
      if (made === null) return;
      const { scene, wanted } = made;
      const room = strokes.standingRoom(scene);
      insistPlain(strokes.shotShares(scene, room, [wanted], { shots: 128, grid: { columns: 3, rows: 2 } }));
      insistPlain(strokes.cushionProfiles(scene, room, wanted, 3));
      for (const aim of ['open', 'playable'] as const) {
        const proof = proveShots(scene, room, wanted, aim, { maxBoxes: 300, resolution: 5 });
        insistPlain(proof);
        // Each look may split one box more, and once it is undecided 2,000 boxes are added at most.
        if (proof.boxes > 2 * 300 + 2) throw new Error(`${proof.boxes} boxes.`);
      }
    },
  ),
  target(
    ['stroke/checkCue', 'stroke/checkStroke'],
    'anything',
    4,
    fc.tuple(
      spoilt([{ length: 1450, tipDiameter: 12 }, '57 in', { backswing: 100, maxElevation: 20 }]),
      fc.boolean(),
    ),
    ([hostile, asCue]) => {
      answerOrRefusal(() =>
        Reflect.apply(asCue ? strokes.checkCue : strokes.checkStroke, undefined, [
          hostile.make(),
          asCue ? TABLE : 57,
        ]),
      );
    },
  ),
];

const ringPick = fc.tuple(
  plainRing,
  fc.array(fc.tuple(convex, point), { maxLength: 4 }),
  fc.array(fc.tuple(convex, point), { maxLength: 3 }),
);

function problemOf([outline, tall, low]: [
  Ring,
  [Ring, Point][],
  [Ring, Point][],
]): placement.PlacementProblem | null {
  const room = good(outline);
  if (room === null) return null;
  const put = ([ring, [x, y]]: [Ring, Point]): Ring => geometry.translated(ring, x, y);
  return {
    outline: room,
    play: { length: 1900, width: 940 },
    frame: { length: 2200, width: 1240 },
    tall: tall.map(put),
    low: low.map(put),
  };
}

const options = fc.record({
  gap: fc.constantFrom(1, 1e-9, 1000),
  maxBoxes: fc.constantFrom(0, 1, 50, 400),
  turns: fc.constantFrom('square' as const, 'any' as const),
});

const PLACEMENT: readonly Target[] = [
  target(
    ['placement/findPlacement', 'placement/placeTable', 'placement/clearanceAt'],
    'rooms',
    2,
    fc.tuple(ringPick, options),
    ([made, how]) => {
      const problem = problemOf(made);
      if (problem === null) return;
      for (const found of [
        placement.findPlacement(problem, how),
        placement.placeTable(problem, { ...how, enough: [1500] }),
      ]) {
        insistPlain(found);
        if (found.value > found.upperBound + placement.REACHES) throw new Error('More than its bound.');
        if (found.pose !== null && !placement.clearanceAt(problem, found.pose).stands)
          throw new Error('It does not stand.');
      }
      const { boxes } = placement.findPlacement(problem, how);
      if (boxes > how.maxBoxes + 8) throw new Error(`${boxes} boxes of at most ${how.maxBoxes}.`);
    },
  ),
  target(
    [
      'placement/clearanceProbe',
      'placement/distancesAt',
      'placement/cushionGaps',
      'placement/settle',
      'placement/squareTurns',
    ],
    'poses in rooms',
    4,
    fc.tuple(ringPick, placementAt),
    ([made, pose]) => {
      const problem = problemOf(made);
      if (problem === null) return;
      const probe = placement.clearanceProbe(problem);
      insistNumbers([
        probe.clearance(pose),
        placement.clearanceAt(problem, pose),
        placement.distancesAt(problem, pose),
        placement.cushionGaps(problem, pose),
        placement.settle(problem, pose, 0),
        placement.squareTurns(problem.outline),
      ]);
    },
  ),
];

const pose = fc.record({
  x: coordinate,
  y: coordinate,
  z: coordinate,
  heading: angle,
  tilt: angle,
  roll: angle,
});

const DELIVERY: readonly Target[] = [
  target(
    ['delivery/crossPassage', 'delivery/narrowPassage', 'delivery/replayPassage'],
    'passages',
    2,
    fc.tuple(way, fc.array(pose, { minLength: 1, maxLength: 3 }), coordinate),
    ([asked, poses, delta]) => {
      const { checked } = read(asked);
      if (checked === null) return;
      const [passage] = checked.route;
      const [piece] = checked.pieces;
      insistNumbers(delivery.narrowPassage(passage, delta));
      const box = { l: piece.length, w: piece.width, h: piece.thickness, held: piece.held, tilt: piece.tilt };
      const crossing = delivery.crossPassage(passage, box, { maxBoxes: 200 });
      insistNumbers(crossing);
      if (crossing.atLeast > crossing.atMost + 1e-6) throw new Error('A motion where there is none.');
      insistNumbers(delivery.replayPassage(passage, { along: box.l, across: box.w, up: box.h, poses }));
      if (crossing.motion !== null) {
        const replay = delivery.replayPassage(passage, crossing.motion);
        if (!(replay.clearance > -1e-3)) throw new Error(`Its own motion is ${replay.clearance} mm clear.`);
      }
    },
  ),
];

export const PARTS: readonly Target[] = [...GEOMETRY, ...STROKE, ...PLACEMENT, ...DELIVERY];
