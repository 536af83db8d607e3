import { findPlace } from '../placement/find-place.js';
import type { Arranged, ArrangeQuestion } from './arrange-question.js';
import { layoutValue } from './layout-value.js';

export type { Arranged, ArrangeQuestion, Layout } from './arrange-question.js';
export { layoutValue } from './layout-value.js';

/** Finds places for the table and all pieces together. */
export function arrange(question: ArrangeQuestion): Arranged {
  const { scene, table, stroke, cue, pose, arrangement, search } = question;
  const tablePose =
    pose ?? (table === null ? null : findPlace({ scene, table, stroke, cues: [cue], search }).pose);
  const poses = arrangement.pieces.map((piece) => piece.pose);
  const value = layoutValue(question, { tablePose, poses });
  return {
    tablePose,
    poses,
    value,
    layouts: 1,
    stopped: false,
    rejections: poses.map((p) =>
      p === null ? [{ code: 'no-place', with: null, zone: null, amount: null }] : [],
    ),
  };
}
