import { DEFAULTS } from '../equipment/defaults.js';
import type { TableSpec } from '../equipment/equipment-types.js';
import { edgeArrays } from '../geometry/edge-arrays.js';
import type { Placement, Ring } from '../geometry/types.js';
import type { Scene, SceneCeilingFace } from '../room/scene.js';
import type { PartArrays, StanceArrays, StrokeScene } from './stroke-scene.js';
import type { StrokeSettings } from './stroke-settings.js';

/**
 * Room, table and pose made ready for strokes: everything in the table's frame, boundaries moved by `grow` = e (mm; see
 * {@link StrokeScene}).
 *
 * Heights and undersides move by e straight up or down, also under a slope. Where a + e would be negative, footprints and
 * walls count as not grown at all (see `growthInPlan`), so a kindest room is never kinder than it may be.
 */
export function prepareStrokes(
  scene: Scene,
  table: TableSpec,
  pose: Placement,
  stroke: StrokeSettings,
  grow = 0,
): StrokeScene {
  const frame = tableFrame(pose);
  const ballRadius = table.ballDiameter / 2;
  const noseX = table.field.length / 2;
  const noseY = table.field.width / 2;
  const rimX = table.outer.length / 2;
  const rimY = table.outer.width / 2;
  const ceiling = scene.ceiling.map((face) => frame.face(face, grow));
  const parts = partArrays(scene, frame.ring, grow);
  return {
    qx: noseX - ballRadius,
    qy: noseY - ballRadius,
    noseX,
    noseY,
    crestX: Math.min(noseX + DEFAULTS.table.cushionDepth, rimX),
    crestY: Math.min(noseY + DEFAULTS.table.cushionDepth, rimY),
    rimX,
    rimY,
    ballRadius,
    ballHeight: table.bedHeight + ballRadius,
    noseRise: table.noseHeight - ballRadius,
    railRise: table.railHeight - ballRadius,
    stroke,
    planMargin: stroke.margin + grow,
    grow,
    walls: edgeArrays([frame.ring(scene.outline)]),
    wallNames: scene.wallNames,
    parts,
    ceiling,
    stance: stanceArrays(parts, ceiling, grow),
  };
}

/**
 * The same room, table and pose for another stroke, at hardly any cost. Where a player can stand does not depend on the stroke, so the
 * `standingRoom` of `scene` serves this one too.
 */
export function withStroke(scene: StrokeScene, stroke: StrokeSettings): StrokeScene {
  return { ...scene, stroke, planMargin: stroke.margin + scene.grow };
}

/**
 * What footprints and walls are grown by, mm: a + e, but never less than 0. Shrinking is left out, so a room with e < -a
 * comes out less kind than it is: playable there is playable in the kindest room, not the other way round.
 */
export function growthInPlan(scene: StrokeScene): number {
  return Math.max(0, scene.planMargin);
}

/** Maps from the room's plan to the table's frame: move the pose's centre to the origin, then turn its long axis to +x. */
function tableFrame(pose: Placement): {
  ring: (ring: Ring) => Ring;
  face: (face: SceneCeilingFace, grow: number) => SceneCeilingFace;
} {
  const cos = Math.cos(pose.angle);
  const sin = Math.sin(pose.angle);
  return {
    ring: (ring) =>
      ring.map(([x, y]) => {
        const dx = x - pose.x;
        const dy = y - pose.y;
        return [cos * dx + sin * dy, cos * dy - sin * dx];
      }),
    face: (face, grow) => ({
      name: face.name,
      height: face.height + face.slopeX * pose.x + face.slopeY * pose.y - grow,
      slopeX: cos * face.slopeX + sin * face.slopeY,
      slopeY: cos * face.slopeY - sin * face.slopeX,
    }),
  };
}

function partArrays(scene: Scene, toFrame: (ring: Ring) => Ring, grow: number): PartArrays {
  const rings: Ring[] = [];
  const owner: number[] = [];
  scene.obstacles.forEach((obstacle, index) => {
    for (const part of obstacle.parts) {
      rings.push(toFrame(part));
      owner.push(index);
    }
  });
  const count = rings.length;
  const start = new Uint32Array(count + 1);
  const from = new Float64Array(count);
  const to = new Float64Array(count);
  const centerX = new Float64Array(count);
  const centerY = new Float64Array(count);
  const radius = new Float64Array(count);
  rings.forEach((ring, k) => {
    const obstacle = scene.obstacles[owner[k]];
    start[k + 1] = start[k] + ring.length;
    from[k] = obstacle.from - grow;
    to[k] = obstacle.to + grow;
    const xs = ring.map(([x]) => x);
    const ys = ring.map(([, y]) => y);
    const cx = (Math.min(...xs) + Math.max(...xs)) / 2;
    const cy = (Math.min(...ys) + Math.max(...ys)) / 2;
    centerX[k] = cx;
    centerY[k] = cy;
    radius[k] = Math.max(...ring.map(([x, y]) => Math.hypot(x - cx, y - cy)));
  });
  return {
    count,
    start,
    edges: edgeArrays(rings),
    obstacle: Uint32Array.from(owner),
    from,
    to,
    centerX,
    centerY,
    radius,
    obstacleNames: scene.obstacles.map((obstacle) => obstacle.name),
  };
}

/** The face z = height + slope . (x, y) is too low where slope . (x, y) < needed - height: a half plane, or all or nothing where it is flat. */
function stanceArrays(parts: PartArrays, ceiling: readonly SceneCeilingFace[], grow: number): StanceArrays {
  const needed = DEFAULTS.standing.ceiling;
  const low: { nx: number; ny: number; d: number }[] = [];
  let never = false;
  for (const { height, slopeX, slopeY } of ceiling) {
    const slope = Math.hypot(slopeX, slopeY);
    if (slope === 0) never ||= height < needed;
    else low.push({ nx: -slopeX / slope, ny: -slopeY / slope, d: (height - needed) / slope });
  }
  const blocking: number[] = [];
  for (let k = 0; k < parts.count; k++) if (parts.from[k] < DEFAULTS.standing.headHeight) blocking.push(k);
  return { radius: DEFAULTS.standing.radius + grow, parts: blocking, low, never };
}
