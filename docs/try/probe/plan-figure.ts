import { el, setAttributes, svg } from './dom.js';
import type { JudgedShot } from './judge.js';
import { patternDefs } from './patterns.js';
import { type PlanView, planView, rectangleAt, roomToField, shownBox } from './plan-geometry.js';
import { drawRoom, WALL } from './plan-room.js';
import { drawShotInPlan } from './plan-shot.js';
import type { ProbeModel } from './probe-model.js';
import { afterKey, type Shot, withBallAt, withButtTowards } from './shot.js';
import type { ProbeStrings } from './strings.js';

/** No higher than this, CSS px. */
const MOST_HEIGHT = 460;
/** A press that moved less than this (CSS px) laid the ball and pointed nowhere. */
const STILL = 10;

/** What the plan asks of its owner. */
export interface PlanEvents {
  /** The shot at hand. */
  current(): Shot;
  /** Somebody pointed or pressed a key. */
  changed(shot: Shot): void;
  /** It is as wide as never before. */
  resized(): void;
}

/** The plan that a shot is pointed in: one element that takes the focus, the pointer and the keys. */
export class PlanFigure {
  readonly element: HTMLElement;
  readonly #picture: SVGSVGElement;
  readonly #events: PlanEvents;
  readonly #strings: ProbeStrings;
  #view: PlanView | null = null;
  #model: ProbeModel | null = null;
  #press: { readonly id: number; readonly x: number; readonly y: number; readonly part: Part } | null = null;

  constructor(strings: ProbeStrings, describedBy: string, events: PlanEvents) {
    this.#strings = strings;
    this.#events = events;
    this.#picture = svg('svg', { class: 'probe-plan', 'aria-hidden': 'true' });
    this.element = el(
      'div',
      {
        class: 'probe-stage',
        role: 'application',
        tabindex: 0,
        'aria-label': strings.planLabel,
        'aria-describedby': describedBy,
      },
      this.#picture,
    );
    this.#listen();
    new ResizeObserver(() => {
      if (this.#model !== null && this.element.clientWidth !== this.#view?.width) {
        this.#layOut();
        this.#events.resized();
      }
    }).observe(this.element);
  }

  setModel(model: ProbeModel): void {
    this.#model = model;
    this.#layOut();
  }

  draw(judged: JudgedShot): void {
    if (this.#model === null || this.#view === null) return;
    const drawn = drawShotInPlan(this.#model, this.#view, judged, this.#strings, IDS);
    const old = this.#picture.querySelector(':scope > .probe-shot');
    if (old === null) this.#picture.append(drawn);
    else old.replaceWith(drawn);
  }

  #layOut(): void {
    const model = this.#model;
    if (model === null) return;
    const { scene, strokes, pose, asWritten } = model;
    const { ballRadius, rimX, rimY } = strokes;
    const reach = ballRadius + asWritten.backswing + asWritten.cueLength + 2 * WALL;
    const box = shownBox(scene.outline, rectangleAt(pose, rimX, rimY), reach, WALL);
    const view = planView(box, Math.max(200, this.element.clientWidth), MOST_HEIGHT);
    this.#view = view;
    setAttributes(this.#picture, {
      viewBox: `0 0 ${view.width} ${view.height}`,
      width: view.width,
      height: view.height,
    });
    this.#picture.replaceChildren(patternDefs(IDS), drawRoom(model, view, this.#strings.axis, IDS));
  }

  #listen(): void {
    const stage = this.element;
    stage.addEventListener('pointerdown', (event) => this.#pressed(event));
    stage.addEventListener('pointermove', (event) => this.#moved(event));
    stage.addEventListener('pointerup', (event) => this.#released(event));
    stage.addEventListener('pointercancel', () => {
      this.#press = null;
    });
    stage.addEventListener('keydown', (event) => {
      if (this.#model === null || event.ctrlKey || event.altKey || event.metaKey) return;
      const { pose, area } = this.#model;
      const next = afterKey(this.#events.current(), event, pose, area);
      if (next === null) return;
      event.preventDefault();
      this.#events.changed(next);
    });
  }

  #pressed(event: PointerEvent): void {
    if (!event.isPrimary || event.button !== 0 || this.#model === null) return;
    const part = this.#partAt(event);
    this.#press = { id: event.pointerId, x: event.clientX, y: event.clientY, part };
    // Touch beside the cloth may be the start of scrolling: only a tap counts there, when the finger is lifted.
    if (part === 'room' && event.pointerType === 'touch') return;
    this.element.setPointerCapture(event.pointerId);
    if (part === 'field') this.#layBall(event);
    else if (part === 'room') this.#turnCue(event);
  }

  #moved(event: PointerEvent): void {
    const press = this.#press;
    if (press?.id !== event.pointerId) return;
    if (press.part === 'room' && event.pointerType === 'touch') return;
    if (press.part === 'field' && this.#distance(press, event) < STILL) return;
    this.#turnCue(event);
  }

  #released(event: PointerEvent): void {
    const press = this.#press;
    this.#press = null;
    if (press === null || press.id !== event.pointerId) return;
    const tapped = press.part === 'room' && event.pointerType === 'touch';
    if (tapped && this.#distance(press, event) < STILL) this.#turnCue(event);
  }

  #distance(press: { readonly x: number; readonly y: number }, event: PointerEvent): number {
    return Math.hypot(event.clientX - press.x, event.clientY - press.y);
  }

  #partAt(event: PointerEvent): Part {
    if (event.target instanceof Element && event.target.classList.contains('probe-grip-room')) return 'grip';
    const [x, y] = this.#fieldAt(event);
    const noseX = this.#model?.strokes.noseX ?? 0;
    const noseY = this.#model?.strokes.noseY ?? 0;
    return Math.abs(x) <= noseX && Math.abs(y) <= noseY ? 'field' : 'room';
  }

  #layBall(event: PointerEvent): void {
    if (this.#model === null) return;
    this.#events.changed(withBallAt(this.#events.current(), this.#fieldAt(event), this.#model.area));
  }

  #turnCue(event: PointerEvent): void {
    this.#events.changed(withButtTowards(this.#events.current(), this.#fieldAt(event)));
  }

  /** Where the pointer is, in the table's frame. */
  #fieldAt(event: PointerEvent): readonly [number, number] {
    if (this.#view === null || this.#model === null) return [0, 0];
    const box = this.#picture.getBoundingClientRect();
    const zoom = this.#view.width / Math.max(1, box.width);
    const pixel = [(event.clientX - box.left) * zoom, (event.clientY - box.top) * zoom] as const;
    return roomToField(this.#model.pose, this.#view.toRoom(pixel));
  }
}

type Part = 'field' | 'grip' | 'room';

/** Begins the ids of the plan's patterns; there is one probe on a page. */
const IDS = 'probe-plan';
