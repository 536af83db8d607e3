import type { DeliveryInput } from '../../src/delivery/delivery-input.js';
import { type CheckedDelivery, readDelivery } from '../../src/delivery/read-delivery.js';
import type { TableSpec } from '../../src/equipment/equipment-types.js';
import { TABLES } from '../../src/equipment/tables.js';
import type { InputProblem } from '../../src/input-error.js';
import { ProblemList } from '../../src/length/read-input.js';

/** Good ways in. Between them they hold every property that the types know; the compiler holds these to the types. */
export const GOOD_WAYS: Readonly<Record<string, DeliveryInput>> = {
  least: { route: [{ kind: 'doorway', width: 830, height: 1981 }] },
  full: {
    route: [
      {
        kind: 'doorway',
        name: 'Front door',
        tolerance: '5 mm',
        width: '83 cm',
        height: 2000,
        depth: '20 cm',
        leaf: 44,
        before: { depth: 1500, left: 300, right: '40 cm', height: 2400 },
        after: { depth: '1.2 m', left: 0 },
      },
      { kind: 'corridor', name: 'Hall', width: 1050, height: '2.4 m', tolerance: 0 },
      { kind: 'corner', width: 1050, height: 2400, widthAfter: '95 cm', heightAfter: 2300, turn: 75 },
      {
        kind: 'stair',
        name: 'Flight',
        width: 860,
        headroom: 2000,
        pitch: 42,
        run: '3.2 m',
        bottom: { depth: 1100, height: 2400 },
        top: { depth: '1 m' },
      },
      { kind: 'stair', width: 860, headroom: 2000, rise: 200, going: '23 cm' },
      {
        kind: 'quarter-landing',
        width: 860,
        widthAfter: 900,
        headroom: 2000,
        pitch: 40,
        depth: 950,
        breadth: '90 cm',
      },
      {
        kind: 'half-landing',
        width: 860,
        widthAfter: 880,
        headroom: '2 m',
        rise: 190,
        going: 240,
        depth: 900,
        well: 50,
      },
      { kind: 'winder', width: '75 cm', headroom: 1950, pitch: 41.5, climb: 600 },
      {
        kind: 'lift',
        name: 'Goods lift',
        width: 1100,
        depth: 1400,
        height: 2200,
        door: { width: '90 cm', height: 2000, depth: 180 },
        before: { depth: 1500, right: 500 },
      },
      {
        kind: 'opening',
        width: 1500,
        height: 1300,
        sill: 850,
        depth: '30 cm',
        after: { depth: 3000, left: '1 m', right: 1000, height: 2400 },
      },
    ],
    pieces: [
      {
        name: 'Slate',
        length: 1450,
        width: '91 cm',
        thickness: 45,
        count: 3,
        mass: 97.5,
        carriers: 4,
        held: ['on-edge', 'on-end'],
        tilt: 30,
      },
      { name: 'Rail', length: '5 cm', width: 1270, thickness: 127 },
    ],
    handRoom: '2 cm',
    tolerance: 8,
    detail: 'motions',
    maxBoxes: 20_000,
  },
  'usual set': {
    route: [
      { kind: 'corner', width: 1000, height: 2300 },
      { kind: 'quarter-landing', width: 850, headroom: 2000, pitch: 42 },
      { kind: 'half-landing', width: 850, headroom: 2000, rise: 200, going: 230 },
      { kind: 'winder', width: 700, headroom: 2000, rise: 220, going: 220 },
      { kind: 'stair', width: 850, headroom: 2000, pitch: 38 },
      { kind: 'lift', width: 1100, depth: 1400, height: 2100, door: { width: 900, height: 2000 } },
      { kind: 'opening', width: 900, height: 2100 },
      { kind: 'doorway', width: 800, height: 2000 },
      { kind: 'doorway', width: 800, height: 2000 },
    ],
    pieces: 'one-piece',
    detail: 'answer',
  },
};

export interface Read {
  readonly checked: CheckedDelivery | null;
  readonly problems: readonly InputProblem[];
  readonly assumptions: readonly string[];
}

export function read(value: unknown, table: TableSpec | null = TABLES['pool-9ft']): Read {
  const problems = new ProblemList();
  const assumptions: string[] = [];
  const checked = readDelivery(value, 'delivery', table, problems, assumptions);
  return { checked, problems: problems.problems, assumptions };
}

/** The checked way of a good input. */
export function good(value: unknown, table?: TableSpec | null): CheckedDelivery {
  const { checked, problems } = read(value, table);
  if (checked === null) throw new Error(problems.map((p) => `${p.path}: ${p.message}`).join('\n'));
  return checked;
}
