/** Ids of the kinds of `FURNISHINGS`: games first, then furniture, then what hangs on walls and over the table. */
export const FURNISHING_IDS: readonly FurnishingId[] = [
  'darts',
  'table-tennis',
  'table-football',
  'upright-cabinet',
  'pinball',
  'music-machine',
  'bar',
  'stool',
  'sofa',
  'cupboard',
  'cue-rack',
  'score-board',
  'lamp',
];

export type FurnishingId =
  | 'darts'
  | 'table-tennis'
  | 'table-football'
  | 'upright-cabinet'
  | 'pinball'
  | 'music-machine'
  | 'bar'
  | 'stool'
  | 'sofa'
  | 'cupboard'
  | 'cue-rack'
  | 'score-board'
  | 'lamp';
