/** Building elements without a framework. */

export type Attributes = Readonly<Record<string, string | number | boolean>>;
export type Child = Node | string;

const SVG = 'http://www.w3.org/2000/svg';

/** An element with attributes; `false` leaves one out, `true` sets it without a value. */
export function el<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  setAttributes(element, attributes);
  element.append(...children);
  return element;
}

export function svg<K extends keyof SVGElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: readonly Child[]
): SVGElementTagNameMap[K] {
  const element = document.createElementNS(SVG, tag);
  setAttributes(element, attributes);
  element.append(...children);
  return element;
}

export function setAttributes(element: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === false) element.removeAttribute(name);
    else element.setAttribute(name, value === true ? '' : String(value));
  }
}

/** Sets text only where it is another one: a live region would say the same twice. */
export function setText(element: Element, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

/** Where to, for an SVG path. */
export function pathOf(points: readonly (readonly [number, number])[], closed: boolean): string {
  const data = points.map(([x, y]) => `${round(x)} ${round(y)}`).join('L');
  return `M${data}${closed ? 'Z' : ''}`;
}

/** Hundredths of a pixel are finer than anybody sees. */
export function round(value: number): number {
  return Math.round(100 * value) / 100;
}
