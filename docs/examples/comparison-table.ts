/** Which tables go into one room, as a table of text: what an adviser wants to see before the talk about colours. */
import { compareTables, formatLength } from 'elbowroom';

const { rows } = compareTables({
  room: {
    outline: [
      ['0 m', '0 m'],
      ['5.6 m', '0 m'],
      ['5.6 m', '4.4 m'],
      ['0 m', '4.4 m'],
    ],
    obstacles: [
      {
        name: 'the stove',
        footprint: { center: ['5.3 m', '4.1 m'], length: '60 cm', width: '60 cm', turn: 0 },
        to: '1.1 m',
      },
    ],
  },
  tables: ['pool-9ft', 'pool-8ft-home', 'pool-7ft-bar', 'english-6ft', 'snooker-12ft'],
  cues: ['57 in', '52 in', '48 in'],
});

const lines = rows.map(({ table, cues, longestCue }) => [
  table.name,
  ...cues.map(({ verdict, certain }) => (certain ? verdict : `${verdict}?`)),
  longestCue > 0 ? formatLength(Math.floor(longestCue), 'cm') : '-',
]);
const head = ['Table', '57 in', '52 in', '48 in', 'longest cue'];
const widths = head.map((_, i) => Math.max(...[head, ...lines].map((line) => (line[i] ?? '').length)));
for (const line of [head, ...lines])
  console.log(
    line
      .map((cell, i) => cell.padEnd(widths[i] ?? 0))
      .join('  ')
      .trimEnd(),
  );
