/** The filming of a flown document: planned by a worker; what the camera sees as a table. Loaded with the tool that asks. */
import {
  CAMERA_RANGES,
  checkCamera,
  type ExpectedErrors,
  type FilmCamera,
  type FilmingPlan,
  fitToFrame,
  formatCameraCsv,
  keepBack,
  type Provenance,
  provenanceSvg,
  type ShapeData,
  type Sightline,
  standCamera,
  USUAL_CAMERA,
} from '../../sim/index.ts';
import { makePagePool } from '../jobs/browser-port.ts';
import type { Pool } from '../jobs/pool.ts';
import { handedProvenanceOf } from './provenance.ts';
import type { FlightResult } from './result.ts';

export interface Filming {
  readonly usual: FilmCamera;
  readonly ranges: typeof CAMERA_RANGES;
  /** throws an Error with field, value and allowed range */
  check(camera: FilmCamera): FilmCamera;
  /** shutter and reading within the time of a frame */
  fit(camera: FilmCamera): FilmCamera;
  /** where it stands before the flight of a plan */
  stand(camera: FilmCamera, plan: FilmingPlan): Sightline;
  /** rejects with the reason, and after a cancel */
  plan(result: FlightResult, camera: FilmCamera): { readonly done: Promise<FilmingPlan | undefined>; cancel(): void };
  /** what a film would be known to; `onShare`: of it that is done */
  errors(
    result: FlightResult,
    plan: FilmingPlan,
    onShare: (share: number) => void,
  ): { readonly done: Promise<ExpectedErrors | undefined>; cancel(): void };
  csv(result: FlightResult, plan: FilmingPlan): string;
  /** where a printed plan is from, for the inside of an svg element */
  origin(result: FlightResult): string;
}

export function makeFilming(shapes: Readonly<Record<string, ShapeData>>, pool: Pool = makePagePool()): Filming {
  return {
    usual: USUAL_CAMERA,
    ranges: CAMERA_RANGES,
    check: checkCamera,
    fit: fitToFrame,
    stand: (camera, { stand }) => standCamera(camera, stand),
    plan: ({ file, athlete }, camera) => pool.run('film', { file, athlete, shapes, camera }),
    errors: ({ file, athlete }, { camera, sightline }, onShare) =>
      pool.run(
        'filmErrors',
        { file, athlete, shapes, framesHz: camera.framesHz, eye: sightline.p_WC_W },
        { onProgress: onShare },
      ),
    csv: (result, { camera, stand }) =>
      [...formatCameraCsv(result.flight, camera, stand, { from: originOf(result, 'page: camera') })].join(''),
    origin: (result) => provenanceSvg(originOf(result, 'page: filming plan')),
  };
}

/** Nothing of the athlete goes into the digest: both leave the machine. */
function originOf(result: FlightResult, call: string): Provenance {
  const { file } = keepBack(result.file, result.athlete, {
    name: false,
    age: false,
    mass: false,
    sheets: false,
    film: false,
  });
  return handedProvenanceOf(result, call, file);
}
