/** What the schema cannot say of phases: which may follow which, and what a flight states beside the phase before it. */
import { FieldError } from '../math/field-error.ts';
import { type LegPlace, legsOf } from '../math/phases.ts';
import type { FileTakeoff, FileTakeoffContact } from './phase-schema.ts';
import { checkHeights } from './skill-file-1.ts';
import { MOST_FLIGHTS, PHASE_KINDS, type SkillFile } from './skill-schema.ts';

type FilePhase = SkillFile['phases'][number];

/** Before the schema: a kind of a later build is named as such, not as a field out of place. */
export function checkKinds(json: Record<string, unknown>): void {
  if (!Array.isArray(json.phases)) return;
  let flights = 0;
  json.phases.forEach((phase: unknown, i) => {
    const kind = typeof phase === 'object' && phase !== null ? (phase as { kind?: unknown }).kind : undefined;
    if (kind === 'flight') flights++;
    if (flights > MOST_FLIGHTS) throw new FieldError(`phases[${i}].kind`, kind, `at most ${MOST_FLIGHTS} flights`);
    if (typeof kind === 'string' && !PHASE_KINDS.some((known) => known === kind))
      throw new FieldError(`phases[${i}].kind`, kind, `${PHASE_KINDS.join(', ')}: this build knows no other kind`);
  });
}

const A: Readonly<Record<FilePhase['kind'], string>> = {
  swing: 'a swing',
  contact: 'a contact',
  flight: 'a flight',
  catch: 'a catch',
  landing: 'a landing',
  entry: 'an entry',
};

/** What may come after a phase. */
const NEXT: Readonly<Record<FilePhase['kind'], readonly FilePhase['kind'][]>> = {
  swing: ['flight'],
  contact: ['flight'],
  flight: ['contact', 'catch', 'landing', 'entry'],
  catch: ['flight'],
  landing: [],
  entry: [],
};

export function checkPhases(file: SkillFile): void {
  const { phases } = file;
  if (!phases.some(({ kind }) => kind === 'flight')) throw new FieldError('phases', 'no flight', 'at least one flight');
  phases.forEach(({ kind }, i) => {
    const former = phases[i - 1]?.kind;
    const allowed = former === undefined ? (['swing', 'contact', 'flight'] as const) : NEXT[former];
    if ((allowed as readonly string[]).includes(kind)) return;
    const place = former === undefined ? 'as the first' : `after phases[${i - 1}], ${A[former]}`;
    throw new FieldError(`phases[${i}].kind`, kind, `${allowed.length > 0 ? allowed.join(', ') : 'nothing'} ${place}`);
  });
  const last = phases[phases.length - 1];
  if (last.kind === 'contact' || last.kind === 'swing')
    throw new FieldError(
      `phases[${phases.length - 1}].kind`,
      last.kind,
      `a flight after it: a ${last.kind} ends nothing`,
    );
  legsOf(file).forEach((leg) => {
    checkContact(phases, leg);
    checkTakeoff(phases, leg);
    checkEnd(phases, leg);
  });
}

/** How the athlete comes to a contact is stated once: by it, or by the flight before. */
function checkContact(phases: readonly FilePhase[], { before = 0 }: LegPlace): void {
  const contact = phases[before];
  if (contact.kind !== 'contact') return;
  const field = `phases[${before}]`;
  const given = ['velocityMPerS', 'momentumKgM2PerS', 'entry'] as const satisfies readonly (keyof FileTakeoffContact)[];
  if (before === 0) {
    if (contact.velocityMPerS === undefined)
      throw new FieldError(`${field}.velocityMPerS`, undefined, 'a velocity, since no flight before gives it');
    return;
  }
  for (const name of given)
    if (contact[name] !== undefined)
      throw new FieldError(`${field}.${name}`, contact[name], `nothing: the flight in phases[${before - 1}] gives it`);
}

/** A take-off is stated once: by the flight, or by the phase before it. */
function checkTakeoff(phases: readonly FilePhase[], leg: LegPlace): void {
  const flight = phases[leg.flight];
  if (flight.kind !== 'flight') return;
  const { takeoff } = flight;
  const field = `phases[${leg.flight}].takeoff`;
  const before = leg.before === undefined ? undefined : phases[leg.before];
  const givenBy = (kind: string, path: string, value: unknown): FieldError =>
    new FieldError(path, value, `nothing: the ${kind} in phases[${leg.before}] gives it`);
  if (before?.kind === 'swing' || before?.kind === 'catch') {
    if (takeoff !== undefined) throw givenBy(before.kind, field, takeoff);
    if (before.kind === 'catch' && before.swing?.release === undefined)
      throw new FieldError(`phases[${leg.before}].swing.release`, undefined, 'a release, since a flight follows');
    return;
  }
  if (takeoff === undefined)
    throw new FieldError(field, undefined, 'the state at t = 0, since no phase before the flight gives all of it');
  checkHeights(takeoff, field);
  const isGiven = before?.kind === 'contact' && before.given !== undefined;
  for (const name of ['velocityMPerS', 'momentum'] as const satisfies readonly (keyof FileTakeoff)[]) {
    if (isGiven && takeoff[name] !== undefined) throw givenBy('contact', `${field}.${name}`, takeoff[name]);
    if (!isGiven && takeoff[name] === undefined)
      throw new FieldError(`${field}.${name}`, undefined, 'a value, since no phase before the flight gives it');
  }
}

/** How a flight ends goes with what comes after it. */
function checkEnd(phases: readonly FilePhase[], leg: LegPlace): void {
  const flight = phases[leg.flight];
  if (flight.kind !== 'flight' || leg.after === undefined) return;
  const after = phases[leg.after];
  const { end } = flight;
  const field = `phases[${leg.flight}].end`;
  if (after.kind === 'catch' && !('durationS' in end))
    throw new FieldError(field, end, `a durationS, within which the catch in phases[${leg.after}] is sought`);
  if (after.kind === 'entry' && end.surface?.kind !== 'water')
    throw new FieldError(
      `${field}.surface.kind`,
      end.surface?.kind,
      `water, which the entry in phases[${leg.after}] meets`,
    );
  if (after.kind === 'contact' && leg.after < phases.length - 1 && end.surface === undefined && !('durationS' in end))
    throw new FieldError(field, end, 'a surface to meet, or a durationS');
}
