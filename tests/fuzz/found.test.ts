import { describe, expect, it } from 'vitest';
import {
  assessDelivery,
  assessFit,
  type CompareInput,
  checkFitInput,
  checkRoom,
  classifyShot,
  compareTables,
  describeFit,
  type FitInput,
  formatLength,
  InputError,
  parseLength,
  renderPlan,
  renderShot,
  roomFromTape,
} from '../../src/index.js';
import { checkCue, checkStroke } from '../../src/stroke/index.js';

/** Defects that the fuzz found in the reading of a stranger's input, each with the least input that showed it. */
const room = {
  outline: [
    [0, 0],
    [4000, 0],
    [4000, 3000],
    [0, 3000],
  ],
} satisfies FitInput['room'];
const good: FitInput = { room, table: 'pool-7ft-bar', pose: { x: 2000, y: 1500 } };

function trap(): never {
  throw new TypeError('A trap.');
}

const proxies: readonly (readonly [string, () => unknown])[] = [
  [
    'throws at everything',
    () =>
      new Proxy(
        {},
        { get: trap, has: trap, ownKeys: trap, getPrototypeOf: trap, getOwnPropertyDescriptor: trap },
      ),
  ],
  [
    'was revoked',
    () => {
      const { proxy, revoke } = Proxy.revocable({}, {});
      revoke();
      return proxy;
    },
  ],
  ['is a list and throws', () => new Proxy([[0, 0]], { get: trap, getOwnPropertyDescriptor: trap })],
];

/** Calls what takes checked types with what does not keep to them. */
function refusal(call: (...values: never[]) => unknown, ...values: unknown[]): readonly string[] {
  try {
    Reflect.apply(call, undefined, values);
  } catch (error) {
    if (error instanceof InputError) return error.problems.map(({ path, code }) => `${code} @ ${path}`);
    throw error;
  }
  return [];
}

describe('found by fuzz: input that throws when it is looked at', () => {
  const doors: readonly (readonly [string, (value: unknown) => readonly string[]])[] = [
    ['assessFit', (value) => refusal(assessFit, value)],
    ['a room of assessFit', (value) => refusal(assessFit, { ...good, room: value })],
    ['an outline of assessFit', (value) => refusal(assessFit, { ...good, room: { outline: value } })],
    ['a piece of assessFit', (value) => refusal(assessFit, { ...good, furnishings: [value] })],
    ['checkFitInput', (value) => checkFitInput(value).map(({ path, code }) => `${code} @ ${path}`)],
    ['checkRoom', (value) => refusal(checkRoom, value)],
    ['compareTables', (value) => refusal(compareTables, value)],
    ['classifyShot', (value) => refusal(classifyShot, value)],
    ['roomFromTape', (value) => refusal(roomFromTape, value)],
    ['assessDelivery', (value) => refusal(assessDelivery, value)],
    ['a table of assessDelivery', (value) => refusal(assessDelivery, { route: [] }, value)],
    ['options of renderPlan', (value) => refusal(renderPlan, good, assessFit(good), value)],
    ['the sheet of renderPlan', (value) => refusal(renderPlan, good, assessFit(good), { sheet: value })],
    ['a report of renderPlan', (value) => refusal(renderPlan, good, value)],
    ['a shot of renderShot', (value) => refusal(renderShot, good, assessFit(good), value)],
    ['checkStroke', (value) => refusal(checkStroke, value, 57)],
    [
      'checkCue',
      (value) => refusal(checkCue, value, { usualCue: 1450, ballDiameter: 57, id: null, game: 'any' }),
    ],
  ];

  it.each(doors)('is refused by %s', (_, call) => {
    for (const [, make] of proxies) expect(call(make())).not.toEqual([]);
  });

  it('is told from an error that comes from elsewhere', () => {
    const stop = (): never => {
      throw new RangeError('Of the caller.');
    };
    expect(() => assessFit({ room, table: 'pool-7ft-bar', search: { onProgress: stop } })).toThrow(
      RangeError,
    );
  });

  it('does not hide behind an item of a list', () => {
    let asked = 0;
    const point = Object.defineProperty([0, 0], 0, {
      enumerable: true,
      get: () => {
        asked++;
        return 0;
      },
    });
    const codes = checkFitInput({ ...good, room: { outline: [point, [4000, 0], [4000, 3000]] } });
    expect(codes.map(({ path, code }) => `${code} @ ${path}`)).toEqual([
      'not-plain-data @ room.outline[0][0]',
    ]);
    expect(asked).toBe(0);
  });
});

describe('found by fuzz: input without end', () => {
  it('gives endless keys and many of them few words', () => {
    const keys = Object.fromEntries(Array.from({ length: 50_000 }, (_, i) => [`key ${i}`, i]));
    const many = checkFitInput({ ...good, ...keys });
    expect(many).toHaveLength(21);
    expect(many.at(-1)?.message).toBe('There are 49980 more properties here that are not known.');
    const [long] = checkFitInput({ ...good, ['k'.repeat(1_000_000)]: 1 });
    expect(long?.path.length).toBeLessThan(50);
    expect(long?.message.length).toBeLessThan(250);
    const [big] = checkFitInput({ ...good, pose: { x: 0, y: 0, turn: 10n ** 100_000n } });
    expect(big?.message.length).toBeLessThan(250);
  });

  it('returns from a list of tables that claims to be long', () => {
    const tables: CompareInput['tables'] = Object.assign([], { length: 4e9 });
    expect(refusal(compareTables, { room, tables })).toEqual(['too-many @ tables']);
  });
});

describe('found by fuzz: rooms far out', () => {
  it('are told in words, too', () => {
    const far = room.outline.map(([x, y]) => [x, y + 5e9] as const);
    const input: FitInput = { ...good, room: { outline: far }, pose: { x: 2000, y: 5e9 + 1500 } };
    expect(describeFit(assessFit(input), { units: 'mm' })).toMatch(/y = 5000001500\smm/);
    expect(() => describeFit(assessFit(input), { units: 'ftin' })).not.toThrow();
  });
});

describe('found by fuzz: poses where doubles tell nothing', () => {
  it('are refused: a shot 1e200 mm from the room was open', () => {
    const ball = { x: 0, y: 0 };
    for (const x of [1e11, -1e200, Number.MAX_VALUE]) {
      const codes = refusal(classifyShot, { ...good, pose: { x, y: 0 }, ball, direction: 0 });
      expect(codes).toEqual([x > 0 ? 'too-large @ pose.x' : 'too-small @ pose.x']);
      expect(refusal(assessFit, { ...good, pose: { x: 0, y: x } })).toHaveLength(1);
    }
  });
});

describe('found by fuzz: other types than the declared ones', () => {
  it('are refused by compareTables', () => {
    expect(refusal(compareTables, null)).toEqual(['not-an-object @ ']);
    expect(refusal(compareTables, { room, tables: 'pool-9ft' })).toEqual(['not-a-list @ tables']);
    expect(refusal(compareTables, { room, tables: ['pool-9ft'], pose: good.pose })).toEqual([
      'unknown-property @ pose',
    ]);
    expect(refusal(compareTables, { room, tables: [undefined, 'nonsense'] })).toEqual([
      'missing @ tables[0]',
      'unknown-table @ tables[1]',
    ]);
  });

  it('are refused by parseLength and formatLength', () => {
    for (const value of [5, null, undefined, 10n, Symbol('2 m'), ['2 m'], { length: 3 }])
      expect(refusal(parseLength, value)).toEqual(['not-text @ ']);
    for (const value of ['1', null, undefined, 10n, Symbol('2'), {}])
      expect(refusal(formatLength, value, 'mm')).toEqual(['not-a-number @ ']);
    for (const unit of ['inch', null, undefined, 'constructor', '__proto__', Symbol('mm')])
      expect(refusal(formatLength, 5, unit)).toEqual(['unknown-unit @ unit']);
    expect(refusal(formatLength, 5, 'mm', null)).toEqual(['not-an-object @ options']);
    expect(refusal(formatLength, 5, 'mm', { decimals: Symbol('1') })).toEqual([
      'out-of-range @ options.decimals',
    ]);
    expect(refusal(formatLength, 5, 'in', { denominator: 10n })).toEqual([
      'out-of-range @ options.denominator',
    ]);
  });
});
