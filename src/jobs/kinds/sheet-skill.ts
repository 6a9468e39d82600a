/** The skill that a sheet or a worksheet reads from: flown once, with all that readouts are taken from. */
import {
  type Athlete,
  buildSkill,
  calcSkillReadings,
  flyWhole,
  launch,
  loadContact,
  parseSkill,
  partsOfWhole,
  poseOf,
  type ShapeData,
  type Skill,
  type SkillFile,
  type SkillResult,
  shapeInRadians,
} from '../../../sim/index.ts';
import { loadForJob } from '../job.ts';

export interface SheetSkill {
  readonly file: SkillFile;
  readonly athlete: Athlete;
  readonly shapes: Readonly<Record<string, ShapeData>>;
  /** of the flight: the worker keeps what it read of the last one */
  readonly key: string;
}

let read: { key: string; result: Promise<SkillResult> } | undefined;

/** The flight and what else readouts are taken from; of the flight that was asked for last they are kept. */
export function readSkill(asked: SheetSkill): Promise<SkillResult> {
  if (read?.key === asked.key) return read.result;
  const result = flyAll(asked);
  read = { key: asked.key, result };
  // a part that could not be loaded is tried again
  result.catch(() => {
    if (read?.result === result) read = undefined;
  });
  return result;
}

const flyAll = ({ file, athlete, shapes }: SheetSkill): Promise<SkillResult> =>
  calcSkillResult(buildSkill(parseSkill({ ...file, athlete }, { athletes: {}, shapes })), shapes);

/** The whole skill, with swing and landing where it has them, and the moments of the shapes as far as the body has their angles. */
export async function calcSkillResult(skill: Skill, shapes: Readonly<Record<string, ShapeData>>): Promise<SkillResult> {
  const poses = Object.entries(shapes).map(([id, shape]) => [
    id,
    [...poseOf(skill.body, shapeInRadians(shape), `shapes.${id}.angles`, true)],
  ]);
  const byShape = Object.fromEntries(poses);
  const { start, after } = skill;
  if (start.kind === 'stated' && !start.contact && !after) return calcSkillReadings(launch(skill), byShape);
  const whole = flyWhole(skill, await loadForJob(loadContact));
  return { ...calcSkillReadings(whole.skill, byShape, whole.flight), ...partsOfWhole(whole) };
}
