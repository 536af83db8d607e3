import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

/**
 * What gives other answers on other engines, in other countries or on other days, and so has no place in src: words and orders
 * by the user's language, the clock, sizes of the stack, and sorting without saying by what. tests/house.test.ts looks for clock
 * and chance as names; this looks for calls.
 */
const SRC = fileURLToPath(new URL('../../src', import.meta.url));

const CALLS = new Set([
  'localeCompare',
  'toLocaleString',
  'toLocaleDateString',
  'toLocaleTimeString',
  'toLocaleLowerCase',
  'toLocaleUpperCase',
  'getTimezoneOffset',
]);
const NAMES = new Set([
  'Intl',
  'Date',
  'Temporal',
  'performance',
  'navigator',
  'WeakRef',
  'FinalizationRegistry',
  'SharedArrayBuffer',
  'Atomics',
]);

/** Sorting by the text of the items, which is the same everywhere, each with what the items are. */
const BY_TEXT: Readonly<Record<string, string>> = {
  'report/plan/plan-furnishings-ways.ts': 'the two ends of a line, as a key',
};

interface Finding {
  readonly file: string;
  readonly what: string;
}

function findings(): Finding[] {
  const found: Finding[] = [];
  for (const entry of readdirSync(SRC, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile() || !entry.name.endsWith('.ts')) continue;
    const full = join(entry.parentPath, entry.name);
    const file = relative(SRC, full).replaceAll('\\', '/');
    if (file === 'cli.ts' || file.startsWith('cli/')) continue;
    const tree = ts.createSourceFile(full, readFileSync(full, 'utf8'), ts.ScriptTarget.ES2022, true);
    const visit = (node: ts.Node): void => {
      if (ts.isPropertyAccessExpression(node) && CALLS.has(node.name.text))
        found.push({ file, what: node.name.text });
      if (
        ts.isIdentifier(node) &&
        NAMES.has(node.text) &&
        (ts.isNewExpression(node.parent) || ts.isPropertyAccessExpression(node.parent)) &&
        node.parent.expression === node
      )
        found.push({ file, what: node.text });
      if (
        ts.isCallExpression(node) &&
        ts.isPropertyAccessExpression(node.expression) &&
        /^(sort|toSorted)$/.test(node.expression.name.text) &&
        node.arguments.length === 0
      )
        found.push({ file, what: 'sort by text' });
      // The order of a for-in loop takes inherited names in.
      if (ts.isForInStatement(node)) found.push({ file, what: 'for in' });
      ts.forEachChild(node, visit);
    };
    visit(tree);
  }
  return found;
}

describe('the sources', () => {
  it('call nothing that depends on the engine, the place or the day', () => {
    const found = findings();
    const known = found.filter(({ file, what }) => what === 'sort by text' && Object.hasOwn(BY_TEXT, file));
    expect(found.filter((one) => !known.includes(one))).toEqual([]);
    expect(new Set(known.map(({ file }) => file))).toEqual(new Set(Object.keys(BY_TEXT)));
  });
});
