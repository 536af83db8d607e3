import { describe, expect, it } from 'vitest';
import { runCli } from '../../src/cli/run.js';
import { InputError } from '../../src/input-error.js';
import { roomFromTape } from '../../src/room/room-from-tape.js';
import { sampleReport } from '../report/sample-report.js';
import { fakeLibrary, fakeWorld } from './fake-world.js';

const ROOM = '{"outline": [[0, 0], ["6 m", 0], ["6 m", "5 m"], [0, "5 m"]]}';
const SURVEY = `{
  "walls": [{ "length": "6 m" }, { "length": "5 m" }, { "length": "6 m" }, { "length": "5 m" }],
  "diagonals": [{ "from": "A", "to": "C", "length": "7.81 m" }]
}`;
const QUESTION = `{"room": ${ROOM}, "table": "pool-9ft"}`;
const flat = (text: string): string => text.replace(/\s+/g, ' ');

describe('runCli answers', () => {
  it('prints sentences for a whole question, and status 0', async () => {
    const { io, out, err } = fakeWorld({ 'q.json': QUESTION });
    const { library, asked } = fakeLibrary();
    expect(await runCli(['q.json'], io, library)).toBe(0);
    expect(out()).toMatch(/^Yes, but tight: /);
    expect(err()).toBe('');
    expect(asked.at(-1)).toEqual(JSON.parse(QUESTION));
  });

  it.each([
    ['clear', 0],
    ['tight', 0],
    ['partial', 0],
    ['none', 1],
  ] as const)('ends a verdict of %s with status %i', async (verdict, status) => {
    const world = fakeWorld({ 'q.json': QUESTION });
    expect(await runCli(['q.json'], world.io, fakeLibrary({ verdict }).library)).toBe(status);
    expect(await runCli(['--compare', 'q.json'], world.io, fakeLibrary({ verdict }).library)).toBe(status);
  });

  it('takes a bare room with --table, and cues and shots from the flags', async () => {
    const { io } = fakeWorld({ 'room.json': ROOM });
    const { library, asked } = fakeLibrary();
    const args = ['room.json', '--table', 'pool-8ft-home', '--cue', '57in', '--cue=145 cm', '--shots'];
    expect(await runCli(args, io, library)).toBe(0);
    expect(asked.at(-1)).toEqual({
      room: JSON.parse(ROOM),
      table: 'pool-8ft-home',
      cues: ['57in', '145 cm'],
      detail: 'shots',
    });
  });

  it('takes a room by tape readings as it takes others', async () => {
    const tape = JSON.parse(SURVEY);
    const { io } = fakeWorld({ 'room.json': `{"tape": ${SURVEY}}`, 'survey.json': SURVEY });
    const { library, asked, compared } = fakeLibrary();
    for (const file of ['room.json', 'survey.json']) {
      expect(await runCli([file, '--table', 'pool-9ft', '--cue', '57in'], io, library)).toBe(0);
      expect(asked.at(-1)).toEqual({ room: { tape }, table: 'pool-9ft', cues: ['57in'] });
    }
    expect(await runCli(['survey.json', '--compare'], io, library)).toBe(0);
    expect(compared.at(-1)).toEqual({ room: { tape } });
  });

  it('tells the room that readings alone make, in sentences or as JSON', async () => {
    const { io, out, err } = fakeWorld({ 'survey.json': SURVEY });
    expect(await runCli(['survey.json'], io, fakeLibrary().library)).toBe(0);
    expect(out()).toMatch(/^The readings agree/);
    expect(out()).toMatch(/- wall A-B: \d+.mm long, known to \d+.mm/);
    expect(err()).toBe('');
    for (const line of out().split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    const json = fakeWorld({ 'survey.json': SURVEY });
    expect(await runCli(['--json', 'survey.json'], json.io, fakeLibrary().library)).toBe(0);
    expect(JSON.parse(json.out())).toEqual(roomFromTape(JSON.parse(SURVEY)));
  });

  it('asks for a table where cues or shots are asked for with readings alone', async () => {
    for (const flag of ['--cue=57in', '--shots']) {
      const { io, err } = fakeWorld({ 'survey.json': SURVEY });
      expect(await runCli(['survey.json', flag], io, fakeLibrary().library)).toBe(2);
      expect(flat(err())).toContain('survey.json holds the readings of a room and no table.');
    }
  });

  it('tells what is wrong with readings by their paths in the file', async () => {
    const problems = [{ path: 'room.tape.walls[2].length', code: 'missing', message: 'Gone.' }];
    for (const [file, text, path] of [
      ['survey.json', SURVEY, 'walls[2].length'],
      ['room.json', `{"tape": ${SURVEY}}`, 'tape.walls[2].length'],
      ['q.json', `{"room": {"tape": ${SURVEY}}, "table": "pool-9ft"}`, 'room.tape.walls[2].length'],
    ] as const) {
      const { io, err } = fakeWorld({ [file]: text });
      const args = file === 'room.json' ? [file, '--table', 'pool-9ft'] : [file];
      expect(await runCli(args, io, fakeLibrary({ problems }).library)).toBe(2);
      expect(err()).toContain(`- ${path}: Gone.`);
    }
  });

  it('lets a flag go before the file', async () => {
    const { io } = fakeWorld({ 'q.json': QUESTION });
    const { library, asked } = fakeLibrary();
    await runCli(['q.json', '--table', 'pool-8ft-home'], io, library);
    expect(asked.at(-1)).toMatchObject({ table: 'pool-8ft-home' });
  });

  it('draws the plan into a file, and says where it cannot', async () => {
    const { io, out, files } = fakeWorld({ 'q.json': QUESTION });
    expect(await runCli(['q.json', '--svg', 'plan.svg'], io, fakeLibrary().library)).toBe(0);
    expect([...files]).toEqual([['plan.svg', '<svg/>']]);
    expect(out()).toMatch(/^Yes, but tight/);
    const lost = fakeWorld({ 'q.json': QUESTION });
    expect(await runCli(['q.json', '--svg', 'none/plan.svg'], lost.io, fakeLibrary().library)).toBe(2);
    expect(flat(lost.err())).toMatch(/none\/plan.svg cannot be written: there is no such file or folder/);
  });

  it('ends with status 1 where a piece is kept out on the way in', async () => {
    const { io } = fakeWorld({ 'q.json': QUESTION });
    const way = { outcome: 'blocked', certain: true, pieceSet: null, handRoom: 25, pieces: [] } as const;
    const delivery = { ...way, advice: [], cautions: [], assumptions: [] };
    const assess = () => ({ ...sampleReport({ verdict: 'tight' }), delivery });
    expect(await runCli(['q.json'], io, fakeLibrary({ assess }).library)).toBe(1);
  });

  it('prints the report as JSON', async () => {
    const { io, out } = fakeWorld({ 'q.json': QUESTION });
    await runCli(['--json', 'q.json'], io, fakeLibrary().library);
    expect(JSON.parse(out())).toMatchObject({ schema: 'elbowroom/fit-report@1', verdict: 'tight' });
  });

  it('writes lengths in the units asked for', async () => {
    for (const [units, pattern] of [
      ['mm', /x = 0 mm/],
      ['ftin', /Clearance: at least 5 ft 4 in/],
    ] as const) {
      const { io, out } = fakeWorld({ 'q.json': QUESTION });
      await runCli(['q.json', '--units', units], io, fakeLibrary().library);
      expect(out()).toMatch(pattern);
    }
  });

  it('reads standard input with - and where something is piped in', async () => {
    for (const args of [['-'], []]) {
      const { io, out } = fakeWorld({}, { stdin: QUESTION });
      expect(await runCli(args, io, fakeLibrary().library)).toBe(0);
      expect(out()).toContain('tight');
    }
  });

  it('reads UTF-8 with a byte order mark and UTF-16', async () => {
    const utf16 = new Uint8Array([0xff, 0xfe, ...[...QUESTION].flatMap((c) => [c.charCodeAt(0), 0])]);
    for (const file of [`\ufeff${QUESTION}`, utf16]) {
      const { io, out } = fakeWorld({ 'q.json': file });
      expect(await runCli(['q.json'], io, fakeLibrary().library)).toBe(0);
      expect(out()).toContain('tight');
    }
  });

  it('compares the tables given, or leaves the choice to the library', async () => {
    const { io, out } = fakeWorld({ 'room.json': ROOM });
    const { library, compared } = fakeLibrary();
    expect(await runCli(['room.json', '--compare', '--cue', '52in'], io, library)).toBe(0);
    expect(compared.at(-1)).toEqual({ room: JSON.parse(ROOM), cues: ['52in'] });
    expect(out()).toContain('Table pool-8ft-home');
    const args = ['room.json', '--compare', '--table', 'pool-9ft', '--table', 'pool-8ft-home'];
    expect(await runCli(args, io, library)).toBe(0);
    expect(compared.at(-1)).toEqual({ room: JSON.parse(ROOM), tables: ['pool-9ft', 'pool-8ft-home'] });
  });

  it('says that a comparison does not use a pose', async () => {
    const { io, err } = fakeWorld({
      'q.json': `{"room": ${ROOM}, "table": "pool-9ft", "pose": {"x": 0, "y": 0}}`,
    });
    expect(await runCli(['q.json', '--compare'], io, fakeLibrary().library)).toBe(0);
    expect(err()).toContain('pose');
  });

  it('prints help, version and the list of tables, within 80 columns', async () => {
    for (const [args, pattern] of [
      [['--help'], /^Usage: elbowroom/],
      [['-h', 'nowhere.json'], /^Usage: elbowroom/],
      [['--version'], /^1\.2\.3\n$/],
      [['-v'], /^1\.2\.3\n$/],
      [['--tables'], /^pool-8ft-home +2235 mm x 1118 mm +Table pool-8ft-home\n/],
    ] as const) {
      const { io, out, err } = fakeWorld({});
      expect(await runCli(args, io, fakeLibrary().library)).toBe(0);
      expect(out()).toMatch(pattern);
      expect(err()).toBe('');
      for (const line of out().split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    }
  });

  it('names every flag in the help', async () => {
    const { io, out } = fakeWorld({});
    await runCli(['--help'], io, fakeLibrary().library);
    for (const flag of ['table', 'cue', 'compare', 'shots', 'units', 'json', 'tables', 'help', 'version']) {
      expect(out()).toContain(`--${flag}`);
    }
  });
});

describe('runCli shows progress', () => {
  const search = (io: ReturnType<typeof fakeWorld>['io']): Promise<number> =>
    runCli(
      ['q.json'],
      io,
      fakeLibrary({
        assess: (input) => {
          for (const boxes of [100, 5_000, 5_100, 9_000]) {
            expect(input.search?.onProgress?.({ value: 1234, upperBound: 1500, boxes })).toBe(undefined);
          }
          return sampleReport();
        },
      }).library,
    );

  it('on a terminal, of a long search only, and takes it away again', async () => {
    const { io, out, err } = fakeWorld({ 'q.json': QUESTION }, { stderrIsTty: true });
    await search(io);
    expect(err().match(/Searching/g)).toHaveLength(2);
    expect(err()).toContain('123 cm of clearance found, at most 150 cm possible');
    expect(err().endsWith('\r\u001b[K')).toBe(true);
    expect(out()).not.toContain('\u001b');
  });

  it('nowhere else', async () => {
    const { io, err } = fakeWorld({ 'q.json': QUESTION });
    const { library, asked } = fakeLibrary();
    await runCli(['q.json'], io, library);
    expect(asked.at(-1)).not.toHaveProperty('search');
    expect(err()).toBe('');
  });
});

describe('runCli refuses', () => {
  it.each([
    [['--tabel', 'x'], /no flag --tabel; did you mean --table\?/],
    [['--jsn'], /did you mean --json\?/],
    [['--Units', 'cm'], /did you mean --units\?/],
    [['--frobnicate'], /no flag --frobnicate\. |no flag --frobnicate\b(?!;)/],
    [['-x'], /no flag -x/],
    [['--table'], /--table needs a value after it/],
    [['--table', '--json'], /--table needs a value, but "--json" follows/],
    [['--cue='], /--cue needs a value/],
    [['--json=yes'], /--json takes no value/],
    [['--units', 'inches'], /--units is one of mm, cm, ftin, not "inches"/],
    [['--units', 'mm', '--units', 'cm'], /--units is given more than once/],
    [['a.json', 'b.json'], /One file at a time/],
    [['--table', 'a', '--table', 'b', 'q.json'], /add --compare/],
    [['--compare', '--shots', 'q.json'], /leave out --compare/],
    [['--compare', '--svg', 'plan.svg', 'q.json'], /leave out --compare/],
    [['--svg'], /--svg needs a value/],
  ] as const)('the command line %j', async (args, message) => {
    const { io, out, err } = fakeWorld({ 'q.json': QUESTION });
    const { library, asked } = fakeLibrary();
    expect(await runCli(args, io, library)).toBe(2);
    expect(flat(err())).toMatch(message);
    expect(out()).toBe('');
    expect(asked).toEqual([]);
  });

  it.each([
    [{ code: 'ENOENT' }, /there is no such file/],
    [{ code: 'EISDIR' }, /it is a folder/],
    [{ code: 'EACCES' }, /no permission/],
    [{ code: 'EIO' }, /reading it failed \(EIO\)/],
    [new Uint8Array([0x7b, 0xff, 0x7d]), /not text in UTF-8/],
    ['', /is not JSON\. Line 1, column 1: There is nothing in it/],
    ['{\n  "room": [1,]\n}', /Line 2, column 14: The comma before this \] is one too many/],
    ['[1, 2]', /holds a list; it should hold an object/],
    ['"room"', /holds a text/],
    [ROOM, /holds a room and no table\. Add --table/],
  ] as const)('the file %j', async (file, message) => {
    const { io, out, err } = fakeWorld({ 'q.json': file });
    expect(await runCli(['q.json'], io, fakeLibrary().library)).toBe(2);
    expect(flat(err())).toMatch(message);
    expect(err()).toContain('q.json');
    expect(err()).not.toMatch(/\bat .*:\d+:\d+/);
    expect(out()).toBe('');
  });

  it('nothing at all, with the usage', async () => {
    const { io, err } = fakeWorld({});
    expect(await runCli([], io, fakeLibrary().library)).toBe(2);
    expect(err()).toMatch(/^Usage: /);
  });

  it('bad input, with every problem and its path as the person gave it', async () => {
    const problems = [
      { path: 'room.outline[2]', code: 'a', message: 'Crosses itself.' },
      { path: 'room', code: 'b', message: 'No floor.' },
      { path: 'cues[1]', code: 'c', message: 'The cue is short.' },
      { path: 'table', code: 'd', message: 'There is no such table.' },
    ];
    const whole = fakeWorld({ 'q.json': QUESTION });
    expect(await runCli(['q.json'], whole.io, fakeLibrary({ problems }).library)).toBe(2);
    expect(whole.err()).toMatch(/^q\.json cannot be assessed; 4 things are wrong:\n/);
    expect(whole.err()).toContain(
      '- room.outline[2]: Crosses itself.\n- room: No floor.\n- cues[1]: The cue',
    );
    expect(whole.err()).toContain('--tables');

    const bare = fakeWorld({ 'room.json': ROOM });
    const args = ['room.json', '--table', 'pol', '--cue', '57in', '--cue', '5in'];
    expect(await runCli(args, bare.io, fakeLibrary({ problems }).library)).toBe(2);
    expect(bare.err()).toContain(
      '- outline[2]: Crosses itself.\n- No floor.\n- --cue 5in: The cue is short.',
    );
    expect(bare.err()).toContain('- --table: There is no such table.');
    expect(bare.out()).toBe('');
  });

  it('bad input that only the assessment finds', async () => {
    const { io, err } = fakeWorld({ 'q.json': QUESTION });
    const { library } = fakeLibrary({
      assess: () => {
        throw new InputError([{ path: 'pose', code: 'x', message: 'Too far away.' }]);
      },
    });
    expect(await runCli(['q.json'], io, library)).toBe(2);
    expect(err()).toContain('- pose: Too far away.');
  });
});

describe('runCli fails', () => {
  const broken = fakeLibrary({
    assess: () => {
      throw new TypeError('x is not a function');
    },
  }).library;

  it('in a sentence, with status 70 and no stack', async () => {
    const { io, err } = fakeWorld({ 'q.json': QUESTION }, { stderrIsTty: true });
    expect(await runCli(['q.json'], io, broken)).toBe(70);
    expect(flat(err())).toContain('error of its own: x is not a function. Please report it');
    expect(err()).not.toMatch(/\n\s+at /);
  });

  it('with the stack where it is asked for', async () => {
    const { io, err } = fakeWorld({ 'q.json': QUESTION }, { debug: true });
    expect(await runCli(['q.json'], io, broken)).toBe(70);
    expect(err()).toMatch(/\n\s+at /);
  });
});
