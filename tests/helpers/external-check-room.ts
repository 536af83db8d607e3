import { assessFit, classifyShot, type FitInput, type FitReport, type TableInput } from '../../src/index.js';
import {
  clearance,
  frameRoom,
  highestAxis,
  type SlowPose,
  tallThings,
  usualCue,
  usualStroke,
} from '../external/slow/scene.js';
import { type SlowSearch, slowSearch } from '../external/slow/search.js';
import { slowClass } from '../external/slow/shot.js';
import { seeded } from './external-random.js';
import { contradictions } from './external-report.js';
import type { CheckedRoom } from './external-rooms.js';

export interface RoomQuestion {
  readonly table: string | TableInput;
  readonly cues: readonly number[];
}

/** How closely to look. */
export interface Scrutiny extends SlowSearch {
  /** Shots to judge one by one at the reported place. */
  readonly shots: number;
}

export interface Finding {
  readonly report: FitReport;
  /** Every disagreement, as a sentence; empty: none. */
  readonly wrong: readonly string[];
  /** Shots that were compared one by one, and those that steps could not tell. */
  readonly compared: number;
  readonly unsure: number;
  /** What the slow search found, mm; null: nothing, or not asked. */
  readonly slowValue: number | null;
  /** Share of open and cramped shots of the wanted cue at the slow search's place less that at the report's; null: not asked. */
  readonly slowGain: number | null;
}

/** The model's slack for comparing two ways of measuring one distance, mm. */
const SAME = 1e-6;
/** What touching costs the slow search, see its TOUCH, mm. */
const SLOW_TOUCH = 0.05;

/** The report on one room, checked in itself and, with `scrutiny`, against the slow second opinion. */
export function checkRoom(
  { id, input, slow, cautious }: CheckedRoom,
  { table, cues }: RoomQuestion,
  scrutiny: Scrutiny | null,
): Finding {
  const question: FitInput = { room: input, table, cues };
  const report = assessFit(question);
  const wrong = contradictions(report).map((what) => `${id}: ${what}`);
  const say = (what: string): void => {
    wrong.push(`${id}, ${report.table.name}, ${report.verdict}: ${what}`);
  };
  const here = poseOf(report);
  if (report.verdict === 'none' && here !== null) say('a place was found where the table cannot stand');
  if (scrutiny === null) return { report, wrong, compared: 0, unsure: 0, slowValue: null, slowGain: null };

  const spec = report.table;
  const stroke = usualStroke(spec.ballDiameter);
  const cue = usualCue(report.cues[0].length);
  const rho = spec.ballDiameter / 2 + stroke.backswing + cue.length + stroke.margin;
  const tall = tallThings(slow, spec, stroke, cue);
  // A ceiling that an open stroke may meet counts as tall all over.
  const underLowCeiling = slow.ceiling < highestAxis(spec, stroke, cue);
  if (here !== null && report.verdict !== 'none') {
    if (!(frameRoom(slow, spec, here, 0.01) > 0)) say('the table is in the way of something where it is put');
    const plain = underLowCeiling ? 0 : Math.max(0, clearance(spec, slow.outline, tall, here));
    if (Math.abs(plain - report.clearance.value) > SAME * Math.max(1, plain)) {
      say(`clearance ${report.clearance.value}, plainly measured ${plain}`);
    }
    if (report.cues[0].proof === 'distance' && plain < rho - 1e-3)
      say(`clear, but ${plain} is less than ${rho}`);
  }

  const found = slowSearch(cautious, spec, tall, scrutiny);
  let slowGain: number | null = null;
  if (found !== null) {
    const { x, y, angle } = found.pose;
    if (report.verdict === 'none' && frameRoom(cautious, spec, found.pose) > 0) {
      say(`a place was found all the same: ${x}, ${y}, ${angle}`);
    }
    if (!underLowCeiling && found.value > report.clearance.upperBound + SLOW_TOUCH) {
      say(
        `a clearance of ${found.value} beats the bound ${report.clearance.upperBound} at ${x}, ${y}, ${angle}`,
      );
    }
    if (report.verdict !== 'clear' && report.verdict !== 'none') {
      const turn = ((((angle * 180) / Math.PI) % 180) + 180) % 180;
      const there = assessFit({ ...question, pose: { x, y, turn } });
      if (there.verdict === 'clear') say(`a place is clear and was missed: ${x}, ${y}, ${angle}`);
      if (there.verdict === 'clear' && report.clearance.clearNowhere) say('clear nowhere, except there');
      if (there.verdict !== 'none') slowGain = playable(there) - playable(report);
    }
  }

  const { compared, unsure } = compareShots();
  return { report, wrong, compared, unsure, slowValue: found?.value ?? null, slowGain };

  /** One by one with the library's own class, and all together with its shares. */
  function compareShots(): { compared: number; unsure: number } {
    const { pose } = report;
    if (here === null || pose === null || report.verdict === 'none') return { compared: 0, unsure: 0 };
    const next = seeded(Number(/\d+/.exec(id)?.[0] ?? 1));
    const counts = { open: 0, cramped: 0, blocked: 0, unsure: 0 };
    for (let i = 0; i < (scrutiny?.shots ?? 0); i++) {
      const x = (next() - 0.5) * (spec.field.length - spec.ballDiameter);
      const y = (next() - 0.5) * (spec.field.width - spec.ballDiameter);
      const phi = 2 * Math.PI * next();
      const slowly = slowClass(slow, spec, stroke, cue, here, x, y, phi);
      counts[slowly]++;
      if (slowly === 'unsure') continue;
      const direction = (phi * 180) / Math.PI;
      const answer = classifyShot({ room: input, table, pose, cue: cue.length, ball: { x, y }, direction });
      if (answer.class !== slowly) {
        say(`ball ${x}, ${y}, direction ${direction}: ${answer.class}, slowly ${slowly}`);
      }
    }
    const shots = scrutiny?.shots ?? 0;
    for (const kind of ['open', 'cramped', 'blocked'] as const) {
      const share = report.cues[0].shares[kind];
      const least = counts[kind] / shots;
      const most = (counts[kind] + counts.unsure) / shots;
      // Four standard deviations of a sample so small, and one shot.
      const chance = 4 * Math.sqrt((share * (1 - share)) / shots) + 1 / shots;
      const error = report.cues[0].shareError + chance;
      if (share < least - error || share > most + error) {
        say(`share of ${kind} shots ${share} +- ${report.cues[0].shareError}, slowly ${least} to ${most}`);
      }
    }
    return { compared: shots - counts.unsure, unsure: counts.unsure };
  }
}

function poseOf({ pose }: FitReport): SlowPose | null {
  return pose === null ? null : { x: pose.x, y: pose.y, angle: (pose.turn * Math.PI) / 180 };
}

function playable({ cues }: FitReport): number {
  return cues[0].shares.open + cues[0].shares.cramped;
}
