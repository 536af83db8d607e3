import { DEFAULTS } from './defaults.js';
import type { Source } from './equipment-types.js';

/** A published guideline figure for handling loads by hand, to set beside what each carrier has to take. */
export interface HandlingGuideline {
  readonly id: 'niosh' | 'en-1005-2' | 'hse-team';
  /** As a person would look it up. */
  readonly name: string;
  /** kg that it sets as the most for each of the carriers, before it takes off for reach, height, distance, stairs and the rest. */
  readonly perCarrier: number;
  readonly source: Source;
}

/** How a mass is shared out, and which guideline figures each share exceeds. None of it says that anything is safe. */
export interface Handling {
  readonly carriers: number;
  /** kg, as if all took the same. On stairs and at the ends of a long piece they do not. */
  readonly massPerCarrier: number;
  /** Lowest figure first; empty when none is exceeded, which does not make the lift safe. */
  readonly exceeded: readonly HandlingGuideline[];
}

/** As many as keep every share at or under the default mass per carrier, from one to the most that find a hold. Mass in kg. */
export function usualCarriers(mass: number): number {
  const { carrierMass, mostCarriers } = DEFAULTS.delivery;
  return Math.min(mostCarriers, Math.max(1, Math.ceil(mass / carrierMass)));
}

/**
 * The mass of one piece (kg) shared out evenly, beside published guideline figures; a share equal to a figure does not exceed it.
 *
 * @param carriers How many carry it; null for as many as is usual for the mass.
 */
export function handlingOf(mass: number, carriers: number | null = null): Handling {
  const people = carriers ?? usualCarriers(mass);
  const massPerCarrier = mass / people;
  const exceeded = guidelinesFor(people).filter(({ perCarrier }) => massPerCarrier > perCarrier);
  return { carriers: people, massPerCarrier, exceeded };
}

/** The guideline figures for each of so many carriers, the lowest first. */
export function guidelinesFor(carriers: number): readonly HandlingGuideline[] {
  const all: readonly HandlingGuideline[] = [
    {
      id: 'niosh',
      name: 'load constant of the revised NIOSH lifting equation (51 lb)',
      perCarrier: NIOSH_LOAD_CONSTANT,
      source: 'Waters et al., Applications Manual for the Revised NIOSH Lifting Equation, 1994 (from memory)',
    },
    {
      id: 'en-1005-2',
      name: 'reference mass of EN 1005-2 for the adult working population',
      perCarrier: EN_REFERENCE_MASS,
      source: 'EN 1005-2:2003, table 1 (from memory)',
    },
    {
      id: 'hse-team',
      name: `HSE guideline of ${HSE_ONE_PERSON} kg${teamWords(carriers)}`,
      perCarrier: HSE_ONE_PERSON * teamShare(carriers),
      source: 'HSE, guidance on manual handling, L23 (from memory)',
    },
  ];
  return [...all].sort((a, b) => a.perCarrier - b.perCarrier);
}

/** kg, for a lift with both hands under the best of conditions. */
const NIOSH_LOAD_CONSTANT = 23;
/** kg. The standard's lower figures, 15 kg for young and old workers and less at home, are not used here. */
const EN_REFERENCE_MASS = 25;
/** kg, for men, held close to the body between knuckle and elbow height. */
const HSE_ONE_PERSON = 25;

/**
 * What a team can lift as a share of what its members can lift alone: two thirds for two, half for three (HSE). For more than three
 * nothing is printed; half is used.
 */
function teamShare(carriers: number): number {
  if (carriers <= 1) return 1;
  return carriers === 2 ? 2 / 3 : 1 / 2;
}

function teamWords(carriers: number): string {
  if (carriers <= 1) return '';
  if (carriers === 2) return ', two thirds of it in a team of two';
  return carriers === 3 ? ', half of it in a team of three' : ', half of it as in a team of three';
}
