import type { TableSpec } from '../equipment/equipment-types.js';
import { formatLength } from '../length/format-length.js';
import { columnsOf, padTo, wrapText } from '../report/wrap.js';

/** What `--help` prints. */
export const HELP = `Usage: elbowroom [options] [file.json]

Says whether a pool, snooker or carom table goes into a room and whether people
can play on it there. The file holds a room (with "outline", or with "tape" for
tape readings), together with --table, or a whole question (with "room", "table"
and more, such as "delivery" for the way in and "furnishings" for other pieces
in the room). Without a file, or with -, the JSON is read from standard input.

A file of tape readings alone (with "walls", "diagonals" and more) and no table
is answered with the room that they make: its corners, how surely each wall is
known, which reading is probably wrong and what to measure next.

Options:
  --table ID       the table, instead of the one in the file
  --cue LENGTH     a cue, such as 57in or "145 cm"; may be given again, the
                   wanted one first
  --compare        compare tables: each --table given, or a list of usual ones
  --shots          add a map of the shots over the play field
  --svg FILE       draw the plan to scale into this file, as SVG
  --units UNITS    lengths in mm, cm (default) or ftin (feet and inches)
  --json           print the report as JSON
  --tables         list the tables that --table knows
  -h, --help       print this text
  -v, --version    print the version

Exit status:
  0   the table can stand in the room (clear, tight or partial); with --compare:
      some table can; for readings alone: they make a room
  1   it cannot stand there, or a piece of it is kept out on the way in; with
      --compare: none can stand
  2   the file or the command line is wrong
  70  an error of the program itself; set ELBOWROOM_DEBUG=1 for details
`;

/** What is printed when neither a file nor anything on standard input is given. */
export const USAGE = 'Usage: elbowroom [options] [file.json]; elbowroom --help says more.\n';

/** The catalogue as text: id, play field and name, one table a line. */
export function describeTables(tables: readonly TableSpec[]): string {
  const rows = tables.map((table) => {
    const { length, width } = table.field;
    return [
      table.id ?? '',
      `${formatLength(length, 'mm')} x ${formatLength(width, 'mm')}`,
      table.name,
    ] as const;
  });
  const widest = (column: 0 | 1): number => Math.max(0, ...rows.map((row) => columnsOf(row[column])));
  const [ids, fields] = [widest(0), widest(1)];
  const lines = rows.flatMap(([id, field, name]) => {
    const start = `${padTo(id, ids)}  ${padTo(field, fields, 'start')}  `;
    return wrapText(name, start, ' '.repeat(columnsOf(start)));
  });
  return `${lines.join('\n')}\n`;
}
