/** The athletes, shapes and skills that come with Shapeflight, read at build time. Invented; they serve the demo only. */
import type { Athlete, ShapeData, SkillFile } from '../sim/files/skill-file.ts';
import shapeFile from '../presets/shapes.json' with { type: 'json' };

const athleteFiles = import.meta.glob<{ athlete: Athlete }>('../presets/athletes/*.json', { eager: true, import: 'default' });
const skillFiles = import.meta.glob<SkillFile>('../presets/skills/*.json', { eager: true, import: 'default' });

const idOf = (path: string): string => path.replace(/^.*\/|\.json$/g, '');

export const athletes: Readonly<Record<string, Athlete>> = Object.fromEntries(Object.entries(athleteFiles).map(([path, file]) => [idOf(path), file.athlete]));
export const skills: Readonly<Record<string, SkillFile>> = Object.fromEntries(Object.entries(skillFiles).map(([path, file]) => [idOf(path), file]));
export const shapes: Readonly<Record<string, ShapeData>> = shapeFile as Record<string, ShapeData>;
