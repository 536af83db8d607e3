import type { DeliveryCaution, DeliveryReport } from '../delivery/delivery-report.js';
import { describeWayAdvice } from './describe-delivery-advice.js';
import { describeWayAnswer } from './describe-delivery-answer.js';
import { describeHoldChanges, describePieces, describePlaces } from './describe-delivery-pieces.js';
import { plainName, type SentenceUnits } from './sentences.js';
import { wrapText } from './wrap.js';

/** A titled list of sentences; `explanation` stands between the title and the list. */
export interface DeliveryBlock {
  readonly title: string;
  readonly explanation: string;
  readonly items: readonly string[];
}

export interface DescribeWayOptions {
  /** Lengths to the millimetre, the centimetre (default) or the half inch. */
  readonly units?: SentenceUnits;
}

const SPARE_WORDS =
  'To spare or missing is what every clear measure of a passage (widths, heights, depths) could do without, or lacks, all at once. ' +
  'Room for hands and packing is counted with the piece.';

/** The way in as lists of sentences, not yet wrapped; lists that have nothing to say are left out. The answer comes first. */
export function describeDelivery(report: DeliveryReport, units: SentenceUnits): readonly DeliveryBlock[] {
  const set = report.pieceSet === null ? '' : `Counted is the ${plainName(report.pieceSet)} set.`;
  const blocks: readonly DeliveryBlock[] = [
    { title: 'The way in', explanation: '', items: describeWayAnswer(report, units) },
    { title: 'The way in: what is carried', explanation: set, items: describePieces(report, units) },
    {
      title: 'The way in: where it is tightest',
      explanation: SPARE_WORDS,
      items: describePlaces(report, units),
    },
    {
      title: 'The way in: where the hold changes',
      explanation: '',
      items: describeHoldChanges(report, units),
    },
    { title: 'The way in: what would help', explanation: '', items: describeWayAdvice(report, units) },
    {
      title: 'The way in: cautions, not answered by geometry',
      explanation: '',
      items: report.cautions.map(cautionWords),
    },
    {
      title: 'The way in: assumed, since nothing else was said',
      explanation: '',
      items: report.assumptions.map(plainName),
    },
  ];
  return blocks.filter(({ items }) => items.length > 0);
}

/**
 * The way in in plain sentences, to read aloud or to paste into a letter: whether everything goes in and how that is known, what is carried and how it
 * is held, the tightest passages, what would help, cautions, assumptions.
 *
 * Lines have at most 80 columns and the text ends with a line break. Numbers are rounded towards caution: room to spare down, what
 * is missing up and never to nothing, sizes and masses up.
 */
export function describeWay(report: DeliveryReport, options: DescribeWayOptions = {}): string {
  const [answer, ...lists] = describeDelivery(report, options.units ?? 'cm');
  const opening = (answer?.items ?? []).flatMap((sentence) => wrapText(sentence));
  const blocks = [
    opening,
    ...lists.map(({ title, explanation, items }) => [
      withoutPrefix(title),
      ...wrapText(explanation),
      ...items.flatMap((item) => wrapText(item, '- ', '  ')),
    ]),
  ];
  return `${blocks.map((block) => block.join('\n')).join('\n\n')}\n`;
}

/** On its own the text is about nothing else than the way in. */
function withoutPrefix(title: string): string {
  const rest = title.replace(/^The way in: /, '');
  return `${rest.charAt(0).toUpperCase()}${rest.slice(1)}`;
}

/** The code of a caution as a label: `floor-protection` is `Floor protection`. */
function cautionWords({ code, message, source }: DeliveryCaution): string {
  const label = code.replaceAll('-', ' ');
  return `${label.charAt(0).toUpperCase()}${label.slice(1)}: ${plainName(message)} (Source: ${plainName(source)}.)`;
}
