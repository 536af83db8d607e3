import type { ComparisonRow, TableComparison } from './comparison.js';
import { CLASS_WORDS } from './describe-answer.js';
import type { DescribeOptions } from './describe-fit.js';
import { describeSurvey, sayConfidence } from './describe-survey.js';
import { plainName, type SentenceUnits, sayCue, sayShares } from './sentences.js';
import { columnsOf, LINE_WIDTH, padTo, wrapText } from './wrap.js';

const HEADINGS = ['Table', 'Cue', 'Verdict', 'Open', 'Cramped', 'Blocked'] as const;
const GAP = '  ';

/**
 * A comparison of tables as text: one line for each table and cue, and under each table the longest cue that meets nothing at full
 * backswing. A question mark marks what is too close to be sure. Lines have at most 80 columns and the text ends with a line
 * break.
 */
export function describeComparison(comparison: TableComparison, options: DescribeOptions = {}): string {
  const units = options.units ?? 'cm';
  if (comparison.rows.length === 0) return 'No table was compared.\n';
  const blocks = comparison.rows.map((row) => blockOf(row, units));
  const cells = [HEADINGS, ...blocks.flatMap((block) => block.lines)];
  const widths = HEADINGS.map((_, column) => Math.max(...cells.map((line) => columnsOf(line[column] ?? ''))));
  // The table's name takes what the other columns leave; it is wrapped where that is too little.
  const others = widths.slice(1).reduce((sum, width) => sum + GAP.length + width, 0);
  widths[0] = Math.max(...blocks.map((block) => columnsOf(block.name)), HEADINGS[0].length);
  widths[0] = Math.max(1, Math.min(widths[0], LINE_WIDTH - others));
  const { confidence } = comparison;
  const first = describeSurvey(comparison.survey, units).flatMap((sentence) => wrapText(sentence));
  const text = [
    ...(first.length > 0 ? [...first, ''] : []),
    layOut(HEADINGS, widths),
    ...blocks.flatMap((block) => blockLines(block, widths)),
    '',
    ...(comparison.rows.some((row) => row.cues.some((cue) => !cue.certain))
      ? wrapText('? is too close to be sure: assess that table alone to see what to measure again.')
      : []),
    ...(confidence === undefined
      ? []
      : wrapText(`In at least ${sayConfidence(confidence)} no wrong verdict would go without one.`)),
    ...wrapText(
      'Longest cue: meets nothing at full backswing, whatever the shot. Each table stands where it has the most room.',
    ),
    ...wrapText(CLASS_WORDS),
  ];
  return `${text.join('\n')}\n`;
}

interface Block {
  readonly name: string;
  readonly lines: readonly (readonly string[])[];
}

function blockOf(row: ComparisonRow, units: SentenceUnits): Block {
  const lines = row.cues.map((cue) => {
    const { open, cramped, blocked } = sayShares(cue.shares, cue.verdict);
    const verdict = cue.certain ? cue.verdict : `${cue.verdict} ?`;
    const shares = cue.verdict === 'none' ? ['-', '-', '-'] : [open, cramped, blocked];
    return ['', sayCue(cue.length, units), verdict, ...shares].map(plainName);
  });
  const name = plainName(row.table.name);
  if (row.pose === null) return { name: `${name}: cannot stand here`, lines };
  const longest = row.longestCue > 0 ? sayCue(row.longestCue, units, 'down') : 'none';
  const { pieces } = row;
  const beside = pieces === undefined ? '' : `, ${pieces.placed} of ${pieces.asked} other pieces`;
  return { name: `${name}, longest cue ${longest}${beside}`, lines };
}

function blockLines(block: Block, widths: readonly number[]): string[] {
  const names = wrapText(block.name, '', '  ', widths[0]);
  const lines: string[] = [];
  for (let i = 0; i < Math.max(names.length, block.lines.length); i++) {
    lines.push(layOut([names[i] ?? '', ...(block.lines[i] ?? []).slice(1)], widths));
  }
  return lines;
}

function layOut(cells: readonly string[], widths: readonly number[]): string {
  const padded = widths.map((width, column) => {
    const cell = cells[column] ?? '';
    return padTo(cell, width, column >= 3 ? 'start' : 'end');
  });
  return padded.join(GAP).trimEnd();
}
