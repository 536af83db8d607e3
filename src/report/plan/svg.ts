import { plainName } from '../sentences.js';

/** Decimals of coordinates on paper: at 1:100 the fifth is a thousandth of a millimetre in the room. */
const DECIMALS = 5;

/** A number as SVG writes it: no exponent, no zeros to spare, no minus zero. */
export function num(value: number, decimals: number = DECIMALS): string {
  const text = value.toFixed(decimals).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

/**
 * Text from the input, fit for XML: what {@link plainName} takes out, characters that XML 1.0 forbids and halves of pairs
 * gone, and no more than two marks piled on one letter.
 */
export function plainText(text: string): string {
  return plainName(text)
    .replace(/[\p{Cs}\ufffe\uffff]/gu, '\ufffd')
    .replace(/(\p{M}{2})\p{M}+/gu, '$1')
    .replace(/\s+/g, ' ')
    .trim();
}

/** Text as the content of an element or in a quoted attribute. */
export function escapeXml(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}

/** A point on paper, mm from the sheet's upper left corner, y down. */
export type PaperPoint = readonly [x: number, y: number];

/** Path data of a polyline, or of a polygon where `closed`. */
export function pathOf(points: readonly PaperPoint[], closed = false): string {
  const [first, ...rest] = points.map(([x, y]) => `${num(x)} ${num(y)}`);
  if (first === undefined) return '';
  return `M${first}${rest.map((point) => `L${point}`).join('')}${closed ? 'Z' : ''}`;
}
