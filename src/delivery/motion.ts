/**
 * One moment of a motion: the centre of the box (mm, in the passage's frame) and how it is turned (radians). The rotation is
 * Rz(heading) Ry(-tilt) Rx(roll): rolled about its long axis first, then tilted with the front end (+x) up, then turned in plan.
 */
export interface MotionPose {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly heading: number;
  readonly tilt: number;
  readonly roll: number;
}

/** A box with edges along, across and up (mm) led through a list of poses; between two of them all six numbers run evenly. */
export interface Motion {
  readonly along: number;
  readonly across: number;
  readonly up: number;
  readonly poses: readonly MotionPose[];
}
