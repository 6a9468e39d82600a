/**
 * The code of a flown skill, where it may be said: the count is within the judging widths, and the flight ends as what is coded ends. A trampoline code ends
 * on the feet or, on a bed, on the seat, knees, front or back; into water the dive number says how it ends. Elsewhere the reason why there is none.
 */
import { DEG, RAD, REV } from '../math/angles.ts';
import type { Frames } from '../measure/frames.ts';
import type { Summary } from '../measure/summary.ts';
import { codeColumns, codeOfFlight, type FlightCode } from './code-of-flight.ts';

/** Off a whole half twist, and off the wanted landing: what the verdict calls missed (skill-verdict.ts). */
export const CODE_WIDTHS = { twist: 30 * RAD, somersault: 60 * RAD } as const;

/** `surface`: what is landed on, as in the file. */
export function codeOfSkill(summary: Summary, frames: Frames, surface?: string): FlightCode {
  const found = codeOfFlight(codeColumns(summary.body, frames));
  if (found.kind === 'none') return found;
  const reason = offCount(summary) ?? otherEnd(summary, frames, found.code.quarters, surface);
  return reason === undefined ? found : { kind: 'none', reason };
}

function offCount({ twists = 0, landing }: Summary): string | undefined {
  const half = Math.abs(2 * twists - Math.round(2 * twists)) * (REV / 2);
  if (half > CODE_WIDTHS.twist)
    return `${twists.toFixed(2)} twists are ${(half * DEG).toFixed(0)} deg off a whole half twist, and a skill is named within ${(CODE_WIDTHS.twist * DEG).toFixed(0)}`;
  const short = landing?.short ?? 0;
  if (Math.abs(short) > CODE_WIDTHS.somersault)
    return `the landing is ${Math.abs(short * DEG).toFixed(0)} deg ${short > 0 ? 'short' : 'past'}, and a skill is named within ${(CODE_WIDTHS.somersault * DEG).toFixed(0)}`;
  return undefined;
}

const ON_FEET = 0;
const UPSIDE_DOWN = 2;
/** What a bed takes at an even number of half somersaults, counted from standing. */
const UPRIGHT_ON_BED: readonly string[] = ['feet', 'seat', 'knees'];

function otherEnd(summary: Summary, frames: Frames, quarters: number, surface?: string): string | undefined {
  const { touchedBy } = summary;
  if (!summary.lands || touchedBy === undefined || surface === 'water') return undefined;
  // counted from standing, whatever the attitude at take-off: a release or a push off the hands begins on the way round
  const turned = Math.round((4 * Math.abs(frames.somersault[0])) / REV) + quarters;
  const end = turned % 4;
  const isCoded =
    surface !== 'trampoline'
      ? end === ON_FEET && touchedBy === 'feet'
      : end === ON_FEET
        ? UPRIGHT_ON_BED.includes(touchedBy)
        : end !== UPSIDE_DOWN;
  return isCoded ? undefined : `the flight comes down on the ${touchedBy}, ${turned} quarter somersaults from standing`;
}
