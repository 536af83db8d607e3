/** The guide to the catalogues, written from them, so that no figure is told twice. */
import { BALLS } from '../../src/equipment/balls.js';
import { CUES } from '../../src/equipment/cues.js';
import { FURNISHINGS } from '../../src/equipment/furnishings.js';
import { TABLES } from '../../src/equipment/tables.js';

const by = ({ length, width }: { length: number; width: number }): string => `${length} x ${width}`;

const table = (head: readonly string[], rows: readonly (readonly (string | number)[])[]): string =>
  [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');

const sources = (entries: readonly { readonly id: string; readonly source: string }[]): string =>
  entries.map(({ id, source }) => `- \`${id}\`: ${source}`).join('\n');

/** docs/guides/tables-and-cues.md */
export function cataloguePage(): string {
  const tables = Object.entries(TABLES).map(([id, spec]) => ({ ...spec, id }));
  const games = [...new Set(tables.map(({ game }) => game))];
  const cues = Object.values(CUES);
  const pieces = Object.entries(FURNISHINGS).map(([id, piece]) => ({ ...piece, id }));
  const balls = Object.entries(BALLS).map(([id, ball]) => ({ ...ball, id }));
  return `# Tables and cues

Every figure of the catalogues with its source. The page is written from the code (\`npx tsx tests/docs/write-figures.ts\`), so it says
what the library reckons with. All lengths are millimetres, masses kilograms.

What counts is the **play field**, from nose to nose. The feet in a name are a label: the same label is used for fields that differ by
a hand's breadth, and where that is so there are several entries. When in doubt measure, and give the measurements:

\`\`\`ts
import { assessFit, TABLES } from 'elbowroom';

const room = { outline: [[0, 0], [6000, 0], [6000, 5000], [0, 5000]] } as const;
const known = assessFit({ room, table: 'pool-9ft' });
const measured = assessFit({
  room,
  table: { name: 'the old table', field: { length: '254 cm', width: '127 cm' }, outer: { length: '2.80 m', width: '1.53 m' } },
});
console.log(TABLES['pool-9ft'].field.length, known.verdict === measured.verdict); // 2540 true
\`\`\`

## Tables

A mass may be the least that a federation asks for; a dash: not known.

${games
  .map(
    (game) => `### ${game.charAt(0).toUpperCase()}${game.slice(1)}

${table(
  ['id', 'name', 'play field', 'outside', 'bed', 'nose', 'rail', 'ball', 'usual cue', 'mass'],
  tables
    .filter((t) => t.game === game)
    .map((t) => [
      `\`${t.id}\``,
      t.name,
      by(t.field),
      by(t.outer),
      t.bedHeight,
      t.noseHeight,
      t.railHeight,
      t.ballDiameter,
      t.usualCue,
      t.mass ?? '-',
    ]),
)}

${sources(tables.filter((t) => t.game === game))}`,
  )
  .join('\n\n')}

## Cues

${table(
  ['id', 'name', 'length', 'tip', 'butt'],
  cues.map((c) => [`\`${c.id}\``, c.name, c.length, 2 * c.tipRadius, 2 * c.buttRadius]),
)}

${sources(cues)}

## Balls

${table(
  ['id', 'name', 'diameter'],
  balls.map((b) => [`\`${b.id}\``, b.name, b.diameter]),
)}

${sources(balls)}

## Other pieces

What may stand in the room beside the table. Few of these have a published size: where the source says \`common practice, no source\`, measure your own. The
zone is the floor that people need to use the piece: so far beyond its footprint to the front, back, left and right.

${table(
  ['kind', 'name', 'along its back x deep', 'heights', 'stands', 'zones'],
  pieces.map((p) => [
    `\`${p.id}\``,
    p.name,
    by(p),
    `${p.from} to ${p.to}`,
    p.stand,
    p.zones
      .map(({ name, front, back, left, right }) => `${name}: ${[front, back, left, right].join(', ')}`)
      .join('; ') || '-',
  ]),
)}

${sources(pieces)}
`;
}
