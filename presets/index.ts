/** The athletes, shapes and skills that come with Shapeflight, read at build time. Invented; they serve the demo only. */
import type { Athlete, ShapeData, SkillFile } from '../sim/index.ts';

interface AthleteFile {
  readonly athlete: Athlete;
}
const athleteFiles = import.meta.glob<AthleteFile>('./athletes/*.json', { eager: true, import: 'default' });
const skillFiles = import.meta.glob<SkillFile>('./skills/*.json', { eager: true, import: 'default' });
const shapeFiles = import.meta.glob<Record<string, ShapeData>>('./shapes.json', { eager: true, import: 'default' });

const idOf = (path: string): string => path.replace(/^.*\/|\.json$/g, '');
const byId = <T>(files: Record<string, T>): [string, T][] => Object.entries(files).map(([path, f]) => [idOf(path), f]);

export const athletes: Readonly<Record<string, Athlete>> = Object.fromEntries(
  byId(athleteFiles).map(([id, file]) => [id, file.athlete]),
);
export const skills: Readonly<Record<string, SkillFile>> = Object.fromEntries(byId(skillFiles));
export const shapes: Readonly<Record<string, ShapeData>> = Object.assign({}, ...Object.values(shapeFiles));
