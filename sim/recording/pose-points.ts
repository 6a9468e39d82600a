/** Markers as motion of the body: where each sits is found from some rows (calibrate-points.ts), then the body is laid among them in every row. */
import type { Body } from '../body/body.ts';
import { FieldError } from '../math/field-error.ts';
import type { Triple } from '../math/vec3.ts';
import { calibratePoints, chooseRows, type Placed, rowOf } from './calibrate-points.ts';
import { placeOfMarker, SKIN } from './marker-places.ts';
import { makePointPoser } from './point-poser.ts';
import { makePoseRows, type PoseRows } from './pose-rows.ts';
import { fitFresh } from './pose-starts.ts';
import type { MappedPoint } from './recording-map.ts';
import { distances, leaveOutStrays, makeStrayList, type StrayPoint } from './stray-points.ts';

/** Rows between two turns of a long reading. */
const ROWS = 20;
/** A row that misses by this many times the usual, and by m, is tried from fresh starts. */
const LOST = 3;
const LOST_BY = 0.03;
/** Segments that must have a marker, or one further out. */
const NEEDED = ['pelvis', 'upperTrunk', 'upperArmL', 'upperArmR', 'shankL', 'shankR'];

interface PosedPoints {
  readonly rows: PoseRows;
  readonly placed: readonly Placed[];
  /** root mean square miss over all rows, m */
  readonly miss: number;
  /** left out of rows in which they are elsewhere */
  readonly strays: readonly StrayPoint[];
}

/** In which segment, where, and how far that may be off, for points that are mapped. */
export function placedPoints(body: Body, mapped: readonly MappedPoint[]): Placed[] {
  return mapped.map(({ from, segment, at_B, isFixed }) => {
    const index = body.segments.findIndex((s) => s.name === segment);
    if (index < 0) throw new FieldError(`map of ${from}`, segment, 'the name of a segment');
    const usual = placeOfMarker(from, body);
    const place = at_B ?? (usual?.segment === segment ? usual.at_B : middleOf(body, index));
    const within = isFixed ? 0 : usual?.segment === segment && !at_B ? usual.within : SKIN;
    return { segment: index, at_B: place, within };
  });
}

const middleOf = (body: Body, s: number): Triple => {
  const [x, y, z] = body.segments[s].p_BoBcm_B;
  return [x, y, z];
};

/** Throws where parts of the body have no marker. */
export function checkEnough(body: Body, placed: readonly Placed[]): void {
  const seen = body.segments.map((_, s) => placed.some((p) => p.segment === s));
  for (let s = seen.length - 1; s > 0; s--) if (seen[s]) seen[body.segments[s].parent] = true;
  const missing = NEEDED.filter((name) => !seen[body.segments.findIndex((s) => s.name === name)]);
  if (missing.length > 0 || placed.length < 10)
    throw new FieldError(
      'points',
      `${placed.length} that are known on the body`,
      missing.length > 0
        ? `points on trunk, arms and legs; none is known on ${missing.join(', ')}. A map says which point is where`
        : '10 or more on trunk, arms and legs. A map says which point is where',
    );
}

/** `points` in W, m, in the order of `mapped`; yields the share done. */
export function* posePoints(
  body: Body,
  mapped: readonly MappedPoint[],
  points: readonly Float64Array[],
  t: Float64Array,
  rateHz: number,
): Generator<number, PosedPoints> {
  const usual = placedPoints(body, mapped);
  checkEnough(body, usual);
  const calibration = calibratePoints(body, usual, points, chooseRows(points, 0, t.length));
  for (let step = calibration.next(); ; step = calibration.next()) {
    if (!step.done) {
      yield 0.3 * step.value;
      continue;
    }
    if (!step.value)
      throw new FieldError('points', 'too few of the trunk in one row', 'rows in which most points are seen');
    const { placed, miss: typical } = step.value;
    const poser = makePointPoser(body, placed);
    const rows = makePoseRows(body, t, rateHz, poser.seen);
    const strays = makeStrayList();
    let before: Float64Array | undefined;
    let isLost = true;
    let sum = 0;
    let count = 0;
    for (let i = 0; i < t.length; i++) {
      if (i % ROWS === 0) yield 0.3 + (0.7 * i) / t.length;
      const target = rowOf(points, i);
      let miss: number | undefined = isLost ? fitFresh(body, poser, placed, target) : poser.fit(target);
      if (!isLost && miss !== undefined && miss > LOST * typical + LOST_BY) {
        const saved = poser.save();
        const fresh = fitFresh(body, poser, placed, target);
        if (fresh === undefined || fresh > miss) poser.load(saved);
        else miss = fresh;
      }
      isLost = miss === undefined || !Number.isFinite(miss);
      if (isLost || miss === undefined) continue;
      const seen = target.slice();
      const left = leaveOutStrays(poser, placed, target, miss, typical, before);
      miss = left.miss;
      before = poser.save();
      if (left.out.length > 0) {
        const off = distances(poser, placed, seen);
        for (const k of left.out) strays.add(i, k, off[k]);
      }
      rows.put(i, withoutUnseen(body, placed, target, poser.R_WS), poser.p_WSo_W);
      rows.posed.miss[i] = miss;
      sum += miss * miss;
      count++;
    }
    return { rows, placed, miss: Math.sqrt(sum / Math.max(1, count)), strays: strays.list() };
  }
}

/** Attitudes, NaN where in this row nothing on a segment or further out is seen though it has markers. */
function withoutUnseen(body: Body, placed: readonly Placed[], target: Float64Array, R_WS: Float64Array): Float64Array {
  const has = body.segments.map(() => false);
  const sees = body.segments.map(() => false);
  placed.forEach(({ segment }, k) => {
    has[segment] = true;
    if (Number.isFinite(target[3 * k])) sees[segment] = true;
  });
  for (let s = sees.length - 1; s > 0; s--) if (sees[s]) sees[body.segments[s].parent] = true;
  if (sees.every((is, s) => is || !has[s])) return R_WS;
  const out = R_WS.slice();
  sees.forEach((is, s) => {
    if (!is && has[s]) out.fill(Number.NaN, 9 * s, 9 * s + 9);
  });
  return out;
}
