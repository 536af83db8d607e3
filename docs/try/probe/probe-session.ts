import type { FitInput, FitReport } from 'elbowroom';
import type { ShotTally, StrokeScene } from 'elbowroom/stroke';
import { AnswerPanel } from './answer-panel.js';
import { el } from './dom.js';
import { ElevationFigure } from './elevation-figure.js';
import { firstShot } from './first-shot.js';
import { Estimate, FrameBudget } from './frame-budget.js';
import { judgeShot } from './judge.js';
import { MapFigure, type MapState, type Shares } from './map-figure.js';
import { NumbersForm } from './numbers-form.js';
import { PlanFigure } from './plan-figure.js';
import { planKey } from './plan-key.js';
import { cueFor, type ProbeModel, probeModel, strokesFor } from './probe-model.js';
import { Refiner, type RefineStep, sampleShots } from './refine.js';
import { allowed, type Shot } from './shot.js';
import { SliderPanel } from './slider-panel.js';
import type { ProbeStrings } from './strings.js';
import { STYLE } from './style.js';

/** What may still be drawn in the same frame when so much of it is spent, ms. */
const FRAME = 12;
/** Nothing has moved for so long, ms: then the slow drawing is made and the map is refined. */
const PAUSE = { elevation: 90, refine: 160 } as const;

/** What one redraw took, told to whoever listens: `probe-frame` on the probe's element. */
export interface FrameDetail {
  readonly milliseconds: number;
  /** Shots that were tried for the map; 0 where only the shot changed. */
  readonly shots: number;
  /** Whether the side elevation was drawn in the same frame. */
  readonly elevation: boolean;
}

/** Holds the parts of the probe together: what changed is drawn once in the next frame. */
export class ProbeSession {
  readonly #root: HTMLElement;
  readonly #strings: ProbeStrings;
  readonly #plan: PlanFigure;
  readonly #elevation: ElevationFigure;
  readonly #answer: AnswerPanel;
  readonly #numbers: NumbersForm;
  readonly #sliders: SliderPanel;
  readonly #map: MapFigure;
  readonly #refiner: Refiner;
  readonly #body: HTMLElement;
  readonly #noPlace: HTMLElement;
  readonly #budget = new FrameBudget();
  readonly #elevationTime = new Estimate();
  #model: ProbeModel | null = null;
  #strokes: StrokeScene | null = null;
  #shot: Shot = { x: 0, y: 0, direction: 0 };
  #place = 0;
  #frame = 0;
  #shotChanged = false;
  #strokeChanged = false;
  #elevationTimer = 0;
  #refineTimer = 0;

  constructor(root: HTMLElement, strings: ProbeStrings, startWorker: (() => Worker) | null) {
    this.#root = root;
    this.#strings = strings;
    const keys = el('p', { id: 'probe-keys', class: 'probe-help' }, strings.keys);
    this.#plan = new PlanFigure(strings, keys.id, {
      current: () => this.#shot,
      changed: (shot) => this.#take(shot),
      resized: () => this.#draw('shot'),
    });
    this.#elevation = new ElevationFigure(strings);
    this.#answer = new AnswerPanel(strings);
    this.#numbers = new NumbersForm(strings, (shot) => this.#take(shot));
    this.#sliders = new SliderPanel(strings, () => this.#draw('stroke'));
    this.#map = new MapFigure(strings);
    this.#refiner = new Refiner(startWorker, (step) => this.#refined(step));
    this.#noPlace = el('p', {}, strings.noPlace);
    this.#body = this.#layOut(keys);
  }

  show(input: FitInput, report: FitReport): void {
    const before = this.#model;
    const model = probeModel(input, report);
    this.#stop();
    this.#model = model;
    this.#place++;
    this.#root.replaceChildren(this.#body);
    this.#body.classList.toggle('probe-empty', model === null);
    this.#noPlace.hidden = model !== null;
    if (model === null) return;
    const same = before !== null && JSON.stringify(before.pose) === JSON.stringify(model.pose);
    this.#shot = same ? allowed(this.#shot, model.area) : firstShot(report.gaps, model.area);
    this.#sliders.setWritten(model.asWritten);
    this.#numbers.setLimits(model.area.halfX, model.area.halfY);
    this.#plan.setModel(model);
    this.#map.setModel(model);
    this.#draw('stroke');
  }

  clear(): void {
    this.#stop();
    this.#model = null;
    this.#root.replaceChildren();
  }

  #take(shot: Shot): void {
    if (this.#model === null) return;
    this.#shot = allowed(shot, this.#model.area);
    this.#draw('shot');
  }

  #draw(what: 'shot' | 'stroke'): void {
    if (this.#model === null) return;
    if (what === 'stroke') this.#strokeChanged = true;
    this.#shotChanged = true;
    if (this.#frame === 0) this.#frame = window.requestAnimationFrame(() => this.#redraw());
  }

  #redraw(): void {
    this.#frame = 0;
    const model = this.#model;
    if (model === null) return;
    const start = performance.now();
    const settings = this.#sliders.settings;
    let shots = 0;
    if (this.#strokeChanged || this.#strokes === null) {
      this.#strokes = strokesFor(model, settings);
      shots = this.#drawMap(model, this.#strokes);
    }
    if (this.#shotChanged) {
      const judged = judgeShot(model, this.#strokes, settings, this.#shot);
      this.#plan.draw(judged);
      this.#answer.draw(judged);
      this.#numbers.show(this.#shot);
      this.#map.mark(this.#shot);
    }
    this.#strokeChanged = false;
    this.#shotChanged = false;
    const spent = performance.now() - start;
    const elevation = this.#elevationTime.within(FRAME - spent);
    window.clearTimeout(this.#elevationTimer);
    if (elevation) this.#drawElevation();
    else this.#elevationTimer = window.setTimeout(() => this.#drawElevation(), PAUSE.elevation);
    const detail: FrameDetail = { milliseconds: performance.now() - start, shots, elevation };
    this.#root.dispatchEvent(new CustomEvent('probe-frame', { detail }));
  }

  #drawElevation(): void {
    if (this.#model === null) return;
    const start = performance.now();
    this.#elevation.draw(this.#model, this.#sliders.settings, this.#shot);
    this.#elevationTime.took(performance.now() - start);
  }

  /** The coarse map at once, the fine one once nothing moves. Returns the shots that were tried. */
  #drawMap(model: ProbeModel, strokes: StrokeScene): number {
    this.#refiner.stop();
    window.clearTimeout(this.#refineTimer);
    const { report } = model;
    const own = report.cues[0];
    if (this.#sliders.isAsWritten && report.shots !== undefined && own !== undefined) {
      const state: MapState = { shots: report.shots.shots, progress: null, source: 'report' };
      this.#map.draw(report.shots, { ...own.shares, error: own.shareError }, state);
      return 0;
    }
    const plan = this.#budget.next();
    const cue = cueFor(model, this.#sliders.settings);
    const start = performance.now();
    const tally = sampleShots(strokes, model.standing, cue, plan);
    this.#budget.took(tally.shots, performance.now() - start);
    this.#drawTally(tally, { shots: tally.shots, progress: { done: 0, total: 1 }, source: 'frame' });
    this.#refineTimer = window.setTimeout(() => this.#refiner.start(this.#place, strokes, cue), PAUSE.refine);
    return tally.shots;
  }

  #refined({ done, total, tally }: RefineStep): void {
    const progress = done < total ? { done, total } : null;
    this.#drawTally(tally, { shots: tally.shots, progress, source: 'sample' });
  }

  #drawTally({ grid, cues: [sampled] }: ShotTally, state: MapState): void {
    const own = this.#model?.report.cues[0];
    if (sampled === undefined || own === undefined) return;
    // What the report says of its own cue and stroke may be proved, or known better than from this sample.
    const reported = this.#sliders.isAsWritten && own.shareError <= sampled.error;
    const shares: Shares = reported ? { ...own.shares, error: own.shareError } : sampled;
    this.#map.draw(grid, shares, state);
  }

  #stop(): void {
    this.#refiner.stop();
    window.cancelAnimationFrame(this.#frame);
    window.clearTimeout(this.#elevationTimer);
    window.clearTimeout(this.#refineTimer);
    this.#frame = 0;
    this.#strokes = null;
  }

  #layOut(keys: HTMLElement): HTMLElement {
    const strings = this.#strings;
    return el(
      'section',
      { class: 'probe', 'aria-labelledby': 'probe-heading' },
      el('style', {}, STYLE),
      el('h2', { id: 'probe-heading' }, strings.heading),
      this.#noPlace,
      el('p', { class: 'probe-note' }, strings.note),
      el(
        'div',
        { class: 'probe-shot-part' },
        el(
          'figure',
          { class: 'probe-plan-figure' },
          el('figcaption', {}, strings.planTitle),
          el('p', { class: 'probe-help' }, strings.howTo),
          this.#plan.element,
          planKey(strings),
          keys,
        ),
        el('div', { class: 'probe-side' }, this.#answer.element, this.#numbers.element),
        el(
          'figure',
          { class: 'probe-elevation-figure' },
          el('figcaption', {}, strings.elevationTitle),
          this.#elevation.element,
        ),
      ),
      el('h3', {}, strings.slidersHeading),
      el('p', { class: 'probe-note' }, strings.slidersNote),
      el('div', { class: 'probe-stroke-part' }, this.#sliders.element, this.#map.element),
    );
  }
}
