// Where maps lead: what a debugger or an editor opens must be in the package.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { SourceMap } from 'node:module';
import { dirname, join, posix } from 'node:path';
import ts from 'typescript';

/** Checks that every source which the maps with this ending name is shipped; the number of maps. */
export function mapsToShipped(installed, ending) {
  const dist = join(installed, 'dist');
  const maps = readdirSync(dist).filter((name) => name.endsWith(ending));
  const dead = maps.flatMap((name) => {
    const { sources, sourceRoot = '' } = JSON.parse(readFileSync(join(dist, name), 'utf8'));
    return sources
      .map((source) => posix.normalize(posix.join('dist', sourceRoot, source)))
      .filter((source) => !source.startsWith('src/') || !existsSync(join(installed, source)))
      .map((source) => `${name} names ${source}`);
  });
  if (dead.length > 0) throw new Error(dead.join('\n'));
  if (maps.length === 0) throw new Error(`No ${ending} at all.`);
  return maps.length;
}

/** Files with this ending that name no map beside them. */
export function withoutMap(installed, ending) {
  const dist = join(installed, 'dist');
  return readdirSync(dist)
    .filter((name) => name.endsWith(ending) && name !== 'cli.js')
    .filter((name) => {
      const [, map] = /\/\/# sourceMappingURL=(.+)\s*$/.exec(readFileSync(join(dist, name), 'utf8')) ?? [];
      return map === undefined || !existsSync(join(dist, map));
    });
}

/**
 * Where the names of a program lead in an editor ("go to definition"): to a declaration, and by its map to the sources. `program`
 * is lines of `import { name } from '...'`, one name each; for each the path inside the package and the word that stands there.
 */
export function definitions(project, packageName, program) {
  const file = join(project, 'definitions.mts');
  writeFileSync(file, program);
  const service = ts.createLanguageService({
    ...ts.sys,
    useCaseSensitiveFileNames: () => ts.sys.useCaseSensitiveFileNames,
    getScriptFileNames: () => [file],
    getScriptVersion: () => '1',
    getScriptSnapshot: (path) => ts.ScriptSnapshot.fromString(readFileSync(path, 'utf8')),
    getCurrentDirectory: () => project,
    getCompilationSettings: () => ({
      module: ts.ModuleKind.NodeNext,
      moduleResolution: ts.ModuleResolutionKind.NodeNext,
      types: [],
    }),
    getDefaultLibFileName: ts.getDefaultLibFilePath,
  });
  const { statements } = service.getProgram().getSourceFile(file);
  return statements.map((statement) => {
    const line = statement.getText();
    const [{ name }] = statement.importClause.namedBindings.elements;
    const [found] = service.getDefinitionAtPosition(file, name.getStart()) ?? [];
    if (found === undefined) return { line, path: null, word: '' };
    const { path, at } = mappedBack(found.fileName, found.textSpan.start);
    const word = /^[\w$]*/.exec(
      readFileSync(path, 'utf8').split('\n')[at.line]?.slice(at.character) ?? '',
    )[0];
    return { line, path: path.split(`node_modules/${packageName}/`).at(-1), word };
  });
}

/** What a map makes of a place in a declaration file; the place itself where there is none. */
function mappedBack(declarations, start) {
  const text = readFileSync(declarations, 'utf8');
  const at = ts.getLineAndCharacterOfPosition(
    ts.createSourceFile(declarations, text, ts.ScriptTarget.ES2022),
    start,
  );
  const map = `${declarations}.map`;
  if (!existsSync(map)) return { path: declarations, at };
  const payload = JSON.parse(readFileSync(map, 'utf8'));
  const entry = new SourceMap(payload).findEntry(at.line, at.character);
  const exact = entry.generatedLine === at.line && entry.generatedColumn === at.character;
  if (!exact) return { path: declarations, at };
  return {
    path: join(dirname(declarations), entry.originalSource),
    at: { line: entry.originalLine, character: entry.originalColumn },
  };
}
