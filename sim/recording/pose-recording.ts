/** A recording as motion of a body, whatever its kind: mapped, scaled, posed. The athlete gives what no recording shows: masses, and lengths where it has none. */
import type { Body } from '../body/body.ts';
import type { HumanAthlete } from '../files/athlete-schema.ts';
import { FieldError } from '../math/field-error.ts';
import { lengthsOfCentres } from './centre-lengths.ts';
import { guessColumns } from './column-meanings.ts';
import { withEvenRows } from './even-rows.ts';
import { type MadeMap, type MapEdit, makePointsMap, makeSkeletonMap } from './make-map.ts';
import { placeOthers } from './place-others.ts';
import { wordMisplaced, wordStrays } from './point-words.ts';
import { pointsOfTable } from './points-of-table.ts';
import { placedPoints, posePoints } from './pose-points.ts';
import { poseSkeleton } from './pose-skeleton.ts';
import { isPlace, poseTable } from './pose-table.ts';
import type { PosedMotion } from './posed.ts';
import { bodyOfAthlete, recordedAthlete } from './recorded-athlete.ts';
import type { RecordedPoint, Recording } from './recording.ts';
import type { RecordingMap } from './recording-map.ts';
import { scaledAthlete } from './scaled-athlete.ts';
import { sharesOf } from './steps.ts';
import { placesInW } from './turned-axes.ts';
import { upByFall } from './up-axis.ts';

export interface PosedRecording {
  readonly posed: PosedMotion;
  readonly map: RecordingMap;
  /** with the lengths of the recording */
  readonly athlete: HumanAthlete;
  readonly body: Body;
  /** names that nothing is made of */
  readonly unused: readonly string[];
  /** rows in which something that is mapped is missing */
  readonly missingRows: number;
  readonly notes: readonly string[];
}

/** Lengths of limbs: as recorded, or the athlete's own. */
export type LengthsFrom = 'recording' | 'athlete';

/** Yields the share done. Throws a FieldError where the recording cannot be laid over a body. */
export function* poseRecording(
  recording: Recording,
  athlete: HumanAthlete,
  edit: MapEdit,
  lengths: LengthsFrom,
): Generator<number, PosedRecording> {
  if (recording.frames < 2) throw new FieldError('recording', `${recording.frames} rows`, '2 rows or more');
  const even = withEvenRows(recording);
  if (even.joints.length > 0) return yield* poseJoints(even, athlete, edit, lengths);
  if (even.columns.length > 0) return yield* poseColumns(even, athlete, edit, lengths);
  return yield* poseMarkers(even, even.points, athlete, edit, lengths);
}

/** Points enough to lay a body among. */
const MARKERS = 10;

/** A table of angles, or of points. */
function* poseColumns(
  recording: Recording,
  athlete: HumanAthlete,
  edit: MapEdit,
  lengths: LengthsFrom,
): Generator<number, PosedRecording> {
  const body = bodyOfAthlete(athlete);
  const guessed = guessColumns(recording, body);
  const columns = guessed.map((g) => edit.columns?.find(({ from }) => from === g.from) ?? g);
  const unitM = edit.unitM ?? recording.unitM;
  const points = yield* sharesOf(pointsOfTable(recording, columns, unitM ?? 1));
  const hasAngles = columns.some(
    ({ means }) => means.kind === 'angle' || means.kind === 'matrix' || means.kind === 'quaternion',
  );
  if (!hasAngles && points.length >= MARKERS) {
    const marked: Recording = { ...recording, unitM: unitM ?? 1 };
    const found = yield* poseMarkers(marked, points, athlete, edit, lengths);
    return { ...found, map: { ...found.map, columns } };
  }
  if (!hasAngles)
    throw new FieldError(
      'columns',
      recording.columns
        .map(({ name }) => name)
        .slice(0, 12)
        .join(', '),
      `joint angles of the body by their names (as kneeFlexionL), or ${MARKERS} or more points; a map says what each column is`,
    );
  const path = points.find(({ name }) => isPlace(name))?.p;
  const up = edit.up ?? (path ? upByFall(path, recording.rateHz) : undefined) ?? '+y';
  const map: RecordingMap = { unitM: unitM ?? 1, up, joints: [], points: [], columns };
  const posed = yield* poseTable(body, recording, points, map);
  const ignored = columns.flatMap(({ from, means }) => (means.kind === 'ignored' ? [from] : []));
  let missing = 0;
  for (let i = 0; i < posed.n; i++)
    if (body.angles.some((_, a) => posed.isSeen[a] && !Number.isFinite(posed.angles[body.angles.length * i + a])))
      missing++;
  return { posed, map, athlete, body, unused: ignored, missingRows: missing, notes: recording.notes };
}

function* poseJoints(
  recording: Recording,
  given: HumanAthlete,
  edit: MapEdit,
  from: LengthsFrom,
): Generator<number, PosedRecording> {
  const made = makeSkeletonMap(bodyOfAthlete(given), recording, edit);
  const { athlete, body, note } =
    from === 'recording' && made.lengths
      ? recordedAthlete(given, made.lengths)
      : { athlete: given, body: bodyOfAthlete(given), note: undefined };
  const { posed, left } = yield* poseSkeleton(body, recording, made.map);
  const { miss: _, ...plain } = posed;
  const notes = [...recording.notes, ...made.notes, ...(note ? [note] : []), ...wordLeft(body, left)];
  return finish(
    plain,
    made,
    athlete,
    recording.joints.map(({ name }) => name),
    0,
    notes,
  );
}

/** A joint of ours that turns less freely than the recorded one: more than this is said, rad. */
const SAID = 0.35;

function wordLeft(body: Body, left: Float64Array): string[] {
  const names = body.segments.flatMap(({ name }, s) =>
    left[s] > SAID ? [`${name} (${Math.round((180 * left[s]) / Math.PI)}°)`] : [],
  );
  return names.length > 0
    ? [`Joints that turn there as ours do not, and by how much at most: ${names.join(', ')}.`]
    : [];
}

function* poseMarkers(
  recording: Recording,
  points: readonly RecordedPoint[],
  given: HumanAthlete,
  edit: MapEdit,
  from: LengthsFrom,
): Generator<number, PosedRecording> {
  const first = makePointsMap(bodyOfAthlete(given), points, recording, edit);
  const inW = (p: RecordedPoint): Float64Array => placesInW(p.p, first.map.up, first.map.unitM);
  const byName = new Map(points.map((p) => [p.name, p]));
  const used = first.map.points.flatMap(({ from: name }) => {
    const p = byName.get(name);
    return p ? [inW(p)] : [];
  });
  const centres = from === 'recording' ? lengthsOfCentres(bodyOfAthlete(given), first.map.points, used) : undefined;
  const scaled =
    from === 'athlete'
      ? { athlete: given, note: undefined }
      : centres
        ? recordedAthlete(given, centres)
        : yield* scaledAthlete(given, first.map.points, used);
  const body = bodyOfAthlete(scaled.athlete);
  const named = new Set([...first.map.points, ...(edit.points ?? [])].map((m) => m.from));
  const open = points.filter((p) => !named.has(p.name)).map((p) => ({ name: p.name, p: inW(p) }));
  const others = yield* placeOthers(body, first.map.points, used, open);
  const mapped = [...first.map.points, ...others];
  used.push(...others.map(({ from: name }) => open.find((p) => p.name === name)?.p ?? new Float64Array(0)));
  const map = { ...first.map, points: mapped };
  const { rows, miss, strays, placed } = yield* posePoints(body, mapped, used, recording.times, recording.rateHz);
  let missing = 0;
  for (let i = 0; i < recording.frames; i++) if (used.some((p) => !Number.isFinite(p[3 * i]))) missing++;
  const notes = [
    ...recording.notes,
    ...first.notes,
    ...(scaled.note ? [scaled.note] : []),
    `The points lie ${(1000 * miss).toFixed(1)} mm (root mean square) from the body laid among them.`,
    ...wordMisplaced(mapped, placedPoints(body, mapped), placed),
    ...wordStrays(mapped, strays, recording.times),
  ];
  return finish(
    rows.posed,
    { ...first, map },
    scaled.athlete,
    points.map(({ name }) => name),
    missing,
    notes,
  );
}

function finish(
  posed: PosedMotion,
  { map }: MadeMap,
  athlete: HumanAthlete,
  names: readonly string[],
  missingRows: number,
  notes: readonly string[],
): PosedRecording {
  const used = new Set([...map.joints, ...map.points].map(({ from }) => from));
  return {
    posed,
    map,
    athlete,
    body: posed.body,
    unused: names.filter((name) => !used.has(name)),
    missingRows,
    notes,
  };
}
