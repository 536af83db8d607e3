/** A problem as the library tells it. */
export interface Problem {
  readonly path: string;
  readonly message: string;
}

/** A place on the page that can show what is wrong: a control, or the head of a row, list or section. Paths as the library writes them. */
export interface Place {
  readonly path: string;
  readonly control: boolean;
}

export interface Placed<P extends Problem> {
  readonly problem: P;
  /** Index among the places; -1: nowhere but in the summary. */
  readonly place: number;
}

/**
 * Where each problem belongs: at the very part it names; else at the nearest part around that; else, where only parts within it are
 * on the page, at the first of those.
 */
export function placeProblems<P extends Problem>(
  problems: readonly P[],
  places: readonly Place[],
): Placed<P>[] {
  return problems.map((problem) => ({ problem, place: placeOf(problem.path, places) }));
}

function placeOf(path: string, places: readonly Place[]): number {
  // A row and its only control may have the same path: the control says it nearer.
  const exact = places.findIndex((place) => place.path === path && place.control);
  if (exact >= 0) return exact;
  let around = -1;
  for (const [i, place] of places.entries()) {
    const longest = around < 0 ? -1 : (places[around]?.path.length ?? -1);
    if (isWithin(path, place.path) && place.path.length > longest) around = i;
  }
  const nearest = around < 0 ? '' : (places[around]?.path ?? '');
  const within = places.findIndex((place) => place.control && isWithin(place.path, path));
  // A section around everything says less than the first control of the part itself.
  return within >= 0 && nearest !== path ? within : around;
}

/** `part` lies at or in `whole`. */
export function isWithin(part: string, whole: string): boolean {
  if (whole === '' || part === whole) return true;
  return part.startsWith(whole) && /^[.[]/.test(part.slice(whole.length));
}
