/** What readings are called: the same everywhere, so that a report, a suspect and an advice name the same thing alike. */

export function wallName(from: string, to: string): string {
  return `wall ${from}-${to}`;
}

export function diagonalName(from: string, to: string): string {
  return `diagonal ${from}-${to}`;
}

export function cornerName(corner: string): string {
  return `corner ${corner}`;
}

export function threeDistancesName(corner: string): string {
  return `corner ${corner} by three distances`;
}

export function againName(reading: string): string {
  return `${reading} again`;
}

/** Gives each name once: the second reading of one thing is `wall A-B (2)`. */
export class ReadingNames {
  private readonly used = new Map<string, number>();

  take(name: string): string {
    const count = (this.used.get(name) ?? 0) + 1;
    this.used.set(name, count);
    return count === 1 ? name : `${name} (${count})`;
  }
}
