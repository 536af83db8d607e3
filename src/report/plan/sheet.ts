import { InputError } from '../../input-error.js';
import type { Area } from './boxes.js';
import type { CheckedPlanOptions, SheetName, SheetOrientation } from './plan-options.js';

/** A sheet divided up, and the scale that the drawing has on it. All mm on paper, from the upper left corner. */
export interface Sheet {
  readonly name: SheetName;
  readonly orientation: SheetOrientation;
  readonly width: number;
  readonly height: number;
  /** Inside this, nothing outside it. */
  readonly frame: Area;
  readonly drawing: Area;
  readonly legend: Area;
  readonly title: Area;
  /** 50 for 1:50. */
  readonly scale: number;
}

/** What has to go on the sheet: sizes in the room, mm, and what dimensions take around them on paper, mm. */
export interface Content {
  readonly width: number;
  readonly height: number;
  readonly around: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
}

/** ISO 216, mm: short and long side. */
const SIZES: Readonly<Record<SheetName, readonly [number, number]>> = { A4: [210, 297], A3: [297, 420] };

/** Reductions of ISO 5455, largest first. */
const SCALES = [5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000] as const;
/** The largest scale for which the larger sheet is taken where the smaller one does not do. */
const LARGEST_FOR_A3 = 50;

/** Blank edge that every printer leaves, mm. */
export const MARGIN = 10;
/** Between the frame and what is drawn. */
const INSET = 2;
/** Width of the column beside a landscape drawing, and of its share of a portrait sheet's band. */
const COLUMN = { A4: 84, A3: 92 } as const;
const BAND = 96;

/**
 * The sheet, its way round and the scale: those given, else the largest scale on the smallest sheet, as `PlanOptions` says.
 *
 * @throws InputError `does-not-fit` where the given scale is too large for the sheet.
 */
export function chooseSheet(content: Content, options: CheckedPlanOptions): Sheet {
  for (const scale of options.scale === null ? SCALES : [options.scale]) {
    const sheet = sheetAt(content, options, scale);
    if (sheet !== null) return sheet;
  }
  const wanted = options.scale ?? SCALES[SCALES.length - 1];
  const largest = SCALES.find((scale) => scale > wanted && sheetAt(content, options, scale) !== null);
  const instead = largest === undefined ? '' : ` 1:${largest} does.`;
  throw new InputError([
    {
      path: 'options.scale',
      code: 'does-not-fit',
      message: `At 1:${wanted} this does not go on the sheet.${instead}`,
    },
  ]);
}

function sheetAt(content: Content, options: CheckedPlanOptions, scale: number): Sheet | null {
  const large = options.scale !== null || scale >= LARGEST_FOR_A3;
  const names: readonly SheetName[] =
    options.sheet === null ? (large ? ['A4', 'A3'] : ['A4']) : [options.sheet];
  const ways: readonly SheetOrientation[] =
    options.orientation === null ? ['landscape', 'portrait'] : [options.orientation];
  for (const name of names) {
    for (const orientation of ways) {
      const sheet = divided(name, orientation, scale);
      const { left, right, top, bottom } = content.around;
      const { drawing } = sheet;
      const wide = content.width / scale + left + right <= drawing.right - drawing.left;
      if (wide && content.height / scale + top + bottom <= drawing.bottom - drawing.top) return sheet;
    }
  }
  return null;
}

function divided(name: SheetName, orientation: SheetOrientation, scale: number): Sheet {
  const [short, long] = SIZES[name];
  const upright = orientation === 'portrait';
  const width = upright ? short : long;
  const height = upright ? long : short;
  const frame = { left: MARGIN, top: MARGIN, right: width - MARGIN, bottom: height - MARGIN };
  const base = { name, orientation, width, height, frame, scale };
  if (upright) {
    const top = frame.bottom - BAND;
    const middle = frame.right - COLUMN[name];
    return {
      ...base,
      drawing: inset({ ...frame, bottom: top }),
      legend: { ...frame, top, right: middle },
      title: { ...frame, top, left: middle },
    };
  }
  const left = frame.right - COLUMN[name];
  const top = frame.bottom - BAND;
  return {
    ...base,
    drawing: inset({ ...frame, right: left }),
    legend: { ...frame, left, bottom: top },
    title: { ...frame, left, top },
  };
}

function inset({ left, top, right, bottom }: Area): Area {
  return { left: left + INSET, top: top + INSET, right: right - INSET, bottom: bottom - INSET };
}
