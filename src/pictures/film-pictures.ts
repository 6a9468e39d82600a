/** Joins the rooms for filming plans: what the worker planned, and the flight, as markup for an <svg> of the page. */
import type { FilmingPlan, ShapeData } from '../../sim/index.ts';
import { makeFilming } from '../engine/film.ts';
import { makePoser, type Poser } from '../engine/poses.ts';
import type { FlightResult } from '../engine/result.ts';
import { figureItems } from '../scene/figure.ts';
import { svgMarkup } from '../scene/figure-svg.ts';
import { ownNow, ownRoom, ownStill, planView, seenAt } from '../scene/filmed-scene.ts';
import { ghostTimes, type StagePose } from '../scene/pose-frames.ts';
import type { GroupItem } from '../scene/scene.ts';

/** Poses along the ruler: px of a time, px of a height of the mass centre over the floor. */
interface AlongPlace {
  readonly x: (t: number) => number;
  readonly y: (heightM: number) => number;
  readonly pxPerM: number;
}

/** px of a point of the room's middle, for the views from above and from the side. */
interface PlanPlace {
  readonly from: 'above' | 'side';
  readonly pxPerM: number;
  readonly x: number;
  readonly y: number;
}

export interface FilmPictures {
  ownStill(result: FlightResult, plan: FilmingPlan, width: number): string;
  ownNow(result: FlightResult, plan: FilmingPlan, t: number, width: number): string;
  ownRoom(plan: FilmingPlan, width: number): string;
  alongStill(result: FlightResult, plan: FilmingPlan, place: AlongPlace): string;
  alongNow(result: FlightResult, plan: FilmingPlan, t: number, place: AlongPlace): string;
  figure(result: FlightResult, plan: FilmingPlan, t: number, place: PlanPlace): string;
}

const posers = new WeakMap<FlightResult, Poser>();
function poseOf(result: FlightResult, t: number): StagePose {
  const known = posers.get(result) ?? makePoser(result.flight, result.frames);
  posers.set(result, known);
  return known(t);
}

/** Where the body has been in the camera's own picture, and along the ruler. */
const OWN_GHOSTS = 4;
const ghostsOf = (result: FlightResult, times: readonly number[]): StagePose[] =>
  times.map((t) => poseOf(result, Math.min(t, result.flight.duration)));
const evenly = (duration: number, n: number): number[] => Array.from({ length: n }, (_, i) => (duration * i) / (n - 1));

const filmPictures: FilmPictures = {
  ownStill: (result, plan, width) =>
    svgMarkup(
      ownStill(
        plan,
        { body: result.flight.body, ghosts: ghostsOf(result, evenly(result.flight.duration, OWN_GHOSTS)) },
        width,
      ),
    ),
  ownNow: (result, plan, t, width) => svgMarkup(ownNow(plan, result.flight.body, poseOf(result, t), width)),
  ownRoom: (plan, width) => svgMarkup([ownRoom(plan, width)]),
  alongStill: (result, plan, place) => {
    const { body, duration } = result.flight;
    // poses stand clear of each other: about a body's length apart
    const room = (place.x(duration) - place.x(0)) / (1.25 * place.pxPerM);
    const times = ghostTimes(duration, Math.max(2, room) / duration, 3, 10);
    const items = ghostsOf(result, times).map(
      (pose): GroupItem => ({
        kind: 'group',
        ghost: true,
        items: figureItems(body, pose.frames, alongPlace(plan, pose, place)),
      }),
    );
    return svgMarkup(items);
  },
  alongNow: (result, plan, t, place) => {
    const pose = poseOf(result, t);
    return svgMarkup(figureItems(result.flight.body, pose.frames, alongPlace(plan, pose, place)));
  },
  figure: (result, plan, t, { from, pxPerM, x, y }) => {
    const pose = poseOf(result, t);
    const anchor = plan.stand.middle;
    return svgMarkup(
      figureItems(result.flight.body, pose.frames, { view: planView(plan, from), scale: pxPerM, anchor, x, y }),
    );
  },
};

const alongPlace = ({ sightline, stand }: FilmingPlan, pose: StagePose, { x, y, pxPerM }: AlongPlace) =>
  seenAt(sightline, pose, pxPerM, x(pose.t), y(pose.p_WScm_W[1] - stand.floorY));

/** A module that comes when it is first asked for, and again after it did not. */
type Late = <Module, Part>(load: () => Promise<Module>, pick: (module: Module) => Part) => () => Promise<Part>;

/** The rooms for recordings and clips are found from here: their names are not in what the page starts with. */
export const makeFilmParts = (shapes: Readonly<Record<string, ShapeData>>, late: Late) => ({
  engine: makeFilming(shapes),
  pictures: filmPictures,
  recording: late(
    () => import('./recording-room.ts'),
    (m) => m.recordingRoom,
  ),
  clip: late(
    () => import('./clip-room.ts'),
    (m) => m.makeClipRoom(shapes),
  ),
});
