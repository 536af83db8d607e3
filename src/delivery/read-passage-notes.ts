import { DEFAULTS } from '../equipment/defaults.js';
import { writeMm } from '../equipment/read-plausible.js';
import { listNames } from '../room/names.js';

/** Verb phrases for one thing and for several that a default was used for, in the order of the report. */
function phrases(): Readonly<Record<DefaultName, readonly [one: string, several: string]>> {
  const { wallDepth, turn, stepRise, winderSteps, tilt } = DEFAULTS.delivery;
  return {
    wallDepth: same(`${writeMm(wallDepth)} deep`),
    leaf: [
      'gains nothing by taking a door leaf off: none was given',
      'gain nothing by taking a door leaf off: none was given',
    ],
    before: ['has room enough in front of it', 'have room enough in front of them'],
    after: ['has room enough behind it', 'have room enough behind them'],
    left: ['has floor without end to the left', 'have floor without end to the left'],
    right: ['has floor without end to the right', 'have floor without end to the right'],
    floorHeight: [
      'has height enough over the floor beside it where none was given',
      'have height enough over the floor beside them where none was given',
    ],
    sill: ['has no sill', 'have no sill'],
    widthAfter: ['is as wide after the turn as before', 'are as wide after the turn as before'],
    heightAfter: ['is as high after the turn as before', 'are as high after the turn as before'],
    turn: [`turns by ${turn} degrees`, `turn by ${turn} degrees`],
    run: ['runs without end', 'run without end'],
    bottom: ['has room enough at the foot', 'have room enough at the foot'],
    top: ['has room enough at the head', 'have room enough at the head'],
    stepRise: [`has steps that rise ${writeMm(stepRise)}`, `have steps that rise ${writeMm(stepRise)}`],
    quarterDepth: [
      'is as deep as the flight above is wide',
      'are as deep as the flights above them are wide',
    ],
    halfDepth: ['is as deep as the flight below is wide', 'are as deep as the flights below them are wide'],
    breadth: ['is as broad as the flight below is wide', 'are as broad as the flights below them are wide'],
    well: ['has no well between its flights', 'have no well between their flights'],
    climb: [`climbs ${winderSteps} steps in its turn`, `climb ${winderSteps} steps in their turns`],
    count: ['is carried once', 'are carried once each'],
    held: ['may be held every way', 'may be held every way'],
    tilt: [
      `may be tilted by ${tilt} degrees out of each way of holding it`,
      `may be tilted by ${tilt} degrees out of each way of holding them`,
    ],
    carriers: [
      'has as many carriers as its mass asks for',
      'have as many carriers as the mass of each asks for',
    ],
  };
}

function same(what: string): readonly [string, string] {
  return [`is ${what}`, `are ${what}`];
}

/** What a default was used for. */
export type DefaultName =
  | 'wallDepth'
  | 'leaf'
  | 'before'
  | 'after'
  | 'left'
  | 'right'
  | 'floorHeight'
  | 'sill'
  | 'widthAfter'
  | 'heightAfter'
  | 'turn'
  | 'run'
  | 'bottom'
  | 'top'
  | 'stepRise'
  | 'quarterDepth'
  | 'halfDepth'
  | 'breadth'
  | 'well'
  | 'climb'
  | 'count'
  | 'held'
  | 'tilt'
  | 'carriers';

/** Which defaults were used, and for what: each becomes one sentence, however many things it was used for. */
export class DefaultNotes {
  private readonly users = new Map<string, string[]>();

  add(what: DefaultName, name: string): void {
    const names = this.users.get(what) ?? [];
    if (!names.includes(name)) names.push(name);
    this.users.set(what, names);
  }

  sentences(): string[] {
    return Object.entries(phrases()).flatMap(([what, [one, several]]) => {
      const names = this.users.get(what) ?? [];
      if (names.length === 0) return [];
      return [`${listNames(names)} ${names.length === 1 ? one : several} (default).`];
    });
  }
}
