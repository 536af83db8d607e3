import { describe, expect, it } from 'vitest';
import { assessFit, type CueResult, type FitReport, type Verdict } from '../../src/index.js';
import { FURNISHED_ROOMS, SMALL_TABLE } from '../helpers/external-furnished.js';

/**
 * The model: a place that is clear wins; where none is, the one with the largest share of open and cramped shots. So no place
 * that the library itself chooses for another cue may be better for this one, beyond what its sample of shots can tell.
 */
const CUES = ['58 in', '52 in', '42 in'] as const;
const RANK: Readonly<Record<Verdict, number>> = { none: 0, partial: 1, tight: 2, clear: 3 };

const playable = ({ shares }: CueResult): number => shares.open + shares.cramped;

describe.each(FURNISHED_ROOMS)('$name', ({ room }) => {
  describe.each([SMALL_TABLE, 'pool-7ft-bar'])('table %o', (table) => {
    const chosen = new Map<string, FitReport>();
    const reportFor = (cue: string): FitReport => {
      const report = chosen.get(cue) ?? assessFit({ room, table, cues: [cue] });
      chosen.set(cue, report);
      return report;
    };

    it.each(CUES)('has no better place for %s among those for other cues', (cue) => {
      const { cues, pose } = reportFor(cue);
      const [own] = cues;
      for (const other of CUES) {
        const there = reportFor(other).pose;
        if (there === null || (there.x === pose?.x && there.y === pose.y && there.turn === pose.turn))
          continue;
        const [at] = assessFit({ room, table, cues: [cue], pose: there }).cues;
        const where = `the place for ${other}, ${JSON.stringify(there)}, against ${JSON.stringify(pose)}`;
        expect(
          RANK[at.verdict],
          `${at.verdict} (${at.proof}) at ${where}: ${own.verdict}`,
        ).toBeLessThanOrEqual(RANK[own.verdict]);
        expect(playable(at), where).toBeLessThanOrEqual(playable(own) + own.shareError + at.shareError);
      }
    });
  });
});
