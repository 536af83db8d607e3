import { parseArgs } from 'node:util';
import { editDistance } from '../equipment/edit-distance.js';
import type { SentenceUnits } from '../report/sentences.js';

/** The command line, read and checked. */
export interface Flags {
  /** A path, or null for standard input. */
  readonly file: string | null;
  /** True: `-` was given, so standard input is wanted. */
  readonly stdin: boolean;
  readonly json: boolean;
  readonly units: SentenceUnits;
  readonly tables: readonly string[];
  readonly cues: readonly string[];
  readonly compare: boolean;
  readonly shots: boolean;
  /** Where the plan is to be drawn to, or null. */
  readonly svg: string | null;
  readonly listTables: boolean;
  readonly help: boolean;
  readonly version: boolean;
}

/** Flags, or a sentence that says what is wrong with the command line. */
export type FlagsRead =
  | { readonly ok: true; readonly flags: Flags }
  | { readonly ok: false; readonly message: string };

const OPTIONS = {
  json: { type: 'boolean' },
  units: { type: 'string' },
  table: { type: 'string', multiple: true },
  cue: { type: 'string', multiple: true },
  compare: { type: 'boolean' },
  shots: { type: 'boolean' },
  svg: { type: 'string' },
  tables: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
  version: { type: 'boolean', short: 'v' },
} as const;
type OptionName = keyof typeof OPTIONS;
const UNITS: readonly SentenceUnits[] = ['mm', 'cm', 'ftin'];

/** Reads the words after the program's name. */
export function readFlags(args: readonly string[]): FlagsRead {
  // Not strict: the messages of the strict mode change between versions of Node and name no nearest flag.
  const { tokens } = parseArgs({
    args: [...args],
    options: OPTIONS,
    strict: false,
    tokens: true,
    allowPositionals: true,
  });
  const given = new Map<OptionName, string[]>();
  const files: string[] = [];
  for (const token of tokens) {
    if (token.kind === 'positional') files.push(token.value);
    if (token.kind !== 'option') continue;
    if (!isOption(token.name)) return refuse(unknownFlag(token.rawName));
    const option = OPTIONS[token.name];
    const values = given.get(token.name) ?? [];
    if (option.type === 'boolean') {
      if (token.value !== undefined)
        return refuse(`${token.rawName} takes no value, but was given "${token.value}".`);
      values.push('');
    } else {
      const { value } = token;
      if (value === undefined || value.trim() === '')
        return refuse(`${token.rawName} needs a value after it.`);
      if (token.inlineValue === false && value.startsWith('-')) {
        return refuse(`${token.rawName} needs a value, but "${value}" follows it.`);
      }
      if (!('multiple' in option) && values.length > 0)
        return refuse(`${token.rawName} is given more than once.`);
      values.push(value);
    }
    given.set(token.name, values);
  }
  const [file, second] = files;
  if (second !== undefined) return refuse(`One file at a time: both "${file}" and "${second}" are given.`);
  const units = given.get('units')?.[0] ?? 'cm';
  const known = UNITS.find((unit) => unit === units);
  if (known === undefined) return refuse(`--units is one of ${UNITS.join(', ')}, not "${units}".`);
  const tables = given.get('table') ?? [];
  const compare = given.has('compare');
  if (tables.length > 1 && !compare)
    return refuse('--table is given more than once; add --compare to compare tables.');
  if (compare && given.has('shots')) return refuse('--shots goes with one table; leave out --compare.');
  if (compare && given.has('svg')) return refuse('--svg draws one table; leave out --compare.');
  return {
    ok: true,
    flags: {
      file: file === undefined || file === '-' ? null : file,
      stdin: file === '-',
      json: given.has('json'),
      units: known,
      tables,
      cues: given.get('cue') ?? [],
      compare,
      shots: given.has('shots'),
      svg: given.get('svg')?.[0] ?? null,
      listTables: given.has('tables'),
      help: given.has('help'),
      version: given.has('version'),
    },
  };
}

function refuse(message: string): FlagsRead {
  return { ok: false, message };
}

function isOption(name: string): name is OptionName {
  return Object.hasOwn(OPTIONS, name);
}

function unknownFlag(rawName: string): string {
  const nearest = nearestName(rawName.replace(/^-+/, ''), Object.keys(OPTIONS));
  return `There is no flag ${rawName}${nearest === null ? '' : `; did you mean --${nearest}?`}`;
}

/** The name that takes the fewest changed letters, if they are at most a third of it (two at least); null otherwise. */
export function nearestName(wanted: string, names: readonly string[]): string | null {
  let best: string | null = null;
  let least = Infinity;
  for (const name of names) {
    const changes = editDistance(wanted.toLowerCase(), name.toLowerCase());
    if (changes < least) {
      least = changes;
      best = name;
    }
  }
  return best !== null && least <= Math.max(2, best.length / 3) ? best : null;
}
