import { deepFreeze } from './deep-freeze.js';
import type { Source } from './equipment-types.js';

/** One ball of the trade. */
export interface BallSpec {
  readonly id: BallId;
  readonly name: string;
  /** 2R, mm. */
  readonly diameter: number;
  readonly source: Source;
}

export type BallId =
  | 'pool'
  | 'snooker'
  | 'english-object'
  | 'english-cue'
  | 'blackball-cue'
  | 'carom'
  | 'pyramid';

/** The balls of the trade by id. */
export const BALLS: { readonly [id in BallId]: BallSpec } = /* @__PURE__ */ listBalls();

function listBalls(): { readonly [id in BallId]: BallSpec } {
  return deepFreeze({
    pool: {
      id: 'pool',
      name: 'Pool ball',
      diameter: 57.15,
      source: 'WPA Recommended Equipment Specifications (2001), s. 16',
    },
    snooker: {
      id: 'snooker',
      name: 'Snooker or billiard ball',
      diameter: 52.5,
      source: 'Official rules of snooker, s. 1 (equipment), in the German text of the DBU',
    },
    'english-object': {
      id: 'english-object',
      name: 'English pool object ball',
      diameter: 50.8,
      source: 'WEPF World Eightball specification, second-hand',
    },
    'english-cue': {
      id: 'english-cue',
      name: 'English pool cue ball',
      diameter: 47.6,
      source: 'WEPF World Eightball specification, second-hand',
    },
    'blackball-cue': {
      id: 'blackball-cue',
      name: 'Blackball cue ball',
      diameter: 48,
      source: 'A French blackball club quoting its federation, second-hand',
    },
    carom: {
      id: 'carom',
      name: 'Carom ball',
      diameter: 61.5,
      source: 'A national carom federation (61 to 61.5 mm), second-hand',
    },
    pyramid: {
      id: 'pyramid',
      name: 'Pyramid ball',
      diameter: 68,
      source: 'An encyclopaedia on Russian pyramid, second-hand',
    },
  });
}
