// A flight written as BVH, TRC and CSV, read by the readers, posed: the same motion of the same body.
import { expect, test } from 'vitest';
import type { HumanAthlete } from '../../sim/files/athlete-schema.ts';
import { poseRecording } from '../../sim/recording/pose-recording.ts';
import type { PosedMotion } from '../../sim/recording/posed.ts';
import { posedOfFlight } from '../../sim/recording/posed-flight.ts';
import { readRecording } from '../../sim/recording/read-recording.ts';
import { formatBvh } from '../../sim/recording/write-bvh.ts';
import { formatRecorded } from '../../sim/recording/write-recorded-csv.ts';
import { formatTrc } from '../../sim/recording/write-trc.ts';
import { athleteOfReady, drain, evenTimes, flyReady } from './filmed.ts';

const flight = flyReady('trampoline-double-tuck');
const athlete = athleteOfReady('trampoline-double-tuck') as HumanAthlete;
const truth = posedOfFlight(flight, evenTimes(0, flight.duration, 30));
const bytes = (pieces: Iterable<string>): Uint8Array => new TextEncoder().encode([...pieces].join(''));

/** rad and m */
const CLOSE = 1e-6;

/** Largest differences: of an angle and of the root's attitude, rad; of its place, m. */
function worst(a: PosedMotion, b: PosedMotion): readonly [number, number, number] {
  let angle = 0;
  let attitude = 0;
  let place = 0;
  const na = a.body.angles.length;
  for (let i = 0; i < a.n; i++) {
    for (let k = 0; k < na; k++) angle = Math.max(angle, Math.abs(a.angles[na * i + k] - b.angles[na * i + k]));
    const off = (sign: number): number =>
      Math.hypot(...[0, 1, 2, 3].map((k) => a.quat_WB[4 * i + k] + sign * b.quat_WB[4 * i + k]));
    attitude = Math.max(attitude, 2 * Math.min(off(1), off(-1)));
    for (let k = 0; k < 3; k++) place = Math.max(place, Math.abs(a.p_WBo_W[3 * i + k] - b.p_WBo_W[3 * i + k]));
  }
  return [angle, attitude, place];
}

test.each([
  // measured: 8e-9, 9e-11, 5e-11
  ['flight.bvh', () => formatBvh(truth)],
  // measured: 7e-8, 3e-9, 3e-10
  ['flight.trc', () => formatTrc(truth, 'flight.trc')],
  // measured: 0
  ['flight.csv', () => formatRecorded(truth)],
])('%s comes back within 1e-6 rad and 1e-6 m, on the body it left', (name, write) => {
  const recording = readRecording(name, bytes(write()));
  const { posed, map, body, missingRows } = drain(poseRecording(recording, athlete, {}, 'recording'));
  expect(posed.n).toBe(truth.n);
  for (const off of worst(posed, truth)) expect(off).toBeLessThan(CLOSE);
  expect(map.up).toBe('+y');
  expect(missingRows).toBe(0);
  expect(body.segments.map((s) => s.mass)).toEqual(flight.body.segments.map((s) => s.mass));
});
