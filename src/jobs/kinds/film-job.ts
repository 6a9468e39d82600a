/** The filming of a flight: flown once for a camera, and planned. */
import {
  type Athlete,
  buildSkill,
  contactFor,
  type FilmCamera,
  type FilmingPlan,
  filmFlight,
  flySkill,
  launch,
  parseSkill,
  planFilming,
  type ShapeData,
  type SkillFile,
} from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';

interface FilmRequest {
  readonly file: SkillFile;
  readonly athlete: Athlete;
  readonly shapes: Readonly<Record<string, ShapeData>>;
  readonly camera: FilmCamera;
}

export const filmJob: JobKind<FilmRequest, undefined, undefined, FilmingPlan | undefined> = {
  open: (request) => () => film(request),
};

async function* film({
  file,
  athlete,
  shapes,
  camera,
}: FilmRequest): AsyncGenerator<undefined, FilmingPlan | undefined, boolean> {
  const spec = parseSkill({ ...file, athlete }, { athletes: {}, shapes });
  const flight = flySkill(launch(buildSkill(spec), await loadForJob(() => contactFor(spec))));
  const reading = filmFlight(flight);
  let read = reading.next();
  while (!read.done) {
    if (yield undefined) return undefined;
    read = reading.next();
  }
  const planning = planFilming(read.value, camera);
  let step = planning.next();
  while (!step.done) {
    if (yield undefined) return undefined;
    step = planning.next();
  }
  return step.value;
}
