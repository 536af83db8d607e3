import type { TableSpec } from '../equipment/equipment-types.js';
import type { Placement } from '../geometry/types.js';
import { hardestRoom, kindestRoom } from '../room/rooms-within.js';
import type { Scene } from '../room/scene.js';
import { prepareStrokes } from '../stroke/prepare-strokes.js';
import { standingRoom } from '../stroke/standing.js';
import type { StandingRoom } from '../stroke/standing-room.js';
import type { StrokeScene } from '../stroke/stroke-scene.js';
import type { StrokeSettings } from '../stroke/stroke-settings.js';

/** The room as strokes see it from one pose. */
export interface PoseView {
  readonly strokes: StrokeScene;
  readonly standing: StandingRoom;
}

/**
 * The view with every boundary moved by `grow` (e, mm): of the room itself for 0, else of the hardest (more than 0) or the kindest
 * room within its tolerances, for which `grow` is to be theirs.
 */
export type PoseViews = (grow: number) => PoseView;

/** Views of a room from one pose, each made when it is first asked for and then kept: they are costly to make. */
export function poseViews(
  scene: Scene,
  table: TableSpec,
  pose: Placement,
  stroke: StrokeSettings,
): PoseViews {
  const known = new Map<number, PoseView>();
  return (grow) => {
    const found = known.get(grow);
    if (found !== undefined) return found;
    const seen =
      grow === 0
        ? scene
        : grow > 0
          ? hardestRoom(scene).scene
          : (kindestRoom(scene, stroke.margin)?.scene ?? scene);
    const strokes = prepareStrokes(seen, table, pose, stroke, grow);
    const view = { strokes, standing: standingRoom(strokes) };
    known.set(grow, view);
    return view;
  };
}
