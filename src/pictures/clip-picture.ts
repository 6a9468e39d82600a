/** Joins the rooms for clips: A as the clip's camera would see it, and along time, as markup for an <svg> of the page. */
import type { ClipSight } from '../../sim/index.ts';
import { makePoser, type Poser } from '../engine/poses.ts';
import type { FlightResult } from '../engine/result.ts';
import { type AlongTime, alongItems, overItems } from '../scene/clip-scene.ts';
import { svgMarkup } from '../scene/figure-svg.ts';
import { ghostTimes } from '../scene/pose-frames.ts';
import type { DrawItem, GroupItem } from '../scene/scene.ts';

export interface ClipPictures {
  /** A at s of its flight, on a picture that is drawn `k` times as large as the clip's */
  over(result: FlightResult, sight: ClipSight, t: number, k: number): string;
  /** poses along time, over the way of the mass centre */
  alongStill(result: FlightResult, place: AlongTime): string;
  alongNow(result: FlightResult, t: number, place: AlongTime): string;
}

const posers = new WeakMap<FlightResult, Poser>();
function poserOf(result: FlightResult): Poser {
  const known = posers.get(result) ?? makePoser(result.flight, result.frames);
  posers.set(result, known);
  return known;
}

/** Towards +X the flight goes to the right of the picture. */
const wayOf = (result: FlightResult): 1 | -1 => (result.flight.v_WScm_W0[0] < -0.2 ? -1 : 1);
/** s between two marks of the path */
const EVERY = 0.1;
const FINE = 0.02;

function pathItems(pose: Poser, duration: number, { x, y }: AlongTime): DrawItem[] {
  const points: number[] = [];
  for (let t = 0; t < duration; t += FINE) points.push(x(t), y(pose(t).p_WScm_W[1]));
  points.push(x(duration), y(pose(duration).p_WScm_W[1]));
  const items: DrawItem[] = [
    { kind: 'line', points: Float32Array.from(points), closed: false, stroke: 'ink-2', width: 1.2 },
  ];
  for (let k = 0; k * EVERY < duration; k++)
    items.push({
      kind: 'circle',
      x: x(k * EVERY),
      y: y(pose(k * EVERY).p_WScm_W[1]),
      r: 2.6,
      fill: 'air',
      stroke: 'ink-2',
      width: 1.1,
    });
  return items;
}

export const clipPictures: ClipPictures = {
  over: (result, sight, t, k) => svgMarkup(overItems(result.flight.body, poserOf(result)(t), sight, k)),
  alongStill: (result, place) => {
    const { body, duration } = result.flight;
    const pose = poserOf(result);
    // poses stand clear of each other: about a body's length apart
    const room = (place.x(duration) - place.x(0)) / (1.25 * place.pxPerM);
    const ghosts = ghostTimes(duration, Math.max(2, room) / duration, 3, 10).map(
      (t): GroupItem => ({
        kind: 'group',
        ghost: true,
        items: alongItems(body, pose(Math.min(t, duration)), wayOf(result), place),
      }),
    );
    return svgMarkup([...ghosts, ...pathItems(pose, duration, place)]);
  },
  alongNow: (result, t, place) => svgMarkup(alongItems(result.flight.body, poserOf(result)(t), wayOf(result), place)),
};
