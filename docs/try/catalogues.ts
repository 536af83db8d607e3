import { CUES, FURNISHINGS, formatLength, TABLES } from 'elbowroom';
import type { Catalogues } from './form/shape-table.js';

/** The library's catalogues as the form offers them, with the sizes that count beside every name. */
export function catalogues(): Catalogues {
  const cm = (mm: number): string => formatLength(mm, 'cm', { decimals: 1 });
  const exact = (mm: number): string => formatLength(mm, 'mm', { decimals: 2 });
  return {
    tables: Object.entries(TABLES).map(([id, { name, game, field, outer }]) => ({
      id,
      name,
      game,
      about: [cm(field.length), cm(field.width)],
      field: [exact(field.length), exact(field.width)],
      outer: [exact(outer.length), exact(outer.width)],
    })),
    cues: Object.values(CUES).map(({ name }) => name),
    pieces: Object.entries(FURNISHINGS).map(([kind, { name }]) => ({ kind, name })),
  };
}
