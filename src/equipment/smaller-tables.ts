import type { TableSpec } from './equipment-types.js';
import { TABLES } from './tables.js';

/** Games that are played on the same kind of table, by the catalogue's word for one of them. */
const KIN: readonly (readonly string[])[] = [
  ['pool', 'heyball'],
  ['English pool', 'blackball'],
];

/** Fields that differ by no more than this (mm) count as one size: a customer would not notice. */
const SAME_SIZE = 10;
/** Balls of one game differ by no more than this, mm. */
const SAME_BALL = 1.5;

/**
 * Tables of the catalogue for the same game, or for close kin, whose field is smaller both ways by more than 10 mm; the
 * largest first, and of fields within 10 mm of each other only one. A table of a game that the catalogue does not know is
 * taken for the game that is played with its ball.
 */
export function sameGameSmaller(table: TableSpec): TableSpec[] {
  const all = Object.values(TABLES);
  const games = kinOf(table, all);
  const smaller = all
    .filter((t) => games.includes(t.game.toLowerCase()))
    .filter(
      (t) => table.field.length - t.field.length > SAME_SIZE && table.field.width - t.field.width > SAME_SIZE,
    )
    .sort((a, b) => b.field.length * b.field.width - a.field.length * a.field.width);
  const sizes: TableSpec[] = [];
  for (const candidate of smaller) {
    if (!sizes.some((kept) => sameSize(kept, candidate))) sizes.push(candidate);
  }
  return sizes;
}

function kinOf(table: TableSpec, all: readonly TableSpec[]): readonly string[] {
  const game = table.game.toLowerCase();
  const kin = KIN.map((group) => group.map((g) => g.toLowerCase())).find((group) => group.includes(game));
  if (kin !== undefined) return kin;
  if (all.some((t) => t.game.toLowerCase() === game)) return [game];
  return all
    .filter((t) => Math.abs(t.ballDiameter - table.ballDiameter) <= SAME_BALL)
    .map((t) => t.game.toLowerCase());
}

function sameSize(a: TableSpec, b: TableSpec): boolean {
  return (
    Math.abs(a.field.length - b.field.length) <= SAME_SIZE &&
    Math.abs(a.field.width - b.field.width) <= SAME_SIZE
  );
}
