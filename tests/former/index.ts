/** Ready skills as they were before they were made from technique: samples of the machinery, which has nothing to say of how they look. */
import { skills } from '../../presets/index.ts';
import type { SkillFile } from '../../sim/index.ts';

const files = import.meta.glob<SkillFile>('./*.json', { eager: true, import: 'default' });
export const former: Readonly<Record<string, SkillFile>> = Object.fromEntries(
  Object.entries(files).map(([path, file]) => [path.replace(/^.*\/|\.json$/g, ''), file]),
);

const FORMER = 'former/';
/** `former/ID`: as it was; else the ready skill as it is now. The file itself, not a copy. */
export const sampleOf = (id: string): SkillFile =>
  id.startsWith(FORMER) ? former[id.slice(FORMER.length)] : skills[id];
