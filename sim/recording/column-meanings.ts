/**
 * What the columns of a table are, by their names: joint angles of the body in any usual spelling, places of points, attitudes as quaternion,
 * matrix or somersault, tilt and twist. What is none of these, or not complete, is ignored. Nothing is judged by its values but units that are not stated.
 */
import type { Body } from '../body/body.ts';
import { headerOf, keyOf, keysOf, sortedKey } from './header-name.ts';
import { metresOf } from './length-units.ts';
import { pointColumn } from './point-columns.ts';
import type { RecordedColumn, Recording } from './recording.ts';
import type { ColumnMeaning, MappedColumn, RootFrame } from './recording-map.ts';

/** Judgement: degrees where the largest unlabelled angle is more than this many rad. */
const MOST_RAD = 7;
/** Judgement: a body's points reach less far than 10 m and further than 10 mm or cm; beyond 500 they are mm. */
const MOST_M = 10;
const MOST_CM = 500;
/** Of a series this many values are looked at for its unit. */
const LOOKED_AT = 2000;

export function guessColumns(recording: Recording, body: Body): MappedColumn[] {
  const { columns } = recording;
  const names = bodyNames(body);
  const isDegrees = largest(columns.filter((c) => isOpenAngle(c, names))) > MOST_RAD;
  const isFromZero = columns.some(({ name }) => /(?:^|[ _.-])r(?:0\d|\d0)$/i.test(name));
  const taken = new Set<string>();
  const meant = columns.map((column): ColumnMeaning => {
    const found =
      angleOf(column, names, isDegrees) ??
      attitudeOf(column, isDegrees) ??
      quaternionOf(column, names) ??
      matrixOf(column, names, isFromZero) ??
      pointOf(column, body, names);
    if (!found) return IGNORED;
    // the first of several
    const key = placeOf(found);
    if (taken.has(key)) return IGNORED;
    taken.add(key);
    return found;
  });
  const whole = dropParts(meant);
  const unitM = openUnit(columns, whole);
  return columns.map(({ name }, k) => {
    const means = whole[k];
    return {
      from: name,
      means: means.kind === 'point' && Number.isNaN(means.unitM) ? { ...means, unitM } : means,
      basis: 'name',
    };
  });
}

const IGNORED: ColumnMeaning = { kind: 'ignored' };

interface BodyNames {
  readonly angles: ReadonlyMap<string, string>;
  readonly frames: ReadonlyMap<string, RootFrame | string>;
}

const sideOf = (name: string): string => /[LR]$/.exec(name)?.[0] ?? '';

/** Keys of angles and segments of the body; the words for what is the attitude of the whole. */
function bodyNames({ angles, segments }: Body): BodyNames {
  const index = (list: readonly { readonly name: string }[]): Map<string, string> => {
    const map = new Map<string, string>();
    for (const { name } of list) {
      const { words, side } = headerOf({ name });
      for (const key of [keyOf(words, side), sortedKey(words, side)]) map.set(key, name);
      if (side !== sideOf(name)) map.set(keyOf(words, ''), name);
    }
    return map;
  };
  const frames = new Map<string, RootFrame | string>(index(segments));
  const [root] = segments;
  for (const word of ['', 'root', 'pelvis', 'hips']) frames.set(`${word}|`, 'pelvis');
  for (const word of ['f', 'frame', 'bodyframe']) frames.set(`${word}|`, 'F');
  for (const word of ['trunk', 'uppertrunk', 'thorax', 'chest']) frames.set(`${word}|`, 'trunk');
  // a tree of one's own may have a segment of such a name
  for (const { name } of segments.slice(1)) if (name.toLowerCase() === 'trunk') frames.set('trunk|', name);
  if (root) frames.set(`${keyOf(headerOf({ name: root.name }).words, '')}`, 'pelvis');
  return { angles: index(angles), frames };
}

const find = (map: ReadonlyMap<string, string>, keys: readonly string[]): string | undefined =>
  keys.map((key) => map.get(key)).find((name) => name !== undefined);

const RADIANS = /^rad(?:ians?)?$/;
const DEGREES = /^(?:deg(?:rees?)?|°)$/;

/** Radians or not; undefined where the column states neither, null where what it states is no angle. */
function inRadians(column: RecordedColumn): boolean | null | undefined {
  const { unit } = headerOf(column);
  if (unit === undefined) return /^q_/.test(column.name) ? true : undefined;
  return RADIANS.test(unit) ? true : DEGREES.test(unit) ? false : null;
}

function angleOf(column: RecordedColumn, names: BodyNames, isDegrees: boolean): ColumnMeaning | undefined {
  const angle = find(names.angles, keysOf(headerOf(column)));
  const radians = inRadians(column);
  if (angle === undefined || radians === null) return undefined;
  return { kind: 'angle', angle, inRadians: radians ?? !isDegrees };
}

function isOpenAngle(column: RecordedColumn, names: BodyNames): boolean {
  if (inRadians(column) !== undefined) return false;
  return angleOf(column, names, false) !== undefined || attitudeOf(column, false) !== undefined;
}

const FRAMES: Readonly<Record<string, RootFrame>> = { '': 'F', f: 'F', frame: 'F', pelvis: 'pelvis', trunk: 'trunk' };

function attitudeOf(column: RecordedColumn, isDegrees: boolean): ColumnMeaning | undefined {
  const { words, side } = headerOf(column);
  const part = (['somersault', 'tilt', 'twist'] as const).find((p) => words.includes(p));
  const of = words.filter((word) => word !== part).join(' ');
  const radians = inRadians(column);
  if (!part || side !== '' || !Object.hasOwn(FRAMES, of) || radians === null) return undefined;
  return { kind: 'attitude', of: FRAMES[of], part, inRadians: radians ?? !isDegrees };
}

function frameOf(prefix: string, { frames }: BodyNames): RootFrame | string | undefined {
  return find(frames, keysOf(headerOf({ name: prefix })));
}

function quaternionOf({ name }: RecordedColumn, names: BodyNames): ColumnMeaning | undefined {
  const found = /^(?:(.*?)[\s_.-]+)?q(?:uat(?:ernion)?)?[\s_.-]*([wxyz0-3])$/i.exec(name);
  if (!found) return undefined;
  const of = frameOf(found[1] ?? '', names);
  const part = 'wxyz'.indexOf(found[2].toLowerCase());
  if (of === undefined) return undefined;
  return { kind: 'quaternion', of, part: (part < 0 ? Number(found[2]) : part) as 0 | 1 | 2 | 3 };
}

function matrixOf({ name }: RecordedColumn, names: BodyNames, isFromZero: boolean): ColumnMeaning | undefined {
  const found = /^(?:(.*?)[\s_.-]+)?r[\s_.-]?([0-3])[\s_.-]?([0-3])$/i.exec(name);
  if (!found) return undefined;
  const of = frameOf(found[1] ?? '', names);
  const first = isFromZero ? 0 : 1;
  const [row, at] = [Number(found[2]) - first, Number(found[3]) - first];
  if (of === undefined || row < 0 || at < 0 || row > 2 || at > 2) return undefined;
  return { kind: 'matrix', of, part: 3 * row + at };
}

/** NaN for a unit that is not stated. */
function pointOf(column: RecordedColumn, body: Body, { frames }: BodyNames): ColumnMeaning | undefined {
  const { unit } = headerOf(column);
  const unitM = unit === undefined ? Number.NaN : metresOf(unit);
  const isSuffix = column.unit === undefined && unit !== undefined;
  const bare = isSuffix ? column.name.slice(0, -unit.length).replace(/[\s_.-]+$/, '') : column.name;
  const found = pointColumn(bare);
  if (!found || unitM === undefined) return undefined;
  const point = ownPoint(found.point, body, frames) ?? found.point;
  return { kind: 'point', point, axis: found.axis, unitM };
}

/** Points of the files that are written here: origins of segments as `<segment>.o`, their mass centres as `<segment>.cm`. */
function ownPoint(base: string, { segments }: Body, frames: BodyNames['frames']): string | undefined {
  if (/^(?:p|pos|position|root)$/i.test(base)) return `${segments[0].name}.o`;
  if (/^com$/i.test(base)) return 'mass centre';
  const contact = /^point_(.+)$/.exec(base)?.[1];
  if (contact !== undefined) return contact;
  const [, of, what] = /^(.+)[_.\s](p|com)$/.exec(base) ?? [];
  const segment = of === undefined ? undefined : segments.find(({ name }) => name === of || frames.get(of) === name);
  return segment && `${segment.name}.${what === 'p' ? 'o' : 'cm'}`;
}

function placeOf(m: ColumnMeaning): string {
  if (m.kind === 'angle') return `angle ${m.angle}`;
  if (m.kind === 'point') return `point ${m.axis} ${m.point}`;
  return m.kind === 'ignored' ? '' : `${m.kind} ${m.part} ${m.of}`;
}

const WHOLE = { angle: 1, point: 3, quaternion: 4, matrix: 9, attitude: 3, ignored: 1 } as const;

/** A point without one axis, an attitude without one part is none. */
function dropParts(meant: readonly ColumnMeaning[]): ColumnMeaning[] {
  const count = new Map<string, number>();
  const setOf = (m: ColumnMeaning): string => `${m.kind} ${m.kind === 'point' ? m.point : 'of' in m ? m.of : ''}`;
  for (const m of meant) if (m.kind !== 'angle') count.set(setOf(m), (count.get(setOf(m)) ?? 0) + 1);
  return meant.map((m) => (m.kind === 'angle' || count.get(setOf(m)) === WHOLE[m.kind] ? m : IGNORED));
}

/** How far points whose unit is not stated reach says what it is. */
function openUnit(columns: readonly RecordedColumn[], meant: readonly ColumnMeaning[]): number {
  const reach = largest(
    columns.filter((_, k) => {
      const m = meant[k];
      return m.kind === 'point' && Number.isNaN(m.unitM);
    }),
  );
  return reach <= MOST_M ? 1 : reach <= MOST_CM ? 0.01 : 0.001;
}

function largest(columns: readonly RecordedColumn[]): number {
  let most = 0;
  for (const { values } of columns) {
    const step = Math.max(1, Math.floor(values.length / LOOKED_AT));
    for (let i = 0; i < values.length; i += step) if (Math.abs(values[i]) > most) most = Math.abs(values[i]);
  }
  return most;
}
