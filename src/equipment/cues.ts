import { deepFreeze } from './deep-freeze.js';
import { DEFAULTS } from './defaults.js';
import type { CueSpec, Source } from './equipment-types.js';

/** A cue of the catalogue. */
export interface CueEntry extends CueSpec {
  readonly id: CueId;
  readonly source: Source;
}

export type CueId =
  | 'cue-58in'
  | 'cue-57in'
  | 'cue-56in'
  | 'cue-54in'
  | 'cue-52in'
  | 'cue-48in'
  | 'cue-42in'
  | 'cue-36in';

/**
 * Cues by id, the longest first. Pool wants at least 40 in (WPA Recommended Equipment Specifications, s. 17), which the 36 in
 * cue falls short of; snooker wants 3 ft (second-hand). Diameters are the defaults of every cue: common practice, no source.
 */
export const CUES: { readonly [id in CueId]: CueEntry } = /* @__PURE__ */ listCues();

function listCues(): { readonly [id in CueId]: CueEntry } {
  const usual = 'Usual length 57 to 59 in: an encyclopaedia on cues';
  const short = 'Short cue as sold, from memory';
  return deepFreeze({
    'cue-58in': cue('cue-58in', '58 in', 1473.2, usual),
    'cue-57in': cue('cue-57in', '57 in', 1447.8, usual),
    'cue-56in': cue('cue-56in', '56 in', 1422.4, 'Carom cues are about 54 to 56 in, from memory'),
    'cue-54in': cue('cue-54in', '54 in', 1371.6, 'Carom cues are about 54 to 56 in, from memory'),
    'cue-52in': cue('cue-52in', '52 in', 1320.8, short),
    'cue-48in': cue('cue-48in', '48 in', 1219.2, short),
    'cue-42in': cue('cue-42in', '42 in', 1066.8, short),
    'cue-36in': cue('cue-36in', '36 in', 914.4, short),
  });
}

function cue(id: CueId, name: string, length: number, source: Source): CueEntry {
  return { id, name, length, ...DEFAULTS.cue, source: `${source}. Diameters: common practice, no source.` };
}
