// The list of drafts, fixed before their engine, and what is kept of each: the recipe that it is flown from again, or why there is none.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { athletes, shapes } from '../../presets/index.ts';
import {
  type DraftPlace,
  type DraftSpec,
  draftOfDive,
  draftOfTrampoline,
  draftSkill,
  nearSkills,
  parseDiveNumber,
  parseTrampolineCode,
  readAthlete,
  readFlownCode,
  shapeInRadians,
} from '../../sim/index.ts';
import type { DraftRecipe } from '../../sim/skill/draft-search.ts';
import type { DraftInput } from '../../sim/skill/draft-skill.ts';

export interface Listed {
  readonly kind: 'trampoline' | 'dive' | 'name';
  readonly text: string;
  /** of a name: the code that the trade means */
  readonly meaning?: string;
  readonly direction?: 'backward' | 'forward';
  readonly athlete: string;
  readonly place: DraftPlace;
  readonly airTimeS: readonly [number, number];
}
export interface Kept {
  readonly text: string;
  readonly place: string;
  readonly direction?: string;
  readonly recipe?: DraftRecipe;
  readonly refused?: { readonly limit?: string; readonly faults: readonly string[]; readonly nearest?: string };
}

export const folder = path.resolve(import.meta.dirname);
const read = <T>(file: string): T => JSON.parse(readFileSync(path.join(folder, file), 'utf8')) as T;
const list = read<{ least: Readonly<Record<Listed['kind'], number>>; drafts: readonly Listed[] }>('list.json');
export const LEAST = list.least;
export const LISTED = list.drafts;
export const KEPT = read<readonly Kept[]>('flown.json');
export const nameOf = ({ text, direction, place }: Pick<Listed, 'text' | 'direction' | 'place'>): string =>
  [place, text, direction].filter(Boolean).join(' ');
export const keptOf = (one: Listed, kept: readonly Kept[] = KEPT): Kept | undefined =>
  kept.find((k) => k.text === one.text && k.place === one.place && k.direction === one.direction);

export const specOfListed = ({ kind, text, meaning, direction, place }: Listed): DraftSpec =>
  kind === 'dive'
    ? draftOfDive(parseDiveNumber(text), place)
    : draftOfTrampoline(parseTrampolineCode(meaning ?? text), direction, place === 'floor' ? 'floor' : 'trampoline');

export const inputFor = (athlete: string): DraftInput => ({
  athlete: readAthlete(athletes[athlete]),
  shapes: Object.fromEntries(Object.entries(shapes).map(([id, shape]) => [id, shapeInRadians(shape)])),
  readCode: readFlownCode,
});

export const draftListed = (one: Listed) =>
  draftSkill(specOfListed(one), { ...inputFor(one.athlete), nearby: nearSkills });
