/** Ids of the kinds of {@link FURNISHINGS}: games first, then furniture, then what hangs on walls and over the table. */
export const FURNISHING_IDS = [
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
] as const;

export type FurnishingId = (typeof FURNISHING_IDS)[number];
