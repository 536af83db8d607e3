/** What is drawn, in units of the sheet, y down. */
export interface Drawn {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Paper left around the drawing, and steps in which the cut grows, mm on the sheet. */
const AROUND = 3;
const STEP = { sideways: 20, up: 15 } as const;

/**
 * The cut of a sheet around what is drawn on it. It grows in steps away from the ball and from the ground, so that the picture
 * neither breathes nor slides while a shot is turned.
 */
export function steadyBox({ left, top, right, bottom }: Drawn, ballX: number): ViewBox {
  const stepped = (length: number, step: number): number => step * Math.ceil((length + AROUND) / step);
  const before = stepped(ballX - left, STEP.sideways);
  const after = stepped(right - ballX, STEP.sideways);
  const height = stepped(bottom - top, STEP.up);
  return { x: ballX - before, y: bottom + AROUND - height, width: before + after, height };
}
