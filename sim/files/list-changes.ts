/**
 * What differs between two skill files, block by block and key by key, in words: "every change since the last kept
 * version". Blocks and keys are paired in order (by shape, by angle), so that one put in between is one change. As in the file:
 * degrees, metres, seconds, revolutions.
 */
import { own } from '../math/own.ts';
import { afterOf, beforeOf, flightOf } from '../math/phases.ts';
import { pathOf } from './phase-path.ts';
import type { FileBlock, FileKey, FileTime } from './schedule-schema.ts';
import type { SkillFile } from './skill-schema.ts';

export interface Change {
  readonly kind: 'changed' | 'added' | 'removed';
  /** place in the file: "phases[0].takeoff.velocityMPerS.up", "phases[0].schedule.blocks[1].from" (in the file that has it) */
  readonly field: string;
  readonly before?: unknown;
  readonly after?: unknown;
  readonly words: string;
}

/** Texts, in one place, ready for translation. */
const FIELD_WORDS: Readonly<Record<string, string>> = {
  title: 'title',
  note: 'note',
  athlete: 'athlete',
  gravityMPerS2: 'gravity (m/s2)',
  takeoff: 'take-off',
  'takeoff.massCentreHeightM': 'take-off height of the mass centre (m)',
  'takeoff.lowestPointHeightM': 'take-off height of the lowest point (m)',
  'takeoff.velocityMPerS.along': 'take-off speed along (m/s)',
  'takeoff.velocityMPerS.up': 'take-off speed up (m/s)',
  'takeoff.velocityMPerS.across': 'take-off speed across (m/s)',
  'takeoff.attitudeDeg.somersault': 'lean at take-off (deg)',
  'takeoff.attitudeDeg.tilt': 'tilt at take-off (deg)',
  'takeoff.attitudeDeg.twist': 'twist at take-off (deg)',
  'takeoff.momentum.straightSomersaults': 'straight somersaults that the angular momentum is enough for',
  'takeoff.momentum.vectorKgM2PerS': 'angular momentum (kg·m²/s)',
  'takeoff.momentum.ratesRevPerS.somersault': 'somersault rate at take-off (rev/s)',
  'takeoff.momentum.ratesRevPerS.tilt': 'tilt rate at take-off (rev/s)',
  'takeoff.momentum.ratesRevPerS.twist': 'twist rate at take-off (rev/s)',
  before: 'before the flight',
  after: 'landing',
  'end.durationS': 'duration (s)',
  'end.surface.kind': 'landing surface',
  'end.surface.heightM': 'height of the landing surface (m)',
  'schedule.base': 'shape at rest',
  'schedule.samples': 'measured angles',
  'schedule.smoothing': 'smoothing of measured angles',
  'schedule.contacts': 'hands that hold on',
  shapes: 'shapes of the file',
  target: 'target',
  worksheets: 'worksheets',
  recordings: 'recordings',
};

/** What differs between two skill files, each by its path with both values; blocks and keys are matched by their role, not by their place. */
export function listChanges(before: SkillFile, after: SkillFile): Change[] {
  const out: Change[] = [];
  const [a, b] = [byRole(before), byRole(after)];
  diff('', a.rest, b.rest, out);
  for (const part of ['base', 'samples', 'smoothing', 'contacts'] as const)
    diff(`schedule.${part}`, a.schedule[part], b.schedule[part], out);
  diffBlocks(a.schedule.blocks ?? [], b.schedule.blocks ?? [], out);
  diffKeys(a.schedule.keys ?? [], b.schedule.keys ?? [], out);
  return out.map((change) => ({ ...change, field: placeOf(change.field, change.kind === 'removed' ? before : after) }));
}

/** A file by what its phases are for, so that a phase added in front moves no other. */
function byRole({ phases, ...rest }: SkillFile) {
  const { kind: _, schedule, ...flight } = flightOf({ phases });
  return { schedule, rest: { ...rest, ...flight, before: beforeOf({ phases }), after: afterOf({ phases }) } };
}

/** "takeoff.velocityMPerS.up" as it is found in the file. */
function placeOf(field: string, file: SkillFile): string {
  const [, role, inner] = /^(before|after|takeoff|end|schedule)(.*)$/.exec(field) ?? [];
  if (role === 'before') return pathOf(file, beforeOf(file)?.kind ?? 'flight') + inner;
  if (role === 'after') return pathOf(file, 'landing') + inner;
  return role === undefined ? field : `${pathOf(file, 'flight')}.${field}`;
}

const isRecord = (x: unknown): x is Record<string, unknown> => typeof x === 'object' && x !== null && !Array.isArray(x);

/** Equal in what they hold, whatever the order of the fields. */
function same(a: unknown, b: unknown): boolean {
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((x, i) => same(x, b[i]));
  if (isRecord(a) && isRecord(b)) {
    const names = new Set([...Object.keys(a), ...Object.keys(b)]);
    return [...names].every((n) => same(a[n], b[n]));
  }
  return a === b;
}

function diff(field: string, before: unknown, after: unknown, out: Change[]): void {
  if (same(before, after)) return;
  if (isRecord(before) && isRecord(after)) {
    for (const name of new Set([...Object.keys(before), ...Object.keys(after)]))
      diff(field ? `${field}.${name}` : name, before[name], after[name], out);
    return;
  }
  out.push(makeChange(field, wordsOf(field), before, after));
}

/** The words of a field, or of the nearest one around it with the rest of its name. */
function wordsOf(field: string): string {
  const parts = field.split('.');
  for (let n = parts.length; n > 0; n--) {
    const known = own(FIELD_WORDS, parts.slice(0, n).join('.'));
    if (known) return n === parts.length ? known : `${known}, ${parts.slice(n).map(spell).join(' ')}`;
  }
  return parts.map(spell).join(', ');
}

/** "shoulderElevationR" as "right shoulder elevation". */
function spell(name: string): string {
  const words = name.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
  const side = words.endsWith(' l') ? 'left ' : words.endsWith(' r') ? 'right ' : '';
  return side + (side ? words.slice(0, -2) : words);
}

function makeChange(
  field: string,
  what: string,
  before: unknown,
  after: unknown,
  say: (x: unknown) => string = show,
): Change {
  if (before === undefined) return { kind: 'added', field, after, words: `${what}: ${say(after)}, added` };
  if (after === undefined) return { kind: 'removed', field, before, words: `${what}: ${say(before)}, removed` };
  return { kind: 'changed', field, before, after, words: `${what}: ${say(before)} -> ${say(after)}` };
}

/** characters of a text; titles that differ at their end still differ here */
const MOST = 80;
/** What came from radians has noise behind its digits: 3.0000000000000004. */
const showNumber = (x: number): string => String(Number(x.toPrecision(10)));

function show(x: unknown): string {
  if (Array.isArray(x))
    return x.every((v) => typeof v === 'number') ? x.slice(0, 6).map(showNumber).join(', ') : `${x.length} of them`;
  if (isRecord(x)) {
    if (typeof x.ref === 'string') return x.ref;
    if (typeof x.name === 'string') return x.name;
    return Object.entries(x)
      .filter(([, v]) => !isRecord(v))
      .slice(0, 4)
      .map(([k, v]) => `${spell(k)} ${show(v)}`)
      .join(', ');
  }
  const text = typeof x === 'number' ? showNumber(x) : String(x);
  return text.length > MOST ? `${text.slice(0, MOST - 3)}...` : text;
}

const EVENT = { takeoff: 'take-off', apex: 'the highest point', touchdown: 'touchdown' } as const;

/** "0.36 s after take-off" */
function showTime(x: unknown): string {
  const { anchor, s } = x as FileTime;
  return s === 0
    ? `at ${EVENT[anchor]}`
    : `${Number(Math.abs(s).toFixed(4))} s ${s < 0 ? 'before' : 'after'} ${EVENT[anchor]}`;
}

function diffBlocks(before: readonly FileBlock[], after: readonly FileBlock[], out: Change[]): void {
  for (const [i, j] of pairUp(before, after, (b) => b.shape, same)) {
    const a = i === undefined ? undefined : before[i];
    const b = j === undefined ? undefined : after[j];
    const field = `schedule.blocks[${j ?? i}]`;
    if (!a || !b) {
      const one = a ?? b;
      if (one) out.push(makeChange(field, `block "${one.shape}"`, a?.from, b?.from, showTime));
      continue;
    }
    const what = `block ${(j ?? 0) + 1} "${b.shape}"`;
    if (a.shape !== b.shape) out.push(makeChange(`${field}.shape`, `block ${(j ?? 0) + 1}`, a.shape, b.shape));
    if (!same(a.from, b.from)) out.push(makeChange(`${field}.from`, `${what} starts`, a.from, b.from, showTime));
    if (!same(a.to, b.to)) out.push(makeChange(`${field}.to`, `${what} ends`, a.to, b.to, showTime));
    if (!same(a.arms, b.arms)) out.push(makeChange(`${field}.arms`, `${what}, path of the arms`, a.arms, b.arms));
    for (const name of new Set([...Object.keys(a.adjustDeg ?? {}), ...Object.keys(b.adjustDeg ?? {})])) {
      const [x, y] = [a.adjustDeg?.[name], b.adjustDeg?.[name]];
      if (x !== y) out.push(makeChange(`${field}.adjustDeg.${name}`, `${what}, ${spell(name)} (deg)`, x, y));
    }
  }
}

function diffKeys(before: readonly FileKey[], after: readonly FileKey[], out: Change[]): void {
  for (const [i, j] of pairUp(
    before,
    after,
    (k) => k.angle,
    (a, b) => a.deg === b.deg || same(a.at, b.at),
  )) {
    const a = i === undefined ? undefined : before[i];
    const b = j === undefined ? undefined : after[j];
    const one = b ?? a;
    if (!one) continue;
    const field = `schedule.keys[${j ?? i}]`;
    const what = `key of ${spell(one.angle)}`;
    if (!a || !b) {
      out.push(
        makeChange(field, what, a, b, (k) => `${showNumber((k as FileKey).deg)} deg ${showTime((k as FileKey).at)}`),
      );
      continue;
    }
    const when = `${what} ${showTime(b.at)}`;
    if (!same(a.at, b.at)) out.push(makeChange(`${field}.at`, what, a.at, b.at, showTime));
    if (a.deg !== b.deg) out.push(makeChange(`${field}.deg`, `${when} (deg)`, a.deg, b.deg));
    const kinds = [a.kind ?? 'stop', b.kind ?? 'stop'] as const;
    if (kinds[0] !== kinds[1]) out.push(makeChange(`${field}.kind`, `${when}, kind`, kinds[0], kinds[1]));
    if (a.nextDeg !== b.nextDeg)
      out.push(makeChange(`${field}.nextDeg`, `${when}, goes on at (deg)`, a.nextDeg, b.nextDeg));
  }
}

/** Pairs in order (least cost alignment): like things cost nothing, of one name 1, put in or taken out 2 each, another name 3. */
function pairUp<T>(
  a: readonly T[],
  b: readonly T[],
  name: (x: T) => string,
  alike: (x: T, y: T) => boolean,
): [number | undefined, number | undefined][] {
  const cost = (x: T, y: T): number => (name(x) !== name(y) ? 3 : same(x, y) ? 0 : alike(x, y) ? 0.9 : 1.8);
  const table = Array.from({ length: a.length + 1 }, () => new Array<number>(b.length + 1).fill(0));
  for (let i = a.length; i >= 0; i--)
    for (let j = b.length; j >= 0; j--) {
      if (i === a.length) table[i][j] = 2 * (b.length - j);
      else if (j === b.length) table[i][j] = 2 * (a.length - i);
      else table[i][j] = Math.min(cost(a[i], b[j]) + table[i + 1][j + 1], 2 + table[i + 1][j], 2 + table[i][j + 1]);
    }
  const out: [number | undefined, number | undefined][] = [];
  let i = 0;
  let j = 0;
  while (i < a.length || j < b.length) {
    if (i < a.length && j < b.length && table[i][j] === cost(a[i], b[j]) + table[i + 1][j + 1]) out.push([i++, j++]);
    else if (i < a.length && table[i][j] === 2 + table[i + 1][j]) out.push([i++, undefined]);
    else out.push([undefined, j++]);
  }
  return out;
}
