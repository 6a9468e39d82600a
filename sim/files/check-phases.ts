/** What the schema cannot say of phases: which may follow which, and what a flight states beside the phase before it. */
import { FieldError } from '../math/field-error.ts';
import { beforeOf, flightOf } from '../math/phases.ts';
import { pathOf } from './phase-path.ts';
import type { FileTakeoff } from './phase-schema.ts';
import { checkHeights } from './skill-file-1.ts';
import { PHASE_KINDS, type SkillFile } from './skill-schema.ts';

/** Before the schema: a kind of a later build, or a second flight, is named as such, not as a field out of place or a list too long. */
export function checkKinds(json: Record<string, unknown>): void {
  if (!Array.isArray(json.phases)) return;
  let flights = 0;
  json.phases.forEach((phase: unknown, i) => {
    const kind = typeof phase === 'object' && phase !== null ? (phase as { kind?: unknown }).kind : undefined;
    if (kind === 'flight') flights++;
    if (flights > 1)
      throw new FieldError(`phases[${i}].kind`, kind, 'exactly one flight: this build knows no second one');
    if (typeof kind === 'string' && !PHASE_KINDS.some((known) => known === kind))
      throw new FieldError(`phases[${i}].kind`, kind, `${PHASE_KINDS.join(', ')}: this build knows no other kind`);
  });
}

const RANK = { swing: 0, contact: 0, flight: 1, landing: 2 } as const;

export function checkPhases(file: SkillFile): void {
  const { phases } = file;
  if (!phases.some(({ kind }) => kind === 'flight')) throw new FieldError('phases', 'no flight', 'exactly one flight');
  phases.forEach(({ kind }, i) => {
    const former = phases[i - 1]?.kind;
    if (former === undefined || RANK[former] < RANK[kind]) return;
    const allowed =
      RANK[former] === RANK[kind]
        ? `one phase there, and phases[${i - 1}] is a ${former}`
        : `phases in the order of time: ${kind} comes before ${former}`;
    throw new FieldError(`phases[${i}].kind`, kind, allowed);
  });
  checkTakeoff(file);
}

/** A take-off is stated once: by the flight, or by the phase before it. */
function checkTakeoff(file: SkillFile): void {
  const { takeoff } = flightOf(file);
  const field = `${pathOf(file, 'flight')}.takeoff`;
  const before = beforeOf(file);
  if (before?.kind === 'swing') {
    if (takeoff !== undefined) throw givenBy('swing', field, takeoff);
    return;
  }
  if (takeoff === undefined)
    throw new FieldError(field, undefined, 'the state at t = 0, since no phase before the flight gives all of it');
  checkHeights(takeoff, field);
  const isGiven = before?.given !== undefined;
  for (const name of ['velocityMPerS', 'momentum'] as const satisfies readonly (keyof FileTakeoff)[]) {
    if (isGiven && takeoff[name] !== undefined) throw givenBy('contact', `${field}.${name}`, takeoff[name]);
    if (!isGiven && takeoff[name] === undefined)
      throw new FieldError(`${field}.${name}`, undefined, 'a value, since no phase before the flight gives it');
  }
}

const givenBy = (kind: string, field: string, value: unknown): FieldError =>
  new FieldError(field, value, `nothing: the ${kind} in phases[0] gives it`);
