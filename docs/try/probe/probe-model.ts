import { checkRoom, type FitInput, type FitReport } from 'elbowroom';
import { convexParts } from 'elbowroom/geometry';
import {
  type CueSpec,
  checkCue,
  checkStroke,
  prepareStrokes,
  type Scene,
  type StandingRoom,
  type StrokeScene,
  type StrokeSettings,
  standingRoom,
  type TableSpec,
  withStroke,
} from 'elbowroom/stroke';
import { type TablePose, toRadians } from './plan-geometry.js';
import type { BallArea } from './shot.js';

/** What the sliders set, mm. */
export interface Settings {
  readonly cueLength: number;
  readonly backswing: number;
  readonly margin: number;
}

/** One answer of the page made ready for trying shots: checked once, so that a frame has nothing left to read. */
export interface ProbeModel {
  /** What the drawings are made from: the question without what they do not show, and other pieces as things that stand there. */
  readonly input: FitInput;
  readonly report: FitReport;
  readonly scene: Scene;
  readonly table: TableSpec;
  readonly pose: TablePose;
  readonly area: BallArea;
  readonly cue: CueSpec;
  readonly stroke: StrokeSettings;
  readonly strokes: StrokeScene;
  readonly standing: StandingRoom;
  readonly asWritten: Settings;
}

/** Null where the table has no place. */
export function probeModel(input: FitInput, report: FitReport): ProbeModel | null {
  const { pose, table, cues } = report;
  if (pose === null) return null;
  const room = roomWithPieces(input.room, report);
  const scene = sceneWithPieces(checkRoom(input.room), report);
  const written = input.cues?.[0];
  const checked = checkCue(written, table);
  // The report's length is the page's answer; an input that was edited since says something else.
  const cue = { ...checked, length: cues[0]?.length ?? checked.length };
  const stroke = checkStroke(input.stroke, table.ballDiameter);
  const strokes = prepareStrokes(scene, table, { x: pose.x, y: pose.y, angle: toRadians(pose.turn) }, stroke);
  // The pieces are things of the room here, so the answer is to one without any.
  const { arrangement: _, ...bare } = report;
  return {
    input: {
      room,
      table: input.table,
      ...(input.cues === undefined ? {} : { cues: input.cues }),
      ...(input.stroke === undefined ? {} : { stroke: input.stroke }),
    },
    report: bare,
    scene,
    table,
    pose,
    area: { halfX: strokes.qx, halfY: strokes.qy },
    cue,
    stroke,
    strokes,
    standing: standingRoom(strokes),
    asWritten: { cueLength: cue.length, backswing: stroke.backswing, margin: stroke.margin },
  };
}

/** The stroke as the sliders have it. A short backswing is never longer than the full one. */
export function strokeFor({ stroke }: ProbeModel, { backswing, margin }: Settings): StrokeSettings {
  return { ...stroke, backswing, margin, shortBackswing: Math.min(stroke.shortBackswing, backswing) };
}

export function strokesFor(model: ProbeModel, settings: Settings): StrokeScene {
  return withStroke(model.strokes, strokeFor(model, settings));
}

export function cueFor({ cue }: ProbeModel, { cueLength }: Settings): CueSpec {
  return { ...cue, length: cueLength };
}

function sceneWithPieces(scene: Scene, { arrangement }: FitReport): Scene {
  const pieces = (arrangement?.pieces ?? []).filter(({ ring }) => ring.length > 0);
  if (pieces.length === 0) return scene;
  const standing = pieces.map(({ name, ring, from, to }) => {
    return { name, ring, parts: convexParts(ring), from, to, movable: true };
  });
  return { ...scene, obstacles: [...scene.obstacles, ...standing] };
}

function roomWithPieces(room: FitInput['room'], { arrangement }: FitReport): FitInput['room'] {
  const pieces = (arrangement?.pieces ?? []).filter(({ ring }) => ring.length > 0);
  if (pieces.length === 0) return room;
  const standing = pieces.map(({ name, ring, from, to }) => ({ name, footprint: ring, from, to }));
  return { ...room, obstacles: [...(room.obstacles ?? []), ...standing] };
}
