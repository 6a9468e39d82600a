/** The values that a flight starts with: those that the file states, and those that a swing or a push before the flight gives. */
import type { FileTakeoff, SkillFile } from '../../sim/index.ts';
import { beforeOf, flightOf } from '../../sim/math/phases.ts';
import { type Field, getFields, type JumpEdits } from '../document/fields.ts';
import { withFlight } from '../document/phases.ts';
import type { KeptTurn } from '../engine/jump.ts';
import type { FlightResult } from '../engine/result.ts';
import { formatNumber } from '../ui/numbers.ts';
import { quantityOf, say, sayNumber, unitBeside } from '../ui/units.ts';
import type { Flying } from './services.ts';
import { texts } from './words.ts';

/** Whether the file leaves values of the take-off to what is before the flight. */
export function isGiven(file: SkillFile): boolean {
  const { takeoff } = flightOf(file);
  return !takeoff?.velocityMPerS || !takeoff.momentum;
}

/** What gives values of the take-off that the file does not state. */
export const whatLaunches = (file: SkillFile): 'swing' | 'contact' | undefined => beforeOf(file)?.kind;

export function getStated(result: Pick<FlightResult, 'file' | 'athlete' | 'jump'>): Field[] {
  return getFields(result.file, result.athlete, result.jump).filter(({ group }) => group === 'takeoff');
}

/** Read only: an edit of what is launched is an edit of the swing or the push. */
export function getGiven(
  result: Pick<FlightResult, 'file' | 'athlete' | 'jump'>,
  launched: FileTakeoff,
): Omit<Field, 'write'>[] {
  const stated = new Set(getStated(result).map(({ id }) => id));
  return getStated({ ...result, file: withFlight(result.file, { takeoff: launched }) }).filter(
    ({ id }) => !stated.has(id),
  );
}

/** Those that say something: zeros are left out, but for the height. */
export const isTelling = ({ id, main, value }: Pick<Field, 'id' | 'main' | 'value'>): boolean =>
  id === 'height' || (value !== 0 && (main || id !== 'gravity'));

/** "the floor". */
export const wordPushedOff = ({ place, skill }: Pick<FlightResult, 'place' | 'skill'>): string =>
  texts.pushedOff[skill.launch.place === 'springboard' ? 'springboard' : place];

/** The highest point over what the place counts from: bed, water, else the floor. */
export function highestOver({ jump, apparatus }: Pick<FlightResult, 'jump' | 'apparatus'>): {
  readonly m: number;
  readonly over: 'floor' | 'bed' | 'water';
} {
  const { pieces, leaves } = apparatus;
  const left = leaves === undefined ? undefined : pieces[leaves];
  if (left?.kind === 'bed') return { m: jump.highest - left.y[1], over: 'bed' };
  const water = pieces.find(({ kind }) => kind === 'water');
  return water ? { m: jump.highest - water.y[1], over: 'water' } : { m: jump.highest, over: 'floor' };
}

/** What is typed of the take-off is answered by the flight of the document. */
export const jumpEditsOf = (
  jumping: Flying['jumping'],
  from: FlightResult,
  kept: KeptTurn = 'straight',
): JumpEdits => ({
  upFor: (airTime) => jumping.upFor(from, airTime),
  keepMomentum: (edited) => jumping.keepMomentum(from, edited),
  turnBy: (by, value) => jumping.turnBy(from, by, value),
  carryOver: (edited) => jumping.carryOver(from, edited, kept),
});

type Shown = Pick<Field, 'unit' | 'value' | 'decimals'>;

export function numberOf({ unit, value, decimals }: Shown): string {
  const quantity = quantityOf(unit);
  return quantity ? sayNumber(quantity, value, decimals) : formatNumber(value, decimals);
}

export function unitOf({ unit }: Shown): string {
  const quantity = quantityOf(unit);
  return quantity ? unitBeside(quantity) : unit;
}

export function sayField(field: Shown): string {
  const quantity = quantityOf(field.unit);
  return quantity ? say(quantity, field.value, field.decimals) : `${numberOf(field)} ${field.unit}`.trim();
}
