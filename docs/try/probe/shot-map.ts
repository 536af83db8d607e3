/** Shares in cells over the field, row by row from the -y side; `elbowroom/stroke` gives it. */
export interface MapGrid {
  readonly columns: number;
  readonly rows: number;
  readonly cramped: readonly number[];
  readonly blocked: readonly number[];
}

export const CELL_CLASSES = ['crampedSome', 'crampedMany', 'blockedSome', 'blockedMany'] as const;
export type CellClass = (typeof CELL_CLASSES)[number];

/** From this share of a cell's shots on they are many; as in the plan to scale. */
const MANY = 0.25;

export function cellClass({ cramped, blocked }: MapGrid, cell: number): CellClass | null {
  const stopped = blocked[cell] ?? 0;
  if (stopped > 0) return stopped < MANY ? 'blockedSome' : 'blockedMany';
  const tight = cramped[cell] ?? 0;
  if (tight > 0) return tight < MANY ? 'crampedSome' : 'crampedMany';
  return null;
}

/**
 * One SVG path for each class, over a picture of `width` by `height` with +x to the right and +y up: runs of cells of a class in
 * one row are one rectangle.
 */
export function mapPaths(grid: MapGrid, width: number, height: number): Readonly<Record<CellClass, string>> {
  const paths = { crampedSome: '', crampedMany: '', blockedSome: '', blockedMany: '' };
  const { columns, rows } = grid;
  const across = (column: number): number => Math.round((100 * column * width) / columns) / 100;
  const down = (row: number): number => Math.round((100 * (rows - row) * height) / rows) / 100;
  for (let row = 0; row < rows; row++) {
    let start = 0;
    for (let column = 1; column <= columns; column++) {
      const before = cellClass(grid, row * columns + column - 1);
      if (column < columns && cellClass(grid, row * columns + column) === before) continue;
      if (before !== null)
        paths[before] +=
          `M${across(start)} ${down(row)}H${across(column)}V${down(row + 1)}H${across(start)}Z`;
      start = column;
    }
  }
  return paths;
}
