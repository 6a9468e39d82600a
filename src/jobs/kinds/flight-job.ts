/** A flight that is too heavy for the page, with all that is measured of it. */
import {
  type Athlete,
  buildSkill,
  contactFor,
  type FlownData,
  flySkill,
  launch,
  measureFlown,
  packFlown,
  parseSkill,
  type ShapeData,
  type SkillFile,
} from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';

interface FlightRequest {
  readonly file: SkillFile;
  readonly athlete: Athlete;
  readonly shapes: Readonly<Record<string, ShapeData>>;
}

export const flightJob: JobKind<FlightRequest, undefined, never, FlownData> = {
  open: (request) => () => fly(request),
};

async function* fly({ file, athlete, shapes }: FlightRequest): AsyncGenerator<never, FlownData, boolean> {
  const built = buildSkill(parseSkill({ ...file, athlete }, { athletes: {}, shapes }));
  const skill = launch(built, await loadForJob(() => contactFor({ start: built.start })));
  return packFlown(measureFlown(skill, flySkill(skill)));
}
