/** Holds a number and its unit on one line. */
export const NO_BREAK = '\u00a0';

/** Columns that a line of output has at most. */
export const LINE_WIDTH = 80;

const WIDE =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]/u;
const NO_WIDTH = /[\p{Mn}\p{Me}\p{Cf}]/u;

/** Columns that a text takes on a terminal: wide letters take two, marks over letters none. */
export function columnsOf(text: string): number {
  if (/^[ -~]*$/.test(text)) return text.length;
  let columns = 0;
  for (const letter of text) columns += NO_WIDTH.test(letter) ? 0 : WIDE.test(letter) ? 2 : 1;
  return columns;
}

/**
 * Lines of at most `width` columns. `first` begins the first line and `rest` every other (as for a list); a word that is
 * too long for a line is cut. The text's own spacing becomes single spaces; a no-break space holds its two words together and
 * is then a plain one.
 */
export function wrapText(text: string, first = '', rest = '', width: number = LINE_WIDTH): string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(/[ \t\n]+/).filter((w) => w !== '')) {
    for (const piece of cutWord(word, width - columnsOf(rest))) {
      if (!empty && columnsOf(line) + 1 + columnsOf(piece) > width) {
        lines.push(line);
        line = rest;
        empty = true;
      }
      line += empty ? piece : ` ${piece}`;
      empty = false;
    }
  }
  if (!empty) lines.push(line);
  return lines.map((l) => l.replaceAll(NO_BREAK, ' '));
}

/** A text padded with spaces up to `width` columns, on the right or (`'start'`) on the left. */
export function padTo(text: string, width: number, side: 'start' | 'end' = 'end'): string {
  const space = ' '.repeat(Math.max(0, width - columnsOf(text)));
  return side === 'end' ? text + space : space + text;
}

function cutWord(word: string, width: number): string[] {
  if (columnsOf(word) <= width) return [word];
  const pieces: string[] = [];
  let piece = '';
  for (const letter of word) {
    if (columnsOf(piece) + columnsOf(letter) > width) {
      pieces.push(piece);
      piece = '';
    }
    piece += letter;
  }
  pieces.push(piece);
  return pieces;
}
