import type { Box } from '../../../src/report/plan/boxes.js';
import { ASCENT, DESCENT, textWidth } from '../../../src/report/plan/character-widths.js';

/** An element of a document: attributes by name, elements and texts in order. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly (XmlElement | string)[];
}

const NAME = /[A-Za-z_][\w:.-]*/y;
const ATTRIBUTE = /\s+([A-Za-z_][\w:.-]*)="([^"<]*)"/y;
const REFERENCE = /&(?:(amp|lt|gt|quot|apos)|#(\d+)|#x([0-9A-Fa-f]+));/g;
const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/**
 * Reads the XML that our drawings are made of, and nothing more: no declarations, comments, sections or single quotes.
 * Throws for whatever is not well-formed by XML 1.0: tags that do not match, attributes twice, bare `&` and `<`, characters
 * that XML forbids.
 */
export function readXml(text: string): XmlElement {
  if (/[\p{Cs}\ufffe\uffff]|(?![\t\n\r])\p{Cc}/u.test(text)) throw new Error('a forbidden character');
  let at = 0;
  const fail = (what: string): never => {
    throw new Error(`${what} at ${at}: ${text.slice(at, at + 60)}`);
  };
  const match = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (found !== null) at = pattern.lastIndex;
    return found;
  };
  const decoded = (raw: string): string => {
    if (/&(?!(?:amp|lt|gt|quot|apos|#\d+|#x[0-9A-Fa-f]+);)/.test(raw)) fail('a bare ampersand');
    return raw.replace(REFERENCE, (_, name, decimal, hex) =>
      name === undefined
        ? String.fromCodePoint(decimal === undefined ? Number.parseInt(hex, 16) : Number(decimal))
        : NAMED[name],
    );
  };
  const element = (): XmlElement => {
    if (text[at] !== '<') fail('no element');
    at++;
    const name = match(NAME)?.[0] ?? fail('no name');
    const attributes = new Map<string, string>();
    for (let found = match(ATTRIBUTE); found !== null; found = match(ATTRIBUTE)) {
      if (attributes.has(found[1])) fail(`${found[1]} twice`);
      attributes.set(found[1], decoded(found[2]));
    }
    if (text.startsWith('/>', at)) {
      at += 2;
      return { name, attributes, children: [] };
    }
    if (text[at] !== '>') fail('a tag that does not end');
    at++;
    const children: (XmlElement | string)[] = [];
    for (;;) {
      const open = text.indexOf('<', at);
      if (open < 0) fail('an element that does not end');
      if (open > at) children.push(decoded(text.slice(at, open)));
      at = open;
      if (!text.startsWith('</', at)) {
        children.push(element());
        continue;
      }
      if (!text.startsWith(`</${name}>`, at)) fail(`another end than that of ${name}`);
      at += name.length + 3;
      return { name, attributes, children };
    }
  };
  const root = element();
  if (text.slice(at).trim() !== '') fail('something after the end');
  return root;
}

/** The element and everything in it, in the order of the document. */
export function* everyElement(root: XmlElement): Generator<XmlElement> {
  yield root;
  for (const child of root.children) if (typeof child !== 'string') yield* everyElement(child);
}

export function partsOf(root: XmlElement, part: string): readonly XmlElement[] {
  return [...everyElement(root)].filter((e) => e.attributes.get('data-part') === part);
}

export function textOf(element: XmlElement): string {
  return element.children.map((child) => (typeof child === 'string' ? child : textOf(child))).join('');
}

/** Numbers of an attribute. */
export function numberOf(element: XmlElement, name: string): number {
  const value = Number(element.attributes.get(name) ?? Number.NaN);
  if (!Number.isFinite(value)) throw new Error(`${element.name} has no number ${name}`);
  return value;
}

/** The points of path data made of M, L and Z alone. */
export function pointsOf(path: XmlElement): readonly (readonly [number, number])[] {
  const data = path.attributes.get('d') ?? '';
  if (!/^M[^A-Za-z]+(L[^A-Za-z]+)*Z?$/.test(data)) throw new Error(`no polyline: ${data}`);
  return data
    .replace('Z', '')
    .split(/[ML]/)
    .slice(1)
    .map((pair) => {
      const [x, y] = pair.split(' ').map(Number);
      return [x, y];
    });
}

export interface PlacedText {
  readonly text: string;
  readonly size: number;
  readonly box: Box;
}

/** Every text of the drawing with the box that it may take at most. */
export function textBoxes(root: XmlElement): readonly PlacedText[] {
  return [...everyElement(root)]
    .filter((e) => e.name === 'text')
    .map((e) => {
      const text = textOf(e);
      const size = numberOf(e, 'font-size');
      const width = textWidth(text, size);
      const turn = /^rotate\(([-\d.]+) /.exec(e.attributes.get('transform') ?? '');
      const angle = turn === null ? 0 : (Number(turn[1]) * Math.PI) / 180;
      const anchor = e.attributes.get('text-anchor') ?? 'start';
      const along = anchor === 'middle' ? 0 : anchor === 'end' ? -width / 2 : width / 2;
      const up = ((ASCENT - DESCENT) / 2) * size;
      const x = numberOf(e, 'x') + along * Math.cos(angle) + up * Math.sin(angle);
      const y = numberOf(e, 'y') + along * Math.sin(angle) - up * Math.cos(angle);
      return { text, size, box: { x, y, width, height: (ASCENT + DESCENT) * size, angle } };
    });
}
