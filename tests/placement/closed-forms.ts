import type { Ring } from '../../src/geometry/types.js';
import { rectangle, regular, shifted, turned } from './rooms.js';

/** A room whose greatest clearance is known in closed form (derivations: geometry of the contacts, no outside source). */
export interface ClosedForm {
  readonly name: string;
  readonly outline: Ring;
  readonly tall?: readonly Ring[];
  /** Sides of Q, length >= width. */
  readonly l: number;
  readonly w: number;
  readonly clearance: number;
}

/** Half the width that an l x w rectangle shows to a direction at angle psi from its length. */
const reach = (l: number, w: number, psi: number): number =>
  (l / 2) * Math.abs(Math.cos(psi)) + (w / 2) * Math.abs(Math.sin(psi));

/**
 * Greatest clearance of an l x w rectangle in an a x b room: square to the walls, or tilted so that all four corners are equally
 * near. Clearance >= 0 is Carver's condition for a rectangle in a rectangle (Amer. Math. Monthly 64, 1957).
 */
export function rectangleInRectangle(a: number, b: number, l: number, w: number): number {
  const square = Math.max(Math.min(a - l, b - w), Math.min(a - w, b - l)) / 2;
  const k = l === w ? Number.POSITIVE_INFINITY : Math.abs(a - b) / Math.abs(l - w);
  return k > 1 ? square : Math.max(square, (a + b - (l + w) * Math.sqrt(2 - k * k)) / 4);
}

const nine = { l: 2482.8, w: 1212.8 };
const eight = { l: 2177.8, w: 1060.8 };

export const CLOSED_FORMS: readonly ClosedForm[] = [
  {
    name: 'F1 rectangle, a ridge',
    outline: rectangle(0, 0, 6000, 4500),
    ...nine,
    clearance: (4500 - nine.w) / 2,
  },
  {
    name: 'F2 rectangle, the length binds',
    outline: rectangle(0, 0, 5200, 4500),
    ...nine,
    clearance: (5200 - nine.l) / 2,
  },
  {
    name: 'F3 square, slender Q on the diagonal',
    outline: rectangle(0, 0, 5000, 5000),
    l: 2000,
    w: 600,
    clearance: (2 * 5000 - 2600 * Math.SQRT2) / 4,
  },
  {
    name: 'F4 rectangle, tilted',
    outline: rectangle(0, 0, 5100, 4900),
    l: 2400,
    w: 400,
    clearance: rectangleInRectangle(5100, 4900, 2400, 400),
  },
  {
    name: 'F5 is F2, turned and shifted',
    outline: shifted(turned(rectangle(0, 0, 5200, 4500), (23.7 * Math.PI) / 180), 12345, -6789),
    ...nine,
    clearance: (5200 - nine.l) / 2,
  },
  hexagon(),
  trapezoid(),
  triangle(),
  elbow(),
  junction(),
  {
    name: 'F10 chimney breast wider than the table',
    outline: [
      [0, 0],
      [5600, 0],
      [5600, 4700],
      [4000, 4700],
      [4000, 4200],
      [1600, 4200],
      [1600, 4700],
      [0, 4700],
    ],
    ...eight,
    clearance: (4700 - 500 - eight.w) / 2,
  },
  {
    name: 'F11 pillar in the middle',
    outline: rectangle(0, 0, 6600, 4600),
    tall: [rectangle(3100, 2100, 3500, 2500)],
    ...eight,
    clearance: ((6600 - 400) / 2 - eight.w) / 2,
  },
  {
    name: 'F12 dumb-bell',
    outline: [
      [0, 0],
      [5000, 0],
      [5000, 2000],
      [6000, 2000],
      [6000, 0],
      [12000, 0],
      [12000, 4700],
      [6000, 4700],
      [6000, 2900],
      [5000, 2900],
      [5000, 4400],
      [0, 4400],
    ],
    ...eight,
    clearance: Math.max(
      rectangleInRectangle(5000, 4400, eight.l, eight.w),
      rectangleInRectangle(6000, 4700, eight.l, eight.w),
    ),
  },
  roundish(),
  plus(),
  parallelogram(),
  rightTriangle(),
];

function hexagon(): ClosedForm {
  const { l, w } = eight;
  const s = Math.sqrt(3) / 4;
  const acrossWalls = Math.max(l / 2, l / 4 + w * s);
  const acrossCorners = Math.max(w / 2, l * s + w / 4);
  const clearance = 3200 * Math.cos(Math.PI / 6) - Math.min(acrossWalls, acrossCorners);
  return { name: 'F6 regular hexagon', outline: regular(6, 3200), l, w, clearance };
}

function trapezoid(): ClosedForm {
  const { l, w } = eight;
  const [base, top, height] = [7000, 3400, 4800];
  const psi = Math.atan((base - top) / (2 * height));
  const clearance = (((base - l) / 2) * Math.cos(psi) - w * Math.sin(psi)) / (1 + Math.sin(psi));
  const inset = (base - top) / 2;
  const outline: Ring = [
    [0, 0],
    [base, 0],
    [base - inset, height],
    [inset, height],
  ];
  return { name: 'F7 isosceles trapezoid', outline, l, w, clearance };
}

function triangle(): ClosedForm {
  const { l, w } = eight;
  const clearance = (((9000 - l) / 2) * (Math.sqrt(3) / 2) - w / 2) / 1.5;
  const outline: Ring = [
    [0, 0],
    [9000, 0],
    [4500, 4500 * Math.sqrt(3)],
  ];
  return { name: 'F7b equilateral triangle', outline, l, w, clearance };
}

function elbow(): ClosedForm {
  const { l, w } = eight;
  const [a, b, a1, b1] = [4800, 4000, 3600, 3300];
  const [p, s] = [a1 - l, b1 - w];
  const outline: Ring = [
    [0, 0],
    [a, 0],
    [a, b1],
    [a1, b1],
    [a1, b],
    [0, b],
  ];
  return { name: 'F8 elbow of an L', outline, l, w, clearance: p + s - Math.sqrt(2 * p * s) };
}

function junction(): ClosedForm {
  const { l, w } = eight;
  const [bar, stem] = [3600, 3400];
  const [k, m] = [bar - w, (stem - l) / 2];
  const outline: Ring = [
    [0, 0],
    [12000, 0],
    [12000, bar],
    [6000 + stem / 2, bar],
    [6000 + stem / 2, bar + 4000],
    [6000 - stem / 2, bar + 4000],
    [6000 - stem / 2, bar],
    [0, bar],
  ];
  return { name: 'F9 junction of a T', outline, l, w, clearance: (k * k + m * m) / (2 * k) };
}

/** A regular polygon with an even number of corners: the middle is best, and the turn by a fine scan of one period. */
function roundish(): ClosedForm {
  const { l, w } = nine;
  const n = 200;
  const period = (2 * Math.PI) / n;
  const diagonal = Math.atan2(w, l);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= 200000; i++) {
    const turn = (period * i) / 200000;
    let most = 0;
    for (const corner of [diagonal, -diagonal]) {
      const wall = Math.round((corner + turn - period / 2) / period);
      for (const next of [-1, 0, 1])
        most = Math.max(most, reach(l, w, (wall + next) * period + period / 2 - turn));
    }
    least = Math.min(least, most);
  }
  const clearance = 3200 * Math.cos(Math.PI / n) - least;
  return { name: 'F14 regular 200-gon', outline: regular(n, 3200), l, w, clearance };
}

function plus(): ClosedForm {
  const { l, w } = eight;
  const [x, far] = [1600, 9000];
  const outline: Ring = [
    [x, x],
    [x, far],
    [-x, far],
    [-x, x],
    [-far, x],
    [-far, -x],
    [-x, -x],
    [-x, -far],
    [x, -far],
    [x, -x],
    [far, -x],
    [far, x],
  ];
  return { name: 'F15 plus, the corners bind', outline, l, w, clearance: Math.hypot(x - l / 2, x - w / 2) };
}

/** Two strips: the middle is best (the room is convex and centrally symmetric), and the turn by scan and golden section. */
function parallelogram(): ClosedForm {
  const { l, w } = eight;
  const [d1, d2, g] = [4300, 4700, (75 * Math.PI) / 180];
  const at = (turn: number): number =>
    Math.min(d1 / 2 - reach(l, w, Math.PI / 2 - turn), d2 / 2 - reach(l, w, g - Math.PI / 2 - turn));
  let best = 0;
  for (let i = 0; i < 100000; i++) if (at((Math.PI * i) / 100000) > at(best)) best = (Math.PI * i) / 100000;
  let [from, to] = [best - 1e-4, best + 1e-4];
  for (let i = 0; i < 100; i++) {
    const [p, q] = [from + (to - from) * 0.382, from + (to - from) * 0.618];
    if (at(p) < at(q)) from = p;
    else to = q;
  }
  const side = d2 / Math.sin(g);
  const lean = d1 / Math.tan(g);
  const outline: Ring = [
    [0, 0],
    [side, 0],
    [side + lean, d1],
    [lean, d1],
  ];
  return { name: 'F16 parallelogram', outline, l, w, clearance: at((from + to) / 2) };
}

function rightTriangle(): ClosedForm {
  const { l, w } = eight;
  const onHypotenuse = (8000 / Math.SQRT2 - l / 2 - w) / (1 + Math.SQRT2);
  const onLegs = (8000 - l - w) / (2 + Math.SQRT2);
  const outline: Ring = [
    [0, 0],
    [8000, 0],
    [0, 8000],
  ];
  return { name: 'F17 right isosceles triangle', outline, l, w, clearance: Math.max(onHypotenuse, onLegs) };
}
