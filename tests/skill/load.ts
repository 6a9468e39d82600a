/** A preset as the engine takes it. */
import { expect } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import * as contact from '../../sim/contact/index.ts';
import {
  buildSkill,
  type Flight,
  type LaunchedSkill,
  launch,
  launchFrom,
  parseSkill,
  type Skill,
  type SkillFile,
  type SkillSpec,
  type TakeoffSpec,
} from '../../sim/index.ts';
import { former } from '../former/index.ts';

export const shelf = { athletes, shapes };
/** `former/ID`: as it was before it was made from technique. */
export const fileOf = (id: string): SkillFile =>
  structuredClone(id.startsWith('former/') ? former[id.slice('former/'.length)] : skills[id]);
export const specOf = (file: SkillFile): SkillSpec => parseSkill(file, shelf);
export const builtOf = (file: SkillFile): Skill => buildSkill(specOf(file));
export const launchedOf = (spec: SkillSpec): LaunchedSkill => launch(buildSkill(spec), contact);
export const skillOf = (file: SkillFile): LaunchedSkill => launchedOf(specOf(file));
export const preset = (id: string): LaunchedSkill => skillOf(fileOf(id));
export const presetIds = Object.keys(skills);

/** A skill with the take-off that is written here. */
export const launchedWith = ({
  takeoff,
  carried,
  ...rest
}: Omit<Skill, 'start'> & Pick<LaunchedSkill, 'carried'> & { readonly takeoff: TakeoffSpec }): LaunchedSkill =>
  launchFrom({ ...rest, start: { kind: 'stated', takeoff } }, { takeoff, ...(carried ? { carried } : {}), barX: 0 });

/** The take-off that a spec states. */
export function takeoffOf({ start }: SkillSpec): TakeoffSpec {
  if (start.kind !== 'stated') throw new Error(`a ${start.kind} states no take-off`);
  return start.takeoff;
}

/** Both end in the same attitude, to 7 places of the quaternion. */
export function expectSameEnd(one: Flight, other: Flight): void {
  const [a, b] = [new Float64Array(4), new Float64Array(4)];
  one.quatInto(one.duration, a);
  other.quatInto(other.duration, b);
  for (let k = 0; k < 4; k++) expect(b[k]).toBeCloseTo(a[k], 7);
}
