/** The athletes, shapes and skills that come with Shapeflight, read at build time. Invented; they serve the demo only. */
import type { SkillFile, SkillPlace } from '../sim/index.ts';
import catalogueFile from './catalogue.json' with { type: 'json' };
import { byId } from './start.ts';

export { athletes, shapes } from './start.ts';

const skillFiles = import.meta.glob<SkillFile>('./skills/*.json', { eager: true, import: 'default' });

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

/** How a skill is found on the shelf, and what to look at when it plays. */
interface CatalogueEntry {
  readonly id: string;
  readonly place: SkillPlace;
  readonly level: 'basic' | 'intermediate' | 'advanced';
  readonly see: string;
  /** of the trade, which it is found by */
  readonly words: readonly string[];
  /** to start with: the first, second and third */
  readonly story?: 1 | 2 | 3;
}
/** Every ready skill once, in the order of the shelf. */
export const catalogue = catalogueFile as readonly CatalogueEntry[];
