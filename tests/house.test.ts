import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

/**
 * The rules of the house (DEVELOPERS.md, "How the house is laid out"), read off the source itself. An exception is written
 * here with its reason, never by loosening a rule.
 */

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '..');
const SRC = join(ROOT, 'src');

/** From the ground up: a folder may use its own files and those of folders before it. */
const FLOORS = [
  'length',
  'geometry',
  'equipment',
  'room',
  'stroke',
  'placement',
  'arrangement',
  'delivery',
  'report',
];

/** The program: `cli.ts` and its folder. It calls the front door as a stranger does, and Node. Nobody uses it. */
const isProgram = (path: string) => path === 'cli.ts' || path.startsWith('cli/');

/**
 * What the program may call besides. Those that the front door does not export become a copy inside the program, so they must
 * be plain functions: a copied error class would not be the one that the library throws.
 */
const PROGRAM_HELPERS: Readonly<Record<string, string>> = {
  'equipment/edit-distance.ts': 'the known word nearest to a misspelt one',
  'length/format-length.ts': 'lengths as text',
  'report/sentences.ts': 'words and numbers as the report writes them',
  'report/wrap.ts': 'text in columns',
};

/** Top-level files that a floor may use: each is plain data and imports only what lies below that floor. */
const LOBBY: Readonly<Record<string, string>> = {
  'input-error.ts': 'the one error of bad input',
};

/** Packages that may be imported at all, and the one file that may. */
const PACKAGE_DOORS: Readonly<Record<string, string>> = {
  '@flatten-js/core': 'geometry/measure.ts',
  'polygon-clipping': 'geometry/regions.ts',
  'robust-predicates': 'geometry/predicates.ts',
};

const MAX_LINES = 350;
/** Longer files, each with the reason why it is still one idea. */
const LONG_FILES: Readonly<Record<string, string>> = {};

/** Casts other than `as const`, as `file: cast`, each with the reason why the compiler cannot see it. */
const CASTS: Readonly<Record<string, string>> = {};

/** Numbers that happen to be both a figure of the trade and something else, as `file: number`, each with what it is there. */
const SAME_NUMBER: Readonly<Record<string, string>> = {};

interface SourceFile {
  /** Path below src, with forward slashes. */
  readonly path: string;
  readonly tree: ts.SourceFile;
  readonly imports: readonly Import[];
}

interface Import {
  readonly name: string;
  /** Nothing of it is left when the program runs. */
  readonly typesOnly: boolean;
}

const files = readSources();
const byPath = new Map(files.map((file) => [file.path, file]));

describe('the rules of the house', () => {
  it('finds the sources', () => {
    expect(files.length).toBeGreaterThan(20);
    expect(byPath.has('index.ts')).toBe(true);
  });

  it('knows every folder of src', () => {
    const folders = new Set(files.filter((f) => f.path.includes('/')).map((f) => floorOf(f.path)));
    expect([...folders].filter((folder) => !FLOORS.includes(folder) && folder !== 'cli')).toEqual([]);
  });

  it('imports only from the same floor and from floors below', () => {
    const broken: string[] = [];
    for (const { file, target } of inner()) {
      const from = floorOf(file.path);
      const to = floorOf(target);
      if (isProgram(file.path) || from === '' || from === to) continue;
      const lobby = to === '' && Object.hasOwn(LOBBY, target);
      if (!lobby && (to === '' || FLOORS.indexOf(to) > FLOORS.indexOf(from))) {
        broken.push(`${file.path} imports ${target}`);
      }
    }
    expect(broken).toEqual([]);
  });

  it('keeps the lobby free of everything above it', () => {
    const broken = inner()
      .filter(({ file, target }) => Object.hasOwn(LOBBY, file.path) && floorOf(target) === '')
      .map(({ file, target }) => `${file.path} imports ${target}`);
    expect(broken).toEqual([]);
  });

  it('imports by relative path with the extension, and only what exists', () => {
    const broken = files.flatMap((file) =>
      names(file)
        .filter((name) => name.startsWith('.'))
        .filter((name) => !name.endsWith('.js') || !byPath.has(targetOf(file.path, name)))
        .map((name) => `${file.path} imports ${name}`),
    );
    expect(broken).toEqual([]);
  });

  it('imports from the file that holds a thing, not from a front door', () => {
    const broken = inner()
      .filter(({ target }) => posix.basename(target) === 'index.ts')
      .filter(({ file, target }) => !(isProgram(file.path) && target === 'index.ts'))
      .map(({ file, target }) => `${file.path} imports ${target}`);
    expect(broken).toEqual([]);
  });

  it('has no import cycle, types included', () => {
    expect(findCycle()).toEqual([]);
  });

  it('lets each package in by one door', () => {
    const broken = files.flatMap((file) =>
      names(file)
        .filter((name) => !name.startsWith('.') && !(isProgram(file.path) && name.startsWith('node:')))
        .filter((name) => PACKAGE_DOORS[name] !== file.path)
        .map((name) => `${file.path} imports ${name}`),
    );
    expect(broken).toEqual([]);
  });

  it('lets the program call the front door, and nobody call the program', () => {
    const mayCall = (path: string) =>
      isProgram(path) || path === 'index.ts' || Object.hasOwn(PROGRAM_HELPERS, path);
    const broken = inner()
      .filter(({ file, target, typesOnly }) =>
        isProgram(file.path) ? !typesOnly && !mayCall(target) : isProgram(target),
      )
      .map(({ file, target }) => `${file.path} imports ${target}`);
    expect(broken).toEqual([]);
    expect(byPath.has('cli.ts')).toBe(true);
  });

  it('has no any, no cast in doubt, no non-null assertion and no silenced check', () => {
    const broken: string[] = [];
    for (const file of files) {
      walk(file.tree, (node) => {
        const where = `${file.path}:${lineOf(file.tree, node)}`;
        if (node.kind === ts.SyntaxKind.AnyKeyword) broken.push(`${where} any`);
        if (ts.isNonNullExpression(node)) broken.push(`${where} non-null assertion`);
        if (ts.isTypeAssertionExpression(node)) broken.push(`${where} cast`);
        if (ts.isAsExpression(node) && node.type.getText(file.tree) !== 'const') {
          const cast = `${file.path}: as ${node.type.getText(file.tree)}`;
          if (!Object.hasOwn(CASTS, cast)) broken.push(`${where} ${cast}`);
        }
      });
      const comment =
        /@ts-(ignore|expect-error|nocheck)|biome-ignore|eslint-disable|v8 ignore|TODO|FIXME/.exec(
          file.tree.text,
        );
      if (comment !== null) broken.push(`${file.path} ${comment[0]}`);
    }
    expect(broken).toEqual([]);
  });

  it('is pure outside the program: no input or output, no clock, no chance, no state that outlives a call', () => {
    const outside =
      /^(console|process|globalThis|window|document|Date|performance|setTimeout|setInterval|fetch|crypto|require|eval)$/;
    const buffer = /^(Float(32|64)|Big(Int|Uint)64|(Int|Uint)(8|16|32)|Uint8Clamped)Array$|^Array$/;
    const broken: string[] = [];
    for (const file of files) {
      if (isProgram(file.path)) continue;
      const own = declaredNames(file);
      walk(file.tree, (node) => {
        const where = `${file.path}:${lineOf(file.tree, node)}`;
        if (ts.isIdentifier(node) && outside.test(node.text) && !own.has(node.text) && isFreeName(node))
          broken.push(`${where} ${node.text}`);
        if (ts.isPropertyAccessExpression(node) && node.getText(file.tree) === 'Math.random') {
          broken.push(`${where} Math.random`);
        }
      });
      for (const statement of file.tree.statements) {
        if (!ts.isVariableStatement(statement)) continue;
        const where = `${file.path}:${lineOf(file.tree, statement)}`;
        if ((statement.declarationList.flags & ts.NodeFlags.Const) === 0)
          broken.push(`${where} variable of the module`);
        for (const { initializer } of statement.declarationList.declarations) {
          if (
            initializer !== undefined &&
            ts.isNewExpression(initializer) &&
            buffer.test(initializer.expression.getText(file.tree))
          ) {
            broken.push(`${where} buffer of the module`);
          }
        }
      }
    }
    expect(broken).toEqual([]);
  });

  it('keeps files short, or says why not', () => {
    const long = files.filter((f) => lineCount(f) > MAX_LINES && !Object.hasOwn(LONG_FILES, f.path));
    expect(long.map((f) => `${f.path}: ${lineCount(f)} lines`)).toEqual([]);
  });

  it('keeps the numbers of the trade in equipment/', () => {
    const trade = new Set<number>();
    for (const file of files)
      if (floorOf(file.path) === 'equipment') for (const { value } of numbers(file)) trade.add(value);
    expect(trade.has(57.15)).toBe(true);
    const broken: string[] = [];
    for (const file of files) {
      if (floorOf(file.path) === 'equipment') continue;
      for (const { value, where } of numbers(file)) {
        if (trade.has(value) && !Object.hasOwn(SAME_NUMBER, `${file.path}: ${value}`))
          broken.push(`${where} ${value}`);
      }
    }
    expect(broken).toEqual([]);
  });

  it('has no exception that nothing needs any more', () => {
    const casts = new Set<string>();
    const used = new Set<string>();
    for (const file of files) {
      walk(file.tree, (node) => {
        if (ts.isAsExpression(node)) casts.add(`${file.path}: as ${node.type.getText(file.tree)}`);
      });
      for (const { value } of numbers(file)) used.add(`${file.path}: ${value}`);
    }
    const stale = [
      ...Object.keys(LONG_FILES).filter((path) => {
        const file = byPath.get(path);
        return file === undefined || lineCount(file) <= MAX_LINES;
      }),
      ...Object.keys(CASTS).filter((cast) => !casts.has(cast)),
      ...Object.keys(SAME_NUMBER).filter((number) => !used.has(number)),
      ...[...Object.keys(LOBBY), ...Object.keys(PROGRAM_HELPERS)].filter((path) => !byPath.has(path)),
      ...Object.values(PACKAGE_DOORS).filter((path) => !byPath.has(path)),
    ];
    expect(stale).toEqual([]);
  });
});

function readSources(): SourceFile[] {
  return readdirSync(SRC, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
    .map((entry) => {
      const full = join(entry.parentPath, entry.name);
      const tree = ts.createSourceFile(full, readFileSync(full, 'utf8'), ts.ScriptTarget.ES2022, true);
      return { path: relative(SRC, full).replaceAll('\\', '/'), tree, imports: importsOf(tree) };
    })
    .sort((a, b) => (a.path < b.path ? -1 : 1));
}

/** Every module named in an import, a re-export, an import type or a dynamic import. */
function importsOf(tree: ts.SourceFile): Import[] {
  const found: Import[] = [];
  walk(tree, (node) => {
    if (ts.isImportDeclaration(node) && ts.isStringLiteral(node.moduleSpecifier)) {
      found.push({ name: node.moduleSpecifier.text, typesOnly: importsTypes(node.importClause) });
    } else if (
      ts.isExportDeclaration(node) &&
      node.moduleSpecifier !== undefined &&
      ts.isStringLiteral(node.moduleSpecifier)
    ) {
      found.push({ name: node.moduleSpecifier.text, typesOnly: node.isTypeOnly });
    } else if (
      ts.isImportTypeNode(node) &&
      ts.isLiteralTypeNode(node.argument) &&
      ts.isStringLiteral(node.argument.literal)
    ) {
      found.push({ name: node.argument.literal.text, typesOnly: true });
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      const [argument] = node.arguments;
      const literal = argument !== undefined && ts.isStringLiteral(argument);
      found.push({ name: literal ? argument.text : 'a name computed at run time', typesOnly: false });
    }
  });
  return found;
}

function importsTypes(clause: ts.ImportClause | undefined): boolean {
  if (clause === undefined) return false;
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const named = clause.namedBindings;
  return (
    clause.name === undefined &&
    named !== undefined &&
    ts.isNamedImports(named) &&
    named.elements.every((element) => element.isTypeOnly)
  );
}

function names(file: SourceFile): string[] {
  return file.imports.map(({ name }) => name);
}

/** Imports of one of our files by another. */
function inner(): { file: SourceFile; target: string; typesOnly: boolean }[] {
  return files.flatMap((file) =>
    file.imports
      .filter(({ name }) => name.startsWith('.'))
      .map(({ name, typesOnly }) => ({ file, target: targetOf(file.path, name), typesOnly })),
  );
}

function targetOf(path: string, name: string): string {
  return posix.join(posix.dirname(path), name).replace(/\.js$/, '.ts');
}

/** The folder of a file below src; empty for a file at the top. */
function floorOf(path: string): string {
  return path.includes('/') ? path.slice(0, path.indexOf('/')) : '';
}

/** The files of one import cycle, in order; empty when there is none. */
function findCycle(): string[] {
  const done = new Set<string>();
  const trail: string[] = [];
  const visit = (path: string): string[] => {
    if (done.has(path)) return [];
    const seen = trail.indexOf(path);
    if (seen >= 0) return [...trail.slice(seen), path];
    trail.push(path);
    const file = byPath.get(path);
    for (const { name } of file?.imports ?? []) {
      if (!name.startsWith('.')) continue;
      const cycle = visit(targetOf(path, name));
      if (cycle.length > 0) return cycle;
    }
    trail.pop();
    done.add(path);
    return [];
  };
  for (const { path } of files) {
    const cycle = visit(path);
    if (cycle.length > 0) return cycle;
  }
  return [];
}

/** Numbers that are a measurement by their look: three or more significant digits. */
function numbers(file: SourceFile): { value: number; where: string }[] {
  const found: { value: number; where: string }[] = [];
  walk(file.tree, (node) => {
    if (!ts.isNumericLiteral(node)) return;
    const value = Number(node.text);
    const digits = value
      .toExponential()
      .replace(/e.*$/, '')
      .replace(/[^0-9]/g, '');
    if (digits.length >= 3) found.push({ value, where: `${file.path}:${lineOf(file.tree, node)}` });
  });
  return found;
}

/** Names of variables, parameters, functions and imports of a file, which are not those of the world outside. */
function declaredNames(file: SourceFile): ReadonlySet<string> {
  const names = new Set<string>();
  walk(file.tree, (node) => {
    if (
      (ts.isVariableDeclaration(node) ||
        ts.isParameter(node) ||
        ts.isBindingElement(node) ||
        ts.isFunctionDeclaration(node) ||
        ts.isImportSpecifier(node)) &&
      node.name !== undefined &&
      ts.isIdentifier(node.name)
    ) {
      names.add(node.name.text);
    }
  });
  return names;
}

/** A name that stands for itself, not a property, a member, a key or a part of a type. */
function isFreeName(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  if (ts.isPropertyAssignment(parent)) return parent.initializer === node;
  return (
    !ts.isClassElement(parent) &&
    !ts.isTypeElement(parent) &&
    !ts.isBindingElement(parent) &&
    !ts.isTypeReferenceNode(parent)
  );
}

function walk(node: ts.Node, visit: (node: ts.Node) => void): void {
  visit(node);
  ts.forEachChild(node, (child) => walk(child, visit));
}

function lineOf(tree: ts.SourceFile, node: ts.Node): number {
  return tree.getLineAndCharacterOfPosition(node.getStart(tree)).line + 1;
}

function lineCount(file: SourceFile): number {
  return file.tree.text.split('\n').length - 1;
}
