/** Which of the ready skills are asked for. */
import type { SkillPlace } from '../../../sim/index.ts';
import type { PresetSkill, SkillLevel } from '../../app/services.ts';
import { findRanked } from '../../commands/search.ts';

export type ShelfPlace = SkillPlace | 'all';
export type ShelfLevel = SkillLevel | 'all';

/** Of a place and level, and by words: best first, else in the order of the catalogue. */
export function findDemos(
  all: readonly PresetSkill[],
  wanted: string,
  place: ShelfPlace,
  level: ShelfLevel,
): readonly PresetSkill[] {
  const fitting = all.filter(
    ({ about }) => (place === 'all' || about?.place === place) && (level === 'all' || about?.level === level),
  );
  if (wanted.trim() === '') return fitting;
  const items = fitting.map((demo) => ({ demo, title: demo.file.title, words: demo.about?.words }));
  return findRanked(items, wanted, ({ demo }) => demo.about?.see ?? '').map(({ item }) => item.demo);
}
