/** The map of a recording: by names and places, with what was edited by hand laid over it. */
import type { Body } from '../body/body.ts';
import { FieldError, unknownName } from '../math/field-error.ts';
import { scale, type Triple } from '../math/vec3.ts';
import { guessUnit } from './guess-unit.ts';
import { placeOfMarker } from './marker-places.ts';
import { placeInto } from './pose-skeleton.ts';
import { lengthsOfBody } from './recorded-athlete.ts';
import type { RecordedPoint, Recording } from './recording.ts';
import type { MappedPoint, RecordingMap, UpAxis } from './recording-map.ts';
import { mapJoints } from './skeleton-names.ts';
import { calcRest, type SkeletonLengths } from './skeleton-rest.ts';
import { upOf } from './up-axis.ts';

/** What an edited map states; a joint or point on the segment "" is on none. */
export type MapEdit = Partial<RecordingMap>;

export interface MadeMap {
  readonly map: RecordingMap;
  /** of a skeleton, m */
  readonly lengths?: SkeletonLengths;
  readonly notes: readonly string[];
}

/** Rows that the direction of up is read from. */
const ROWS = 60;

export function makeSkeletonMap(body: Body, recording: Recording, edit: MapEdit): MadeMap {
  const guessed = mapJoints(recording.joints);
  const joints = edited(guessed, edit.joints ?? [], 'segment');
  checkNames(joints, recording.joints, body);
  const rest = calcRest(body, recording.joints, joints);
  const notes: string[] = [];
  let unitM = edit.unitM ?? recording.unitM;
  if (unitM === undefined) {
    const own = lengthsOfBody(body);
    const sum = (l: SkeletonLengths): number => l.thigh + l.trunk + l.upperArm;
    const guess = guessUnit(sum(rest.lengths), sum(own));
    ({ unitM } = guess);
    notes.push(guess.note);
  }
  const k = unitM;
  const lengths = Object.fromEntries(
    Object.entries(rest.lengths).map(([name, value]) => [name, value * k]),
  ) as unknown as SkeletonLengths;
  const up = edit.up ?? upOfSkeleton(recording, rest.joint, body, unitM);
  return { map: { unitM, up, joints, points: [], columns: [] }, lengths, notes };
}

export function makePointsMap(
  body: Body,
  points: readonly RecordedPoint[],
  recording: Recording,
  edit: MapEdit,
): MadeMap {
  const guessed = points.flatMap((p): MappedPoint[] => {
    const place = placeOfMarker(p.name, body);
    if (!place || !p.p.some(Number.isFinite)) return [];
    const exact = place.within === 0 ? { at_B: place.at_B, isFixed: true } : {};
    return [{ from: p.name, segment: place.segment, basis: 'name', ...exact }];
  });
  const mapped = edited(guessed, edit.points ?? [], 'from');
  checkNames(mapped, points, body);
  const notes: string[] = [];
  let unitM = edit.unitM ?? recording.unitM;
  if (unitM === undefined) {
    const tall = sizeOfPoints(points);
    const guess = guessUnit(tall, 1.1 * (body.stature ?? 1.6));
    ({ unitM } = guess);
    notes.push(guess.note);
  }
  if (edit.unitM === undefined) checkSize(unitM * sizeOfPoints(namedPoints(points, mapped)));
  const up = edit.up ?? upOfPoints(body, points, mapped, recording, unitM);
  return { map: { unitM, up, joints: [], points: mapped, columns: [] }, notes };
}

/** The list with the entries of an edit in place of those of the same key; what an edit puts on no segment goes. */
function edited<T extends { readonly from: string; readonly segment: string }>(
  guessed: readonly T[],
  edits: readonly T[],
  key: 'from' | 'segment',
): readonly T[] {
  const isGone = (g: T): boolean =>
    edits.some((e) => e.from === g.from || (key === 'segment' && e.segment === g.segment));
  return [...guessed.filter((g) => !isGone(g)), ...edits.filter((e) => e.segment !== '')];
}

function checkNames(
  mapped: readonly { readonly from: string; readonly segment: string }[],
  recorded: readonly { readonly name: string }[],
  body: Body,
): void {
  for (const { from, segment } of mapped) {
    if (!recorded.some(({ name }) => name === from))
      throw unknownName(
        'map',
        from,
        recorded.map(({ name }) => name),
        'a name of the recording',
      );
    if (!body.segments.some(({ name }) => name === segment))
      throw unknownName(
        `map of ${from}`,
        segment,
        body.segments.map(({ name }) => name),
        'a segment of the body',
      );
  }
}

/** Joints in the file's axes and unit, by the fall of their middle or by how the body stands. */
function upOfSkeleton({ joints, frames, rateHz }: Recording, joint: Int32Array, body: Body, unitM: number): UpAxis {
  const at = (name: string): number => joint[body.segments.findIndex((s) => s.name === name)];
  const G = new Float64Array(9 * joints.length);
  const P = new Float64Array(3 * joints.length);
  const path = new Float64Array(3 * frames);
  const low: Triple[] = [];
  const high: Triple[] = [];
  const mean = (...which: readonly number[]): Triple =>
    [0, 1, 2].map((k) => which.reduce((sum, j) => sum + P[3 * j + k], 0) / which.length) as Triple;
  const all = [...joint].filter((j) => j >= 0);
  for (let i = 0; i < frames; i++) {
    placeInto(joints, i, G, P);
    const middle = mean(...all);
    for (let k = 0; k < 3; k++) path[3 * i + k] = unitM * middle[k];
    if (i % Math.ceil(frames / ROWS) > 0) continue;
    low.push(mean(at('shankL'), at('shankR')));
    high.push(mean(at('upperArmL'), at('upperArmR')));
  }
  return upOf(undefined, low, high, path, rateHz);
}

const LOW = /^(thigh|shank|foot)/;
const HIGH = /^(upperTrunk|head)$/;

function upOfPoints(
  body: Body,
  points: readonly RecordedPoint[],
  mapped: readonly MappedPoint[],
  { rateHz, up: stated }: Recording,
  unitM: number,
): UpAxis {
  const known = new Map(points.map(({ name, p }) => [name, p]));
  const of = (pattern: RegExp): Float64Array[] =>
    mapped.flatMap(({ from, segment }) => (pattern.test(segment) ? [known.get(from) ?? new Float64Array(0)] : []));
  const [low, high] = [of(LOW), of(HIGH)];
  if (low.length === 0 || high.length === 0)
    throw new FieldError(
      'points',
      `none known on ${low.length === 0 ? 'the legs' : 'the chest'} of ${body.name}`,
      'points with usual names, or a map that says where they are',
    );
  const frames = low[0].length / 3;
  const path = new Float64Array(3 * frames);
  const mean = (list: readonly Float64Array[], i: number): Triple => {
    const seen = list.filter((p) => Number.isFinite(p[3 * i]));
    return [0, 1, 2].map((k) => seen.reduce((sum, p) => sum + p[3 * i + k], 0) / seen.length) as Triple;
  };
  const all = of(/./);
  for (let i = 0; i < frames; i++) path.set(scale(mean(all, i), unitM), 3 * i);
  const rows = Array.from({ length: Math.min(ROWS, frames) }, (_, r) =>
    Math.floor((r * frames) / Math.min(ROWS, frames)),
  );
  return upOf(
    stated,
    rows.map((i) => mean(low, i)),
    rows.map((i) => mean(high, i)),
    path,
    rateHz,
  );
}

const namedPoints = (points: readonly RecordedPoint[], mapped: readonly MappedPoint[]): readonly RecordedPoint[] =>
  points.filter(({ name }) => mapped.some(({ from }) => from === name));

/** m between the points of one row that lie farthest apart: a child in a tuck, a tall body with its arms up (judgement) */
const SIZES = [0.35, 3.5];

/** A unit that is not the file's makes a body of no possible size. */
function checkSize(sizeM: number): void {
  if (sizeM === 0 || (sizeM > SIZES[0] && sizeM < SIZES[1])) return;
  throw new FieldError(
    'points',
    `${sizeM.toPrecision(3)} m apart in one row by the unit of the file`,
    `${SIZES[0]} to ${SIZES[1]} m; a map states another unit (unitM)`,
  );
}

/** Farthest that two points lie apart, in the middle of rows: about the length of a body. */
function sizeOfPoints(points: readonly RecordedPoint[]): number {
  const frames = (points[0]?.p.length ?? 0) / 3;
  const sizes: number[] = [];
  for (let r = 0; r < Math.min(ROWS, frames); r++) {
    const i = Math.floor((r * frames) / Math.min(ROWS, frames));
    let far = 0;
    for (const { p: a } of points)
      for (const { p: b } of points) {
        const d = Math.hypot(a[3 * i] - b[3 * i], a[3 * i + 1] - b[3 * i + 1], a[3 * i + 2] - b[3 * i + 2]);
        if (d > far) far = d;
      }
    sizes.push(far);
  }
  sizes.sort((a, b) => a - b);
  return sizes[sizes.length >> 1] ?? 0;
}
