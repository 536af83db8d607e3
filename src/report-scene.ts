import { furnishedScene } from './arrangement/furnished-scene.js';
import { placePiece } from './arrangement/piece-place.js';
import type { FitQuestion } from './fit-question.js';
import type { FitReport } from './report/fit-report.js';
import type { Scene } from './room/scene.js';

/** The room that a report speaks of: with the other pieces where it says that they stand. */
export function reportScene({ scene, table, arrangement }: FitQuestion, report: FitReport): Scene {
  if (arrangement === null || report.arrangement === undefined) return scene;
  const { pieces } = report.arrangement;
  const placed = arrangement.pieces.flatMap((piece, i) => {
    const pose = pieces[i]?.pose ?? null;
    if (pose === null) return [];
    return [placePiece(piece, { x: pose.x, y: pose.y, angle: (pose.turn * Math.PI) / 180 })];
  });
  return furnishedScene(scene, placed, table);
}
