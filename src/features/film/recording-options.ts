/** What a recording is studied with, and how each press of the page changes it. */
import type { MappedJoint, MappedPoint, RecordingMap, Smoothing, StudyOptions } from '../../../sim/index.ts';

/** s; a longer gap is not filled: a limb turns by more than can be guessed. Our judgement. */
const LONGEST_GAP = 0.1;

export const firstOptions: StudyOptions = { smoothing: { kind: 'gcv' }, longestGap: LONGEST_GAP };

export const smoothingOf = (options: StudyOptions, angle: string): Smoothing =>
  options.smoothingOf?.[angle] ?? options.smoothing;

export const withSmoothing = (options: StudyOptions, angle: string, by: Smoothing): StudyOptions => ({
  ...options,
  smoothingOf: { ...options.smoothingOf, [angle]: by },
});

export function withSmoothingOfAll(options: StudyOptions, by: Smoothing): StudyOptions {
  const { smoothingOf: _, ...rest } = options;
  return { ...rest, smoothing: by };
}

/** s in the time of the recording. */
export const withSpan = (options: StudyOptions, from: number, to: number): StudyOptions => ({ ...options, from, to });

export function withFoundSpan(options: StudyOptions): StudyOptions {
  const { from: _, to: __, ...rest } = options;
  return rest;
}

/** One name of the recording and what it is on the body; '' : nothing. */
export interface NameRow {
  readonly kind: 'joint' | 'point' | 'column';
  readonly from: string;
  /** a segment, or an angle */
  readonly to: string;
  readonly basis: 'name' | 'place' | 'hand' | 'none';
}

export function mapRows(map: RecordingMap, unused: readonly string[]): NameRow[] {
  const kind = map.joints.length > 0 ? 'joint' : map.columns.length > 0 ? 'column' : 'point';
  const columns = map.columns.flatMap(({ from, means, basis }): NameRow[] =>
    means.kind === 'angle' ? [{ kind: 'column', from, to: means.angle, basis }] : [],
  );
  const known: NameRow[] = [
    ...map.joints.map(({ from, segment, basis }): NameRow => ({ kind: 'joint', from, to: segment, basis })),
    ...map.points.map(({ from, segment, basis }): NameRow => ({ kind: 'point', from, to: segment, basis })),
    ...columns,
  ];
  return [...known, ...unused.map((from): NameRow => ({ kind, from, to: '', basis: 'none' }))];
}

/** What is to be checked comes first. */
export const checkFirst = (rows: readonly NameRow[]): NameRow[] => [
  ...rows.filter(({ basis }) => basis === 'place'),
  ...rows.filter(({ basis }) => basis === 'name' || basis === 'hand'),
  ...rows.filter(({ basis }) => basis === 'none'),
];

/** The edits alone: what is not in them goes by name and place as before. */
const laid = <T extends { readonly from: string }>(list: readonly T[] | undefined, edit: T): T[] => [
  ...(list ?? []).filter(({ from }) => from !== edit.from),
  edit,
];

/** `to`: a segment or an angle; '' : nothing is made of it, which has to be said, since a name that is left out is guessed. */
export function withMapped(options: StudyOptions, map: RecordingMap, row: NameRow, to: string): StudyOptions {
  const keep = options.map ?? {};
  if (row.kind === 'joint') {
    const joint: MappedJoint = { from: row.from, segment: to, basis: 'hand' };
    // one joint a segment: the last that was put there
    const others = keep.joints?.filter(({ segment }) => to === '' || segment !== to);
    return { ...options, map: { ...keep, joints: laid(others, joint) } };
  }
  if (row.kind === 'point') {
    const point: MappedPoint = { from: row.from, segment: to, basis: 'hand' };
    return { ...options, map: { ...keep, points: laid(keep.points, point) } };
  }
  const old = map.columns.find(({ from }) => from === row.from)?.means;
  const inRadians = old?.kind === 'angle' && old.inRadians;
  const means = to === '' ? ({ kind: 'ignored' } as const) : ({ kind: 'angle', angle: to, inRadians } as const);
  return { ...options, map: { ...keep, columns: laid(keep.columns, { from: row.from, means, basis: 'hand' }) } };
}
