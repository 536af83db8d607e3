import { svg } from './dom.js';

/**
 * Hatches beside the colours, as the drawings to scale have them: cramped is hatched one way, blocked both ways, closer where there
 * are many; what is cut is hatched in ink.
 */
export const PATTERNS = {
  cut: { step: 5, width: 0.7, ink: 'ink', crossed: false },
  crampedSome: { step: 7, width: 1, ink: 'cramped', crossed: false },
  crampedMany: { step: 4, width: 1.3, ink: 'cramped', crossed: false },
  blockedSome: { step: 7, width: 1, ink: 'blocked', crossed: true },
  blockedMany: { step: 4, width: 1.3, ink: 'blocked', crossed: true },
} as const;

export type PatternName = keyof typeof PATTERNS;

/** All patterns, for one SVG; their ids begin with `prefix`. */
export function patternDefs(prefix: string): SVGDefsElement {
  const defs = svg('defs');
  for (const [name, { step, width, ink, crossed }] of Object.entries(PATTERNS)) {
    defs.append(
      svg(
        'pattern',
        {
          id: `${prefix}-${name}`,
          width: step,
          height: step,
          patternUnits: 'userSpaceOnUse',
          patternTransform: 'rotate(45)',
        },
        svg('rect', { width: step, height: step, class: `probe-tint-${ink}` }),
        svg('path', {
          d: `M0 ${step / 2}H${step}${crossed ? `M${step / 2} 0V${step}` : ''}`,
          class: `probe-line-${ink}`,
          'stroke-width': width,
          fill: 'none',
        }),
      ),
    );
  }
  return defs;
}

export function patternFill(prefix: string, name: PatternName): string {
  return `url(#${prefix}-${name})`;
}

/** A small picture of a pattern for keys and beside words; it says nothing to a screen reader. */
export function swatch(prefix: string, fill: PatternName | null): SVGSVGElement {
  return svg(
    'svg',
    { class: 'probe-swatch', viewBox: '0 0 26 16', width: 26, height: 16, 'aria-hidden': 'true' },
    svg('rect', {
      x: 0.75,
      y: 0.75,
      width: 24.5,
      height: 14.5,
      class: 'probe-cloth probe-thin',
    }),
    ...(fill === null
      ? []
      : [svg('rect', { x: 0.75, y: 0.75, width: 24.5, height: 14.5, fill: patternFill(prefix, fill) })]),
  );
}
