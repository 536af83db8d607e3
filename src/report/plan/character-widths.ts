/*
 * How wide text may come out. A drawing names only the generic family `sans-serif`, so the font is not known; these widths are
 * those of a wide one (DejaVu Sans, measured from its own tables), rounded up to a twentieth of the size. A narrower font
 * leaves air, so boxes that keep apart here keep apart on paper.
 */

/** Characters by width, in shares of the font's size. */
const BY_WIDTH: readonly (readonly [width: number, characters: string])[] = [
  [0.3, "'IJijl\u2032"],
  [0.35, ' \u00a0,./:;\\|\u00b7\u2018\u2019'],
  [0.4, '()-[]ft\u2033'],
  [0.45, '!r'],
  [0.55, '"*_`\u00b0\u2013?csz'],
  [0.6, 'FLkvxy'],
  [0.65, '$0123456789EPSTYabdeghnopqu{}'],
  [0.7, 'ABCKRVXZ'],
  [0.75, 'NU'],
  [0.8, '&DGHOQ'],
  [0.85, '#+<=>^w~\u00b1\u00d7\u2212\u2264\u2265'],
  [0.9, 'M'],
  [1, '@%Wm\u2026'],
];

/** Letters of other scripts, by the widest of theirs; a full square for East Asia, more for pictures and ornaments. */
const LATIN_1 = 1;
const OTHER = 1.25;
const SQUARE = 1.05;
const PICTURE = 1.5;

/** Height of capitals and figures, of what stands above the baseline at most, and of what hangs below it, in shares of the size. */
export const CAP_HEIGHT = 0.72;
export const ASCENT = 0.95;
export const DESCENT = 0.25;

/** Width of a text at a size, at most, in the unit of the size. */
export function textWidth(text: string, size: number): number {
  let width = 0;
  for (const character of text) width += characterWidth(character);
  return width * size;
}

function characterWidth(character: string): number {
  for (const [width, characters] of BY_WIDTH) if (characters.includes(character)) return width;
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x100) return LATIN_1;
  if (/\p{M}/u.test(character)) return 0;
  if (code >= 0x2e80 && code < 0xa000) return SQUARE;
  if (code >= 0xac00 && code < 0xd7b0) return SQUARE;
  // Ligatures of whole phrases are among these.
  if (code >= 0xfb00 && code < 0xfe00) return 12 * PICTURE;
  return code >= 0x2e00 ? 2 * PICTURE : code >= 0x2000 ? PICTURE + 0.25 : OTHER;
}

/** As much of a text as goes into a width; an ellipsis stands for the rest. */
export function fitText(text: string, size: number, width: number): string {
  if (textWidth(text, size) <= width) return text;
  const room = width - textWidth('\u2026', size);
  let used = 0;
  let kept = '';
  for (const character of text) {
    used += characterWidth(character) * size;
    if (used > room) break;
    kept += character;
  }
  return `${kept.trimEnd()}\u2026`;
}

/** A text in lines no wider than a width, at most so many; the last one ends in an ellipsis where some is left over. */
export function fitLines(text: string, size: number, width: number, most: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  const words = text.split(' ').filter((word) => word !== '');
  for (let i = 0; i < words.length; i++) {
    const longer = line === '' ? words[i] : `${line} ${words[i]}`;
    if (textWidth(longer, size) <= width) {
      line = longer;
      continue;
    }
    if (lines.length === most - 1) {
      const rest = words.slice(i).join(' ');
      return [...lines, fitText(line === '' ? rest : `${line} ${rest}`, size, width)];
    }
    if (line !== '') {
      lines.push(line);
      line = '';
      i--;
    } else {
      // One word that is wider than the line alone.
      lines.push(fitText(words[i], size, width));
    }
  }
  return line === '' ? lines : [...lines, line];
}
