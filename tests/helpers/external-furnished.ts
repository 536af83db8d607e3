import type { RoomInput, TableInput } from '../../src/index.js';

/** Made-up domestic rooms, furnished as people do: for whole-scene tests and for the benches. Millimetres. */
export interface FurnishedRoom {
  readonly name: string;
  readonly room: RoomInput;
}

/** A rectangle with a chimney breast, a bay, a boxed pipe, a stair's corner and a niche: 20 corners. */
const lounge: RoomInput = {
  outline: [
    [0, 0],
    [1980, 0],
    [2200, -520],
    [3270, -520],
    [3500, 0],
    [5470, 0],
    [5470, 1410],
    [5620, 1410],
    [5620, 2440],
    [5470, 2440],
    [5470, 3850],
    [4560, 3850],
    [4560, 4370],
    [3340, 4370],
    [3340, 4110],
    [2200, 4110],
    [2200, 4370],
    [190, 4370],
    [190, 4180],
    [0, 4180],
  ],
  ceiling: 2500,
  obstacles: [
    { name: 'sideboard', footprint: { center: [5270, 590], length: 1400, width: 450, turn: 90 }, to: 780 },
    { name: 'bookcase', footprint: { center: [760, 4240], length: 1400, width: 300 }, to: 1900 },
    { name: 'bench', footprint: { center: [2740, -300], length: 1300, width: 400 }, to: 450 },
    { name: 'armchair', footprint: { center: [380, 370], length: 750, width: 750, turn: 20 }, to: 950 },
    {
      name: 'wall cupboard',
      footprint: { center: [110, 2220], length: 1200, width: 300, turn: 90 },
      from: 1500,
      to: 2200,
    },
    { name: 'lamp', footprint: { center: [2740, 2070], length: 1200, width: 300 }, from: 1780, to: 2000 },
  ],
  doors: [{ hinge: [0, 3180], latch: [0, 3770], opens: 'in' }],
};

/** An L with a pillar, a fireplace and shelves: 16 corners. */
const basement: RoomInput = {
  outline: [
    [0, 0],
    [2720, 0],
    [2720, 270],
    [3760, 270],
    [3760, 0],
    [6560, 0],
    [6560, 2030],
    [6240, 2030],
    [6240, 2650],
    [6560, 2650],
    [6560, 3820],
    [4160, 3820],
    [4160, 5620],
    [720, 5620],
    [720, 5150],
    [0, 5150],
  ],
  ceiling: 2300,
  obstacles: [
    { name: 'pillar', footprint: { center: [4240, 3590], diameter: 250 } },
    { name: 'boiler', footprint: { center: [240, 230], length: 600, width: 600 }, to: 1700 },
    {
      name: 'shelf',
      footprint: { center: [6480, 940], length: 1600, width: 200, turn: 90 },
      from: 1100,
      to: 1900,
    },
    { name: 'sofa', footprint: { center: [2400, 5230], length: 2000, width: 900 }, to: 800 },
    { name: 'low table', footprint: { center: [2400, 4370], length: 900, width: 500 }, to: 420 },
    { name: 'duct', footprint: { center: [2080, 80], length: 5000, width: 200 }, from: 2050 },
  ],
  doors: [
    { hinge: [1200, 5620], latch: [1840, 5620], opens: 'in' },
    { hinge: [6560, 2810], latch: [6560, 3430], opens: 'out' },
  ],
};

/** A loft under two slopes, with a chimney stack and knee-high chests along one side: 16 corners. */
const loft: RoomInput = {
  outline: [
    [0, 0],
    [1190, 0],
    [1190, -650],
    [1980, -650],
    [1980, 0],
    [5940, 0],
    [5940, 1800],
    [5680, 1800],
    [5680, 2380],
    [5940, 2380],
    [5940, 4460],
    [3230, 4460],
    [3230, 4180],
    [2710, 4180],
    [2710, 4460],
    [0, 4460],
  ],
  ceiling: [
    [
      [0, 0, 1300],
      [5940, 0, 1300],
      [0, 2230, 3400],
    ],
    [
      [0, 4460, 1300],
      [5940, 4460, 1300],
      [0, 2230, 3400],
    ],
    [
      [0, 0, 2600],
      [5940, 0, 2600],
      [0, 4460, 2600],
    ],
  ],
  obstacles: [
    { name: 'chests', footprint: { center: [4090, 180], length: 3600, width: 450 }, to: 500 },
    { name: 'stack', footprint: { center: [590, 2810], length: 700, width: 500 } },
    { name: 'dresser', footprint: { center: [5740, 3820], length: 1100, width: 500, turn: 90 }, to: 1100 },
    { name: 'stool', footprint: { center: [5150, 4030], diameter: 380 }, to: 460 },
    {
      name: 'collar beam',
      footprint: { center: [2970, 2230], length: 200, width: 3000 },
      from: 2300,
      to: 2500,
    },
    { name: 'desk', footprint: { center: [330, 4030], length: 1000, width: 600, turn: 90 }, to: 740 },
  ],
};

/** A garage with a workbench, a freezer, a beam and a car's tyres: 18 corners, skewed walls. */
const garage: RoomInput = {
  outline: [
    [0, 0],
    [2460, -50],
    [2460, 140],
    [2790, 140],
    [2790, -60],
    [5080, -100],
    [5110, 1200],
    [4940, 1200],
    [4940, 1550],
    [5120, 1550],
    [5170, 4640],
    [3530, 4690],
    [3530, 4520],
    [3200, 4520],
    [3200, 4700],
    [50, 4730],
    [30, 2580],
    [10, 2490],
  ],
  ceiling: 2350,
  obstacles: [
    { name: 'workbench', footprint: { center: [2540, 4300], length: 1800, width: 500, turn: -1 }, to: 900 },
    { name: 'freezer', footprint: { center: [4840, 4210], length: 700, width: 650 }, to: 860 },
    { name: 'beam', footprint: { center: [2540, 2320], length: 200, width: 5200 }, from: 2100 },
    { name: 'tyres', footprint: { center: [340, 4390], diameter: 650 }, to: 600 },
    {
      name: 'shelf',
      footprint: { center: [140, 1290], length: 2000, width: 300, turn: 90 },
      from: 1300,
      to: 1340,
    },
    { name: 'crate', footprint: { center: [4760, 260], length: 600, width: 400, turn: 8 }, to: 400 },
  ],
};

export const FURNISHED_ROOMS: readonly FurnishedRoom[] = [
  { name: 'lounge', room: lounge },
  { name: 'basement', room: basement },
  { name: 'loft', room: loft },
  { name: 'garage', room: garage },
];

/** 6 x 3 ft to play on; common practice, no source. */
export const SMALL_TABLE: TableInput = {
  name: '6 ft',
  field: { length: 1830, width: 915 },
  outer: { length: 2080, width: 1165 },
  bedHeight: 790,
};
