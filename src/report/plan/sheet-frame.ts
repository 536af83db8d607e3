import type { Draft } from './draft.js';
import { Pen } from './pen.js';
import type { Sheet } from './sheet.js';
import { escapeXml } from './svg.js';
import { LINE, type Palette } from './theme.js';
import { drawTitle, type Title } from './title-block.js';

/** A drawing that is ready to be put on its sheet. */
export interface Drawn {
  readonly sheet: Sheet;
  readonly palette: Palette;
  readonly draft: Draft;
  readonly title: Title;
  readonly id: string;
  /** For readers that hear the drawing: what it is, and what it says. */
  readonly heading: string;
  readonly description: string;
  /** More definitions, as SVG. */
  readonly definitions: string;
}

/** The whole document: frame, drawing, key and title block, with true sizes so that it prints to scale. */
export function writeSheet({
  sheet,
  palette,
  draft,
  title,
  id,
  heading,
  description,
  definitions,
}: Drawn): string {
  const { width, height, frame, legend, title: block } = sheet;
  const rest = new Pen(palette);
  rest.group('frame', () => {
    rest.polygon(
      [
        [frame.left, frame.top],
        [frame.right, frame.top],
        [frame.right, frame.bottom],
        [frame.left, frame.bottom],
      ],
      { stroke: 'ink', width: LINE.thick },
    );
    for (const { left, top, right, bottom } of [legend, block])
      rest.polygon(
        [
          [left, top],
          [right, top],
          [right, bottom],
          [left, bottom],
        ],
        { stroke: 'ink', width: LINE.thin },
      );
  });
  draft.legend.draw(rest, legend);
  drawTitle(rest, block, title, draft.lengths);
  const used = new Set([...draft.pen.patterns, ...draft.labels.patterns, ...rest.patterns]);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" ` +
    `class="${palette.rootClass}" role="img" aria-labelledby="${id}-title ${id}-desc" xml:lang="en" font-family="sans-serif">` +
    `<title id="${id}-title">${escapeXml(heading)}</title><desc id="${id}-desc">${escapeXml(description)}</desc>` +
    `${palette.style()}<defs>${palette.patterns(used)}${definitions}</defs>` +
    `<rect data-part="sheet" width="${width}" height="${height}"${palette.attributes({ fill: 'paper' })}/>` +
    `${draft.pen}${draft.labels}${rest}</svg>\n`
  );
}
