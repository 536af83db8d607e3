import type { ComparisonRow, FitInput, FitReport, InputProblem, TableInput } from 'elbowroom';

/** What the page asks its worker. Plain data, as messages have to be. */
export type Job =
  | { readonly kind: 'fit'; readonly input: FitInput }
  | {
      readonly kind: 'compare';
      readonly input: FitInput;
      readonly tables: readonly (string | TableInput)[];
    };

/** How far a search is. */
export type Step =
  | { readonly kind: 'searching'; readonly value: number; readonly upperBound: number }
  | {
      readonly kind: 'arranging';
      readonly layouts: number;
      readonly effort: number;
      readonly placed: number;
    };

/** What the worker answers: steps or rows first, then one of the others. */
export type Reply =
  | { readonly kind: 'step'; readonly step: Step }
  | { readonly kind: 'row'; readonly row: ComparisonRow }
  | { readonly kind: 'report'; readonly report: FitReport }
  | { readonly kind: 'compared' }
  | { readonly kind: 'refused'; readonly problems: readonly InputProblem[] }
  | { readonly kind: 'failed'; readonly message: string };
