/**
 * The window of a catch: of all times at which a swing could be let go, the span whose flights are caught, with the gap of the farther hand at each, and what fails just beyond either end
 * (found by flying it, not assumed from the side). The joints' plan counts from the release, whenever it comes.
 */

import type { Swing } from '../contact/swing.ts';
import { FieldError } from '../math/field-error.ts';
import { placeCatch } from './catch.ts';
import type { CatchAsk } from './catch-ask.ts';
import { makeHandWatch } from './catch-watch.ts';
import type { Contact } from './contact-room.ts';
import { type CatchOutcome, findCatch } from './find-catch.ts';
import { type LaunchedSkill, releasedRail } from './launch.ts';
import { flyReleased } from './release-flight.ts';
import { spanAround } from './span-around.ts';

interface CatchTry {
  /** s after the planned release (before: negative) */
  readonly late: number;
  /** of the farther hand at its least, m; NaN: no flight from there */
  readonly gap: number;
  readonly outcome?: CatchOutcome;
  readonly meets: boolean;
}

export interface CatchWindow {
  readonly tries: readonly CatchTry[];
  /** s after the planned release; undefined: none of the times looked at is caught */
  readonly span?: { readonly from: number; readonly to: number; readonly isOpen: readonly [boolean, boolean] };
  /** just beyond its two ends; undefined where it is open or nothing flies there */
  readonly ends: readonly [CatchOutcome | undefined, CatchOutcome | undefined];
}

interface CatchWindowOptions {
  readonly from?: number;
  readonly to?: number;
  readonly count?: number;
}

/** s each side */
const REACH = 0.04;
const COUNT = 41;
/** s: an end is named by what is flown so far beyond it */
const BEYOND = 1e-3;
/** error asked of a step of the flight: as in the release window */
const TOLERANCE = 1e-7;

/** The rail is where `ask` has it, from the one that is let go. */
export function calcCatchWindow(
  skill: LaunchedSkill,
  swing: Swing,
  ask: CatchAsk,
  contact: Pick<Contact, 'getRail'>,
  options: CatchWindowOptions = {},
): CatchWindow {
  const { from = -REACH, to = REACH, count = COUNT } = options;
  if (!(from <= 0 && from >= -swing.duration))
    throw new FieldError('window.fromS', from, 'a time on the bar, 0 or less');
  if (!(to >= 0 && to <= swing.until))
    throw new FieldError('window.toS', to, `a number from 0 to ${swing.until.toFixed(3)} s`);
  const { height } = contact.getRail(ask.rail);
  const attempt = (late: number): CatchTry => {
    const released = flyReleased(skill, swing, late, TOLERANCE);
    if (!released) return { late, gap: Number.NaN, meets: false };
    const { state } = released;
    const flight = released.flight.uncut ?? released.flight;
    const launch = { ...skill.launch, barX: -state.p_WScm_W[0], rail: releasedRail(swing, state.rail) };
    const { spec, left } = placeCatch({ launch }, ask);
    const outcome = findCatch(makeHandWatch(flight, { x: spec.alongX, y: height, ...(left ? { left } : {}) }), ask);
    return { late, gap: outcome.moment.gap, outcome, meets: outcome.kind === 'caught' };
  };
  const tries = Array.from({ length: count }, (_, i) => attempt(from + ((to - from) * i) / (count - 1)));
  const span = spanAround(tries, (late) => attempt(late).meets);
  if (!span) return { tries, ends: [undefined, undefined] };
  const beyond = (late: number, isOpen: boolean): CatchOutcome | undefined =>
    isOpen ? undefined : attempt(late).outcome;
  return {
    tries,
    span,
    ends: [beyond(span.from - BEYOND, span.isOpen[0]), beyond(span.to + BEYOND, span.isOpen[1])],
  };
}
