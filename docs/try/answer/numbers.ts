import { formatLength, type SentenceUnits, type Shares, type Verdict } from 'elbowroom';
import type { Strings } from '../strings.js';

/** Numbers of the answer as text. Room that is there is rounded down and what is needed up, so that no rounding makes a miss a fit. */
export class Numbers {
  readonly #units: SentenceUnits;
  readonly #strings: Strings;

  constructor(units: SentenceUnits, strings: Strings) {
    this.#units = units;
    this.#strings = strings;
  }

  /** A measurement as it is. */
  near(mm: number): string {
    return formatLength(mm, this.#units);
  }

  /** Room that is there. */
  down(mm: number): string {
    const step = STEPS[this.#units];
    return formatLength(Math.floor(mm / step + NOISE) * step, this.#units);
  }

  /** A bound that nothing exceeds. */
  up(mm: number): string {
    const step = STEPS[this.#units];
    return formatLength(Math.ceil(mm / step - NOISE) * step, this.#units);
  }

  /** Shares in whole percents that never say all or none where it is not. */
  shares(shares: Shares, verdict: Verdict): { open: string; cramped: string; blocked: string } {
    const open = Math.floor(shares.open * 100 + NOISE);
    const blocked = Math.ceil(shares.blocked * 100 - NOISE);
    const cramped = Math.max(0, 100 - open - blocked);
    return {
      open: this.#percent(open, shares.open > 0, verdict === 'clear'),
      cramped: this.#percent(cramped, shares.cramped > 0 || verdict === 'tight', true),
      blocked: this.#percent(blocked, shares.blocked > 0 || verdict === 'partial', true),
    };
  }

  #percent(whole: number, some: boolean, mayBeAll: boolean): string {
    const { percent, under, none, all } = this.#strings.answer;
    if (whole <= 0) return some ? under(1) : none;
    if (whole >= 100) return mayBeAll ? all : percent(99);
    return percent(whole);
  }
}

const STEPS: Readonly<Record<SentenceUnits, number>> = { mm: 1, cm: 10, ftin: 12.7 };
/** Of a step: what doubles leave of a whole number of them. */
const NOISE = 1e-6;
