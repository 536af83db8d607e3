import { describeFit, type FitReport, type SentenceUnits } from 'elbowroom';
import { el } from '../probe/dom.js';
import { type SentenceBlock, sentenceBlocks } from './sentence-blocks.js';

/** The library's sentences, broken as the page has room. */
export function sentencesOf(report: FitReport, units: SentenceUnits): HTMLElement[] {
  return sentenceBlocks(describeFit(report, { units })).map(blockOf);
}

function blockOf({ title, paragraphs, items, figures }: SentenceBlock): HTMLElement {
  return el(
    'div',
    { class: 'block' },
    ...(title === null ? [] : [el('h3', {}, title)]),
    ...paragraphs.map((text) => el('p', {}, text)),
    ...(items.length === 0 ? [] : [el('ul', {}, ...items.map((text) => el('li', {}, text)))]),
    ...(figures.length === 0 ? [] : [el('pre', {}, figures.join('\n'))]),
  );
}
