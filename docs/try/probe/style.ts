/**
 * The look of the probe, in the lines and colours of the library's drawings. The page may set the same variables as for those
 * (`--er-ink`, `--er-paper`, ...); without them these apply, light or dark as the reader's screen is.
 */
const LIGHT = {
  ink: '#131a22',
  fine: '#414b57',
  paper: '#ffffff',
  cloth: '#eef2f0',
  cramped: '#00619a',
  blocked: '#b34a00',
  limit: '#8f2d0c',
};
const DARK = {
  ink: '#eef2f6',
  fine: '#b9c3ce',
  paper: '#11161c',
  cloth: '#1d2723',
  cramped: '#6cbcf0',
  blocked: '#f29a55',
  limit: '#ffb79a',
};

const variables = (colours: Readonly<Record<string, string>>): string =>
  Object.entries(colours)
    .map(([name, value]) => `--p-${name}: var(--er-${name}, ${value});`)
    .join(' ');

export const STYLE = `
.probe { ${variables(LIGHT)} color: var(--p-ink); container-type: inline-size; }
@media screen and (prefers-color-scheme: dark) { .probe { ${variables(DARK)} } }
.probe-empty > :not(h2, style, :nth-child(3)) { display: none; }
.probe h2 { margin: 0 0 0.5rem; }
.probe h3 { margin: 2.25rem 0 0.5rem; }
.probe p { margin-block: 0.5rem; }
.probe > .probe-note { margin-block: 0 1rem; }
.probe figure { margin: 0; min-width: 0; }
.probe figcaption, .probe legend { font-weight: 600; padding: 0; margin-block-end: 0.25rem; }
.probe-note, .probe-help, .probe-state { color: var(--p-fine); max-width: 68ch; }
.probe-help { font-size: 0.875rem; margin-block: 0.25rem 0.5rem; }
.probe-hidden { position: absolute; width: 1px; height: 1px; margin: -1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.probe-shot-part, .probe-stroke-part { display: grid; gap: 1.25rem 1.5rem; }
.probe-shot-part > *, .probe-stroke-part > * { min-width: 0; }
@container (min-width: 54rem) {
  .probe-shot-part { grid-template-columns: minmax(0, 3fr) minmax(0, 2fr); }
  .probe-side { grid-column: 2; grid-row: 1 / span 2; }
  .probe-elevation-figure { grid-column: 1; }
  .probe-stroke-part { grid-template-columns: minmax(0, 2fr) minmax(0, 3fr); }
}
.probe-stage { border: 1px solid var(--p-fine); background: var(--p-paper); touch-action: pan-y pinch-zoom; line-height: 0; }
.probe-stage svg, .probe-map-holder svg { display: block; max-width: 100%; height: auto; user-select: none; -webkit-user-select: none; }
.probe-stage svg { cursor: crosshair; margin-inline: auto; }
.probe-field, .probe-grip-room { touch-action: none; }
.probe :focus-visible { outline: 3px solid var(--p-cramped); outline-offset: 2px; }
.probe-paper { fill: var(--p-paper); }
.probe-cloth { fill: var(--p-cloth); }
.probe-thick { stroke: var(--p-ink); stroke-width: 1.5; }
.probe-thin { stroke: var(--p-ink); stroke-width: 0.75; }
path.probe-thin:not(.probe-cloth) { fill: none; }
.probe-fine { stroke: var(--p-fine); stroke-width: 0.75; fill: none; }
.probe-chain { stroke-dasharray: 14 3 1.5 3; }
.probe-dashed { stroke-dasharray: 7 3; }
.probe-opening { stroke: var(--p-paper); stroke-width: 3; }
.probe-line-ink { stroke: var(--p-ink); }
.probe-line-cramped { stroke: var(--p-cramped); }
.probe-line-blocked { stroke: var(--p-blocked); }
.probe-tint-ink { fill: none; }
.probe-tint-cramped { fill: var(--p-cramped); fill-opacity: 0.14; }
.probe-tint-blocked { fill: var(--p-blocked); fill-opacity: 0.14; }
.probe-window { fill: none; stroke: var(--p-fine); stroke-width: 0.75; stroke-dasharray: 3 3; }
.probe-player { fill: var(--p-fine); fill-opacity: 0.22; stroke: var(--p-fine); stroke-width: 1.25; }
.probe-cue { stroke: var(--p-ink); stroke-width: 0.75; }
.probe-backswing { fill: none; stroke: var(--p-ink); stroke-width: 1; stroke-dasharray: 4 2; }
.probe-ball { fill: var(--p-paper); stroke: var(--p-ink); stroke-width: 1.75; }
.probe-grip-room { fill: transparent; cursor: grab; }
.probe-grip { fill: var(--p-paper); stroke: var(--p-ink); stroke-width: 1.5; pointer-events: none; }
.probe-met { fill: none; stroke: var(--p-limit); stroke-width: 3; }
.probe-name, .probe-word, .probe-axis { font-size: 12px; font-family: inherit; fill: var(--p-ink); text-anchor: middle; paint-order: stroke; stroke: var(--p-paper); stroke-width: 4px; stroke-linejoin: round; pointer-events: none; }
.probe-name-met { fill: var(--p-limit); font-weight: 600; }
.probe-axis { fill: var(--p-fine); }
.probe-word { font-size: 13px; font-weight: 600; }
.probe-word-cramped { fill: var(--p-cramped); }
.probe-word-blocked { fill: var(--p-blocked); }
.probe-swatch { vertical-align: -0.15em; margin-inline-end: 0.5em; flex: none; }
.probe-key { list-style: none; padding: 0; margin-block: 0.5rem; display: flex; flex-wrap: wrap; gap: 0.25rem 1.25rem; font-size: 0.875rem; color: var(--p-fine); }
.probe-key li { display: flex; align-items: center; }
.probe-badge { display: flex; flex-wrap: wrap; align-items: center; gap: 0 0.5rem; margin: 0; padding: 0.5rem 0.75rem; border: 1px solid var(--p-ink); border-inline-start-width: 6px; }
.probe-badge[data-class='cramped'] { border-color: var(--p-cramped); }
.probe-badge[data-class='blocked'] { border-color: var(--p-blocked); }
.probe-class { font-size: 1.125rem; }
.probe-badge .probe-swatch { margin: 0; }
.probe-means { flex: 1 1 14rem; min-width: 0; }
.probe-facts { margin: 0.75rem 0; min-height: 13rem; }
.probe-facts div { display: grid; grid-template-columns: minmax(7rem, 2fr) 3fr; gap: 0.5rem; padding: 0.25rem 0; border-block-end: 1px solid color-mix(in srgb, var(--p-fine) 40%, transparent); }
.probe-facts dt, .probe-shares dt { color: var(--p-fine); }
.probe-facts dd, .probe-shares dd { margin: 0; font-variant-numeric: tabular-nums; overflow-wrap: anywhere; }
.probe-numbers { border: 1px solid var(--p-fine); margin: 0; padding: 0.5rem 0.75rem 0.75rem; min-width: 0; }
@container (min-width: 54rem) { .probe-shot-part { grid-template-rows: auto 1fr; } }
.probe-numbers legend { padding-inline: 0.25rem; }
.probe-numbers label { display: grid; grid-template-columns: 1fr 7.5rem; align-items: center; gap: 0.75rem; margin-block: 0.375rem; }
.probe-numbers input { width: 100%; min-height: 2.25rem; padding: 0.25rem 0.5rem; font: inherit; font-variant-numeric: tabular-nums; color: inherit; background: var(--p-paper); border: 1px solid var(--p-fine); box-sizing: border-box; }
.probe-elevation { border: 1px solid var(--p-fine); background: var(--p-paper); overflow-x: auto; }
.probe-elevation svg { display: block; width: 100%; min-width: 24rem; height: auto; max-height: 26rem; }
.probe-slider { display: grid; grid-template-columns: 1fr auto; gap: 0.125rem 0.75rem; margin-block-end: 1rem; }
.probe-slider output { font-variant-numeric: tabular-nums; font-weight: 600; }
.probe-slider input { grid-column: 1 / -1; width: 100%; min-height: 1.75rem; margin: 0; accent-color: var(--p-cramped); }
.probe-row { display: flex; flex-wrap: wrap; align-items: center; gap: 0.5rem 1rem; }
.probe-row > p { margin: 0; flex: 1 1 14rem; }
.probe-reset { font: inherit; color: inherit; background: var(--p-paper); border: 1px solid var(--p-ink); padding: 0.5rem 0.875rem; min-height: 2.5rem; }
.probe-reset:disabled { color: var(--p-fine); border-color: var(--p-fine); }
.probe-shares { display: flex; flex-wrap: wrap; gap: 0.25rem 1.5rem; margin: 0.25rem 0 0.5rem; }
.probe-shares div { display: flex; gap: 0.5rem; }
.probe-shares dt { display: flex; align-items: center; }
.probe-shares dd { font-weight: 600; min-width: 9.5em; }
.probe-bar { display: flex; height: 10px; border: 1px solid var(--p-ink); margin-block-end: 0.75rem; background: var(--p-cloth); }
.probe-bar span { flex: 0 1 0; }
.probe-bar-cramped { background: repeating-linear-gradient(135deg, var(--p-cramped) 0 2px, transparent 2px 5px); }
.probe-bar-blocked { background: repeating-linear-gradient(135deg, var(--p-blocked) 0 2px, transparent 2px 5px), repeating-linear-gradient(45deg, var(--p-blocked) 0 2px, transparent 2px 5px); }
.probe-map-state { min-height: 1.75rem; font-size: 0.875rem; color: var(--p-fine); margin-block: 0.25rem; }
.probe-map-state progress { width: 8rem; accent-color: var(--p-cramped); }
.probe-halo { stroke: var(--p-paper); stroke-width: 5; fill: none; }
.probe-mark-line { stroke: var(--p-ink); stroke-width: 1.75; fill: none; }
@media print { .probe { display: none; } }
`;
