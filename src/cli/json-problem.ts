/** The first thing that keeps a text from being JSON, counted from line 1 and column 1. */
export interface JsonProblem {
  readonly line: number;
  readonly column: number;
  /** A sentence that says what is wrong and what to write instead. */
  readonly message: string;
}

/** Deeper than any input of ours by far, and shallow enough for the call stack. */
const MAX_DEPTH = 200;

/**
 * Finds what is wrong with a JSON text, in words that do not depend on the engine; null when `JSON.parse` will take it. Also refuses a
 * name that stands twice in one object, since `JSON.parse` would drop the first in silence, and nesting deeper than 200.
 */
export function findJsonProblem(text: string): JsonProblem | null {
  const scanner = new Scanner(text);
  scanner.document();
  return scanner.problem;
}

/** Reads along the text; every method returns false once a problem was found. */
class Scanner {
  problem: JsonProblem | null = null;
  private pos = 0;

  constructor(private readonly text: string) {}

  document(): boolean {
    this.space();
    if (this.atEnd()) return this.fail('There is nothing in it.');
    if (!this.value(0)) return false;
    this.space();
    if (this.atEnd()) return true;
    if (this.here() === ',')
      return this.fail('Something follows the end of the JSON, beginning with a comma.');
    return this.fail(`The JSON is complete before this, yet ${this.quoteHere()} follows.`);
  }

  private value(depth: number): boolean {
    const letter = this.here();
    if (letter === '{' || letter === '[') {
      if (depth >= MAX_DEPTH) return this.fail(`Lists and objects are nested deeper than ${MAX_DEPTH} here.`);
      return letter === '{' ? this.object(depth + 1) : this.list(depth + 1);
    }
    if (letter === '"') return this.string() !== null;
    if (/[-+.\d]/.test(letter)) return this.number();
    return this.word();
  }

  private object(depth: number): boolean {
    const start = this.pos++;
    const names = new Set<string>();
    this.space();
    if (this.here() === '}') return this.skip();
    for (;;) {
      if (this.atEnd()) return this.unclosed('{', '}', start);
      if (this.here() === '}') return this.fail('The comma before this } is one too many.');
      if (this.here() !== '"') return this.noName();
      const at = this.pos;
      const name = this.string();
      if (name === null) return false;
      const meant = String(JSON.parse(name));
      if (names.has(meant)) return this.fail(`The name ${clip(meant)} stands twice in this object.`, at);
      names.add(meant);
      this.space();
      if (this.here() !== ':')
        return this.fail(`After the name ${clip(name.slice(1, -1))} a colon is missing.`);
      this.pos++;
      this.space();
      if (this.atEnd()) return this.unclosed('{', '}', start);
      if (!this.value(depth)) return false;
      const more = this.separator('}', '{', start);
      if (more !== 'more') return more === 'end';
    }
  }

  private list(depth: number): boolean {
    const start = this.pos++;
    this.space();
    if (this.here() === ']') return this.skip();
    for (;;) {
      if (this.atEnd()) return this.unclosed('[', ']', start);
      if (this.here() === ']') return this.fail('The comma before this ] is one too many.');
      if (!this.value(depth)) return false;
      const more = this.separator(']', '[', start);
      if (more !== 'more') return more === 'end';
    }
  }

  private separator(close: string, open: string, start: number): 'more' | 'end' | 'wrong' {
    const inchMark = this.here() === '"';
    this.space();
    if (this.atEnd()) return this.wrong(this.unclosed(open, close, start));
    const letter = this.here();
    if (letter === close) {
      this.pos++;
      return 'end';
    }
    if (letter === ',') {
      this.pos++;
      this.space();
      return 'more';
    }
    if (inchMark) {
      return this.wrong(
        this.fail('A double quote inside a text is written \\" (for an inch mark, write in instead).'),
      );
    }
    if (letter === '/' || letter === '#') return this.wrong(this.word());
    return this.wrong(this.fail(`A comma or ${close} is missing before ${this.quoteHere()}.`));
  }

  private wrong(_failed: boolean): 'wrong' {
    return 'wrong';
  }

  /** The string as written, with its quotes; null with a problem. */
  private string(): string | null {
    const start = this.pos++;
    for (;;) {
      const letter = this.here();
      if (letter === '' || letter === '\n' || letter === '\r') {
        this.fail('The text that begins here has no closing double quote on its line.', start);
        return null;
      }
      if (letter < ' ') {
        this.fail('A tab or another control character stands in this text; write \\t for a tab.');
        return null;
      }
      if (letter === '"') {
        this.pos++;
        return this.text.slice(start, this.pos);
      }
      if (
        letter === '\\' &&
        !/^\\(["\\/bfnrt]|u[\da-fA-F]{4})/.test(this.text.slice(this.pos, this.pos + 6))
      ) {
        this.fail(
          'A backslash in a text comes before one of " \\ / b f n r t or u and four digits; write \\\\ for a backslash.',
        );
        return null;
      }
      this.pos += letter === '\\' ? 2 : 1;
    }
  }

  private number(): boolean {
    const found = /^[-+.\w]+/.exec(this.text.slice(this.pos, this.pos + 400));
    const written = found?.[0] ?? '';
    if (/^-?(0|[1-9]\d*)(\.\d+)?([eE][-+]?\d+)?$/.test(written)) {
      this.pos += written.length;
      return true;
    }
    if (/^-?[\d.]+[a-zA-Z]+$/.test(written)) {
      return this.fail(`A number with its unit is a text: write "${written}" in double quotes.`);
    }
    return this.fail(`${clip(written)} is not a number as JSON writes it, such as 12, -0.5 or 1e3.`);
  }

  private word(): boolean {
    for (const word of ['true', 'false', 'null']) {
      if (this.text.startsWith(word, this.pos) && !/[\w$]/.test(this.text.charAt(this.pos + word.length))) {
        this.pos += word.length;
        return true;
      }
    }
    const letter = this.here();
    if (letter === '/' || letter === '#') return this.fail('JSON has no comments; take this out.');
    if (letter === "'" || letter === '\u201c' || letter === '\u201d') {
      return this.fail('Texts and names stand in plain double quotes: "like this".');
    }
    if (letter === ',') return this.fail('A value is missing before this comma.');
    return this.fail(`A value is missing where ${this.quoteHere()} stands; texts stand in double quotes.`);
  }

  private noName(): boolean {
    const letter = this.here();
    if (letter === '/' || letter === '#') return this.word();
    if (letter === ',') return this.fail('A name is missing before this comma.');
    return this.fail(`A name in double quotes is missing where ${this.quoteHere()} stands.`);
  }

  private unclosed(open: string, close: string, start: number): boolean {
    const { line, column } = this.place(start);
    return this.fail(`It ends too early: the ${open} in line ${line}, column ${column} has no ${close}.`);
  }

  private skip(): boolean {
    this.pos++;
    return true;
  }

  private space(): void {
    while (/[ \t\n\r]/.test(this.here())) this.pos++;
  }

  private here(): string {
    return this.text.charAt(this.pos);
  }

  private atEnd(): boolean {
    return this.pos >= this.text.length;
  }

  private quoteHere(): string {
    if (this.atEnd()) return 'the end';
    return clip(/^([\p{L}\p{N}_]+|.)/su.exec(this.text.slice(this.pos, this.pos + 40))?.[0] ?? '');
  }

  private fail(message: string, at: number = this.pos): false {
    if (this.problem === null) this.problem = { ...this.place(at), message };
    return false;
  }

  private place(at: number): { line: number; column: number } {
    const before = this.text.slice(0, at).split(/\r\n|\n|\r/);
    return { line: before.length, column: (before.at(-1) ?? '').length + 1 };
  }
}

/** A piece of the text, fit to stand in a message. */
function clip(piece: string): string {
  const shown = piece.length > 30 ? `${piece.slice(0, 30)}...` : piece;
  return `"${shown.replace(/\p{Cc}/gu, ' ')}"`;
}
