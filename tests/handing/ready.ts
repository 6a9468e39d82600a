/** Every ready skill, and how it is handed on. */
import { athletes, chains, skills } from '../../presets/index.ts';
import { type Along, type Handed, keepBack } from '../../sim/handing/kept-back.ts';
import type { Athlete, SkillFile } from '../../sim/index.ts';

export const ALL: Along = { name: true, age: true, mass: true, sheets: true, film: true };
export const NONE: Along = { name: false, age: false, mass: false, sheets: false, film: false };
export const ready: [string, SkillFile][] = [...Object.entries(skills), ...Object.entries(chains)];
export const whoOf = ({ athlete }: SkillFile): Athlete => ('ref' in athlete ? athletes[athlete.ref] : athlete);
export const handOn = (file: SkillFile, along: Along): Handed => keepBack(file, whoOf(file), along);

export function readySkill(id: string): SkillFile {
  const found = ready.find(([name]) => name === id)?.[1];
  if (!found) throw new Error(`no ready skill ${id}`);
  return found;
}
