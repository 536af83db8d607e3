import type { CompareInput } from '../compare-tables.js';
import type { FitInput } from '../fit-input.js';
import type { InputProblem } from '../input-error.js';
import { plainName } from '../report/sentences.js';
import { wrapText } from '../report/wrap.js';
import { decodeText } from './decode-text.js';
import { describeTables, HELP, USAGE } from './help.js';
import { type CliIo, EXIT, type Library } from './io.js';
import { progressLine } from './progress.js';
import { type Flags, readFlags } from './read-flags.js';
import { pathsAsGiven, type RawQuestion, readQuestion, watched } from './read-question.js';

/** The program: reads the command line and the question, prints the answer and returns the exit status. Never throws. */
export async function runCli(args: readonly string[], io: CliIo, library: Library): Promise<number> {
  try {
    return await run(args, io, library);
  } catch (error) {
    return reportInternal(error, io);
  }
}

async function run(args: readonly string[], io: CliIo, library: Library): Promise<number> {
  const read = readFlags(args);
  if (!read.ok) return refuse(io, `${read.message} (elbowroom --help lists the flags.)`);
  const { flags } = read;
  if (flags.help) return print(io, HELP);
  if (flags.version) return print(io, `${await io.version()}\n`);
  if (flags.listTables) return print(io, describeTables(library.tables));
  if (flags.file === null && !flags.stdin && io.stdinIsTty) {
    io.writeError(USAGE);
    return EXIT.badInput;
  }
  const source = flags.file === null ? 'Standard input' : plainName(flags.file);
  const bytes = await readBytes(flags, io);
  if (typeof bytes === 'string') return refuse(io, `${source} cannot be read: ${bytes}`);
  const decoded = decodeText(bytes);
  if (!decoded.ok) return refuse(io, `${source} cannot be read: ${decoded.message}`);
  const standIn = library.tables[0]?.id ?? null;
  const question = readQuestion(decoded.text, source, flags, standIn);
  if (!question.ok) return refuse(io, question.message);
  if (question.question.surveyOnly) return tellRoom(question.question, source, flags, io, library);
  return flags.compare
    ? compare(question.question, source, flags, io, library)
    : assess(question.question, source, flags, io, library);
}

/** What room the readings make. */
function tellRoom(question: RawQuestion, source: string, flags: Flags, io: CliIo, library: Library): number {
  const { input } = question;
  if (!isFitInput(input, library) || !('tape' in input.room)) {
    return refuseInput(library.checkFitInput(input), question, source, flags, io, library);
  }
  const room = library.roomFromTape(input.room.tape);
  return print(io, flags.json ? asJson(room) : library.describeTapedRoom(room, { units: flags.units }));
}

async function assess(
  question: RawQuestion,
  source: string,
  flags: Flags,
  io: CliIo,
  library: Library,
): Promise<number> {
  const { input } = question;
  if (!isFitInput(input, library)) {
    return refuseInput(library.checkFitInput(input), question, source, flags, io, library);
  }
  const progress = io.stderrIsTty ? progressLine(io.writeError, flags.units) : null;
  const report = answering(progress, library, () =>
    library.assessFit(progress === null ? input : watched(input, progress.onProgress)),
  );
  if ('problems' in report) return refuseInput(report.problems, question, source, flags, io, library);
  print(io, flags.json ? asJson(report) : library.describeFit(report, { units: flags.units }));
  if (flags.svg !== null) {
    const trouble = await draw(flags.svg, library.renderPlan(input, report), io);
    if (trouble !== null) return refuse(io, `${plainName(flags.svg)} cannot be written: ${trouble}`);
  }
  return report.verdict === 'none' || report.delivery?.outcome === 'blocked' ? EXIT.noFit : EXIT.fits;
}

function compare(question: RawQuestion, source: string, flags: Flags, io: CliIo, library: Library): number {
  const asked = flags.tables.length > 0 ? flags.tables : [null];
  // Each table makes a whole question with the rest of the file, so that one check serves both ways to ask.
  const stand = library.tables[0]?.id ?? null;
  const inputs = asked.map((table) => ({ ...question.input, table: table ?? stand }));
  const good: FitInput[] = [];
  for (const [i, input] of inputs.entries()) {
    if (isFitInput(input, library)) good.push(input);
    else {
      const named = { ...flags, tables: asked[i] === null ? [] : flags.tables.slice(i, i + 1) };
      return refuseInput(library.checkFitInput(input), question, source, named, io, library);
    }
  }
  const [first] = good;
  if (first === undefined) return refuse(io, 'There is no table to compare.');
  const progress = io.stderrIsTty ? progressLine(io.writeError, flags.units) : null;
  const { room, cues, stroke, furnishings, arrangement } = first;
  const search = progress === null ? first.search : watched(first, progress.onProgress).search;
  const all: CompareInput = {
    room,
    ...(flags.tables.length > 0 ? { tables: flags.tables } : {}),
    ...(cues === undefined ? {} : { cues }),
    ...(stroke === undefined ? {} : { stroke }),
    ...(search === undefined ? {} : { search }),
    ...(furnishings === undefined ? {} : { furnishings }),
    ...(arrangement === undefined ? {} : { arrangement }),
  };
  const comparison = answering(progress, library, () => library.compareTables(all));
  if ('problems' in comparison) return refuseInput(comparison.problems, question, source, flags, io, library);
  if (first.pose !== undefined) {
    io.writeError('The pose in the question is not used: each table is compared at its best place.\n');
  }
  print(io, flags.json ? asJson(comparison) : library.describeComparison(comparison, { units: flags.units }));
  return comparison.rows.some((row) => row.pose !== null) ? EXIT.fits : EXIT.noFit;
}

/** Writes the drawing; what went wrong, or null. */
async function draw(path: string, svg: string, io: CliIo): Promise<string | null> {
  try {
    await io.writeFile(path, svg);
    return null;
  } catch (error) {
    return fileTrouble(error, 'writing');
  }
}

/** An input without problems is a question: that is what the library's own check says. */
function isFitInput(value: unknown, library: Library): value is FitInput {
  return library.checkFitInput(value).length === 0;
}

/** Works, takes the progress line away, and hands over the problems if the work finds some that the check before it did not. */
function answering<T extends object>(
  progress: { readonly clear: () => void } | null,
  library: Library,
  work: () => T,
): T | { readonly problems: readonly InputProblem[] } {
  try {
    return work();
  } catch (error) {
    if (error instanceof library.InputError) return { problems: error.problems };
    throw error;
  } finally {
    progress?.clear();
  }
}

async function readBytes(flags: Flags, io: CliIo): Promise<Uint8Array | string> {
  try {
    return flags.file === null ? await io.readStdin() : await io.readFile(flags.file);
  } catch (error) {
    return fileTrouble(error, 'reading');
  }
}

const TROUBLES: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder.',
  EISDIR: 'it is a folder; name a file in it.',
  EACCES: 'you have no permission to read it.',
  EPERM: 'you have no permission to read it.',
  ENOTDIR: 'a part of its path is a file, not a folder.',
  ENAMETOOLONG: 'the name is too long.',
};

function fileTrouble(error: unknown, doing: 'reading' | 'writing'): string {
  const code = codeOf(error);
  const known = code === null ? undefined : TROUBLES[code];
  if (known !== undefined) return doing === 'reading' ? known : known.replace('to read it', 'to write it');
  return code === null ? `${doing} it failed.` : `${doing} it failed (${code}).`;
}

function codeOf(error: unknown): string | null {
  if (typeof error !== 'object' || error === null || !('code' in error)) return null;
  return typeof error.code === 'string' ? error.code : null;
}

function refuseInput(
  problems: readonly InputProblem[],
  question: RawQuestion,
  source: string,
  flags: Flags,
  io: CliIo,
  library: Library,
): number {
  const said = pathsAsGiven(problems, question, flags);
  const many = problems.length === 1 ? 'one thing is wrong' : `${problems.length} things are wrong`;
  const lines = wrapText(`${source} cannot be assessed; ${many}:`);
  for (const { path, message } of said) {
    lines.push(...wrapText(plainName(path === '' ? message : `${path}: ${message}`), '- ', '  '));
  }
  if (problems.some((p) => p.path === 'table') && library.tables.length > 0) {
    lines.push('elbowroom --tables lists the tables by their ids.');
  }
  io.writeError(`${lines.join('\n')}\n`);
  return EXIT.badInput;
}

function refuse(io: CliIo, message: string): number {
  io.writeError(`${wrapText(plainName(message)).join('\n')}\n`);
  return EXIT.badInput;
}

function print(io: CliIo, text: string): number {
  io.writeOut(text);
  return EXIT.fits;
}

function asJson(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}

function reportInternal(error: unknown, io: CliIo): number {
  const what = error instanceof Error ? error.message : String(error);
  const message =
    `elbowroom stopped on an error of its own: ${what || 'no message'}. Please report it, with the input that led to it. ` +
    'Setting ELBOWROOM_DEBUG=1 prints where it happened.';
  io.writeError(`${wrapText(plainName(message)).join('\n')}\n`);
  if (io.debug && error instanceof Error && error.stack !== undefined) io.writeError(`${error.stack}\n`);
  return EXIT.internal;
}
