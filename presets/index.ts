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

/** As isChain of sim: presets take types of it only. */
const isChain = ({ phases }: SkillFile): boolean =>
  phases.filter(({ kind }) => kind === 'flight').length > 1 || phases.some(({ kind }) => kind === 'catch');
const files = byId(skillFiles);
/** Skills of one flight. */
export const skills: Readonly<Record<string, SkillFile>> = Object.fromEntries(
  files.filter(([, file]) => !isChain(file)),
);
/** Skills of several flights, or with a catch. */
export const chains: Readonly<Record<string, SkillFile>> = Object.fromEntries(
  files.filter(([, file]) => isChain(file)),
);
export const shapes: Readonly<Record<string, ShapeData>> = Object.assign({}, ...Object.values(shapeFiles));
