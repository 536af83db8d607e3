import type { FitInput, FitReport } from 'elbowroom';
import { el } from '../probe/dom.js';
import type { Strings } from '../strings.js';
import type { Numbers } from './numbers.js';

/** The answer at a glance: verdict, how sure, by what proof, where the table stands, and what each cue can do. */
export function summaryOf(
  input: FitInput,
  report: FitReport,
  numbers: Numbers,
  strings: Strings,
): HTMLElement {
  const words = strings.answer;
  const { verdict, table, cues } = report;
  const wanted = cues[0];
  const facts: [string, string][] = [
    [words.certainty, certaintyOf(report, strings)],
    ...(wanted === undefined ? [] : [[words.proof, words.proofs[wanted.proof]] satisfies [string, string]]),
    [words.field, words.size(numbers.near(table.field.length), numbers.near(table.field.width))],
    ...placeFacts(input, report, numbers, strings),
    ...pieceFacts(report, strings),
  ];
  return el(
    'div',
    { class: 'summary' },
    el(
      'p',
      { class: 'verdict', 'data-verdict': verdict },
      el('strong', {}, words.verdicts[verdict]),
      el('span', {}, words.means[verdict]),
    ),
    el(
      'dl',
      { class: 'facts' },
      ...facts.map(([name, value]) => el('div', {}, el('dt', {}, name), el('dd', {}, value))),
    ),
    ...(verdict === 'none' ? [] : cueTable(report, numbers, strings)),
  );
}

function certaintyOf({ certain, confidence }: FitReport, { answer: words }: Strings): string {
  if (!certain) return words.uncertain;
  return confidence === undefined ? words.certain : words.certainTape(Math.floor(confidence * 100 + 1e-9));
}

function placeFacts(
  input: FitInput,
  report: FitReport,
  numbers: Numbers,
  strings: Strings,
): [string, string][] {
  const words = strings.answer;
  const { pose, clearance, verdict } = report;
  if (pose === null) return [[words.place, words.noPlace]];
  const placed = words.placed(numbers.near(pose.x), numbers.near(pose.y), words.degrees(pose.turn));
  const facts: [string, string][] = [[words.place, placed]];
  if (verdict === 'none') return facts;
  const given = input.pose !== undefined;
  facts.push([
    words.clearance,
    given
      ? words.clearanceGiven(numbers.down(clearance.value))
      : words.clearanceOf(numbers.down(clearance.value), numbers.up(clearance.upperBound)),
  ]);
  if (clearance.longestCue > 0) {
    const here = numbers.down(clearance.longestCue);
    const bound = numbers.up(clearance.longestCueUpperBound);
    facts.push([words.longest, given ? words.longestGiven(here) : words.longestOf(here, bound)]);
  }
  const last = facts.at(-1);
  if (clearance.clearNowhere && last !== undefined)
    facts[facts.length - 1] = [last[0], `${last[1]}. ${words.nowhere}.`];
  return facts;
}

function pieceFacts({ arrangement }: FitReport, { answer: words }: Strings): [string, string][] {
  if (arrangement === undefined) return [];
  const { pieces } = arrangement;
  return [[words.pieces, words.placedPieces(pieces.filter(({ fits }) => fits).length, pieces.length)]];
}

function cueTable({ cues }: FitReport, numbers: Numbers, strings: Strings): HTMLElement[] {
  const words = strings.answer;
  const headings = [words.cue, words.verdict, words.open, words.cramped, words.blocked];
  const rows = cues.map(({ length, verdict, certain, shares }) => {
    const said = numbers.shares(shares, verdict);
    const name = words.verdicts[verdict];
    return el(
      'tr',
      {},
      el('th', { scope: 'row' }, numbers.near(length)),
      el('td', {}, certain ? name : words.unsure(name)),
      ...[said.open, said.cramped, said.blocked].map((text) => el('td', { class: 'figure' }, text)),
    );
  });
  const error = Math.max(...cues.map(({ shareError }) => shareError));
  const note =
    error > 0
      ? [el('p', { class: 'note' }, words.sharesNote(Math.max(1, Math.ceil(error * 100 - 1e-9))))]
      : [];
  return [
    el(
      'table',
      { class: 'cues' },
      el('caption', {}, words.cues),
      el('thead', {}, el('tr', {}, ...headings.map((text) => el('th', { scope: 'col' }, text)))),
      el('tbody', {}, ...rows),
    ),
    ...note,
  ];
}
