/** Every word of the probe. A translation is another object of the same shape. */
export interface ProbeStrings {
  readonly heading: string;
  /** That nothing here changes the answer above. */
  readonly note: string;
  /** Instead of everything else, where the report has no place for the table. */
  readonly noPlace: string;
  /** Beside the plan: how to point and which keys there are. */
  readonly howTo: string;
  readonly keys: string;
  readonly planLabel: string;
  readonly planTitle: string;
  readonly elevationTitle: string;
  readonly elevationLabel: string;

  readonly ballX: string;
  readonly ballY: string;
  readonly direction: string;
  readonly numbersLegend: string;
  readonly numbersHelp: string;
  /** Beside the arrow that shows which way along the table is. */
  readonly axis: string;

  readonly classes: Readonly<Record<'open' | 'cramped' | 'blocked', string>>;
  /** One sentence on each class. */
  readonly classMeans: Readonly<Record<'open' | 'cramped' | 'blocked', string>>;
  readonly facts: {
    readonly elevation: string;
    readonly rail: string;
    readonly meets: string;
    readonly clears: string;
    readonly distance: string;
    readonly player: string;
  };
  readonly degrees: (degrees: number) => string;
  readonly millimetres: (length: number) => string;
  readonly noElevation: string;
  readonly nothing: string;
  readonly stands: string;
  readonly noStanding: string;
  /** From the ball to what the line of the cue comes to first, and from the butt as it is drawn back, negative: so much is missing. */
  readonly distanceTo: (length: number, name: string, spare: number) => string;
  readonly over: (name: string) => string;
  readonly under: (name: string) => string;
  readonly shortOf: (name: string) => string;
  /** What a screen reader hears when the shot has changed. */
  readonly summary: (shot: SpokenShot) => string;

  readonly slidersHeading: string;
  readonly slidersNote: string;
  readonly cueLength: string;
  readonly backswing: string;
  readonly margin: string;
  readonly reset: string;
  readonly atReport: string;
  readonly changed: string;
  readonly mapTitle: string;
  readonly mapLabel: string;
  readonly sharesLabel: string;
  /** `error` in percent; 0: proved. */
  readonly share: (percent: number, error: number) => string;
  readonly coarse: (shots: number) => string;
  readonly refining: (shots: number) => string;
  readonly fine: (shots: number) => string;
  /** The map and the shares are those of the answer above; no shots: they are proved. */
  readonly asAbove: (shots: number) => string;
  readonly progressLabel: string;
  readonly keyHeading: string;
  readonly key: Readonly<
    Record<'crampedSome' | 'crampedMany' | 'blockedSome' | 'blockedMany' | 'open', string>
  >;
  readonly planKey: Readonly<Record<'cue' | 'backswing' | 'player' | 'window' | 'met', string>>;
  readonly failed: (message: string) => string;
}

/** A shot and its answer in numbers: mm and degrees. */
export interface SpokenShot {
  readonly class: 'open' | 'cramped' | 'blocked';
  readonly x: number;
  readonly y: number;
  readonly direction: number;
  readonly elevation: number | null;
  readonly meets: readonly string[];
  readonly canStand: boolean;
}

const WHOLE = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 0 });
const TENTHS = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 1 });
const HUNDREDTHS = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 2 });

const list = (names: readonly string[]): string => new Intl.ListFormat('en-GB').format(names);
/** With a space that no line breaks at. */
const mm = (length: number): string => `${WHOLE.format(length)}\u00a0mm`;
const degrees = (value: number): string => `${TENTHS.format(value)}°`;
const CLASSES = { open: 'Open', cramped: 'Cramped', blocked: 'Blocked' } as const;

export const ENGLISH: ProbeStrings = {
  heading: 'Try one shot',
  note: 'For looking only: nothing here changes the room, the place of the table or the answer above, which holds for the input as written.',
  noPlace: 'The table has no place in this room, so there is no shot to try.',
  howTo:
    'Press on the cloth to lay the ball there, and draw away from it to point the butt of the cue; a press beside the cloth turns the cue too.',
  keys: 'Keys on the plan: arrows move the ball (with Shift 100 mm, else 10 mm), plus and minus turn the cue by 1°, Page Up and Page Down by 15°, Home lays the ball in the middle.',
  planLabel: 'Plan of the table with one shot',
  planTitle: 'Plan',
  elevationTitle: 'From the side',
  elevationLabel: 'Side elevation of the shot',

  numbersLegend: 'The shot in numbers',
  numbersHelp:
    'From the middle of the field, along the arrow +x and to its left; angles anticlockwise from +x.',
  axis: '+x',
  ballX: 'Ball along the table, mm',
  ballY: 'Ball across the table, mm',
  direction: 'From ball to butt, degrees',

  classes: CLASSES,
  classMeans: {
    open: 'Full backswing, the cue no more raised than the cushion asks.',
    cramped: 'Only with the short backswing, or with the cue raised.',
    blocked: 'No stroke goes here.',
  },
  facts: {
    elevation: 'Least elevation of the cue',
    rail: 'The rail alone asks for',
    meets: 'Forbids the open stroke',
    clears: 'The cue clears',
    distance: 'First on the cue’s line',
    player: 'Player',
  },
  degrees,
  millimetres: mm,
  noElevation: 'none will do',
  nothing: 'nothing',
  stands: 'has room to stand',
  noStanding: 'has no room to stand',
  distanceTo: (length, name, spare) =>
    `${name}, ${mm(length)} from the ball: ${spare < 0 ? `${mm(-spare)} short of the drawn-back cue` : `${mm(spare)} behind the drawn-back cue`}`,
  over: (name) => `${name} (passes over)`,
  under: (name) => `${name} (passes under)`,
  shortOf: (name) => `${name} (stops short)`,
  summary: ({ class: kind, x, y, direction, elevation, meets, canStand }) =>
    `${CLASSES[kind]}. Ball ${WHOLE.format(x)} along and ${WHOLE.format(y)} across, cue towards ${degrees(direction)}. ` +
    (elevation === null ? 'No elevation will do. ' : `Least elevation ${degrees(elevation)}. `) +
    (meets.length > 0 ? `The open stroke is forbidden by ${list(meets)}. ` : '') +
    (canStand ? 'There is room to stand.' : 'There is no room to stand.'),

  slidersHeading: 'Try another cue or stroke',
  slidersNote:
    'The shares are of all shots on the table where it stands: every place of the ball and every direction counts alike.',
  cueLength: 'Cue length',
  backswing: 'Backswing',
  margin: 'Margin around the cue',
  reset: 'Back to the input as written',
  atReport: 'As in the input.',
  changed: 'Not the input as written: the answer above is for that.',
  mapTitle: 'Where on the field shots are cramped or blocked',
  mapLabel: 'Map of the field: where shots are cramped or blocked',
  sharesLabel: 'Shares of all shots',
  share: (percent, error) =>
    error === 0
      ? `${HUNDREDTHS.format(percent)} %`
      : `${HUNDREDTHS.format(percent)} % ± ${HUNDREDTHS.format(error)} %`,
  coarse: (shots) => `Coarse: ${WHOLE.format(shots)} shots.`,
  refining: (shots) => `${WHOLE.format(shots)} shots so far, more are being tried.`,
  fine: (shots) => `Fine: ${WHOLE.format(shots)} shots.`,
  asAbove: (shots) =>
    shots === 0
      ? 'As in the answer above, which is proved.'
      : `As in the answer above: ${WHOLE.format(shots)} shots.`,
  progressLabel: 'Refining the map',
  keyHeading: 'Key',
  key: {
    open: 'Every shot open',
    crampedSome: 'Some cramped, none blocked',
    crampedMany: 'A quarter or more cramped, none blocked',
    blockedSome: 'Some blocked',
    blockedMany: 'A quarter or more blocked',
  },
  planKey: {
    cue: 'Cue as the ball is struck',
    backswing: 'Its backswing',
    player: 'Floor that the player needs',
    window: 'Where the player’s middle may be',
    met: 'Forbids the open stroke',
  },
  failed: (message) => `The shot cannot be shown: ${message}`,
};
