/** Ends and step of a slider. */
export interface SliderRange {
  readonly min: number;
  readonly max: number;
  readonly step: number;
}

/**
 * A range that holds at least `least` to `most`, wide enough for `value`, whose steps meet `value` itself: a slider that stands on
 * 1447.8 must come back to it.
 */
export function sliderRange(value: number, least: number, most: number, step: number): SliderRange {
  const below = Math.max(0, Math.floor((value - least) / step));
  const above = Math.max(0, Math.floor((most - value) / step));
  return { min: tidy(value - below * step), max: tidy(value + above * step), step };
}

/** Without the last digits that adding left behind. */
function tidy(value: number): number {
  return Number(value.toFixed(6));
}
