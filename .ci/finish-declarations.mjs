// The last step of `npm run build`, for what the bundler of declarations leaves undone:
//
// - A class that an entry point exports as a type alone comes out as if it could be called. Such a name gets its `type` back, since
//   a program that used it would compile and then fail.
// - It writes no maps. Each declaration file gets one here, so that "go to definition" leads to the sources, which are shipped.
//   A declaration is found in src/ by its name and its members; names inside it are then met in parallel. What is not certain is
//   not mapped.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import ts from 'typescript';

const DIST = resolve('dist');
const SRC = resolve('src');
/** Parts of a declaration that stand in one of the two files alone. */
const ONE_SIDED = new Set([
  ts.SyntaxKind.Block,
  ts.SyntaxKind.ExportKeyword,
  ts.SyntaxKind.DeclareKeyword,
  ts.SyntaxKind.AsyncKeyword,
]);

const sources = sourceDeclarations();
const files = readdirSync(DIST).filter((name) => /\.d\.c?ts$/.test(name));
let declared = 0;
let mapped = 0;
for (const name of files) {
  const path = join(DIST, name);
  const text = await withTypesAlone(
    name,
    readFileSync(path, 'utf8').replace(/\n\/\/# sourceMappingURL=.*\n$/, ''),
  );
  const map = mapOf(name, text);
  writeFileSync(path, `${text}\n//# sourceMappingURL=${name}.map\n`);
  writeFileSync(`${path}.map`, JSON.stringify(map));
}
console.log(
  `${files.length} declaration files finished; ${mapped} of ${declared} declarations lead to src/.`,
);
// The bundler merges or renames a few at the most. Fewer than this, and the search above no longer understands what it writes.
if (mapped < 0.95 * declared) process.exitCode = 1;

/** The declarations of an entry point with `type` before the exports that the code beside them does not have. */
async function withTypesAlone(name, text) {
  const code = join(DIST, name.replace(/\.d\.(c?)ts$/, '.$1js'));
  if (!existsSync(code)) return text;
  const values = new Set(Object.keys(await import(pathToFileURL(code).href)));
  return text.replace(/^export \{[^}]*\}(?= from|;)/gm, (list) =>
    list.replace(/(?<=[{,] )(?!type )(?:([\w$]+) as )?([\w$]+)(?=,| \})/g, (specifier, _local, exported) =>
      values.has(exported) ? specifier : `type ${specifier}`,
    ),
  );
}

/** Name -> top-level declarations of that name in src/. */
function sourceDeclarations() {
  const found = new Map();
  const names = readdirSync(SRC, { recursive: true }).filter((name) => name.endsWith('.ts'));
  for (const path of names.sort()) {
    for (const declaration of topLevel(parse(join(SRC, path)))) {
      const name = declaration.name.text;
      found.set(name, [...(found.get(name) ?? []), declaration]);
    }
  }
  return found;
}

function parse(path, text = readFileSync(path, 'utf8')) {
  return ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true);
}

function topLevel(file) {
  return file.statements
    .flatMap((node) => (ts.isVariableStatement(node) ? [...node.declarationList.declarations] : [node]))
    .filter((node) => node.name !== undefined && ts.isIdentifier(node.name));
}

function mapOf(name, text) {
  const file = parse(join(DIST, name), text);
  /** Pairs of the same name, here and in src/. */
  const pairs = [];
  for (const declaration of topLevel(file)) {
    declared++;
    const origin = originOf(declaration);
    if (origin === undefined) continue;
    mapped++;
    pairs.push([declaration.name, origin.name], ...pairsInside(declaration, origin));
  }
  const paths = [...new Set(pairs.map(([, there]) => there.getSourceFile().fileName))].sort();
  return {
    version: 3,
    file: name,
    sources: paths.map((path) => relative(DIST, path).replaceAll('\\', '/')),
    names: [],
    mappings: encode(
      pairs.map(([here, there]) => ({
        ...placeOf(here),
        source: paths.indexOf(there.getSourceFile().fileName),
        there: placeOf(there),
      })),
    ),
  };
}

/** The declaration in src/ that was bundled; where several have its name, the one that has its members too. */
function originOf(declaration) {
  const name = declaration.name.text.replace(/\$\d+$/, '');
  const candidates = (sources.get(name) ?? []).filter((there) => there.kind === declaration.kind);
  if (candidates.length < 2) return candidates[0];
  const alike = candidates.filter((there) => shape(there) === shape(declaration));
  return alike.length === 1 ? alike[0] : undefined;
}

/** What a declaration says, without comments, bodies and line breaks. */
function shape(declaration) {
  const words = [];
  const read = (node) => {
    if (ONE_SIDED.has(node.kind)) return;
    if (node.getChildCount() === 0) words.push(node.getText());
    else for (const child of node.getChildren()) if (!ts.isJSDoc(child)) read(child);
  };
  if (ts.isVariableDeclaration(declaration)) read(declaration.type ?? declaration.name);
  else
    for (const child of declaration.getChildren())
      if (child !== declaration.name && !ts.isJSDoc(child)) read(child);
  return words.filter((word) => !/^[;,|]?$/.test(word)).join(' ');
}

/** Goes through two declarations side by side, as far as they agree. Members are met by their names, since a class shows fewer of them. */
function pairsInside(here, there) {
  const pairs = [];
  const [inner, outer] = [partsOf(here), partsOf(there)];
  for (const [i, part] of inner.entries()) {
    const other = isMember(part)
      ? outer.find((o) => o.kind === part.kind && o.name?.getText() === part.name.getText())
      : outer[i];
    if (other === undefined || other.kind !== part.kind) continue;
    if (ts.isIdentifier(part)) {
      if (part !== here.name && part.text === other.text) pairs.push([part, other]);
    } else pairs.push(...(isMember(part) ? [[part.name, other.name]] : []), ...pairsInside(part, other));
  }
  return pairs;
}

function isMember(node) {
  return (ts.isClassElement(node) || ts.isTypeElement(node)) && node.name !== undefined;
}

function partsOf(node) {
  const parts = [];
  ts.forEachChild(node, (child) => {
    if (!ONE_SIDED.has(child.kind)) parts.push(child);
  });
  return parts;
}

function placeOf(node) {
  return node.getSourceFile().getLineAndCharacterOfPosition(node.getStart());
}

/** Mappings as source map v3 writes them: lines by `;`, segments by `,`, each number against the one before it. */
function encode(segments) {
  const sorted = segments.toSorted((a, b) => a.line - b.line || a.character - b.character);
  let text = '';
  let line = 0;
  let before = [0, 0, 0, 0];
  for (const { source, there, ...here } of sorted) {
    if (here.line > line) {
      text += ';'.repeat(here.line - line);
      line = here.line;
      before = [0, ...before.slice(1)];
    } else if (text !== '') text += ',';
    const now = [here.character, source, there.line, there.character];
    text += now.map((value, i) => digits(value - before[i])).join('');
    before = now;
  }
  return text;
}

/** A signed number in base 64, five bits a digit, the lowest first; the sign is the lowest bit. */
function digits(value) {
  const BASE64 = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
  let rest = value < 0 ? (-value << 1) | 1 : value << 1;
  let text = '';
  do {
    const more = rest > 31 ? 32 : 0;
    text += BASE64[(rest & 31) | more];
    rest >>>= 5;
  } while (rest > 0);
  return text;
}
