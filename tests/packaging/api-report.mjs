// The public surface as text, from the built declarations: `npm run api` writes docs/api/, `npm run api-check` (in CI) compares
// what is written there with what was built. A change of the surface is then a line in a diff that someone has read. Comments, the
// names of chunks and the order of exports do not show; a declaration reads as it does in the .d.ts file.
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import ts from 'typescript';

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const FOLDER = join(ROOT, 'docs/api');
const write = process.argv.includes('--write');
const manifest = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));

const entries = Object.entries(manifest.exports)
  .filter(([key]) => key !== './package.json')
  .map(([key, { import: esm }]) => ({
    name: manifest.name + key.slice(1),
    report: `${key === '.' ? 'index' : key.slice(2).replaceAll('/', '-')}.api.txt`,
    types: join(ROOT, esm.types),
    code: join(ROOT, esm.default),
  }));

const missing = entries.flatMap(({ types, code }) => [types, code]).filter((path) => !existsSync(path));
if (missing.length > 0) stop(`Not built: ${missing.join(', ')}. Run 'npm run build' first.`);

const program = ts.createProgram(
  entries.map(({ types }) => types),
  {
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    lib: ['lib.es2023.d.ts'],
    types: [],
    strict: true,
    noEmit: true,
  },
);
const checker = program.getTypeChecker();
const printer = ts.createPrinter({ removeComments: true, newLine: ts.NewLineKind.LineFeed });

/** Declared thing -> where and under which name it can be imported first. */
const owners = new Map();
for (const entry of entries) {
  const symbols = exportedSymbols(entry);
  entry.exports = new Map(symbols.map((symbol) => [symbol.name, resolved(symbol)]));
  entry.typesOnly = new Set(symbols.filter(isTypeOnly).map((symbol) => symbol.name));
  for (const [name, symbol] of entry.exports) {
    if (!owners.has(symbol)) owners.set(symbol, { entry, name });
  }
}

const reports = new Map(entries.map((entry) => [entry.report, reportOf(entry)]));
for (const entry of entries) await compareWithCode(entry);
if (write) writeReports();
else compareReports();

/** The exports of an entry point as it names them, sorted by name. */
function exportedSymbols({ types }) {
  const module = checker.getSymbolAtLocation(program.getSourceFile(types));
  if (module === undefined) stop(`${types} is no module.`);
  return checker.getExportsOfModule(module).sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** Exported as a type though it is a value as well, such as a class that only the library makes. */
function isTypeOnly(symbol) {
  for (let step = symbol; step !== undefined; step = next(step)) {
    if (step.declarations?.some((node) => ts.isTypeOnlyImportOrExportDeclaration(node))) return true;
  }
  return false;
}

/** The symbol that an import or a re-export stands for. */
function next(symbol) {
  return isAlias(symbol) ? checker.getImmediateAliasedSymbol(symbol) : undefined;
}

function isAlias(symbol) {
  return (symbol.flags & ts.SymbolFlags.Alias) !== 0;
}

function reportOf(entry) {
  const own = [];
  const elsewhere = [];
  const hidden = new Set();
  for (const [name, symbol] of entry.exports) {
    const owner = owners.get(symbol);
    if (owner.entry === entry && owner.name === name) own.push(declarationOf(symbol, name, hidden));
    else elsewhere.push(`${name}: ${owner.name} of ${owner.entry.name}`);
  }
  // What is reached from there, and from that again. A Set may grow while it is walked.
  const reached = [];
  for (const symbol of hidden) reached.push(declarationOf(symbol, plainName(symbol), hidden));
  const parts = [`The public surface of ${entry.name}. Written by 'npm run api'; do not edit.`, ...own];
  if (elsewhere.length > 0) parts.push(['The same as', ...elsewhere].join('\n  '));
  if (reached.length > 0) parts.push('Part of the above, but not exported by itself:', ...reached.sort());
  return `${parts.join('\n\n')}\n`;
}

/** All declarations of a symbol under its public name; what it mentions and nobody exports is added to `hidden`. */
function declarationOf(symbol, name, hidden) {
  return symbol.declarations.map((node) => printed(node, symbol, name, hidden)).join('\n');
}

function printed(node, symbol, name, hidden) {
  const rename = (context) => {
    const visit = (child) => {
      if (!ts.isIdentifier(child)) return ts.visitEachChild(child, visit, context);
      const meant = meantBy(child);
      if (meant === symbol) return ts.factory.createIdentifier(name);
      if (meant === undefined || !isOurs(meant)) return child;
      const owner = owners.get(meant);
      if (owner === undefined) hidden.add(meant);
      return ts.factory.createIdentifier(owner?.name ?? plainName(meant));
    };
    return (root) => ts.visitNode(root, visit);
  };
  const { transformed } = ts.transform(node, [rename]);
  const text = printer.printNode(ts.EmitHint.Unspecified, transformed[0], node.getSourceFile());
  const whole = ts.isVariableDeclaration(node)
    ? `const ${text};`
    : text.replace(/^(export |declare |default )+/, '');
  return whole.replace(/ {4}/g, '  ').trimEnd();
}

/** The top-level thing that an identifier stands for, through imports and re-exports; undefined for names of members. */
function meantBy(identifier) {
  const symbol = checker.getSymbolAtLocation(identifier);
  return symbol === undefined ? undefined : resolved(symbol);
}

/** Declared at the top level of one of our declaration files: neither the language's own nor a member, a parameter, a type variable. */
function isOurs(symbol) {
  const [declaration] = symbol.declarations ?? [];
  if (declaration === undefined || program.isSourceFileDefaultLibrary(declaration.getSourceFile()))
    return false;
  const holder = ts.isVariableDeclaration(declaration) ? declaration.parent.parent : declaration;
  return ts.isSourceFile(holder.parent);
}

function resolved(symbol) {
  return isAlias(symbol) ? checker.getAliasedSymbol(symbol) : symbol;
}

/** Its name as the sources have it: a bundler of declarations numbers those that occur twice. */
function plainName(symbol) {
  return symbol.name.replace(/\$\d+$/, '');
}

/** What the declarations promise as values must be there when the program runs, and the other way round. */
async function compareWithCode({ name, exports, typesOnly, code }) {
  const promised = [...exports]
    .filter(([exported, symbol]) => (symbol.flags & ts.SymbolFlags.Value) !== 0 && !typesOnly.has(exported))
    .map(([exported]) => exported);
  const there = Object.keys(await import(pathToFileURL(code).href));
  const unkept = promised.filter((exported) => !there.includes(exported));
  const undeclared = there.filter((exported) => !promised.includes(exported));
  if (unkept.length > 0) stop(`${name} declares, but does not have: ${unkept.join(', ')}`);
  if (undeclared.length > 0) stop(`${name} has, but does not declare: ${undeclared.join(', ')}`);
}

function writeReports() {
  mkdirSync(FOLDER, { recursive: true });
  for (const [file, text] of reports) writeFileSync(join(FOLDER, file), text);
  console.log(`${reports.size} reports written to docs/api/.`);
  tellOrphans();
}

function compareReports() {
  for (const [file, fresh] of reports) {
    const path = join(FOLDER, file);
    const kept = existsSync(path) ? readFileSync(path, 'utf8') : '';
    if (kept === fresh) continue;
    console.log(`docs/api/${file} is not what was built:\n${difference(kept, fresh)}`);
    process.exitCode = 1;
  }
  tellOrphans();
  if (process.exitCode === 1) console.log("If the change is meant, run 'npm run api' and commit docs/api/.");
  else console.log(`The public surface is the one in docs/api/: ${entries.map(counted).join(', ')}.`);
}

function counted({ name, exports }) {
  return `${name} ${exports.size} names`;
}

function tellOrphans() {
  const orphans = readdirSync(FOLDER).filter((file) => file.endsWith('.api.txt') && !reports.has(file));
  if (orphans.length === 0) return;
  console.log(`docs/api/ has reports of no entry point: ${orphans.join(', ')}.`);
  process.exitCode = 1;
}

/** Lines that one text has and the other has not; enough to see what changed. */
function difference(kept, fresh) {
  const lines = { kept: kept.split('\n'), fresh: fresh.split('\n') };
  const known = { kept: new Set(lines.kept), fresh: new Set(lines.fresh) };
  const gone = lines.kept.filter((line) => !known.fresh.has(line)).map((line) => `- ${line}`);
  const come = lines.fresh.filter((line) => !known.kept.has(line)).map((line) => `+ ${line}`);
  const told = [...gone, ...come];
  return (told.length === 0 ? ['the same lines in another order'] : told.slice(0, 60)).join('\n');
}

function stop(message) {
  console.error(message);
  process.exit(1);
}
