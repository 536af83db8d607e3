import { readTable } from '../equipment/check-table.js';
import type { TableInput } from '../equipment/equipment-types.js';
import { handlingOf } from '../equipment/handling.js';
import { InputError } from '../input-error.js';
import { ProblemList, readGuarded } from '../length/read-input.js';
import { adviseDelivery } from './advise-delivery.js';
import { type AnsweredPassage, answerPassage } from './answer-passage.js';
import { type Carried, carriedWith, type Hold, type Piece } from './carried.js';
import type { Crossing } from './crossing.js';
import { cautionsForDelivery } from './delivery-cautions.js';
import type { DeliveryInput } from './delivery-input.js';
import type {
  DeliveryOutcome,
  DeliveryReport,
  HoldChange,
  PassageAnswer,
  PieceAnswer,
} from './delivery-report.js';
import { changeRoom } from './hold-change.js';
import { reportHold } from './hold-report.js';
import { provedCross } from './prove-crossing.js';
import { type CheckedDelivery, readDelivery } from './read-delivery.js';

/**
 * Whether every piece of a table can be carried through every passage of the way in. Each answer is proved where it can be: `passes`
 * by a motion that was replayed without touching anything, `blocked` by a bound; what is neither says so.
 *
 * @param table An id of the catalogue or measurements, for its usual pieces; not needed where `pieces` lists them.
 * @throws InputError with every problem that was found.
 */
export function assessDelivery(delivery: DeliveryInput, table?: string | TableInput): DeliveryReport {
  const problems = new ProblemList();
  const assumptions: string[] = [];
  const checked = readGuarded([delivery, table], problems, () => {
    const spec = table === undefined ? null : readTable(table, 'table', problems, []);
    return readDelivery(delivery, 'delivery', spec, problems, assumptions);
  });
  if (checked === null || problems.problems.length > 0) throw new InputError(problems.problems);
  return { ...answerDelivery(checked), assumptions };
}

/** The same for a way that was checked already; its assumptions are the caller's. */
export function answerDelivery(checked: CheckedDelivery): DeliveryReport {
  const { route, pieces, otherSets, handRoom, maxBoxes, detail } = checked;
  const cross = provedCross({ maxBoxes });
  const options = { handRoom, motions: detail === 'motions' };
  const answered = pieces.map((piece) => {
    const answers: PassageAnswer[] = [];
    const crossings: Crossing[] = [];
    let hold: Hold | null = null;
    for (const passage of route) {
      const { answer, crossing }: AnsweredPassage = answerPassage(passage, piece, hold, cross, options);
      hold = crossing.hold ?? hold;
      answers.push(answer);
      crossings.push(crossing);
    }
    return { piece, answers, crossings };
  });
  const reports = answered.map(({ piece, answers, crossings }) =>
    pieceAnswer(piece, answers, crossings, handRoom),
  );
  return {
    outcome: worst(reports.map((r) => r.outcome)),
    certain: allCertain(reports),
    pieceSet: checked.pieceSet,
    handRoom,
    pieces: reports,
    advice: adviseDelivery({
      route,
      pieces: answered.map(({ piece, crossings }) => ({ piece, crossings })),
      otherSets,
      handRoom,
      cross,
    }),
    cautions: cautionsForDelivery({ route, pieces }),
    assumptions: [],
  };
}

function pieceAnswer(
  piece: Piece,
  passages: readonly PassageAnswer[],
  crossings: readonly Crossing[],
  handRoom: number,
): PieceAnswer {
  const { name, count, length, width, thickness, mass } = piece;
  const handling = mass === null ? null : handlingOf(mass, piece.carriers);
  return {
    name,
    count,
    size: { length, width, thickness },
    mass,
    carriers: handling?.carriers ?? piece.carriers,
    massPerCarrier: handling?.massPerCarrier ?? null,
    outcome: worst(passages.map((p) => p.outcome)),
    certain: allCertain(passages),
    passages,
    holdChanges: holdChanges(carriedWith(piece, handRoom), crossings),
  };
}

/** Where the piece has to be held otherwise than in the passage before; passages without a known hold are passed over. */
function holdChanges(box: Carried, crossings: readonly Crossing[]): readonly HoldChange[] {
  const changes: HoldChange[] = [];
  crossings.forEach(({ hold: to }, i) => {
    const from = i === 0 ? null : (crossings[i - 1]?.hold ?? null);
    if (from === null || to === null) return;
    const room = changeRoom(box, from, to);
    if (room === null) return;
    changes.push({
      after: i - 1,
      from: reportHold(box, from),
      to: reportHold(box, to),
      needsHeight: room.height,
      needsFloor: room.floor,
    });
  });
  return changes;
}

/** Blocked once is blocked; passing is passing everywhere. */
function worst(outcomes: readonly DeliveryOutcome[]): DeliveryOutcome {
  if (outcomes.includes('blocked')) return 'blocked';
  return outcomes.includes('undecided') ? 'undecided' : 'passes';
}

/** Whether the outcome of them all stays within the tolerances: one that is surely blocked is enough, else all have to be sure. */
function allCertain(
  parts: readonly { readonly outcome: DeliveryOutcome; readonly certain: boolean }[],
): boolean {
  return parts.some((p) => p.outcome === 'blocked' && p.certain) || parts.every((p) => p.certain);
}
