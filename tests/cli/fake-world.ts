import type { CliIo, Library } from '../../src/cli/io.js';
import type { CompareInput } from '../../src/compare-tables.js';
import type { FitInput } from '../../src/fit-input.js';
import { InputError, type InputProblem } from '../../src/input-error.js';
import { describeComparison } from '../../src/report/describe-comparison.js';
import { describeFit } from '../../src/report/describe-fit.js';
import { describeTapedRoom } from '../../src/report/describe-room.js';
import type { FitReport, Verdict } from '../../src/report/fit-report.js';
import { roomFromTape } from '../../src/room/room-from-tape.js';
import { SAMPLE_CUE, SAMPLE_TABLE, sampleReport } from '../report/sample-report.js';

/** A world that the program writes to, kept as text. */
export interface FakeWorld {
  readonly io: CliIo;
  readonly out: () => string;
  readonly err: () => string;
  /** Files that were written, by their paths. */
  readonly files: ReadonlyMap<string, string>;
}

/** A file's text or bytes, or the code of the error that reading it ends in. */
export type FakeFile = string | Uint8Array | { readonly code: string };

export function fakeWorld(
  files: Readonly<Record<string, FakeFile>>,
  options: { readonly stdin?: FakeFile; readonly stderrIsTty?: boolean; readonly debug?: boolean } = {},
): FakeWorld {
  const written = { out: '', err: '' };
  const saved = new Map<string, string>();
  const read = async (file: FakeFile | undefined): Promise<Uint8Array> => {
    if (file === undefined) throw Object.assign(new Error('gone'), { code: 'ENOENT' });
    if (typeof file === 'string') return new TextEncoder().encode(file);
    if (file instanceof Uint8Array) return file;
    throw Object.assign(new Error('trouble'), { code: file.code });
  };
  return {
    io: {
      readFile: (path) => read(files[path]),
      writeFile: async (path, text) => {
        if (path.includes('/')) throw Object.assign(new Error('gone'), { code: 'ENOENT' });
        saved.set(path, text);
      },
      readStdin: () => read(options.stdin),
      stdinIsTty: options.stdin === undefined,
      stderrIsTty: options.stderrIsTty ?? false,
      writeOut: (text) => {
        written.out += text;
      },
      writeError: (text) => {
        written.err += text;
      },
      version: async () => '1.2.3',
      debug: options.debug ?? false,
    },
    out: () => written.out,
    err: () => written.err,
    files: saved,
  };
}

/** A library that remembers what it was asked and answers with a made-up report. */
export interface FakeLibrary {
  readonly library: Library;
  readonly asked: unknown[];
  readonly compared: CompareInput[];
}

export function fakeLibrary(
  options: {
    readonly verdict?: Verdict;
    readonly problems?: readonly InputProblem[];
    readonly assess?: (input: FitInput) => FitReport;
  } = {},
): FakeLibrary {
  const asked: unknown[] = [];
  const compared: CompareInput[] = [];
  const verdict = options.verdict ?? 'tight';
  const tables = ['pool-8ft-home', 'pool-9ft'].map((id) => ({ ...SAMPLE_TABLE, id, name: `Table ${id}` }));
  const pose = verdict === 'none' ? null : { x: 0, y: 0, turn: 0 };
  const { clearance } = sampleReport();
  return {
    asked,
    compared,
    library: {
      assessFit: (input) => {
        asked.push(input);
        return options.assess?.(input) ?? sampleReport({ verdict, pose });
      },
      compareTables: (question) => {
        compared.push(question);
        return {
          schema: 'elbowroom/comparison@1',
          rows: tables.map((table) => ({
            table,
            pose,
            clearance,
            cues: [{ ...SAMPLE_CUE, verdict }],
            longestCue: 1400,
          })),
        };
      },
      checkFitInput: (input) => {
        asked.push(input);
        return options.problems ?? [];
      },
      renderPlan: () => '<svg/>',
      describeFit,
      roomFromTape,
      describeTapedRoom,
      describeComparison,
      InputError,
      tables,
    },
  };
}
