import { CLASS_WORDS, describeAnswer } from './describe-answer.js';
import { describeDelivery } from './describe-delivery.js';
import { describeFurnishings, describePiecesAnswer } from './describe-furnishings.js';
import { describeAdvice, describeLimits } from './describe-limits.js';
import { describeCues, describePlace, describeSpans } from './describe-numbers.js';
import { describeShots } from './describe-shots.js';
import type { Caution, FitReport } from './fit-report.js';
import { plainName, type SentenceUnits } from './sentences.js';
import { wrapText } from './wrap.js';

export interface DescribeOptions {
  /** Lengths to the millimetre, the centimetre (default) or the half inch. */
  readonly units?: SentenceUnits;
}

/**
 * The report in plain sentences, to read aloud or to paste into a letter: the answer and how sure it is, where the table
 * stands, what each cue can do, the tape-measure arithmetic, what holds it back, what would help, the other pieces, the way in, cautions,
 * assumptions.
 *
 * Lines have at most 80 columns and the text ends with a line break. Numbers are rounded towards caution: room that is there
 * down, room that is needed up, so that a rounded number never turns a miss into a fit.
 */
export function describeFit(report: FitReport, options: DescribeOptions = {}): string {
  const units = options.units ?? 'cm';
  const blocks = [
    paragraphs([...describeAnswer(report, units), ...carriedIn(report), ...piecesPlaced(report)]),
    list('Where it stands', describePlace(report, units)),
    list('What can be played', describeCues(report, units), CLASS_WORDS),
    list('Room along and across', describeSpans(report, units)),
    report.shots === undefined || report.pose === null ? [] : describeShots(report.shots, report.pose.turn),
    list(limitsTitle(report), describeLimits(report, units)),
    list('What would help', describeAdvice(report, units)),
    ...otherPieces(report, units),
    ...wayIn(report, units),
    list('Cautions: not answered by geometry', report.cautions.map(cautionWords)),
    list('Assumed, since nothing else was said', report.assumptions.map(plainName)),
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

/** Nobody should read a yes and miss, a page further down, that the table stays outside. */
function carriedIn({ verdict, delivery }: FitReport): readonly string[] {
  if (delivery === undefined) return [];
  const measured = delivery.certain ? '' : ', as far as the measurements can tell';
  switch (delivery.outcome) {
    case 'passes':
      return [`${verdict === 'none' ? 'Its pieces' : 'And its pieces'} can be carried in${measured}.`];
    case 'blocked':
      return [
        `${verdict === 'none' ? 'Not' : 'But not'} all of its pieces can be carried in${measured}: see the way in.`,
      ];
    case 'undecided':
      return ['Whether all of its pieces can be carried in is not shown either way: see the way in.'];
  }
}

function piecesPlaced({ arrangement }: FitReport): readonly string[] {
  return arrangement === undefined ? [] : describePiecesAnswer(arrangement);
}

function otherPieces({ arrangement, verdict }: FitReport, units: SentenceUnits): readonly string[][] {
  return arrangement === undefined ? [] : listed(describeFurnishings(arrangement, verdict, units));
}

function wayIn({ delivery }: FitReport, units: SentenceUnits): readonly string[][] {
  return delivery === undefined ? [] : listed(describeDelivery(delivery, units));
}

function listed(
  blocks: readonly {
    readonly title: string;
    readonly explanation: string;
    readonly items: readonly string[];
  }[],
): readonly string[][] {
  return blocks.map(({ title, items, explanation }) => list(title, items, explanation));
}

function limitsTitle(report: FitReport): string {
  if (report.verdict === 'none') return 'What leaves it no place';
  return report.verdict === 'clear' ? 'What comes close, nearest first' : 'What holds it back, nearest first';
}

/** The code of a caution as a label: `floor-load` is `Floor load`. */
function cautionWords(caution: Caution): string {
  const label = caution.code.replaceAll('-', ' ');
  return `${label.charAt(0).toUpperCase()}${label.slice(1)}: ${plainName(caution.message)} (Source: ${plainName(caution.source)}.)`;
}

function paragraphs(sentences: readonly string[]): string[] {
  return sentences.flatMap((sentence) => wrapText(sentence));
}

function list(title: string, items: readonly string[], explanation = ''): string[] {
  if (items.length === 0) return [];
  return [title, ...wrapText(explanation), ...items.flatMap((item) => wrapText(item, '- ', '  '))];
}
