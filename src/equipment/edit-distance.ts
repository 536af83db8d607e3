/**
 * Least number of characters to insert, delete, change or swap with their neighbour to turn one word into another
 * (optimal string alignment).
 */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let best = Math.min(cell(last, j) + 1, cell(row, j - 1) + 1, cell(last, j - 1) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        best = Math.min(best, cell(beforeLast, j - 2) + 1);
      }
      row.push(best);
    }
    beforeLast = last;
    last = row;
  }
  return cell(last, b.length);
}

function cell(row: readonly number[], j: number): number {
  return row[j] ?? 0;
}
