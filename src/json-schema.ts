/** A JSON Schema as plain data: the keywords that are read most often, and any other. */
export interface JsonSchema {
  readonly description?: string;
  readonly default?: unknown;
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly $defs?: Readonly<Record<string, JsonSchema>>;
  readonly [keyword: string]: unknown;
}
