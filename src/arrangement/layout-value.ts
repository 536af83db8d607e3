import { DEFAULTS } from '../equipment/defaults.js';
import type { ArrangeQuestion, Layout } from './arrange-question.js';
import type { ArrangementValue } from './arrangement-report.js';

/** What a layout is worth. */
export function layoutValue(question: ArrangeQuestion, layout: Layout): ArrangementValue {
  const { weights } = DEFAULTS.arrangement;
  const placed = layout.poses.filter((p) => p !== null).length / question.arrangement.pieces.length;
  const upperBound = weights.placed + weights.play + weights.apart;
  return { value: weights.placed * placed, upperBound, placed, play: 0, apart: 0 };
}
