import { type Json, pathText } from '../document/json.js';
import type { Strings } from '../strings.js';
import type { FieldPart, Part, Section } from './parts.js';
import { furnishingSection, strokeSection } from './shape-more.js';
import { roomSection } from './shape-room.js';
import { type Catalogues, cueSection, tableSection } from './shape-table.js';
import { doorSection, obstacleSection } from './shape-things.js';

/** The whole form for an input, whatever the input is: what is not as it should be is shown as it is, and judged by the library. */
export function formShape(input: Json, strings: Strings, catalogues: Catalogues): Section[] {
  return [
    roomSection(input, strings),
    obstacleSection(input, strings),
    doorSection(input, strings),
    tableSection(input, strings, catalogues),
    cueSection(input, strings, catalogues),
    furnishingSection(input, strings, catalogues),
    strokeSection(input, strings),
  ];
}

/** All parts, those within others after them. */
export function allParts(sections: readonly { readonly parts: readonly Part[] }[]): Part[] {
  return sections.flatMap(({ parts }) =>
    parts.flatMap((part) => {
      if (part.part === 'list') return [part, ...allParts(part.rows)];
      return part.part === 'group' ? [part, ...allParts([part])] : [part];
    }),
  );
}

export function allFields(sections: readonly Section[]): FieldPart[] {
  return allParts(sections).filter((part) => part.part === 'field');
}

/** Paths of the values that the form shows. */
export function shownPaths(sections: readonly Section[]): string[] {
  return allParts(sections).flatMap((part) => {
    if (part.part === 'field') return [pathText(part.path)];
    // Of a list without rows there is nothing to show; of one with too many the view says so.
    if (part.part === 'list') return part.rows.length === 0 || part.more > 0 ? [pathText(part.path)] : [];
    return part.part === 'choice' && part.showsValue ? [pathText(part.path)] : [];
  });
}
