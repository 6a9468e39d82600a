/** What the page begins with: athletes, shapes and the first skill. The rest of the shelf comes when it is first looked at (index.ts). */
import type { Athlete, ShapeData, SkillFile } from '../sim/index.ts';
import firstFile from './skills/arms-in-spin.json' with { type: 'json' };

interface AthleteFile {
  readonly athlete: Athlete;
}
const athleteFiles = import.meta.glob<AthleteFile>('./athletes/*.json', { eager: true, import: 'default' });
const shapeFiles = import.meta.glob<Record<string, ShapeData>>('./shapes.json', { eager: true, import: 'default' });

const idOf = (path: string): string => path.replace(/^.*\/|\.json$/g, '');
export const byId = <T>(files: Record<string, T>): [string, T][] =>
  Object.entries(files).map(([path, f]) => [idOf(path), f]);

export const athletes: Readonly<Record<string, Athlete>> = Object.fromEntries(
  byId(athleteFiles).map(([id, file]) => [id, file.athlete]),
);
export const shapes: Readonly<Record<string, ShapeData>> = Object.assign({}, ...Object.values(shapeFiles));
export const first = firstFile as unknown as SkillFile;
