import type { Arranged, ArrangeQuestion } from './arrange-question.js';
import { frameOf, layoutFromFrame, questionInFrame } from './canonical-frame.js';
import { layoutValue } from './layout-value.js';
import { rejectionsOf } from './rejections.js';
import { searchLayouts } from './search-layouts.js';

export type { Arranged, ArrangeQuestion, Layout } from './arrange-question.js';
export { layoutValue } from './layout-value.js';

/**
 * Finds places for a table and other pieces together: as many pieces as it can, with the best play of the wanted cue and little
 * sharing of zones, as {@link layoutValue} weighs them. It proposes and improves; nothing is proved about layouts that it does not find.
 *
 * Pieces and table with a given pose stay there, even where something is wrong with them. The same question has the same answer, to the last
 * bit, and the mirror image of a room one of the same value to rounding. `arrangement.effort` is the most layouts that are weighed, however
 * long that takes.
 */
export function arrange(question: ArrangeQuestion): Arranged {
  const frame = frameOf(question);
  const { best, layouts, stopped } = searchLayouts(questionInFrame(question, frame));
  const layout = layoutFromFrame(question, frame, best);
  const rejections = layout.poses.map((pose, i) => (pose === null ? rejectionsOf(question, layout, i) : []));
  return { ...layout, value: { ...layoutValue(question, layout) }, layouts, stopped, rejections };
}
