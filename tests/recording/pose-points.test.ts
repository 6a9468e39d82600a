// A body laid among markers stuck on it: where it is and how it is bent, against the flight they were made from.
import { expect, test } from 'vitest';
import { posePoints, type PosedPoints } from '../../sim/recording/pose-points.ts';
import { placeOfMarker } from '../../sim/recording/marker-places.ts';
import { film, flyReady } from './filmed.ts';

function drain<T>(steps: Generator<number, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

const flight = flyReady('back-straight-full');
const { body } = flight;

function pose(noise: number, off: number): { posed: PosedPoints; worst: number; place: number } {
  const { frames, points } = film(flight, { rateHz: 120, noise, off, seed: 5 });
  const mapped = points.map(({ name }) => ({
    from: name,
    segment: placeOfMarker(name, body)?.segment ?? '',
    basis: 'name' as const,
  }));
  const posed = drain(posePoints(body, mapped, points.map(({ p }) => p), frames.t, 120));
  const ns = body.segments.length;
  let worst = 0;
  let place = 0;
  for (let i = 0; i < frames.n; i++) {
    let dot = 0;
    for (let k = 0; k < 4; k++) dot += posed.rows.posed.quat_WB[4 * i + k] * frames.quat_WB[4 * ns * i + k];
    worst = Math.max(worst, 2 * Math.acos(Math.min(1, Math.abs(dot))));
    for (let k = 0; k < 3; k++)
      place = Math.max(place, Math.abs(posed.rows.posed.p_WBo_W[3 * i + k] - frames.p_WBo_W[3 * ns * i + k]));
  }
  return { posed, worst, place };
}

test('try', () => {
  for (const [noise, off] of [[0, 0], [0.003, 0], [0, 0.01], [0.003, 0.01]]) {
    const t = performance.now();
    const { posed, worst, place } = pose(noise, off);
    console.log(noise, off, 'worst root deg', worst * 57.3, 'place', place, 'miss', posed.miss, 'ms', performance.now() - t);
  }
  expect(1).toBe(1);
});
test('time', () => {
  const { frames, points } = film(flight, { rateHz: 1000, noise: 0.003, off: 0.01, seed: 5 });
  const mapped = points.map(({ name }) => ({ from: name, segment: placeOfMarker(name, body)?.segment ?? '', basis: 'name' as const }));
  const t0 = performance.now();
  const g = posePoints(body, mapped, points.map(({ p }) => p), frames.t, 1000);
  let first = 0;
  for (;;) { const s = g.next(); if (s.done) break; if (s.value >= 0.3 && !first) first = performance.now() - t0; }
  console.log('calibrate', first, 'rows', frames.n, 'ms/row', (performance.now() - t0 - first) / frames.n);
});
