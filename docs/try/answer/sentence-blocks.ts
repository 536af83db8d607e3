/** One block of the library's sentences: what stands between two empty lines. */
export interface SentenceBlock {
  readonly title: string | null;
  readonly paragraphs: readonly string[];
  readonly items: readonly string[];
  /** Lines that hold only where they stand, such as a map in figures. */
  readonly figures: readonly string[];
}

/** The text of `describeFit`, which is broken at 80 columns for letters and terminals, as blocks that a page breaks as it likes. */
export function sentenceBlocks(text: string): SentenceBlock[] {
  return text
    .split(/\n{2,}/)
    .map((block) => block.split('\n').filter((line) => line !== ''))
    .filter((lines) => lines.length > 0)
    .map(blockOf);
}

function blockOf(lines: readonly string[], index: number): SentenceBlock {
  // The answer itself comes first and has no title.
  const [title, ...rest] = index === 0 ? [null, ...lines] : lines;
  const paragraphs: string[] = [];
  const items: string[] = [];
  const figures: string[] = [];
  let inParagraph = false;
  for (const line of rest) {
    if (line === null) continue;
    if (line.startsWith('- ')) items.push(line.slice(2));
    else if (line.startsWith('  ') && items.length > 0) items.push(`${items.pop()} ${line.trim()}`);
    else if (line.startsWith('  ')) figures.push(line.slice(2));
    else if (inParagraph) paragraphs.push(`${paragraphs.pop()} ${line}`);
    else paragraphs.push(line);
    inParagraph = !line.startsWith('- ') && !line.startsWith('  ');
  }
  return { title: title ?? null, paragraphs, items, figures };
}
