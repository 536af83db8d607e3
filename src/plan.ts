/**
 * Drawings to scale, as SVG text: the plan of a room with its table, and one shot from the side.
 *
 * @packageDocumentation
 */
export { renderPlan } from './render-plan.js';
export { renderShot, type ShotInput } from './render-shot.js';
export type { PlanOptions, SheetName, SheetOrientation } from './report/plan/plan-options.js';
export type { PlanTheme } from './report/plan/theme.js';
