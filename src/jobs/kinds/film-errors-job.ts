/** What a film of a flight would be known to: filmed, marked and read some times over, with the share that is done. */
import {
  type Athlete,
  buildSkill,
  contactFor,
  type ExpectedErrors,
  expectErrors,
  flySkill,
  launch,
  parseSkill,
  type ShapeData,
  type SkillFile,
} from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';

interface FilmErrorsRequest {
  readonly file: SkillFile;
  readonly athlete: Athlete;
  readonly shapes: Readonly<Record<string, ShapeData>>;
  readonly framesHz: number;
  /** of the camera, in W */
  readonly eye: readonly [number, number, number];
}

export const filmErrorsJob: JobKind<FilmErrorsRequest, undefined, number, ExpectedErrors | undefined> = {
  open: (request) => () => expected(request),
};

async function* expected({
  file,
  athlete,
  shapes,
  framesHz,
  eye,
}: FilmErrorsRequest): AsyncGenerator<number, ExpectedErrors | undefined, boolean> {
  const spec = parseSkill({ ...file, athlete }, { athletes: {}, shapes });
  const flight = flySkill(launch(buildSkill(spec), await loadForJob(() => contactFor(spec))));
  const steps = expectErrors(flight, framesHz, [eye[0], eye[1], eye[2]]);
  let step = steps.next();
  while (!step.done) {
    if (yield step.value) return undefined;
    step = steps.next();
  }
  return step.value;
}
